//! The muscles that act in a movement: fibre states, moment arms and forces at a pose and speed.
//!
//! In: a lifter and the poses of a range. Out: [`Acting`], every muscle that crosses a moving joint,
//! ready to be evaluated many times.

use crate::anatomy::{
    ArmCurve, Curves, Dof, Fibre, FibreState, Lifter, Muscle, PassiveJoint, ShoulderPath,
    ShoulderPose, force_shares,
};
use crate::error::{BodyFault, Error, HoldFault, Result};
use crate::movement::{Coordinate, Pose};
use arrayvec::ArrayVec;
use nalgebra::Vector3;
use std::collections::BTreeMap;

/// One value a coordinate of a pose, without a place on the heap: no path has more than six.
pub type PerCoordinate = ArrayVec<f64, 6>;

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
    /// Projected fibre length plus the arms' antiderivatives in the reference pose and in the joints
    /// that stand, m.
    constant_m: f64,
    /// Moving coordinates that it crosses, the shoulder's apart.
    arms: Vec<(usize, ArmCurve)>,
    /// Its line across the shoulder, and the line's length in the reference pose, m.
    shoulder: Option<(ShoulderPath, f64)>,
}

/// A muscle at a pose: fibres, arms over the coordinates, force passive and from full activation.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MuscleAtPose {
    /// State of the fibres.
    pub state: FibreState,
    /// Moment arm at every coordinate, m.
    pub arms_m: PerCoordinate,
    /// Passive force, N.
    pub passive_n: f64,
    /// Force that full activation adds, N.
    pub active_n: f64,
    /// Shortening of muscle and tendon per unit of range, m.
    pub shortening_m: f64,
    /// What the shoulder blade's muscles do beside it, per unit of range and of force, m.
    pub by_blade_m: f64,
}

/// What a programme asks of a muscle.
#[derive(Debug, Clone, Copy)]
pub struct ForcesAtPose<'a> {
    /// Moment arm at every coordinate, m.
    pub arms_m: &'a [f64],
    /// Passive force, N.
    pub passive_n: f64,
    /// Force that full activation adds, N.
    pub active_n: f64,
}

impl<'a> From<&'a MuscleAtPose> for ForcesAtPose<'a> {
    fn from(muscle: &'a MuscleAtPose) -> Self {
        Self {
            arms_m: &muscle.arms_m,
            passive_n: muscle.passive_n,
            active_n: muscle.active_n,
        }
    }
}

/// A muscle at a pose, ready for any speed.
#[derive(Debug, Clone)]
pub struct PlacedMuscle<'a> {
    fibre: &'a Fibre,
    place: MusclePlace,
}

/// What of a muscle at a pose is the same however strong it is.
#[derive(Debug, Clone)]
pub struct MusclePlace {
    projected_m: f64,
    relaxed: FibreState,
    /// Passive force of the relaxed fibres along the tendon, share of the peak force.
    passive_share: f64,
    length_factor: f64,
    arms_m: PerCoordinate,
    /// Shortening per unit of range, m.
    shortening_m: f64,
    /// Work of the shoulder blade's muscles per unit of range and unit of force, m.
    by_blade_m: f64,
}

/// Fully active fibres at a pose and speed, whatever the muscle's peak force.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FullyActive {
    /// State of the fibres.
    pub state: FibreState,
    /// Active and passive force together along the tendon, share of the peak force.
    pub share: f64,
}

/// What a muscle's force is made of at a pose and speed.
///
/// ```text
/// F(a) = F0·[ (1 − a)·p_r·cos α_r + a·( f_l·f_v + p )·cos α ]
/// ```
/// `a` activation, `F0` peak force (N), `f_l`, `f_v`, `p` factors of active length, speed and passive length, `α`
/// pennation; the index r is of the relaxed muscle, which differs where a tendon gives.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ForceTerms {
    /// Peak isometric force, N.
    pub peak_n: f64,
    /// Share of it at this length, held still.
    pub length_factor: f64,
    /// Share of that at this speed.
    pub speed_factor: f64,
    /// Passive share of the peak force, relaxed and fully active.
    pub passive: [f64; 2],
    /// Cosine of the pennation, relaxed and fully active.
    pub cos_pennation: [f64; 2],
}

