//! Rules for fibres on the way of a lift: lengths that tear them, lengths that no living ones are known at.
//!
//! In: a finished lifter, a movement. Out: the length farthest out of each muscle, where it is odd.

use crate::anatomy::Lifter;
use crate::bounds::bounds;
use crate::capacity::Acting;
use crate::error::{BrokenRule, Doubt, Fault, MuscleRule, OutOfBounds};
use crate::movement::{Movement, trace};

/// A muscle whose fibres are of an odd length somewhere on the way of a lift.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct OddFibres {
    /// The muscle.
    pub muscle: String,
    /// The rule or the doubt.
    pub broken: BrokenRule<Fault>,
}

/// Poses of a lift that are looked at.
const POSES: usize = 5;

/// The muscles that are odd in a lift; none where the limbs cannot do it, which others tell.
///
/// The lengths are those of relaxed fibres: activity stretches the tendon and shortens them.
pub(super) fn odd_fibres(lifter: &Lifter, movement: &Movement) -> Vec<OddFibres> {
    let Ok(range) = trace(movement, lifter, POSES) else {
        return Vec::new();
    };
    let Ok(acting) = Acting::of(lifter, &range.poses) else {
        return Vec::new();
    };
    let bound = &bounds().relaxed_length;
    let muscles = acting.muscles.iter();
    muscles
        .filter_map(|muscle| {
            let lengths = range.poses.iter().map(|pose| {
                let placed = muscle.placed(&acting.curves, pose);
                placed.relaxed_length()
            });
            let lengths: Vec<f64> = lengths.collect();
            let wrong = lengths.iter().filter_map(|length| bound.outside(*length));
            let unlikely = lengths.iter().filter_map(|length| bound.unlikely(*length));
            let movement = || movement.title.clone();
            let broken = match (farthest(wrong), farthest(unlikely)) {
                (Some(length), _) => BrokenRule::Muscle(MuscleRule::Torn {
                    movement: movement(),
                    length,
                }),
                (None, Some(length)) => BrokenRule::Doubt(Doubt::Fibres {
                    movement: movement(),
                    length,
                }),
                (None, None) => return None,
            };
            Some(OddFibres {
                muscle: muscle.name.clone(),
                broken,
            })
        })
        .collect()
}

/// The length farthest out, as a ratio.
fn farthest(lengths: impl Iterator<Item = OutOfBounds>) -> Option<OutOfBounds> {
    let out = |length: &OutOfBounds| {
        (length.value / length.most).max(length.least / length.value.max(1.0e-9))
    };
    lengths.max_by(|a, b| out(a).total_cmp(&out(b)))
}
