//! Which values matter most, as table, CSV and JSON.
//!
//! In: [`Ranks`]. Out: text.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::table::table;
use crate::error::Result;
use crate::narrative::comparison::compared_in_words;
use crate::narrative::faults::in_one_line;
use crate::narrative::parameters::parameter_in_words;
use crate::narrative::quantities::rounded;
use crate::study::{Ranked, Ranks};
use crate::units::System;
use serde_json::json;

/// Rows of a ranking in a table for people.
const MOST_ROWS: usize = 25;

/// A ranking as text: the strongest values and a sentence.
#[must_use]
pub fn rank_table(ranks: &Ranks) -> String {
    let row = |row: &Ranked| {
        vec![
            row.number.path.clone(),
            parameter_in_words(&row.number.path),
            rounded(row.lowered_percent, 2),
            rounded(row.raised_percent, 2),
        ]
    };
    let header = ["value", "in words", "lowered %", "raised %"];
    let mut text = table(
        &header,
        ranks.rows.iter().take(MOST_ROWS).map(row).collect(),
        2,
    );
    let by = rounded(ranks.by_percent, 2);
    if let Some(first) = ranks.rows.first() {
        text += &format!(
            "\nEach value was lowered and raised by {by} % alone. The {} matters most: {} % of the {}.\n",
            parameter_in_words(&first.number.path),
            rounded(first.size_percent(), 1),
            compared_in_words(ranks.measure)
        );
    }
    let more = ranks.rows.len().saturating_sub(MOST_ROWS);
    if more > 0 {
        text += &format!("{more} more change it less (--format csv lists all).\n");
    }
    if ranks.without_effect > 0 {
        text += &format!("{} values change nothing.\n", ranks.without_effect);
    }
    for (number, error) in &ranks.undone {
        text += &format!(
            "{} could not be changed: {}\n",
            number.path,
            in_one_line(error, System::Metric)
        );
    }
    text
}

/// A ranking as CSV.
pub fn rank_csv(ranks: &Ranks) -> Result<String> {
    rows_to_csv(
        &[
            "path",
            "value_si",
            "unit",
            "lowered_percent",
            "raised_percent",
        ],
        ranks.rows.iter().map(|row| {
            vec![
                row.number.path.clone(),
                row.number.value.to_string(),
                row.number.unit.to_owned(),
                row.lowered_percent.to_string(),
                row.raised_percent.to_string(),
            ]
        }),
    )
}

/// A ranking as JSON.
pub fn rank_json(ranks: &Ranks) -> Result<String> {
    pretty(&json!({
        "by_percent": ranks.by_percent,
        "measure": compared_in_words(ranks.measure),
        "without_effect": ranks.without_effect,
        "values": ranks.rows.iter().map(|row| json!({
            "path": row.number.path,
            "in_words": parameter_in_words(&row.number.path),
            "value_si": row.number.value,
            "unit": row.number.unit,
            "lowered_percent": row.lowered_percent,
            "raised_percent": row.raised_percent,
        })).collect::<Vec<_>>(),
        "cannot_be_changed": ranks.undone.iter().map(|(number, error)| json!({
            "path": number.path, "reason": in_one_line(error, System::Metric),
        })).collect::<Vec<_>>(),
    }))
}