impl ForceTerms {
    /// Force along the tendon at an activation, N.
    #[must_use]
    pub fn force_n(&self, activation: f64) -> f64 {
        let active = self.length_factor * self.speed_factor * self.cos_pennation[1];
        self.peak_n * (activation * active + self.passive_share(activation))
    }

    /// The part of [`ForceTerms::force_n`] that stretched fibres bear at an activation, share of the peak force: a tendon
    /// gives, so fibres are the shorter the more active the muscle is.
    #[must_use]
    pub fn passive_share(&self, activation: f64) -> f64 {
        let [relaxed, active] = [0, 1].map(|at| self.passive[at] * self.cos_pennation[at]);
        (1.0 - activation) * relaxed + activation * active
    }
}

impl PlacedMuscle<'_> {
    /// Length of the relaxed fibres over the optimal length.
    #[must_use]
    pub const fn relaxed_length(&self) -> f64 {
        self.place.relaxed.length_norm
    }

    /// Passive force of the relaxed muscle, N, and its moment arm at every coordinate, m.
    #[must_use]
    pub fn at_rest(&self) -> (f64, &PerCoordinate) {
        let passive_n = self.fibre.peak_force_n * self.place.passive_share;
        (passive_n, &self.place.arms_m)
    }

    /// What is the same however strong the muscle is.
    #[must_use]
    pub fn into_place(self) -> MusclePlace {
        self.place
    }

    /// What the force is made of at a speed along the range (1/s): what [`PlacedMuscle::at`] multiplies.
    #[must_use]
    pub fn terms(&self, curves: &Curves, range_speed: f64) -> ForceTerms {
        let state = self.at(curves, range_speed).state;
        let passive = |state: FibreState| curves.passive.at(state.length_norm);
        ForceTerms {
            peak_n: self.fibre.peak_force_n,
            length_factor: curves.active.at(state.length_norm),
            speed_factor: curves.velocity.at(state.velocity_norm),
            passive: [self.place.relaxed, state].map(passive),
            cos_pennation: [self.place.relaxed, state].map(|state| state.cos_pennation),
        }
    }

    /// Fibres, arms and forces at a speed along the range (1/s); see [`ActingMuscle::at`].
    #[must_use]
    pub fn at(&self, curves: &Curves, range_speed: f64) -> MuscleAtPose {
        self.doing(&self.fully_active(curves, range_speed))
    }

    /// The fully active fibres at a speed along the range (1/s): the same however strong the muscle is.
    #[must_use]
    pub fn fully_active(&self, curves: &Curves, range_speed: f64) -> FullyActive {
        self.place.fully_active(self.fibre, curves, range_speed)
    }

    /// Fibres, arms and forces where the fully active fibres are known.
    #[must_use]
    pub fn doing(&self, active: &FullyActive) -> MuscleAtPose {
        self.place.doing(self.fibre, active)
    }
}

impl MusclePlace {
    /// The fully active fibres at a speed along the range (1/s).
    #[must_use]
    pub fn fully_active(&self, fibre: &Fibre, curves: &Curves, range_speed: f64) -> FullyActive {
        let shortening_m_s = self.shortening_m * range_speed;
        if fibre.has_rigid_tendon() {
            let state = fibre.moving(self.relaxed, shortening_m_s);
            let active = self.length_factor * curves.velocity.at(state.velocity_norm);
            return FullyActive {
                state,
                share: self.passive_share + state.cos_pennation * active,
            };
        }
        let state = fibre.active_state(curves, self.projected_m, shortening_m_s);
        let (passive, active) = force_shares(curves, state);
        FullyActive {
            state,
            share: passive + active,
        }
    }

