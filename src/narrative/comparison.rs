//! The figures by which curves are compared, in words and units.
//!
//! In: which figure, its value. Out: its name, and the value with its unit.

use super::shown_units::ShownUnits;
use crate::movement::{Carrier, Measure};
use crate::study::{Compared, Conditions, Study};
use crate::units::{Force, Mass, System};

/// The figure in words.
#[must_use]
pub(crate) fn compared_in_words(measure: Compared) -> &'static str {
    match measure {
        Compared::Held => "heaviest weight",
        Compared::Peak => "greatest capacity",
        Compared::Start => "capacity at the start",
        Compared::End => "capacity at the end",
    }
}

/// The figure of a study in words: where the body is the load, the heaviest weight counts it.
#[must_use]
pub(crate) fn compared_of(measure: Compared, study: &Study) -> &'static str {
    match (measure, study.range.carrier) {
        (Compared::Held, Carrier::Body) => "heaviest weight with the body",
        _ => compared_in_words(measure),
    }
}

/// A figure of a study with its unit, for people.
///
/// **Shape.** A mass in kg or lb, a force in N or lbf, a torque in N·m or lbf·ft; with a load of one's own the
/// heaviest weight is told as how many times that load.
#[must_use]
pub(crate) fn shown_figure(
    measure: Compared,
    value: f64,
    study: &Study,
    conditions: &Conditions,
    units: System,
) -> (f64, &'static str) {
    match (measure, units, study.range.measure) {
        (Compared::Held, _, _) if conditions.load.is_some() => (value, "times the load"),
        (Compared::Held, System::Metric, _) => (value, "kg"),
        (Compared::Held, System::Us, _) => (Mass::from_kg(value).as_lb(), "lb"),
        (_, System::Metric, Measure::Force) => (value, "N"),
        (_, System::Us, Measure::Force) => (Force::from_n(value).as_lbf(), "lbf"),
        (_, _, Measure::Torque) => {
            let unit = units.torque_unit();
            (unit.of(value), unit.symbol)
        }
    }
}
