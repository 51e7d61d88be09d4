//! What the axes of figures say, with the units asked for.
//!
//! In: a study or a repetition, units. Out: a quantity and its unit for each axis.

use super::prose::capital;
use super::shown_units::{length_unit, load_unit, torque_unit};
use crate::movement::Measure;
use crate::study::Study;
use crate::units::System;

/// Quantity and unit of an axis.
pub type AxisWords = (String, &'static str);

/// The range of a lift as the movement's own axis: travel, or the angle of a sweep.
#[must_use]
pub fn range_axis_words(study: &Study, units: System) -> AxisWords {
    let unit = match study.range.measure {
        Measure::Torque => "deg",
        Measure::Force => length_unit(units).symbol,
    };
    (capital(&study.axis), unit)
}

/// What capacity and demand of a study are: a force, or a torque at its joint.
#[must_use]
pub fn load_axis_words(study: &Study, units: System) -> AxisWords {
    match study.range.measure {
        Measure::Force => ("Force".to_owned(), load_unit(Measure::Force, units).symbol),
        Measure::Torque => joint_torque_words(study, units),
    }
}

/// Torque at the first joint of a lift.
#[must_use]
pub fn joint_torque_words(study: &Study, units: System) -> AxisWords {
    let quantity = format!("Torque at the {}", study.joint(0));
    (quantity, torque_unit(units).symbol)
}

/// The range in percent, shared by lifts of different travel.
pub const WHOLE_RANGE: &str = "Range of the lift, from start to end";

/// A quantity over a lift's own median.
#[must_use]
pub fn over_median(quantity: &str) -> String {
    format!("{quantity}, median of the lift = 100")
}

/// How much of a joint's strength a load takes.
pub const STRENGTH_IN_USE: &str = "Strength in use";
/// The lever of a muscle.
pub const MOMENT_ARM: &str = "Moment arm";
/// Fibre length over the optimal one, on an upright axis.
pub const FIBRE_LENGTH: &str = "Fibre length, optimal = 100";
/// Fibre length over the optimal one, on a level axis.
pub const FIBRE_LENGTH_OPTIMAL: &str = "Fibre length, optimal length = 100";
/// A force over the greatest active one.
pub const GREATEST_ACTIVE_FORCE: &str = "Force, greatest active force = 100";
/// A force over the isometric one.
pub const ISOMETRIC_FORCE: &str = "Force, isometric = 100";
/// Speed of a fibre over its fastest shortening.
pub const SHORTENING_SPEED: &str = "Speed of shortening, fastest = 100 (below 0: lengthening)";
/// A quantity over its own greatest value.
pub const OWN_GREATEST: &str = "Share of its own greatest value";
