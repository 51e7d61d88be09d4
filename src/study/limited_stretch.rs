//! Stretches of a lift in which the strength of one joint counts most.
//!
//! In: a [`Study`]. Out: [`LimitedStretch`]es in order, and joints that count most only in shorter ones.

use super::muscles::joint_gain;
use super::question::Study;

/// A stretch of samples in which a joint's strength counts most.
#[derive(Debug, Clone, PartialEq)]
pub struct LimitedStretch {
    /// The joint, and behind it those that count nearly as much.
    pub joints: Vec<&'static str>,
    /// How much more is held in the mean over the stretch with 1 % more strength of each of these, %.
    pub gains: Vec<f64>,
    /// Whether more strength of any other joint helps nothing there.
    pub is_alone: bool,
    /// Its first sample.
    pub from: usize,
    /// Its last sample.
    pub to: usize,
}

/// Where which joint's strength counts most.
#[derive(Debug, Clone, PartialEq)]
pub struct LimitedStretches {
    /// Stretches in order, those shorter than a twentieth of the range taken into their neighbours.
    pub long: Vec<LimitedStretch>,
    /// Joints that count most in no long stretch, but in shorter ones.
    pub elsewhere: Vec<&'static str>,
}

/// A joint counts nearly as much as the first from this share of its gain on, in the mean over the stretch (assumed).
const NEARLY: f64 = 0.8;

/// A joint is alone from this share of all gains on: places where limits change are taken into their neighbours (assumed).
const ALONE: f64 = 0.98;

/// A gain that is none, %.
const NONE_PERCENT: f64 = 1.0e-6;

/// Whether a joint's coordinate limits the lift, one a sample: with more moment there more would be held.
#[must_use]
pub fn limits_at(study: &Study, coordinate: usize) -> Vec<bool> {
    let held = study.capacity.held.iter();
    held.map(|held| {
        let gain = held.duals[coordinate] * held.muscle_torques_nm[coordinate];
        held.capacity > 0.0 && gain.abs() / held.capacity > NONE_PERCENT
    })
    .collect()
}

/// The joints of a lift, each once.
#[must_use]
pub fn moving_joints(study: &Study) -> Vec<&'static str> {
    let mut joints: Vec<&str> = Vec::new();
    for coordinate in 0..study.range.poses[0].coordinates.len() {
        let joint = study.joint(coordinate);
        if !joints.contains(&joint) {
            joints.push(joint);
        }
    }
    joints
}

/// Stretches in which 1 % more strength of one joint gains most.
#[must_use]
pub fn limited_stretches(study: &Study) -> LimitedStretches {
    let joints = moving_joints(study);
    let gains: Vec<Vec<f64>> = joints.iter().map(|j| joint_gain(study, j)).collect();
    let count = study.capacity.held.len();
    let first_at = |at: usize| {
        let most = |a: &usize, b: &usize| gains[*a][at].total_cmp(&gains[*b][at]);
        (0..joints.len()).rev().max_by(most).unwrap_or(0)
    };
    let single = (0..count).map(|at| (first_at(at), at, at));
    let every = joined(single);
    let long = joined(
        every
            .iter()
            .copied()
            .filter(|stretch| stretch.2 - stretch.1 >= count / 20),
    );
    let told = |(first, from, to): (usize, usize, usize)| {
        let sum = |joint: usize| gains[joint][from..=to].iter().sum::<f64>();
        let others = (0..joints.len()).filter(|other| *other != first);
        let near = others.filter(|other| sum(*other) >= NEARLY * sum(first));
        let counted: Vec<usize> = std::iter::once(first).chain(near).collect();
        let samples = (to - from + 1) as f64;
        let all: f64 = (0..joints.len()).map(sum).sum();
        LimitedStretch {
            joints: counted.iter().map(|joint| joints[*joint]).collect(),
            gains: counted.iter().map(|joint| sum(*joint) / samples).collect(),
            is_alone: sum(first) >= ALONE * all,
            from,
            to,
        }
    };
    let long: Vec<LimitedStretch> = long.into_iter().map(told).collect();
    let is_told = |joint: &&str| long.iter().any(|stretch| stretch.joints.contains(joint));
    let leads = |joint: &usize| every.iter().any(|stretch| stretch.0 == *joint);
    let elsewhere = (0..joints.len()).filter(leads).map(|joint| joints[joint]);
    let elsewhere = elsewhere.filter(|joint| !is_told(joint)).collect();
    LimitedStretches { long, elsewhere }
}

/// The joints that limit a lift at a sample, the one whose strength counts most first: one where its gain is nearly all of it, else
/// all that share the limit.
#[must_use]
pub fn limiting_joints(study: &Study, sample: usize) -> Vec<&'static str> {
    let joints = moving_joints(study).into_iter();
    let gain = |joint: &'static str| (joint, joint_gain(study, joint)[sample]);
    let mut gains: Vec<(&str, f64)> = joints.map(gain).collect();
    gains.sort_by(|a, b| b.1.total_cmp(&a.1));
    let all: f64 = gains.iter().map(|gain| gain.1).sum();
    let first = gains.first().map_or(0.0, |gain| gain.1);
    if all <= 0.0 {
        return Vec::new();
    }
    let least = match first >= ALONE * all {
        true => first,
        false => (1.0 - ALONE) * all,
    };
    let sharing = gains.into_iter().filter(|gain| gain.1 >= least);
    sharing.map(|gain| gain.0).collect()
}

/// Neighbours of one joint as one stretch: the joint, first and last sample.
fn joined(stretches: impl Iterator<Item = (usize, usize, usize)>) -> Vec<(usize, usize, usize)> {
    let mut joined: Vec<(usize, usize, usize)> = Vec::new();
    for stretch in stretches {
        match joined.last_mut() {
            Some(last) if last.0 == stretch.0 => last.2 = stretch.2,
            _ => joined.push(stretch),
        }
    }
    joined
}
