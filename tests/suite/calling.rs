//! One way for the tests to call the program as a user does.

use assert_cmd::Command;
use std::path::Path;

/// What the program answered.
pub struct Answer {
    /// Exit status.
    pub status: i32,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub complaint: String,
}

/// Calls the program in a folder.
pub fn call_in(folder: &Path, arguments: &[&str]) -> Answer {
    let output = Command::new(env!("CARGO_BIN_EXE_torquill"))
        .args(arguments)
        .env("NO_COLOR", "1")
        .current_dir(folder)
        .output()
        .expect("the program runs");
    Answer {
        status: output.status.code().expect("the program ends by itself"),
        out: String::from_utf8(output.stdout).expect("output is text"),
        complaint: String::from_utf8(output.stderr).expect("messages are text"),
    }
}
