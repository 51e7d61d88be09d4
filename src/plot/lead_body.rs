//! One body large at the left, the others small beside it, above one table for all.
//!
//! In: bodies with marks, which of them leads, a table. Out: shapes in a frame; the small ones stand on one scale.

use super::body_panel::{BodyPanel, LeadBody, REACH, draw_body, draw_table, draw_title, reaching};
use super::frame::Frame;
use super::stick_figure::{StickFigure, StickScale};
use crate::draw::{Face, Rect, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};

/// Share of the width that the large body has (a drawing's measure).
const LEAD_SHARE: f64 = 0.45;
/// Room beside a body for names, in the size of letters: at the large one and at the small ones.
const NAMES: [f64; 2] = [7.0, 3.6];

/// Draws the bodies and their table.
///
/// **Fails** if the canvas is too small, or the lead is none of the bodies.
pub(super) fn draw(frame: &mut Frame, panels: &[BodyPanel], lead: &LeadBody) -> Result<()> {
    let small = |what| Error::bad(PlotFault::TooSmall(what));
    let (text, gap) = (frame.measures.text, frame.measures.gap);
    let step = lettering::line_step(text);
    let body = frame.body;
    let middle = body.left + LEAD_SHARE * body.width();
    let Some(large) = panels.get(lead.index) else {
        return Err(small(Plotted::Bodies));
    };
    let others: Vec<&BodyPanel> = panels
        .iter()
        .enumerate()
        .filter(|(index, _)| *index != lead.index)
        .map(|(_, panel)| panel)
        .collect();
    let table = step * lead.table.len() as f64 + gap;
    let right = Rect {
        left: middle + gap,
        bottom: body.bottom - table,
        ..body
    };
    draw_row(
        frame,
        &[large],
        Rect {
            right: middle,
            ..body
        },
        NAMES[0],
    )?;
    draw_row(frame, &others, right, NAMES[1])?;
    let foot = Rect {
        left: right.left,
        top: right.bottom,
        ..body
    };
    draw_table(frame, &lead.table, lead.heads, foot);
    Ok(())
}

/// Bodies side by side on one scale, each below its title.
fn draw_row(frame: &mut Frame, panels: &[&BodyPanel], place: Rect, names: f64) -> Result<()> {
    let text = frame.measures.text;
    let cell = place.width() / panels.len().max(1) as f64;
    let titles: Vec<lettering::Fitted> = panels
        .iter()
        .map(|panel| {
            let most = cell - frame.measures.gap;
            lettering::fit(&panel.title, text, 0.8 * text, Face::Bold, most, 2)
        })
        .collect();
    let lines = titles.iter().map(|title| title.lines.len()).max();
    let top = place.top + (lines.unwrap_or(0) as f64 + 0.4) * lettering::line_step(text);
    let room = Rect {
        top: top + REACH * text,
        bottom: place.bottom - REACH * text,
        ..place
    };
    let reached: Vec<StickFigure> = panels.iter().map(|panel| reaching(panel)).collect();
    let figures: Vec<&StickFigure> = reached.iter().collect();
    let width = cell - names * text;
    if room.height() < 3.0 * text || width < 2.0 * text {
        return Err(Error::bad(PlotFault::TooSmall(Plotted::Bodies)));
    }
    let Some(scale) = StickScale::fitting(&figures, width, room.height()) else {
        return Ok(());
    };
    // What is left of the height is shared above and below.
    let spare = 0.5 * (room.height() - scale.height_px()).max(0.0);
    for (index, panel) in panels.iter().enumerate() {
        let left = place.left + index as f64 * cell;
        let whole = Rect::new(left, top, left + cell, place.bottom);
        draw_title(frame, &titles[index], whole);
        let body = Rect::new(left, room.top, left + cell, room.bottom - spare);
        draw_body(frame, panel, &reached[index], &scale, (body, whole));
    }
    Ok(())
}
