//! An arm in the trunk's axes: shoulder, elbow and hand, and how they move with every coordinate.
//!
//! In: places of elbow and hand. Out: columns of the Jacobian, centres of the links.

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
