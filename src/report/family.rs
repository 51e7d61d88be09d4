//! A family of curves over one changed value, as table, CSV and JSON.
//!
//! In: a [`Family`]. Out: text.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::summary::summary;
use super::table::table;
use crate::error::Result;
use crate::movement::Measure;
use crate::narrative::causes::why_it_changed;
use crate::narrative::comparison::shown_figure;
use crate::narrative::faults::in_one_line;
use crate::narrative::parameters::{parameter_in_words, shown_value};
use crate::narrative::quantities::rounded;
use crate::study::{Compared, Conditions, Family, Figures, Study};
use crate::units::{Length, System};
use serde_json::{Value, json};

/// A family as text: a table of figures, sensitivities, a sentence for every value.
#[must_use]
pub fn family_table(family: &Family, asked: &Conditions, units: System) -> String {
    let unit = shown_figure(Compared::Peak, 0.0, &family.base, asked, units).1;
    let held_unit = shown_figure(Compared::Held, 0.0, &family.base, asked, units).1;
    let header = [
        family.parameter.path.clone(),
        format!("peak {unit}"),
        "peak at".to_owned(),
        format!("start {unit}"),
        format!("end {unit}"),
        "class".to_owned(),
        "hardest at".to_owned(),
        format!("heaviest weight {held_unit}"),
    ];
    let header: Vec<&str> = header.iter().map(String::as_str).collect();
    let mut rows: Vec<Vec<String>> = Vec::new();
    for variant in &family.variants {
        rows.push(cells(
            shown_value(&variant.text),
            &variant.study,
            &variant.figures,
            asked,
            units,
        ));
    }
    if !family.has_present() {
        let name = family.present.as_ref().map_or_else(
            || "as it is".to_owned(),
            |number| format!("as it is ({})", in_unit(number.value, number.unit, units)),
        );
        rows.push(cells(
            name,
            &family.base,
            &family.base_figures,
            asked,
            units,
        ));
    }
    let mut text = table(&header, rows, 1);
    for undone in &family.undone {
        text += &format!(
            "{}: {}\n",
            shown_value(&undone.text),
            in_one_line(&undone.error, units)
        );
    }
    if let Some(sentence) = sensitivity_sentence(family) {
        text += &format!("\n{sentence}\n");
    }
    text.push('\n');
    for variant in &family.variants {
        if variant.figures != family.base_figures {
            text += &format!("{}\n", why_it_changed(family, variant));
        }
    }
    text += "(In brackets: what each of them does to strength.)\n";
    text
}

/// A value in its SI unit as people read it: lengths in cm or inches, angles in degrees.
fn in_unit(value: f64, unit: &str, units: System) -> String {
    match (unit, units) {
        ("m", System::Metric) => format!("{} cm", rounded(100.0 * value, 1)),
        ("m", System::Us) => format!("{} in", rounded(Length::from_m(value).as_in(), 1)),
        ("rad", _) => format!("{} deg", rounded(value.to_degrees(), 1)),
        (unit, _) => format!("{} {unit}", rounded(value, 4))
            .trim_end()
            .to_owned(),
    }
}

/// A place of the range as people read it: travel in cm or inches, or the joint's angle.
fn place(study: &Study, range: f64, units: System) -> String {
    let value = study.axis_value(range);
    match (study.range.measure, units) {
        (Measure::Torque, _) => format!("{} deg", rounded(value, 0)),
        (Measure::Force, System::Metric) => format!("{} cm", rounded(value, 1)),
        (Measure::Force, System::Us) => {
            format!("{} in", rounded(Length::from_cm(value).as_in(), 1))
        }
    }
}

fn cells(
    name: String,
    study: &Study,
    figures: &Figures,
    asked: &Conditions,
    units: System,
) -> Vec<String> {
    let number = |measure: Compared, decimals: usize| {
        figures.value(measure).map_or_else(
            || "-".to_owned(),
            |value| {
                rounded(
                    shown_figure(measure, value, study, asked, units).0,
                    decimals,
                )
            },
        )
    };
    let held_decimals = if asked.load.is_some() { 2 } else { 1 };
    vec![
        name,
        number(Compared::Peak, 1),
        place(study, figures.peak_range, units),
        number(Compared::Start, 1),
        number(Compared::End, 1),
        study.class.shape.word().to_owned(),
        figures
            .sticking
            .map_or_else(|| "-".to_owned(), |s| place(study, s.point_range, units)),
        number(Compared::Held, held_decimals),
    ]
}

