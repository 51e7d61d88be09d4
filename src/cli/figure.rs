//! `torquill figure MOVEMENT -o FILE`: the chart as SVG or PNG, with words and data beside it on request.

use super::options::{Sampling, UnitsOption, Who};
use super::output;
use super::picture::Picture;
use super::setup_options::{SetupOptions, Versus, setups};
use crate::error::Result;
use crate::figures::strength_curve;
use crate::library::Library;
use crate::narrative::strength_words::strength_words;
use crate::report;
use crate::study::{Study, study};
use clap::{ArgMatches, Args};
use std::path::PathBuf;

/// Arguments of `figure`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill figure bench-press --lifter reference-man --load \"80 kg\" -o bench.svg
  torquill figure bench-press --load \"100 kg\" --versus --load \"70 kg\" --band loop-29mm:1 -o bands.png
  torquill figure biceps-curl --size page --theme dark --words --data -o curl.png")]
pub struct Arguments {
    /// Name of the movement (see: torquill movements)
    movement: String,
    #[command(flatten)]
    who: Who,
    #[command(flatten)]
    setup: SetupOptions,
    #[command(flatten)]
    versus: Versus,
    #[command(flatten)]
    sampling: Sampling,
    #[command(flatten)]
    picture: Picture,
    /// Units of the axes
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// Write a caption and an alternative text beside the figure (.caption.txt, .alt.txt)
    #[arg(long)]
    words: bool,
    /// Write the data beside the figure (.csv, one file a setup)
    #[arg(long)]
    data: bool,
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library, matches: Option<&ArgMatches>) -> Result<()> {
    let picture = &arguments.picture;
    picture.check()?;
    let look = picture.look.look()?;
    let units = arguments.units.into();
    let model = arguments.who.model(library, &arguments.movement)?;
    let question = arguments.sampling.question(&arguments.movement, &model)?;
    let setups = setups(&arguments.setup, library, matches, units)?;
    let study = study(&question, &setups)?;
    let scene = strength_curve(&study, units, look)?;
    let mut beside = words(arguments, &study);
    beside.extend(data(arguments, &study));
    for (path, _) in &beside {
        output::check_target(path, picture.look.force)?;
    }
    picture.write(&scene)?;
    beside
        .iter()
        .try_for_each(|(path, text)| output::write_file(path, text.as_bytes()))
}

/// A file beside the picture, and its text.
type Beside = (PathBuf, String);

/// Caption and alternative text, if they were asked for.
fn words(arguments: &Arguments, study: &Study) -> Vec<Beside> {
    if !arguments.words {
        return Vec::new();
    }
    let path = |ending: &str| arguments.picture.output.with_extension(ending);
    let words = strength_words(study, arguments.units.into());
    let caption = format!("{}. {}\n", words.title, words.caption);
    vec![
        (path("caption.txt"), caption),
        (path("alt.txt"), words.description + "\n"),
    ]
}

/// The data, if they were asked for: one file a setup.
fn data(arguments: &Arguments, study: &Study) -> Vec<Beside> {
    let path = |ending: &str| arguments.picture.output.with_extension(ending);
    if !arguments.data {
        return Vec::new();
    }
    match study.setups.as_slice() {
        [] => vec![(path("csv"), report::curve_csv(study, None, false))],
        [only] => vec![(path("csv"), report::curve_csv(study, Some(only), false))],
        several => (1..)
            .zip(several)
            .map(|(number, setup)| {
                let data = report::curve_csv(study, Some(setup), false);
                (path(&format!("{number}.csv")), data)
            })
            .collect(),
    }
}
