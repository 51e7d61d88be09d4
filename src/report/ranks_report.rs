//! Which values matter most, as text, CSV and JSON.
//!
//! In: [`Ranks`]. Out: text; numbers of CSV and JSON in SI.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::table::table;
use crate::narrative::comparison::compared_in_words;
use crate::narrative::faults::in_one_line;
use crate::narrative::parameters::parameter_in_words;
use crate::narrative::rank_words::{RANK_HEADS, rank_cells, rank_paragraphs};
use crate::study::{Ranked, Ranks};
use crate::units::System;
use serde::Serialize;

/// Rows of a ranking in a table for people.
const MOST_ROWS: usize = 25;

/// A ranking as text: the strongest values and a sentence.
#[must_use]
pub fn rank_table(ranks: &Ranks, units: System) -> String {
    let rows = ranks.rows.iter().take(MOST_ROWS).map(rank_cells).collect();
    let mut text = table(&RANK_HEADS, rows, 2);
    for line in rank_paragraphs(ranks, MOST_ROWS, units) {
        text += &line;
        text.push('\n');
    }
    text
}

const COLUMNS: [&str; 5] = [
    "path",
    "value_si",
    "unit",
    "lowered_percent",
    "raised_percent",
];

/// A ranking as CSV.
#[must_use]
pub fn rank_csv(ranks: &Ranks) -> String {
    rows_to_csv(&COLUMNS, ranks.rows.iter().map(cells))
}

fn cells(row: &Ranked) -> Vec<String> {
    vec![
        row.number.path.clone(),
        row.number.value.to_string(),
        row.number.unit.to_owned(),
        row.lowered_percent.to_string(),
        row.raised_percent.to_string(),
    ]
}

#[derive(Serialize)]
struct RanksJson<'a> {
    by_percent: f64,
    measure: &'static str,
    without_effect: usize,
    values: Vec<RankedRow<'a>>,
    cannot_be_changed: Vec<UnchangedRow<'a>>,
}

#[derive(Serialize)]
struct RankedRow<'a> {
    path: &'a str,
    in_words: String,
    value_si: f64,
    unit: &'a str,
    lowered_percent: f64,
    raised_percent: f64,
}

#[derive(Serialize)]
struct UnchangedRow<'a> {
    path: &'a str,
    reason: String,
}

/// A ranking as JSON.
#[must_use]
pub fn rank_json(ranks: &Ranks) -> String {
    let undone = ranks.undone.iter().map(|(number, error)| UnchangedRow {
        path: &number.path,
        reason: in_one_line(error, System::Metric),
    });
    pretty(&RanksJson {
        by_percent: ranks.by_percent,
        measure: compared_in_words(ranks.measure),
        without_effect: ranks.without_effect,
        values: ranks.rows.iter().map(ranked_row).collect(),
        cannot_be_changed: undone.collect(),
    })
}

fn ranked_row(row: &Ranked) -> RankedRow<'_> {
    RankedRow {
        path: &row.number.path,
        in_words: parameter_in_words(&row.number.path),
        value_si: row.number.value,
        unit: row.number.unit,
        lowered_percent: row.lowered_percent,
        raised_percent: row.raised_percent,
    }
}
