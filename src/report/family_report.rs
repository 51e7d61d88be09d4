//! A family of curves over one changed value as text and JSON.
//!
//! In: a [`Family`]. Out: text; numbers of JSON in SI.

use super::account_rows::{AccountRow, account_rows, place_name};
use super::family_data::{ValueRow, family_samples, value_row};
use super::json::pretty;
use super::sample::Sample;
use super::summary::{CurveSummary, summary};
use super::table::table;
use super::warnings::{WarningRow, warnings};
use crate::anatomy::Joint;
use crate::movement::Measure;
use crate::narrative::account_words::{account_heads, account_table};
use crate::narrative::causes::why_it_changed;
use crate::narrative::faults::in_one_line;
use crate::narrative::parameters::parameter_in_words;
use crate::narrative::variation_words::{
    doubts_of_all, family_paragraphs, present_cells, variant_cells, variant_heads, without_effect,
};
use crate::study::{BothWays, Cause, Conditions, Family, Sensitivity, Study, Variant};
use crate::units::System;
use serde::Serialize;
use std::collections::BTreeMap;

/// A family as text: a table of figures, sensitivities, a sentence for every value.
#[must_use]
pub fn family_table(family: &Family, asked: &Conditions, units: System) -> String {
    if let Some(sentence) = without_effect(family) {
        return sentence + "\n";
    }
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
    lines.extend(doubts_of_all(family));
    table(&heads, rows, 1) + &lines.join("\n") + "\n"
}

#[derive(Serialize)]
struct FamilyJson<'a> {
    parameter: &'a str,
    parameter_in_words: String,
    baseline: CurveOfValue<'a>,
    warnings: Vec<WarningRow>,
    sensitivity_per_percent: Option<SensitivityRow>,
    variants: Vec<VariantRow<'a>>,
    cannot_be_done: Vec<UndoneRow<'a>>,
}

/// A curve of the family: its value, its figures, its samples if they are asked for.
#[derive(Serialize)]
struct CurveOfValue<'a> {
    #[serde(flatten)]
    figures: ValueRow<'a>,
    #[serde(skip_serializing_if = "Option::is_none")]
    samples: Option<Vec<Sample>>,
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
    #[serde(flatten)]
    curve: CurveOfValue<'a>,
    summary: CurveSummary,
    warnings: Vec<WarningRow>,
    causes: Vec<CauseRow<'a>>,
    sentence: String,
}

#[derive(Serialize)]
struct CauseRow<'a> {
    place: &'static str,
    range: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    capacity_n: Option<BeforeAfter>,
    #[serde(skip_serializing_if = "Option::is_none")]
    capacity_nm: Option<BeforeAfter>,
    limiting_joints: BeforeAfter<Vec<&'static str>>,
    /// Capacity gained per N·m more at each coordinate.
    weights: BeforeAfter<BTreeMap<&'static str, f64>>,
    stretches: usize,
    muscle_forces_n: BTreeMap<&'a str, BeforeAfter>,
    parts: Vec<AccountRow<'a>>,
}

#[derive(Serialize)]
struct BeforeAfter<T = f64> {
    before: T,
    after: T,
}

impl<T> BeforeAfter<T> {
    fn of([before, after]: [T; 2]) -> Self {
        Self { before, after }
    }
}

#[derive(Serialize)]
struct UndoneRow<'a> {
    value: &'a str,
    reason: String,
}

/// A family as JSON, with the samples of every curve if they are asked for, under the conditions of the question.
#[must_use]
pub fn family_json(family: &Family, with_curves: Option<&Conditions>) -> String {
    let path = &family.parameter.path;
    let undone = family.undone.iter().map(|undone| UndoneRow {
        value: &undone.text,
        reason: in_one_line(&undone.error, System::Metric),
    });
    let curve = |variant: Option<&'_ Variant>| {
        let study = variant.map_or(&family.base, |variant| &variant.study);
        with_curves.map(|asked| family_samples(study, asked))
    };
    let variants = family.variants.iter();
    pretty(&FamilyJson {
        parameter: path,
        parameter_in_words: parameter_in_words(path),
        baseline: CurveOfValue {
            figures: value_row(family, None),
            samples: curve(None),
        },
        warnings: warnings(&family.base),
        sensitivity_per_percent: family.sensitivity.map(|s| sensitivity_row(&s)),
        variants: variants
            .map(|variant| variant_row(family, variant, curve(Some(variant))))
            .collect(),
        cannot_be_done: undone.collect(),
    })
}

fn sensitivity_row(sensitivity: &Sensitivity) -> SensitivityRow {
    SensitivityRow {
        peak_percent: sensitivity.peak_percent.mean(),
        start_percent: sensitivity.start_percent.mean(),
        end_percent: sensitivity.end_percent.mean(),
        heaviest_percent: sensitivity.held_percent.map(BothWays::mean),
        peak_place_percent_of_range: sensitivity.peak_place_percent.mean(),
        sticking_place_percent_of_range: sensitivity.sticking_place_percent.map(BothWays::mean),
    }
}

fn variant_row<'a>(
    family: &'a Family,
    variant: &'a Variant,
    samples: Option<Vec<Sample>>,
) -> VariantRow<'a> {
    VariantRow {
        curve: CurveOfValue {
            figures: value_row(family, Some(variant)),
            samples,
        },
        summary: summary(&variant.study, variant.study.setups.first()),
        warnings: warnings(&variant.study),
        causes: variant
            .causes
            .iter()
            .map(|cause| cause_row(cause, &variant.study))
            .collect(),
        sentence: why_it_changed(family, variant, System::Metric),
    }
}

fn cause_row<'a>(cause: &'a Cause, study: &Study) -> CauseRow<'a> {
    let (account, measure) = (&cause.account, study.range.measure);
    let names = |joints: Vec<Joint>| joints.into_iter().map(Joint::name).collect();
    let dofs = study.range.poses[0]
        .coordinates
        .iter()
        .map(|c| c.dof.name());
    let weights = account.weights.each_ref();
    let capacity = |wanted| (measure == wanted).then(|| BeforeAfter::of(account.capacity));
    CauseRow {
        place: place_name(cause.spot),
        range: cause.range,
        capacity_n: capacity(Measure::Force),
        capacity_nm: capacity(Measure::Torque),
        limiting_joints: BeforeAfter::of(cause.limiting().map(names)),
        weights: BeforeAfter::of(
            weights.map(|weights| dofs.clone().zip(weights.iter().copied()).collect()),
        ),
        stretches: account.stretches,
        muscle_forces_n: account
            .muscles
            .iter()
            .map(|muscle| (muscle.name.as_str(), BeforeAfter::of(muscle.force_n)))
            .collect(),
        parts: account_rows(cause, measure),
    }
}

/// Why every value changes the curve, as text: every part that can be seen.
#[must_use]
pub fn why_table(family: &Family, units: System) -> String {
    let heads = account_heads(family, units);
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    let rows = family.changed().flat_map(|variant| {
        let causes = variant.causes.iter();
        causes.flat_map(move |cause| account_table(family, variant, cause, units))
    });
    table(&heads, rows.collect(), 3)
}
