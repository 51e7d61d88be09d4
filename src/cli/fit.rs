//! `torquill fit … -o FILE.ron`: a lifter of one's own from a few measurements, with intervals.

use super::command_call::{Answer, CommandCall};
use super::complain::warn;
use super::data_file::DataOption;
use super::log_options::LogOptions;
use super::number_words::number;
use super::options::{Format, SexOption, UnitsOption};
use super::output;
use super::picture::LookOptions;
use super::whole_set;
use crate::error::{Error, Result};
use crate::figures::fitted_lifts;
use crate::library::{Library, Shelf};
use crate::narrative::doubted_sets::not_counted;
use crate::narrative::fit_words::lifter_written_in_words;
use crate::narrative::log_words::more_left_out;
use crate::narrative::progress_words::left_out_row;
use crate::person::{MeasureReader, ToldMeasurement, ToldTrace, read_limb};
use crate::report;
use crate::study::{
    MeasuredInLog, PersonAsked, TracedLift, fit_person, measured_in_log, measured_in_velocities,
};
use crate::units::{Length, Mass};
use clap::Args;
use std::path::PathBuf;

/// FitArguments of `fit`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill fit --name athlete-7 --sex woman --mass \"70 kg\" --height \"168 cm\" \\
      --training-months 30 --lift squat=\"95 kg\" --lift bench-press=\"60 kg x 3\" \\
      --lift deadlift=\"110 kg x 2 @ rir 1\" -o athlete-7.ron
  torquill max leg-press --lifter athlete-7.ron
  torquill fit --name athlete-8 --sex man --mass \"80 kg\" --height \"180 cm\" \\
      --training-months 8 --lift bench-press=\"85 kg\" \\
      --hold bench-press@10cm=\"900 N\" --limb forearm=\"27 cm\" -o athlete-8.ron
  torquill fit --name athlete-9 --sex man --mass \"80 kg\" --height \"180 cm\" \\
      --dynamometer knee-extension@60deg=\"210 N m\" --format json
  torquill fit --name athlete-10 --sex man --mass \"90 kg\" --height \"182 cm\" \\
      --training-months 36 --log stalled -o athlete-10.ron
  torquill fit --name athlete-11 --sex woman --mass \"68 kg\" --height \"167 cm\" \\
      --training-months 24 --trace squat=\"75 kg @ invented-squat\"

A set needs its repetitions; \"@ rir 1\" says how many were felt to be left. A load
is what the lift names: bar and plates, one dumb-bell, the stack, what hangs on
the body in a pull-up. The height of a hold is told from where the lift begins; a
torque is that of one side, the weight of the limb taken off (else add \"with limb\").")]
pub struct FitArguments {
    /// What the person is called in the file
    #[arg(long, value_name = "TEXT")]
    name: String,
    /// Which published tables of the body are taken
    #[arg(long, value_enum)]
    sex: SexOption,
    /// Body mass
    #[arg(long, value_name = "MASS")]
    mass: String,
    /// Standing height
    #[arg(long, value_name = "LENGTH")]
    height: String,
    /// Months of steady training
    #[arg(
        long,
        value_name = "N",
        default_value_t = 0.0,
        value_parser = number
    )]
    training_months: f64,
    /// Years of age
    #[arg(long, value_name = "YEARS", value_parser = number)]
    age: Option<f64>,
    /// A maximum or a set near failure: squat="95 kg", bench-press="60 kg x 3", deadlift="110 kg x 2 @ rir 1"
    #[arg(long = "lift", value_name = "LIFT=LOAD")]
    lifts: Vec<String>,
    /// A force held at a height: bench-press@10cm="700 N"; "350 N one hand" for one hand alone
    #[arg(long = "hold", value_name = "LIFT@HEIGHT=FORCE")]
    holds: Vec<String>,
    /// A torque held on a dynamometer: knee-extension@60deg="180 N m"
    #[arg(long = "dynamometer", value_name = "LIFT@ANGLE=TORQUE")]
    dynamometers: Vec<String>,
    /// A limb measured from joint to joint: forearm="25 cm"
    #[arg(long = "limb", value_name = "LIMB=LENGTH")]
    limbs: Vec<String>,
    /// Training log: of every lift the best set of the last day that notes what was left (a CSV file, or an invented one)
    #[arg(long, value_name = "FILE|NAME", group = "rows")]
    log: Option<String>,
    #[command(flatten)]
    reading: LogOptions,
    /// Load and velocity: a training log with velocities, of lifts that have a published equation
    #[arg(long, value_name = "FILE")]
    velocities: Option<String>,
    /// A bar's trace of a lift done as fast as possible: squat="80 kg @ bar.csv" (a CSV file, or "invented-squat")
    #[arg(long = "trace", value_name = "LIFT=LOAD@FILE")]
    traces: Vec<String>,
    /// Columns of time and position in a trace; units stand behind their names, else they are s and m
    #[arg(
        long,
        value_name = "TIME,POSITION",
        default_value = "time,position",
        requires = "traces"
    )]
    columns: String,
    /// Seed of the versions that are drawn
    #[arg(long, value_name = "N", default_value_t = 1)]
    seed: u64,
    /// File of the lifter (.ron), for --lifter of any command
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// Picture of all maxima with their intervals (.svg or .png)
    #[arg(long, value_name = "FILE")]
    picture: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of the text
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
    #[command(flatten)]
    data: DataOption,
}

