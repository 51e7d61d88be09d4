//! One muscle of a worked pose: how its fibre length comes about, and every factor of its force.
//!
//! In: the lifter, a pose and what it holds. Out: [`WorkedMuscle`]s in the order of the programme.

use crate::anatomy::{Dof, Fibre, FibreState, Lifter, Muscle, Tendon};
use crate::capacity::{Held, MuscleAtPose};
use crate::error::{BodyFault, Error, Result};
use crate::movement::Pose;

/// One muscle at the pose.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedMuscle {
    /// Its name in the lifter's model.
    pub name: String,
    /// Maximal isometric force, N.
    pub peak_force_n: f64,
    /// Optimal fibre length, m.
    pub optimal_m: f64,
    /// Greatest shortening velocity, optimal fibre lengths per second.
    pub max_velocity: f64,
    /// Pennation at the optimal length, rad.
    pub pennation_rad: f64,
    /// Relaxed fibre length in the reference pose over the optimal length.
    pub reference_length: f64,
    /// How much shorter each joint makes it than in the reference pose, m.
    pub shortenings: Vec<Shortening>,
    /// The tendon that gives, if it does: slack length in m, strain at peak force.
    pub giving_tendon: Option<(f64, f64)>,
    /// The fibres in series with a relaxed tendon.
    pub relaxed: FibreState,
    /// The fibres fully active.
    pub active: FibreState,
    /// Passive force, N.
    pub passive_n: f64,
    /// Force that full activation adds, N.
    pub active_n: f64,
    /// Activation at the optimum.
    pub activation: f64,
    /// Force along the tendon at the optimum, N.
    pub force_n: f64,
    /// Moment arm at every row, m.
    pub arms_m: Vec<f64>,
    /// Shortening of muscle and tendon per unit of range that the moving shoulder blade takes up, m.
    pub blade_m: f64,
    /// Whether the model holds the fibres at their shortest length.
    pub at_shortest: bool,
}

/// What a joint does to a muscle's length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shortening {
    /// The hinge; `None` for the shoulder as a ball joint.
    pub hinge: Option<Dof>,
    /// Angle of the hinge in the reference pose, rad.
    pub from_rad: f64,
    /// Angle of the hinge in the pose, rad.
    pub to_rad: f64,
    /// How much shorter the muscle is than in the reference pose, m.
    pub by_m: f64,
}

/// The muscles of a pose.
///
/// **Fails** if the model has no such muscle or no pose of reference for it.
pub(super) fn worked_muscles(
    lifter: &Lifter,
    names: &[String],
    pose: &Pose,
    held: &Held,
) -> Result<Vec<WorkedMuscle>> {
    let parts = names.iter().zip(held.muscles.iter().zip(&held.activations));
    parts
        .map(|(name, (at, activation))| {
            let muscle = lifter
                .muscles
                .get(name)
                .ok_or_else(|| Error::bad(BodyFault::NoReference))?;
            worked(name, muscle, at, *activation, pose)
        })
        .collect()
}

fn worked(
    name: &str,
    muscle: &Muscle,
    at: &MuscleAtPose,
    activation: f64,
    pose: &Pose,
) -> Result<WorkedMuscle> {
    let fibre = Fibre::of(muscle);
    let reference = muscle
        .reference
        .first()
        .ok_or_else(|| Error::bad(BodyFault::NoReference))?;
    let shortenings = shortenings(muscle, pose)?;
    let by_m: f64 = shortenings.iter().map(|part| part.by_m).sum();
    let projected_m = fibre.projected_m(reference.fibre_length) - by_m;
    let relaxed = fibre.state(projected_m, 0.0);
    Ok(WorkedMuscle {
        name: name.to_owned(),
        peak_force_n: fibre.peak_force_n,
        optimal_m: fibre.optimal_m,
        max_velocity: muscle.max_velocity,
        pennation_rad: muscle.pennation.as_rad(),
        reference_length: reference.fibre_length,
        shortenings,
        giving_tendon: match &muscle.tendon {
            Tendon::Rigid => None,
            Tendon::Compliant {
                slack_length,
                strain_at_peak,
                ..
            } => Some((slack_length.as_m(), *strain_at_peak)),
        },
        relaxed,
        active: at.state,
        passive_n: at.passive_n,
        active_n: at.active_n,
        activation,
        force_n: at.passive_n + activation * at.active_n,
        arms_m: at.arms_m.to_vec(),
        blade_m: at.by_blade_m,
        at_shortest: projected_m
            < relaxed.length_norm * relaxed.cos_pennation * fibre.optimal_m - 1.0e-9,
    })
}

/// What every joint that the muscle crosses does to its length since the pose of reference.
fn shortenings(muscle: &Muscle, pose: &Pose) -> Result<Vec<Shortening>> {
    let reference = muscle
        .reference
        .first()
        .ok_or_else(|| Error::bad(BodyFault::NoReference))?;
    let moving = pose.coordinates.iter().map(|c| (c.dof, c.angle_rad));
    let mut parts = Vec::new();
    for (dof, to_rad) in moving.chain(pose.held.iter().copied()) {
        if let Some(arm) = muscle.moment_arm.get(&dof) {
            let from_rad = reference.at.get(&dof).map_or(0.0, |angle| angle.as_rad());
            parts.push(Shortening {
                hinge: Some(dof),
                from_rad,
                to_rad,
                by_m: arm.curve()?.shortening(from_rad, to_rad),
            });
        }
    }
    if let Some(line) = &muscle.shoulder {
        let path = line.path();
        let (before, now) = (path.at(&reference.shoulder()), path.at(&pose.shoulder.pose));
        parts.push(Shortening {
            hinge: None,
            from_rad: 0.0,
            to_rad: 0.0,
            by_m: before.length_m - now.length_m,
        });
    }
    Ok(parts)
}