    /// Forces of a muscle so strong, where the fully active fibres are known.
    #[must_use]
    pub fn forces(&self, fibre: &Fibre, active: &FullyActive) -> ForcesAtPose<'_> {
        let peak_n = fibre.peak_force_n;
        ForcesAtPose {
            arms_m: &self.arms_m,
            passive_n: peak_n * self.passive_share,
            active_n: peak_n * (active.share - self.passive_share),
        }
    }

    /// Fibres, arms and forces of a muscle so strong, where the fully active fibres are known.
    #[must_use]
    pub fn doing(&self, fibre: &Fibre, active: &FullyActive) -> MuscleAtPose {
        let peak_n = fibre.peak_force_n;
        MuscleAtPose {
            state: active.state,
            arms_m: self.arms_m.clone(),
            shortening_m: self.shortening_m,
            by_blade_m: self.by_blade_m,
            passive_n: peak_n * self.passive_share,
            active_n: peak_n * (active.share - self.passive_share),
        }
    }
}

impl Acting {
    /// The muscles at a pose, for any number of speeds there.
    #[must_use]
    pub fn placed(&self, pose: &Pose) -> Vec<PlacedMuscle<'_>> {
        let muscles = self.muscles.iter();
        muscles.map(|m| m.placed(&self.curves, pose)).collect()
    }

    /// The same muscles with their peak forces multiplied, each by the factor for its name.
    #[must_use]
    pub fn with_forces_times(&self, factor: impl Fn(&str) -> f64) -> Self {
        let mut changed = self.clone();
        for muscle in &mut changed.muscles {
            muscle.fibre.peak_force_n *= factor(&muscle.name);
        }
        changed
    }

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
    /// Passive torque of the joints themselves at every coordinate of a pose, N·m.
    ///
    /// The shoulder is one ball joint: its stops are behind the frontal plane (the low end of horizontal
    /// adduction) and overhead (the high end of abduction); their torque turns the arm back from there. The capsule joins
    /// the arm to the shoulder blade: where a lift draws the blade back, the stop behind goes with it.
    #[must_use]
    pub fn passive_joints_nm(&self, pose: &Pose) -> PerCoordinate {
        let shoulder = self.passive_shoulder_nm(&pose.shoulder.pose);
        let torque = |coordinate: &Coordinate| {
            if coordinate.dof.is_shoulder() {
                return coordinate.axis.dot(&shoulder);
            }
            let joint = self.joints.get(&coordinate.dof);
            joint.map_or(0.0, |joint| joint.torque_nm(coordinate.angle_rad))
        };
        pose.coordinates.iter().map(torque).collect()
    }

    fn passive_shoulder_nm(&self, pose: &ShoulderPose) -> Vector3<f64> {
        let arm = pose.arm();
        let mut sum = Vector3::zeros();
        if let Some(joint) = self.joints.get(&Dof::ShoulderHorizontal) {
            let forward = pose.forward_of_blade();
            let in_front = arm.dot(&forward).clamp(-1.0, 1.0).asin();
            sum += unit_or_zero(arm.cross(&forward)) * joint.low_nm(in_front);
        }
        if let Some(joint) = self.joints.get(&Dof::ShoulderAbduction) {
            let elevation = (-arm.z).clamp(-1.0, 1.0).acos();
            sum += unit_or_zero(arm.cross(&-Vector3::z())) * joint.high_nm(elevation);
        }
        sum
    }
}

fn unit_or_zero(vector: Vector3<f64>) -> Vector3<f64> {
    vector.try_normalize(1.0e-9).unwrap_or_default()
}

