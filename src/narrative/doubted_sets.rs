//! Sets of a log that are not taken as they stand: a load that failed, a day far above all before or far below; and breaks up to today.
//!
//! In: facts of [`crate::progress`], units. Out: sentences without their full stop.

use super::quantities::{QuantityWords, rounded};
use crate::progress::failed_attempt::FailedAttempt;
use crate::progress::one_rm_now::LayOff;
use crate::progress::unconfirmed::{FALL_SHARE, JUMP_SHARE, Jump};
use crate::units::System;

/// "the 90 kg that failed on 2026-02-16 (line 9)".
#[must_use]
pub fn failed_in_words(failed: &FailedAttempt, units: System) -> String {
    format!(
        "the {} that failed on {} (line {})",
        units.mass(failed.load),
        failed.day,
        failed.line
    )
}

/// What does not count, and why.
#[must_use]
pub fn jump_in_words(jump: &Jump, units: System) -> String {
    let (share, side, limit, than) = match jump.is_fall() {
        true => (-jump.excess(), "below", FALL_SHARE, "low"),
        false => (jump.excess(), "above", JUMP_SHARE, "near"),
    };
    format!(
        "line {}, {}: {} × {} stands for {}, {} % {side} the best day before; more than {} % is taken for a slip and does not \
         count until a second day comes as {than}: look at its digits and unit",
        jump.set.line,
        jump.day(),
        units.mass(jump.set.load),
        jump.set.repetitions,
        units.mass(jump.one_rm),
        rounded(100.0 * share, 0),
        rounded(100.0 * limit, 0)
    )
}

/// The same as a note of a command that takes a log for its sets alone.
#[must_use]
pub fn not_counted(jump: &Jump, units: System) -> String {
    format!("note: not counted: {}", jump_in_words(jump, units))
}

/// What a break up to today makes of a 1RM.
#[must_use]
pub fn break_in_words(found: LayOff) -> String {
    format!(
        "no session for {} days before {}: what is left of this strength is not known, so the first sessions are lighter and \
         the log of them is the next plan's ground",
        found.days(),
        found.to
    )
}
