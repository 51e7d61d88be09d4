//! What is told of a person: lifts, sets, holds, torques, limbs.
//!
//! In: texts (see [`super::told_texts`]). Out: plain data.

use crate::anatomy::SegmentName;
use crate::units::{Angle, Force, Length, Mass, Torque};

/// One measurement as it was told.
#[derive(Debug, Clone, PartialEq)]
pub struct ToldMeasurement {
    /// The text.
    pub written: String,
    /// The movement it is of.
    pub movement: String,
    /// What was measured.
    pub measure: ToldMeasure,
}

/// What was measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ToldMeasure {
    /// A maximum, or a set near failure.
    Lift {
        /// The load, as the lift names it: of a pull-up what hangs on the body.
        load: Mass,
        /// Repetitions done; none of a maximum.
        repetitions: Option<u32>,
        /// Repetitions felt to be left.
        reserve: Option<f64>,
    },
    /// A force held at a height.
    Hold {
        /// Height above the start of the lift.
        height: Length,
        /// The force, as it was told.
        force: Force,
        /// Whether one hand alone pushed or pulled.
        one_hand: bool,
    },
    /// A torque held on a dynamometer.
    Dynamometer {
        /// Angle of the joint.
        angle: Angle,
        /// The torque.
        torque: Torque,
        /// Whether the weight of the limb still counts in it.
        with_limb: bool,
    },
    /// A maximum that velocities lead to.
    Velocity {
        /// The maximum, all that is lifted.
        one_rm: Mass,
        /// Deviation of its logarithm.
        deviation: f64,
    },
}

impl ToldMeasure {
    /// Repetitions that the set would have had at most.
    #[must_use]
    pub fn to_failure(&self) -> f64 {
        match self {
            Self::Lift {
                repetitions,
                reserve,
                ..
            } => f64::from(repetitions.unwrap_or(1)) + reserve.unwrap_or(0.0),
            Self::Hold { .. } | Self::Dynamometer { .. } | Self::Velocity { .. } => 1.0,
        }
    }
}

/// A lift whose bar was traced.
#[derive(Debug, Clone, PartialEq)]
pub struct ToldTrace {
    /// The movement.
    pub movement: String,
    /// The load, as the lift names it.
    pub load: Mass,
    /// The file, or the name of an invented trace.
    pub file: String,
}

/// The measured length of a limb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToldLimb {
    /// The limb.
    pub limb: SegmentName,
    /// Its length between the joints.
    pub length: Length,
}
