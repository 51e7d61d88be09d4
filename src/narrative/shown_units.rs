//! The unit in which each computed quantity is shown, and how many of it make one of the model's own.
//!
//! In: what is shown, the [`System`] asked for. Out: [`ShownUnit`]s for axes, labels and sentences.

use crate::movement::Measure;
use crate::units::{Force, Length, Mass, System, Torque};

/// A unit as it is written, and the factor from SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShownUnit {
    /// How the unit is written.
    pub symbol: &'static str,
    /// How many of it make one of SI.
    pub per_si: f64,
    /// Decimals of a value in words.
    pub decimals: usize,
}

impl ShownUnit {
    const fn new(symbol: &'static str, per_si: f64, decimals: usize) -> Self {
        Self {
            symbol,
            per_si,
            decimals,
        }
    }

    /// A value in this unit.
    #[must_use]
    pub fn of(&self, si: f64) -> f64 {
        self.per_si * si
    }
}

/// Capacity and demand: a force, or a torque where the load is one.
#[must_use]
pub fn load_unit(measure: Measure, units: System) -> ShownUnit {
    match (measure, units) {
        (Measure::Force, System::Metric) => ShownUnit::new("N", 1.0, 0),
        (Measure::Force, System::Us) => ShownUnit::new("lbf", 1.0 / Force::from_lbf(1.0).as_n(), 0),
        (Measure::Torque, units) => torque_unit(units),
    }
}

/// A torque.
#[must_use]
pub fn torque_unit(units: System) -> ShownUnit {
    match units {
        System::Metric => ShownUnit::new("N·m", 1.0, 0),
        System::Us => ShownUnit::new("lbf·ft", 1.0 / Torque::from_lbf_ft(1.0).as_nm(), 0),
    }
}

/// Velocity of the load, or of the joint that turns it.
#[must_use]
pub fn velocity_unit(measure: Measure, _units: System) -> ShownUnit {
    match measure {
        Measure::Force => ShownUnit::new("m/s", 1.0, 2),
        Measure::Torque => ShownUnit::new("deg/s", 1.0_f64.to_degrees(), 0),
    }
}

/// A lever or another short length.
#[must_use]
pub fn length_unit(units: System) -> ShownUnit {
    match units {
        System::Metric => ShownUnit::new("cm", 100.0, 1),
        System::Us => ShownUnit::new("in", 1.0 / Length::from_in(1.0).as_m(), 1),
    }
}

/// A mass.
#[must_use]
pub fn mass_unit(units: System) -> ShownUnit {
    match units {
        System::Metric => ShownUnit::new("kg", 1.0, 1),
        System::Us => ShownUnit::new("lb", 1.0 / Mass::from_lb(1.0).as_kg(), 1),
    }
}
