//! `torquill rep MOVEMENT`: simulates one repetition.

use super::figure::Picture;
use super::hung::{Hung, hung};
use super::look::LookOptions;
use super::options::{Format, UnitsOption, Who};
use super::output;
use crate::draw::outlined_svg;
use crate::error::{Error, Result};
use crate::figures::{animation, rep_over_time, rep_over_way, rep_versus_plain, versus_sentences};
use crate::library::Library;
use crate::movement::{Measure, Movement};
use crate::narrative::name_of;
use crate::narrative::places::{position_in_words, sides_in_words, velocity_in_words};
use crate::narrative::rep_sentences;
use crate::rep::{After, Outcome, RepOptions, TurnRound};
use crate::report;
use crate::study::{
    Heaviness, Question, RepStudy, USUAL_STEP_KG, VersusPlain, repetition, versus_plain,
};
use crate::units::{Duration, Mass, System, rounded};
use clap::Args;
use serde_json::{Value, json};
use std::path::PathBuf;

/// Arguments of `rep`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill rep bench-press --load 100%
  torquill rep bench-press --load \"70 kg\" --band loop-14mm:1 --pause \"1 s\" -o rep.png
  torquill rep squat --load 85% --format json
  torquill rep bench-press --load 100% --band loop-22mm:1 --versus-plain -o versus.png
  torquill rep bench-press --load 105% --lowering \"3 s\" --hand-over")]
pub struct Arguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    /// Plain load as a mass, "80 kg", or as a share of the maximum with this setup, 85%
    #[arg(long, value_name = "MASS|SHARE", default_value = "100%")]
    load: String,
    #[command(flatten)]
    hung: Hung,
    #[command(flatten)]
    manner: Manner,
    /// Spotters take the load at the bottom
    #[arg(long)]
    hand_over: bool,
    /// Compare with plain weight of the same hardest effort: velocity, sticking region, end of the lift
    #[arg(long)]
    versus_plain: bool,
    /// Picture of velocity and force over the way of the load (.svg or .png)
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// The same over time (.svg or .png)
    #[arg(long, value_name = "FILE")]
    over_time: Option<PathBuf>,
    /// Animated picture without script (.svg); it stands still where motion is unwelcome
    #[arg(long, value_name = "FILE")]
    animation: Option<PathBuf>,
    #[command(flatten)]
    look: LookOptions,
    /// Units of text and axes
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Form of the output
    #[arg(long, value_enum, default_value_t = Format::Table)]
    format: Format,
}

/// How a repetition is done.
#[derive(Debug, Args)]
pub struct Manner {
    /// Time of the lowering; "0 s" starts from a hold at the bottom. Without it 2 s, and no lowering in lifts
    /// that begin at the floor or in a hang
    #[arg(long, value_name = "TIME")]
    lowering: Option<String>,
    /// Hold at the bottom for this long; touch and go without it
    #[arg(long, value_name = "TIME")]
    pause: Option<String>,
    /// Start of the lift in the range, 0 to 1
    #[arg(long, value_name = "RANGE", default_value_t = 0.0)]
    from: f64,
    /// End of the lift in the range, 0 to 1
    #[arg(long, value_name = "RANGE", default_value_t = 1.0)]
    to: f64,
    /// Leave out the extra force that lowering leaves behind
    #[arg(long)]
    no_enhancement: bool,
}

impl Manner {
    /// The options of the simulation of a movement.
    pub fn options(&self, movement: &Movement) -> Result<RepOptions> {
        let time = |text: &String| Duration::from_text(text).map_err(Error::bad);
        let usual = RepOptions::usual_for(movement);
        let options = RepOptions {
            from: self.from,
            to: self.to,
            lowering: match &self.lowering {
                Some(text) => Some(time(text)?),
                None => usual.lowering,
            },
            turn: match &self.pause {
                Some(text) => TurnRound::Pause(time(text)?),
                None => usual.turn,
            },
            enhancement: !self.no_enhancement,
            ..usual
        };
        options.check()?;
        Ok(options)
    }
}

/// Runs the command; a load that is not lifted is drawn and printed, and ends with status 1.
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    let pictures: Vec<Picture> = [
        &arguments.output,
        &arguments.over_time,
        &arguments.animation,
    ]
    .into_iter()
    .flatten()
    .map(|path| arguments.look.picture(path.clone()))
    .collect();
    for picture in &pictures {
        picture.check()?;
    }
    let heaviness = Heaviness::from_text(&arguments.load)?;
    let model = arguments.who.model(library, &arguments.movement)?;
    let mut options = arguments.manner.options(&model.movement)?;
    if arguments.hand_over {
        options.after = After::HandOver;
        options.lowering = options.lowering.or(RepOptions::default().lowering);
    }
    let question = Question::new(&arguments.movement, &model.movement, &model.lifter);
    let setup = hung(&arguments.hung, library)?;
    let step = Mass::from_kg(USUAL_STEP_KG);
    let units: System = arguments.units.into();
    if arguments.versus_plain {
        let both = versus_plain(&question, &setup, heaviness, &options, step)?;
        return compare(arguments, &both, units);
    }
    let rep = repetition(&question, &setup, heaviness, &options, step)?;
    let text = match arguments.format {
        Format::Json => report::pretty(&json(&rep))?,
        Format::Csv => csv(&rep)?,
        Format::Table => sentences(&rep, units),
    };
    output::print(&text)?;
    draw(arguments, &rep, units)?;
    verdict(&rep, units)
}

