//! The one-page sheet of a session as a picture: what the lifter and the coach hold in their hands.
//!
//! In: a plan in words, a paper. Out: a scene that fills exactly one page.

use super::sheet_layout::{Paper, SheetInk, SheetMark, sheet_layout};
use crate::draw::{Colour, Colours, Scene, Stroke, Text, Theme};
use crate::error::{Error, FigureFault, Result};
use crate::narrative::plan_words::PlanWords;
use crate::narrative::sheet_words::sheet_description;

/// The sheet.
///
/// **Fails** when the session is too long for one page in letters that can be read.
pub fn session_sheet(session: &str, words: &PlanWords, paper: Paper) -> Result<Scene> {
    let layout = sheet_layout(session, words, paper)
        .ok_or_else(|| Error::no_answer(FigureFault::PageFull))?;
    let (width, height) = paper.pixels();
    let colours = Theme::Light.colours();
    let mut scene = Scene::new(width, height, colours.background);
    scene.title = format!("{}: {session}", words.movement);
    scene.description = sheet_description(words);
    for mark in layout.marks {
        draw(mark, &colours, &mut scene);
    }
    Ok(scene)
}

fn draw(mark: SheetMark, colours: &Colours, scene: &mut Scene) {
    match mark {
        SheetMark::Text {
            at,
            content,
            size,
            face,
            ink,
        } => scene.text(Text::new(at, &content, size, face, colour(ink, colours))),
        SheetMark::Rule {
            ends: (left, right),
            y,
            width,
        } => scene.line([left, y], [right, y], Stroke::solid(colours.rule, width)),
        SheetMark::TickBox {
            at: [left, top],
            side,
        } => {
            let (top, right, bottom) = (top + 1.0, left + side, top + side + 1.0);
            let stroke = Stroke::solid(colours.muted, 1.0);
            scene.polyline(around(left, top, right, bottom), stroke);
        }
        SheetMark::Shade(area) => scene.rectangle(area, colours.shade),
        SheetMark::WarningFrame(area) => {
            let stroke = Stroke::solid(colours.series_line(1), 1.8);
            scene.polyline(around(area.left, area.top, area.right, area.bottom), stroke);
        }
        SheetMark::WarningDot { at, radius } => scene.disc(at, radius, colours.series_line(1)),
    }
}

fn around(left: f64, top: f64, right: f64, bottom: f64) -> Vec<[f64; 2]> {
    vec![
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
        [left, top],
    ]
}

fn colour(ink: SheetInk, colours: &Colours) -> Colour {
    match ink {
        SheetInk::Plain => colours.ink,
        SheetInk::Muted => colours.muted,
        SheetInk::Warning => colours.series_label(1),
    }
}
