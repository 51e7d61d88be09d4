//! The workhorse: curves over one shared level axis, labelled directly, in one or two panels.
//!
//! In: plain curves, shaded stretches, marked points, poses. Out: a scene. The figure files of this
//! room turn results into these structs; nothing here knows what a curve means.

use super::axis::{self, Axis, Plot};
use super::frame::{Frame, Heading, Look};
use super::panel_labels::{self, Gutter};
use super::pose_strip::{self, Pose};
use super::shades::{self, Shade};
use super::{panel, pose_strip::Strip};
use crate::draw::{Colours, Rect, Scene, lettering};
use crate::error::{Error, Result};

/// The part that a curve plays; it decides colour, dashes and width.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Role {
    /// One of several; the number picks colour and dashes.
    Series(usize),
    /// A reference in the background.
    Muted,
}

impl Role {
    /// What the lifter can do.
    pub const CAPACITY: Self = Self::Series(0);
    /// What the load asks for.
    pub const DEMAND: Self = Self::Series(1);
    /// Demand over capacity.
    pub const EFFORT: Self = Self::Series(2);

    /// Colour of the line.
    #[must_use]
    pub fn line(self, colours: &Colours) -> crate::draw::Colour {
        match self {
            Self::Series(number) => colours.series_line(number),
            Self::Muted => colours.rule,
        }
    }

    /// Colour of its label.
    #[must_use]
    pub fn label(self, colours: &Colours) -> crate::draw::Colour {
        match self {
            Self::Series(number) => colours.series_label(number),
            Self::Muted => colours.muted,
        }
    }

    /// Dash pattern in multiples of the line's width.
    #[must_use]
    pub fn dashes(self, colours: &Colours) -> &'static [f64] {
        match self {
            Self::Series(number) => colours.series_dashes(number),
            Self::Muted => &[],
        }
    }
}

/// One curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// Its name, written beside it; empty for none.
    pub name: String,
    /// Its points in the order of drawing.
    pub points: Vec<[f64; 2]>,
    /// The part it plays.
    pub role: Role,
}

/// The area between two curves.
#[derive(Debug, Clone, PartialEq)]
pub struct Fill {
    /// One edge.
    pub upper: Vec<[f64; 2]>,
    /// The other edge.
    pub lower: Vec<[f64; 2]>,
    /// Whose colour it takes.
    pub role: Role,
    /// What it is, written inside or beside it; empty for none.
    pub label: String,
}

/// A marked point with a few words.
#[derive(Debug, Clone, PartialEq)]
pub struct Marker {
    /// Where it is.
    pub at: [f64; 2],
    /// What it is: "Sticking point".
    pub text: String,
    /// Figures to it: "14 cm off the chest, effort 0.93"; may be empty.
    pub detail: String,
    /// Whose colour it takes.
    pub role: Role,
}

/// A level line across the panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Level {
    /// Its value.
    pub at: f64,
    /// What it stands for; may be empty.
    pub label: String,
}

/// One panel: an upright axis and what is drawn over the shared level axis.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Panel {
    /// The upright axis.
    pub axis: Axis,
    /// Curves, the most important first.
    pub series: Vec<Series>,
    /// Areas between curves.
    pub fills: Vec<Fill>,
    /// Marked points.
    pub markers: Vec<Marker>,
    /// Level lines.
    pub levels: Vec<Level>,
}

/// Where the names of curves stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Labels {
    /// Beside the curves if there is room, else in a column at the right.
    #[default]
    Auto,
    /// In a column at the right, each led to its curve's end.
    Column,
}

/// A chart of curves.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LineChart {
    /// The words around it.
    pub heading: Heading,
    /// The shared level axis.
    pub x: Axis,
    /// One panel, or two above each other.
    pub panels: Vec<Panel>,
    /// Shaded stretches of the level axis.
    pub shades: Vec<Shade>,
    /// Poses below the axis.
    pub poses: Vec<Pose>,
    /// Where the names of curves stand.
    pub labels: Labels,
}

