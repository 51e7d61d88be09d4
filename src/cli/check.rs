//! `torquill check FILE`: reads a model file and says what is wrong, line by line.

use super::output;
use crate::error::Result;
use crate::library::Library;
use crate::narrative::model_files::{file_facts, file_kind};
use clap::Args;
use std::path::PathBuf;

/// CheckArguments of `check`.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  torquill check models/lifters/reference-man.ron")]
pub struct CheckArguments {
    /// Model file to read
    file: PathBuf,
}

/// Runs the command.
pub fn run(arguments: &CheckArguments, library: &Library) -> Result<()> {
    let facts = library.check_file(&arguments.file)?;
    let mut text = format!(
        "{}: a sound {}\n",
        arguments.file.display(),
        file_kind(&facts)
    );
    for (label, fact) in file_facts(&facts) {
        text += &format!("  {label}: {fact}\n");
    }
    output::print(&text)
}
