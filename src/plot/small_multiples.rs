//! Small panels side by side on shared axes, each with a title of its own: to compare shapes.
//!
//! In: the curves of each panel. Out: a scene; axis titles stand once, tick labels at the outside.

use super::axis::{self, Axis, Plot};
use super::frame::{Frame, Heading, Look};
use super::panel;
use super::panel_contents::{Fill, Panel, Series};
use super::panel_labels::{self, Crowded};
use super::shades::{self, Shade};
use crate::draw::{Face, Rect, Scene, Stroke, Text, TextAnchor, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};
use std::collections::BTreeSet;

/// One small panel.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SmallPanel {
    /// What it shows: "Ascending".
    pub title: String,
    /// A line below the title: "squat, deadlift"; may be empty.
    pub note: String,
    /// Curves.
    pub series: Vec<Series>,
    /// Areas between curves.
    pub fills: Vec<Fill>,
    /// Shaded stretches.
    pub shades: Vec<Shade>,
}

/// Small panels on shared axes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SmallMultiples {
    /// The words around them.
    pub heading: Heading,
    /// The shared level axis.
    pub x: Axis,
    /// The shared upright axis.
    pub y: Axis,
    /// The panels in reading order.
    pub panels: Vec<SmallPanel>,
    /// Panels in a row; chosen by shape if none is given.
    pub columns: Option<usize>,
}

/// Width over height that a small panel should have, about.
const GOOD_SHAPE: f64 = 1.25;
/// Type in small panels against that of a large one; 0.88 × 30 px is still 26 px.
const TYPE: f64 = 0.88;
/// Most panels that can be told apart on one slide, assumed.
const MOST_PANELS: usize = 20;

