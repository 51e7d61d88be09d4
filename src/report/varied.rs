//! What changed values do, as tables, CSV and JSON.
//!
//! In: a [`Family`], a [`Grid`] or [`Ranks`]. Out: text.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::summary::summary;
use super::table::table;
use crate::error::Result;
use crate::movement::Measure;
use crate::study::{Asked, Family, Figures, Grid, Measured, Ranked, Ranks, Study, shown_value};
use crate::units::{System, rounded};
use serde_json::{Value, json};

/// Rows of a ranking in a table for people.
const MOST_ROWS: usize = 25;

/// A family as text: a table of figures, sensitivities, a sentence for every value.
#[must_use]
pub fn family_table(family: &Family, asked: &Asked, units: System) -> String {
    let unit = Measured::Peak.shown(0.0, &family.base, asked, units).1;
    let held_unit = Measured::Held.shown(0.0, &family.base, asked, units).1;
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
        text += &format!("{}: {}\n", shown_value(&undone.text), undone.error);
    }
    if let Some(sentence) = sensitivity_sentence(family) {
        text += &format!("\n{sentence}\n");
    }
    text.push('\n');
    for variant in &family.variants {
        if variant.figures != family.base_figures {
            text += &format!("{}\n", family.why(variant));
        }
    }
    text += "(In brackets: what each of them does to strength.)\n";
    text
}

/// A value in its SI unit as people read it: lengths in cm or inches, angles in degrees.
fn in_unit(value: f64, unit: &str, units: System) -> String {
    match (unit, units) {
        ("m", System::Metric) => format!("{} cm", rounded(100.0 * value, 1)),
        ("m", System::Us) => format!("{} in", rounded(value / 0.0254, 1)),
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
        (Measure::Force, System::Us) => format!("{} in", rounded(value / 2.54, 1)),
    }
}

fn cells(
    name: String,
    study: &Study,
    figures: &Figures,
    asked: &Asked,
    units: System,
) -> Vec<String> {
    let number = |measure: Measured, decimals: usize| {
        figures.value(measure).map_or_else(
            || "-".to_owned(),
            |value| rounded(measure.shown(value, study, asked, units).0, decimals),
        )
    };
    let held_decimals = if asked.load.is_some() { 2 } else { 1 };
    vec![
        name,
        number(Measured::Peak, 1),
        place(study, figures.peak_range, units),
        number(Measured::Start, 1),
        number(Measured::End, 1),
        study.class.shape.word().to_owned(),
        figures
            .sticking
            .map_or_else(|| "-".to_owned(), |s| place(study, s.point_range, units)),
        number(Measured::Held, held_decimals),
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
        family.parameter.in_words(),
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
                "sentence": family.why(variant),
            })
        })
        .collect();
    pretty(&json!({
        "parameter": family.parameter.path,
        "parameter_in_words": family.parameter.in_words(),
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
            "value": u.text, "reason": u.error.to_string(),
        })).collect::<Vec<_>>(),
    }))
}

/// A grid as rows of text: the second parameter downwards, the first across.
fn grid_rows(grid: &Grid, shown: impl Fn(f64) -> String, measure: Measured) -> Vec<Vec<String>> {
    grid.parameters[1]
        .values
        .iter()
        .zip(&grid.cells)
        .map(|(name, row)| {
            let cells = row.iter().map(|cell| {
                let value = cell.as_ref().and_then(|figures| figures.value(measure));
                value.map_or_else(|| "-".to_owned(), &shown)
            });
            std::iter::once(shown_value(name)).chain(cells).collect()
        })
        .collect()
}

/// A grid as text.
#[must_use]
pub fn grid_table(grid: &Grid, measure: Measured, asked: &Asked, units: System) -> String {
    let [x, y] = &grid.parameters;
    let corner = format!("{} \\ {}", y.path, x.path);
    let names: Vec<String> = x.values.iter().map(|value| shown_value(value)).collect();
    let mut header = vec![corner.as_str()];
    header.extend(names.iter().map(String::as_str));
    let decimals = if asked.load.is_some() { 2 } else { 1 };
    let shown = |value: f64| rounded(measure.shown(value, &grid.base, asked, units).0, decimals);
    format!(
        "{} in {}; as it is {}\n\n{}",
        measure.in_words(),
        measure.shown(0.0, &grid.base, asked, units).1,
        grid.base_figures
            .value(measure)
            .map_or_else(|| "none".to_owned(), shown),
        table(&header, grid_rows(grid, shown, measure), 1)
    )
}

