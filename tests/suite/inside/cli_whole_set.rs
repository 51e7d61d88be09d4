//! What `src/cli/whole_set.rs` does, from inside.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use torquill::cli::output::check_target;
use torquill::cli::whole_set::{STEPS_LEFT, forget_ready, settle, write_folder};
use torquill::cli::{call_inside, whole_set};
use torquill::error::Result;

/// Writes a set as a call does that has nothing else to write.
fn write_files<B: AsRef<[u8]>>(files: &[(PathBuf, B)]) -> Result<()> {
    let written = whole_set::write_files(files).and_then(|()| settle());
    forget_ready();
    written
}

/// Calls that write several files, each by an option of its own.
const SEVERAL: [&[&str]; 4] = [
    &[
        "rep",
        "biceps-curl",
        "--load",
        "8 kg",
        "-o",
        "a.svg",
        "--over-time",
        "b.svg",
        "--data",
        "c.csv",
    ],
    &["figure", "biceps-curl", "-o", "a.svg", "--words", "--data"],
    &[
        "pick",
        "biceps-curl",
        "--gym",
        "garage",
        "--sheet",
        "a.html",
        "--data",
        "b.csv",
    ],
    &[
        "plan",
        "biceps-curl",
        "--one-rm",
        "30 kg",
        "--sheet",
        "a.html",
        "--data",
        "b.csv",
    ],
];

#[test]
fn fault_whichever_step_fails_a_call_leaves_all_its_files_or_none() {
    for call in SEVERAL {
        let mut failed = 0;
        for step in 0.. {
            let folder = tempfile::tempdir().expect("a folder");
            let word = |word: &&str| match word.split_once('.') {
                Some((_, "svg" | "csv" | "html")) => {
                    folder.path().join(word).to_string_lossy().into_owned()
                }
                _ => (*word).to_owned(),
            };
            let words: Vec<String> = call.iter().map(word).collect();
            STEPS_LEFT.set(Some(step));
            let called = call_inside(&words);
            let whole = STEPS_LEFT.replace(None).is_some();
            let left = held(folder.path());
            assert!(left.is_empty() || left.len() >= 2, "{call:?}: {left:?}");
            if whole {
                assert_eq!(
                    (called.status, left.is_empty()),
                    (0, false),
                    "{}",
                    called.stderr
                );
                break;
            }
            assert_eq!((called.status, left.len()), (2, 0), "{call:?}, step {step}");
            failed += 1;
        }
        assert!(failed >= 6, "{call:?}: {failed} steps");
    }
}

#[cfg(unix)]
#[test]
fn fault_a_link_that_leads_nowhere_holds_its_place() {
    let folder = tempfile::tempdir().expect("a folder");
    let link = folder.path().join("a.svg");
    std::os::unix::fs::symlink("gone/b.svg", &link).expect("a link");
    assert!(check_target(&link, false).is_err());
    check_target(&link, true).expect("it may be replaced");
    write_files(&[(link.clone(), "ours")]).expect("it can be");
    assert!(link.symlink_metadata().expect("it is there").is_file());
}

/// Files of a folder with what they hold, hidden ones too.
fn held(folder: &Path) -> BTreeMap<String, String> {
    let entries = std::fs::read_dir(folder).expect("a folder");
    let file = |entry: std::fs::DirEntry| {
        let name = entry.file_name().into_string().expect("a name of ours");
        let text = std::fs::read_to_string(entry.path()).expect("a text of ours");
        (name, text)
    };
    entries
        .map(|entry| file(entry.expect("an entry")))
        .collect()
}

