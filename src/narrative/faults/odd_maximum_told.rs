//! Words for: a maximum that nobody has, and how far off it is.

use crate::error::JudgedBy;
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::narrative::shared_phrases::times_of_people;
use crate::units::{Mass, System};

/// How far off, as far as a number says anything.
pub(super) fn deviations_in_words(deviations: f64) -> String {
    /// Beyond it the tails of no distribution are known.
    const MOST: f64 = 10.0;
    match deviations.abs() {
        far if far > MOST => format!("more than {MOST:.0}"),
        near => rounded(near, 1),
    }
}

/// A 1RM that nobody has, in a sentence without whose it is; `written` is how else it may have been written.
pub(super) fn odd_one_rm(
    movement: &str,
    (one_rm, written): (Mass, &str),
    (over_expected, deviations, judged_by): (f64, f64, JudgedBy),
    units: System,
) -> String {
    format!(
        "a 1RM of {}{written} in the {movement} is {}, {} standard deviations away",
        units.mass(one_rm),
        times_of_people(over_expected, judged_by),
        deviations_in_words(deviations)
    )
}
