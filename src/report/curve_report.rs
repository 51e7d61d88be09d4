//! A strength curve as text, CSV and JSON.
//!
//! In: a [`Study`], one of its setups or none. Out: text; numbers of CSV and JSON in SI.

use super::json::pretty;
use super::people_row::{PeopleRow, people_row};
use super::sample::{Sample, samples};
use super::summary::{CurveSummary, summary};
use super::table::table;
use super::tidy_table::{Cells, DrawnColumns, TidyTable};
use super::warnings::{WarningRow, warnings};
use crate::narrative::curve_words::{curve_head, curve_sentences, sample_cells, sample_heads};
use crate::narrative::fibre_words::fibre_warning_lines;
use crate::narrative::negative_words::negative_lines;
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
    lines.extend(negative_lines(study));
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
    #[serde(skip_serializing_if = "Option::is_none")]
    people: Option<PeopleRow>,
    warnings: Vec<WarningRow>,
    samples: Vec<Sample>,
}

/// A curve as JSON; an infinite effort becomes null.
#[must_use]
pub fn curve_json(study: &Study, setup: Option<&SetupStudy>, with_detail: bool) -> String {
    pretty(&CurveJson {
        summary: summary(study, setup),
        people: study.people.as_ref().map(people_row),
        warnings: warnings(study),
        samples: samples(study, setup, with_detail),
    })
}

/// A curve as a table: a row a sample, with detail a row a sample and muscle.
#[must_use]
pub fn curve_data(study: &Study, setup: Option<&SetupStudy>, with_detail: bool) -> TidyTable {
    let samples = samples(study, setup, with_detail);
    TidyTable::of(samples.iter().flat_map(sample_rows)).drawn(DrawnColumns {
        along: "range",
        values: "capacity_n",
        as_curve: true,
    })
}

/// The curves of several setups in one table, each row with the setup's number and name.
#[must_use]
pub fn curves_data(study: &Study) -> TidyTable {
    let setups = (1..).zip(&study.setups);
    TidyTable::of(setups.flat_map(|(number, setup)| {
        let told = study.told(System::Metric).setup_name(setup);
        let named = Cells::of(&SetupNamed {
            setup_number: number,
            setup: told,
        });
        let samples = samples(study, Some(setup), false);
        let rows: Vec<Cells> = samples
            .iter()
            .map(|sample| named.clone().and(sample))
            .collect();
        rows
    }))
}

#[derive(Serialize)]
struct SetupNamed {
    setup_number: usize,
    setup: String,
}

/// The rows of a sample: one, or one for every muscle of its detail.
pub(super) fn sample_rows(sample: &Sample) -> Vec<Cells> {
    let row = Cells::of(sample);
    match &sample.detail {
        Some(detail) if !detail.muscles.is_empty() => {
            let muscles = detail.muscles.iter();
            muscles.map(|muscle| row.clone().and(muscle)).collect()
        }
        _ => vec![row],
    }
}
