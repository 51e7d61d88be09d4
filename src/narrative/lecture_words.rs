//! What is said of a lecture while its files are made.
//!
//! In: a movement that is left out, with the reason; the page of all figures. Out: lines for the terminal.

use super::faults::in_one_line;
use super::prose::listed;
use crate::error::Error;
use crate::library::is_changed;
use crate::units::System;

/// What the lecture is called.
pub const LECTURE_TITLE: &str = "Strength curves";

/// Of whom log and sessions are.
pub const INVENTED_PERSON: &str = "an invented person";

/// A movement that the lifter cannot do.
#[must_use]
pub fn left_out_in_words(movement: &str, error: &Error, units: System) -> String {
    format!(
        "left out: {movement}, because {}",
        in_one_line(error, units)
    )
}

/// How many figures there are, and where they are seen.
#[must_use]
pub fn figures_written(count: usize, page: &str) -> String {
    format!("{count} figures; open {page}")
}

/// The caption of a figure with lifter and lift; of one that is of no lift with a lifter who is not as built in.
#[must_use]
pub fn lecture_caption(caption: &str, who: &str, lifts: &[String]) -> String {
    match lifts {
        [] if is_changed(who) => format!("{caption} Drawn for: {who}."),
        [] => caption.to_owned(),
        lifts => format!("{caption} Drawn for: {who}, {}.", listed(lifts)),
    }
}
