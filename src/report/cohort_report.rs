//! The maxima of a group of invented lifters as text, CSV and JSON.
//!
//! In: a [`Cohort`]. Out: text; masses of CSV and JSON in kg.

use super::json::pretty;
use super::table::table;
use super::tidy_table::{Cells, TidyTable};
use crate::narrative::cohort_words::{QUANTILE_HEADS, cohort_head, cohort_remarks, quantile_cells};
use crate::numeric::{mean_and_deviation, quantile};
use crate::study::{Cohort, Member};
use crate::units::{Mass, System};
use serde::Serialize;

/// The quantiles that are shown.
const SHOWN: [f64; 5] = [0.05, 0.25, 0.5, 0.75, 0.95];

/// A group as text.
#[must_use]
pub fn cohort_text(cohort: &Cohort, units: System) -> String {
    let (maxima, shares) = (cohort.maxima_kg(), cohort.shares_of_body());
    let rows = SHOWN.iter().filter_map(|share| {
        let (one_rm_kg, over_body) = (quantile(&maxima, *share)?, quantile(&shares, *share)?);
        Some(quantile_cells(*share, one_rm_kg, over_body, units))
    });
    let head = cohort_head(cohort, units).join("\n");
    // Without a mean no blank line stands over the table.
    let gap = if maxima.len() < 2 { "" } else { "\n" };
    let table = table(&QUANTILE_HEADS, rows.collect(), 0);
    let remarks = cohort_remarks(cohort).join("\n\n");
    format!("{head}\n{gap}{table}\n{remarks}\n")
}

#[derive(Serialize)]
struct CohortJson<'a> {
    summary: CohortSummary<'a>,
    lifters: Vec<MemberRow>,
}

#[derive(Serialize)]
struct CohortSummary<'a> {
    movement: &'a str,
    around: &'a str,
    seed: u64,
    lifters: usize,
    with_maximum: usize,
    is_complete: bool,
    mean_kg: Option<f64>,
    standard_deviation_kg: Option<f64>,
    quantiles: Vec<QuantileRow>,
}

#[derive(Serialize)]
struct QuantileRow {
    share: f64,
    one_rm_kg: Option<f64>,
    over_body_mass: Option<f64>,
}

#[derive(Serialize)]
struct MemberRow {
    number: usize,
    height_m: f64,
    body_mass_kg: f64,
    strength: f64,
    one_rm_kg: Option<f64>,
}

/// A group as JSON.
#[must_use]
pub fn cohort_json(cohort: &Cohort) -> String {
    let (maxima, shares) = (cohort.maxima_kg(), cohort.shares_of_body());
    let moments = mean_and_deviation(&maxima);
    let quantile_row = |share: f64| QuantileRow {
        share,
        one_rm_kg: quantile(&maxima, share),
        over_body_mass: quantile(&shares, share),
    };
    pretty(&CohortJson {
        summary: CohortSummary {
            movement: &cohort.movement_title,
            around: &cohort.lifter_title,
            seed: cohort.asked.seed,
            lifters: cohort.members.len(),
            with_maximum: maxima.len(),
            is_complete: cohort.is_complete,
            mean_kg: moments.map(|moments| moments.0),
            standard_deviation_kg: moments.map(|moments| moments.1),
            quantiles: SHOWN.map(quantile_row).into(),
        },
        lifters: cohort.members.iter().map(member_row).collect(),
    })
}

fn member_row(member: &Member) -> MemberRow {
    MemberRow {
        number: member.number,
        height_m: member.height_m,
        body_mass_kg: member.body_mass.as_kg(),
        strength: member.strength,
        one_rm_kg: member.one_rm.map(Mass::as_kg),
    }
}

/// A group as a table: a row a lifter.
#[must_use]
pub fn cohort_data(cohort: &Cohort) -> TidyTable {
    TidyTable::of(
        cohort
            .members
            .iter()
            .map(|member| Cells::of(&member_row(member))),
    )
}
