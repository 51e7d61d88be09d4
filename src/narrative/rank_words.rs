//! Which values matter most, as a table and in sentences.
//!
//! In: [`Ranks`], units. Out: text for the report of a ranking.

use super::comparison::compared_in_words;
use super::faults::in_one_line;
use super::parameters::parameter_in_words;
use super::quantities::rounded;
use crate::study::{Ranked, Ranks};
use crate::units::System;

/// The heads of the table.
pub const RANK_HEADS: [&str; 4] = ["value", "in words", "lowered %", "raised %"];

/// A value as a row of that table.
#[must_use]
pub fn rank_cells(row: &Ranked) -> Vec<String> {
    vec![
        row.number.path.clone(),
        parameter_in_words(&row.number.path),
        rounded(row.lowered_percent, 2),
        rounded(row.raised_percent, 2),
    ]
}

/// What stands under a table of so many rows: the value that matters most, those that do less or nothing.
#[must_use]
pub fn rank_paragraphs(ranks: &Ranks, shown: usize, units: System) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(first) = ranks.rows.first() {
        lines.push(String::new());
        lines.push(most(ranks, first));
    }
    let more = ranks.rows.len().saturating_sub(shown);
    if more > 0 {
        lines.push(format!(
            "{more} more change it less (--format csv lists all)."
        ));
    }
    if ranks.without_effect > 0 {
        lines.push(format!("{} values change nothing.", ranks.without_effect));
    }
    let undone = ranks.undone.iter();
    lines.extend(undone.map(|(number, error)| {
        let reason = in_one_line(error, units);
        format!("{} could not be changed: {reason}", number.path)
    }));
    lines
}

fn most(ranks: &Ranks, first: &Ranked) -> String {
    format!(
        "Each value was lowered and raised by {} % alone. The {} matters most: {} % of the {}.",
        rounded(ranks.by_percent, 2),
        parameter_in_words(&first.number.path),
        rounded(first.size_percent(), 1),
        compared_in_words(ranks.measure)
    )
}
