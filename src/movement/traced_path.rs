//! What every kind of path gives: angles over the range, and the pose that they make.

use super::limb_weight::LimbWeight;
use super::pose::Pose;
use crate::error::Result;

/// A path for one lifter: angles as a smooth function of the range, and the pose they make.
pub(super) trait TracedPath {
    /// The coordinates' angles at `s`, rad; smooth a little beyond 0 and 1 too.
    fn angles(&self, s: f64) -> Result<Vec<f64>>;
    /// Step of the differences that give the angles' slopes, share of the range.
    fn step(&self) -> f64 {
        1.0e-3
    }
    /// The pose of these angles, with their slopes along the range.
    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose>;
    /// The limbs of one side at these angles, whose torques add up to the pose's `gravity_nm`.
    fn limbs(&self, s: f64, angles: &[f64]) -> Result<Vec<LimbWeight>>;
}
