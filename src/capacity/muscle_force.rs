//! The muscles that act in a movement: fibre states, moment arms and forces at a pose and speed.
//!
//! In: a lifter and the poses of a range. Out: [`Acting`], every muscle that crosses a moving joint,
//! ready to be evaluated many times.

use crate::anatomy::{
    ArmCurve, Curves, Dof, Fibre, FibreState, Lifter, Muscle, PassiveJoint, Reference,
};
use crate::error::{BodyFault, Error, HoldFault, Result};
use crate::movement::{Coordinate, Pose};
use std::collections::BTreeMap;

/// The muscles of a lifter that cross a joint that moves.
#[derive(Debug, Clone)]
pub struct Acting {
    /// The muscles, in order of their names.
    pub muscles: Vec<ActingMuscle>,
    /// The lifter's fibre curves.
    pub curves: Curves,
    /// Passive resistance of the lifter's joints.
    pub joints: BTreeMap<Dof, PassiveJoint>,
}

/// One acting muscle.
#[derive(Debug, Clone)]
pub struct ActingMuscle {
    /// Its name in the lifter's model.
    pub name: String,
    /// Its architecture.
    pub fibre: Fibre,
    lines: Vec<MuscleLine>,
}

/// The muscle's length in one plane of the shoulder (or its only line).
#[derive(Debug, Clone)]
struct MuscleLine {
    /// Coordinate and index of the plane that weighs this line; `None` = weight 1.
    weight: Option<(usize, usize)>,
    /// Projected fibre length plus the arms' antiderivatives in the reference pose and in the
    /// joints that stand, m.
    constant_m: f64,
    /// Moving coordinates that it crosses.
    arms: Vec<(usize, ArmCurve)>,
}

/// A muscle at a pose: fibres, arms over the coordinates, force passive and from full activation.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MuscleAtPose {
    /// State of the fibres.
    pub state: FibreState,
    /// Moment arm at every coordinate, m.
    pub arms_m: Vec<f64>,
    /// Passive force, N.
    pub passive_n: f64,
    /// Force that full activation adds, N.
    pub active_n: f64,
}

/// A muscle at a pose, ready for any speed.
#[derive(Debug, Clone)]
pub struct PlacedMuscle<'a> {
    fibre: &'a Fibre,
    projected_m: f64,
    relaxed: FibreState,
    passive_n: f64,
    length_factor: f64,
    arms_m: Vec<f64>,
}

impl PlacedMuscle<'_> {
    /// Fibres, arms and forces at a speed along the range (1/s); see [`ActingMuscle::at`].
    #[must_use]
    pub fn at(&self, curves: &Curves, pose: &Pose, range_speed: f64) -> MuscleAtPose {
        let shortening_m_s: f64 = self
            .arms_m
            .iter()
            .zip(&pose.coordinates)
            .map(|(arm, coordinate)| arm * coordinate.slope_rad * range_speed)
            .sum();
        let fibre = self.fibre;
        let (state, passive_active_n, active_n) = if fibre.has_rigid_tendon() {
            let state = fibre.moving(self.relaxed, shortening_m_s);
            let along_n = fibre.peak_force_n * state.cos_pennation;
            let active = self.length_factor * curves.velocity.at(state.velocity_norm);
            (state, self.passive_n, along_n * active)
        } else {
            let state = fibre.active_state(curves, self.projected_m, shortening_m_s);
            let (passive_n, active_n) = fibre.forces_n(curves, state);
            (state, passive_n, active_n)
        };
        MuscleAtPose {
            state,
            arms_m: self.arms_m.clone(),
            passive_n: self.passive_n,
            active_n: passive_active_n + active_n - self.passive_n,
        }
    }
}

impl Acting {
    /// The muscles that act where these poses move.
    ///
    /// **Fails** if a moment arm of the model cannot be evaluated.
    pub fn of(lifter: &Lifter, poses: &[Pose]) -> Result<Self> {
        let first = poses
            .first()
            .ok_or_else(|| Error::bad(HoldFault::NoPoses))?;
        let mut muscles = Vec::new();
        for (name, muscle) in &lifter.muscles {
            if let Some(acting) = acting_muscle(name, muscle, first)? {
                muscles.push(acting);
            }
        }
        Ok(Self {
            muscles,
            curves: lifter.curves.clone(),
            joints: lifter.joints.clone(),
        })
    }
}

impl Acting {
    /// Passive torque of the joint itself at a coordinate, N·m, planes by their weights.
    #[must_use]
    pub fn passive_joint_nm(&self, coordinate: &Coordinate) -> f64 {
        coordinate
            .planes
            .iter()
            .filter_map(|(dof, weight)| {
                let joint = self.joints.get(dof)?;
                Some(weight * joint.torque_nm(coordinate.angle_rad))
            })
            .sum()
    }
}

