//! The maximum of a lift as text, CSV and JSON.
//!
//! In: a [`MaximumStudy`]. Out: text; masses of CSV and JSON in kg, velocities in m/s or rad/s.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::table::table;
use crate::movement::Measure;
use crate::narrative::maximum_words::{VELOCITY_HEADS, maximum_sentences, velocity_cells};
use crate::rep::LoadPace;
use crate::study::{MaximumStudy, USUAL_STEP_KG};
use crate::units::System;
use serde::Serialize;

/// A maximum as text; `own_scale` is the factor on strength that the lifter's file has already.
#[must_use]
pub fn maximum_text(found: &MaximumStudy, own_scale: f64, units: System) -> String {
    let mut text = maximum_sentences(found, own_scale, units).join("\n") + "\n";
    if let Some(profile) = &found.profile {
        let rows = profile.rows.iter();
        let rows = rows.map(|row| velocity_cells(row, found.measure, units));
        text.push('\n');
        text += &table(&VELOCITY_HEADS, rows.collect(), 0);
    }
    text
}

#[derive(Serialize)]
struct MaximumJson<'a> {
    summary: MaximumSummary<'a>,
    load_velocity: Option<Vec<VelocityRow>>,
}

#[derive(Serialize)]
struct MaximumSummary<'a> {
    movement: &'a str,
    lifter: &'a str,
    one_rm_kg: f64,
    loadable_kg: f64,
    not_lifted_kg: f64,
    eccentric_one_rm_kg: Option<f64>,
    strength_factor: Option<f64>,
    strength_scale: Option<f64>,
    step_kg: f64,
    default_step_kg: f64,
}

#[derive(Serialize)]
struct VelocityRow {
    share: f64,
    load_kg: f64,
    mean_velocity: f64,
    mean_propulsive_velocity: f64,
    velocity_unit: &'static str,
}

/// A maximum as JSON.
#[must_use]
pub fn maximum_json(found: &MaximumStudy, own_scale: f64) -> String {
    let rows = |rows: &[LoadPace]| {
        rows.iter()
            .map(|row| velocity_row(row, found.measure))
            .collect()
    };
    pretty(&MaximumJson {
        summary: MaximumSummary {
            movement: &found.movement_name,
            lifter: &found.lifter_name,
            one_rm_kg: found.one_rm.load.as_kg(),
            loadable_kg: found.loadable.load.as_kg(),
            not_lifted_kg: found.loadable.failed.as_kg(),
            eccentric_one_rm_kg: found.eccentric.map(|max| max.load.as_kg()),
            strength_factor: found.factor,
            strength_scale: found.factor.map(|factor| factor * own_scale),
            step_kg: (found.loadable.failed - found.loadable.load).as_kg(),
            default_step_kg: USUAL_STEP_KG,
        },
        load_velocity: found.profile.as_ref().map(|profile| rows(&profile.rows)),
    })
}

fn velocity_row(row: &LoadPace, measure: Measure) -> VelocityRow {
    VelocityRow {
        share: row.share,
        load_kg: row.load.as_kg(),
        mean_velocity: row.mean_velocity,
        mean_propulsive_velocity: row.mean_propulsive_velocity,
        velocity_unit: velocity_unit(measure),
    }
}

/// The unit of velocities in CSV and JSON.
pub(super) const fn velocity_unit(measure: Measure) -> &'static str {
    match measure {
        Measure::Force => "m/s",
        Measure::Torque => "rad/s",
    }
}

/// A maximum as CSV: a row a load, the maximum alone without velocities.
#[must_use]
pub fn maximum_csv(found: &MaximumStudy) -> String {
    let header = [
        "share",
        "load_kg",
        "mean_velocity",
        "mean_propulsive_velocity",
    ];
    let row = |row: &LoadPace| {
        vec![
            row.share.to_string(),
            row.load.as_kg().to_string(),
            row.mean_velocity.to_string(),
            row.mean_propulsive_velocity.to_string(),
        ]
    };
    let rows: Vec<Vec<String>> = match &found.profile {
        Some(profile) => profile.rows.iter().map(row).collect(),
        None => vec![vec![
            "1".to_owned(),
            found.one_rm.load.as_kg().to_string(),
            String::new(),
            String::new(),
        ]],
    };
    rows_to_csv(&header, rows.into_iter())
}
