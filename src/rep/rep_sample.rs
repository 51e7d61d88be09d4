//! What is told of a moment of a repetition, and of its end.
//!
//! In: the motion, in the units of the movement. Out: plain data for tables, figures and the sticking region.

use super::moment::Phase;
use crate::anatomy::Dof;

/// One moment of a repetition. Speeds and forces are along the path of the load (m/s, N) or, in a
/// movement measured in torque, about its joint (rad/s, N·m).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RepSample {
    /// Time since the start of the repetition, s.
    pub time_s: f64,
    /// Lowering, pause or lifting.
    pub phase: Phase,
    /// Place in the range.
    pub range: f64,
    /// Path since the bottom of the movement, m (or angle since then, rad).
    pub position: f64,
    /// Angle of the joint that the movement is drawn over, rad.
    pub angle_rad: f64,
    /// Speed, upward positive.
    pub velocity: f64,
    /// Acceleration, upward positive.
    pub acceleration: f64,
    /// Force between lifter and load along the path (or torque about the joint).
    pub force: f64,
    /// What the load asks for when it is not sped up.
    pub demand: f64,
    /// What full activation holds at this place and speed, without enhancement.
    pub capacity: f64,
    /// Force over capacity.
    pub effort: f64,
    /// Activation.
    pub activation: f64,
    /// Activation of the muscles that hold the load back at the end of a fast lift.
    pub held_back: f64,
    /// Extra force after lengthening, as a share.
    pub enhancement: f64,
    /// Share of the fresh strength that the repetition has spent so far.
    pub spent: f64,
    /// Joint that limits.
    pub limiting: Dof,
    /// Kinetic energy of limbs and load, J.
    pub kinetic_j: f64,
    /// Net work of muscles, limbs' weight and load since the lift began, J.
    pub work_j: f64,
}

/// How a repetition ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RepEnd {
    /// Lifted to the end of the range.
    Lockout,
    /// The load stopped at this place on the way up.
    Stalled {
        /// Place in the range.
        range: f64,
        /// Path since the bottom, m (or angle, rad).
        position: f64,
    },
    /// Thrown to the end of the range, where full effort does not hold it: no lift.
    NotHeld {
        /// Place in the range.
        range: f64,
        /// Path since the bottom, m (or angle, rad).
        position: f64,
    },
    /// The load got away from the lifter in lowering, at this place: spotters take it.
    LostInLowering {
        /// Place in the range.
        range: f64,
        /// Path since the bottom, m (or angle, rad).
        position: f64,
    },
    /// Lowered under control and handed over to the spotters at the bottom.
    HandedOver,
}