fn acting_muscle(name: &str, muscle: &Muscle, pose: &Pose) -> Result<Option<ActingMuscle>> {
    let crosses = |dof: &Dof| muscle.moment_arm.contains_key(dof);
    let moves = pose
        .coordinates
        .iter()
        .any(|c| c.planes.iter().any(|(dof, _)| crosses(dof)));
    if !moves {
        return Ok(None);
    }
    let between = pose
        .coordinates
        .iter()
        .position(|c| c.planes.len() > 1 && c.planes.iter().any(|(dof, _)| crosses(dof)));
    let fibre = Fibre::of(muscle);
    let lines = match between {
        None => vec![line(muscle, &fibre, pose, None)?],
        Some(coordinate) => (0..pose.coordinates[coordinate].planes.len())
            .map(|plane| line(muscle, &fibre, pose, Some((coordinate, plane))))
            .collect::<Result<Vec<_>>>()?,
    };
    Ok(Some(ActingMuscle {
        name: name.to_owned(),
        fibre,
        lines,
    }))
}

fn line(
    muscle: &Muscle,
    fibre: &Fibre,
    pose: &Pose,
    weight: Option<(usize, usize)>,
) -> Result<MuscleLine> {
    let plane = weight.map(|(c, p)| pose.coordinates[c].planes[p].0);
    let moving = moving_dofs(&pose.coordinates, weight);
    let reference = reference_for(muscle, plane, &moving)?;
    let zero = |dof: &Dof| reference.at.get(dof).map_or(0.0, |angle| angle.as_rad());
    let mut constant_m = fibre.projected_m(reference.fibre_length);
    let mut arms = Vec::new();
    for (index, dof) in &moving {
        if let Some(arm) = muscle.moment_arm.get(dof) {
            let curve = arm.curve()?;
            constant_m += curve.antiderivative(zero(dof));
            arms.push((*index, curve));
        }
    }
    for (dof, angle_rad) in &pose.held {
        if let Some(arm) = muscle.moment_arm.get(dof) {
            constant_m -= arm.curve()?.shortening(zero(dof), *angle_rad);
        }
    }
    Ok(MuscleLine {
        weight,
        constant_m,
        arms,
    })
}

/// The degree of freedom of every coordinate in this line's plane.
fn moving_dofs(coordinates: &[Coordinate], weight: Option<(usize, usize)>) -> Vec<(usize, Dof)> {
    coordinates
        .iter()
        .enumerate()
        .map(|(index, coordinate)| {
            let plane = match weight {
                Some((c, p)) if c == index => p,
                _ => 0,
            };
            (index, coordinate.planes[plane].0)
        })
        .collect()
}

fn reference_for<'a>(
    muscle: &'a Muscle,
    plane: Option<Dof>,
    moving: &[(usize, Dof)],
) -> Result<&'a Reference> {
    let wanted = plane.or_else(|| moving.iter().map(|m| m.1).find(|dof| dof.is_shoulder()));
    wanted
        .and_then(|dof| muscle.reference.iter().find(|r| r.at.contains_key(&dof)))
        .or_else(|| muscle.reference.first())
        .ok_or_else(|| Error::bad(BodyFault::NoReference))
}

impl ActingMuscle {
    /// Fibres, arms and forces at a pose moving along the range at `range_speed` (1/s).
    ///
    /// ```text
    /// p = Σ_planes w·( p_ref − Σ_j ∫ r_j dq_j ),   −ṗ = Σ_j r_j·(dq_j/ds)·ṡ
    /// ```
    /// `p` projected fibre length (m), `w` weight of a shoulder plane, `r_j` arm (m), `ṡ` (1/s).
    /// **Source.** design of the model: r = −dL/dq by construction.
    #[must_use]
    pub fn at(&self, curves: &Curves, pose: &Pose, range_speed: f64) -> MuscleAtPose {
        self.placed(curves, pose).at(curves, pose, range_speed)
    }

    /// What does not depend on speed: arms, lengths, passive force.
    #[must_use]
    pub fn placed(&self, curves: &Curves, pose: &Pose) -> PlacedMuscle<'_> {
        let mut arms_m = vec![0.0; pose.coordinates.len()];
        let mut projected_m = 0.0;
        for line in &self.lines {
            let weight = line
                .weight
                .map_or(1.0, |(c, p)| pose.coordinates[c].planes[p].1);
            let mut length_m = line.constant_m;
            for (index, curve) in &line.arms {
                let angle_rad = pose.coordinates[*index].angle_rad;
                length_m -= curve.antiderivative(angle_rad);
                arms_m[*index] += weight * curve.at(angle_rad);
            }
            projected_m += weight * length_m;
        }
        let relaxed = self.fibre.state(projected_m, 0.0);
        PlacedMuscle {
            fibre: &self.fibre,
            projected_m,
            relaxed,
            passive_n: self.fibre.forces_n(curves, relaxed).0,
            length_factor: curves.active.at(relaxed.length_norm),
            arms_m,
        }
    }
}
