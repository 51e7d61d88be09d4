//! `torquill max MOVEMENT`: the one-repetition maximum, the eccentric one, load and velocity.

use super::command_call::{Answer, CommandCall};
use super::data_file::DataOption;
use super::hung::{Hung, hung};
use super::manner::Manner;
use super::options::{Format, UnitsOption, Who};
use super::output;
use super::people_options::PeopleOptions;
use super::picture::LookOptions;
use super::scatter::ScatterOption;
use super::waiting::watched;
use super::whole_set;
use crate::bounds::bounds;
use crate::error::{Error, MaximumSearchFault, OptionFault, Result};
use crate::figures::load_velocity_chart;
use crate::library::{Model, assemble};
use crate::narrative::cohort_words::stopped_words;
use crate::narrative::maximum_words::{OwnStrength, implied_scale};
use crate::report;
use crate::study::{
    Cohort, MaximumStudy, MaximumWishes, PeoplePart, Question, cohort, maximum_study,
};
use crate::units::{Duration, Mass};
use clap::Args;
use std::path::PathBuf;

/// MaxArguments of `max`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill max bench-press
  torquill max bench-press --from 0.5 --to 1
  torquill max bench-press --eccentric \"3 s\" --velocities -o velocities.png
  torquill max bench-press --to-load \"102.5 kg\"
  torquill max squat --people 20 --sex woman --training novice
  torquill max squat --people 1000 --part 3/100 --format csv")]
pub struct MaxArguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    #[command(flatten)]
    hung: Hung,
    #[command(flatten)]
    manner: Manner,
    /// Smallest step that can be loaded
    #[arg(
        long,
        value_name = "MASS",
        default_value = "2.5 kg",
        conflicts_with = "people"
    )]
    step: String,
    /// Also the maximum that is lowered under control in this time
    #[arg(long, value_name = "TIME", conflicts_with = "people")]
    eccentric: Option<String>,
    /// Also mean velocities over 30 to 100 % of the maximum
    #[arg(long, conflicts_with = "people")]
    velocities: bool,
    /// Strength that a known maximum implies, as a factor on this lifter's
    #[arg(long, value_name = "MASS", conflicts_with = "people")]
    to_load: Option<String>,
    #[command(flatten)]
    scatter: ScatterOption,
    #[command(flatten)]
    people: PeopleOptions,
    /// Of these people only a share, such as 3/100: the shares together are the whole
    #[arg(long, value_name = "K/N", requires = "people")]
    part: Option<String>,
    /// Picture of mean velocity over load (.svg or .png)
    #[arg(short, long, value_name = "FILE", conflicts_with = "people")]
    output: Option<PathBuf>,
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
pub fn run(arguments: &MaxArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    if let Some(path) = &arguments.output {
        arguments.look.picture(path.clone()).check()?;
    }
    let step = mass(&arguments.step)?;
    let wishes = wishes(arguments)?;
    let people = &arguments.people;
    let part = arguments.part.as_deref().map(part_of).transpose()?;
    let model = people.model(&arguments.who, library, &arguments.movement)?;
    let options = arguments.manner.options(&model.movement)?;
    let question = Question::new(&arguments.movement, &model.movement, &model.lifter);
    let setup = hung(&arguments.hung, library)?;
    if let Some(asked) = people.asked(library, &model, part)? {
        let found = watched(|watch| cohort(&question, &setup, &options, &asked, watch))?;
        return match found.is_complete {
            true => print_cohort(arguments, call, &found),
            false => print_stopped(arguments, call, &found),
        };
    }
    let versions = arguments.scatter.versions(&model)?;
    let mut found = maximum_study(&question, &setup, &options, step, wishes)?;
    found.interval = versions.map(|versions| versions.maximum(&question, &setup, &options));
    print(arguments, call, &model, &found)?;
    draw(arguments, call, &found)
}

/// "3/100": the third of a hundred parts.
fn part_of(text: &str) -> Result<PeoplePart> {
    let counts = text.split_once('/').and_then(|(number, of)| {
        let number: usize = number.trim().parse().ok()?;
        Some((number, of.trim().parse().ok()?))
    });
    counts
        .filter(|(number, of)| (1..=*of).contains(number))
        .map(|(number, of)| PeoplePart { number, of })
        .ok_or_else(|| Error::bad(OptionFault::NoPart(text.to_owned())))
}

fn mass(text: &str) -> Result<Mass> {
    Mass::from_text(text).map_err(Error::bad)
}

fn wishes(arguments: &MaxArguments) -> Result<MaximumWishes> {
    let time = |text: &String| Duration::from_text(text).map_err(Error::bad);
    let most = Mass::from_kg(bounds().planned_load.most());
    let known = arguments.to_load.as_deref().map(mass).transpose()?;
    if let Some(load) = known.filter(|load| *load > most) {
        return Err(Error::bad(MaximumSearchFault::KnownOutside { load, most }));
    }
    Ok(MaximumWishes {
        eccentric: arguments.eccentric.as_ref().map(time).transpose()?,
        velocities: arguments.velocities || arguments.output.is_some(),
        known,
    })
}

fn print_cohort(arguments: &MaxArguments, call: &CommandCall, found: &Cohort) -> Result<()> {
    found.check()?;
    let answer = Answer {
        table: &|| report::cohort_text(found, arguments.units.into()),
        json: &|| report::cohort_json(found),
        data: &|| report::cohort_data(found),
    };
    call.give(arguments.format, &answer)
}

/// What was found before an interruption ends the program: told for people, and in JSON, which says how many it is of. Rows that
/// look like the whole are not written.
fn print_stopped(arguments: &MaxArguments, call: &CommandCall, found: &Cohort) -> Result<()> {
    let is_table = arguments.format == Format::Csv || call.data_path().is_some();
    match is_table || arguments.part.is_some() {
        true => output::note(&stopped_words(found)),
        false => print_cohort(arguments, call, found)?,
    }
    whole_set::end_now()
}

fn print(
    arguments: &MaxArguments,
    call: &CommandCall,
    model: &Model,
    found: &MaximumStudy,
) -> Result<()> {
    let own_scale = model.record.strength_scale;
    let own = OwnStrength {
        scale: own_scale,
        takes_implied: found
            .factor
            .is_none_or(|factor| takes(arguments, call, &implied_scale(factor, own_scale))),
    };
    let answer = Answer {
        table: &|| report::maximum_text(found, own, arguments.units.into()),
        json: &|| report::maximum_json(found, own_scale),
        data: &|| report::maximum_data(found, own_scale),
    };
    call.give(arguments.format, &answer)
}

/// Whether the lifter is accepted with this factor on strength.
fn takes(arguments: &MaxArguments, call: &CommandCall, scale: &str) -> bool {
    const PATH: &str = "lifter.strength_scale";
    let who = &arguments.who;
    let mut sets = who.set.clone();
    sets.retain(|set| {
        set.split_once('=')
            .is_none_or(|(path, _)| path.trim() != PATH)
    });
    sets.push(format!("{PATH}={scale}"));
    assemble(call.models, &who.lifter, &arguments.movement, &sets).is_ok()
}

fn draw(arguments: &MaxArguments, call: &CommandCall, found: &MaximumStudy) -> Result<()> {
    let Some(path) = &arguments.output else {
        return Ok(());
    };
    let equations = &call.models.published()?.estimates.velocity;
    let look = arguments.look.look()?;
    let scene = load_velocity_chart(found, equations, arguments.units.into(), look)?;
    let picture = arguments.look.picture(path.clone());
    picture.write(&call.signed("output", scene)?)
}
