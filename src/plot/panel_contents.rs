//! What a panel of curves holds: curves, areas, marked points, level lines, stretches, and the part each plays.
//!
//! In: plain points with names. Out: a [`Panel`], checked before anything is drawn; nothing here knows what a
//! curve means.

use super::axis::Axis;
use crate::draw::{Colour, Colours};
use crate::error::{Error, PlotFault, Plotted, Result};
use std::ops::Range;

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
    pub fn line(self, colours: &Colours) -> Colour {
        match self {
            Self::Series(number) => colours.series_line(number),
            Self::Ordered(share) => colours.ordered_line(share),
            Self::Reference => colours.ink,
            Self::Muted => colours.rule,
        }
    }

    /// Colour of its label.
    #[must_use]
    pub fn label(self, colours: &Colours) -> Colour {
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
            Self::Ordered(share) => colours.ordered_dashes(share),
            Self::Reference | Self::Muted => &[],
        }
    }

    /// Width of the line over the usual one.
    #[must_use]
    pub fn weight(self, colours: &Colours) -> f64 {
        match self {
            Self::Series(number) => colours.series_weight(number),
            Self::Ordered(share) => colours.ordered_weight(share),
            Self::Reference => colours.weight,
            Self::Muted => 0.6 * colours.weight,
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
    /// The stretches of points that are drawn, each for itself; empty where one line joins all of them.
    pub pieces: Vec<Range<usize>>,
    /// Stretches of the level axis in which the curve is less sure: there the line is hollow.
    pub doubted: Vec<[f64; 2]>,
    /// Stretches of the level axis in which the curve is one of several possible ones: there the line is thin.
    pub thin: Vec<[f64; 2]>,
    /// Its greatest point, where that lies between two places of which other curves have values too; its own points may lack it.
    pub crest: Option<[f64; 2]>,
}

impl Series {
    /// A curve with its name and the part it plays.
    #[must_use]
    pub fn new(name: impl Into<String>, points: Vec<[f64; 2]>, role: Role) -> Self {
        Self {
            name: name.into(),
            points,
            role,
            pieces: Vec::new(),
            doubted: Vec::new(),
            thin: Vec::new(),
            crest: None,
        }
    }

    /// The same curve, greatest between two of its points.
    #[must_use]
    pub fn crested(mut self, crest: Option<[f64; 2]>) -> Self {
        self.crest = crest;
        self
    }

    /// The same curve, one of several possible ones in these stretches of the level axis.
    #[must_use]
    pub fn thinned(mut self, stretches: Vec<[f64; 2]>) -> Self {
        self.thin = stretches;
        self
    }

    /// The same curve, less sure in these stretches of the level axis.
    #[must_use]
    pub fn doubted(mut self, stretches: Vec<[f64; 2]>) -> Self {
        self.doubted = stretches;
        self
    }

    /// The same curve drawn only in these stretches of its points.
    #[must_use]
    pub fn in_pieces(mut self, pieces: Vec<Range<usize>>) -> Self {
        self.pieces = pieces;
        self
    }

    /// The points of every stretch that is drawn.
    pub(super) fn drawn(&self) -> Vec<&[[f64; 2]]> {
        match self.pieces.as_slice() {
            [] => vec![self.points.as_slice()],
            pieces => pieces
                .iter()
                .map(|piece| &self.points[piece.clone()])
                .collect(),
        }
    }
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
    /// Whether it is a cross, for what fails there, and no ring.
    pub is_cross: bool,
}

impl Marker {
    /// A marked point with a few words and no figures to them.
    #[must_use]
    pub fn new(at: [f64; 2], text: impl Into<String>, role: Role) -> Self {
        Self {
            at,
            text: text.into(),
            detail: String::new(),
            role,
            is_cross: false,
        }
    }

    /// The same point as a cross: what fails there.
    #[must_use]
    pub fn crossed(mut self) -> Self {
        self.is_cross = true;
        self
    }

    /// The same point with figures to its words.
    #[must_use]
    pub fn detailed(mut self, detail: impl Into<String>) -> Self {
        self.detail = detail.into();
        self
    }
}

/// A level line across the panel.
#[derive(Debug, Clone, PartialEq)]
pub struct LevelLine {
    /// Its value.
    pub at: f64,
    /// What it stands for; may be empty.
    pub label: String,
}

impl LevelLine {
    /// A level line with what it stands for.
    #[must_use]
    pub fn new(at: f64, label: impl Into<String>) -> Self {
        Self {
            at,
            label: label.into(),
        }
    }
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
    /// Stretches of the level axis in which the areas are one of several possible ones: there they are pale.
    pub pale: Vec<[f64; 2]>,
    /// Marked points.
    pub markers: Vec<Marker>,
    /// Words inside bars, each just below the middle of a bar's upper edge, or above it where the bar is too low.
    pub bar_words: Vec<Marker>,
    /// Level lines.
    pub levels: Vec<LevelLine>,
    /// Named stretches of the level axis, as bars along the bottom.
    pub spans: Vec<Span>,
}

impl Panel {
    /// Curves over an upright axis.
    #[must_use]
    pub fn new(axis: Axis, series: Vec<Series>) -> Self {
        Self {
            axis,
            series,
            ..Self::default()
        }
    }

    /// Whether there is something to draw and every value is a number.
    ///
    /// # Errors
    /// If not, with the curve and the point.
    pub fn check(&self) -> Result<()> {
        if self.series.iter().all(|series| series.points.len() < 2) {
            let quantity = self.axis.quantity.clone();
            let of = Plotted::Curves;
            return Err(Error::no_answer(PlotFault::Nothing { of, quantity }));
        }
        for series in &self.series {
            if let Some(index) = first_bad(&series.points) {
                let curve = series.name.clone();
                let point = index + 1;
                return Err(Error::bad(PlotFault::PointNoNumber { point, curve }));
            }
        }
        let edges = self
            .fills
            .iter()
            .flat_map(|fill| [&fill.upper, &fill.lower]);
        let markers = self.markers.iter().map(|marker| marker.at);
        let marks: Vec<[f64; 2]> = edges.flatten().copied().chain(markers).collect();
        if first_bad(&marks).is_some() {
            let quantity = self.axis.quantity.clone();
            let of = Plotted::Marks;
            return Err(Error::bad(PlotFault::NoNumber { of, quantity }));
        }
        Ok(())
    }
}

/// A named stretch of the level axis that belongs to one curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// What it is: "Sticking region, 100 kg".
    pub label: String,
    /// Whose colour it takes.
    pub role: Role,
}

impl Span {
    /// A stretch between two places in either order.
    #[must_use]
    pub fn between(ends: [f64; 2], label: impl Into<String>, role: Role) -> Self {
        Self {
            from: ends[0].min(ends[1]),
            to: ends[0].max(ends[1]),
            label: label.into(),
            role,
        }
    }
}

fn first_bad(points: &[[f64; 2]]) -> Option<usize> {
    points
        .iter()
        .position(|point| point.iter().any(|value| !value.is_finite()))
}
