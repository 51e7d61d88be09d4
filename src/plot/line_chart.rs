//! The workhorse: curves over one shared level axis, labelled directly, in one or two panels.
//!
//! In: panels of curves, shaded stretches, poses, the words around them. Out: a [`LineChart`], which
//! `line_drawing` makes a scene of.

use super::axis::Axis;
use super::frame::Heading;
use super::panel_contents::{Panel, Series};
use super::pose_strip::StripPose;
use super::shades::Shade;
use crate::error::{Error, PlotFault, Plotted, Result};

/// Where the names of curves stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Labels {
    /// Beside the curves if there is room, else in a column at the right.
    #[default]
    Auto,
    /// In a column at the right, each led to its curve's end.
    Column,
}

/// The same curves whole, in a narrow panel at the right, where the large panel shows only a part of their height.
#[derive(Debug, Clone, PartialEq)]
pub struct WholeCurve {
    /// Its upright axis: "Whole curve", "% of its peak".
    pub axis: Axis,
    /// Curves without names, in the unit of that axis.
    pub series: Vec<Series>,
    /// The part that the large panel shows, in the unit of that axis.
    pub window: [f64; 2],
    /// What stands in that part: "shown at the left".
    pub shown: String,
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
    pub poses: Vec<StripPose>,
    /// Figures on one scale in a column at the right, from top to bottom, each above its caption.
    pub beside: Vec<StripPose>,
    /// What these figures show, above them; may be empty.
    pub beside_title: String,
    /// Where the names of curves stand.
    pub labels: Labels,
    /// The whole curves beside those that leave the axis; only beside one panel.
    pub whole: Option<WholeCurve>,
}

impl LineChart {
    /// Panels over one level axis, without words around them.
    #[must_use]
    pub fn new(x: Axis, panels: Vec<Panel>) -> Self {
        Self {
            x,
            panels,
            ..Self::default()
        }
    }

    /// The most curves with a name in one panel.
    pub(super) fn most_names(&self) -> usize {
        let named = |panel: &Panel| {
            panel
                .series
                .iter()
                .filter(|curve| !curve.name.is_empty())
                .count()
        };
        self.panels.iter().map(named).max().unwrap_or(0)
    }

    /// Whether there is something to draw in as many panels as a chart can have.
    ///
    /// # Errors
    /// If there is no panel or no curve, or a value is no number.
    pub(super) fn check(&self) -> Result<()> {
        if self.panels.is_empty() || self.panels.len() > 2 {
            return Err(Error::bad(PlotFault::PanelCount {
                of: Plotted::Curves,
                count: self.panels.len(),
                most: 2,
            }));
        }
        self.panels.iter().try_for_each(Panel::check)
    }
}
