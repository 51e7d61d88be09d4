//! The program `torquill`: arguments in, exit status out.

#![forbid(unsafe_code)]

use std::process::ExitCode;

fn main() -> ExitCode {
    ExitCode::from(torquill::cli::run())
}
