//! A sweep as a movement file gives it: the joint that moves, its limb, how the body is placed.
//!
//! In: the field `path` of a movement's file. Out: [`SweepRecord`], as data.

use crate::anatomy::Dof;
use crate::source::Source;
use crate::units::{Angle, Length};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::f64::consts::{FRAC_PI_2, PI};

/// A sweep as a movement file gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SweepRecord {
    /// The joint that moves.
    pub joint: Dof,
    /// Its angle at the start of the concentric phase.
    pub from: Angle,
    /// Its angle at the end.
    pub to: Angle,
    /// What the joint carries.
    pub limb: SweptLimb,
    /// How the body is placed; technique `torso_angle`, if there is one, leans an upright trunk back.
    pub body: BodyPlace,
    /// Height of the moving joint above the floor; that of a standing lifter when it is not given.
    #[serde(default)]
    pub joint_height: Option<Length>,
    /// Joints that stand, at technique parameters.
    pub held: BTreeMap<Dof, String>,
    /// Technique parameter that turns the shoulder's plane from the frontal one, if there is one.
    #[serde(default)]
    pub plane: Option<String>,
    /// Where the angles come from.
    pub source: Source,
}

impl SweepRecord {
    /// Whether the technique parameter `torso_angle` leans the trunk: an upright one, under an arm that turns in the
    /// plane in which it leans.
    #[must_use]
    pub fn leans(&self) -> bool {
        let in_its_plane = match self.limb {
            SweptLimb::Forearm => true,
            SweptLimb::Arm => self.joint == Dof::ShoulderFlexion && self.plane.is_none(),
            SweptLimb::Shank | SweptLimb::Foot => false,
        };
        in_its_plane && matches!(self.body, BodyPlace::Upright | BodyPlace::Seated)
    }
}

/// What the moving joint carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum SweptLimb {
    /// Forearm and hand, turning about the elbow.
    Forearm,
    /// The whole arm, turning about the shoulder.
    Arm,
    /// Shank and foot, turning about the knee.
    Shank,
    /// The foot, turning about the ankle, with the ball on the ground.
    Foot,
}

impl SweptLimb {
    /// Its word in a file.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Forearm => "Forearm",
            Self::Arm => "Arm",
            Self::Shank => "Shank",
            Self::Foot => "Foot",
        }
    }
}

/// How the body is placed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum BodyPlace {
    /// Standing or sitting upright.
    Upright,
    /// On the back.
    Supine,
    /// Face down.
    Prone,
    /// On a seat, thighs level.
    Seated,
}

impl BodyPlace {
    /// Direction from hip to shoulder, rad.
    pub(super) fn trunk_rad(self) -> f64 {
        match self {
            Self::Upright | Self::Seated => FRAC_PI_2,
            Self::Supine => PI,
            Self::Prone => 0.0,
        }
    }

    /// Seated, the knee straightens upward; face down, it bends upward.
    pub(super) fn knee_sign(self) -> f64 {
        if self == Self::Prone { 1.0 } else { -1.0 }
    }
}
