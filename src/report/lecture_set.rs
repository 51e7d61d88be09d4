//! The files of a lecture: every figure as SVG and PNG with caption, alternative text, speaker's notes and data, the page of
//! all, and the slides.
//!
//! In: the figures' desk, a look, writers of pictures. Out: names and bytes of the files.

use super::csv::rows_to_csv;
use super::deck::{Deck, Slide};
use super::lecture_page::{LIVE, PageFigure, PageHead, SLIDES, lecture_page};
use super::run_record::RunRecord;
use super::tidy_table::guarded;
use crate::draw::{Scene, Theme, build_up};
use crate::error::{CommandFault, Error, FigureFault, Result, What};
use crate::figures::Sheet;
use crate::lecture::{LECTURE, LectureFigure, ONE_LIFT, live_state};
use crate::narrative::lecture_words::{INVENTED_PERSON, LECTURE_TITLE, lecture_caption};
use crate::narrative::source_words::{SOURCES_TITLE, cited_in_words, listed_in_words};
use crate::narrative::speaker_notes::{notes_in_lines, notes_of};
use crate::plot::{Look, Size};
use crate::source::Publication;
use crate::study::Desk;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use std::collections::BTreeSet;

/// Endings of the files of one figure.
const ENDINGS: [&str; 6] = ["svg", "png", "csv", "caption.txt", "alt.txt", "notes.txt"];

/// The page of all figures.
pub const PAGE: &str = "index.html";

/// What makes pictures of scenes.
#[derive(Debug, Clone, Copy)]
pub struct PictureWriters {
    /// Makes SVG.
    pub svg: fn(&Scene) -> Result<String>,
    /// Makes PNG of a scene at a factor of its size.
    pub png: fn(&Scene, f64) -> Result<Vec<u8>>,
    /// Whether each picture is also built up step by step.
    pub in_steps: bool,
    /// Makes slides; what the writer of the archive says where it cannot.
    pub slides: fn(&Deck) -> std::result::Result<Vec<u8>, String>,
}

/// The figures that a lifter gets, numbered in teaching order.
pub struct LectureSet<'a> {
    desk: &'a Desk<'a>,
    /// The live page, where it has the lifter.
    live: Option<String>,
    figures: Vec<(String, &'static LectureFigure)>,
}

/// One figure, drawn.
pub struct DrawnFigure {
    file: String,
    idea: &'static str,
    live: Option<String>,
    sheet: Sheet,
    notes: Vec<String>,
    contents: [Vec<u8>; 6],
    steps: Vec<Vec<u8>>,
    slide: Vec<u8>,
    left_off: Vec<String>,
}

impl<'a> LectureSet<'a> {
    /// The figures for which the desk has what they draw; each leads to its lift on the live page, if there is one.
    #[must_use]
    pub fn of(desk: &'a Desk<'a>, live: Option<String>) -> Self {
        let told = if desk.about.is_some() {
            ONE_LIFT
        } else {
            LECTURE
        };
        let drawable = told.iter().filter(|figure| figure.can_be_drawn(desk));
        let named = (1..).zip(drawable);
        Self {
            desk,
            live,
            figures: named
                .map(|(number, figure)| (format!("{number:02}-{}", figure.name), figure))
                .collect(),
        }
    }

    /// How many figures.
    #[must_use]
    pub fn count(&self) -> usize {
        self.figures.len()
    }

    /// The names of all files, figure by figure, the page last.
    #[must_use]
    pub fn file_names(&self) -> Vec<String> {
        let figures = self.figures.iter();
        let files = figures.flat_map(|(name, _)| ENDINGS.map(|ending| format!("{name}.{ending}")));
        let live = self.live.is_some().then_some(LIVE);
        let whole = [PAGE, SLIDES].into_iter().chain(live);
        files.chain(whole.map(str::to_owned)).collect()
    }

    /// Draws every figure, and calls `done` after each.
    ///
    /// **Fails** with the first fault, which says what figure it is in.
    pub fn drawn(
        &self,
        look: Look,
        writers: PictureWriters,
        record: &RunRecord,
        done: &(dyn Fn() + Sync),
    ) -> Result<Vec<DrawnFigure>> {
        self.figures
            .par_iter()
            .map(|(name, figure)| {
                let drawn = draw(self.desk, name, figure, (look, writers, record));
                done();
                let mut drawn = drawn.map_err(|error| in_figure(error, name))?;
                drawn.live = drawn.live.filter(|_| self.live.is_some());
                Ok(drawn)
            })
            .collect()
    }

    /// The publications that the figures rest on, in full and in order, and what their marks mean.
    ///
    /// **Fails** if the list of publications cannot be read.
    fn sources(&self) -> Result<Vec<String>> {
        let known = self.desk.models.sources()?;
        let keys = self.figures.iter().flat_map(|(_, figure)| figure.cites);
        let keys: BTreeSet<&str> = keys.copied().collect();
        let cited: Vec<&Publication> = keys.into_iter().filter_map(|key| known.get(key)).collect();
        Ok(listed_in_words(&cited))
    }

