//! What `--detail` adds to a sample: joints, reactions, muscles.

use crate::movement::PlaneForce;
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
        limiting_joint: pose.coordinates[held.limiting].dof.joint().name(),
        reactions: reactions(study, index),
        muscles: muscles(study, index),
    }
}

/// What the surroundings do at the capacity, as the pose reads it: forces of one side, places.
fn reactions(study: &Study, index: usize) -> BTreeMap<String, f64> {
    let held = &study.capacity.held[index];
    let share = held.capacity / study.range.sides.count();
    let plain = crate::capacity::plain_direction(study.range.carrier);
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
