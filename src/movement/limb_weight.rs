//! A limb's weight and how far its centre of mass rises as each angle turns: the limbs' part of statics.
//!
//! In: links of a placed chain. Out: [`LimbWeight`]s whose sum is the torque of the limbs in a pose.

use super::linkage::Placed;
use crate::units::STANDARD_GRAVITY_M_S2;

/// A part of the body that moves as one piece; of trunk and head, one side's half.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum BodyPart {
    /// Upper arm.
    UpperArm,
    /// Forearm and hand.
    ForearmAndHand,
    /// The straight arm with its hand.
    WholeArm,
    /// Thorax and head.
    ThoraxAndHead,
    /// Thorax, head and the arm that bears the bar.
    ThoraxHeadAndArm,
    /// Pelvis.
    Pelvis,
    /// Thigh.
    Thigh,
    /// Shank.
    Shank,
    /// Foot.
    Foot,
}

/// One limb of one side.
#[derive(Debug, Clone, PartialEq)]
pub struct LimbWeight {
    /// Which part of the body.
    pub part: BodyPart,
    /// Mass, kg.
    pub mass_kg: f64,
    /// Rise of its centre of mass per radian of every coordinate, m.
    pub raised_m: Vec<f64>,
}

impl LimbWeight {
    /// Torque of this weight on a coordinate, N·m, positive where it turns the angle up.
    ///
    /// ```text
    /// G_j = −m·g·∂z/∂q_j
    /// ```
    /// `m` mass (kg), `z` height of the centre of mass (m). **Source.** Virtual work. **Fails.** Never.
    #[must_use]
    pub fn torque_nm(&self, coordinate: usize) -> f64 {
        -self.mass_kg * STANDARD_GRAVITY_M_S2 * self.raised_m[coordinate]
    }
}

/// The links of a placed chain as limbs, called so from the base outward.
pub(super) fn limbs_of(placed: &Placed<'_>, parts: &[BodyPart]) -> Vec<LimbWeight> {
    let limb = |(link, part): (usize, &BodyPart)| LimbWeight {
        part: *part,
        mass_kg: placed.mass_kg(link),
        raised_m: placed.raised_m(link),
    };
    parts.iter().enumerate().map(limb).collect()
}
