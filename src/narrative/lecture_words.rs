//! What is said of a lecture while its files are made.
//!
//! In: a movement that is left out, with the reason; the page of all figures. Out: lines for the terminal.

use super::faults::in_one_line;
use crate::error::Error;
use crate::units::System;

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
