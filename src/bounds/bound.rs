//! The range of one kind of value: what is accepted, and what one meets.
//!
//! In: a row of the table of bounds, a value in its unit. Out: what is wrong with the value, or unlikely about it.

use crate::error::{Measured, OutOfBounds};
use crate::source::Source;
use serde::Deserialize;

/// The range of one kind of value that comes in from outside.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bound {
    /// The lower end.
    pub from: LowerEnd,
    /// The upper end.
    pub to: UpperEnd,
    /// What both ends are measured in.
    pub unit: Measured,
    /// Least and most of what one meets; a value outside is accepted and told as unlikely.
    #[serde(default)]
    pub usual: Option<(f64, f64)>,
    /// Where they come from.
    pub source: Source,
}

/// The lower end of a range.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub enum LowerEnd {
    /// The smallest accepted value.
    Least(f64),
    /// A value that is not accepted any more.
    Above(f64),
}

/// The upper end of a range.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub enum UpperEnd {
    /// The largest accepted value.
    Most(f64),
    /// A value that is not accepted any more.
    Below(f64),
}

impl Bound {
    /// The smallest accepted value, or the one that is just not.
    #[must_use]
    pub const fn least(&self) -> f64 {
        match self.from {
            LowerEnd::Least(least) | LowerEnd::Above(least) => least,
        }
    }

    /// The largest accepted value, or the one that is just not.
    #[must_use]
    pub const fn most(&self) -> f64 {
        match self.to {
            UpperEnd::Most(most) | UpperEnd::Below(most) => most,
        }
    }

    /// The smallest accepted count.
    #[must_use]
    pub const fn fewest(&self) -> usize {
        self.least() as usize
    }

    /// The largest accepted count.
    #[must_use]
    pub const fn most_of_them(&self) -> usize {
        self.most() as usize
    }

    /// Whether a value in the unit of the row is inside; not a number is outside.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        let above = match self.from {
            LowerEnd::Least(least) => value >= least,
            LowerEnd::Above(least) => value > least,
        };
        let below = match self.to {
            UpperEnd::Most(most) => value <= most,
            UpperEnd::Below(most) => value < most,
        };
        above && below
    }

    /// What is wrong with a value, if it is outside.
    #[must_use]
    pub fn outside(&self, value: f64) -> Option<OutOfBounds> {
        (!self.holds(value)).then(|| OutOfBounds {
            value,
            least: self.least(),
            least_is_inside: matches!(self.from, LowerEnd::Least(_)),
            most: self.most(),
            unit: self.unit,
        })
    }
}

impl Bound {
    /// What is unlikely about an accepted value, if it is outside what one meets.
    #[must_use]
    pub fn unlikely(&self, value: f64) -> Option<OutOfBounds> {
        let (least, most) = self.usual?;
        let is_met = (least..=most).contains(&value);
        (self.holds(value) && !is_met).then_some(OutOfBounds {
            value,
            least,
            least_is_inside: true,
            most,
            unit: self.unit,
        })
    }
}
