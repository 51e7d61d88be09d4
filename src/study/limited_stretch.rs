//! Stretches of a lift in which one joint gives way first.
//!
//! In: a [`Study`]. Out: [`LimitedStretch`]es in order.

use super::question::Study;

/// A stretch of samples in which one joint gives way first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LimitedStretch {
    /// The joint.
    pub joint: &'static str,
    /// Its first sample.
    pub from: usize,
    /// Its last sample.
    pub to: usize,
}

/// Stretches in order; ones shorter than a twentieth of the range are taken into their neighbour.
#[must_use]
pub fn limited_stretches(study: &Study) -> Vec<LimitedStretch> {
    let held = &study.capacity.held;
    let least = held.len() / 20;
    let single = held.iter().enumerate().map(|(index, pose)| LimitedStretch {
        joint: study.joint(pose.limiting),
        from: index,
        to: index,
    });
    let long = joined(single).into_iter();
    joined(long.filter(|stretch| stretch.to - stretch.from >= least))
}

/// Neighbours of one joint as one stretch.
fn joined(stretches: impl Iterator<Item = LimitedStretch>) -> Vec<LimitedStretch> {
    let mut joined: Vec<LimitedStretch> = Vec::new();
    for stretch in stretches {
        match joined.last_mut() {
            Some(last) if last.joint == stretch.joint => last.to = stretch.to,
            _ => joined.push(stretch),
        }
    }
    joined
}
