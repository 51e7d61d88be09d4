//! `torquill curve MOVEMENT`: capacity, demand, effort over the range.

use super::command_call::CommandCall;
use super::options::{Format, Sampling, UnitsOption, Who};
use super::setup_options::{SetupOptions, setups};
use crate::error::Result;
use crate::narrative::cautions::caution_in_words;
use crate::report;
use crate::setups::setup_cautions;
use crate::study::{load_points, study};
use clap::Args;

/// CurveArguments of `curve`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill curve bench-press --load \"55 kg\"
  torquill curve biceps-curl --load \"8 kg\" --format csv
  torquill curve bench-press --load \"55 kg\" --detail --format json
  torquill curve bench-press --set technique.grip_width=\"60 cm\"
  torquill curve lateral-raise --speed \"60 deg/s\"")]
pub struct CurveArguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    #[command(flatten)]
    setup: SetupOptions,
    #[command(flatten)]
    sampling: Sampling,
    /// Add joint angles, torques, reactions and muscles to each sample (CSV and JSON)
    #[arg(long)]
    detail: bool,
    /// Units of the table
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

/// Runs the command.
pub fn run(arguments: &CurveArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    let model = arguments.who.model(library, &arguments.movement)?;
    let question = arguments.sampling.question(&arguments.movement, &model)?;
    let setups = setups(
        &arguments.setup,
        library,
        call.matches,
        arguments.units.into(),
    )?;
    let study = study(&question, &setups)?;
    let setup = study.setups.first();
    let text = match arguments.format {
        Format::Json => report::curve_json(&study, setup, arguments.detail),
        Format::Csv => report::curve_csv(&study, setup, arguments.detail),
        Format::Table => report::curve_table(&study, setup, arguments.units.into()),
    };
    call.print(arguments.format, &text)?;
    let points = load_points(&study.range);
    for setup in &study.setups {
        let hung = &setup.demand.setup;
        for caution in setup_cautions(hung, &points, &study.range.carrier) {
            let words = caution_in_words(&caution, arguments.units.into());
            anstream::eprintln!("caution: {words}");
        }
    }
    Ok(())
}
