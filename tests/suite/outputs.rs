//! What the program writes: whole or not at all, whoever interrupts it and whatever is full.
#![cfg(unix)]

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

const PROGRAM: &str = env!("CARGO_BIN_EXE_torquill");

/// A line run by a shell in a folder, `$0` the program; its exit status.
fn shell(folder: &Path, line: &str) -> i32 {
    let status = Command::new("sh")
        .args(["-c", line, PROGRAM])
        .env("RAYON_NUM_THREADS", "2")
        .current_dir(folder)
        .status()
        .expect("a shell runs");
    status.code().expect("it ends by itself")
}

#[test]
fn fault_messages_that_nobody_takes_change_no_result() {
    let folder = tempfile::tempdir().expect("a folder");
    let line = |of: &str| format!("\"$0\" curve squat --samples 5 --load \"20 kg\" {of}");
    assert_eq!(shell(folder.path(), &line(">a.txt 2>/dev/full")), 0);
    assert_eq!(shell(folder.path(), &line(">b.txt 2>&-")), 0);
    let texts = ["a.txt", "b.txt"].map(|name| std::fs::read(folder.path().join(name)));
    let [a, b] = texts.map(|text| text.expect("it is there"));
    assert!(!a.is_empty() && a == b);
    for line in [
        "\"$0\" curve nothing 2>/dev/full",
        "\"$0\" nothing 2>/dev/full",
        "\"$0\" curve nothing 2>&-",
    ] {
        assert_eq!(shell(folder.path(), line), 2, "{line}");
    }
}

#[test]
fn fault_an_answer_that_cannot_be_written_is_told_and_a_closed_pipe_is_not() {
    let folder = tempfile::tempdir().expect("a folder");
    let full = "\"$0\" curve squat --samples 5 >/dev/full 2>told.txt";
    assert_eq!(shell(folder.path(), full), 2);
    let told = std::fs::read_to_string(folder.path().join("told.txt")).expect("it is there");
    assert!(told.contains("standard output cannot be written"), "{told}");
    let help = "\"$0\" --help >/dev/full 2>told.txt";
    assert_eq!(shell(folder.path(), help), 2);
    let closed = "set -e; (\"$0\" curve squat --format csv; echo $? >status) | head -1 >first";
    assert_eq!(shell(folder.path(), closed), 0);
    let status = std::fs::read_to_string(folder.path().join("status")).expect("it is there");
    assert_eq!(status.trim(), "0");
}

#[test]
fn fault_a_device_is_never_replaced() {
    let folder = tempfile::tempdir().expect("a folder");
    let pipe = folder.path().join("pipe.svg");
    assert_eq!(shell(folder.path(), "mkfifo pipe.svg"), 0);
    let line = "\"$0\" figure squat -o pipe.svg --force 2>told.txt";
    assert_eq!(shell(folder.path(), line), 2);
    let told = std::fs::read_to_string(folder.path().join("told.txt")).expect("it is there");
    assert!(told.contains("is a device or a pipe, not a file"), "{told}");
    assert!(pipe.exists());
}

#[test]
fn fault_a_link_is_replaced_and_what_it_leads_to_is_not() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("kept.svg"), "kept").expect("a file");
    std::os::unix::fs::symlink("kept.svg", folder.path().join("a.svg")).expect("a link");
    let refused = "\"$0\" figure squat -o a.svg 2>told.txt";
    assert_eq!(shell(folder.path(), refused), 2);
    assert_eq!(
        shell(folder.path(), "\"$0\" figure squat -o a.svg --force"),
        0
    );
    let kept = std::fs::read_to_string(folder.path().join("kept.svg")).expect("it is there");
    assert_eq!(kept, "kept");
}

#[test]
fn law_a_name_of_254_bytes_can_be_written() {
    let folder = tempfile::tempdir().expect("a folder");
    let name = format!("{}.svg", "x".repeat(250));
    assert_eq!(
        shell(folder.path(), &format!("\"$0\" figure squat -o {name}")),
        0
    );
    assert!(folder.path().join(name).is_file());
}

/// Calls that write a set, with how many files it has.
const SETS: [(&str, &[&str]); 2] = [
    ("pages", &["manual", "-o", "pages"]),
    (".", &["figure", "squat", "-o", "a.svg", "--force"]),
];

/// Ends a call by a signal after a time; whether it ended by itself before.
fn interrupted(folder: &Path, arguments: &[&str], signal: &str, after: Duration) -> bool {
    let mut child = Command::new(PROGRAM)
        .args(arguments)
        .env("RAYON_NUM_THREADS", "2")
        .current_dir(folder)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("the program runs");
    std::thread::sleep(after);
    let _ = Command::new("kill")
        .args([signal, &child.id().to_string()])
        .stderr(Stdio::null())
        .status();
    child.wait().expect("it ends").success()
}

/// Interrupts `tries` calls of each kind at times spread over what one takes.
fn interrupts(tries: u32) {
    for (target, arguments) in SETS {
        let whole = tempfile::tempdir().expect("a folder");
        let begun = std::time::Instant::now();
        // Signal 0 asks only whether the process is there.
        assert!(interrupted(whole.path(), arguments, "-0", Duration::ZERO));
        let takes = begun.elapsed();
        let count = std::fs::read_dir(whole.path().join(target))
            .expect("a folder")
            .count();
        let folder = tempfile::tempdir().expect("a folder");
        for number in 0..tries {
            let signal = ["-INT", "-TERM"][number as usize % 2];
            let ended = interrupted(folder.path(), arguments, signal, takes * number / tries);
            let left = std::fs::read_dir(folder.path().join(target));
            let left: Vec<String> = left
                .into_iter()
                .flatten()
                .map(|entry| entry.expect("an entry").file_name().display().to_string())
                .collect();
            assert!(
                left.iter().all(|name| !name.starts_with(".torquill-")),
                "{arguments:?}: {left:?}"
            );
            assert!(
                left.is_empty() || left.len() == count,
                "{arguments:?}: {} of {count}",
                left.len()
            );
            assert!(!ended || left.len() == count, "{arguments:?}");
            for name in left {
                let path = folder.path().join(target).join(name);
                std::fs::remove_file(path).expect("it was there");
            }
            let _ = std::fs::remove_dir(folder.path().join("pages"));
        }
    }
}

#[test]
fn fault_an_interrupted_call_leaves_a_whole_set_or_none() {
    interrupts(12);
}

#[test]
#[ignore = "300 calls: nightly"]
fn fault_hundreds_of_interrupted_calls_leave_whole_sets_or_none() {
    interrupts(150);
}
