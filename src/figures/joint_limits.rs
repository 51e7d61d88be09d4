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
use std::ops::Range;

/// Where each joint limits a lift.
#[must_use]
pub fn joint_limits(lifter: &str, study: &Study, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let series = moving_joints(study)
        .into_iter()
        .enumerate()
        .map(|(number, joint)| {
            let gains = joint_gain(study, joint);
            let pieces = pieces(&gains);
            Series::new(joint, over.points(&gains), Role::Series(number)).in_pieces(pieces)
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

/// A step between neighbouring places from which on a gain jumps, % more load, and a gain that is none.
const JUMP_PERCENT: f64 = 0.04;
const NONE_PERCENT: f64 = 1.0e-6;

/// The stretches of a joint's gain between its jumps, without those in which it is nothing: a line along the axis would hide it.
fn pieces(gains: &[f64]) -> Vec<Range<usize>> {
    let mut pieces: Vec<Range<usize>> = Vec::new();
    let mut from = 0;
    for at in 1..=gains.len() {
        let goes_on = at < gains.len()
            && (gains[at] - gains[at - 1]).abs() < JUMP_PERCENT
            && (gains[at] < NONE_PERCENT) == (gains[at - 1] < NONE_PERCENT);
        if goes_on {
            continue;
        }
        if at - from > 1 && gains[from] >= NONE_PERCENT {
            pieces.push(from..at);
        }
        from = at;
    }
    // Nothing drawn at all would be read as every place drawn.
    if pieces.is_empty() {
        pieces.push(0..gains.len());
    }
    pieces
}
