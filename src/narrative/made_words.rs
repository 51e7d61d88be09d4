//! What a figure's curves are of beside lifter and load: the speed, values that were set, files of the user's.
//!
//! In: a study. Out: words behind the name of the lifter; nothing where all is as in the library and held still.

use super::places::velocity_in_words;
use super::prose::{capital, listed};
use crate::capacity::Pace;
use crate::library::ModelChange;
use crate::movement::Measure;
use crate::study::Study;

/// Changes told one by one; more are counted.
const TOLD_CHANGES: usize = 2;

/// ", lifting at 0.30 m/s", ", technique.grip_width=60 cm", ", own lifters/reference-man.ron".
#[must_use]
pub(crate) fn made_words(study: &Study) -> String {
    pace_words(study.pace) + &changes_in_words(&study.changes)
}

/// ", lifting at 0.30 m/s" or ", lowering at 60 deg/s"; nothing for what is held still.
#[must_use]
pub(crate) fn pace_words(pace: Pace) -> String {
    let verb = if pace.lowers() { "lowering" } else { "lifting" };
    speed_of(pace).map_or_else(String::new, |speed| format!(", {verb} at {speed}"))
}

/// "0.30 m/s", "60 deg/s"; nothing for what is held still.
pub(super) fn speed_of(pace: Pace) -> Option<String> {
    let (measure, speed) = match pace {
        Pace::Isometric => return None,
        Pace::Linear(speed) => (Measure::Force, speed),
        Pace::Angular(speed) => (Measure::Torque, speed),
    };
    Some(velocity_in_words(measure, speed.abs()))
}

/// The changes of a model, the first ones in full.
#[must_use]
pub(crate) fn changes_in_words(changes: &[ModelChange]) -> String {
    let told = changes
        .iter()
        .take(TOLD_CHANGES)
        .map(|change| match change {
            ModelChange::Set(written) => written.replace('"', ""),
            ModelChange::Replaced(file) => format!("own {file}"),
        });
    let mut told: Vec<String> = told.collect();
    let more = changes.len().saturating_sub(TOLD_CHANGES);
    if more > 0 {
        told.push(format!("{more} more"));
    }
    match told.as_slice() {
        [] => String::new(),
        all => format!(", {}", listed(all)),
    }
}

/// What an effort of 1 is: what can be held, or what there is at a speed.
pub(super) fn there_is(pace: Pace) -> &'static str {
    match pace {
        Pace::Isometric => "can be held",
        _ => "there is at that speed",
    }
}

/// For what a load is too heavy, where it is not for being held still.
pub(super) fn for_speed(pace: Pace) -> &'static str {
    match pace {
        Pace::Isometric => "",
        _ => " for that speed",
    }
}

/// What a lifter does with a capacity: holds it, or has it at a speed.
pub(super) fn lifter_has(pace: Pace) -> &'static str {
    match pace {
        Pace::Isometric => "can hold",
        _ => "has at that speed",
    }
}

/// Whether the curve is of a lift held still.
pub(super) fn how_held(study: &Study) -> String {
    match pace_words(study.pace).strip_prefix(", ") {
        None => "Held still".to_owned(),
        Some(pace) => capital(pace),
    }
}

/// Whose force or torque the axis shows.
pub(super) fn whose_side(study: &Study) -> &'static str {
    match (study.range.measure, study.range.sides.count() > 1.0) {
        (Measure::Force, true) => "both sides together",
        (Measure::Torque, true) | (_, false) => "one side",
    }
}
