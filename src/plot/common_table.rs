//! Bodies on one scale above one table for all, or beside it: whatever lets them be larger.
//!
//! In: bodies with marks, a table. Out: shapes in a frame; a body that reaches far down may stand beside the table with the
//! others above it, all heights being common.

use super::body_panel::{
    BodyPanel, Columns, CommonTable, REACH, draw_body, draw_table, draw_title, reaching,
};
use super::frame::Frame;
use super::stick_figure::{StickFigure, StickScale};
use crate::draw::{Face, Rect, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};

/// Room beside a body for names, in the size of letters.
const NAMES: f64 = 4.6;
/// Least height of the highest body, in the size of letters: what is smaller is no longer read (assumed).
const LEAST: f64 = 3.0;

/// Where the table stands.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Arrangement {
    /// Below all bodies.
    Below,
    /// At the right of all bodies.
    Beside,
    /// Below all bodies but the first, which reaches down beside it.
    BesideFirst,
    /// Below all bodies but the last.
    BesideLast,
}

/// What has to find room, in pixels and metres.
struct Needs {
    /// Left, lower, right and upper end of every body, m.
    extents: Vec<[f64; 4]>,
    /// The place of everything.
    place: Rect,
    /// Room of a title above a body, and of letters below one.
    head: f64,
    foot: f64,
    /// Width and height of the table.
    table: [f64; 2],
    /// Room beside a body.
    names: f64,
}

impl Needs {
    fn widest(&self, of: impl Fn(usize) -> bool) -> f64 {
        let all = self.extents.iter().enumerate();
        let widths = all
            .filter(|(index, _)| of(*index))
            .map(|(_, e)| e[2] - e[0]);
        widths.fold(0.0, f64::max).max(1.0e-3)
    }

    fn lowest(&self, of: impl Fn(usize) -> bool) -> f64 {
        let all = self.extents.iter().enumerate();
        let ends = all.filter(|(index, _)| of(*index)).map(|(_, e)| e[1]);
        ends.fold(f64::INFINITY, f64::min)
    }

    fn highest(&self) -> f64 {
        let ends = self.extents.iter().map(|e| e[3]);
        ends.fold(f64::NEG_INFINITY, f64::max)
    }

    /// The body that stands beside the table alone, if the arrangement has one.
    fn alone(&self, how: Arrangement) -> Option<usize> {
        match how {
            Arrangement::Below | Arrangement::Beside => None,
            Arrangement::BesideFirst => Some(0),
            Arrangement::BesideLast => Some(self.extents.len() - 1),
        }
    }

    /// Pixels a metre at which every body finds room.
    fn scale(&self, how: Arrangement) -> f64 {
        let count = self.extents.len() as f64;
        let [wide, high] = [
            self.place.width(),
            self.place.height() - self.head - self.foot,
        ];
        let [table_wide, table_high] = self.table;
        let (all, top) = (|_: usize| true, self.highest());
        match self.alone(how) {
            None => {
                let [less_wide, less_high] = match how {
                    Arrangement::Beside => [table_wide, 0.0],
                    _ => [0.0, table_high],
                };
                let across = ((wide - less_wide) / count - self.names) / self.widest(all);
                across.min((high - less_high) / (top - self.lowest(all)))
            }
            Some(alone) => {
                let (one, others) = (|i: usize| i == alone, |i: usize| i != alone);
                let own = self.widest(one);
                let bodies = own + (count - 1.0) * self.widest(others);
                let across = ((wide - count * self.names) / bodies)
                    .min((wide - table_wide - self.names) / own);
                across
                    .min(high / (top - self.lowest(one)))
                    .min((high - table_high) / (top - self.lowest(others)))
            }
        }
    }
}

