//! `torquill figure MOVEMENT -o FILE`: the chart as SVG or PNG, with words and data beside it on request.

use super::canonical::is_typed;
use super::command_call::CommandCall;
use super::data_file;
use super::idle_options::{NEEDS_A_LOAD, check_region_share};
use super::options::{Sampling, UnitsOption, Who};
use super::output;
use super::people_options::PeopleOptions;
use super::picture::{Beside, Picture};
use super::scatter::ScatterOption;
use super::setup_options::{SetupOptions, Versus, setups};
use crate::error::{CommandFault, Error, FigureFault, Result};
use crate::figures::{Sheet, free_bodies, load_holders, muscles_on_skeleton, strength_curve};
use crate::narrative::fibre_words::fibre_warning_lines;
use crate::narrative::figure_words::FigureWords;
use crate::narrative::telling::Telling;
use crate::report;
use crate::study::{SetupStudy, Study, equally_hard, study};
use crate::units::System;
use clap::{Args, ValueEnum};
use std::path::{Path, PathBuf};

/// FigureArguments of `figure`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill figure bench-press --load \"55 kg\" -o bench.svg
  torquill figure bench-press --load \"55 kg\" \\
      --versus --load \"35 kg\" --band loop-14mm:1 -o bands.png
  torquill figure biceps-curl --size page --theme dark \\
      --words --data -o curl.png
  torquill figure biceps-curl --draw muscles -o muscles.png
  torquill figure squat --load \"65 kg\" --draw free-body -o squat.svg
  torquill figure squat --people 200 --sex woman -o people.svg")]
pub struct FigureArguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    #[command(flatten)]
    setup: SetupOptions,
    #[command(flatten)]
    versus: Versus,
    /// Compare setups with the weights as they are, not made equally hard at their hardest place
    #[arg(long)]
    as_loaded: bool,
    #[command(flatten)]
    sampling: Sampling,
    #[command(flatten)]
    scatter: ScatterOption,
    #[command(flatten)]
    people: PeopleOptions,
    #[command(flatten)]
    picture: Picture,
    /// What is drawn
    #[arg(long, value_enum, default_value_t = FigureKind::Curve)]
    draw: FigureKind,
    /// Units of the axes
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Write a caption and an alternative text beside the figure (.caption.txt, .alt.txt)
    #[arg(long)]
    words: bool,
    /// Write the data beside the figure (.csv, one file a setup), or all of it to a file (.csv or .xlsx)
    #[arg(long, value_name = "FILE", num_args = 0..=1)]
    data: Option<Option<PathBuf>>,
}

/// What a figure of a lift shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum FigureKind {
    /// Capacity and demand over the range
    Curve,
    /// The muscles on the skeleton, each at its moment arm
    Muscles,
    /// The lift as a free body: forces, levers, moments
    FreeBody,
    /// Which muscles hold the load at the joint of which most is asked
    Holders,
}

impl FigureKind {
    /// Another figure than the strength curve.
    fn sheet(self, study: &Study, units: System) -> Option<Result<Sheet>> {
        match self {
            Self::Curve => None,
            Self::Muscles => Some(muscles_on_skeleton(study, units)),
            Self::FreeBody => Some(Ok(free_bodies(study, units))),
            Self::Holders => Some(Ok(load_holders(study, units))),
        }
    }
}

impl FigureArguments {
    /// Refuses what the figure that is asked for does not show.
    fn check_idle(&self, call: &CommandCall) -> Result<()> {
        let is_curve = self.draw == FigureKind::Curve;
        let (people, scatter) = (["people", "seed", "sex", "training"], ["scatter"]);
        let of_curve = [&people[..], &scatter].concat();
        let of_curve = of_curve
            .into_iter()
            .map(|id| (id, is_curve, &["draw curve"][..]));
        let has_several = is_typed(call.matches, "versus");
        // Of the others each draws one setup, the first.
        let is_of_one = matches!(self.draw, FigureKind::FreeBody | FigureKind::Holders);
        let mut all = of_curve.chain([
            ("versus", !is_of_one, &["draw curve"][..]),
            ("as_loaded", has_several, &["versus"][..]),
            ("region_share", is_curve, &["draw curve"][..]),
            (
                "samples",
                self.draw != FigureKind::FreeBody,
                &["draw curve", "draw muscles", "draw holders"][..],
            ),
        ]);
        match all.find(|(id, heeds, _)| !heeds && is_typed(call.matches, id)) {
            None => Ok(()),
            Some((id, _, needed)) => Err(Error::bad(CommandFault::Idle {
                option: id.replace('_', "-"),
                needed: needed.iter().map(|one| (*one).to_owned()).collect(),
            })),
        }
    }
}

