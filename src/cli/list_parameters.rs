//! `torquill parameters [MOVEMENT]`: every value that can be set, what it may be and where it comes from.

use super::command_call::{Answer, CommandCall};
use super::data_file::DataFile;
use super::options::{Format, UnitsOption, Who};
use crate::error::Result;
use crate::report;
use crate::study::listed_values;
use clap::Args;
use clap::builder::NonEmptyStringValueParser;

/// ParametersArguments of `parameters`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill parameters biceps-curl
  torquill parameters bench-press --find grip
  torquill parameters squat --find \"moment arm\" --long
  torquill parameters --find soleus --format csv")]
pub struct ParametersArguments {
    /// Name of the movement; all of them without one
    movement: Option<String>,
    /// Only values with this word, or all of these words, in path or meaning
    #[arg(long, value_name = "WORD", value_parser = NonEmptyStringValueParser::new())]
    find: Option<String>,
    #[command(flatten)]
    who: Who,
    /// Say of every value what it means and where it comes from, as a short list does anyway
    #[arg(long)]
    long: bool,
    /// Units of the table
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
    #[command(flatten)]
    data: DataFile,
}

/// Runs the command.
pub fn run(arguments: &ParametersArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    let who = &arguments.who;
    let movement = arguments.movement.as_deref();
    let values = listed_values(library, &who.lifter, movement, &who.set)?;
    let values = match &arguments.find {
        Some(word) => report::found_values(values, word)?,
        None => values,
    };
    let answer = Answer {
        table: &|| report::parameters_table(&values, arguments.long, arguments.units.into()),
        json: &|| report::parameters_json(&values),
        data: &|| report::parameters_data(&values),
    };
    call.give(arguments.format, &answer)
}
