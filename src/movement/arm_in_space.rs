//! An arm in the trunk's axes: shoulder, elbow and hand, and how they move with every coordinate.
//!
//! In: places of elbow and hand. Out: columns of the Jacobian, centres of the links.

use super::limb_weight::{BodyPart, LimbWeight};
use super::linkage::Link;
use crate::anatomy::{Dof, ShoulderPose, axis_of};
use nalgebra::Vector3;

/// An arm in the trunk's axes.
#[derive(Debug, Clone, Copy)]
pub(super) struct ArmInSpace {
    pub shoulder: ShoulderPose,
    pub elbow: Vector3<f64>,
    pub hand: Vector3<f64>,
    pub elbow_rad: f64,
}

impl ArmInSpace {
    /// How a place on the upper arm (or the hand) moves with a coordinate, m/rad.
    pub(super) fn column(&self, dof: Dof, place: Vector3<f64>) -> Vector3<f64> {
        if dof == Dof::Elbow {
            self.shoulder.elbow_axis().cross(&(place - self.elbow))
        } else {
            axis_of(dof).cross(&place)
        }
    }

    /// Upper arm and forearm with the hand, and how they rise with every coordinate.
    pub(super) fn limbs(
        &self,
        dofs: [Dof; 4],
        upper: &Link,
        lower: &Link,
        upward: Vector3<f64>,
    ) -> Vec<LimbWeight> {
        let above = Self::centre(Vector3::zeros(), self.elbow, upper);
        let below = Self::centre(self.elbow, self.hand, lower);
        let rises = |dof: Dof, place: Vector3<f64>| self.column(dof, place).dot(&upward);
        let of_upper = |dof: Dof| {
            if dof == Dof::Elbow {
                0.0
            } else {
                rises(dof, above)
            }
        };
        vec![
            LimbWeight {
                part: BodyPart::UpperArm,
                mass_kg: upper.mass_kg,
                raised_m: dofs.into_iter().map(of_upper).collect(),
            },
            LimbWeight {
                part: BodyPart::ForearmAndHand,
                mass_kg: lower.mass_kg,
                raised_m: dofs.into_iter().map(|dof| rises(dof, below)).collect(),
            },
        ]
    }

    /// Centre of mass of a link from here to there.
    pub(super) fn centre(from: Vector3<f64>, to: Vector3<f64>, link: &Link) -> Vector3<f64> {
        from + (to - from) * (link.centre_m / link.length_m)
    }
}

/// The part of a vector square to another, of unit length.
pub(super) fn square_to(vector: Vector3<f64>, other: Vector3<f64>) -> Vector3<f64> {
    let along = other.normalize();
    (vector - along * vector.dot(&along))
        .try_normalize(1.0e-9)
        .unwrap_or_else(|| along.cross(&Vector3::x()))
}