/// Runs the command.
pub fn run(arguments: &FigureArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    let picture = &arguments.picture;
    picture.check()?;
    arguments.check_idle(call)?;
    let look = picture.look.look()?;
    let units = arguments.units.into();
    let people = &arguments.people;
    let model = people.model(&arguments.who, library, &arguments.movement)?;
    let question = arguments.sampling.question(&arguments.movement, &model)?;
    let setups = setups(&arguments.setup, library, call.matches, units)?;
    check_region_share(call.matches, !setups.is_empty(), &NEEDS_A_LOAD)?;
    if arguments.draw == FigureKind::Muscles && !setups.is_empty() {
        return Err(Error::bad(FigureFault::LoadWithoutPart));
    }
    for path in beside_paths(arguments, setups.len()) {
        output::check_target(&path, picture.look.force)?;
    }
    let (setups, equal_effort) = if arguments.as_loaded {
        (setups, None)
    } else {
        equally_hard(&question, &setups)?
    };
    let study = Study {
        equal_effort,
        ..study(&question, &setups)?
    };
    if let Some(sheet) = arguments.draw.sheet(&study, units) {
        return drawn(arguments, study.told(units), &sheet?, call);
    }
    let study = arguments.scatter.banded(study, &question, &model)?;
    let study = people.peopled(study, &question, library, &model)?;
    let told = study.told(units);
    let words = told.strength_words();
    let scene = call.signed("output", strength_curve(told, &words, look)?)?;
    let mut beside = Vec::new();
    if arguments.words {
        beside.extend(word_files(words, told, picture));
    }
    match &arguments.data {
        None => {}
        Some(None) => beside.extend(data_files(&study, picture, call)?),
        Some(Some(path)) => beside.push((path.clone(), named_data(&study, path, call)?)),
    }
    fibre_warning_lines(&study)
        .iter()
        .for_each(|line| output::note(line));
    picture.write_with(&scene, beside)
}

/// Files beside the picture that are not named by themselves.
fn beside_paths(arguments: &FigureArguments, setups: usize) -> Vec<PathBuf> {
    let picture = &arguments.picture;
    let mut paths = Vec::new();
    if arguments.words {
        paths.extend(word_paths(picture));
    }
    if matches!(arguments.data, Some(None)) {
        let setups = if arguments.draw == FigureKind::Curve {
            setups
        } else {
            1
        };
        paths.extend(data_paths(picture, setups));
    }
    paths
}

/// Where caption and alternative text stand.
fn word_paths(picture: &Picture) -> [PathBuf; 2] {
    ["caption.txt", "alt.txt"].map(|ending| picture.beside(ending))
}

/// Where the data stand: of several setups one file each.
fn data_paths(picture: &Picture, setups: usize) -> Vec<PathBuf> {
    match setups {
        0 | 1 => vec![picture.beside("csv")],
        _ => (1..=setups)
            .map(|number| picture.beside(&format!("{number}.csv")))
            .collect(),
    }
}

/// A figure that brings its own words and data.
fn drawn(
    arguments: &FigureArguments,
    told: Telling<'_>,
    sheet: &Sheet,
    call: &CommandCall,
) -> Result<()> {
    let picture = &arguments.picture;
    let scene = call.signed("output", sheet.chart.scene(picture.look.look()?)?)?;
    let mut beside = Vec::new();
    if arguments.words {
        let words = FigureWords {
            title: sheet.title().to_owned(),
            description: sheet.alt().to_owned(),
            caption: sheet.caption.clone(),
            ..FigureWords::default()
        };
        beside.extend(word_files(words, told, picture));
    }
    if let Some(path) = &arguments.data {
        let path = path.clone().unwrap_or_else(|| picture.beside("csv"));
        let table = report::sheet_data(sheet);
        let bytes = data_file::bytes(&path, &table, &call.drawn("output")?)?;
        beside.push((path, bytes));
    }
    picture.write_with(&scene, beside)
}

/// The data of all setups for one file: it says how the table is printed, of several setups how the figure is drawn.
fn named_data(study: &Study, path: &Path, call: &CommandCall) -> Result<Vec<u8>> {
    let (data, record) = match study.setups.as_slice() {
        [] | [_] => (
            report::curve_data(study, study.setups.first(), false),
            call.tabled("curve", None)?,
        ),
        _ => (report::curves_data(study), call.drawn("output")?),
    };
    data_file::bytes(path, &data, &record)
}

/// Caption and alternative text.
fn word_files(words: FigureWords, told: Telling<'_>, picture: &Picture) -> [Beside; 2] {
    let own = format!("{}. {}", words.title, words.caption);
    let caption = format!("{} {}\n", own.trim_end(), told.drawn_for());
    let [of_caption, of_text] = word_paths(picture);
    [
        (of_caption, caption.into_bytes()),
        (of_text, (words.description + "\n").into_bytes()),
    ]
}

/// The data, one file a setup.
fn data_files(study: &Study, picture: &Picture, call: &CommandCall) -> Result<Vec<Beside>> {
    let data = |number: Option<usize>, setup: Option<&SetupStudy>| -> Result<Vec<u8>> {
        // Weights that were made equally hard are not those that were typed.
        let record = match (study.equal_effort, number, setup) {
            (Some(_), Some(number), Some(setup)) => {
                let load = setup.asked.plain_mass(&study.range.carrier);
                call.tabled_with_load("curve", number, load)?
            }
            _ => call.tabled("curve", number)?,
        };
        let head = record.csv_head();
        Ok((head + &report::curve_data(study, setup, false).csv()).into_bytes())
    };
    let count = study.setups.len();
    let paths = data_paths(picture, count).into_iter().enumerate();
    paths
        .map(|(at, path)| {
            let number = (count > 1).then_some(at);
            Ok((path, data(number, study.setups.get(at))?))
        })
        .collect()
}
