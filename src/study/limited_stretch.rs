//! Stretches of a lift in which the strength of one joint counts most.
//!
//! In: a [`Study`]. Out: [`LimitedStretch`]es in order, and joints that count most only in shorter ones.

use super::muscles::joint_gain;
use super::question::Study;

/// A stretch of samples in which a joint's strength counts most.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LimitedStretch {
    /// The joint, and behind it those that count nearly as much.
    pub joints: Vec<&'static str>,
    /// Its first sample.
    pub from: usize,
    /// Its last sample.
    pub to: usize,
}

/// Where which joint's strength counts most.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LimitedStretches {
    /// Stretches in order, those shorter than a twentieth of the range taken into their neighbours.
    pub long: Vec<LimitedStretch>,
    /// Joints that count most in no long stretch, but in shorter ones.
    pub elsewhere: Vec<&'static str>,
}

/// A joint counts nearly as much as the first from this share of its gain on, in the mean over the stretch (assumed).
const NEARLY: f64 = 0.8;

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
        LimitedStretch {
            joints: std::iter::once(first)
                .chain(near)
                .map(|joint| joints[joint])
                .collect(),
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
