//! The printed sheet of `plan`: HTML, SVG or PNG by the ending of the file.

use super::output;
use crate::draw::{outlined_svg, png};
use crate::error::{Error, Result};
use crate::figures::{Paper, session_sheet};
use crate::narrative::plan_words::PlanWords;
use crate::report::{SheetPart, sheet_html};
use crate::units::System;
use std::path::Path;

/// Pixels of a PNG sheet for each of the page's 96 to the inch: 240 dots an inch for a printer.
const PNG_FACTOR: f64 = 2.5;

/// Formats of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Html,
    Svg,
    Png,
}

impl Kind {
    fn of(path: &Path) -> Result<Self> {
        let ending = path
            .extension()
            .map(|ending| ending.to_string_lossy().to_ascii_lowercase());
        match ending.as_deref() {
            Some("html" | "htm") => Ok(Self::Html),
            Some("svg") => Ok(Self::Svg),
            Some("png") => Ok(Self::Png),
            _ => Err(Error::bad(format!(
                "`{}` is no sheet that can be written",
                path.display()
            ))
            .hint("sheets end in .html, .svg or .png")),
        }
    }
}

/// Checks before anything is computed that the sheet can be written.
pub fn check(path: &Path, replace: bool) -> Result<()> {
    output::check_target(path, replace)?;
    Kind::of(path).map(|_| ())
}

/// Writes the sheet: every session on a page of HTML; a picture holds one session.
pub fn write(path: &Path, parts: &[SheetPart<'_>], units: System, paper: Paper) -> Result<()> {
    let kind = Kind::of(path)?;
    let sheet =
        |part: &SheetPart<'_>| session_sheet(&part.title, &PlanWords::of(part.plan, units), paper);
    if kind == Kind::Html {
        let scales: Vec<f64> = parts
            .iter()
            .map(|part| sheet(part).map_or(0.7, |(_, scale)| scale))
            .collect();
        let page = sheet_html(parts, units, paper.name(), &scales);
        return output::write_file(path, page.as_bytes());
    }
    let [part] = parts else {
        return Err(Error::bad(format!(
            "a picture holds one session, and these are {}",
            parts.len()
        ))
        .hint("end the sheet's name in .html: a page for each session"));
    };
    let (scene, _) = sheet(part)?;
    let bytes = match kind {
        Kind::Png => png(&scene, PNG_FACTOR)?,
        Kind::Html | Kind::Svg => outlined_svg(&scene)?.into_bytes(),
    };
    output::write_file(path, &bytes)
}
