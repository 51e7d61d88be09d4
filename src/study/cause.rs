//! Why a changed value changed a curve: arms, fibre lengths, forces and levers at three places.
//!
//! In: the studies before and after. Out: [`Cause`]s with figures.

use super::Study;
use crate::capacity::{Held, plain_direction};
use crate::movement::Measure;

/// What happened at one place of the range, and through what, at the joint that gives way first.
///
/// ```text
/// λ = (r̄·F + rest)/h      ln(λ′/λ) = ln(r̄′/r̄) + ln(F′/F) − ln(h′/h) + rest
/// ```
/// | symbol | meaning                                                              | unit |
/// | ------ | -------------------------------------------------------------------- | ---- |
/// | `λ`    | capacity                                                             | N, N·m |
/// | `F`    | summed force of the muscles that lift at the joint                   | N    |
/// | `r̄`    | arm at which that force makes their torque                           | m    |
/// | `h`    | lever of the outside forces: torque of load and reactions about the joint per unit of capacity (1 where capacity is a torque) | m |
/// | `rest` | limb weight, passive joint, antagonists                              | –    |
///
/// **Source.** Balance of torques at one joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Cause {
    /// Where.
    pub spot: Spot,
    /// Place of the range.
    pub range: f64,
    /// Capacity after over before, as a logarithm.
    pub capacity_log: f64,
    /// The part of it that longer or shorter moment arms make.
    pub arm_log: f64,
    /// The part that more or less muscle force makes.
    pub force_log: f64,
    /// The part that the lever of load and reactions makes.
    pub lever_log: f64,
    /// What is left: limb weight, passive joint, antagonists.
    pub rest_log: f64,
    /// Mean fibre length of those muscles before and after, over the optimal length.
    pub fibre_norm: [f64; 2],
    /// The joint that gives way first, before and after.
    pub joints: [&'static str; 2],
    /// Whether it is the same coordinate that gives way, so that the parts explain the whole.
    pub is_same_limit: bool,
}

/// A rest larger than this, and than twice the change, means that joints share the limit (assumed).
const SHARED: f64 = 0.04;

/// Where a change is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// The start of the range.
    Start,
    /// The greatest capacity.
    Peak,
    /// The greatest effort.
    Hardest,
    /// Halfway, where neither peak nor hardest place lies between the ends.
    Middle,
    /// The end of the range.
    End,
}

/// The causes at start, peak or hardest place, and end.
#[must_use]
pub fn causes(before: &Study, after: &Study) -> Vec<Cause> {
    places(before)
        .into_iter()
        .filter_map(|(spot, range)| cause(before, after, spot, range))
        .collect()
}

/// Start, the place between that matters most, end.
fn places(study: &Study) -> Vec<(Spot, f64)> {
    let between = |range: f64| range > 0.1 && range < 0.9;
    let sticking = study
        .setups
        .first()
        .and_then(|s| s.sticking)
        .map(|s| s.point_range);
    let mut places = vec![(Spot::Start, 0.0)];
    if between(study.class.peak_range) {
        places.push((Spot::Peak, study.class.peak_range));
    } else if let Some(range) = sticking.filter(|range| between(*range)) {
        places.push((Spot::Hardest, range));
    } else {
        places.push((Spot::Middle, 0.5));
    }
    places.push((Spot::End, 1.0));
    places
}

/// Torque, force and fibre length of the muscles that lift at a joint.
struct LiftingMuscles {
    torque_nm: f64,
    force_n: f64,
    fibre_norm: f64,
}

fn lifting(held: &Held, joint: usize) -> LiftingMuscles {
    let way = held.muscle_torques_nm[joint].signum();
    let mut sum = LiftingMuscles {
        torque_nm: 0.0,
        force_n: 0.0,
        fibre_norm: 0.0,
    };
    for (muscle, activation) in held.muscles.iter().zip(&held.activations) {
        let force_n = muscle.passive_n + activation * muscle.active_n;
        let torque_nm = way * muscle.arms_m[joint] * force_n;
        if torque_nm > 0.0 {
            sum.torque_nm += torque_nm;
            sum.force_n += force_n;
            // Weighed by torque, so that the length told is that of the muscles that matter.
            sum.fibre_norm += torque_nm * muscle.state.length_norm;
        }
    }
    sum.fibre_norm /= sum.torque_nm.max(1.0e-9);
    sum
}

/// Lever of load and reactions together at a joint, m; 1 where capacity is a torque.
fn lever(study: &Study, index: usize, joint: usize) -> f64 {
    if study.range.measure == Measure::Torque {
        return 1.0;
    }
    let (pose, held) = (&study.range.poses[index], &study.capacity.held[index]);
    let way = plain_direction(study.range.carrier);
    let column = pose.load_jacobian[joint];
    let load_nm =
        held.capacity / study.range.sides.count() * (column.x * way.x_n + column.z * way.z_n);
    let reactions = pose.reactions.iter().zip(&held.reactions);
    let reactions_nm: f64 = reactions.map(|(r, value)| r.column[joint] * value).sum();
    (load_nm + reactions_nm).abs() / held.capacity
}

fn cause(before: &Study, after: &Study, spot: Spot, range: f64) -> Option<Cause> {
    let index = |study: &Study| {
        let last = study.range.poses.len() - 1;
        (range * last as f64).round() as usize
    };
    let (old, new) = (
        &before.capacity.held[index(before)],
        &after.capacity.held[index(after)],
    );
    let joint = old.limiting;
    let (was, is) = (lifting(old, joint), lifting(new, joint));
    let capacity_log = log_ratio(old.capacity, new.capacity)?;
    let arm_log = log_ratio(was.torque_nm / was.force_n, is.torque_nm / is.force_n)?;
    let force_log = log_ratio(was.force_n, is.force_n)?;
    let lever_log = -log_ratio(
        lever(before, index(before), joint),
        lever(after, index(after), joint),
    )?;
    Some(Cause {
        spot,
        range,
        capacity_log,
        arm_log,
        force_log,
        lever_log,
        rest_log: capacity_log - arm_log - force_log - lever_log,
        fibre_norm: [was.fibre_norm, is.fibre_norm],
        joints: [before.joint(joint), after.joint(new.limiting)],
        is_same_limit: joint == new.limiting,
    })
}

fn log_ratio(before: f64, after: f64) -> Option<f64> {
    let ratio = after / before;
    (ratio.is_finite() && ratio > 0.0).then(|| ratio.ln())
}

impl Cause {
    /// Whether the parts explain the whole: the same joint gives way, and no other one shares the limit.
    /// Where two share it, parts at one of them are large, cancel and explain nothing.
    #[must_use]
    pub fn is_explained(&self) -> bool {
        self.is_same_limit && self.rest_log.abs() <= SHARED.max(2.0 * self.capacity_log.abs())
    }
}
