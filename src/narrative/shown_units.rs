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

/// The unit of each quantity that is computed.
pub trait ShownUnits {
    /// Capacity and demand: a force, or a torque where the load is one.
    fn load_unit(self, measure: Measure) -> ShownUnit;
    /// A torque.
    fn torque_unit(self) -> ShownUnit;
    /// Velocity of the load, or of the joint that turns it.
    fn velocity_unit(self, measure: Measure) -> ShownUnit;
    /// A lever or another short length.
    fn length_unit(self) -> ShownUnit;
    /// A mass.
    fn mass_unit(self) -> ShownUnit;
}

impl ShownUnits for System {
    fn load_unit(self, measure: Measure) -> ShownUnit {
        match (measure, self) {
            (Measure::Force, Self::Metric) => ShownUnit::new("N", 1.0, 0),
            (Measure::Force, Self::Us) => {
                ShownUnit::new("lbf", 1.0 / Force::from_lbf(1.0).as_n(), 0)
            }
            (Measure::Torque, _) => self.torque_unit(),
        }
    }

    fn torque_unit(self) -> ShownUnit {
        match self {
            Self::Metric => ShownUnit::new("N·m", 1.0, 0),
            Self::Us => ShownUnit::new("lbf·ft", 1.0 / Torque::from_lbf_ft(1.0).as_nm(), 0),
        }
    }

    fn velocity_unit(self, measure: Measure) -> ShownUnit {
        match measure {
            Measure::Force => ShownUnit::new("m/s", 1.0, 2),
            Measure::Torque => ShownUnit::new("deg/s", 1.0_f64.to_degrees(), 0),
        }
    }

    fn length_unit(self) -> ShownUnit {
        match self {
            Self::Metric => ShownUnit::new("cm", 100.0, 1),
            Self::Us => ShownUnit::new("in", 1.0 / Length::from_in(1.0).as_m(), 1),
        }
    }

    fn mass_unit(self) -> ShownUnit {
        match self {
            Self::Metric => ShownUnit::new("kg", 1.0, 1),
            Self::Us => ShownUnit::new("lb", 1.0 / Mass::from_lb(1.0).as_kg(), 1),
        }
    }
}
