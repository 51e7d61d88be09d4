//! Why a pose holds nothing, or has no capacity.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use super::ProgrammeFault;
use crate::units::{AngularSpeed, Speed};

/// A speed that was asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MovingAt {
    /// Of the load.
    Load(Speed),
    /// Of the joint.
    Joint(AngularSpeed),
}

/// Why a pose holds nothing, or has no capacity.
#[derive(Debug, Clone, PartialEq)]
pub enum HoldFault {
    /// A range without poses.
    NoPoses,
    /// A load that pulls nowhere.
    NoPull {
        /// Where in the range.
        range: f64,
    },
    /// A pose that no activation of the muscles keeps.
    NoActivation {
        /// Where in the range.
        range: f64,
        /// Why its linear programme has no answer.
        why: ProgrammeFault,
        /// The speed at which it moves; none where it is held still.
        moving: Option<MovingAt>,
        /// The joint that lacks torque, where more at one joint alone would keep the pose.
        joint: Option<&'static str>,
    },
    /// A load that does not travel, so that it has no speed.
    NoTravel {
        /// Where in the range.
        range: f64,
    },
    /// A speed at which nobody moves a load.
    SpeedOutside {
        /// The speed, m/s.
        speed_m_s: f64,
        /// The most either way, m/s.
        most_m_s: f64,
    },
    /// A speed at which nobody turns a joint.
    TurnOutside {
        /// The speed, deg/s.
        speed_deg_s: f64,
        /// The most either way, deg/s.
        most_deg_s: f64,
    },
    /// The speed of a load for a movement that turns one joint.
    SpeedOfLoadForJoint,
    /// The speed of a joint for a movement of a bar or sled.
    SpeedOfJointForLoad,
}
