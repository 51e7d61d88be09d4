//! A map of one quantity over two others.
//!
//! In: two axes, a value for each pair. Out: a [`HeatMap`], which `heat_drawing` makes a scene of.

use super::axis::Axis;
use super::frame::Heading;
use super::panel_contents::Marker;
use crate::error::{Error, PlotFault, Plotted, Result};

/// A map over two axes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HeatMap {
    /// The words around it.
    pub heading: Heading,
    /// The level axis.
    pub x: Axis,
    /// The upright axis.
    pub y: Axis,
    /// Places on the level axis, rising.
    pub xs: Vec<f64>,
    /// Places on the upright axis, rising.
    pub ys: Vec<f64>,
    /// Values, one row for each place on the upright axis; missing where there is no answer.
    pub values: Vec<Vec<Option<f64>>>,
    /// What the colours mean.
    pub colour: Axis,
    /// What a missing value means: "cannot be reached"; may be empty.
    pub missing: String,
    /// Marked points.
    pub markers: Vec<Marker>,
}

impl HeatMap {
    /// Whether rows and columns match the axes, places rise, and there is a value.
    ///
    /// # Errors
    /// If not, with the axis.
    pub(super) fn check(&self) -> Result<()> {
        for (axis, places) in [(&self.x, &self.xs), (&self.y, &self.ys)] {
            if !rises(places) {
                let quantity = axis.quantity.clone();
                return Err(Error::bad(PlotFault::NotRising { quantity }));
            }
        }
        let (columns, rows) = (self.xs.len(), self.ys.len());
        if self.values.len() != rows || self.values.iter().any(|row| row.len() != columns) {
            return Err(Error::bad(PlotFault::ValueCount { columns, rows }));
        }
        self.check_values()
    }

    fn check_values(&self) -> Result<()> {
        let (of, quantity) = (Plotted::Map, self.colour.quantity.clone());
        let mut values = self.values.iter().flatten().flatten();
        if values.clone().any(|value| !value.is_finite()) {
            return Err(Error::bad(PlotFault::NoNumber { of, quantity }));
        }
        match values.next() {
            Some(_) => Ok(()),
            None => Err(Error::no_answer(PlotFault::Nothing { of, quantity })),
        }
    }

    /// Least and greatest value.
    pub(super) fn value_range(&self) -> [f64; 2] {
        let values = self.values.iter().flatten().flatten();
        values.fold([f64::INFINITY, f64::NEG_INFINITY], |reach, value| {
            [reach[0].min(*value), reach[1].max(*value)]
        })
    }
}

/// Whether there are two or more places, each beyond the one before.
fn rises(places: &[f64]) -> bool {
    places.len() > 1
        && places.iter().all(|place| place.is_finite())
        && places.windows(2).all(|pair| pair[0] < pair[1])
}