impl SmallMultiples {
    /// The panels as a scene.
    ///
    /// # Errors
    /// If there is no panel or no curve, more than 20 panels, or a value is no number.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        let panels = self.checked()?;
        let (scene, unclear) = self.drawn(look, &panels, &[])?;
        if unclear.is_empty() {
            return Ok(scene);
        }
        Ok(self.drawn(look, &panels, &unclear)?.0)
    }

    /// Draws everything, the curves of `keyed` named once above the panels instead of in each;
    /// returns the curves that found room for their name in no panel.
    fn drawn(
        &self,
        look: Look,
        panels: &[Panel],
        keyed: &[Series],
    ) -> Result<(Scene, Vec<Series>)> {
        let mut frame = Frame::new(look, &self.heading);
        shrink(&mut frame);
        let inner = self.draw_titles(&mut frame, keyed);
        let plan = PanelGrid::of(self, &frame, panels, inner);
        let body = frame.body;
        let mut named: BTreeSet<String> = keyed.iter().map(|series| series.name.clone()).collect();
        let mut unclear: Vec<Series> = Vec::new();
        for (index, panel) in panels.iter().enumerate() {
            frame.body = plan.cell(index);
            let mut panel = panel.clone();
            let in_key = panel
                .series
                .iter_mut()
                .filter(|series| named_in(keyed, series));
            in_key.for_each(|series| series.name.clear());
            let crowded = self.draw_panel(&mut frame, index, &panel, &plan)?;
            for (number, series) in panel.series.iter().enumerate() {
                if crowded.contains(&number) {
                    unclear.push(series.clone());
                } else {
                    named.insert(series.name.clone());
                }
            }
        }
        frame.body = body;
        // Each name once, in the order of first need.
        unclear.retain(|series| named.insert(series.name.clone()));
        Ok((frame.scene, unclear))
    }

    /// Axis titles, and the key of curves if there is one; returns the room left for the panels.
    fn draw_titles(&self, frame: &mut Frame, keyed: &[Series]) -> Rect {
        let text = frame.measures.text;
        let row = lettering::line_step(text);
        let gap = frame.measures.gap;
        let body = frame.body;
        let mut top = body.top;
        if !keyed.is_empty() {
            top = draw_key(frame, keyed) + 0.6 * gap;
        }
        let y_title = axis::upright_title(frame, &self.y, top + lettering::rise(text));
        frame.scene.text(y_title);
        let x_at = [body.centre()[0], body.bottom - lettering::fall(text)];
        let words = lettering::shortened(&self.x.title(), text, Face::Regular, body.width());
        let x_title = frame.axis_text(x_at, &words).anchored(TextAnchor::Middle);
        frame.scene.text(x_title);
        Rect {
            top: top + row + 0.8 * gap,
            bottom: body.bottom - row - 0.6 * gap,
            ..body
        }
    }

    fn checked(&self) -> Result<Vec<Panel>> {
        if self.panels.is_empty() || self.panels.len() > MOST_PANELS {
            return Err(Error::bad(PlotFault::PanelCount {
                of: Plotted::SmallPanels,
                count: self.panels.len(),
                most: MOST_PANELS,
            }));
        }
        let panels: Vec<Panel> = self
            .panels
            .iter()
            .map(|small| Panel {
                axis: self.y.clone(),
                series: small.series.clone(),
                fills: small.fills.clone(),
                ..Panel::default()
            })
            .collect();
        for panel in &panels {
            panel.check()?;
        }
        Ok(panels)
    }

    fn column_count(&self, inner: &Rect) -> usize {
        if let Some(columns) = self.columns {
            return columns.clamp(1, self.panels.len());
        }
        let badness = |columns: usize| {
            let rows = self.panels.len().div_ceil(columns);
            let shape = (inner.width() / columns as f64) / (inner.height() / rows as f64);
            let empty = columns * rows - self.panels.len();
            (shape / GOOD_SHAPE).ln().abs() + 0.6 * empty as f64
        };
        (1..=self.panels.len())
            .min_by(|a, b| badness(*a).total_cmp(&badness(*b)))
            .unwrap_or(1)
    }

    fn draw_panel(
        &self,
        frame: &mut Frame,
        index: usize,
        panel: &Panel,
        plan: &PanelGrid,
    ) -> Result<Vec<usize>> {
        let small = &self.panels[index];
        let (area, shade_row) = self.panel_area(frame, small)?;
        let plot = Plot::new(area, plan.ranges[0], plan.ranges[1])?;
        shades::draw_ground(frame, &small.shades, &plot, shade_row);
        let mut ticks = plan.ticks.clone();
        if !index.is_multiple_of(plan.columns) {
            ticks.iter_mut().for_each(|tick| tick.1.clear());
        }
        axis::draw_upright(frame, &plot, &ticks);
        let is_lowest = index + plan.columns >= self.panels.len();
        axis::draw_level(frame, &plot, &self.x, is_lowest);
        panel::draw_curves(frame, panel, &plot);
        let unclear = panel_labels::draw(frame, panel, &plot, None, Crowded::LeaveOut);
        if let Some(row) = shade_row {
            shades::draw_labels(frame, &small.shades, &plot, row);
        }
        Ok(unclear)
    }

    /// Draws the titles of a panel; the room left for its plot, and the row of shade names above it.
    fn panel_area(&self, frame: &mut Frame, small: &SmallPanel) -> Result<(Rect, Option<Rect>)> {
        let has_notes = self.panels.iter().any(|other| !other.note.is_empty());
        let mut top = draw_panel_title(frame, small, has_notes);
        let cell = frame.body;
        let text = frame.measures.text;
        let named = |panel: &SmallPanel| panel.shades.iter().any(|shade| !shade.label.is_empty());
        let row = lettering::line_step(text);
        let shade_row = self
            .panels
            .iter()
            .any(named)
            .then(|| Rect::new(cell.left, top, cell.right, top + row));
        if shade_row.is_some() {
            top += row;
        }
        top += frame.measures.gap;
        let bottom = cell.bottom - axis::level_row_height(frame);
        let area = Rect::new(cell.left, top, cell.right, bottom);
        if area.height() < 2.5 * text || area.width() < 4.0 * text {
            return Err(Error::bad(PlotFault::TooSmall(Plotted::SmallPanels)));
        }
        Ok((area, shade_row))
    }
}

/// The grid of panels and what they share.
struct PanelGrid {
    inner: Rect,
    columns: usize,
    rows: usize,
    ranges: [[f64; 2]; 2],
    ticks: Vec<(f64, String)>,
    tick_column: f64,
    between: [f64; 2],
}