impl LineChart {
    /// The chart as a scene.
    ///
    /// # Errors
    /// If there is no panel or no curve, or a value is no number.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        self.check()?;
        if self.labels == Labels::Auto && self.most_names() <= 4 {
            let (scene, clear) = self.drawn(look, Gutter::None)?;
            if clear {
                return Ok(scene);
            }
        }
        Ok(self.drawn(look, Gutter::Column)?.0)
    }

    fn most_names(&self) -> usize {
        let named = |panel: &Panel| {
            panel
                .series
                .iter()
                .filter(|curve| !curve.name.is_empty())
                .count()
        };
        self.panels.iter().map(named).max().unwrap_or(0)
    }

    fn check(&self) -> Result<()> {
        if self.panels.is_empty() || self.panels.len() > 2 {
            let count = self.panels.len();
            return Err(Error::bad(format!(
                "a chart of curves has 1 or 2 panels, not {count}"
            )));
        }
        for panel in &self.panels {
            if panel.series.iter().all(|series| series.points.len() < 2) {
                return Err(Error::no_answer(format!(
                    "nothing to draw for `{}`: no curve has two points",
                    panel.axis.quantity
                )));
            }
            for series in &panel.series {
                if let Some(index) = first_bad(&series.points) {
                    return Err(Error::bad(format!(
                        "point {} of the curve `{}` is no number",
                        index + 1,
                        series.name
                    )));
                }
            }
        }
        Ok(())
    }

    /// Draws everything; also tells whether all names found a place clear of curves.
    fn drawn(&self, look: Look, gutter: Gutter) -> Result<(Scene, bool)> {
        let mut frame = Frame::new(look, &self.heading);
        let layout = self.layout(&mut frame, gutter)?;
        for (index, plot) in layout.plots.iter().enumerate() {
            shades::draw_ground(
                &mut frame,
                &self.shades,
                plot,
                layout.shade_row.filter(|_| index == 0),
            );
        }
        let mut clear = true;
        let last = layout.plots.len() - 1;
        let mut tick_boxes = Vec::new();
        for (index, (panel, plot)) in self.panels.iter().zip(&layout.plots).enumerate() {
            let ticks = self.upright_ticks(&frame, panel, plot.area.height());
            axis::draw_upright(&mut frame, plot, &ticks);
            let across = axis::level_tick_count(plot.area.width(), frame.measures.text);
            let ticks = self.x.labelled_ticks(plot.x.range(), across);
            tick_boxes = axis::draw_level(&mut frame, plot, &ticks, index == last);
            let title_at = [frame.body.left, layout.title_baselines[index]];
            let title = frame.axis_text(title_at, &panel.axis.title());
            frame.scene.text(title);
            panel::draw_curves(&mut frame, panel, plot);
            let column = layout.column;
            clear &= panel_labels::draw(&mut frame, panel, plot, column, &self.x);
        }
        if let Some(row) = layout.shade_row {
            shades::draw_labels(&mut frame, &self.shades, &layout.plots[0], row);
        }
        pose_strip::draw(
            &mut frame,
            &self.x,
            &self.poses,
            &layout.plots[last],
            &layout.strip,
            &tick_boxes,
        );
        Ok((frame.scene, clear))
    }

    fn upright_ticks(&self, frame: &Frame, panel: &Panel, height: f64) -> Vec<(f64, String)> {
        let count = axis::upright_tick_count(height, frame.measures.text);
        let range = panel.axis.upright_range(panel::value_range(panel), count);
        panel.axis.labelled_ticks(range, count)
    }

    /// Rectangles for panels, headings, strip and column.
    fn layout(&self, frame: &mut Frame, gutter: Gutter) -> Result<Layout> {
        let text = frame.measures.text;
        let row = lettering::line_step(text);
        // Below an axis title: half a tick label stands above the plot's upper edge.
        let head = 0.9 * frame.measures.gap + lettering::capitals(text) / 2.0;
        let x_range = self.x.level_range(self.x_data());
        let strip = Strip::planned(frame, &self.poses);
        let below = axis::level_row_height(frame) + row + strip.height();
        let between = 1.2 * row;
        let rows = self.panels.len() as f64;
        let height = frame.body.height() - below - rows * (row + head) - (rows - 1.0) * between;
        let shares: &[f64] = if self.panels.len() == 2 {
            &[0.6, 0.4]
        } else {
            &[1.0]
        };
        let left = self
            .panels
            .iter()
            .zip(shares)
            .map(|(panel, share)| {
                let ticks = self.upright_ticks(frame, panel, height * share - row);
                axis::upright_column_width(frame, &ticks)
            })
            .fold(0.0, f64::max);
        let column_width = match gutter {
            Gutter::None => 0.0,
            Gutter::Column => panel_labels::column_width(frame, &self.panels),
        };
        let left = frame.body.left + left;
        let right = frame.body.right - column_width.max(1.2 * frame.measures.gap);
        let mut top = frame.body.top + row;
        let mut title_baselines = vec![top - lettering::fall(text)];
        let shade_row = self.shade_row(frame, left, right, x_range, top)?;
        if let Some(shade_row) = shade_row {
            top = top.max(shade_row.bottom);
        }
        top += head;
        let available = height - (top - frame.body.top - row - head);
        let mut plots = Vec::new();
        for (index, (panel, share)) in self.panels.iter().zip(shares).enumerate() {
            if index > 0 {
                top += between + row;
                title_baselines.push(top - lettering::fall(text));
                top += head;
            }
            let area = Rect::new(left, top, right, top + available * share);
            if area.height() < 3.0 * text || area.width() < 6.0 * text {
                return Err(Error::bad("the figure is too small for what it shows")
                    .hint("choose a larger size, a shorter title or fewer panels"));
            }
            let count = axis::upright_tick_count(area.height(), text);
            let y_range = panel.axis.upright_range(panel::value_range(panel), count);
            plots.push(Plot::new(area, x_range, y_range)?);
            top = area.bottom;
        }
        let column = (column_width > 0.0).then(|| Rect::new(right, 0.0, frame.body.right, 0.0));
        Ok(Layout {
            plots,
            title_baselines,
            shade_row,
            strip,
            column,
        })
    }

    /// The row of shade labels: beside the axis title if they do not meet, else below it.
    fn shade_row(
        &self,
        frame: &Frame,
        left: f64,
        right: f64,
        x_range: [f64; 2],
        title_bottom: f64,
    ) -> Result<Option<Rect>> {
        if self.shades.iter().all(|shade| shade.label.is_empty()) {
            return Ok(None);
        }
        let row = lettering::line_step(frame.measures.text);
        let title = frame.axis_text([frame.body.left, 0.0], &self.panels[0].axis.title());
        let title_right = title.bounds().right + frame.measures.gap;
        let beside = Rect::new(left, title_bottom - row, right, title_bottom);
        let plot = Plot::new(beside, x_range, [0.0, 1.0])?;
        let first = shades::label_boxes(frame, &self.shades, &plot, beside)
            .iter()
            .map(|(area, _)| area.left)
            .fold(f64::INFINITY, f64::min);
        let down = if first < title_right { row } else { 0.0 };
        Ok(Some(beside.moved(0.0, down)))
    }

    fn x_data(&self) -> [f64; 2] {
        let points = self
            .panels
            .iter()
            .flat_map(|panel| &panel.series)
            .flat_map(|series| &series.points);
        points.fold([f64::INFINITY, f64::NEG_INFINITY], |reach, point| {
            [reach[0].min(point[0]), reach[1].max(point[0])]
        })
    }
}

/// Where everything goes.
struct Layout {
    plots: Vec<Plot>,
    title_baselines: Vec<f64>,
    shade_row: Option<Rect>,
    strip: Strip,
    column: Option<Rect>,
}

fn first_bad(points: &[[f64; 2]]) -> Option<usize> {
    points
        .iter()
        .position(|point| point.iter().any(|value| !value.is_finite()))
}
