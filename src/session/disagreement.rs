//! What there is to say where chart and fatigue model disagree.
//!
//! In: nothing. Out: [`Disagreement`].

use crate::units::Mass;

/// Where chart and fatigue model disagree on neighbouring working sets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Disagreement {
    /// First and last working set, from 1.
    pub sets: (usize, usize),
    /// Load of one.
    pub load: Mass,
    /// Repetitions planned.
    pub planned: u32,
    /// What the chart allows when rested.
    pub by_chart: f64,
    /// What the fatigue model allows.
    pub by_model: u32,
}
