//! What `src/library/bounded_read.rs` does, from inside.

use std::path::Path;
use torquill::error::{FileFault, What};
use torquill::library::bounded_read::{MOST_MB, bytes_of_file, text_of_file};

fn refused(path: &Path) -> FileFault {
    let error = bytes_of_file(path).expect_err("it is refused");
    match &error.faults()[0].what {
        What::File(fault) => fault.clone(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn fault_what_is_no_file_and_what_is_too_large_are_refused_unread() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(matches!(refused(folder.path()), FileFault::Folder { .. }));
    let gone = folder.path().join("gone.csv");
    assert!(matches!(refused(&gone), FileFault::Unreadable { .. }));
    // A file of holes takes no room on the disk and would take all of the memory.
    let huge = folder.path().join("huge.csv");
    let file = std::fs::File::create(&huge).expect("a file");
    file.set_len(1 << 40).expect("a file of holes");
    let most_mb = MOST_MB;
    assert!(matches!(refused(&huge), FileFault::TooLarge { most_mb: m, .. } if m == most_mb));
    let odd = folder.path().join("odd.csv");
    std::fs::write(&odd, b"ab\xff").expect("a file");
    assert_eq!(bytes_of_file(&odd).expect("bytes are bytes").len(), 3);
    assert!(text_of_file(&odd).is_err());
}

#[cfg(unix)]
#[test]
fn fault_devices_and_pipes_are_not_waited_for() {
    assert!(matches!(
        refused(Path::new("/dev/zero")),
        FileFault::Endless { .. }
    ));
    let folder = tempfile::tempdir().expect("a folder");
    let pipe = folder.path().join("pipe");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status();
    if made.is_ok_and(|status| status.success()) {
        assert!(matches!(refused(&pipe), FileFault::Endless { .. }));
    }
}
