//! Joints as single angles in the plane of a movement, with their signs.
//!
//! In: names such as "elbow" from files. Out: [`Dof`], one rotational degree of freedom. Zero is the
//! anatomical position; flexion, abduction, horizontal adduction and dorsiflexion are positive
//! (Wu et al. 2002, 2005, recommendations of the International Society of Biomechanics).

use serde::{Deserialize, Serialize};

/// Share of the angle between thigh and trunk that the hip joint does, the lower back the rest: 20 of 90 deg
/// (lumbopelvic rhythm, from memory). Machines and dynamometers count the whole angle.
pub const HIP_OF_THIGH_ON_TRUNK: f64 = 0.78;

/// One rotational degree of freedom of one joint.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Dof {
    /// Elbow flexion, 0 = straight.
    Elbow,
    /// Shoulder flexion in the sagittal plane, 0 = arm along the trunk, 180 deg = overhead.
    ShoulderFlexion,
    /// Shoulder abduction in the frontal plane, 0 = arm along the trunk.
    ShoulderAbduction,
    /// Shoulder horizontal adduction of the abducted arm, 0 = arm straight out to the side.
    ShoulderHorizontal,
    /// Flexion of the lower back, 0 = its curve in standing.
    Lumbar,
    /// Hip flexion, thigh against pelvis, 0 = standing.
    Hip,
    /// Knee flexion, 0 = straight.
    Knee,
    /// Ankle dorsiflexion, 0 = foot square to the shank; plantarflexion is negative.
    Ankle,
}

impl Dof {
    /// Every degree of freedom.
    pub const ALL: [Self; 8] = [
        Self::Elbow,
        Self::ShoulderFlexion,
        Self::ShoulderAbduction,
        Self::ShoulderHorizontal,
        Self::Lumbar,
        Self::Hip,
        Self::Knee,
        Self::Ankle,
    ];

    /// The name used in files and paths, such as "shoulder_flexion".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Elbow => "elbow",
            Self::ShoulderFlexion => "shoulder_flexion",
            Self::ShoulderAbduction => "shoulder_abduction",
            Self::ShoulderHorizontal => "shoulder_horizontal",
            Self::Lumbar => "lumbar",
            Self::Hip => "hip",
            Self::Knee => "knee",
            Self::Ankle => "ankle",
        }
    }

    /// The joint it belongs to.
    #[must_use]
    pub const fn joint(self) -> Joint {
        match self {
            Self::Elbow => Joint::Elbow,
            Self::ShoulderFlexion | Self::ShoulderAbduction | Self::ShoulderHorizontal => {
                Joint::Shoulder
            }
            Self::Lumbar => Joint::LowerBack,
            Self::Hip => Joint::Hip,
            Self::Knee => Joint::Knee,
            Self::Ankle => Joint::Ankle,
        }
    }

    /// Whether this is one of the shoulder's planes.
    #[must_use]
    pub fn is_shoulder(self) -> bool {
        self.joint() == Joint::Shoulder
    }
}

/// A joint, whatever its degrees of freedom.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Joint {
    /// Elbow.
    Elbow,
    /// Shoulder.
    Shoulder,
    /// Lower back, where the spine stands on the pelvis.
    LowerBack,
    /// Hip.
    Hip,
    /// Knee.
    Knee,
    /// Ankle.
    Ankle,
}

impl Joint {
    /// Its name, such as "shoulder".
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Elbow => "elbow",
            Self::Shoulder => "shoulder",
            Self::LowerBack => "back",
            Self::Hip => "hip",
            Self::Knee => "knee",
            Self::Ankle => "ankle",
        }
    }
}
