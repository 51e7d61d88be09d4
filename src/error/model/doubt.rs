//! What is accepted of a model and yet unlikely.
//!
//! In: values that no rule forbids. Out: [`Doubt`].

use crate::error::OutOfBounds;

/// What is accepted of a model and yet unlikely.
#[derive(Debug, Clone, PartialEq)]
pub enum Doubt {
    /// A value outside what one meets; the ends are of that.
    Unlikely(OutOfBounds),
    /// A moment arm longer than those that are measured.
    LongArm {
        /// The arm, cm.
        arm_cm: f64,
        /// The joint's angle, degrees.
        angle_deg: f64,
        /// The longest that one meets, cm.
        most_cm: f64,
    },
    /// A lifter without any strength factor: each group counts as in the muscle table.
    NoStrength,
    /// Fibres that leave the lengths of living ones on the way of a lift.
    Fibres {
        /// The lift.
        movement: String,
        /// The length farthest out, with the usual range.
        length: OutOfBounds,
    },
    /// Body mass over the square of the height.
    MassIndex(OutOfBounds),
    /// Readings of a band that go badly with the law of rubber.
    Misfit {
        /// Root mean square of reading minus law over the largest reading, %.
        percent: f64,
    },
    /// A length that is odd for the height.
    Proportion {
        /// The length, cm.
        length_cm: f64,
        /// The usual length at that height, cm.
        usual_cm: f64,
        /// The length over the usual one, with what one meets.
        ratio: OutOfBounds,
    },
}
