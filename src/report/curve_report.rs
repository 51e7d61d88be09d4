//! A strength curve as text, CSV and JSON.
//!
//! In: a [`Study`], one of its setups or none. Out: text; numbers of CSV and JSON in SI.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::sample::{Sample, samples};
use super::summary::{CurveSummary, summary};
use super::table::table;
use super::warnings::{WarningRow, warnings};
use crate::narrative::curve_words::{curve_head, curve_sentences, sample_cells, sample_heads};
use crate::narrative::fibre_words::fibre_warning_lines;
use crate::narrative::places::sides_in_words;
use crate::study::{SetupStudy, Study};
use crate::units::System;
use serde::Serialize;

/// Rows of a curve's table: about this many, the first and the last among them.
const ROWS: usize = 21;

/// A curve as text: heading, table, class, sticking point.
#[must_use]
pub fn curve_table(study: &Study, setup: Option<&SetupStudy>, units: System) -> String {
    let mut lines = curve_sentences(study, setup, units);
    lines.extend(fibre_warning_lines(study));
    format!(
        "{}\n{}\n\n{}\n{}\n",
        curve_head(study, setup, units),
        sides_in_words(study),
        samples_table(study, setup, units),
        lines.join("\n")
    )
}

fn samples_table(study: &Study, setup: Option<&SetupStudy>, units: System) -> String {
    let heads = sample_heads(study, setup.is_some(), units);
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    let rows = shown(study.range.poses.len())
        .into_iter()
        .map(|index| sample_cells(study, setup, index, units));
    table(&heads, rows.collect(), 0)
}

/// Which of so many samples stand in the table.
fn shown(samples: usize) -> Vec<usize> {
    let last = samples - 1;
    let step = last.div_ceil(ROWS - 1).max(1);
    let mut picked: Vec<usize> = (0..=last).step_by(step).collect();
    if picked.last() != Some(&last) {
        picked.push(last);
    }
    picked
}

#[derive(Serialize)]
struct CurveJson {
    summary: CurveSummary,
    warnings: Vec<WarningRow>,
    samples: Vec<Sample>,
}

/// A curve as JSON; an infinite effort becomes null.
#[must_use]
pub fn curve_json(study: &Study, setup: Option<&SetupStudy>, with_detail: bool) -> String {
    pretty(&CurveJson {
        summary: summary(study, setup),
        warnings: warnings(study),
        samples: samples(study, setup, with_detail),
    })
}

/// A curve as CSV; with detail a column for every joint angle, torque, reaction and muscle value.
#[must_use]
pub fn curve_csv(study: &Study, setup: Option<&SetupStudy>, with_detail: bool) -> String {
    let samples = samples(study, setup, with_detail);
    let rows: Vec<Vec<(String, String)>> = samples.iter().map(cells).collect();
    let header: Vec<&str> = rows
        .first()
        .map(|row| row.iter().map(|(name, _)| name.as_str()).collect())
        .unwrap_or_default();
    let values = |row: &Vec<(String, String)>| row.iter().map(|cell| cell.1.clone()).collect();
    rows_to_csv(&header, rows.iter().map(values))
}

/// A sample's cells, objects flattened with dots.
fn cells(sample: &Sample) -> Vec<(String, String)> {
    let value = serde_json::to_value(sample).expect("a sample is a struct with texts for keys");
    let mut cells = Vec::new();
    flatten("", &value, &mut cells);
    cells
}

fn flatten(path: &str, value: &serde_json::Value, cells: &mut Vec<(String, String)>) {
    let joined = |key: &str| {
        if path.is_empty() {
            key.to_owned()
        } else {
            format!("{path}.{key}")
        }
    };
    match value {
        serde_json::Value::Object(map) => {
            for (key, inner) in map {
                flatten(&joined(key), inner, cells);
            }
        }
        serde_json::Value::Array(list) => {
            for inner in list {
                let name = inner.get("name").and_then(|n| n.as_str()).unwrap_or("");
                flatten(&joined(name), inner, cells);
            }
        }
        serde_json::Value::String(_) if path.ends_with(".name") => {}
        serde_json::Value::String(text) => cells.push((path.to_owned(), text.clone())),
        serde_json::Value::Null => cells.push((path.to_owned(), String::new())),
        other => cells.push((path.to_owned(), other.to_string())),
    }
}
