//! `torquill max MOVEMENT`: the one-repetition maximum, the eccentric one, load and velocity.

use super::hung::{Hung, hung};
use super::look::LookOptions;
use super::max_cohort::printed;
use super::options::{Format, UnitsOption, Who};
use super::output;
use super::rep::Manner;
use super::waiting::watched;
use crate::error::{Error, Result};
use crate::figures::load_velocity_chart;
use crate::library::Library;
use crate::movement::Measure;
use crate::rep::{LoadVelocity, OneRepMax, RepOptions, scale_for_one_rm};
use crate::report;
use crate::study::{Question, USUAL_STEP_KG, cohort, maximum, rigged};
use crate::units::{Duration, Mass, System, rounded};
use clap::Args;
use serde_json::json;
use std::path::PathBuf;

/// Arguments of `max`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill max bench-press
  torquill max bench-press --from 0.5 --to 1
  torquill max bench-press --eccentric \"3 s\" --velocities -o velocities.png
  torquill max bench-press --to-load \"102.5 kg\"
  torquill max squat --cohort 1000 --format csv")]
pub struct Arguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    #[command(flatten)]
    hung: Hung,
    #[command(flatten)]
    manner: Manner,
    /// Smallest step that can be loaded
    #[arg(long, value_name = "MASS", default_value = "2.5 kg")]
    step: String,
    /// Also the maximum that is lowered under control in this time
    #[arg(long, value_name = "TIME")]
    eccentric: Option<String>,
    /// Also mean velocities over 30 to 100 % of the maximum
    #[arg(long)]
    velocities: bool,
    /// Strength that a known maximum implies, as a factor on this lifter's
    #[arg(long, value_name = "MASS")]
    to_load: Option<String>,
    /// Instead: the maxima of this many invented lifters around this one, as quantiles
    #[arg(long, value_name = "N")]
    cohort: Option<usize>,
    /// Seed of the invented lifters
    #[arg(long, value_name = "N", default_value_t = 1, requires = "cohort")]
    seed: u64,
    /// Picture of mean velocity over load (.svg or .png)
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of the text
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

/// What was found.
struct Found {
    one_rm: OneRepMax,
    eccentric: Option<OneRepMax>,
    profile: Option<LoadVelocity>,
    factor: Option<f64>,
    /// Factor on strength that the lifter's file has already.
    own_scale: f64,
    measure: Measure,
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    if let Some(path) = &arguments.output {
        arguments.look.picture(path.clone()).check()?;
    }
    let step = mass(&arguments.step)?;
    let model = arguments.who.model(library, &arguments.movement)?;
    let options = arguments.manner.options(&model.movement)?;
    let question = Question::new(&arguments.movement, &model.movement, &model.lifter);
    let setup = hung(&arguments.hung, library)?;
    if let Some(count) = arguments.cohort {
        let found = watched(|watch| {
            cohort(
                &question,
                &setup,
                &options,
                step,
                (count, arguments.seed),
                watch,
            )
        })?;
        let titles = (model.movement.title.as_str(), model.lifter.title.as_str());
        let units = arguments.units.into();
        let text = printed(&found, titles, arguments.seed, arguments.format, units)?;
        return output::print(&text);
    }
    let (one_rm, motion) = maximum(&question, &setup, &options, step)?;
    let body = rigged(&question, question.movement.carrier()?, &setup);
    let eccentric = match &arguments.eccentric {
        Some(text) => {
            let time = Duration::from_text(text).map_err(Error::bad)?;
            Some(motion.eccentric_max(&body, step, time, &options)?)
        }
        None => None,
    };
    let profile = if arguments.velocities || arguments.output.is_some() {
        let shares: Vec<f64> = (6..=20).map(|i| f64::from(i) * 0.05).collect();
        Some(motion.load_velocity(&body, one_rm, &shares, &options)?)
    } else {
        None
    };
    let factor = match &arguments.to_load {
        Some(text) => Some(factor(&question, &body, mass(text)?, step, &options)?),
        None => None,
    };
    let found = Found {
        one_rm,
        eccentric,
        profile,
        factor,
        own_scale: model.record.strength_scale,
        measure: motion.measure(),
    };
    let units: System = arguments.units.into();
    output::print(&match arguments.format {
        Format::Json => report::pretty(&as_json(arguments, &model.lifter.name, &found))?,
        Format::Csv => as_csv(&found)?,
        Format::Table => as_text(&model.lifter.title, &model.movement.title, &found, units),
    })?;
    if let (Some(path), Some(profile)) = (&arguments.output, &found.profile) {
        let scene = load_velocity_chart(
            &library.published()?.estimates.velocity,
            &arguments.movement,
            &model.movement.title,
            &model.lifter.title,
            profile,
            found.measure,
            arguments.look.look()?,
        )?;
        arguments.look.picture(path.clone()).write(&scene)?;
    }
    Ok(())
}