/// Exit status 1, with the reason, where the load is not lifted.
fn verdict(rep: &RepStudy, units: System) -> Result<()> {
    match rep.trace.outcome {
        Outcome::Lockout | Outcome::HandedOver => Ok(()),
        Outcome::Stalled { .. } if rep.is_stuck_at_start() => Err(Error::no_answer(
            "the load is not lifted: it does not leave the start",
        )
        .hint(max_hint(rep, units))),
        Outcome::Stalled { position, .. } => Err(Error::no_answer(format!(
            "the load is not lifted: it stops {}",
            position_in_words(rep, position, units)
        ))
        .hint(max_hint(rep, units))),
        Outcome::LostInLowering { position, .. } => Err(Error::no_answer(format!(
            "the load is too heavy to be lowered in this time: it gets away {}",
            position_in_words(rep, position, units)
        ))
        .hint(max_hint(rep, units))),
    }
}

/// Prints and draws a setup beside plain weight of the same hardest effort.
fn compare(arguments: &Arguments, both: &VersusPlain, units: System) -> Result<()> {
    let text = match arguments.format {
        Format::Json => report::pretty(&json!({
            "hardest_effort": both.effort,
            "with": json(&both.with),
            "plain": json(&both.plain),
            "sentences": versus_sentences(both, units),
        }))?,
        Format::Csv => {
            return Err(Error::bad("--versus-plain gives a table or JSON, not CSV")
                .hint("--format json holds the samples of both repetitions"));
        }
        Format::Table => {
            let mut lines = vec![format!(
                "{}, {}",
                both.with.still.movement_title, both.with.still.lifter_title
            )];
            lines.extend(versus_sentences(both, units));
            lines.join("\n") + "\n"
        }
    };
    output::print(&text)?;
    if let Some(path) = &arguments.output {
        let scene = rep_versus_plain(both, units, arguments.look.look()?)?;
        arguments.look.picture(path.clone()).write(&scene)?;
    }
    if arguments.over_time.is_some() || arguments.animation.is_some() {
        return Err(Error::bad("--versus-plain draws one picture, over the way")
            .hint("give it with -o; leave out --over-time and --animation"));
    }
    verdict(&both.with, units)?;
    verdict(&both.plain, units)
}

fn max_hint(rep: &RepStudy, units: System) -> String {
    match rep.one_rm {
        Some(max) => format!("the maximum with this setup is {}", units.mass(max.load)),
        None => "take load off, or help with a spotter or a band from above".to_owned(),
    }
}

fn draw(arguments: &Arguments, rep: &RepStudy, units: System) -> Result<()> {
    let look = arguments.look.look()?;
    if let Some(path) = &arguments.output {
        let picture = arguments.look.picture(path.clone());
        picture.write(&rep_over_way(rep, units, look)?)?;
    }
    if let Some(path) = &arguments.over_time {
        let picture = arguments.look.picture(path.clone());
        picture.write(&rep_over_time(rep, units, look)?)?;
    }
    if let Some(path) = &arguments.animation {
        if path.extension().is_none_or(|ending| ending != "svg") {
            return Err(
                Error::bad("an animated picture is an .svg file").hint("--animation rep.svg")
            );
        }
        let moving = animation(rep, units, look)?;
        let ground = outlined_svg(&moving.ground)?;
        output::write_file(path, moving.over(&ground).as_bytes())?;
    }
    Ok(())
}

fn sentences(rep: &RepStudy, units: System) -> String {
    let mut text = format!(
        "{}, {}, {}\n{}\n\n",
        rep.still.movement_title,
        rep.still.lifter_title,
        name_of(&rep.still, &rep.still.setups[0], units),
        sides_in_words(&rep.still)
    );
    for line in rep_sentences(rep, units) {
        text += &line;
        text.push('\n');
    }
    if let Some(lift) = rep.trace.lift {
        let velocity = |v: f64| velocity_in_words(rep.trace.measure, v);
        text += &format!(
            "\nLift: {} s, mean velocity {}, mean propulsive velocity {}, peak {}.\n",
            rounded(lift.time_s, 2),
            velocity(lift.mean_velocity),
            velocity(lift.mean_propulsive_velocity),
            velocity(lift.peak_velocity),
        );
        text += &format!(
            "Power: mean {} W, peak {} W.",
            rounded(lift.mean_power_w, 0),
            rounded(lift.peak_power_w, 0)
        );
        if lift.peak_force_over_demand > 0.0 {
            text += &format!(
                " Greatest force {} % of the most that the load asks for.\n",
                rounded(100.0 * lift.peak_force_over_demand, 0)
            );
        } else {
            text += " The load goes up by itself: the lifter can only hold it back.\n";
        }
    }
    if let Some(max) = rep.one_rm {
        text += &format!("Maximum with this setup: {}.\n", units.mass(max.load));
    }
    text
}

