//! One way for the tests to call the program as a user does.

use assert_cmd::Command;
use serde_json::Value;
use std::path::Path;

/// A plan for a trained person's bench press.
pub const TRAINED_PRESS: [&str; 6] = [
    "plan",
    "bench-press",
    "--one-rm",
    "140 kg",
    "--training-months",
    "48",
];

/// A plan for a strong built-in lifter's squat.
pub const HEAVY_SQUAT: [&str; 6] = [
    "plan",
    "squat",
    "--lifter",
    "heavy-lifter",
    "--one-rm",
    "200 kg",
];

/// What the program answered.
#[derive(Debug)]
pub struct Answer {
    /// Exit status.
    pub status: i32,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub complaint: String,
}

impl Answer {
    /// The call ended well.
    #[track_caller]
    pub fn done(self) -> Self {
        assert_eq!(self.status, 0, "{}", self.complaint);
        self
    }

    /// Standard output, which is JSON and nothing else.
    #[track_caller]
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|e| panic!("{e}: {}", self.out))
    }
}

/// Calls the program in a folder of its own.
pub fn call(arguments: &[&str]) -> Answer {
    let folder = tempfile::tempdir().expect("a folder can be made");
    call_in(folder.path(), arguments)
}

/// Calls the program in a folder.
pub fn call_in(folder: &Path, arguments: &[&str]) -> Answer {
    call_on("2", folder, arguments)
}

/// Calls the program in a folder on this many threads.
pub fn call_on(threads: &str, folder: &Path, arguments: &[&str]) -> Answer {
    let output = Command::new(env!("CARGO_BIN_EXE_torquill"))
        .args(arguments)
        .env("NO_COLOR", "1")
        .env("RAYON_NUM_THREADS", threads)
        .current_dir(folder)
        .output()
        .expect("the program runs");
    Answer {
        status: output.status.code().expect("the program ends by itself"),
        out: String::from_utf8(output.stdout).expect("output is text"),
        complaint: String::from_utf8(output.stderr).expect("messages are text"),
    }
}

/// The call is refused with status 2, prints nothing and says all of these words.
#[track_caller]
pub fn refused(arguments: &[&str], words: &[&str]) {
    told(&call(arguments), arguments, words);
}

/// The answer to this call is a refusal, as of [`refused`].
#[track_caller]
pub fn told(answer: &Answer, arguments: &[&str], words: &[&str]) {
    assert_eq!(
        (answer.status, answer.out.as_str()),
        (2, ""),
        "{arguments:?}: {}",
        answer.complaint
    );
    for word in words {
        assert!(
            answer.complaint.contains(word),
            "{arguments:?}: no `{word}` in {}",
            answer.complaint
        );
    }
}

/// A text in one line, its ends of lines blanks.
pub fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What a call that ends well answers in JSON.
#[track_caller]
pub fn json(arguments: &[&str]) -> Value {
    call(&[arguments, &["--format", "json"]].concat())
        .done()
        .json()
}

/// An error as a person reads it: its faults line by line with their next moves, in metric units.
pub fn said(error: &torquill::error::Error) -> String {
    torquill::narrative::faults::in_one_line(error, torquill::units::System::Metric)
}

/// The next moves of one fault.
pub fn next_moves(fault: &torquill::error::Fault) -> Vec<String> {
    torquill::narrative::faults::told(fault, torquill::units::System::Metric).hints
}
