//! `torquill sources`: the publications behind the numbers.

use super::command_call::CommandCall;
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
}

/// Runs the command.
pub fn run(arguments: &SourcesArguments, call: &CommandCall) -> Result<()> {
    let sources = call.models.sources()?;
    let text = match arguments.format {
        Format::Json => report::sources_json(&sources),
        Format::Csv => report::sources_csv(&sources),
        Format::Table => report::sources_text(&sources),
    };
    call.print(arguments.format, &text)
}
