//! `torquill figure MOVEMENT -o FILE`: the chart as SVG or PNG, with words and data beside it on request.

use super::command_call::CommandCall;
use super::options::{Sampling, UnitsOption, Who};
use super::output;
use super::picture::{Beside, Picture};
use super::setup_options::{SetupOptions, Versus, setups};
use crate::error::Result;
use crate::figures::strength_curve;
use crate::narrative::fibre_words::fibre_warning_lines;
use crate::narrative::figure_words::FigureWords;
use crate::narrative::lecture_words::lecture_caption;
use crate::report;
use crate::study::{Study, study};
use clap::Args;

/// FigureArguments of `figure`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill figure bench-press --load \"55 kg\" -o bench.svg
  torquill figure bench-press --load \"55 kg\" \\
      --versus --load \"35 kg\" --band loop-14mm:1 -o bands.png
  torquill figure biceps-curl --size page --theme dark \\
      --words --data -o curl.png")]
pub struct FigureArguments {
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
pub fn run(arguments: &FigureArguments, call: &CommandCall) -> Result<()> {
    let library = call.models;
    let picture = &arguments.picture;
    picture.check()?;
    let look = picture.look.look()?;
    let units = arguments.units.into();
    let model = arguments.who.model(library, &arguments.movement)?;
    let question = arguments.sampling.question(&arguments.movement, &model)?;
    let setups = setups(&arguments.setup, library, call.matches, units)?;
    let study = study(&question, &setups)?;
    let told = study.told(units);
    let words = told.strength_words();
    let scene = call.signed("output", strength_curve(told, &words, look)?)?;
    let mut beside = Vec::new();
    if arguments.words {
        beside.extend(word_files(words, &study.lifter_title, picture));
    }
    if arguments.data {
        beside.extend(data_files(&study, picture, call)?);
    }
    fibre_warning_lines(&study)
        .iter()
        .for_each(|line| output::note(line));
    picture.write_with(&scene, beside)
}

/// Caption and alternative text.
fn word_files(words: FigureWords, who: &str, picture: &Picture) -> [Beside; 2] {
    let caption = lecture_caption(&words.caption, who);
    let caption = format!("{}. {caption}\n", words.title);
    [
        (picture.beside("caption.txt"), caption),
        (picture.beside("alt.txt"), words.description + "\n"),
    ]
}

/// The data, one file a setup.
fn data_files(study: &Study, picture: &Picture, call: &CommandCall) -> Result<Vec<Beside>> {
    let data = |number, setup| call.table("curve", number, &report::curve_csv(study, setup, false));
    match study.setups.as_slice() {
        [] => Ok(vec![(picture.beside("csv"), data(None, None)?)]),
        [only] => Ok(vec![(picture.beside("csv"), data(None, Some(only))?)]),
        several => (1..)
            .zip(several)
            .map(|(number, setup)| {
                let path = picture.beside(&format!("{number}.csv"));
                Ok((path, data(Some(number - 1), Some(setup))?))
            })
            .collect(),
    }
}
