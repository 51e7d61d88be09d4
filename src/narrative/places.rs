//! Places of the range, velocities, and whose loads are told, in words.
//!
//! In: a study or a repetition, a place. Out: "14 cm off the chest", "at 70 deg of elbow flexion".

use super::quantities::rounded;
use crate::movement::Measure;
use crate::overlay::Sticking;
use crate::study::{RepStudy, Study};
use crate::units::{Length, System};

/// A place of the range in words: "14 cm off the chest", "70 deg of elbow flexion".
#[must_use]
pub(crate) fn place_in_words(study: &Study, range: f64, units: System) -> String {
    let (number, unit) = place_and_unit(study, range, units);
    format!("{number} {unit} {}", study.away_from)
}

/// The sticking region on the movement's axis: "2 to 19 cm".
#[must_use]
pub(crate) fn region_in_words(study: &Study, sticking: &Sticking, units: System) -> String {
    let (from, _) = place_and_unit(study, sticking.from_range, units);
    let (to, unit) = place_and_unit(study, sticking.to_range, units);
    format!("{from} to {to} {unit}")
}

/// A stretch of the range in words: "2 to 19 cm off the chest".
#[must_use]
pub(crate) fn stretch_in_words(study: &Study, from: f64, to: f64, units: System) -> String {
    let (number, _) = place_and_unit(study, from, units);
    format!("{number} to {}", place_in_words(study, to, units))
}

fn place_and_unit(study: &Study, range: f64, units: System) -> (String, &'static str) {
    let value = study.axis_value(range);
    match study.range.measure {
        Measure::Torque => (rounded(value, 0), "deg"),
        Measure::Force => travel_and_unit(value.abs(), units),
    }
}

/// A travel and its unit.
pub(super) fn travel_and_unit(cm: f64, units: System) -> (String, &'static str) {
    match units {
        System::Metric => (rounded(cm, 0), "cm"),
        System::Us => (rounded(Length::from_cm(cm).as_in(), 1), "in"),
    }
}

/// A position of a repetition's trace in words.
#[must_use]
pub(crate) fn position_in_words(rep: &RepStudy, position: f64, units: System) -> String {
    let value = rep.across(position);
    let (number, unit) = match rep.trace.measure {
        Measure::Torque => (rounded(value, 0), "deg"),
        Measure::Force => travel_and_unit(value, units),
    };
    format!("{number} {unit} {}", rep.still.away_from)
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
            "Loads and forces are of both sides together, torques and muscle forces of one side."
        }
        (Measure::Torque, true) => {
            "Loads are of both sides together, torques and muscle forces of one side."
        }
        (_, false) => "Loads, torques and muscle forces are of one side.",
    }
}

/// Whose forces and torques the figures of a curve are.
#[must_use]
pub(crate) fn forces_of(study: &Study) -> &'static str {
    let is_way = study.range_of_motion_m().is_some();
    if is_way && study.range.sides.count() > 1.0 {
        "both sides together; torques and muscle forces of one side"
    } else {
        "one side"
    }
}
