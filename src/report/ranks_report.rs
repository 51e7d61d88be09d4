//! Which values matter most, as text, CSV and JSON.
//!
//! In: [`Ranks`]. Out: text; numbers of CSV and JSON in SI.

use super::json::pretty;
use super::table::table;
use super::tidy_table::{Cells, TidyTable};
use crate::narrative::comparison::compared_in_words;
use crate::narrative::faults::in_one_line;
use crate::narrative::parameters::parameter_in_words;
use crate::narrative::rank_words::{RANK_HEADS, origin, rank_cells, rank_paragraphs};
use crate::narrative::source_words::source_in_words;
use crate::study::{RankStep, Ranked, Ranks};
use crate::units::System;
use serde::Serialize;

/// Rows of a ranking in a table for people.
const MOST_ROWS: usize = 25;

/// A ranking as text: the strongest values and a sentence.
#[must_use]
pub fn rank_table(ranks: &Ranks, units: System) -> String {
    let shown = ranks.rows.iter().take(MOST_ROWS);
    let rows = shown.map(|row| rank_cells(row, units)).collect();
    let mut text = table(&RANK_HEADS, rows, 2);
    for line in rank_paragraphs(ranks, MOST_ROWS, units) {
        text += &line;
        text.push('\n');
    }
    text
}

/// A ranking as a table: a row a value.
#[must_use]
pub fn rank_data(ranks: &Ranks) -> TidyTable {
    TidyTable::of(ranks.rows.iter().map(|row| Cells::of(&ranked_row(row))))
}

/// How far the value was changed, in SI.
fn by_si(row: &Ranked) -> f64 {
    match row.by {
        RankStep::Percent(percent) => (0.01 * percent * row.number.value).abs(),
        RankStep::Amount(amount) => amount,
    }
}

/// Standard deviation after the calibration, % of the value.
fn deviation_percent(row: &Ranked) -> Option<f64> {
    let fitted = row.from.fitted?;
    Some(100.0 * fitted.relative_deviation())
}

fn source(row: &Ranked) -> Option<String> {
    row.from.source.as_ref().map(source_in_words)
}

#[derive(Serialize)]
struct RanksJson<'a> {
    by_percent: f64,
    measure: &'static str,
    without_effect: usize,
    changes_nothing: Vec<&'a str>,
    values: Vec<RankedRow<'a>>,
    cannot_be_changed: Vec<UnchangedRow<'a>>,
}

#[derive(Serialize)]
struct RankedRow<'a> {
    path: &'a str,
    in_words: String,
    value_si: f64,
    unit: &'a str,
    by_si: f64,
    lowered_percent: Option<f64>,
    raised_percent: Option<f64>,
    from: String,
    deviation_percent: Option<f64>,
    source: Option<String>,
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
        without_effect: ranks.without_effect.len(),
        changes_nothing: ranks
            .without_effect
            .iter()
            .map(|number| number.path.as_str())
            .collect(),
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
        by_si: by_si(row),
        lowered_percent: row.lowered_percent,
        raised_percent: row.raised_percent,
        from: origin(&row.from),
        deviation_percent: deviation_percent(row),
        source: source(row),
    }
}
