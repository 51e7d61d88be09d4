//! `torquill curve MOVEMENT`: capacity, demand, effort over the range.

use super::command_call::{Answer, CommandCall};
use super::data_file::DataFile;
use super::idle_options::{NEEDS_A_LOAD, check_region_share};
use super::options::{Format, Sampling, UnitsOption, Who};
use super::output;
use super::people_options::PeopleOptions;
use super::scatter::ScatterOption;
use super::setup_options::{SetupOptions, setups};
use crate::bounds::bounds;
use crate::error::{CommandFault, ComparisonFault, Error, Result};
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
  torquill curve squat --load \"60 kg\" --detail --data squat.xlsx
  torquill curve bench-press --set technique.grip_width=\"60 cm\"
  torquill curve lateral-raise --speed \"60 deg/s\"
  torquill curve squat --people 200 --sex woman --training novice")]
pub struct CurveArguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    #[command(flatten)]
    setup: SetupOptions,
    #[command(flatten)]
    sampling: Sampling,
    #[command(flatten)]
    scatter: ScatterOption,
    #[command(flatten)]
    people: PeopleOptions,
    /// Add joint angles, torques, reactions and muscles to each sample of JSON; CSV has a row a sample and muscle then
    #[arg(long)]
    detail: bool,
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
pub fn run(arguments: &CurveArguments, call: &CommandCall) -> Result<()> {
    if arguments.detail && arguments.format == Format::Table && call.data_path().is_none() {
        return Err(Error::bad(CommandFault::Idle {
            option: "detail".to_owned(),
            needed: ["format", "data"].map(str::to_owned).to_vec(),
        }));
    }
    let most = bounds().detailed_poses.most_of_them();
    if arguments.detail && arguments.sampling.samples > most {
        return Err(Error::bad(ComparisonFault::TooDetailed {
            samples: arguments.sampling.samples,
            most,
        }));
    }
    let library = call.models;
    let people = &arguments.people;
    let model = people.model(&arguments.who, library, &arguments.movement)?;
    let question = arguments.sampling.question(&arguments.movement, &model)?;
    let setups = setups(
        &arguments.setup,
        library,
        call.matches,
        arguments.units.into(),
    )?;
    match setups.as_slice() {
        [] => check_region_share(call.matches, false, &NEEDS_A_LOAD)?,
        _ => {
            let has_region = arguments.format != Format::Csv;
            check_region_share(call.matches, has_region, &["format table", "format json"])?;
        }
    }
    let study = study(&question, &setups)?;
    let study = arguments.scatter.banded(study, &question, &model)?;
    let study = people.peopled(study, &question, library, &model)?;
    let setup = study.setups.first();
    let answer = Answer {
        table: &|| report::curve_table(&study, setup, arguments.units.into()),
        json: &|| report::curve_json(&study, setup, arguments.detail),
        data: &|| report::curve_data(&study, setup, arguments.detail),
    };
    call.give(arguments.format, &answer)?;
    let points = load_points(&study.range);
    for setup in &study.setups {
        let hung = &setup.demand.setup;
        for caution in setup_cautions(hung, &points, &study.range.carrier) {
            let words = caution_in_words(&caution, arguments.units.into());
            output::note(&format!("caution: {words}"));
        }
    }
    Ok(())
}