fn acting_muscle(name: &str, muscle: &Muscle, pose: &Pose) -> Result<Option<ActingMuscle>> {
    if !pose.coordinates.iter().any(|c| muscle.crosses(c.dof)) {
        return Ok(None);
    }
    let reference = muscle
        .reference
        .first()
        .ok_or_else(|| Error::bad(BodyFault::NoReference))?;
    let zero = |dof: &Dof| reference.at.get(dof).map_or(0.0, |angle| angle.as_rad());
    let fibre = Fibre::of(muscle);
    let mut constant_m = fibre.projected_m(reference.fibre_length);
    let mut arms = Vec::new();
    for (index, coordinate) in pose.coordinates.iter().enumerate() {
        if let Some(arm) = muscle.moment_arm.get(&coordinate.dof) {
            let curve = arm.curve()?;
            constant_m += curve.antiderivative(zero(&coordinate.dof));
            arms.push((index, curve));
        }
    }
    for (dof, angle_rad) in &pose.held {
        if let Some(arm) = muscle.moment_arm.get(dof) {
            constant_m -= arm.curve()?.shortening(zero(dof), *angle_rad);
        }
    }
    let shoulder = muscle.shoulder.as_ref().map(|line| {
        let path = line.path();
        (path, path.at(&reference.shoulder()).length_m)
    });
    Ok(Some(ActingMuscle {
        name: name.to_owned(),
        fibre,
        constant_m,
        arms,
        shoulder,
    }))
}

impl ActingMuscle {
    /// Fibres, arms and forces at a pose moving along the range at `range_speed` (1/s).
    ///
    /// ```text
    /// p = p_ref − Σ_j ∫ r_j dq_j + L(R) − L(R_ref),   −ṗ = (Σ_j r_j·dq_j/ds + m·(ω − ω_start) + b·ω_blade)·ṡ
    /// ```
    /// `p` projected fibre length (m), `r_j` arm of a hinge (m), `L` length of the line across the shoulder
    /// (m), `R` the upper arm's orientation, `m` the line's moment on it and `b` on the blade it passes (m), `ω` turns
    /// per unit of range.
    /// **Source.** design of the model: r = −dL/dq by construction.
    #[must_use]
    pub fn at(&self, curves: &Curves, pose: &Pose, range_speed: f64) -> MuscleAtPose {
        self.placed(curves, pose).at(curves, range_speed)
    }

    /// What does not depend on speed: arms, lengths, passive force.
    #[must_use]
    pub fn placed(&self, curves: &Curves, pose: &Pose) -> PlacedMuscle<'_> {
        let mut arms_m: PerCoordinate = pose.coordinates.iter().map(|_| 0.0).collect();
        let mut projected_m = self.constant_m;
        let mut shortening_m = 0.0;
        let mut by_blade_m = 0.0;
        for (index, curve) in &self.arms {
            let coordinate = &pose.coordinates[*index];
            projected_m -= curve.antiderivative(coordinate.angle_rad);
            arms_m[*index] = curve.at(coordinate.angle_rad);
            shortening_m += arms_m[*index] * coordinate.slope_rad;
        }
        if let Some((path, reference_m)) = &self.shoulder {
            let line = path.at(&pose.shoulder.pose);
            projected_m += line.length_m - reference_m;
            shortening_m += path.shortening_m(&line, &pose.shoulder);
            by_blade_m = path.by_blade_m(&line, &pose.shoulder);
            for (arm, coordinate) in arms_m.iter_mut().zip(&pose.coordinates) {
                if coordinate.dof.is_shoulder() {
                    *arm = line.moment_m.dot(&coordinate.axis);
                }
            }
        }
        let relaxed = self.fibre.state(projected_m, 0.0);
        PlacedMuscle {
            fibre: &self.fibre,
            place: MusclePlace {
                projected_m,
                relaxed,
                passive_share: force_shares(curves, relaxed).0,
                length_factor: curves.active.at(relaxed.length_norm),
                arms_m,
                shortening_m,
                by_blade_m,
            },
        }
    }
}
