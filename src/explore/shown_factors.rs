//! The units that the page shows numbers in: how each is written, and how many of it make one of SI.
//!
//! In: what a lift is measured by, units. Out: [`ShownFactors`].

use crate::movement::Measure;
use crate::narrative::shown_units::{ShownUnit, ShownUnits};
use crate::units::System;
use serde::Serialize;

/// A unit as it is written, and how many of it make one of SI.
type Factor = (&'static str, f64);

/// The units of a page.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(super) struct ShownFactors {
    /// Capacity and demand.
    load: Factor,
    force: Factor,
    arm: Factor,
    torque: Factor,
}

impl ShownFactors {
    pub(super) fn of(measure: Measure, units: System) -> Self {
        let factor = |unit: ShownUnit| (unit.symbol, unit.per_si);
        Self {
            load: factor(units.load_unit(measure)),
            force: factor(units.load_unit(Measure::Force)),
            arm: factor(units.length_unit()),
            torque: factor(units.torque_unit()),
        }
    }
}
