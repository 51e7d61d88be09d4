//! Sets of a log that are not taken as they stand: a load that failed, a day far above all before or far below; and breaks up to today.
//!
//! In: facts of [`crate::progress`], units. Out: sentences without their full stop.

use super::prose::percent;
use super::quantities::{QuantityWords, rounded};
use crate::progress::failed_attempt::FailedAttempt;
use crate::progress::one_rm_now::{LAY_OFF_DAYS, LOST_A_WEEK, LayOff, MOST_LOST};
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
        true => (-jump.excess(), "below", 1.0 - FALL_SHARE, "low"),
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

/// How to go on where nobody knows what is left of a strength.
pub(super) const AFTER_THE_FIRST_LOG: &str = "Raise nothing by the old 1RM. Write these sessions down, and plan from their log as \
soon as it holds two of them.";

/// Why a block from an old log stays light.
#[must_use]
pub(super) fn stays_light(found: LayOff) -> String {
    format!(
        "The 1RM is from before {} days without a session, so every week stays as light as the first (common practice: after \
         a lay-off the load follows what is lifted now, not what was).",
        found.days()
    )
}

/// What two weeks and more without a session ask for, where they are no lay-off yet.
#[must_use]
pub(super) fn days_off(days: i32) -> String {
    format!(
        "No session for {days} days before this one: strength is kept for up to {LAY_OFF_DAYS} (from memory), technique and work capacity less, so end \
         the first sets with one repetition more in reserve, and go a step lighter where the warm-up feels heavy (common practice)."
    )
}

/// What a break up to today makes of a 1RM.
#[must_use]
pub fn break_in_words(found: LayOff) -> String {
    format!(
        "no session for {} days before {}: {} of this strength is counted on (assumed: {} less for the first week beyond the fourth, then less and less, {} at most), \
         the first sessions are lighter besides, and the log of them is the next plan's ground",
        found.days(),
        found.to,
        percent(found.kept()),
        percent(LOST_A_WEEK),
        percent(MOST_LOST)
    )
}
