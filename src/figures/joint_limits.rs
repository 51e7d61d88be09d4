//! Limits by joint: how much more a lift would hold with a little more strength of each joint, at every place.
//!
//! In: a lift of several joints. Out: a figure whose title says which joint's strength counts most where.

use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::axis_words::MORE_LOAD;
use crate::narrative::limit_words::limit_words;
use crate::plot::{Axis, LineChart, Panel, Role, Series};
use crate::study::{Study, joint_gain, limited_stretches, moving_joints};
use crate::units::System;

/// Where each joint limits a lift.
#[must_use]
pub fn joint_limits(lifter: &str, study: &Study, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let series = moving_joints(study).into_iter().enumerate().map(|(number, joint)| {
        let points = over.points(&joint_gain(study, joint));
        Series::new(joint, points, Role::Series(number))
    });
    let panel = Panel::new(Axis::new(MORE_LOAD, "%"), series.collect());
    let chart = LineChart {
        poses: over.poses(None),
        ..LineChart::new(over.axis(), vec![panel])
    };
    Sheet::lines(
        &limit_words(lifter, study, &limited_stretches(study), units),
        chart,
    )
}
