//! The workhorse: curves over one shared level axis, labelled directly, in one or two panels.
//!
//! In: plain curves, shaded stretches, marked points, poses. Out: a scene. The figure files of this
//! room turn results into these structs; nothing here knows what a curve means.

use super::axis::{self, Axis};
use super::frame::{Frame, Heading, Look};
use super::line_layout;
use super::panel;
use super::panel_labels::{self, Crowded};
use super::pose_strip::{self, Pose};
use super::shades::{self, Shade};
use super::spans::{self, Span};
use crate::draw::{Colours, Scene};
use crate::error::{Error, Result};

/// The part that a curve plays; it decides colour, dashes and width.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Role {
    /// One of several; the number picks colour and dashes.
    Series(usize),
    /// One of an ordered family: 0 the least, 1 the greatest; the lightness of the line keeps the order.
    Ordered(f64),
    /// The one that others are compared with.
    Reference,
    /// In the background.
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
            Self::Ordered(share) => colours.ordered_line(share),
            Self::Reference => colours.ink,
            Self::Muted => colours.rule,
        }
    }

    /// Colour of its label.
    #[must_use]
    pub fn label(self, colours: &Colours) -> crate::draw::Colour {
        match self {
            Self::Series(number) => colours.series_label(number),
            Self::Ordered(share) => colours.on_ground(colours.ordered_line(share)),
            Self::Reference => colours.ink,
            Self::Muted => colours.muted,
        }
    }

    /// Dash pattern in multiples of the line's width.
    #[must_use]
    pub fn dashes(self, colours: &Colours) -> &'static [f64] {
        match self {
            Self::Series(number) => colours.series_dashes(number),
            Self::Ordered(_) | Self::Reference | Self::Muted => &[],
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
    /// Named stretches of the level axis, as bars along the bottom.
    pub spans: Vec<Span>,
}

impl Panel {
    /// Whether there is something to draw and every value is a number.
    ///
    /// # Errors
    /// If not, with the curve and the point.
    pub fn check(&self) -> Result<()> {
        if self.series.iter().all(|series| series.points.len() < 2) {
            return Err(Error::no_answer(format!(
                "nothing to draw for `{}`: no curve has two points",
                self.axis.quantity
            )));
        }
        for series in &self.series {
            if let Some(index) = first_bad(&series.points) {
                return Err(Error::bad(format!(
                    "point {} of the curve `{}` is no number",
                    index + 1,
                    series.name
                )));
            }
        }
        let edges = self
            .fills
            .iter()
            .flat_map(|fill| [&fill.upper, &fill.lower]);
        let markers = self.markers.iter().map(|marker| marker.at);
        if edges
            .flatten()
            .copied()
            .chain(markers)
            .any(|at| !(at[0].is_finite() && at[1].is_finite()))
        {
            return Err(Error::bad(format!(
                "an area or a marked point of `{}` is no number",
                self.axis.quantity
            )));
        }
        Ok(())
    }
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
            let (scene, clear) = self.drawn(look, false)?;
            if clear {
                return Ok(scene);
            }
        }
        Ok(self.drawn(look, true)?.0)
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
        self.panels.iter().try_for_each(Panel::check)
    }

    /// Draws everything; also tells whether all names found a place clear of curves.
    fn drawn(&self, look: Look, column_wanted: bool) -> Result<(Scene, bool)> {
        let mut frame = Frame::new(look, &self.heading);
        let layout = line_layout::plan(self, &frame, column_wanted)?;
        for (index, place) in layout.panels.iter().enumerate() {
            let row = layout.shade_row.filter(|_| index == 0);
            shades::draw_ground(&mut frame, &self.shades, &place.plot, row);
        }
        let mut clear = true;
        let mut tick_boxes = Vec::new();
        for (index, (panel, place)) in self.panels.iter().zip(&layout.panels).enumerate() {
            let is_lowest = index + 1 == layout.panels.len();
            axis::draw_upright(&mut frame, &place.plot, &place.ticks);
            tick_boxes = axis::draw_level(&mut frame, &place.plot, &self.x, is_lowest);
            let title = axis::upright_title(&frame, &panel.axis, place.title_baseline);
            frame.scene.text(title);
            spans::draw(&mut frame, &panel.spans, &place.plot);
            panel::draw_curves(&mut frame, panel, &place.plot);
            let column = layout.column;
            let unclear = panel_labels::draw(&mut frame, panel, &place.plot, column, Crowded::Dim);
            clear &= unclear.is_empty();
        }
        let (first, lowest) = (&layout.panels[0], &layout.panels[layout.panels.len() - 1]);
        if let Some(row) = layout.shade_row {
            shades::draw_labels(&mut frame, &self.shades, &first.plot, row);
        }
        let strip = &layout.strip;
        pose_strip::draw(
            &mut frame,
            &self.x,
            &self.poses,
            &lowest.plot,
            strip,
            &tick_boxes,
        );
        Ok((frame.scene, clear))
    }
}

fn first_bad(points: &[[f64; 2]]) -> Option<usize> {
    points
        .iter()
        .position(|point| point.iter().any(|value| !value.is_finite()))
}
