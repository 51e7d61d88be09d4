//! Limits by joint: how much of each joint's strength the heaviest load takes at every place.
//!
//! In: a lift of several joints. Out: a figure whose title says which joint gives way where.

use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::axis_words::STRENGTH_IN_USE;
use crate::narrative::limit_words::limit_words;
use crate::plot::{Axis, Extent, LineChart, Panel, Role, Series};
use crate::study::{Study, joint_use, limited_stretches};
use crate::units::System;

/// Where each joint limits a lift.
#[must_use]
pub fn joint_limits(lifter: &str, study: &Study, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let joints = 0..study.range.poses[0].coordinates.len();
    let series = joints.map(|joint| {
        let used: Vec<f64> = joint_use(study, joint).iter().map(|u| 100.0 * u).collect();
        Series::new(study.joint(joint), over.points(&used), Role::Series(joint))
    });
    let axis = Axis::new(STRENGTH_IN_USE, "%").reaching(Extent::Exactly([0.0, 108.0]));
    let chart = LineChart {
        poses: over.poses(None),
        ..LineChart::new(over.axis(), vec![Panel::new(axis, series.collect())])
    };
    Sheet::lines(
        &limit_words(lifter, study, &limited_stretches(study)),
        chart,
    )
}