/// Draws the bodies and their table.
///
/// **Fails** if the canvas is too small.
pub(super) fn draw(frame: &mut Frame, panels: &[BodyPanel], common: &CommonTable) -> Result<()> {
    let (text, gap) = (frame.measures.text, frame.measures.gap);
    let step = lettering::line_step(text);
    let place = frame.body;
    let reached: Vec<StickFigure> = panels.iter().map(reaching).collect();
    let most = place.width() / panels.len().max(1) as f64 - gap;
    let title =
        |panel: &BodyPanel| lettering::fit(&panel.title, text, 0.8 * text, Face::Bold, most, 2);
    let titles: Vec<lettering::Fitted> = panels.iter().map(title).collect();
    let lines = titles.iter().map(|title| title.lines.len()).max();
    let columns = Columns::of(&common.table, frame, place.width() - 5.0 * gap);
    let needs = Needs {
        extents: reached.iter().filter_map(StickFigure::extent).collect(),
        place,
        head: (lines.unwrap_or(0) as f64 + 0.4) * step + REACH * text,
        foot: REACH * text,
        table: [
            columns.total() + 6.0 * gap,
            step * common.table.len() as f64 + gap,
        ],
        names: NAMES * text,
    };
    let mut best = (Arrangement::Below, needs.scale(Arrangement::Below));
    for how in [
        Arrangement::BesideFirst,
        Arrangement::BesideLast,
        Arrangement::Beside,
    ] {
        let scale = needs.scale(how);
        if scale > best.1 && panels.len() > 1 {
            best = (how, scale);
        }
    }
    let (how, px_per_m) = best;
    let range = needs.highest() - needs.lowest(|_| true);
    let is_read = px_per_m.is_finite() && px_per_m * range >= LEAST * text;
    if !is_read || needs.extents.len() < panels.len() {
        return Err(Error::bad(PlotFault::TooSmall(Plotted::Bodies)));
    }
    let cells = cells(&needs, how, px_per_m);
    // All stand on one level, that of the lowest; what is left of the height is shared above and below.
    let floor = |index: usize| match (how, needs.alone(how)) {
        (Arrangement::Beside, _) => place.bottom,
        (_, Some(alone)) if alone == index => place.bottom,
        _ => place.bottom - needs.table[1],
    };
    let spare = (0..panels.len()).map(|index| {
        let below = needs.highest() - needs.extents[index][1];
        floor(index) - needs.foot - place.top - needs.head - px_per_m * below
    });
    let top = place.top + needs.head + 0.5 * spare.fold(f64::INFINITY, f64::min).max(0.0);
    let all: Vec<&StickFigure> = reached.iter().collect();
    let widest = px_per_m * needs.widest(|_| true);
    let Some(scale) = StickScale::fitting(&all, widest, px_per_m * range) else {
        return Ok(());
    };
    for (index, panel) in panels.iter().enumerate() {
        let [left, right] = cells[index];
        let names = Rect::new(
            left,
            place.top + needs.head - REACH * text,
            right,
            floor(index),
        );
        draw_title(frame, &titles[index], names);
        let body = Rect::new(left, top, right, top + px_per_m * range);
        draw_body(frame, panel, &reached[index], &scale, (body, names));
    }
    let table = table_place(&needs, how, &cells);
    draw_table(frame, &common.table, common.heads, table);
    Ok(())
}

/// Left and right edge of every body's cell.
fn cells(needs: &Needs, how: Arrangement, px_per_m: f64) -> Vec<[f64; 2]> {
    let place = needs.place;
    let count = needs.extents.len();
    let alone = needs.alone(how);
    let mut from = place.left;
    let mut all = Vec::new();
    // As wide as the others, as far as the table leaves it.
    let fair = (place.width() / count as f64).min(place.width() - needs.table[0]);
    let own = alone.map_or(0.0, |alone| {
        let least = px_per_m * needs.widest(|index| index == alone) + needs.names;
        least.max(fair)
    });
    let wide = match how {
        Arrangement::Beside => place.width() - needs.table[0],
        _ => place.width() - own,
    };
    let others = wide / (count - usize::from(alone.is_some())).max(1) as f64;
    for index in 0..count {
        let width = if alone == Some(index) { own } else { others };
        all.push([from, from + width]);
        from += width;
    }
    all
}

/// Where the table stands at the foot.
fn table_place(needs: &Needs, how: Arrangement, cells: &[[f64; 2]]) -> Rect {
    let place = needs.place;
    let (first, last) = (cells[0], cells[cells.len() - 1]);
    match how {
        Arrangement::Below => place,
        Arrangement::Beside => Rect {
            left: last[1],
            ..place
        },
        Arrangement::BesideFirst => Rect {
            left: first[1],
            ..place
        },
        Arrangement::BesideLast => Rect {
            right: last[0],
            ..place
        },
    }
}
