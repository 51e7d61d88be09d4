//! The program `torquill`: arguments in, exit status out.

use std::process::ExitCode;

fn main() -> ExitCode {
    ExitCode::from(torquill::cli::run())
}
