//! The figures of one curve: class, ends, sticking point, flattening.

use crate::narrative::implements::setup_in_words;
use crate::narrative::places::forces_of;
use crate::study::{SetupStudy, Study};
use crate::units::System;
use serde::Serialize;

/// The summary object of the JSON output; fields without a load are left out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CurveSummary {
    /// Name of the movement.
    pub movement: String,
    /// Name of the lifter.
    pub lifter: String,
    /// The setup in a few words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setup: Option<String>,
    /// The setup item by item.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setup_items: Option<String>,
    /// Class of the strength curve.
    pub class: &'static str,
    /// Place of the greatest capacity.
    pub peak_range: f64,
    /// Capacity at the start over the greatest.
    pub start_ratio: f64,
    /// Capacity at the end over the greatest.
    pub end_ratio: f64,
    /// Place of the least capacity between the ends.
    pub trough_range: f64,
    /// That capacity over the level of the weaker end; below 0.85 the curve is u-shaped.
    pub trough_ratio: f64,
    /// Travel of the load, m; null for a sweep.
    pub range_of_motion_m: Option<f64>,
    /// What forces and torques are of: one side or both.
    pub forces_of: &'static str,
    /// Place of the greatest effort.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sticking_point_range: Option<f64>,
    /// The same as travel, m; null for a sweep.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sticking_point_m: Option<f64>,
    /// The same as angle of the joint that the movement is drawn over, deg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sticking_point_deg: Option<f64>,
    /// First and last place of the sticking region.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sticking_region_range: Option<[f64; 2]>,
    /// The greatest effort.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_effort: Option<f64>,
    /// The joint that gives way first at the sticking point.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limiting_joint: Option<&'static str>,
    /// Flattening against plain weight, %.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flattening_percent: Option<f64>,
}

/// The summary of a study for one of its setups, or for none.
#[must_use]
pub fn summary(study: &Study, setup: Option<&SetupStudy>) -> CurveSummary {
    let sticking = setup.and_then(|s| s.sticking);
    CurveSummary {
        movement: study.movement_name.clone(),
        lifter: study.lifter_name.clone(),
        setup: setup.map(|s| study.told(System::Metric).setup_name(s)),
        setup_items: setup.map(|s| setup_in_words(&s.demand.setup, System::Metric)),
        class: study.class.shape.word(),
        peak_range: study.class.peak_range,
        start_ratio: study.class.start_ratio,
        end_ratio: study.class.end_ratio,
        trough_range: study.class.trough_range,
        trough_ratio: study.class.trough_ratio,
        range_of_motion_m: study.range_of_motion_m(),
        forces_of: forces_of(study),
        sticking_point_range: sticking.map(|s| s.point_range),
        sticking_point_m: sticking.and_then(|s| {
            study
                .range_of_motion_m()
                .map(|_| study.axis_value(s.point_range) / 100.0)
        }),
        sticking_point_deg: sticking.map(|s| study.drawn_angle_deg(s.point_range)),
        sticking_region_range: sticking.map(|s| [s.from_range, s.to_range]),
        max_effort: sticking.map(|s| s.max_effort),
        limiting_joint: setup.and_then(|s| s.limiting).map(|j| study.joint(j)),
        flattening_percent: setup.and_then(|s| s.flattening_percent),
    }
}