/// Runs the command.
pub fn run(arguments: &FitArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    if let Some(path) = &arguments.output {
        output::check_model_file(path)?;
        output::check_target(path, arguments.look.force)?;
    }
    if let Some(path) = &arguments.picture {
        arguments.look.picture(path.clone()).check()?;
    }
    let fit = fit_person(&arguments.asked(library)?, library)?;
    let units = arguments.units.into();
    let answer = Answer {
        table: &|| report::fit_text(&fit, units),
        json: &|| report::fit_json(&fit),
        data: &|| report::fit_data(&fit),
    };
    // What would be refused as a file is no answer either.
    let text = report::person_file(&fit);
    let own_name = format!("{}.ron", fit.asked.name);
    let written = arguments.output.as_ref();
    let file = written.map_or(own_name, |path| path.display().to_string());
    let checked = library.check_text(Some(Shelf::Lifters), &file, &text)?;
    if let Some(path) = written {
        warn(&checked.doubts, units);
        whole_set::write_file(path, text.as_bytes())?;
    }
    if let Some(path) = &arguments.picture {
        let look = arguments.look.look()?;
        let scene = fitted_lifts(&fit, units, look)?;
        let picture = arguments.look.picture(path.clone());
        picture.write(&call.signed("picture", scene)?)?;
    }
    call.give(arguments.format, &answer)?;
    if let Some(path) = written {
        whole_set::tell_settled(lifter_written_in_words(&path.display().to_string()));
    }
    Ok(())
}

impl FitArguments {
    /// What is asked, read from the texts.
    ///
    /// **Fails** with every text that cannot be read.
    fn asked(&self, library: &Library) -> Result<PersonAsked> {
        let names = library.lift_names();
        let movements = library.movements();
        let reader = MeasureReader {
            names: &names,
            movements: &movements,
        };
        let mut faults = Vec::new();
        let mut kept = |told: Result<ToldMeasurement>| {
            told.map_err(|fault| faults.extend(fault.faults().iter().cloned()))
                .ok()
        };
        let lifts = self.lifts.iter().map(|text| reader.lift(text));
        let holds = self.holds.iter().map(|text| reader.hold(text));
        let torques = self.dynamometers.iter();
        let torques = torques.map(|text| reader.dynamometer(text));
        let measurements = lifts.chain(holds).chain(torques).filter_map(&mut kept);
        let mut measurements: Vec<ToldMeasurement> = measurements.collect();
        let traces = self.traces.iter().map(|text| reader.trace(text));
        let traces: Vec<ToldTrace> = traces
            .filter_map(|trace| {
                trace
                    .map_err(|fault| faults.extend(fault.faults().iter().cloned()))
                    .ok()
            })
            .collect();
        let limbs = self.limbs.iter().map(|text| read_limb(text));
        let limbs = limbs.filter_map(|limb| {
            limb.map_err(|fault| faults.extend(fault.faults().iter().cloned()))
                .ok()
        });
        let limbs = limbs.collect();
        if !faults.is_empty() {
            return Err(Error::bad_input(faults));
        }
        let mass = Mass::from_text(&self.mass).map_err(Error::bad)?;
        if let Some(log) = &self.log {
            measurements.extend(self.measured_in_log(library, log, mass)?);
        }
        if let Some(file) = &self.velocities {
            measurements.extend(measured_in_velocities(library, file)?.0);
        }
        let traced = traces.iter();
        let traced = traced.map(|told| TracedLift::of(library, told, &self.columns));
        let traces = traced.collect::<Result<Vec<_>>>()?;
        for trace in &traces {
            measurements.push(trace.measurement(library)?);
        }
        Ok(PersonAsked {
            name: self.name.clone(),
            sex: self.sex.into(),
            height: Length::from_text(&self.height).map_err(Error::bad)?,
            mass,
            months: self.training_months,
            age: self.age,
            measurements,
            limbs,
            traces,
            seed: self.seed,
        })
    }

    /// What a log tells; what was left out of it on request is said.
    fn measured_in_log(
        &self,
        library: &Library,
        log: &str,
        mass: Mass,
    ) -> Result<Vec<ToldMeasurement>> {
        let MeasuredInLog { told, log, jumps } =
            measured_in_log(library, &self.reading.choice(log, false), mass)?;
        let units = self.units.into();
        for jump in &jumps {
            output::note(&not_counted(jump, units));
        }
        for row in &log.skipped {
            output::note(&left_out_row(row, units));
        }
        if log.skipped_more > 0 {
            output::note(&more_left_out(log.skipped_more));
        }
        Ok(told)
    }
}
