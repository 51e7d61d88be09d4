//! Small panels side by side on shared axes, each with a title of its own: to compare shapes.
//!
//! In: the curves of each panel. Out: a scene; axis titles stand once, tick labels at the outside.

use super::axis::{self, Axis, Plot};
use super::frame::{DATA_SHARE, Frame, Heading, Look};
use super::panel;
use super::panel_contents::{Fill, Panel, Series};
use super::panel_labels::{self, Around, Crowded};
use super::shades::{self, Shade};
use crate::draw::{Face, Layer, Rect, Scene, Stroke, Text, TextAnchor, lettering};
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
/// Lines and distances in small panels against those of a large one; type keeps its size, names that of other words.
const SMALLER: f64 = 0.88;
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
        let rows = |frame: &Frame| {
            let columns = self.column_count(&frame.body);
            self.panels.len().div_ceil(columns) as f64
        };
        let plots = |frame: &Frame| frame.body.height() - self.not_data(frame, rows(frame), keyed);
        let mut frame = Frame::roomy(look, &self.heading, |frame| {
            let mut small = frame.clone();
            shrink(&mut small);
            plots(&small)
        });
        shrink(&mut frame);
        // Notes below the titles of panels go where data would lose their share.
        let note_rows = rows(&frame) * lettering::line_step(frame.measures.text);
        let spare = plots(&frame) - DATA_SHARE * frame.scene.height;
        let has_notes =
            self.panels.iter().any(|panel| !panel.note.is_empty()) && spare >= note_rows;
        let title_lines = self.title_lines(&frame, rows(&frame));
        let inner = self.draw_titles(&mut frame, keyed);
        let plan = PanelGrid::of(
            self,
            &frame,
            panels,
            inner,
            [title_lines, usize::from(has_notes)],
        );
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

    /// Lines that the titles of panels need: two where one would be cut.
    fn title_lines(&self, frame: &Frame, rows: f64) -> usize {
        let columns = (self.panels.len() as f64 / rows).ceil();
        let cell = (frame.body.width() - (columns + 1.0) * 4.0 * frame.measures.text) / columns;
        let is_long = |panel: &SmallPanel| {
            lettering::width(&panel.title, frame.measures.text, Face::Bold) > cell
        };
        1 + usize::from(self.panels.iter().any(is_long))
    }

    /// Height in the body that is not data's, without notes below the titles of panels.
    fn not_data(&self, frame: &Frame, rows: f64, keyed: &[Series]) -> f64 {
        let text = lettering::line_step(frame.measures.text);
        let label = lettering::line_step(frame.measures.label);
        let gap = frame.measures.gap;
        let key = if keyed.is_empty() {
            0.0
        } else {
            label + 0.6 * gap
        };
        let named = |panel: &SmallPanel| panel.shades.iter().any(|shade| !shade.label.is_empty());
        let shade_row = if self.panels.iter().any(named) {
            text
        } else {
            0.0
        };
        let around = 2.0 * text + 1.0 * gap + axis::level_row_height(frame);
        let titles = label * self.title_lines(frame, rows) as f64;
        key + around + rows * (titles + shade_row + gap) + (rows - 1.0) * BETWEEN * gap
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
        let before = frame.scene.begin(Layer::Axis);
        let y_title = axis::upright_title(frame, &self.y, top + lettering::rise(text));
        frame.scene.text(y_title);
        let x_at = [body.centre()[0], body.bottom - lettering::fall(text)];
        let words = self.x.title_within(text, body.width());
        let x_title = frame.axis_text(x_at, &words).anchored(TextAnchor::Middle);
        frame.scene.text(x_title);
        frame.scene.begin(before);
        Rect {
            top: top + row + 0.5 * gap,
            bottom: body.bottom - row - 0.5 * gap - axis::level_row_height(frame),
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
        let (area, shade_row) = self.panel_area(frame, small, plan.head_lines)?;
        let plot = Plot::new(area, plan.ranges[0], plan.ranges[1])?.along(&self.x)?;
        frame.scene.plots.push(area);
        shades::draw_ground(frame, &small.shades, &plot);
        let mut ticks = plan.ticks.clone();
        if !index.is_multiple_of(plan.columns) {
            ticks.iter_mut().for_each(|tick| tick.1.clear());
        }
        axis::draw_upright(frame, &plot, &ticks);
        let is_lowest = index + plan.columns >= self.panels.len();
        axis::draw_level(frame, &plot, &self.x, is_lowest);
        axis::draw_time_arrow(frame, &plot, &self.x);
        panel::draw_curves(frame, panel, &plot);
        let around = Around {
            edges: shades::edges(frame, &small.shades, &plot),
            ..Around::default()
        };
        let unclear =
            panel_labels::draw_around(frame, panel, &plot, None, Crowded::LeaveOut, &around);
        if let Some(row) = shade_row {
            shades::draw_labels(frame, &small.shades, &plot, row);
        }
        Ok(unclear)
    }

    /// Draws the titles of a panel; the room left for its plot, and the row of shade names above it.
    fn panel_area(
        &self,
        frame: &mut Frame,
        small: &SmallPanel,
        head_lines: [usize; 2],
    ) -> Result<(Rect, Option<Rect>)> {
        let mut top = draw_panel_title(frame, small, head_lines);
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
        let area = Rect::new(cell.left, top, cell.right, cell.bottom);
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
    /// Lines of the title and of the note above each panel.
    head_lines: [usize; 2],
}

/// Room between two rows of panels, in gaps.
const BETWEEN: f64 = 1.8;

impl PanelGrid {
    fn of(
        chart: &SmallMultiples,
        frame: &Frame,
        panels: &[Panel],
        inner: Rect,
        head_lines: [usize; 2],
    ) -> Self {
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
            between: [(x_label + 0.8 * gap).max(3.2 * gap), BETWEEN * gap],
            head_lines,
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

/// Thinner lines for smaller panels.
fn shrink(frame: &mut Frame) {
    let measures = &mut frame.measures;
    measures.label = measures.text;
    measures.line *= SMALLER;
    measures.gap *= SMALLER;
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
        let width = frame.measures.line * series.role.weight(&frame.colours);
        let line = Stroke::solid(series.role.line(&frame.colours), width)
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
fn draw_panel_title(frame: &mut Frame, small: &SmallPanel, lines: [usize; 2]) -> f64 {
    let cell = frame.body;
    let mut top = cell.top;
    let (ink, muted) = (frame.colours.ink, frame.colours.muted);
    let title = (
        &small.title,
        frame.measures.label,
        Face::Bold,
        ink,
        lines[0],
    );
    let note = (
        &small.note,
        frame.measures.text,
        Face::Regular,
        muted,
        lines[1],
    );
    for (words, size, face, colour, most_lines) in [title, note] {
        let step = lettering::line_step(size);
        if most_lines > 0 {
            let fitted = lettering::fit(words, size, size, face, cell.width(), most_lines);
            // Shorter titles end where longer ones do, just above their notes.
            let free = most_lines - fitted.lines.len().min(most_lines);
            for (index, line) in fitted.lines.into_iter().enumerate() {
                let down = (index + free) as f64 * step;
                let at = [cell.left, top + down + lettering::rise(size)];
                frame.scene.text(Text::new(at, line, size, face, colour));
            }
        }
        top += most_lines as f64 * step;
    }
    top
}
