//! One sample of a curve as plain numbers with units in their names.

use super::detail::{Detail, detail};
use crate::movement::Measure;
use crate::study::{SetupStudy, Study};
use serde::Serialize;

/// One object of `samples`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sample {
    /// Position along the concentric phase.
    pub range: f64,
    /// Travel of the load, m; null for a sweep.
    pub position_m: Option<f64>,
    /// Angle of the joint that the movement is drawn over, deg.
    pub angle_deg: f64,
    /// Capacity, N.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_n: Option<f64>,
    /// Capacity, N·m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_nm: Option<f64>,
    /// Lower end of what capacity may be, N.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_low_n: Option<f64>,
    /// Upper end of what capacity may be, N.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_high_n: Option<f64>,
    /// Lower end of what capacity may be, N·m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_low_nm: Option<f64>,
    /// Upper end of what capacity may be, N·m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_high_nm: Option<f64>,
    /// Lower end of what the middle half of people holds, N.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_quarter_n: Option<f64>,
    /// Upper end of what the middle half of people holds, N.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_three_quarters_n: Option<f64>,
    /// Lower end of what the middle half of people holds, N·m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_quarter_nm: Option<f64>,
    /// Upper end of what the middle half of people holds, N·m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity_three_quarters_nm: Option<f64>,
    /// Demand, N.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub demand_n: Option<f64>,
    /// Demand, N·m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub demand_nm: Option<f64>,
    /// Demand on the way down, N.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub demand_lowering_n: Option<f64>,
    /// Effort.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub effort: Option<f64>,
    /// Joints, reactions and muscles.
    #[serde(flatten, skip_serializing_if = "Option::is_none")]
    pub detail: Option<Detail>,
}

/// All samples of a study for one of its setups, or for none.
#[must_use]
pub fn samples(study: &Study, setup: Option<&SetupStudy>, with_detail: bool) -> Vec<Sample> {
    let indices = 0..study.range.poses.len();
    indices
        .map(|index| sample(study, setup, index, with_detail))
        .collect()
}

/// One sample.
#[must_use]
pub fn sample(
    study: &Study,
    setup: Option<&SetupStudy>,
    index: usize,
    with_detail: bool,
) -> Sample {
    let pose = &study.range.poses[index];
    let capacity = study.capacity.held[index].capacity;
    let is_force = study.range.measure == Measure::Force;
    let forces = study.people.as_ref().map(|people| &people.forces);
    let end = |side: usize| {
        let of_people = forces.map(|forces| [&forces.low, &forces.high][side]);
        let of_versions = study.band.as_ref().map(|band| &band[side]);
        of_versions.or(of_people).map(|ends| ends[index])
    };
    let half = |side: usize| {
        let ends = forces.map(|forces| [&forces.quarter, &forces.three_quarters][side]);
        ends.map(|ends| ends[index])
    };
    let demand = setup.map(|s| s.values[index]);
    let force = |value: Option<f64>| value.filter(|_| is_force);
    let torque = |value: Option<f64>| value.filter(|_| !is_force);
    Sample {
        range: pose.load.range,
        position_m: is_force.then_some(pose.load.travel_m),
        angle_deg: study.drawn_angle_deg(pose.load.range),
        capacity_n: force(Some(capacity)),
        capacity_nm: torque(Some(capacity)),
        capacity_low_n: force(end(0)),
        capacity_high_n: force(end(1)),
        capacity_low_nm: torque(end(0)),
        capacity_high_nm: torque(end(1)),
        capacity_quarter_n: force(half(0)),
        capacity_three_quarters_n: force(half(1)),
        capacity_quarter_nm: torque(half(0)),
        capacity_three_quarters_nm: torque(half(1)),
        demand_n: force(demand),
        demand_nm: torque(demand),
        demand_lowering_n: force(setup.map(|s| s.demand.samples[index].down.along_n)),
        effort: setup.map(|s| s.effort[index]),
        detail: with_detail.then(|| detail(study, setup, index)),
    }
}
