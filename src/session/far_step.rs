//! How a load is reached that is farther away than a usual step, as with light dumb-bells.
//!
//! In: what [`super::next_load`] finds. Out: [`FarStep`].

use crate::units::Mass;

/// The way to a load that is farther away than a usual step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FarStep {
    /// The load.
    pub next: Mass,
    /// How much more it is, %; what is lifted of the body with both.
    pub percent: f64,
    /// Repetitions that it is taken with.
    pub then: u32,
    /// Repetitions at the present load, the reserve kept, that show so much strength; none where the chart ends before.
    pub shown_by: Option<u32>,
    /// The most repetitions, the reserve kept, that the chart knows.
    pub most: u32,
}
