//! Rules for muscles on the way of a lift: lengths that tear fibres, torques that no joint was ever measured at, lifts that
//! a body cannot do.
//!
//! In: a finished lifter, a movement. Out: what is farthest out of each muscle, where it is odd.

use super::complaint::{Complaint, complaint};
use crate::anatomy::{Joint, Lifter};
use crate::bounds::{Bound, bounds};
use crate::capacity::{Acting, Pace, PlacedMuscle, curve_of};
use crate::error::{BrokenRule, Doubt, Fault, JointTorque, MuscleRule, OutOfBounds, Result};
use crate::movement::{Carrier, Helping, Movement, Pose, Range, trace};

/// A muscle that is odd somewhere on the way of a lift.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct OddMuscle {
    /// The muscle.
    pub muscle: String,
    /// Field of it that is to be looked at.
    pub field: &'static str,
    /// The rule or the doubt.
    pub broken: BrokenRule<Fault>,
}

impl OddMuscle {
    /// The complaint at the muscle.
    pub fn complaint(self) -> Complaint {
        let path = format!("muscles.{}.{}", self.muscle, self.field);
        complaint(path, self.broken)
    }

    /// Whether it is refused.
    pub const fn is_wrong(&self) -> bool {
        matches!(self.broken, BrokenRule::Muscle(_))
    }
}

/// Poses of a lift that are looked at.
const POSES: usize = 5;

/// The muscles that are odd in a lift; none where the limbs cannot do it, which others tell.
pub(super) fn odd_muscles(lifter: &Lifter, movement: &Movement) -> Vec<OddMuscle> {
    let Ok(range) = trace(movement, lifter, POSES) else {
        return Vec::new();
    };
    let Ok(acting) = Acting::of(lifter, &range.poses) else {
        return Vec::new();
    };
    let poses = range.poses.iter();
    let placed: Vec<Vec<PlacedMuscle<'_>>> = poses
        .map(|pose| {
            let muscles = acting.muscles.iter();
            muscles
                .map(|muscle| muscle.placed(&acting.curves, pose))
                .collect()
        })
        .collect();
    let mut odd = odd_fibres(&acting, &placed, movement);
    // What tears has no torque worth telling.
    if !odd.iter().any(OddMuscle::is_wrong) {
        odd.extend(odd_torques(&acting, &range, &placed, lifter, movement));
    }
    odd
}

