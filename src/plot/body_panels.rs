//! Bodies side by side with lines, arrows and points upon them, and numbers below each.
//!
//! In: stick figures with marks, in metres, and small tables. Out: a scene; all bodies stand on one scale, and below them
//! stands the scale of colours, where there is one.

use super::body_marks::BodyMark;
use super::body_panel::{
    BodyPanel, Columns, CommonTable, REACH, draw_body, draw_columns, draw_table, draw_title,
    reaching,
};
use super::common_table;
use super::frame::{Frame, Heading, Look};
use super::stick_figure::{StickFigure, StickScale};
use crate::draw::{Face, Rect, Scene, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};

/// Bodies side by side.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BodyPanels {
    /// The words around them.
    pub heading: Heading,
    /// The bodies from left to right.
    pub panels: Vec<BodyPanel>,
    /// The key to the colours of filled lines, if there are such.
    pub key: Option<ColourKey>,
    /// One table for all of them, if they have none of their own.
    pub common: Option<CommonTable>,
}

/// What the colours of filled lines mean.
#[derive(Debug, Clone, PartialEq)]
pub struct ColourKey {
    /// What is told by colour: "Activation".
    pub title: String,
    /// Nothing, half and all of it: "0 %".
    pub steps: [String; 3],
}

/// Most bodies that are told apart side by side, assumed.
const MOST_BODIES: usize = 4;
/// Tables stand beside the bodies only where that makes these so much larger: below them each has its own middle.
const MUCH_LARGER: f64 = 1.3;

impl BodyPanels {
    /// The bodies as a scene.
    ///
    /// # Errors
    /// If there is no body or more than four, or the canvas is too small.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        if self.panels.is_empty() || self.panels.len() > MOST_BODIES {
            return Err(Error::bad(PlotFault::PanelCount {
                of: Plotted::Bodies,
                count: self.panels.len(),
                most: MOST_BODIES,
            }));
        }
        let mut frame = Frame::new(look, &self.heading);
        if let Some(key) = &self.key {
            draw_key(&mut frame, key);
        }
        if let Some(common) = &self.common {
            common_table::draw(&mut frame, &self.panels, common)?;
            return Ok(frame.scene);
        }
        let (text, gap) = (frame.measures.text, frame.measures.gap);
        let row = lettering::line_step(text);
        let names = self.shared_names(&frame);
        let names_width = names.as_ref().map_or(0.0, |shared| shared.width);
        let cell = (frame.body.width() - names_width) / self.panels.len() as f64;
        let titles: Vec<lettering::Fitted> = self
            .panels
            .iter()
            .map(|panel| lettering::fit(&panel.title, text, 0.8 * text, Face::Bold, cell - gap, 2))
            .collect();
        let lines = titles.iter().map(|title| title.lines.len()).max();
        let bodies = Rect {
            top: frame.body.top + (lines.unwrap_or(0) as f64 + 0.4) * row + REACH * text,
            ..frame.body
        };
        let stretched: Vec<StickFigure> = self.panels.iter().map(reaching).collect();
        let layout = self.layout(&frame, bodies, cell, &stretched);
        if layout.height < 4.0 * text || layout.width < 3.0 * text {
            return Err(Error::bad(PlotFault::TooSmall(Plotted::Bodies)));
        }
        let foot = Rect {
            right: bodies.left + names_width,
            ..bodies
        };
        let table_size = self.draw_names(&mut frame, names.as_ref(), cell, foot);
        for (index, panel) in self.panels.iter().enumerate() {
            let left = bodies.left + names_width + index as f64 * cell;
            let top = bodies.top - REACH * text;
            let whole = Rect::new(left, top, left + cell, bodies.bottom);
            let body = Rect::new(
                left,
                bodies.top,
                left + layout.width,
                bodies.top + layout.height,
            );
            draw_title(&mut frame, &titles[index], whole);
            if let Some(scale) = &layout.scale {
                let names = Rect::new(left, top, left + layout.width, body.bottom + REACH * text);
                draw_body(&mut frame, panel, &stretched[index], scale, (body, names));
            }
            let table = if layout.is_beside {
                Rect::new(body.right, whole.top, whole.right, whole.bottom)
            } else {
                whole
            };
            match table_size {
                Some(size) => {
                    let numbers = without_names(&panel.table);
                    let columns = Columns::sized(&numbers, &frame, size);
                    draw_columns(&mut frame, &numbers, (1, false), &columns, table);
                }
                None => draw_table(&mut frame, &panel.table, 1, table),
            }
        }
        Ok(frame.scene)
    }

    /// The names of the rows, where all tables have the same ones and stand below their bodies: they are written once.
    fn shared_names(&self, frame: &Frame) -> Option<SharedNames> {
        let names = |panel: &BodyPanel| -> Vec<Vec<String>> {
            let rows = panel.table.iter();
            rows.map(|row| row.first().cloned().into_iter().collect())
                .collect()
        };
        let first = names(self.panels.first()?);
        let are_same = self.panels.iter().all(|panel| names(panel) == first);
        let cell = frame.body.width() / self.panels.len() as f64;
        let stretched: Vec<StickFigure> = self.panels.iter().map(reaching).collect();
        let is_below = !self.layout(frame, frame.body, cell, &stretched).is_beside;
        if self.panels.len() < 2 || first.is_empty() || !are_same || !is_below {
            return None;
        }
        let width = Columns::of(&first, frame, f64::INFINITY).total() + frame.measures.gap;
        Some(SharedNames { rows: first, width })
    }

    /// Writes the shared names at the left; the size of letters at which every table fits into its cell.
    fn draw_names(
        &self,
        frame: &mut Frame,
        names: Option<&SharedNames>,
        cell: f64,
        place: Rect,
    ) -> Option<f64> {
        let names = names?;
        let room = cell - 2.0 * frame.measures.gap;
        let tables = self.panels.iter().map(|panel| without_names(&panel.table));
        let sizes = tables.map(|table| Columns::of(&table, frame, room).size());
        let size = sizes.fold(frame.measures.text, f64::min);
        let columns = Columns::sized(&names.rows, frame, size);
        let left = Rect {
            right: place.left + columns.total(),
            ..place
        };
        draw_columns(frame, &names.rows, (1, true), &columns, left);
        Some(size)
    }

    /// Tables below the bodies or beside them: whatever lets the bodies be larger.
    fn layout(&self, frame: &Frame, bodies: Rect, cell: f64, drawn: &[StickFigure]) -> BodyLayout {
        let gap = frame.measures.gap;
        let rows = self.panels.iter().map(|panel| panel.table.len()).max();
        let foot = REACH * frame.measures.text;
        let mut marks = self.panels.iter().flat_map(|panel| &panel.marks);
        let has_names = marks.any(|mark| matches!(mark, BodyMark::Name { .. }));
        // Names stand beside bodies.
        let beside = if has_names {
            4.0 * frame.measures.text
        } else {
            0.0
        };
        let below =
            lettering::line_step(frame.measures.text) * rows.unwrap_or(0) as f64 + gap + foot;
        let tables = self.panels.iter();
        let widest = tables
            .map(|panel| Columns::of(&panel.table, frame, f64::INFINITY).total())
            .fold(0.0, f64::max);
        let figures: Vec<&StickFigure> = drawn.iter().collect();
        let fitted = |width: f64, height: f64, is_beside: bool| BodyLayout {
            scale: StickScale::fitting(&figures, (0.95 * width - beside).max(1.0), height),
            width,
            height,
            is_beside,
        };
        let under = fitted(cell, bodies.height() - below, false);
        let side = fitted(cell - widest - 3.0 * gap, bodies.height() - foot, true);
        let size = |layout: &BodyLayout| match (&layout.scale, layout.width > 0.0) {
            (Some(scale), true) => scale.px_per_m(),
            _ => 0.0,
        };
        if size(&side) > MUCH_LARGER * size(&under) {
            side
        } else {
            under
        }
    }
}

