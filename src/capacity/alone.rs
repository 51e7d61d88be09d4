//! What each joint alone could bear: the same programme with the other joints left out.
//!
//! In: poses, acting muscles, the capacity that was found. Out: one curve for every joint, so that a
//! figure can show which joint limits where.

use super::curve::{CapacityCurve, plain_direction};
use super::muscle_force::{Acting, MuscleAtPose};
use super::programme::Solver;
use crate::error::Result;
use crate::movement::{Pose, Range, Reaction};

/// The load that one joint could bear if the others were as strong as you like, one a sample.
///
/// ```text
/// maximise λ  subject to the row of joint j alone, the balances and the cones
/// ```
/// Muscles act at full choice for this joint, reactions too, so it is an upper limit: capacity of the
/// whole limb is never above the least of these.
/// **Shape.** At least the capacity everywhere; at the limiting joint close to it.
/// **Source.** Relaxation of the pose's programme by dropping rows. **Fails.** Where the whole pose fails.
pub fn joint_alone(
    acting: &Acting,
    range: &Range,
    capacity: &CapacityCurve,
    joint: usize,
) -> Result<Vec<f64>> {
    let mut solver = Solver::new(acting, range.measure, range.sides)?;
    let direction = plain_direction(range.carrier);
    range
        .poses
        .iter()
        .zip(&capacity.held)
        .map(|(pose, held)| {
            let muscles = held
                .muscles
                .iter()
                .map(|m| at_one_joint(m, joint))
                .collect();
            let held = solver.solve_with(&of_one_joint(pose, joint), muscles, direction)?;
            Ok(held.capacity)
        })
        .collect()
}

/// A muscle as that joint sees it.
fn at_one_joint(muscle: &MuscleAtPose, joint: usize) -> MuscleAtPose {
    MuscleAtPose {
        arms_m: vec![muscle.arms_m[joint]],
        ..muscle.clone()
    }
}

/// The pose with the rows of the other joints left out.
fn of_one_joint(pose: &Pose, joint: usize) -> Pose {
    Pose {
        coordinates: vec![pose.coordinates[joint].clone()],
        load_jacobian: vec![pose.load_jacobian[joint]],
        gravity_nm: vec![pose.gravity_nm[joint]],
        reactions: pose
            .reactions
            .iter()
            .map(|reaction| Reaction {
                column: vec![reaction.column[joint]],
                ..reaction.clone()
            })
            .collect(),
        ..pose.clone()
    }
}
