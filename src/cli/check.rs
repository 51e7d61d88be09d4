//! `torquill check FILE`: reads a model file and says what is wrong, line by line.

use super::complain::warn;
use super::output;
use crate::error::Result;
use crate::library::Library;
use crate::narrative::model_files::checked_file_in_words;
use crate::units::System;
use clap::Args;
use std::path::PathBuf;

/// CheckArguments of `check`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill show lifter club-lifter -o mine.ron
  torquill check mine.ron")]
pub struct CheckArguments {
    /// Model file to read
    file: PathBuf,
}

/// Runs the command.
pub fn run(arguments: &CheckArguments, library: &Library) -> Result<()> {
    let checked = library.check_file(&arguments.file)?;
    warn(&checked.doubts, System::Metric);
    let file = arguments.file.display().to_string();
    output::print(&checked_file_in_words(&file, &checked))
}