/// Names of the rows of all tables, written once.
struct SharedNames {
    rows: Vec<Vec<String>>,
    /// Room that they take at the left.
    width: f64,
}

/// A table without the names of its rows.
fn without_names(table: &[Vec<String>]) -> Vec<Vec<String>> {
    table
        .iter()
        .map(|row| row.iter().skip(1).cloned().collect())
        .collect()
}

/// How much of each cell bodies have, and where the tables stand.
struct BodyLayout {
    scale: Option<StickScale>,
    width: f64,
    height: f64,
    is_beside: bool,
}

/// The key to the colours as the last line of the body, which ends above it afterwards: title, then nothing to half and half
/// to all as two stretches of the scale between their words.
fn draw_key(frame: &mut Frame, key: &ColourKey) {
    /// Pieces of a stretch, and its length and height over the size of letters.
    const PIECES: usize = 24;
    const LONG: f64 = 3.2;
    const HIGH: f64 = 0.5;
    let (text, gap) = (frame.measures.text, frame.measures.gap);
    let width = |words: &str| lettering::width(words, text, Face::Regular);
    let words: f64 = key.steps.iter().map(|words| width(words)).sum();
    let title = format!("{}:", key.title);
    let whole = width(&title) + words + 2.0 * LONG * text + 6.0 * gap;
    let mut left = frame.body.centre()[0] - whole / 2.0;
    let baseline = frame.body.bottom - lettering::fall(text);
    let middle = baseline - lettering::capitals(text) / 2.0;
    let muted = frame.colours.muted;
    frame.scene.text(frame.axis_text([left, baseline], &title));
    left += width(&title) + 2.0 * gap;
    for (number, words) in key.steps.iter().enumerate() {
        frame.scene.text(frame.axis_text([left, baseline], words));
        left += width(words) + gap;
        if number + 1 == key.steps.len() {
            break;
        }
        let half = HIGH * text / 2.0;
        let area = Rect::new(left, middle - half, left + LONG * text, middle + half);
        frame
            .scene
            .rectangle(area.grown(frame.measures.rule), muted);
        let wide = area.width() / PIECES as f64;
        for piece in 0..PIECES {
            let share = (number as f64 + (piece as f64 + 0.5) / PIECES as f64) / 2.0;
            let from = area.left + piece as f64 * wide;
            let colour = frame.colours.scale_colour(share);
            // Each piece reaches below those behind it, so that no seam is seen.
            let part = Rect::new(from, area.top, area.right, area.bottom);
            frame.scene.rectangle(part, colour);
        }
        left = area.right + gap;
    }
    frame.body.bottom -= lettering::line_step(text) + 0.5 * gap;
}
