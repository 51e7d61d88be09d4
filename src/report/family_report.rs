//! A family of curves over one changed value as text, CSV and JSON.
//!
//! In: a [`Family`]. Out: text; numbers of CSV and JSON in SI.

use super::csv::{maybe, rows_to_csv};
use super::json::pretty;
use super::summary::{CurveSummary, summary};
use super::table::table;
use super::warnings::{WarningRow, warnings};
use crate::narrative::causes::why_it_changed;
use crate::narrative::faults::in_one_line;
use crate::narrative::fibre_words::fibre_warning_lines;
use crate::narrative::parameters::parameter_in_words;
use crate::narrative::variation_words::{
    family_paragraphs, present_cells, variant_cells, variant_heads,
};
use crate::study::{Cause, Conditions, Family, Figures, Sensitivity, Variant};
use crate::units::System;
use serde::Serialize;

/// A family as text: a table of figures, sensitivities, a sentence for every value.
#[must_use]
pub fn family_table(family: &Family, asked: &Conditions, units: System) -> String {
    let heads = variant_heads(family, asked, units);
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    let variants = family.variants.iter();
    let mut rows: Vec<Vec<String>> = variants
        .map(|variant| variant_cells(variant, asked, units))
        .collect();
    if !family.has_present() {
        rows.push(present_cells(family, asked, units));
    }
    let mut lines = family_paragraphs(family, units);
    lines.extend(fibre_warning_lines(&family.base));
    table(&heads, rows, 1) + &lines.join("\n") + "\n"
}

const COLUMNS: [&str; 11] = [
    "value",
    "value_si",
    "unit",
    "peak",
    "peak_range",
    "start",
    "end",
    "class",
    "sticking_point_range",
    "max_effort",
    "heaviest_kg",
];

/// A family as CSV: a row a value.
#[must_use]
pub fn family_csv(family: &Family) -> String {
    rows_to_csv(&COLUMNS, family.variants.iter().map(cells))
}

fn cells(variant: &Variant) -> Vec<String> {
    let (figures, number) = (&variant.figures, variant.number.as_ref());
    vec![
        variant.text.clone(),
        maybe(number.map(|number| number.value)),
        number.map_or("", |number| number.unit).to_owned(),
        figures.peak.to_string(),
        figures.peak_range.to_string(),
        figures.start.to_string(),
        figures.end.to_string(),
        variant.study.class.shape.word().to_owned(),
        maybe(figures.sticking.map(|sticking| sticking.point_range)),
        maybe(figures.max_effort),
        maybe(figures.held_kg),
    ]
}

#[derive(Serialize)]
struct FamilyJson<'a> {
    parameter: &'a str,
    parameter_in_words: String,
    present: Option<PresentRow<'a>>,
    present_figures: FiguresRow,
    warnings: Vec<WarningRow>,
    sensitivity_per_percent: Option<SensitivityRow>,
    variants: Vec<VariantRow<'a>>,
    cannot_be_done: Vec<UndoneRow<'a>>,
}

#[derive(Serialize)]
struct PresentRow<'a> {
    value: f64,
    unit: &'a str,
}

#[derive(Serialize)]
struct FiguresRow {
    peak: f64,
    peak_range: f64,
    start: f64,
    end: f64,
    sticking_point_range: Option<f64>,
    max_effort: Option<f64>,
    heaviest_kg: Option<f64>,
}

#[derive(Serialize)]
struct SensitivityRow {
    peak_percent: f64,
    start_percent: f64,
    end_percent: f64,
    heaviest_percent: Option<f64>,
    peak_place_percent_of_range: f64,
    sticking_place_percent_of_range: Option<f64>,
}

#[derive(Serialize)]
struct VariantRow<'a> {
    value: &'a str,
    value_si: Option<f64>,
    unit: Option<&'a str>,
    figures: FiguresRow,
    summary: CurveSummary,
    warnings: Vec<WarningRow>,
    causes: Vec<CauseRow<'a>>,
    sentence: String,
}

#[derive(Serialize)]
struct CauseRow<'a> {
    range: f64,
    capacity_log: f64,
    moment_arm_log: f64,
    muscle_force_log: f64,
    load_lever_log: f64,
    rest_log: f64,
    fibre_length_norm: [f64; 2],
    limiting_joints: [&'a str; 2],
}

#[derive(Serialize)]
struct UndoneRow<'a> {
    value: &'a str,
    reason: String,
}

/// A family as JSON.
#[must_use]
pub fn family_json(family: &Family) -> String {
    let path = &family.parameter.path;
    let undone = family.undone.iter().map(|undone| UndoneRow {
        value: &undone.text,
        reason: in_one_line(&undone.error, System::Metric),
    });
    let variants = family.variants.iter();
    pretty(&FamilyJson {
        parameter: path,
        parameter_in_words: parameter_in_words(path),
        present: family.present.as_ref().map(|number| PresentRow {
            value: number.value,
            unit: number.unit,
        }),
        present_figures: figures_row(&family.base_figures),
        warnings: warnings(&family.base),
        sensitivity_per_percent: family.sensitivity.map(|s| sensitivity_row(&s)),
        variants: variants
            .map(|variant| variant_row(family, variant))
            .collect(),
        cannot_be_done: undone.collect(),
    })
}

fn figures_row(figures: &Figures) -> FiguresRow {
    FiguresRow {
        peak: figures.peak,
        peak_range: figures.peak_range,
        start: figures.start,
        end: figures.end,
        sticking_point_range: figures.sticking.map(|sticking| sticking.point_range),
        max_effort: figures.max_effort,
        heaviest_kg: figures.held_kg,
    }
}

const fn sensitivity_row(sensitivity: &Sensitivity) -> SensitivityRow {
    SensitivityRow {
        peak_percent: sensitivity.peak_percent,
        start_percent: sensitivity.start_percent,
        end_percent: sensitivity.end_percent,
        heaviest_percent: sensitivity.held_percent,
        peak_place_percent_of_range: sensitivity.peak_place_percent,
        sticking_place_percent_of_range: sensitivity.sticking_place_percent,
    }
}

fn variant_row<'a>(family: &Family, variant: &'a Variant) -> VariantRow<'a> {
    let number = variant.number.as_ref();
    VariantRow {
        value: &variant.text,
        value_si: number.map(|number| number.value),
        unit: number.map(|number| number.unit),
        figures: figures_row(&variant.figures),
        summary: summary(&variant.study, variant.study.setups.first()),
        warnings: warnings(&variant.study),
        causes: variant.causes.iter().map(cause_row).collect(),
        sentence: why_it_changed(family, variant),
    }
}

fn cause_row(cause: &Cause) -> CauseRow<'_> {
    CauseRow {
        range: cause.range,
        capacity_log: cause.capacity_log,
        moment_arm_log: cause.arm_log,
        muscle_force_log: cause.force_log,
        load_lever_log: cause.lever_log,
        rest_log: cause.rest_log,
        fibre_length_norm: cause.fibre_norm,
        limiting_joints: cause.joints,
    }
}
