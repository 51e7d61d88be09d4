//! `torquill rep MOVEMENT`: simulates one repetition.

use super::command_call::{Answer, CommandCall};
use super::data_file::DataOption;
use super::hung::{Hung, hung};
use super::manner::{Manner, without_lowering};
use super::options::{Format, UnitsOption, Who};
use super::picture::{LookOptions, Picture};
use super::whole_set;
use crate::draw::outlined_svg;
use crate::error::{Error, RepetitionOptions, Result};
use crate::figures::{animation, rep_over_time, rep_over_way, rep_versus_plain};
use crate::rep::{After, RepOptions};
use crate::report;
use crate::session::overload_ground::handed_back;
use crate::study::{Heaviness, Question, RepStudy, VersusPlain, repetition, versus_plain};
use crate::units::System;
use clap::Args;
use std::path::PathBuf;

/// RepArguments of `rep`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill rep bench-press --load 100%
  torquill rep bench-press --load \"35 kg\" --band loop-14mm:1 \\
      --pause \"1 s\" -o rep.png
  torquill rep squat --load 85% --format json
  torquill rep bench-press --load 100% --band loop-22mm:1 \\
      --versus-plain -o versus.png
  torquill rep bench-press --load 105% --lowering \"3 s\" --hand-over")]
pub struct RepArguments {
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
    #[command(flatten)]
    data: DataOption,
}

/// Runs the command; a load that is not lifted is drawn and printed, and ends with status 1.
pub fn run(arguments: &RepArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    for picture in pictures(arguments) {
        picture.check()?;
    }
    check_animation(arguments)?;
    let heaviness = Heaviness::from_text(&arguments.load)?;
    let model = arguments.who.model(library, &arguments.movement)?;
    let mut options = arguments.manner.options(&model.movement)?;
    if arguments.hand_over {
        let movement = &model.movement;
        handed_back(movement.handling.overload, &movement.title)?;
        options.after = After::HandOver;
        options.lowering = options.lowering.or(RepOptions::default().lowering);
        if options.lowering_s().is_none() {
            return Err(without_lowering("hand-over"));
        }
    }
    let mut question = Question::new(&arguments.movement, &model.movement, &model.lifter);
    question.changes = &model.changes;
    let setup = hung(&arguments.hung, library)?;
    let units: System = arguments.units.into();
    if arguments.versus_plain {
        let both = versus_plain(&question, &setup, heaviness, &options)?;
        return compare(arguments, call, &both, units);
    }
    let rep = repetition(&question, &setup, heaviness, &options)?;
    let answer = Answer {
        table: &|| report::repetition_text(&rep, units),
        json: &|| report::repetition_json(&rep),
        data: &|| report::repetition_data(&rep),
    };
    call.give(arguments.format, &answer)?;
    draw(arguments, call, &rep, units)?;
    rep.check_lifted()
}

/// The pictures that were asked for.
fn pictures(arguments: &RepArguments) -> impl Iterator<Item = Picture> {
    let RepArguments {
        output,
        over_time,
        animation,
        ..
    } = arguments;
    let paths = [output, over_time, animation].into_iter().flatten();
    paths.map(|path| arguments.look.picture(path.clone()))
}

/// Refuses a moving picture that is no SVG, and pictures that a comparison has not.
fn check_animation(arguments: &RepArguments) -> Result<()> {
    let RepArguments {
        over_time,
        animation,
        versus_plain,
        ..
    } = arguments;
    if *versus_plain && (over_time.is_some() || animation.is_some()) {
        return Err(Error::bad(RepetitionOptions::ComparisonPictures));
    }
    let ending = |path: &PathBuf| path.extension().map(|ending| ending.to_ascii_lowercase());
    if animation
        .as_ref()
        .is_some_and(|path| ending(path).is_none_or(|ending| ending != "svg"))
    {
        return Err(Error::bad(RepetitionOptions::AnimationNotSvg));
    }
    Ok(())
}

/// Prints and draws a setup beside plain weight of the same hardest effort.
fn compare(
    arguments: &RepArguments,
    call: &CommandCall,
    both: &VersusPlain,
    units: System,
) -> Result<()> {
    let answer = Answer {
        table: &|| report::versus_text(both, units),
        json: &|| report::versus_json(both, units),
        data: &|| report::versus_data(both),
    };
    call.give(arguments.format, &answer)?;
    if let Some(path) = &arguments.output {
        let scene = rep_versus_plain(both, units, arguments.look.look()?)?;
        let scene = call.signed("output", scene)?;
        arguments.look.picture(path.clone()).write(&scene)?;
    }
    both.with.check_lifted()?;
    both.plain.check_lifted()
}

fn draw(arguments: &RepArguments, call: &CommandCall, rep: &RepStudy, units: System) -> Result<()> {
    let look = arguments.look.look()?;
    if let Some(path) = &arguments.output {
        let picture = arguments.look.picture(path.clone());
        picture.write(&call.signed("output", rep_over_way(rep, units, look)?)?)?;
    }
    if let Some(path) = &arguments.over_time {
        let picture = arguments.look.picture(path.clone());
        picture.write(&call.signed("over_time", rep_over_time(rep, units, look)?)?)?;
    }
    if let Some(path) = &arguments.animation {
        let moving = animation(rep, units, look)?;
        let ground = outlined_svg(&call.signed("animation", moving.ground.clone())?)?;
        whole_set::write_file(path, moving.over(&ground).as_bytes())?;
    }
    Ok(())
}
