//! `torquill sources`: the publications behind the numbers.

use super::command_call::{Answer, CommandCall};
use super::data_file::DataFile;
use super::options::Format;
use crate::error::Result;
use crate::report;
use clap::Args;

/// SourcesArguments of `sources`.
#[derive(Debug, Args)]
#[command(after_long_help = "Example:\n  torquill sources --format csv")]
pub struct SourcesArguments {
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
    #[command(flatten)]
    data: DataFile,
}

/// Runs the command.
pub fn run(arguments: &SourcesArguments, call: &CommandCall) -> Result<()> {
    let sources = call.models.sources()?;
    let answer = Answer {
        table: &|| report::sources_text(&sources),
        json: &|| report::sources_json(&sources),
        data: &|| report::sources_data(&sources),
    };
    call.give(arguments.format, &answer)
}
