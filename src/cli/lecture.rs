//! `torquill lecture -o DIR`: the whole set of lecture figures with words, data and a page of all.

use super::figure::{SvgWriter, svg_writer};
use super::look::LookOptions;
use super::options::UnitsOption;
use super::output;
use crate::draw::Theme;
use crate::draw::png;
use crate::error::{CommandFault, Error, Fault, FigureFault, Result};
use crate::figures::Sheet;
use crate::lecture::{LECTURE, LectureFigure};
use crate::library::Library;
use crate::plot::Look;
use crate::report::{PageFigure, PageHead, lecture_page, rows_to_csv};
use crate::study::Desk;
use clap::Args;
use indicatif::{ProgressBar, ProgressStyle};
use rayon::prelude::{IndexedParallelIterator, IntoParallelRefIterator, ParallelIterator};
use std::path::{Path, PathBuf};

/// Arguments of `lecture`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:
  torquill lecture -o figures
  torquill lecture --lifter reference-woman --size page --theme dark -o handout

Every figure is written as SVG and PNG, with caption (.caption.txt), alternative text (.alt.txt) and
data (.csv) beside it; index.html in the same folder shows them all, works offline and prints well.")]
pub struct Arguments {
    /// Folder to write into; made if it is not there
    #[arg(short, long, value_name = "DIR")]
    output: PathBuf,
    /// Lifter: a built-in name, or a file ending in .ron
    #[arg(long, value_name = "NAME|FILE", default_value = "reference-man")]
    lifter: String,
    /// Units of axes and words
    #[arg(long, value_enum, default_value_t = UnitsOption::Metric)]
    units: UnitsOption,
    #[command(flatten)]
    look: LookOptions,
}

/// Endings of the files of one figure.
const ENDINGS: [&str; 5] = ["svg", "png", "csv", "caption.txt", "alt.txt"];

/// One figure, ready to be written.
struct Finished {
    file: String,
    idea: &'static str,
    sheet: Sheet,
    contents: [Vec<u8>; 5],
}

/// Runs the command.
pub fn run(arguments: &Arguments, library: &Library) -> Result<()> {
    let look = arguments.look.look()?;
    check_folder(&arguments.output)?;
    let desk = Desk::open(library, &arguments.lifter, arguments.units.into())?;
    for (movement, error) in desk.left_out() {
        anstream::eprintln!("left out: {movement}, because {error}");
    }
    let figures: Vec<&LectureFigure> = LECTURE
        .iter()
        .filter(|figure| figure.can_be_drawn(&desk))
        .collect();
    let names: Vec<String> = figures
        .iter()
        .enumerate()
        .map(|(index, figure)| format!("{:02}-{}", index + 1, figure.name))
        .collect();
    check_files(arguments, &names)?;
    let write_svg = svg_writer(arguments.look.live_text);
    let progress = bar(figures.len());
    let finished = figures
        .par_iter()
        .zip(&names)
        .map(|(figure, name)| {
            let done = finish(&desk, figure, name, look, write_svg);
            progress.inc(1);
            done
        })
        .collect::<Result<Vec<_>>>();
    progress.finish_and_clear();
    write(arguments, &desk, look, &finished?)
}

/// A bar on standard error; indicatif hides it where that is no terminal.
fn bar(count: usize) -> ProgressBar {
    let bar = ProgressBar::new(count as u64).with_message("figures");
    let style = ProgressStyle::with_template("{msg} {bar:32} {pos}/{len}");
    match style {
        Ok(style) => bar.with_style(style),
        Err(_) => bar,
    }
}

fn check_folder(folder: &Path) -> Result<()> {
    if folder.exists() && !folder.is_dir() {
        return Err(Error::bad(CommandFault::TargetIsFile {
            file: folder.display().to_string(),
        }));
    }
    Ok(())
}

