//! Records of published equations from a set or a velocity to the 1RM.
//!
//! In: files of `models/published/`. Out: coefficients with the source of each, for
//! [`super::estimate`] and [`super::velocity_equations`].

use super::repetition_equations::Form;
use crate::source::Source;
use crate::units::{Mass, Speed};
use serde::Deserialize;

/// Everything published that the 1RM is estimated with.
#[derive(Debug, Clone, PartialEq)]
pub struct PublishedEstimates {
    /// Equations from repetitions.
    pub repetitions: RepetitionEquations,
    /// Equations from velocity.
    pub velocity: VelocityEquations,
}

/// The equations from repetitions to 1RM, those for any lift first.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RepetitionEquations {
    /// Every equation.
    pub equations: Vec<RepetitionEquation>,
}

/// One published equation from repetitions to 1RM.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RepetitionEquation {
    /// Authors and year.
    pub name: String,
    /// The formula as printed.
    pub formula: String,
    /// Its shape and coefficients.
    pub form: Form,
    /// Fewest and most repetitions it is meant for.
    pub repetitions: (f64, f64),
    /// The one movement it was made for; `None` for any.
    #[serde(default)]
    pub movement: Option<String>,
    /// Standard error of the estimate as published.
    #[serde(default)]
    pub standard_error: Option<Mass>,
    /// Where formula and coefficients come from.
    pub source: Source,
    /// What one must know before using it.
    #[serde(default)]
    pub note: String,
}

impl RepetitionEquation {
    /// Whether it counts in the median: it holds for any lift and for any load.
    #[must_use]
    pub const fn is_general(&self) -> bool {
        self.movement.is_none()
    }

    /// Whether `repetitions` lie in its range.
    #[must_use]
    pub fn covers(&self, repetitions: f64) -> bool {
        (self.repetitions.0..=self.repetitions.1).contains(&repetitions)
    }
}

/// The equations from velocity to load, and the velocities of a true 1RM.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct VelocityEquations {
    /// Every equation.
    pub equations: Vec<VelocityEquation>,
    /// The loads they hold for.
    pub loads: EquationLoads,
    /// Mean velocity of a true 1RM, lift by lift.
    pub at_one_rm: Vec<VelocityAtOneRm>,
}

/// Range of loads that the velocity equations were made on.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EquationLoads {
    /// Lightest and heaviest, % of 1RM.
    pub percent: (f64, f64),
    /// Where the range comes from.
    pub source: Source,
}

/// Which velocity an equation takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Velocity {
    /// Mean over the whole lifting phase.
    Mean,
    /// Mean over the propulsive part: until the bar decelerates more than gravity alone would do.
    MeanPropulsive,
}

/// One published load-velocity equation, `load % = a v² + b v + c`.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct VelocityEquation {
    /// The movement it stands for here.
    pub movement: String,
    /// The lift as published.
    pub lift: String,
    /// Which velocity.
    pub velocity: Velocity,
    /// Quadratic coefficient, % per (m/s)².
    pub a: f64,
    /// Linear coefficient, % per m/s.
    pub b: f64,
    /// Constant, %.
    pub c: f64,
    /// Standard error of the estimate, % of 1RM, if recalled.
    #[serde(default)]
    pub error_percent: Option<f64>,
    /// Where the coefficients come from.
    pub source: Source,
}

/// Published mean velocity of a true 1RM.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct VelocityAtOneRm {
    /// The movement it stands for here.
    pub movement: String,
    /// The lift as published.
    pub lift: String,
    /// Mean velocity.
    pub mean: Speed,
    /// Standard deviation between people, if published.
    #[serde(default)]
    pub deviation: Option<Speed>,
    /// Where it comes from.
    pub source: Source,
}
