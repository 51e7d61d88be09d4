//! What a grid of capacity is solved from: muscles, poses, the load's direction.
//!
//! In: a body in a lift. Out: [`GridGround`], and the lever by which a load works along the range.

use crate::anatomy::{Dof, Dynamics};
use crate::capacity::Acting;
use crate::movement::{Measure, PlaneForce, Pose, Range};
use crate::units::Mass;
use std::sync::Arc;

/// What a model is solved from.
#[derive(Debug, Clone)]
pub(super) struct GridGround {
    pub(super) acting: Acting,
    pub(super) range: Arc<Range>,
    /// The load's unit direction at each pose.
    pub(super) directions: Arc<[PlaneForce]>,
    pub(super) body_mass: Mass,
    pub(super) dynamics: Dynamics,
    pub(super) joints: Vec<Dof>,
}

/// Generalised force along the range per unit of capacity.
///
/// ```text
/// Q = λ·(−w · dx/ds)  [N → N·m per range]       Q = τ·|dq/ds|  [N·m → N·m per range]
/// ```
/// `w` unit direction of the load, `x` its point, `q` the angle that a movement measured in torque turns.
/// **Source.** Principle of virtual work: the load that could be held does the work of what holds it.
pub(super) fn lever_of(pose: &Pose, direction: PlaneForce, measure: Measure) -> f64 {
    match measure {
        Measure::Torque => pose.coordinates[0].slope_rad.abs(),
        Measure::Force => -(direction.x_n * pose.load.dx_ds_m + direction.z_n * pose.load.dz_ds_m),
    }
}
