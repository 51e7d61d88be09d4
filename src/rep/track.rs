//! What the body alone brings to the motion at each place of the range: geometry, inertia, own weight.
//!
//! In: the poses of a range and the acting muscles. Out: [`Track`], smooth functions of the range.

use super::range_table::Table;
use crate::capacity::Acting;
use crate::movement::{Carrier, LoadPoint, Measure, Pose, Range, Sides};

/// Inertia of limbs without mass, and more than any limbs have, kg·m² per range²: between them a reciprocal is a number.
const LEAST_INERTIA: f64 = 1.0e-12;
const MOST_INERTIA: f64 = 1.0e9;

/// The body's part of the equation of motion.
#[derive(Debug, Clone)]
pub(super) struct Track {
    /// One over the limbs' inertia, passive force, lever of the measured speed, position, angle, braking.
    table: Table<6>,
    /// Load points at the table's places.
    pub(super) points: Vec<LoadPoint>,
    /// Unit of speed and force: along the path, or about the joint.
    pub(super) measure: Measure,
    /// How the load is taken.
    pub(super) carrier: Carrier,
    /// Factor from what a setup exerts to what the equation counts.
    pub(super) load_share: f64,
}

/// The track at one place.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct TrackPoint {
    /// Inertia of the limbs of all counted sides, kg·m² per range².
    pub(super) limb_inertia: f64,
    /// Its slope along the range.
    pub(super) limb_inertia_slope: f64,
    /// Generalised force of limb weight and passive tissue, N·m per range; against the lift negative.
    pub(super) passive: f64,
    /// Path length (m) or joint angle (rad) per unit of range.
    pub(super) lever: f64,
    /// Its slope along the range.
    pub(super) lever_slope: f64,
    /// Path length since the start (m), or angle turned since the start (rad).
    pub(super) position: f64,
    /// Angle of the first coordinate, rad.
    pub(super) angle_rad: f64,
    /// Generalised force by which full antagonists lie below the relaxed limb, N·m per range.
    pub(super) braking: f64,
}

impl Track {
    /// The track of a range, evenly spaced as the range is; `braking` holds the load back, one a pose.
    ///
    /// ```text
    /// I(s) = 1/w(s),   I′ = −w′/w²      w through 1/I at the poses
    /// ```
    /// Inertia climbs towards a straight limb like `1/(δ + 1 − s)`, a pole a little beyond the end, which no cubic
    /// follows from pose to pose; its reciprocal is nearly straight there.
    pub(super) fn new(range: &Range, acting: &Acting, braking: &[f64]) -> Self {
        let sides = counted_sides(range);
        let mut position = 0.0;
        let mut rows = Vec::with_capacity(range.poses.len());
        let width = 1.0 / (range.poses.len() - 1) as f64;
        for (index, pose) in range.poses.iter().enumerate() {
            if index > 0 {
                let before = lever(&range.poses[index - 1], range.measure);
                position += 0.5 * width * (before + lever(pose, range.measure));
            }
            let passive = sides * passive_of(pose, acting);
            rows.push([
                (sides * pose.limb_inertia).max(LEAST_INERTIA).recip(),
                passive,
                lever(pose, range.measure),
                position,
                pose.coordinates[0].angle_rad,
                if braking[index] > 0.0 {
                    (braking[index] + passive).max(0.0)
                } else {
                    0.0
                },
            ]);
        }
        Self {
            table: Table::through_smooth(rows),
            points: range.poses.iter().map(|pose| pose.load).collect(),
            measure: range.measure,
            carrier: range.carrier,
            load_share: load_share(range),
        }
    }

    /// Everything at one place.
    #[inline]
    pub(super) fn at(&self, s: f64) -> TrackPoint {
        let (value, slope) = self.table.at(s);
        let limb_inertia = value[0].max(MOST_INERTIA.recip()).recip();
        TrackPoint {
            limb_inertia,
            limb_inertia_slope: -slope[0] * limb_inertia * limb_inertia,
            passive: value[1],
            lever: value[2],
            lever_slope: slope[2],
            position: value[3],
            angle_rad: value[4],
            braking: value[5].max(0.0),
        }
    }

    /// Generalised passive force at every place of the table.
    pub(super) fn passive_at_places(&self) -> Vec<f64> {
        let last = (self.points.len() - 1) as f64;
        (0..self.points.len())
            .map(|index| self.at(index as f64 / last).passive)
            .collect()
    }
}

/// Sides whose limbs the equation counts: torque is of one side, force of all that share the load.
fn counted_sides(range: &Range) -> f64 {
    match range.measure {
        Measure::Torque => 1.0,
        Measure::Force => range.sides.count(),
    }
}

/// What part of a setup's force and mass the equation counts.
///
/// A bar loads both sides together, and torque is of one side; a dumb-bell's figures are of one hand.
fn load_share(range: &Range) -> f64 {
    let per_hand = matches!(range.carrier, Carrier::Dumbbell);
    match (range.measure, range.sides, per_hand) {
        (Measure::Torque, Sides::Both, false) => 0.5,
        (Measure::Force, Sides::Both, true) => 2.0,
        _ => 1.0,
    }
}

/// Path length (m) or joint angle (rad) per unit of range.
fn lever(pose: &Pose, measure: Measure) -> f64 {
    match measure {
        Measure::Force => pose.load.dx_ds_m.hypot(pose.load.dz_ds_m),
        Measure::Torque => pose.coordinates[0].slope_rad.abs(),
    }
}

/// Generalised force of limb weight, joint capsules and passive muscle, one side.
///
/// ```text
/// P = Σ_j (dq_j/ds)·( G_j + P_j + Σ_i r_ij·F_passive,i )
/// ```
/// **Source.** Virtual work: of all that the pose's programme balances, the part no activation changes.
fn passive_of(pose: &Pose, acting: &Acting) -> f64 {
    let mut torque_nm: Vec<f64> = pose.gravity_nm.clone();
    for (sum, joint) in torque_nm.iter_mut().zip(acting.passive_joints_nm(pose)) {
        *sum += joint;
    }
    for muscle in &acting.muscles {
        let placed = muscle.placed(&acting.curves, pose);
        let (passive_n, arms_m) = placed.at_rest();
        for (sum, arm) in torque_nm.iter_mut().zip(arms_m) {
            *sum += arm * passive_n;
        }
    }
    torque_nm
        .iter()
        .zip(&pose.coordinates)
        .map(|(torque, coordinate)| torque * coordinate.slope_rad)
        .sum()
}
