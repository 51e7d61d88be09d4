//! Why a movement cannot be traced or posed: one enum a kind of path.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use super::LinksFault;
use crate::units::{Angle, Length};

/// The kinds of value that a technique parameter can have to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TechniqueKind {
    /// A length.
    Length,
    /// An angle.
    Angle,
    /// A length as a multiple of the breadth of the shoulders.
    OfShoulders,
    /// A plain number.
    Number,
    /// One of several words.
    Word,
    /// Left to the model.
    Free,
}

/// A value beside the range that the model accepts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outside<T> {
    /// The value.
    pub value: T,
    /// Smallest accepted value.
    pub least: T,
    /// Largest accepted value.
    pub most: T,
}

/// The value of a technique parameter that is outside what the model accepts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TechniqueRange {
    /// A length.
    Length(Outside<Length>),
    /// An angle.
    Angle(Outside<Angle>),
    /// A share or factor.
    Number(Outside<f64>),
}

/// What is wrong with a technique parameter.
#[derive(Debug, Clone, PartialEq)]
pub enum TechniqueFault {
    /// The movement has none of that name.
    Missing {
        /// Title of the movement.
        movement: String,
        /// The name.
        technique: String,
        /// The parameters that it has.
        known: Vec<String>,
    },
    /// It is of the wrong kind.
    Kind {
        /// Name of the parameter.
        technique: String,
        /// What it must be.
        expected: TechniqueKind,
    },
    /// Its word is none of those that are accepted.
    Word {
        /// Name of the parameter.
        technique: String,
        /// The word.
        word: String,
        /// The accepted words.
        known: Vec<String>,
    },
    /// Its value is outside what the model accepts.
    Outside {
        /// Name of the parameter.
        technique: String,
        /// The value and what is accepted.
        range: TechniqueRange,
        /// What the parameter means, from the movement's file.
        meaning: String,
    },
    /// It cannot be left free.
    NotFree {
        /// Name of the parameter.
        technique: &'static str,
    },
}

/// Why an arm does not reach.
#[derive(Debug, Clone, PartialEq)]
pub enum ArmFault {
    /// The word `Lockout` where it cannot stand.
    LockoutOnlyUp,
    /// The hand is farther out than the straight arm reaches.
    HandTooFarOut {
        /// How far out the hand is.
        out: Length,
        /// How far the arm reaches.
        reach: Length,
    },
    /// The arm cannot close the pose.
    CannotClose {
        /// Upper arm.
        upper_arm: Length,
        /// Forearm, elbow to grip.
        to_grip: Length,
        /// Distance of the hand from the shoulder.
        hand: Length,
    },
}

/// Why a stance cannot be taken.
#[derive(Debug, Clone, PartialEq)]
pub enum StanceFault {
    /// The bar would end no higher than it starts.
    NoWayUp {
        /// Height at the start.
        start: Length,
        /// Height at the end.
        end: Length,
    },
    /// The trunk cannot bring the bar over the foot.
    BarNotOverFoot {
        /// How far the hip is behind that place.
        hip_behind: Length,
        /// How far the bar sits from the hip.
        hip_to_bar: Length,
    },
    /// Thigh and trunk cannot close the pose.
    CannotClose {
        /// Where in the range.
        range: f64,
        /// Thigh.
        thigh: Length,
        /// Hip to bar.
        hip_to_bar: Length,
        /// Why not.
        why: LinksFault,
    },
}

/// Why a bridge cannot be made.
#[derive(Debug, Clone, PartialEq)]
pub enum BridgeFault {
    /// The feet do not reach the floor.
    FeetOffTheFloor {
        /// Knee angle.
        knee: Angle,
        /// Height of the bench.
        bench: Length,
    },
    /// The hips would end no higher than they start.
    NoWayUp {
        /// Height at the start.
        start: Length,
        /// Height at the end.
        end: Length,
    },
    /// The hips cannot sink as far below the bench.
    HipsTooLow {
        /// How far below.
        below: Length,
        /// How far they are from the bench.
        from_bench: Length,
    },
    /// The leg cannot close the pose.
    CannotClose {
        /// Where in the range.
        range: f64,
        /// Why not.
        why: LinksFault,
    },
}

/// Why a leg does not reach the plate.
#[derive(Debug, Clone, PartialEq)]
pub enum LegPressFault {
    /// The foot is higher on the plate than the bent leg reaches.
    FootTooHigh {
        /// Height of the ankle above the hip's line.
        above_hip: Length,
        /// How far the bent leg reaches.
        reach: Length,
    },
    /// The leg cannot close the pose.
    CannotClose {
        /// Where in the range.
        range: f64,
        /// Thigh.
        thigh: Length,
        /// Shank.
        shank: Length,
        /// Why not.
        why: LinksFault,
    },
}

/// Why a movement cannot be traced or posed.
#[derive(Debug, Clone, PartialEq)]
pub enum PathFault {
    /// A number of samples that is none.
    Samples {
        /// Samples asked for.
        asked: usize,
        /// The fewest there can be.
        least: usize,
        /// The most there can be.
        most: usize,
    },
    /// A pose that is not finite, because a length or angle is absurd.
    PoseNotFinite {
        /// Where in the range.
        range: f64,
    },
    /// A technique parameter.
    Technique(TechniqueFault),
    /// An arm.
    Arm(ArmFault),
    /// A stance.
    Stance(StanceFault),
    /// A bridge.
    Bridge(BridgeFault),
    /// A leg press.
    LegPress(LegPressFault),
}
