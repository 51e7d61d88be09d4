//! `torquill check FILE`: reads a model file and says what is wrong, line by line.

use super::complain::warn;
use super::output;
use crate::error::{Error, Result};
use crate::library::Library;
use crate::narrative::model_files::checked_file_in_words;
use crate::units::System;
use clap::Args;
use std::path::{Path, PathBuf};

/// CheckArguments of `check`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill show lifter club-lifter -o mine.ron
  torquill check mine.ron")]
pub struct CheckArguments {
    /// Model file to read, or a folder: all model files in it
    file: PathBuf,
}

/// Runs the command.
pub fn run(arguments: &CheckArguments, library: &Library) -> Result<()> {
    if !arguments.file.is_dir() {
        return check(&arguments.file, library);
    }
    let mut faults = Vec::new();
    for file in library.model_files_in(&arguments.file)? {
        if let Err(error) = check(&file, library) {
            faults.extend(error.faults().iter().cloned());
        }
    }
    if faults.is_empty() {
        return Ok(());
    }
    Err(Error::bad_input(faults))
}

/// Checks one file and says what it holds.
fn check(file: &Path, library: &Library) -> Result<()> {
    let checked = library.check_file(file)?;
    warn(&checked.doubts, System::Metric);
    output::print(&checked_file_in_words(
        &file.display().to_string(),
        &checked,
    ))
}
