//! `torquill parameters [MOVEMENT]`: every value that can be set, what it may be and where it comes from.

use super::command_call::CommandCall;
use super::options::{Format, UnitsOption, Who};
use crate::error::Result;
use crate::report;
use crate::study::{ListedValue, listed_values};
use clap::Args;

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
    /// Only values with this word in path or meaning
    #[arg(long, value_name = "WORD")]
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
    call.print(arguments.format, &shown(arguments, &values))
}

fn shown(arguments: &ParametersArguments, values: &[ListedValue]) -> String {
    match arguments.format {
        Format::Json => report::parameters_json(values),
        Format::Csv => report::parameters_csv(values),
        Format::Table => report::parameters_table(values, arguments.long, arguments.units.into()),
    }
}