/// Summary and samples as JSON.
fn json(rep: &RepStudy) -> Value {
    let is_force = rep.trace.measure == Measure::Force;
    let outcome = match rep.trace.outcome {
        Outcome::Lockout => "lockout",
        Outcome::HandedOver => "handed_over",
        Outcome::Stalled { .. } => "stalled",
        Outcome::LostInLowering { .. } => "lost_in_lowering",
    };
    let place = match rep.trace.outcome {
        Outcome::Stalled { range, .. } | Outcome::LostInLowering { range, .. } => Some(range),
        _ => None,
    };
    let mark = |m: crate::rep::Mark| {
        json!({
            "time_s": m.time_s, "range": m.range,
            "position_m": is_force.then_some(m.position),
            "angle_deg": m.angle_rad.to_degrees(),
            velocity_key(is_force): m.velocity,
        })
    };
    let sticking = rep.trace.sticking.map(|s| {
        json!({
            "first_peak": mark(s.first_peak), "minimum": mark(s.minimum),
            "second_peak": s.second_peak.map(mark), "duration_s": s.duration_s(),
        })
    });
    let lift = rep.trace.lift.map(|l| {
        json!({
            "time_s": l.time_s,
            "mean_velocity": l.mean_velocity,
            "mean_propulsive_velocity": l.mean_propulsive_velocity,
            "peak_velocity": l.peak_velocity,
            "velocity_unit": if is_force { "m/s" } else { "rad/s" },
            "mean_power_w": l.mean_power_w,
            "peak_power_w": l.peak_power_w,
            "peak_force_over_demand": l.peak_force_over_demand,
            "deceleration_share": l.deceleration_share,
        })
    });
    let still = report::summary(&rep.still, rep.still.setups.first());
    json!({
        "summary": {
            "movement": rep.still.movement_name, "lifter": rep.still.lifter_name,
            "setup": name_of(&rep.still, &rep.still.setups[0], System::Metric),
            "load_kg": rep.load.as_kg(),
            "one_rm_kg": rep.one_rm.map(|m| m.load.as_kg()),
            "outcome": outcome, "stops_at_range": place,
            "sticking_in_motion": sticking, "lift": lift,
            "sticking_still": still,
        },
        "samples": rep.trace.samples.iter().map(|s| json!({
            "time_s": s.time_s, "phase": s.phase.word(), "range": s.range,
            "position_m": is_force.then_some(s.position),
            "angle_deg": s.angle_rad.to_degrees(),
            velocity_key(is_force): s.velocity,
            if is_force { "acceleration_m_s2" } else { "acceleration_rad_s2" }: s.acceleration,
            if is_force { "force_n" } else { "torque_nm" }: s.force,
            if is_force { "demand_n" } else { "demand_nm" }: s.demand,
            "effort": s.effort, "activation": s.activation,
            "limiting_joint": s.limiting.joint(),
        })).collect::<Vec<_>>(),
    })
}

fn velocity_key(is_force: bool) -> &'static str {
    if is_force {
        "velocity_m_s"
    } else {
        "velocity_rad_s"
    }
}

fn csv(rep: &RepStudy) -> Result<String> {
    let is_force = rep.trace.measure == Measure::Force;
    let header = [
        "time_s",
        "phase",
        "range",
        if is_force {
            "position_m"
        } else {
            "position_rad"
        },
        "angle_deg",
        velocity_key(is_force),
        if is_force {
            "acceleration_m_s2"
        } else {
            "acceleration_rad_s2"
        },
        if is_force { "force_n" } else { "torque_nm" },
        if is_force { "demand_n" } else { "demand_nm" },
        "effort",
        "activation",
        "limiting_joint",
    ];
    let rows = rep.trace.samples.iter().map(|s| {
        vec![
            s.time_s.to_string(),
            s.phase.word().to_owned(),
            s.range.to_string(),
            s.position.to_string(),
            s.angle_rad.to_degrees().to_string(),
            s.velocity.to_string(),
            s.acceleration.to_string(),
            s.force.to_string(),
            s.demand.to_string(),
            s.effort.to_string(),
            s.activation.to_string(),
            s.limiting.joint().to_owned(),
        ]
    });
    report::rows_to_csv(&header, rows)
}
