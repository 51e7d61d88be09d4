//! The printed sheet of `plan`: HTML, SVG or PNG by the ending of the file.

use super::command_call::CommandCall;
use super::output;
use super::whole_set;
use crate::draw::{outlined_svg, png};
use crate::error::{CommandFault, Error, Result};
use crate::figures::{Paper, session_sheet};
use crate::narrative::plan_words::PlanWords;
use crate::narrative::session_words::session_name;
use crate::report::{one_sheet_html, sheet_html};
use crate::study::PlannedSession;
use crate::units::System;
use std::path::Path;

/// Pixels of a PNG sheet for each of the page's 96 to the inch: 240 dots an inch for a printer.
const PNG_FACTOR: f64 = 2.5;

/// Formats of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum SheetFormat {
    Html,
    Svg,
    Png,
}

impl SheetFormat {
    fn of(path: &Path) -> Result<Self> {
        let ending = path
            .extension()
            .map(|ending| ending.to_string_lossy().to_ascii_lowercase());
        match ending.as_deref() {
            Some("html" | "htm") => Ok(Self::Html),
            Some("svg") => Ok(Self::Svg),
            Some("png") => Ok(Self::Png),
            _ => Err(Error::bad(CommandFault::NoSheet {
                file: path.display().to_string(),
            })),
        }
    }
}

/// Checks before anything is computed that the sheet can be written.
pub fn check(path: &Path, replace: bool) -> Result<()> {
    output::check_target(path, replace)?;
    SheetFormat::of(path).map(|_| ())
}

/// Checks that the sheet can hold so many sessions: a picture holds one.
pub fn check_sessions(path: &Path, sessions: usize) -> Result<()> {
    match SheetFormat::of(path)? {
        SheetFormat::Svg | SheetFormat::Png if sessions != 1 => {
            Err(Error::bad(CommandFault::ManySessions { sessions }))
        }
        _ => Ok(()),
    }
}

/// Writes one sheet of given words.
pub fn write_words(
    path: &Path,
    (title, words): (&str, &PlanWords),
    paper: Paper,
    call: &CommandCall,
) -> Result<()> {
    let format = SheetFormat::of(path)?;
    if format == SheetFormat::Html {
        let page = one_sheet_html(title, words, paper);
        return whole_set::write_file(path, page.as_bytes());
    }
    let scene = call.signed("sheet", session_sheet(title, words, paper)?)?;
    let bytes = match format {
        SheetFormat::Png => png(&scene, PNG_FACTOR)?,
        SheetFormat::Html | SheetFormat::Svg => outlined_svg(&scene)?.into_bytes(),
    };
    whole_set::write_file(path, &bytes)
}

/// Writes the sheet: every session on a page of HTML; a picture holds one session.
pub fn write(
    path: &Path,
    sessions: &[PlannedSession],
    (units, paper): (System, Paper),
    call: &CommandCall,
) -> Result<()> {
    check_sessions(path, sessions.len())?;
    let session = match (SheetFormat::of(path)?, sessions) {
        (SheetFormat::Svg | SheetFormat::Png, [session]) => session,
        _ => {
            let page = sheet_html(sessions, units, paper);
            return whole_set::write_file(path, page.as_bytes());
        }
    };
    let words = PlanWords::of_session(session, units);
    write_words(path, (&session_name(session.name), &words), paper, call)
}
