//! The maximum of a lift as text, CSV and JSON.
//!
//! In: a [`MaximumStudy`]. Out: text; masses of CSV and JSON in kg, velocities in m/s or rad/s.

use super::json::pretty;
use super::table::table;
use super::tidy_table::{Cells, TidyTable};
use crate::movement::Measure;
use crate::narrative::maximum_words::{
    OwnStrength, VELOCITY_HEADS, maximum_cautions, maximum_sentences, velocity_cells,
};
use crate::rep::LoadPace;
use crate::study::{MaximumStudy, USUAL_STEP_KG};
use crate::units::System;
use serde::Serialize;

/// A maximum as text.
#[must_use]
pub fn maximum_text(found: &MaximumStudy, own: OwnStrength, units: System) -> String {
    let mut text = maximum_sentences(found, own, units).join("\n") + "\n";
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
    #[serde(skip_serializing_if = "Vec::is_empty")]
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct MaximumSummary<'a> {
    movement: &'a str,
    lifter: &'a str,
    one_rm_kg: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    one_rm_low_kg: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    one_rm_high_kg: Option<f64>,
    loadable_kg: f64,
    not_lifted_kg: f64,
    exact_one_rm_velocity_m_s: Option<f64>,
    exact_one_rm_velocity_rad_s: Option<f64>,
    loadable_velocity_m_s: Option<f64>,
    loadable_velocity_rad_s: Option<f64>,
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
    #[serde(flatten)]
    velocities: MeanVelocities,
}

/// Mean velocities of a lift under the names that tell their units.
#[derive(Debug, Serialize)]
#[serde(untagged)]
pub(super) enum MeanVelocities {
    /// Of the load.
    Way {
        mean_velocity_m_s: f64,
        mean_propulsive_velocity_m_s: f64,
    },
    /// Of the joint.
    Joint {
        mean_velocity_rad_s: f64,
        mean_propulsive_velocity_rad_s: f64,
    },
}

impl MeanVelocities {
    /// The mean, and that of the phase in which the load is driven.
    pub(super) const fn of([mean, propulsive]: [f64; 2], measure: Measure) -> Self {
        match measure {
            Measure::Force => Self::Way {
                mean_velocity_m_s: mean,
                mean_propulsive_velocity_m_s: propulsive,
            },
            Measure::Torque => Self::Joint {
                mean_velocity_rad_s: mean,
                mean_propulsive_velocity_rad_s: propulsive,
            },
        }
    }
}

/// A maximum as JSON.
#[must_use]
pub fn maximum_json(found: &MaximumStudy, own_scale: f64) -> String {
    pretty(&MaximumJson {
        summary: maximum_summary(found, own_scale),
        load_velocity: velocity_rows(found),
        cautions: maximum_cautions(found, System::Metric),
    })
}

fn maximum_summary(found: &MaximumStudy, own_scale: f64) -> MaximumSummary<'_> {
    let of = |measure: Measure| found.pace.filter(|_| found.measure == measure);
    let (linear, angular) = (of(Measure::Force), of(Measure::Torque));
    MaximumSummary {
        movement: &found.movement_name,
        lifter: &found.lifter_name,
        one_rm_kg: found.one_rm.load.as_kg(),
        one_rm_low_kg: found.interval.map(|interval| interval.low.as_kg()),
        one_rm_high_kg: found.interval.map(|interval| interval.high.as_kg()),
        loadable_kg: found.loadable.load.as_kg(),
        not_lifted_kg: found.loadable.failed.as_kg(),
        exact_one_rm_velocity_m_s: linear.map(|pace| pace.exact),
        exact_one_rm_velocity_rad_s: angular.map(|pace| pace.exact),
        loadable_velocity_m_s: linear.map(|pace| pace.in_steps),
        loadable_velocity_rad_s: angular.map(|pace| pace.in_steps),
        eccentric_one_rm_kg: found.eccentric.map(|max| max.load.as_kg()),
        strength_factor: found.factor,
        strength_scale: found.factor.map(|factor| factor * own_scale),
        step_kg: (found.loadable.failed - found.loadable.load).as_kg(),
        default_step_kg: USUAL_STEP_KG,
    }
}

fn velocity_rows(found: &MaximumStudy) -> Option<Vec<VelocityRow>> {
    let profile = found.profile.as_ref()?;
    let rows = profile.rows.iter();
    Some(rows.map(|row| velocity_row(row, found.measure)).collect())
}

fn velocity_row(row: &LoadPace, measure: Measure) -> VelocityRow {
    VelocityRow {
        share: row.share,
        load_kg: row.load.as_kg(),
        velocities: MeanVelocities::of([row.mean_velocity, row.mean_propulsive_velocity], measure),
    }
}

/// A maximum as a table: a row a load where velocities were asked for, else one row.
#[must_use]
pub fn maximum_data(found: &MaximumStudy, own_scale: f64) -> TidyTable {
    match velocity_rows(found) {
        Some(rows) => TidyTable::of(rows.iter().map(Cells::of)),
        None => TidyTable::of([Cells::of(&maximum_summary(found, own_scale))]),
    }
}
