//! `torquill lecture -o DIR`: the whole set of lecture figures with words, data and a page of all.

use super::command_call::CommandCall;
use super::complain::warn;
use super::explore::whole_page;
use super::folder::{check_folder, check_names, write_into};
use super::kept_output::is_kept;
use super::options::UnitsOption;
use super::output;
use super::picture::LookOptions;
use super::whole_set::tell_settled;
use crate::draw::png;
use crate::error::{Result, Shelf};
use crate::narrative::lecture_words::{figures_written, left_out_in_words};
use crate::report::{LectureSet, PAGE, PictureWriters, slides};
use crate::study::Desk;
use clap::Args;
use indicatif::{ProgressBar, ProgressStyle};
use std::path::PathBuf;

/// LectureArguments of `lecture`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill lecture -o figures
  torquill lecture --lifter reference-woman --size page --theme dark -o handout
  torquill lecture --for bench-press --steps -o bench

Every figure is written as SVG and PNG, with caption (.caption.txt), alternative
text (.alt.txt), speaker's notes (.notes.txt) and data (.csv) beside it.
index.html in the same folder shows them all, works offline and prints well;
lecture.pptx has a slide for each, with title, notes and alternative text;
lab.html is the live page, to which each figure of a lift leads.")]
pub struct LectureArguments {
    /// Folder to write into; made if it is not there
    #[arg(short, long, value_name = "DIR")]
    output: PathBuf,
    /// Lifter: a built-in name, or a file ending in .ron
    #[arg(long, value_name = "NAME|FILE", default_value = "reference-man")]
    lifter: String,
    /// Units of axes and words
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    /// A lecture on one lift (see: torquill movements)
    #[arg(long = "for", value_name = "MOVEMENT")]
    about: Option<String>,
    /// Write each picture also step by step as it is built up (.step-1.png and so on)
    #[arg(long)]
    steps: bool,
    #[command(flatten)]
    look: LookOptions,
}

/// Runs the command.
pub fn run(arguments: &LectureArguments, call: &CommandCall) -> Result<()> {
    let look = arguments.look.look()?;
    check_folder(&arguments.output)?;
    let units = arguments.units.into();
    warn(
        &call.models.doubts_of(Shelf::Lifters, &arguments.lifter)?,
        units,
    );
    let mut desk = Desk::open(call.models, &arguments.lifter, units)?;
    if let Some(movement) = &arguments.about {
        desk = desk.about(movement)?;
    }
    for (movement, error) in desk.left_out() {
        output::note(&left_out_in_words(movement, error, units));
    }
    let set = LectureSet::of(&desk, whole_page(call.models, &arguments.lifter)?);
    check_names(&arguments.output, &set.file_names(), arguments.look.force)?;
    let writers = PictureWriters {
        svg: arguments.look.svg_writer(),
        png,
        in_steps: arguments.steps,
        slides,
    };
    let record = call.drawn("output")?;
    let progress = bar(set.count());
    let drawn = set.drawn(look, writers, &record, &|| progress.inc(1));
    progress.finish_and_clear();
    let files = set.files(look, writers, &record, drawn?)?;
    let names: Vec<String> = files.iter().map(|(name, _)| name.clone()).collect();
    check_names(&arguments.output, &names, arguments.look.force)?;
    write_into(&arguments.output, &files)?;
    let page = arguments.output.join(PAGE).display().to_string();
    tell_settled(figures_written(set.count(), &page));
    Ok(())
}

/// A bar on standard error; indicatif hides it where that is no terminal.
fn bar(count: usize) -> ProgressBar {
    if is_kept() {
        return ProgressBar::hidden();
    }
    let bar = ProgressBar::new(count as u64).with_message("figures");
    let style = ProgressStyle::with_template("{msg} {bar:32} {pos}/{len}");
    match style {
        Ok(style) => bar.with_style(style),
        Err(_) => bar,
    }
}
