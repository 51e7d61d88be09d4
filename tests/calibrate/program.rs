//! Fits the muscles of `models/` to the targets of `models/calibration/` and writes what it finds:
//!
//! ```sh
//! cargo run --release --example calibrate              # fits, writes models/ and the posterior
//! cargo run --release --example calibrate -- --check   # exit 1 when the committed values are not its answer
//! ```
//!
//! Run from the project's folder. It is deterministic: running it again changes nothing.

#[path = "mod.rs"]
mod calibration;
#[allow(dead_code)]
#[path = "../suite/dynamometer.rs"]
mod dynamometer;

use calibration::{answer, posterior, problem::Problem, text};
use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let only_check = std::env::args()
        .skip(1)
        .any(|argument| argument == "--check");
    match run(only_check) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(fault) => {
            eprintln!("error: {fault}");
            ExitCode::from(2)
        }
    }
}

/// Whether the files hold the answer, or have been given it.
fn run(only_check: bool) -> Result<bool, String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let problem = Problem::read(root)?;
    let answer = answer::most_probable(&problem, root)?;
    print!("{}", posterior::told(&problem, &answer));
    let mut files = text::changed_files(root, &problem, &answer)?;
    files.push(posterior::file(root, &problem, &answer));
    let mut is_same = true;
    for (path, new) in files {
        let old = std::fs::read_to_string(&path).unwrap_or_default();
        if old == new {
            continue;
        }
        is_same = false;
        println!(
            "{} {}",
            if only_check { "differs:" } else { "written:" },
            path.display()
        );
        if !only_check {
            std::fs::write(&path, new).map_err(|why| format!("{}: {why}", path.display()))?;
        }
    }
    Ok(is_same || !only_check)
}
