//! What a figure's curves are of beside lifter and load: the speed, values that were set, files of the user's.
//!
//! In: a study. Out: words behind the name of the lifter; nothing where all is as in the library and held still.

use super::places::velocity_in_words;
use super::prose::listed;
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