    /// All files, the page first, then the slides.
    ///
    /// **Fails** if the slides cannot be packed.
    pub fn files(
        &self,
        look: Look,
        writers: PictureWriters,
        record: &RunRecord,
        drawn: Vec<DrawnFigure>,
    ) -> Result<Vec<(String, Vec<u8>)>> {
        let sources = self.sources()?;
        let head = PageHead {
            lifter: self.desk.who().to_owned(),
            is_dark: look.theme == Theme::Dark,
            sources: sources.clone(),
        };
        let shown: Vec<PageFigure> = drawn.iter().map(|one| on_page(one, look)).collect();
        let page = lecture_page(&head, &shown).into_bytes();
        let deck = Deck {
            title: LECTURE_TITLE.to_owned(),
            making: record.line(),
            theme: look.theme,
            slides: drawn.iter().map(on_slide).collect(),
            last_title: SOURCES_TITLE.to_owned(),
            last: sources,
        };
        let slides = (writers.slides)(&deck).map_err(|cause| {
            Error::bad(CommandFault::Unwritable {
                file: SLIDES.to_owned(),
                cause,
            })
        })?;
        let mut files = vec![(PAGE.to_owned(), page), (SLIDES.to_owned(), slides)];
        files.extend(
            self.live
                .iter()
                .map(|live| (LIVE.to_owned(), live.clone().into_bytes())),
        );
        for figure in drawn {
            for (ending, bytes) in ENDINGS.into_iter().zip(figure.contents) {
                files.push((format!("{}.{ending}", figure.file), bytes));
            }
            for (number, bytes) in (1..).zip(figure.steps) {
                files.push((format!("{}.step-{number}.png", figure.file), bytes));
            }
        }
        Ok(files)
    }
}

/// Builds a figure and everything beside it.
fn draw(
    desk: &Desk<'_>,
    name: &str,
    figure: &LectureFigure,
    (look, writers, record): (Look, PictureWriters, &RunRecord),
) -> Result<DrawnFigure> {
    let mut sheet = (figure.build)(desk)?;
    let who = if figure.of_invented {
        INVENTED_PERSON
    } else {
        desk.who()
    };
    sheet.caption = lecture_caption(&sheet.caption, who, &lifts_of(desk, figure)?);
    sheet.caption += &citations(desk, figure.cites)?;
    let mut scene = sheet.chart.scene(look)?;
    scene.metadata = record.line();
    let header: Vec<&str> = sheet.data.header.iter().map(String::as_str).collect();
    let data =
        record.csv_head() + &rows_to_csv(&header, sheet.data.rows.iter().map(|row| safe(row)));
    let title = sheet.title().trim_end_matches('.');
    let caption = format!("{title}. {}\n", sheet.caption);
    let alt = format!("{}\n", sheet.alt());
    let notes = notes_of(figure.notes).map_or_else(Vec::new, |notes| {
        notes_in_lines(notes, sheet.title(), &sheet.caption, sheet.alt())
    });
    let slide = sheet.untitled_scene(Look {
        size: Size::UnderTitle,
        ..look
    })?;
    let mut steps = Vec::new();
    if writers.in_steps {
        for step in build_up(&scene) {
            steps.push((writers.png)(&step, 1.0)?);
        }
    }
    Ok(DrawnFigure {
        steps,
        file: name.to_owned(),
        idea: figure.idea,
        live: live_state(figure, desk, &sheet).map(|state| format!("{LIVE}{state}")),
        contents: [
            (writers.svg)(&scene)?.into_bytes(),
            (writers.png)(&scene, 1.0)?,
            data.into_bytes(),
            caption.into_bytes(),
            alt.into_bytes(),
            (notes.join("\n") + "\n").into_bytes(),
        ],
        slide: (writers.png)(&slide, 1.0)?,
        left_off: sheet.words_left_off(&slide),
        notes,
        sheet,
    })
}

/// The lifts that a figure is of, as words write them.
fn lifts_of(desk: &Desk<'_>, figure: &LectureFigure) -> Result<Vec<String>> {
    let about = desk.about.as_deref().filter(|_| figure.fits.is_some());
    let names = figure.needs.iter().copied().chain(about);
    let title = |name: &str| Ok(desk.lift(name)?.study.movement_title.to_lowercase());
    names.map(title).collect()
}

/// The publications that a figure rests on, behind its caption.
///
/// **Fails** if the list of publications cannot be read.
fn citations(desk: &Desk<'_>, keys: &[&str]) -> Result<String> {
    let sources = desk.models.sources()?;
    let cited: Vec<&Publication> = keys.iter().filter_map(|key| sources.get(*key)).collect();
    Ok(cited_in_words(&cited))
}

/// A row whose texts are safe to open in a spreadsheet; numbers stay as they are.
fn safe(row: &[String]) -> Vec<String> {
    let cells = row.iter();
    cells
        .map(|cell| match cell.parse::<f64>() {
            Ok(_) => cell.clone(),
            Err(_) => guarded(cell).into_owned(),
        })
        .collect()
}

/// The same fault, saying which figure it stopped.
fn in_figure(error: Error, name: &str) -> Error {
    error.inside(|what| {
        What::Figure(FigureFault::Within {
            figure: name.to_owned(),
            what,
        })
    })
}

fn on_page(figure: &DrawnFigure, look: Look) -> PageFigure {
    PageFigure {
        file: figure.file.clone(),
        idea: figure.idea.trim_end_matches('.').to_owned(),
        title: figure.sheet.title().to_owned(),
        caption: figure.sheet.caption.clone(),
        alt: figure.sheet.alt().to_owned(),
        notes: figure.notes.clone(),
        live: figure.live.clone(),
        pixels: look.size.pixels(),
    }
}

fn on_slide(figure: &DrawnFigure) -> Slide {
    Slide {
        name: figure.file.clone(),
        title: figure.sheet.title().to_owned(),
        alt: figure.sheet.alt().to_owned(),
        notes: figure.notes.clone(),
        words: figure.left_off.clone(),
        picture: figure.slide.clone(),
        pixels: Size::UnderTitle.pixels(),
    }
}