/// The muscles whose fibres are of an odd length.
///
/// The lengths are those of relaxed fibres: activity stretches the tendon and shortens them.
fn odd_fibres(
    acting: &Acting,
    placed: &[Vec<PlacedMuscle<'_>>],
    movement: &Movement,
) -> Vec<OddMuscle> {
    let bound = &bounds().relaxed_length;
    let odd = acting
        .muscles
        .iter()
        .enumerate()
        .filter_map(|(index, muscle)| {
            let lengths = || placed.iter().map(|pose| pose[index].relaxed_length());
            let wrong = farthest(lengths().filter_map(|length| bound.outside(length)));
            let unlikely = farthest(lengths().filter_map(|length| bound.unlikely(length)));
            let movement = movement.title.clone();
            let muscle_name = muscle.name.clone();
            let broken = match (wrong, unlikely) {
                (Some(length), _) => BrokenRule::Muscle(MuscleRule::Torn {
                    muscle: muscle_name,
                    movement,
                    length,
                }),
                (None, Some(length)) => BrokenRule::Doubt(Doubt::Fibres {
                    muscle: muscle_name,
                    movement,
                    length,
                }),
                (None, None) => return None,
            };
            Some(OddMuscle {
                muscle: muscle.name.clone(),
                field: "optimal_fibre_length",
                broken,
            })
        });
    odd.collect()
}

/// The length farthest out, as a ratio.
fn farthest(lengths: impl Iterator<Item = OutOfBounds>) -> Option<OutOfBounds> {
    let out = |length: &OutOfBounds| {
        (length.value / length.most).max(length.least / length.value.max(1.0e-9))
    };
    lengths.max_by(|a, b| out(a).total_cmp(&out(b)))
}

/// What all muscles of one side together, fully active and held still, make about a joint in one direction, over the
/// published maxima; told at the muscle that makes most of it.
///
/// ```text
/// τ = Σ_i F_i·r_ij      over the muscles with one sign of r_ij,    τ / body mass ≤ 3 · published mean of men
/// ```
fn odd_torques(
    acting: &Acting,
    range: &Range,
    placed: &[Vec<PlacedMuscle<'_>>],
    lifter: &Lifter,
    movement: &Movement,
) -> Vec<OddMuscle> {
    let mut worst: Vec<JointPull> = Vec::new();
    for (pose, muscles) in range.poses.iter().zip(placed) {
        for pull in pulls(acting, pose, muscles) {
            let same = |held: &&mut JointPull| held.joint == pull.joint && held.up == pull.up;
            match worst.iter_mut().find(same) {
                Some(held) if held.torque_nm >= pull.torque_nm => {}
                Some(held) => *held = pull,
                None => worst.push(pull),
            }
        }
    }
    let odd = worst.into_iter().filter_map(|pull| {
        let bound = torque_bound(pull.joint, pull.up);
        let per_kg = pull.torque_nm / lifter.body_mass.as_kg();
        let torque = |per_kg: OutOfBounds| JointTorque {
            movement: movement.title.clone(),
            joint: pull.joint.name(),
            torque_nm: pull.torque_nm,
            per_kg,
        };
        let broken = match (bound.outside(per_kg), bound.unlikely(per_kg)) {
            (Some(per_kg), _) => BrokenRule::Muscle(MuscleRule::TooStrong(torque(per_kg))),
            (None, Some(per_kg)) => BrokenRule::Doubt(Doubt::Strong(torque(per_kg))),
            (None, None) => return None,
        };
        Some(OddMuscle {
            muscle: acting.muscles[pull.muscle].name.clone(),
            field: "peak_force",
            broken,
        })
    });
    odd.collect()
}

/// The pull of all muscles about a joint in one direction.
struct JointPull {
    joint: Joint,
    up: bool,
    torque_nm: f64,
    /// The muscle that makes most of it.
    muscle: usize,
}

/// The pulls of a pose, both ways about each of its coordinates.
fn pulls(acting: &Acting, pose: &Pose, muscles: &[PlacedMuscle<'_>]) -> Vec<JointPull> {
    let at: Vec<_> = muscles
        .iter()
        .map(|muscle| muscle.at(&acting.curves, 0.0))
        .collect();
    let ways = pose.coordinates.iter().enumerate();
    let ways = ways
        .flat_map(|(index, coordinate)| [(index, coordinate, true), (index, coordinate, false)]);
    ways.map(|(index, coordinate, up)| {
        let sign = if up { 1.0 } else { -1.0 };
        let torques = at.iter().map(|muscle| {
            let force_n = muscle.passive_n + muscle.active_n;
            (force_n * muscle.arms_m[index] * sign).max(0.0)
        });
        let torques: Vec<f64> = torques.collect();
        let greatest = (0..torques.len()).max_by(|a, b| torques[*a].total_cmp(&torques[*b]));
        JointPull {
            joint: coordinate.dof.joint(),
            up,
            torque_nm: torques.iter().sum(),
            muscle: greatest.unwrap_or(0),
        }
    })
    .collect()
}

/// What a joint's torque over body mass may be; angles go up in flexion and dorsiflexion.
fn torque_bound(joint: Joint, up: bool) -> &'static Bound {
    let bounds = bounds();
    match (joint, up) {
        (Joint::Elbow, true) => &bounds.torque_elbow_flexion,
        (Joint::Elbow, false) => &bounds.torque_elbow_extension,
        (Joint::Shoulder, _) => &bounds.torque_shoulder,
        (Joint::LowerBack, true) => &bounds.torque_trunk_flexion,
        (Joint::LowerBack, false) => &bounds.torque_trunk_extension,
        (Joint::Hip, true) => &bounds.torque_hip_flexion,
        (Joint::Hip, false) => &bounds.torque_hip_extension,
        (Joint::Knee, true) => &bounds.torque_knee_flexion,
        (Joint::Knee, false) => &bounds.torque_knee_extension,
        (Joint::Ankle, true) => &bounds.torque_dorsiflexion,
        (Joint::Ankle, false) => &bounds.torque_plantarflexion,
    }
}

/// Whether limbs and muscles can do a lift: what `curve` does, at a few places.
///
/// **Fails** as `curve` does.
pub(super) fn can_do(lifter: &Lifter, movement: &Movement) -> Result<()> {
    let range = trace(movement, lifter, POSES)?;
    let acting = Acting::of(lifter, &range.poses)?;
    curve_of(&acting, &range, None, Pace::Isometric)?;
    Ok(())
}

/// Poses of a lift between which its load may turn round.
const WAY_POSES: usize = 41;

/// A doubt where the load of a bar or dumb-bell ends below where it starts, or sinks at its start or over a good part of
/// its way; none where the limbs cannot do it.
pub(super) fn way(lifter: &Lifter, movement: &Movement) -> Option<Complaint> {
    let range = trace(movement, lifter, WAY_POSES).ok()?;
    if !matches!(range.carrier, Carrier::Bar | Carrier::Dumbbell) {
        return None;
    }
    let sinks = || Helping::of(range.poses.iter().map(|pose| -pose.load.dz_ds_m));
    let doubt = match range.sinks_m() {
        Some(by_m) => Some(Doubt::GoesDown {
            by_cm: 100.0 * by_m,
        }),
        None => sinks().map(|helping| Doubt::LoadHelps {
            at_start: helping.at_start,
            share: helping.share,
        }),
    };
    doubt.map(|doubt| complaint("path", BrokenRule::Doubt(doubt)))
}
