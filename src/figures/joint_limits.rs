//! Limits by joint: how much more a lift would hold with a little more strength of each joint, at every place.
//!
//! In: a lift of several joints. Out: a figure whose title says which joint's strength counts most where.

use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::axis_words::MORE_LOAD;
use crate::narrative::limit_words::{LimitsSeen, limit_words};
use crate::plot::{Axis, Extent, LineChart, Panel, Role, Series};
use crate::study::{Study, joint_gain, limited_stretches, moving_joints};
use crate::units::System;
use std::ops::Range;

/// Where each joint limits a lift.
#[must_use]
pub fn joint_limits(lifter: &str, study: &Study, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let stretches = limited_stretches(study);
    let joints = moving_joints(study);
    let gains: Vec<Vec<f64>> = joints
        .iter()
        .map(|joint| joint_gain(study, joint))
        .collect();
    let steps: Vec<Vec<usize>> = gains.iter().map(|gains| steps(gains)).collect();
    let lines = joints.iter().zip(&gains).enumerate();
    let mut series: Vec<Series> = lines
        .map(|(number, (joint, gains))| {
            // A joint that limits only in stretches too short to be seen is told, not drawn.
            let least = match stretches.elsewhere.contains(joint) {
                true => gains.len() / 20,
                false => 1,
            };
            Series::new(*joint, over.points(gains), Role::Series(number))
                .in_pieces(pieces(gains, least))
                .doubted(over.hollow())
        })
        .collect();
    for (gains, steps) in gains.iter().zip(&steps) {
        let points = over.points(gains);
        series.extend(steps.iter().map(|at| {
            let ends = vec![points[*at - 1], points[*at]];
            Series::new("", ends, Role::Muted)
        }));
    }
    let greatest_percent = gains.iter().flatten().copied().fold(0.0, f64::max);
    let top = (greatest_percent / TOP_STEP).ceil().max(1.0) * TOP_STEP;
    let axis = Axis::new(MORE_LOAD, "%").reaching(Extent::FromZeroTo(top));
    let chart = LineChart {
        poses: over.poses(None),
        ..LineChart::new(over.axis(), vec![Panel::new(axis, series)])
    };
    let seen = LimitsSeen {
        greatest_percent,
        has_steps: steps.iter().any(|steps| !steps.is_empty()),
    };
    Sheet::lines(&limit_words(lifter, study, &stretches, seen, units), chart)
}

/// Steps in which the axis of gains ends, %.
const TOP_STEP: f64 = 0.5;

/// Samples at which a gain that stays one jumps.
fn steps(gains: &[f64]) -> Vec<usize> {
    let is_some = |at: usize| gains[at] >= NONE_PERCENT;
    let jumps = |at: &usize| (gains[*at] - gains[at - 1]).abs() >= JUMP_PERCENT;
    (1..gains.len())
        .filter(|at| is_some(*at) && is_some(at - 1) && jumps(at))
        .collect()
}

/// A step between neighbouring places from which on a gain jumps, % more load, and a gain that is none.
const JUMP_PERCENT: f64 = 0.04;
const NONE_PERCENT: f64 = 1.0e-6;

/// The stretches of a joint's gain between its jumps, of more than the least number of samples, without those in which it is
/// nothing: a line along the axis would hide it.
fn pieces(gains: &[f64], least: usize) -> Vec<Range<usize>> {
    let mut pieces: Vec<Range<usize>> = Vec::new();
    let mut from = 0;
    for at in 1..=gains.len() {
        let goes_on = at < gains.len()
            && (gains[at] - gains[at - 1]).abs() < JUMP_PERCENT
            && (gains[at] < NONE_PERCENT) == (gains[at - 1] < NONE_PERCENT);
        if goes_on {
            continue;
        }
        if at - from > least && gains[from] >= NONE_PERCENT {
            pieces.push(from..at);
        }
        from = at;
    }
    // No piece at all would be read as every place drawn.
    if pieces.is_empty() {
        pieces.push(0..0);
    }
    pieces
}