impl PanelGrid {
    fn of(chart: &SmallMultiples, frame: &Frame, panels: &[Panel], inner: Rect) -> Self {
        let columns = chart.column_count(&inner);
        let rows = panels.len().div_ceil(columns);
        let join = |a: [f64; 2], b: [f64; 2]| [a[0].min(b[0]), a[1].max(b[1])];
        let none = [f64::INFINITY, f64::NEG_INFINITY];
        let x_data = panels.iter().map(panel::place_range).fold(none, join);
        let y_data = panels.iter().map(panel::value_range).fold(none, join);
        let height = 0.65 * inner.height() / rows as f64;
        let count = axis::upright_tick_count(height, frame.measures.text);
        let x_range = chart.x.level_range(x_data);
        let y_range = chart.y.upright_range(y_data, count);
        let ticks = chart.y.labelled_ticks(y_range, count);
        let gap = frame.measures.gap;
        // Neighbours' last and first tick labels stand side by side between two panels.
        let x_label = axis::upright_column_width(frame, &chart.x.labelled_ticks(x_range, 3));
        Self {
            inner,
            columns,
            rows,
            ranges: [x_range, y_range],
            tick_column: axis::upright_column_width(frame, &ticks),
            ticks,
            between: [(x_label + 0.8 * gap).max(3.2 * gap), 1.6 * gap],
        }
    }

    /// The rectangle of one panel with its titles and the labels below it.
    fn cell(&self, index: usize) -> Rect {
        let (columns, rows) = (self.columns as f64, self.rows as f64);
        let at = [(index % self.columns) as f64, (index / self.columns) as f64];
        let [across, down] = self.between;
        let width = (self.inner.width() - self.tick_column - across * (columns - 0.5)) / columns;
        let height = (self.inner.height() - down * (rows - 1.0)) / rows;
        let left = self.inner.left + self.tick_column + at[0] * (width + across);
        let top = self.inner.top + at[1] * (height + down);
        Rect::new(left, top, left + width, top + height)
    }
}

/// Smaller type for smaller panels; the words around them keep theirs.
fn shrink(frame: &mut Frame) {
    let measures = &mut frame.measures;
    measures.label *= TYPE;
    measures.text *= TYPE;
    measures.line *= TYPE;
    measures.gap *= TYPE;
}

fn named_in(keyed: &[Series], series: &Series) -> bool {
    keyed.iter().any(|other| other.name == series.name)
}

/// A piece of each line with its name, in rows above the panels; returns where they end.
fn draw_key(frame: &mut Frame, keyed: &[Series]) -> f64 {
    let size = frame.measures.label;
    let gap = frame.measures.gap;
    let piece = 5.0 * gap;
    let mut at = [frame.body.left, frame.body.top];
    for series in keyed {
        let most = frame.body.width() - piece - gap;
        let words = lettering::shortened(&series.name, size, Face::Bold, most);
        let width = piece + gap + lettering::width(&words, size, Face::Bold);
        if at[0] > frame.body.left && at[0] + width > frame.body.right {
            at = [frame.body.left, at[1] + lettering::line_step(size)];
        }
        let baseline = at[1] + lettering::rise(size);
        let y = baseline - lettering::capitals(size) / 2.0;
        let line = Stroke::solid(series.role.line(&frame.colours), frame.measures.line)
            .dashed(series.role.dashes(&frame.colours));
        frame.scene.line([at[0], y], [at[0] + piece, y], line);
        let colour = series.role.label(&frame.colours);
        let text = Text::new(
            [at[0] + piece + gap, baseline],
            words,
            size,
            Face::Bold,
            colour,
        );
        frame.scene.text(text);
        at[0] += width + 3.0 * gap;
    }
    at[1] + lettering::line_step(size)
}

/// Title and note at the top of a panel; returns where they end.
fn draw_panel_title(frame: &mut Frame, small: &SmallPanel, has_notes: bool) -> f64 {
    let cell = frame.body;
    let mut top = cell.top;
    let (ink, muted) = (frame.colours.ink, frame.colours.muted);
    let title = (&small.title, frame.measures.label, Face::Bold, ink);
    let note = (&small.note, frame.measures.text, Face::Regular, muted);
    let lines = if has_notes {
        vec![title, note]
    } else {
        vec![title]
    };
    for (words, size, face, colour) in lines {
        let words = lettering::shortened(words, size, face, cell.width());
        let at = [cell.left, top + lettering::rise(size)];
        frame.scene.text(Text::new(at, words, size, face, colour));
        top += lettering::line_step(size);
    }
    top
}