fn mass(text: &str) -> Result<Mass> {
    Mass::from_text(text).map_err(Error::bad)
}

fn factor(
    question: &Question<'_>,
    body: &crate::resistance::Setup,
    known: Mass,
    step: Mass,
    options: &RepOptions,
) -> Result<f64> {
    let known = OneRepMax {
        load: known,
        failed: known + step,
    };
    scale_for_one_rm(question.movement, question.lifter, body, known, options)
}

fn as_text(lifter: &str, movement: &str, found: &Found, units: System) -> String {
    let mut text = format!(
        "{movement}, {lifter}: maximum {} (the next step, {}, is not lifted).\n",
        units.mass(found.one_rm.load),
        units.mass(found.one_rm.failed)
    );
    if let Some(eccentric) = found.eccentric {
        text += &format!(
            "Lowered under control: {}, {} times the maximum.\n",
            units.mass(eccentric.load),
            rounded(
                eccentric.load.as_kg() / found.one_rm.load.as_kg().max(1e-9),
                2
            )
        );
        text += "caution: lowering more than one can lift is for experienced lifters only, at most once a week, with \
                 safety arms at the right height and spotters who know the plan. Education, not medical advice; local \
                 rules and a qualified professional come first.\n";
    }
    if let Some(factor) = found.factor {
        text += &format!(
            "That maximum implies {} times this lifter's strength: --set lifter.strength_scale={}\n",
            rounded(factor, 3),
            rounded(factor * found.own_scale, 4)
        );
    }
    if let Some(profile) = &found.profile {
        text += "\n";
        let header = [
            "share %",
            "load",
            "mean velocity",
            "mean propulsive velocity",
        ];
        let rows = profile
            .rows
            .iter()
            .map(|row| {
                vec![
                    rounded(100.0 * row.share, 0),
                    units.mass(row.load),
                    velocity(found.measure, row.mean_velocity),
                    velocity(found.measure, row.mean_propulsive_velocity),
                ]
            })
            .collect();
        text += &report::table(&header, rows, 0);
    }
    text
}

fn velocity(measure: Measure, value: f64) -> String {
    match measure {
        Measure::Force => format!("{value:.2} m/s"),
        Measure::Torque => format!("{:.0} deg/s", value.to_degrees()),
    }
}

fn as_json(arguments: &Arguments, lifter: &str, found: &Found) -> serde_json::Value {
    json!({
        "summary": {
            "movement": arguments.movement, "lifter": lifter,
            "one_rm_kg": found.one_rm.load.as_kg(),
            "not_lifted_kg": found.one_rm.failed.as_kg(),
            "eccentric_one_rm_kg": found.eccentric.map(|e| e.load.as_kg()),
            "strength_factor": found.factor,
            "strength_scale": found.factor.map(|factor| factor * found.own_scale),
            "step_kg": (found.one_rm.failed - found.one_rm.load).as_kg(),
            "default_step_kg": USUAL_STEP_KG,
        },
        "load_velocity": found.profile.as_ref().map(|profile| profile.rows.iter().map(|row| json!({
            "share": row.share, "load_kg": row.load.as_kg(),
            "mean_velocity": row.mean_velocity,
            "mean_propulsive_velocity": row.mean_propulsive_velocity,
            "velocity_unit": if found.measure == Measure::Force { "m/s" } else { "rad/s" },
        })).collect::<Vec<_>>()),
    })
}

fn as_csv(found: &Found) -> Result<String> {
    let header = [
        "share",
        "load_kg",
        "mean_velocity",
        "mean_propulsive_velocity",
    ];
    let rows = match &found.profile {
        Some(profile) => profile
            .rows
            .iter()
            .map(|row| {
                vec![
                    row.share.to_string(),
                    row.load.as_kg().to_string(),
                    row.mean_velocity.to_string(),
                    row.mean_propulsive_velocity.to_string(),
                ]
            })
            .collect(),
        None => vec![vec![
            "1".to_owned(),
            found.one_rm.load.as_kg().to_string(),
            String::new(),
            String::new(),
        ]],
    };
    report::rows_to_csv(&header, rows.into_iter())
}
