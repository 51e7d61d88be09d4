//! A fit as text, JSON and a table.
//!
//! In: a [`PersonFit`]. Out: text; loads of CSV and JSON in kg.

use super::json::pretty;
use super::table::table;
use super::tidy_table::{Cells, TidyTable};
use super::trace_rows::{TraceRow, trace_row, trace_text};
use super::wrapping::wrapped;
use crate::movement::Measure;
use crate::narrative::apart_words::data_remarks;
use crate::narrative::fit_words::{
    DATA_HEADS, FACTOR_HEADS, LIFT_HEADS, check_sentence, data_cells, factor_remark, factor_rows,
    fit_cautions, lift_cells, lift_remarks, next_sentences, who,
};
use crate::study::{LiftForecast, PersonFit};
use crate::units::System;
use serde::Serialize;

/// A fit as text.
#[must_use]
pub fn fit_text(fit: &PersonFit, units: System) -> String {
    let data = fit.data.iter().map(|datum| data_cells(datum, units));
    let lifts = fit.lifts.iter().map(|lift| lift_cells(lift, units));
    let traces = fit.traces.iter();
    let traces: Vec<String> = traces.map(|trace| trace_text(trace, units)).collect();
    let blocks = [
        who(fit, units) + "\n",
        table(&DATA_HEADS, data.collect(), 1),
        lines(&data_remarks(fit)),
        traces.join("\n"),
        table(&FACTOR_HEADS, factor_rows(fit), 1),
        lines(&[factor_remark(fit)]),
        table(&LIFT_HEADS, lifts.collect(), 1),
        lines(&lift_remarks(fit)),
        lines(&next_sentences(fit)),
        lines(&[check_sentence(fit)]),
        lines(&fit_cautions(units)),
    ];
    let blocks = blocks.into_iter().filter(|block| !block.is_empty());
    blocks.collect::<Vec<String>>().join("\n")
}

fn lines(sentences: &[String]) -> String {
    let lines = sentences.iter().flat_map(|line| wrapped("", line));
    lines.map(|line| line + "\n").collect()
}

#[derive(Serialize)]
struct FitJson<'a> {
    summary: FitSummary<'a>,
    measurements: Vec<MeasurementRow<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    traces: Vec<TraceRow<'a>>,
    strengths: Vec<StrengthRow>,
    lifts: Vec<FitLiftRow<'a>>,
    next_measurements: Vec<NextRow<'a>>,
}

#[derive(Serialize)]
struct FitSummary<'a> {
    lifter: &'a str,
    sex: &'static str,
    height_m: f64,
    body_mass_kg: f64,
    training_months: f64,
    seed: u64,
    draws: usize,
    effective_draws: f64,
    largest_shift: f64,
    search_steps: usize,
    versions: usize,
}

#[derive(Serialize)]
struct MeasurementRow<'a> {
    measurement: &'a str,
    movement: &'a str,
    measured_si: f64,
    fitted_si: f64,
    log_error: f64,
    others_si: f64,
    log_others_deviation: f64,
    deviations: f64,
    is_apart: bool,
}

#[derive(Serialize)]
struct StrengthRow {
    parameter: String,
    log_before: f64,
    log_before_deviation: f64,
    log_after: f64,
    log_after_deviation: f64,
}

#[derive(Serialize)]
struct FitLiftRow<'a> {
    movement: &'a str,
    one_rm_kg: f64,
    one_rm_low_kg: f64,
    one_rm_high_kg: f64,
    log_deviation: f64,
    before_one_rm_kg: f64,
    log_before_deviation: f64,
    times_measured: usize,
    sticking_point_range: f64,
    sticking_point_low_range: f64,
    sticking_point_high_range: f64,
    sticking_point_m: Option<f64>,
    range_of_motion_m: Option<f64>,
    range_of_motion_deg: Option<f64>,
}

#[derive(Serialize)]
struct NextRow<'a> {
    movement: &'a str,
    narrowing: f64,
    narrowing_of_itself: f64,
}

/// A fit as JSON.
#[must_use]
pub fn fit_json(fit: &PersonFit) -> String {
    let asked = &fit.asked;
    pretty(&FitJson {
        summary: FitSummary {
            lifter: &asked.name,
            sex: match asked.sex {
                crate::anatomy::Sex::Woman => "woman",
                crate::anatomy::Sex::Man => "man",
            },
            height_m: asked.height.as_m(),
            body_mass_kg: asked.mass.as_kg(),
            training_months: asked.months,
            seed: asked.seed,
            draws: fit.check.draws,
            effective_draws: fit.check.effective,
            largest_shift: fit.check.largest_shift,
            search_steps: fit.steps,
            versions: fit.versions.len(),
        },
        measurements: fit
            .data
            .iter()
            .map(|datum| MeasurementRow {
                measurement: &datum.text,
                movement: &datum.movement,
                measured_si: datum.measured,
                fitted_si: datum.fitted,
                log_error: datum.error,
                others_si: datum.others.0,
                log_others_deviation: datum.others.1,
                deviations: datum.deviations(),
                is_apart: datum.is_apart(),
            })
            .collect(),
        traces: fit.traces.iter().map(trace_row).collect(),
        strengths: fit
            .moved
            .iter()
            .map(|moved| StrengthRow {
                parameter: format!("lifter.{}", moved.factor.path()),
                log_before: moved.before.0,
                log_before_deviation: moved.before.1,
                log_after: moved.after.0,
                log_after_deviation: moved.after.1,
            })
            .collect(),
        lifts: fit.lifts.iter().map(lift_row).collect(),
        next_measurements: fit
            .next
            .iter()
            .map(|test| NextRow {
                movement: &test.movement,
                narrowing: test.narrowing,
                narrowing_of_itself: test.of_itself,
            })
            .collect(),
    })
}

fn lift_row(lift: &LiftForecast) -> FitLiftRow<'_> {
    let [low, middle, high] = lift.loads_kg();
    let place = &lift.hardest;
    FitLiftRow {
        movement: &lift.movement,
        one_rm_kg: middle,
        one_rm_low_kg: low,
        one_rm_high_kg: high,
        log_deviation: lift.deviation,
        before_one_rm_kg: lift.before.0 - lift.body_kg,
        log_before_deviation: lift.before.1,
        times_measured: lift.measured,
        sticking_point_range: place.range,
        sticking_point_low_range: place.interval.0,
        sticking_point_high_range: place.interval.1,
        sticking_point_m: (place.measure == Measure::Force).then_some(place.range * place.way),
        range_of_motion_m: (place.measure == Measure::Force).then_some(place.way),
        range_of_motion_deg: (place.measure == Measure::Torque).then(|| place.way.to_degrees()),
    }
}

/// A fit as a table: a row a lift.
#[must_use]
pub fn fit_data(fit: &PersonFit) -> TidyTable {
    TidyTable::of(fit.lifts.iter().map(|lift| Cells::of(&lift_row(lift))))
}
