//! A bar's trace as text and as plain numbers.
//!
//! In: a [`TraceBeside`]. Out: a block of a fit's text; an object of its JSON.

use super::table::table;
use super::wrapping::wrapped;
use crate::narrative::trace_words::{trace_cells, trace_head, trace_heads, trace_remark};
use crate::study::TraceBeside;
use crate::units::System;
use serde::Serialize;

/// The block of a trace.
pub(super) fn trace_text(beside: &TraceBeside, units: System) -> String {
    let heads = trace_heads(units);
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    let rows = (1..).zip(&beside.traced.repetitions);
    let rows = rows.map(|(number, one)| trace_cells(number, one, units));
    let mut text = trace_head(beside, units) + "\n\n";
    text += &table(&heads, rows.collect(), 0);
    for line in wrapped("", &trace_remark(beside)) {
        text += &(line + "\n");
    }
    text
}

/// A trace.
#[derive(Serialize)]
pub(super) struct TraceRow<'a> {
    trace: &'a str,
    movement: &'a str,
    load_kg: f64,
    rows_left_out: usize,
    traced_repetitions: Vec<TracedRow>,
    simulated_mean_velocity_m_s: Option<f64>,
    simulated_sticking_from_range: Option<f64>,
    simulated_sticking_to_range: Option<f64>,
}

#[derive(Serialize)]
struct TracedRow {
    from_s: f64,
    to_s: f64,
    way_m: f64,
    mean_velocity_m_s: f64,
    peak_velocity_m_s: f64,
    sticking_from_range: Option<f64>,
    sticking_to_range: Option<f64>,
}

/// The object of a trace.
pub(super) fn trace_row(beside: &TraceBeside) -> TraceRow<'_> {
    let traced = &beside.traced;
    let rows = traced.repetitions.iter().map(|one| TracedRow {
        from_s: one.from_s,
        to_s: one.to_s,
        way_m: one.way_m,
        mean_velocity_m_s: one.mean_velocity.as_m_s(),
        peak_velocity_m_s: one.peak_velocity.as_m_s(),
        sticking_from_range: one.sticking.map(|region| region.from),
        sticking_to_range: one.sticking.map(|region| region.to),
    });
    TraceRow {
        trace: &traced.told.file,
        movement: &traced.told.movement,
        load_kg: traced.told.load.as_kg(),
        rows_left_out: traced.left_out,
        traced_repetitions: rows.collect(),
        simulated_mean_velocity_m_s: beside.mean_velocity_m_s,
        simulated_sticking_from_range: beside.sticking.map(|ends| ends[0]),
        simulated_sticking_to_range: beside.sticking.map(|ends| ends[1]),
    }
}
