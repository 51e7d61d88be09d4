//! What `--detail` adds to a sample: joints, reactions, muscles.

use crate::capacity::plain_direction;
use crate::movement::{Measure, PlaneForce};
use crate::study::{SetupStudy, Study, asked_torques_nm};
use serde::Serialize;
use std::collections::BTreeMap;

/// Joints, reactions and muscles of one sample.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Detail {
    /// Angle of every joint that moves, deg.
    pub joint_angles_deg: BTreeMap<&'static str, f64>,
    /// Torque that the muscles of one side have to make about each joint, N·m: against load and limbs, or,
    /// without a load, against the capacity and the limbs; positive where it turns the angle up.
    pub joint_torques_nm: BTreeMap<&'static str, f64>,
    /// Torque of all muscles of one side about each joint at the capacity, N·m: the sum of the muscles' `torque_nm`.
    pub muscle_torques_nm: BTreeMap<&'static str, f64>,
    /// Lever of the load with the pushes beside it about each joint at the capacity, m: positive where they turn the
    /// angle up; nothing where one joint turns.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub load_lever_m: Option<BTreeMap<&'static str, f64>>,
    /// The joint that gives way first.
    pub limiting_joint: &'static str,
    /// Reactions of the surroundings at the optimum, one side.
    pub reactions: BTreeMap<String, f64>,
    /// The acting muscles at the optimum, one side.
    pub muscles: Vec<MuscleDetail>,
}

/// One muscle of one sample.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MuscleDetail {
    /// Its name in the model.
    pub muscle: String,
    /// Fibre length over the optimal length.
    pub fibre_length_norm: f64,
    /// Fibre velocity over its maximum, shortening positive.
    pub fibre_velocity_norm: f64,
    /// Angle between fibres and tendon, deg.
    pub pennation_deg: f64,
    /// Strain of the tendon under full activation; 0 where it keeps its length.
    pub tendon_strain: f64,
    /// Moment arm at every joint that moves, m.
    pub moment_arm_m: BTreeMap<&'static str, f64>,
    /// Activation at the optimum.
    pub activation: f64,
    /// Peak isometric force, N.
    pub peak_force_n: f64,
    /// Force of the relaxed muscle along the tendon, N.
    pub passive_force_n: f64,
    /// What activation adds to it at the optimum, N.
    pub active_force_n: f64,
    /// Force along the tendon, N.
    pub force_n: f64,
    /// Torque at every joint that moves, N·m: force times moment arm.
    pub torque_nm: BTreeMap<&'static str, f64>,
}

/// The detail of one sample.
#[must_use]
pub fn detail(study: &Study, setup: Option<&SetupStudy>, index: usize) -> Detail {
    let pose = &study.range.poses[index];
    let held = &study.capacity.held[index];
    let names = || pose.coordinates.iter().map(|c| c.dof.name());
    let torques = asked_torques_nm(study, setup, index);
    Detail {
        joint_angles_deg: names()
            .zip(pose.coordinates.iter().map(|c| c.angle_rad.to_degrees()))
            .collect(),
        joint_torques_nm: names().zip(torques).collect(),
        muscle_torques_nm: names()
            .zip(held.muscle_torques_nm.iter().copied())
            .collect(),
        load_lever_m: (study.range.measure == Measure::Force)
            .then(|| names().zip(load_levers_m(study, index)).collect()),
        limiting_joint: pose.coordinates[held.limiting].dof.joint().name(),
        reactions: reactions(study, index),
        muscles: muscles(study, index),
    }
}

/// Levers of the load with the pushes beside it at the capacity, as a change's parts are told with.
///
/// ```text
/// D_j = J_jᵀ·w + n·Σ_k c_kj·R_k/λ
/// ```
/// `J_j` motion of the load's point per turn of joint j, `w` direction of the plain load, `n` sides, `R_k` pushes of one side,
/// `c_kj` their torque per unit, `λ` capacity.
fn load_levers_m(study: &Study, index: usize) -> Vec<f64> {
    let (pose, held) = (&study.range.poses[index], &study.capacity.held[index]);
    let plain = plain_direction(study.range.carrier);
    let levers = pose.load_jacobian.iter().enumerate();
    levers
        .map(|(row, column)| {
            let pushes = pose.reactions.iter().zip(&held.reactions);
            let pushed: f64 = pushes.map(|(push, value)| push.column[row] * value).sum();
            let per_load = study.range.sides.count() * pushed / held.capacity;
            let per_load = if held.capacity == 0.0 { 0.0 } else { per_load };
            column.x * plain.x_n + column.z * plain.z_n + per_load
        })
        .collect()
}

/// What the surroundings do at the capacity, as the pose reads it: forces of one side, places.
fn reactions(study: &Study, index: usize) -> BTreeMap<String, f64> {
    let held = &study.capacity.held[index];
    let share = held.capacity / study.range.sides.count();
    let plain = plain_direction(study.range.carrier);
    let load = PlaneForce {
        x_n: plain.x_n * share,
        z_n: plain.z_n * share,
    };
    study.range.poses[index]
        .readings
        .iter()
        .filter_map(|reading| {
            let value = reading.at(&held.reactions, load)?;
            Some((reading.name.to_owned(), value))
        })
        .collect()
}

fn muscles(study: &Study, index: usize) -> Vec<MuscleDetail> {
    let names = study.capacity.muscles.len();
    (0..names)
        .map(|muscle| of_muscle(study, index, muscle))
        .collect()
}

fn of_muscle(study: &Study, index: usize, number: usize) -> MuscleDetail {
    let (pose, held) = (&study.range.poses[index], &study.capacity.held[index]);
    let (muscle, activation) = (&held.muscles[number], held.activations[number]);
    let peak_force_n = study.capacity.peak_forces_n[number];
    let force_n = muscle.passive_n + activation * muscle.active_n;
    let whole = (muscle.passive_n + muscle.active_n) / peak_force_n;
    let joints = || pose.coordinates.iter().map(|c| c.dof.name());
    let arms = || joints().zip(muscle.arms_m.iter().copied());
    MuscleDetail {
        muscle: study.capacity.muscles[number].clone(),
        fibre_length_norm: muscle.state.length_norm,
        fibre_velocity_norm: muscle.state.velocity_norm,
        pennation_deg: muscle
            .state
            .cos_pennation
            .clamp(-1.0, 1.0)
            .acos()
            .to_degrees(),
        tendon_strain: study.capacity.tendons[number].strain_under(whole),
        moment_arm_m: arms().collect(),
        activation,
        peak_force_n,
        passive_force_n: muscle.passive_n,
        active_force_n: activation * muscle.active_n,
        force_n,
        torque_nm: arms()
            .map(|(joint, arm_m)| (joint, force_n * arm_m))
            .collect(),
    }
}
