//! What one newton costs at each place of the range: the ground on which setups are searched.
//!
//! In: poses and capacity. Out: a [`CostField`]: effort per newton forward and upward.

use super::solve::{SolvedLift, load_points, load_torque_nm};
use crate::capacity::{curve_of, plain_direction};
use crate::error::{Error, LiftFault, Result};
use crate::movement::{Carrier, Measure, PlaneForce};
use crate::resistance::{Motion, Setup};
use crate::setups::CostField;
use crate::units::Mass;

/// Lean of the two directions beside the plumb line from which the cost of a sideways newton is taken,
/// rad: about as much as a loaded bar with bands leans.
const LEAN_RAD: f64 = 0.03;

impl SolvedLift<'_> {
    /// Effort per newton at each sample.
    ///
    /// ```text
    /// torque     e = −n·(J_x·F_x + J_z·F_z)·sign(q′)/c            one joint: exact
    /// force      e = (F · d)/c                                   d = the plain load's own direction
    /// free bar   e = −F_z/c + F_x·(1/c₊ − 1/c₋)/(2 sin δ)         c± = capacity along pulls that lean ±δ
    /// ```
    /// **Shape.** Linear in the force; effort is a convex function of it, so the last one is its tangent
    /// at the plumb line. **Source.** Definition of capacity. **Fails** where a pose holds no load at all.
    pub(super) fn cost_field(&self) -> Result<CostField> {
        let capacity = self.capacity.values();
        if let Some(index) = capacity.iter().position(|c| !(c.is_finite() && *c > 0.0)) {
            let range = self.range.poses[index].load.range;
            return Err(Error::no_answer(LiftFault::HoldsNothing { range }));
        }
        let effort_per_n = match (self.range.measure, self.range.carrier) {
            (Measure::Torque, _) => self.by_torque(&capacity),
            (Measure::Force, Carrier::Bar) => self.on_a_free_bar(&capacity)?,
            (Measure::Force, _) => self.along_the_plain_load(&capacity),
        };
        let body = match self.range.carrier {
            Carrier::Body => self.question().lifter.body_mass,
            _ => Mass::ZERO,
        };
        Ok(CostField {
            points: load_points(&self.range),
            carrier: self.range.carrier,
            effort_per_n,
            bends: (self.range.measure, self.range.carrier) == (Measure::Force, Carrier::Bar),
            body,
        })
    }

    fn by_torque(&self, capacity: &[f64]) -> Vec<[f64; 2]> {
        let one = |x_n, z_n| PlaneForce { x_n, z_n };
        self.range
            .poses
            .iter()
            .zip(capacity)
            .map(|(pose, c)| {
                let torque_nm = |force| load_torque_nm(pose, force, &self.range);
                [torque_nm(one(1.0, 0.0)) / c, torque_nm(one(0.0, 1.0)) / c]
            })
            .collect()
    }

    fn along_the_plain_load(&self, capacity: &[f64]) -> Vec<[f64; 2]> {
        let points = load_points(&self.range);
        let plain = Setup::plain(Mass::from_kg(1.0)).rigged_over(&points);
        points
            .iter()
            .zip(capacity)
            .map(|(point, c)| {
                let force = plain
                    .total_at(point, &self.range.carrier, Motion::Hold)
                    .force;
                let size = force.magnitude_n().max(f64::MIN_POSITIVE);
                [force.x_n / size / c, force.z_n / size / c]
            })
            .collect()
    }

    fn on_a_free_bar(&self, capacity: &[f64]) -> Result<Vec<[f64; 2]>> {
        let leaning = |lean_rad: f64| {
            let plain = plain_direction(self.range.carrier);
            let direction = PlaneForce {
                x_n: lean_rad.sin(),
                z_n: plain.z_n * lean_rad.cos(),
            };
            let directions = vec![direction; self.range.poses.len()];
            let pace = self.question().pace;
            curve_of(&self.acting, &self.range, Some(&directions), pace).map(|curve| curve.values())
        };
        let (ahead, behind) = (leaning(LEAN_RAD)?, leaning(-LEAN_RAD)?);
        Ok(capacity
            .iter()
            .zip(ahead.iter().zip(&behind))
            .map(|(c, (ahead, behind))| {
                let sideways = (1.0 / ahead - 1.0 / behind) / (2.0 * LEAN_RAD.sin());
                [sideways, -1.0 / c]
            })
            .collect())
    }
}