/// Refuses to replace files unasked, before anything is computed.
fn check_files(arguments: &Arguments, names: &[String]) -> Result<()> {
    if arguments.look.force {
        return Ok(());
    }
    let mut files: Vec<String> = names
        .iter()
        .flat_map(|name| ENDINGS.map(|ending| format!("{name}.{ending}")))
        .collect();
    files.push("index.html".to_owned());
    let there: Vec<&String> = files
        .iter()
        .filter(|file| arguments.output.join(file).exists())
        .collect();
    match there.as_slice() {
        [] => Ok(()),
        [first, others @ ..] => Err(Error::bad(CommandFault::SetExists {
            file: arguments.output.join(first).display().to_string(),
            others: others.len(),
        })),
    }
}

/// Builds a figure and everything beside it.
fn finish(
    desk: &Desk<'_>,
    figure: &LectureFigure,
    name: &str,
    look: Look,
    write_svg: SvgWriter,
) -> Result<Finished> {
    let made = || -> Result<Finished> {
        let sheet = (figure.build)(desk)?;
        let scene = sheet.chart.scene(look)?;
        let header: Vec<&str> = sheet.data.header.iter().map(String::as_str).collect();
        let data = rows_to_csv(&header, sheet.data.rows.iter().cloned());
        let caption = format!(
            "{}. {}\n",
            sheet.title().trim_end_matches('.'),
            sheet.caption
        );
        let alt = format!("{}\n", sheet.alt());
        Ok(Finished {
            file: name.to_owned(),
            idea: figure.idea,
            contents: [
                write_svg(&scene)?.into_bytes(),
                png(&scene, 1.0)?,
                data.into_bytes(),
                caption.into_bytes(),
                alt.into_bytes(),
            ],
            sheet,
        })
    };
    made().map_err(|error| in_figure(error, name))
}

/// The same fault, saying which figure it stopped.
fn in_figure(error: Error, name: &str) -> Error {
    let within = |fault: &Fault| {
        let what = fault.what.clone();
        let inner = what.unwrap_or_else(|| fault.message.clone().into());
        let mut outer = Fault::new(FigureFault::Within {
            figure: name.to_owned(),
            what: Box::new(inner),
        });
        outer.hints.clone_from(&fault.hints);
        outer
    };
    let faults: Vec<Fault> = error.faults().iter().map(within).collect();
    match (error.exit_status(), faults.first()) {
        (
            1,
            Some(Fault {
                what: Some(what),
                hints,
                ..
            }),
        ) => {
            let told = Error::no_answer(what.clone());
            hints
                .iter()
                .fold(told, |error, hint| error.hint(hint.clone()))
        }
        _ => Error::bad_input(faults),
    }
}

fn write(arguments: &Arguments, desk: &Desk<'_>, look: Look, finished: &[Finished]) -> Result<()> {
    let folder = &arguments.output;
    std::fs::create_dir_all(folder).map_err(|fault| {
        Error::bad(CommandFault::FolderNotMade {
            folder: folder.display().to_string(),
            cause: fault.to_string(),
        })
    })?;
    let head = PageHead {
        lifter: desk.who().to_owned(),
        is_dark: look.theme == Theme::Dark,
    };
    let shown: Vec<PageFigure> = finished
        .iter()
        .map(|figure| page_figure(figure, look))
        .collect();
    let page = folder.join("index.html");
    let html = lecture_page(&head, &shown);
    let mut files: Vec<(PathBuf, &[u8])> = vec![(page.clone(), html.as_bytes())];
    for figure in finished {
        for (ending, bytes) in ENDINGS.iter().zip(&figure.contents) {
            files.push((folder.join(format!("{}.{ending}", figure.file)), bytes));
        }
    }
    output::write_files(&files)?;
    anstream::eprintln!("{} figures; open {}", finished.len(), page.display());
    Ok(())
}

fn page_figure(figure: &Finished, look: Look) -> PageFigure {
    PageFigure {
        file: figure.file.clone(),
        idea: figure.idea.trim_end_matches('.').to_owned(),
        title: figure.sheet.title().to_owned(),
        caption: figure.sheet.caption.clone(),
        alt: figure.sheet.alt().to_owned(),
        pixels: look.size.pixels(),
    }
}
