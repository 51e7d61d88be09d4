//! `torquill progress --log FILE`: is the lifter rising, flat or falling, and how sure is that?

use super::command_call::{Answer, CommandCall};
use super::data_file::DataOption;
use super::log_options::LogOptions;
use super::options::{Format, UnitsOption};
use super::picture::LookOptions;
use crate::error::Result;
use crate::figures::trend_chart;
use crate::report;
use crate::study::log_study;
use crate::units::System;
use clap::Args;
use clap::builder::NonEmptyStringValueParser;
use std::path::PathBuf;

/// ProgressArguments of `progress`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill progress --log stalled
  torquill progress --log rising -o trend.png
  echo \"date,lift,load,repetitions\" > my-log.csv
  echo \"2026-03-02,squat,100 kg,5\" >> my-log.csv
  echo \"2026-03-09,squat,102.5 kg,5\" >> my-log.csv
  echo \"2026-03-16,squat,105 kg,5\" >> my-log.csv
  echo \"2026-03-23,squat,107.5 kg,4\" >> my-log.csv
  torquill progress --log my-log.csv --lift squat --format json
  echo \"Day;Exercise;Weight (kg);Sets x reps;Athlete\" > team-log.csv
  echo \"1.8.2026;Back squat;102,5;3x5;Mia\" >> team-log.csv
  echo \"8.8.2026;Back squat;105;3x5;Mia\" >> team-log.csv
  echo \"15.8.2026;Back squat;107,5;3x5;Mia\" >> team-log.csv
  echo \"15.8.2026;Back squat;60;3x5;Tom\" >> team-log.csv
  torquill progress --log team-log.csv --athlete Mia

A log is a CSV of any spreadsheet: date, lift, load, repetitions in any order, other columns
beside them; sets, velocity, reserve (RIR) or RPE, athlete and unit if there are any.
models/README.md says what is read.")]
pub struct ProgressArguments {
    /// Training log: a CSV file, or the name of an invented one (rising, stalled, gappy)
    #[arg(long, value_name = "FILE|NAME", group = "rows")]
    log: String,
    /// Lift to look at, where the log holds several
    #[arg(long, value_name = "LIFT", value_parser = NonEmptyStringValueParser::new())]
    lift: Option<String>,
    #[command(flatten)]
    reading: LogOptions,
    /// Picture of the trend (.svg or .png)
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of text and picture
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
    #[command(flatten)]
    data: DataOption,
}

/// Runs the command.
pub fn run(arguments: &ProgressArguments, call: &CommandCall) -> Result<()> {
    if let Some(path) = &arguments.output {
        arguments.look.picture(path.clone()).check()?;
    }
    let choice = arguments.reading.choice(&arguments.log, false);
    let study = log_study(call.models, &choice, arguments.lift.as_deref())?;
    let units: System = arguments.units.into();
    let answer = Answer {
        table: &|| report::trend_text(&study, units),
        json: &|| report::trend_json(&study, units),
        data: &|| report::trend_data(&study),
    };
    call.give(arguments.format, &answer)?;
    if let Some(path) = &arguments.output {
        let scene = trend_chart(&study.trend, units, arguments.look.look()?)?;
        let picture = arguments.look.picture(path.clone());
        picture.write(&call.signed("output", scene)?)?;
    }
    Ok(())
}