#[test]
fn fault_whichever_step_fails_a_set_is_as_it_was() {
    let mut failed = 0;
    for step in 0.. {
        let folder = tempfile::tempdir().expect("a folder");
        let at = |name: &str| folder.path().join(name);
        std::fs::write(at("a"), "old a").expect("a file");
        std::fs::write(at("b"), "old b").expect("a file");
        let before = held(folder.path());
        check_target(&at("new"), false).expect("it is free");
        let set = ["a", "new", "b"].map(|name| (at(name), format!("new {name}")));
        STEPS_LEFT.set(Some(step));
        let written = write_files(&set);
        let whole = STEPS_LEFT.replace(None).is_some();
        if whole {
            // More steps were allowed than there are.
            written.expect("nothing failed");
            assert_eq!(held(folder.path()).len(), 3);
            break;
        }
        let now = held(folder.path());
        match written {
            Err(_) => assert_eq!(now, before, "step {step}"),
            // A second name that cannot be given is made up for by a copy.
            Ok(()) => assert!(now.values().all(|text| text.starts_with("new")), "{now:?}"),
        }
        failed += 1;
    }
    assert!(failed >= 12, "{failed} steps");
}

#[test]
fn fault_whichever_step_fails_a_new_folder_is_not_there() {
    let mut failed = 0;
    for step in 0.. {
        let folder = tempfile::tempdir().expect("a folder");
        let set = ["a", "b"].map(|name| (name.to_owned(), vec![1]));
        STEPS_LEFT.set(Some(step));
        let written = write_folder(&folder.path().join("set"), &set);
        if STEPS_LEFT.replace(None).is_some() {
            written.expect("nothing failed");
            break;
        }
        assert!(written.is_err());
        let left = std::fs::read_dir(folder.path()).expect("a folder").count();
        assert_eq!(left, 0, "step {step}");
        failed += 1;
    }
    assert_eq!(failed, 4);
}

#[test]
fn fault_a_set_that_cannot_be_written_changes_no_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let (first, lost) = (
        folder.path().join("a.txt"),
        folder.path().join("gone/b.txt"),
    );
    std::fs::write(&first, "before").expect("a file");
    assert!(write_files(&[(first.clone(), "after"), (lost, "b")]).is_err());
    assert_eq!(
        std::fs::read_to_string(&first).expect("it is there"),
        "before"
    );
    assert_eq!(
        std::fs::read_dir(folder.path()).expect("a folder").count(),
        1
    );
}

#[test]
fn fault_a_file_that_comes_while_the_program_computes_stays() {
    let folder = tempfile::tempdir().expect("a folder");
    let (ours, theirs) = (folder.path().join("a.txt"), folder.path().join("b.txt"));
    for path in [&ours, &theirs] {
        check_target(path, false).expect("it is free");
    }
    std::fs::write(&theirs, "theirs").expect("a file");
    let set = [(ours.clone(), "ours"), (theirs.clone(), "ours")];
    assert!(write_files(&set).is_err());
    let text = std::fs::read_to_string(&theirs).expect("it is there");
    assert_eq!((text.as_str(), ours.exists()), ("theirs", false));
    check_target(&theirs, true).expect("it may be replaced");
    write_files(&set).expect("both can be written");
    let text = std::fs::read_to_string(&theirs).expect("it is there");
    assert_eq!(text, "ours");
    let count = std::fs::read_dir(folder.path()).expect("a folder").count();
    assert_eq!(count, 2);
}

#[test]
fn fault_a_new_folder_comes_whole_or_not_at_all() {
    let folder = tempfile::tempdir().expect("a folder");
    let set = |name: &str| vec![("a.txt".to_owned(), vec![1]), (name.to_owned(), vec![2])];
    let target = folder.path().join("deep/set");
    assert!(write_folder(&target, &set("gone/b.txt")).is_err());
    let left = std::fs::read_dir(folder.path().join("deep")).expect("a folder");
    assert_eq!(left.count(), 0);
    write_folder(&target, &set("b.txt")).expect("it can be written");
    assert_eq!(std::fs::read_dir(&target).expect("a folder").count(), 2);
}

#[cfg(unix)]
#[test]
fn law_rights_of_a_replaced_file_are_kept() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("a.txt");
    for mode in [0o600, 0o640, 0o644] {
        std::fs::write(&path, "before").expect("a file");
        std::fs::set_permissions(&path, PermissionsExt::from_mode(mode)).expect("rights");
        write_files(&[(path.clone(), "after")]).expect("it can be written");
        let rights = std::fs::metadata(&path).expect("it is there").permissions();
        assert_eq!(rights.mode() & 0o777, mode);
    }
}