/// "Per 1 % more: peak +0.12 %, ..." near the present value.
fn sensitivity_sentence(family: &Family) -> Option<String> {
    let s = family.sensitivity?;
    let percent = |name: &str, value: Option<f64>, unit: &str| {
        let text = rounded(value?, 2);
        let sign = if value? > 0.0 && text != "0" { "+" } else { "" };
        Some(format!(
            "{name} {sign}{}{unit}",
            text.replace('-', "\u{2212}")
        ))
    };
    let told: Vec<String> = [
        percent("peak", Some(s.peak_percent), " %"),
        percent("start", Some(s.start_percent), " %"),
        percent("end", Some(s.end_percent), " %"),
        percent("heaviest weight", s.held_percent, " %"),
        percent(
            "place of the peak",
            Some(s.peak_place_percent),
            " points of the range",
        ),
        percent(
            "hardest place",
            s.sticking_place_percent,
            " points of the range",
        ),
    ]
    .into_iter()
    .flatten()
    .collect();
    Some(format!(
        "Per 1 % more of the {}: {}.",
        parameter_in_words(&family.parameter.path),
        told.join(", ")
    ))
}

/// A family as CSV: a row a value, SI units.
pub fn family_csv(family: &Family) -> Result<String> {
    let header = [
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
    let optional = |value: Option<f64>| value.map_or_else(String::new, |v| v.to_string());
    rows_to_csv(
        &header,
        family.variants.iter().map(|variant| {
            let f = &variant.figures;
            vec![
                variant.text.clone(),
                optional(variant.number.as_ref().map(|n| n.value)),
                variant.number.as_ref().map_or("", |n| n.unit).to_owned(),
                f.peak.to_string(),
                f.peak_range.to_string(),
                f.start.to_string(),
                f.end.to_string(),
                variant.study.class.shape.word().to_owned(),
                optional(f.sticking.map(|s| s.point_range)),
                optional(f.max_effort),
                optional(f.held_kg),
            ]
        }),
    )
}

fn figures_json(figures: &Figures) -> Value {
    json!({
        "peak": figures.peak,
        "peak_range": figures.peak_range,
        "start": figures.start,
        "end": figures.end,
        "sticking_point_range": figures.sticking.map(|s| s.point_range),
        "max_effort": figures.max_effort,
        "heaviest_kg": figures.held_kg,
    })
}

/// A family as JSON.
pub fn family_json(family: &Family) -> Result<String> {
    let variants: Vec<Value> = family
        .variants
        .iter()
        .map(|variant| {
            let causes: Vec<Value> = variant
                .causes
                .iter()
                .map(|cause| {
                    json!({
                        "range": cause.range,
                        "capacity_log": cause.capacity_log,
                        "moment_arm_log": cause.arm_log,
                        "muscle_force_log": cause.force_log,
                        "load_lever_log": cause.lever_log,
                        "rest_log": cause.rest_log,
                        "fibre_length_norm": cause.fibre_norm,
                        "limiting_joints": cause.joints,
                    })
                })
                .collect();
            json!({
                "value": variant.text,
                "value_si": variant.number.as_ref().map(|n| n.value),
                "unit": variant.number.as_ref().map(|n| n.unit),
                "figures": figures_json(&variant.figures),
                "summary": summary(&variant.study, variant.study.setups.first()),
                "causes": causes,
                "sentence": why_it_changed(family, variant),
            })
        })
        .collect();
    pretty(&json!({
        "parameter": family.parameter.path,
        "parameter_in_words": parameter_in_words(&family.parameter.path),
        "present": family.present.as_ref().map(|n| json!({"value": n.value, "unit": n.unit})),
        "present_figures": figures_json(&family.base_figures),
        "sensitivity_per_percent": family.sensitivity.map(|s| json!({
            "peak_percent": s.peak_percent,
            "start_percent": s.start_percent,
            "end_percent": s.end_percent,
            "heaviest_percent": s.held_percent,
            "peak_place_percent_of_range": s.peak_place_percent,
            "sticking_place_percent_of_range": s.sticking_place_percent,
        })),
        "variants": variants,
        "cannot_be_done": family.undone.iter().map(|u| json!({
            "value": u.text, "reason": in_one_line(&u.error, System::Metric),
        })).collect::<Vec<_>>(),
    }))
}