/// A grid as CSV: a row a pair, SI units.
pub fn grid_csv(grid: &Grid, measure: Measured) -> Result<String> {
    let [x, y] = &grid.parameters;
    let header = [x.path.as_str(), y.path.as_str(), "value"];
    let rows = y.values.iter().zip(&grid.cells).flat_map(|(b, row)| {
        x.values.iter().zip(row).map(move |(a, cell)| {
            let value = cell.as_ref().and_then(|figures| figures.value(measure));
            vec![
                a.clone(),
                b.clone(),
                value.map_or_else(String::new, |v| v.to_string()),
            ]
        })
    });
    rows_to_csv(&header, rows)
}

/// A grid as JSON.
pub fn grid_json(grid: &Grid, measure: Measured) -> Result<String> {
    let parameter = |index: usize| {
        let parameter = &grid.parameters[index];
        json!({
            "parameter": parameter.path,
            "values": parameter.values,
            "values_si": grid.places[index],
        })
    };
    let cells: Vec<Vec<Option<f64>>> = grid
        .cells
        .iter()
        .map(|row| {
            row.iter()
                .map(|cell| cell.as_ref()?.value(measure))
                .collect()
        })
        .collect();
    pretty(&json!({
        "across": parameter(0),
        "upwards": parameter(1),
        "measure": measure.in_words(),
        "present": grid.base_figures.value(measure),
        "values": cells,
    }))
}

/// A ranking as text: the strongest values and a sentence.
#[must_use]
pub fn rank_table(ranks: &Ranks) -> String {
    let row = |row: &Ranked| {
        vec![
            row.number.path.clone(),
            row.name.clone(),
            rounded(row.lowered_percent, 2),
            rounded(row.raised_percent, 2),
        ]
    };
    let header = ["value", "in words", "lowered %", "raised %"];
    let mut text = table(
        &header,
        ranks.rows.iter().take(MOST_ROWS).map(row).collect(),
        2,
    );
    let by = rounded(ranks.by_percent, 2);
    if let Some(first) = ranks.rows.first() {
        text += &format!(
            "\nEach value was lowered and raised by {by} % alone. The {} matters most: {} % of the {}.\n",
            first.name,
            rounded(first.size_percent(), 1),
            ranks.measure.in_words()
        );
    }
    let more = ranks.rows.len().saturating_sub(MOST_ROWS);
    if more > 0 {
        text += &format!("{more} more change it less (--format csv lists all).\n");
    }
    if ranks.without_effect > 0 {
        text += &format!("{} values change nothing.\n", ranks.without_effect);
    }
    for (number, error) in &ranks.undone {
        text += &format!("{} could not be changed: {error}\n", number.path);
    }
    text
}

/// A ranking as CSV.
pub fn rank_csv(ranks: &Ranks) -> Result<String> {
    rows_to_csv(
        &[
            "path",
            "value_si",
            "unit",
            "lowered_percent",
            "raised_percent",
        ],
        ranks.rows.iter().map(|row| {
            vec![
                row.number.path.clone(),
                row.number.value.to_string(),
                row.number.unit.to_owned(),
                row.lowered_percent.to_string(),
                row.raised_percent.to_string(),
            ]
        }),
    )
}

/// A ranking as JSON.
pub fn rank_json(ranks: &Ranks) -> Result<String> {
    pretty(&json!({
        "by_percent": ranks.by_percent,
        "measure": ranks.measure.in_words(),
        "without_effect": ranks.without_effect,
        "values": ranks.rows.iter().map(|row| json!({
            "path": row.number.path,
            "in_words": row.name,
            "value_si": row.number.value,
            "unit": row.number.unit,
            "lowered_percent": row.lowered_percent,
            "raised_percent": row.raised_percent,
        })).collect::<Vec<_>>(),
        "cannot_be_changed": ranks.undone.iter().map(|(number, error)| json!({
            "path": number.path, "reason": error.to_string(),
        })).collect::<Vec<_>>(),
    }))
}
