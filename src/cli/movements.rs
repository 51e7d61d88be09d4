//! `torquill movements`: the named movements with class, joints and axis.

use super::command_call::{Answer, CommandCall};
use super::data_file::DataFile;
use super::options::{Format, Who};
use crate::error::Result;
use crate::report;
use crate::study::{ListedMovement, listed_movement};
use clap::Args;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};

/// MovementsArguments of `movements`.
#[derive(Debug, Args)]
#[command(after_long_help = "Example:\n  torquill movements --lifter reference-woman")]
pub struct MovementsArguments {
    #[command(flatten)]
    who: Who,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
    #[command(flatten)]
    data: DataFile,
}

/// Runs the command.
pub fn run(arguments: &MovementsArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    let listed = |name: &String| -> Result<ListedMovement> {
        let model = arguments.who.model(library, name)?;
        listed_movement(name, &model.movement, &model.lifter)
    };
    let names = library.movements();
    let movements = names.par_iter().map(listed).collect::<Result<Vec<_>>>()?;
    let answer = Answer {
        table: &|| report::movements_table(&movements),
        json: &|| report::movements_json(&movements),
        data: &|| report::movements_data(&movements),
    };
    call.give(arguments.format, &answer)
}
