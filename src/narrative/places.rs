//! Positions of a repetition, velocities, and whose loads are told, in words.
//!
//! In: a study or a repetition. Out: "14 cm off the chest", "0.24 m/s".

use super::quantities::{QuantityWords, rounded, with_minus};
use super::telling::AT_THE_START;
use crate::movement::Measure;
use crate::study::{RepStudy, Study};
use crate::units::System;

/// A position of a repetition's trace in words.
#[must_use]
pub(crate) fn position_in_words(rep: &RepStudy, position: f64, units: System) -> String {
    let value = rep.across(position);
    let (number, unit) = match rep.trace.measure {
        Measure::Torque => (with_minus(&rounded(value, 0)), "deg"),
        Measure::Force => units.travel_and_unit(value),
    };
    format!("{number} {unit} {}", rep.still.away_from)
}

/// Where something happens in a repetition: "14 cm off the chest", "at 70 deg of elbow flexion", "at the start".
#[must_use]
pub(crate) fn at_position(rep: &RepStudy, position: f64, units: System) -> String {
    let place = position_in_words(rep, position, units);
    match rep.trace.measure {
        Measure::Force if place.starts_with("0 ") => AT_THE_START.to_owned(),
        Measure::Force => place,
        Measure::Torque => format!("at {place}"),
    }
}

/// A velocity of the load in words: "0.24 m/s", "95 deg/s".
#[must_use]
pub(crate) fn velocity_in_words(measure: Measure, velocity: f64) -> String {
    match measure {
        Measure::Force => format!("{} m/s", rounded(velocity, 2)),
        Measure::Torque => format!("{} deg/s", rounded(velocity.to_degrees(), 0)),
    }
}

/// Whose loads, forces and torques these are.
#[must_use]
pub(crate) fn sides_in_words(study: &Study) -> &'static str {
    match (study.range.measure, study.range.sides.count() > 1.0) {
        (Measure::Force, true) => {
            "Loads and forces are of both sides together, moments and muscle forces of one side."
        }
        (Measure::Torque, true) => {
            "Loads are of both sides together, moments and muscle forces of one side."
        }
        (_, false) => "Loads, moments and muscle forces are of one side.",
    }
}

/// Whose forces and torques the figures of a curve are.
#[must_use]
pub(crate) fn forces_of(study: &Study) -> &'static str {
    let is_way = study.range_of_motion_m().is_some();
    if is_way && study.range.sides.count() > 1.0 {
        "both sides together; moments and muscle forces of one side"
    } else {
        "one side"
    }
}
