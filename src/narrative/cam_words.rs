//! A machine's cam in words: what it does to effort, how it is drawn, how far the lift's published values are missed.
//!
//! In: a lift over a cam and over a round pulley, what the model misses of it. Out: the words around the lecture's figure.

use super::evenness_words::hung_against_plain;
use super::figure_words::FigureWords;
use super::limits_words::by_factor;
use super::prose::{counted_noun, percent};
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::library::{LiftErrors, PublishedError, WorstMiss};
use crate::movement::Carrier;
use crate::study::AgainstPlain;
use crate::units::{Length, System};

/// What a cam shaped after the curve does, told in place of a hardest place that is none.
const SAME_SHARE: &str =
    "Over the cam the load is about the same share of what the lifter can hold at every place.";

/// What is known of a lift beside its curves: what the model misses of it, and how its machine holds the body.
#[derive(Debug, Clone, Copy)]
pub struct MachineFacts<'a> {
    /// Errors of all lifts.
    pub errors: &'a LiftErrors,
    /// What is missed most of the lift over the hip's angle; none where none is recorded.
    pub worst: Option<&'a WorstMiss>,
    /// Flexion of the hip, which the machine holds, rad; none where the lift has no such angle.
    pub hip_rad: Option<f64>,
}

/// A lift of which published values are missed by more than this factor is told as such (assumed).
const FAR_OFF: f64 = 1.5;

/// A stack over a cam that is cut to the computed curve, against the same machine with a round pulley.
#[must_use]
pub(crate) fn cam_words(
    lifter: &str,
    both: &AgainstPlain,
    facts: MachineFacts<'_>,
    units: System,
) -> FigureWords {
    let MachineFacts { errors, worst, .. } = facts;
    let [plain, hung] = [0, 1].map(|index| percent(both.mean_effort(index)));
    let [least, most] = both.effort_span(0).map(percent);
    let radii = both.study.setups[1].cam_radii_m(&both.study.range.carrier);
    let [from, to] = [radii.first(), radii.last()].map(|radius_m| {
        let unit = units.length_unit();
        format!(
            "{} {}",
            rounded(unit.of(*radius_m.unwrap_or(&0.0)), 1),
            unit.symbol
        )
    });
    FigureWords {
        title: format!(
            "Effort is {hung} over a cam cut to the computed curve, {least} to {most} over a round one"
        ),
        subtitle: format!(
            "{}{}",
            hung_against_plain(lifter, &hip_in_words(facts.hip_rad), both, units),
            round_pulley(both, units)
        ),
        footnote: missed_in_short(both, errors, worst),
        description: format!(
            "{SAME_SHARE} Mean effort over the range is {hung} with the cam and {plain} with a round pulley."
        ),
        caption: format!(
            "A cam changes the moment arm of the stack with the angle, here from {from} at the start to {to} at the end. Loads, moments and \
             muscle forces are of one side. This one is cut to this lifter's own computed strength curve; a \
             machine's has one shape for all who use it.{}",
            missed_lift(both, errors)
        ) + &worst_in_full(worst),
    }
}

/// How far the machine bends the hip, on which the torque of muscles over both joints depends; nothing where it is not known.
fn hip_in_words(hip_rad: Option<f64>) -> String {
    hip_rad.map_or_else(String::new, |rad| {
        format!(", hip at {} deg", rounded(rad.to_degrees(), 0))
    })
}

/// What is drawn beside the curves.
pub(crate) const CAM_TITLE: &str = "Cam, its arm black";

/// A cam that is drawn at a place, with the moment arm of the stack there: "5 deg: arm 16.5 cm".
pub(crate) fn cam_caption(
    (number, unit): (String, &'static str),
    radius_m: f64,
    units: System,
) -> String {
    let length = units.length_unit();
    format!(
        "{number} {unit}: arm {} {}",
        rounded(length.of(radius_m), 1),
        length.symbol
    )
}

/// The pulley of the same machine: " over a radius of 10 cm".
fn round_pulley(both: &AgainstPlain, units: System) -> String {
    match both.study.range.carrier {
        Carrier::Lever { cam_m, .. } => {
            format!(" over a radius of {}", units.tape(Length::from_m(cam_m)))
        }
        _ => String::new(),
    }
}

/// That even effort is built in, and where the lift is one that the model misses by how much, in one line.
fn missed_in_short(both: &AgainstPlain, errors: &LiftErrors, worst: Option<&WorstMiss>) -> String {
    if let Some(worst) = worst {
        return format!("Even by design. {}", worst_in_words(worst));
    }
    far_off(both, errors).map_or_else(
        || {
            "The cam is cut to this computed curve: an even effort is built in here, not found."
                .to_owned()
        },
        |error| {
            format!(
                "An even effort is built in here, not found. Published values are missed {} over {}.",
                by_factor(error),
                counted_noun(error.rows, "value")
            )
        },
    )
}

/// The worst miss that concerns the curve: "Reference man's worst miss: hip at 90 deg lifts 5.6 × that at 0 deg, expected 1.05
/// to 1.8."
fn worst_in_words(worst: &WorstMiss) -> String {
    let (one, other) = worst.hip_deg;
    let (least, most) = worst.expected;
    format!(
        "Reference man's worst miss: hip at {one} deg lifts {} × that at {other} deg, expected {} to {}.",
        rounded(worst.computed, 1),
        rounded(least, 2),
        rounded(most, 1)
    )
}

/// The same behind other sentences, with what it is of; nothing where no miss is known.
fn worst_in_full(worst: Option<&WorstMiss>) -> String {
    worst.map_or_else(String::new, |worst| {
        format!(
            " {} So its curve is too weak where the hip leaves the fibres short, and the cam is cut to that.",
            worst_in_words(worst)
        )
    })
}

/// The error of a lift that is missed by much.
fn far_off(both: &AgainstPlain, errors: &LiftErrors) -> Option<PublishedError> {
    let known = errors.of_movement(&both.study.movement_name);
    known.filter(|error| error.factor() > FAR_OFF)
}

/// That published values of the lift are missed, and how many they are.
fn missed_lift(both: &AgainstPlain, errors: &LiftErrors) -> String {
    far_off(both, errors).map_or_else(String::new, |error| {
        format!(
            " Published values of the {}, of every kind, are missed {} over {}.",
            both.study.movement_title.to_lowercase(),
            by_factor(error),
            counted_noun(error.rows, "value")
        )
    })
}
