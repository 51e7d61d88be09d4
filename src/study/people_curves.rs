//! Strength curves of many people: between which they lie, of which class they are, where each is hardest.
//!
//! In: the curves. Out: [`People`], plain data.

use super::people_asked::PeopleAsked;
use crate::capacity::CurveShape;
use crate::numeric::quantile;

/// Curves between which people lie, and the middle one.
#[derive(Debug, Clone, PartialEq)]
pub struct Tenths {
    /// One in ten is below it.
    pub low: Vec<f64>,
    /// One in four is below it.
    pub quarter: Vec<f64>,
    /// Half of the people are below it.
    pub middle: Vec<f64>,
    /// One in four is above it.
    pub three_quarters: Vec<f64>,
    /// One in ten is above it.
    pub high: Vec<f64>,
}

/// Strength curves of many people.
#[derive(Debug, Clone, PartialEq)]
pub struct People {
    /// Who was asked for.
    pub asked: PeopleAsked,
    /// How many can do the lift.
    pub count: usize,
    /// Places of the samples in the range.
    pub places: Vec<f64>,
    /// Capacities, N (or N·m).
    pub forces: Tenths,
    /// Capacities over each person's own median, %.
    pub shapes: Tenths,
    /// How many people have a curve of each class, the most frequent first.
    pub classes: Vec<(CurveShape, usize)>,
    /// Where each finds the load hardest, 0 to 1.
    pub hardest: Vec<f64>,
}

impl People {
    /// The places between which so large a share of the people finds it hardest, and the middle one.
    #[must_use]
    pub fn hardest_between(&self, share: f64) -> Option<[f64; 3]> {
        let beyond = (1.0 - share) / 2.0;
        let at = |share: f64| quantile(&self.hardest, share);
        Some([at(beyond)?, at(0.5)?, at(1.0 - beyond)?])
    }
}

impl Tenths {
    /// The shares of curves at every sample.
    #[must_use]
    pub(super) fn of(curves: &[&[f64]]) -> Self {
        let samples = curves.first().map_or(0, |curve| curve.len());
        let at = |share: f64| {
            let of = |index: usize| {
                let values: Vec<f64> = curves.iter().map(|curve| curve[index]).collect();
                quantile(&values, share).unwrap_or(f64::NAN)
            };
            (0..samples).map(of).collect()
        };
        Self {
            low: at(0.1),
            quarter: at(0.25),
            middle: at(0.5),
            three_quarters: at(0.75),
            high: at(0.9),
        }
    }
}
