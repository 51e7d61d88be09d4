//! The exact parts of a change over a stretch on which the same conditions bind.
//!
//! In: the [`Equilibrium`] at both ends. Out: parts of muscles and of what is no muscle; the equations stand at
//! [`super::account()`].

use super::account::{ForceFactor, MuscleShare};
use super::equilibrium::Equilibrium;
use super::muscle_force::ForceTerms;
use crate::anatomy::Joint;
use crate::numeric::shapley_shares;

/// Two equilibria of one shape.
pub(super) struct Stretch<'a> {
    pub(super) before: &'a Equilibrium,
    pub(super) after: &'a Equilibrium,
}

impl Stretch<'_> {
    /// Mean weight of a row.
    pub(super) fn mean(&self, row: usize) -> f64 {
        f64::midpoint(self.before.weight(row), self.after.weight(row))
    }

    /// What the load's own changed lever in a row adds, pushes apart.
    fn lever(&self, row: usize) -> f64 {
        self.price(row) * (coefficient(self.after, row, 0) - coefficient(self.before, row, 0))
    }

    /// What the changed lever of the load with all pushes about a joint's axis adds: change of the lever times its price.
    pub(super) fn whole_lever(&self, row: usize) -> f64 {
        let [old, new] = [self.before, self.after].map(|of| outside_lever(of, row));
        self.price(row) * (new - old)
    }

    /// What one metre more of lever about an axis takes from the capacity or adds to it, the mean over the stretch.
    fn price(&self, row: usize) -> f64 {
        let (old, new) = (self.before, self.after);
        0.5 * (old.capacity() * new.weight(row) + new.capacity() * old.weight(row))
    }

    /// All that load and surroundings add: levers, pushes, their cones and balances.
    pub(super) fn outside(&self) -> f64 {
        let (old, new) = (self.before, self.after);
        let beside = 1 + old.names.len()..old.columns();
        let pushed = |of: &Equilibrium, row: usize| -> f64 {
            let columns = beside.clone();
            columns
                .map(|column| coefficient(of, row, column) * of.value(column))
                .sum()
        };
        let rows = (0..old.rows())
            .map(|row| self.lever(row) + self.mean(row) * (pushed(new, row) - pushed(old, row)));
        rows.sum::<f64>() + self.cones()
    }

    /// The limbs' weight at the joints and in the balances.
    pub(super) fn limbs(&self) -> f64 {
        let (old, new) = (&self.before.pose, &self.after.pose);
        let joints = old.gravity_nm.iter().zip(&new.gravity_nm);
        let balances = old.balances.iter().zip(&new.balances);
        let changes = joints
            .map(|(old, new)| new - old)
            .chain(balances.map(|(old, new)| new.constant - old.constant));
        changes
            .enumerate()
            .map(|(row, change)| self.mean(row) * change)
            .sum()
    }

    /// The parts of cones that do not grow with the load.
    fn cones(&self) -> f64 {
        let conditions = joint_rows(self.before) + self.before.pose.balances.len();
        let right = |of: &Equilibrium, row: usize| of.programme.rows_and_columns().right_side(row);
        (conditions..self.before.rows())
            .map(|row| self.mean(row) * (right(self.before, row) - right(self.after, row)))
            .sum()
    }

    /// What no row explains where a straight limb bears anything: the load's own bound binds.
    pub(super) fn boundless(&self) -> f64 {
        let unexplained = |of: &Equilibrium| -> f64 {
            let rows = 0..of.rows();
            1.0 + rows
                .map(|row| of.weight(row) * coefficient(of, row, 0))
                .sum::<f64>()
        };
        let mean = f64::midpoint(unexplained(self.before), unexplained(self.after));
        mean * (self.after.capacity() - self.before.capacity())
    }

    /// Capacity per newton of a muscle's force with one end's arms and the mean weights.
    pub(super) fn gain(&self, of: &Equilibrium, muscle: usize) -> f64 {
        let rows = 0..joint_rows(of);
        rows.map(|row| self.mean(row) * of.muscles[muscle].arms_m[row])
            .sum()
    }

    /// Adds the shares of a muscle's factors.
    pub(super) fn add_muscle(&self, share: &mut MuscleShare, index: usize) {
        let arms = [self.before, self.after].map(|of| &of.muscles[index].arms_m);
        let gain = [self.before, self.after].map(|of| self.gain(of, index));
        let terms = [&self.before.terms[index], &self.after.terms[index]];
        let activation = [self.before, self.after].map(|of| of.activation(index));
        let shares: [f64; 7] = shapley_shares(|set| {
            let of = |factor: ForceFactor| set >> factor as usize & 1;
            let mix = ForceTerms {
                peak_n: terms[of(ForceFactor::PeakForce)].peak_n,
                length_factor: terms[of(ForceFactor::Length)].length_factor,
                speed_factor: terms[of(ForceFactor::Speed)].speed_factor,
                passive: terms[of(ForceFactor::Passive)].passive,
                cos_pennation: terms[of(ForceFactor::Pennation)].cos_pennation,
            };
            gain[of(ForceFactor::Arm)] * mix.force_n(activation[of(ForceFactor::Activation)])
        });
        for (sum, part) in share.parts.iter_mut().zip(shares) {
            *sum += part;
        }
        let change = gain[1] - gain[0];
        let force_n = if change == 0.0 {
            0.0
        } else {
            shares[0] / change
        };
        for (row, arm) in share.arms.iter_mut().enumerate() {
            arm.part += self.mean(row) * (arms[1][row] - arms[0][row]) * force_n;
        }
    }
}

/// How many rows of the programme are coordinates: the first ones.
pub(super) fn joint_rows(of: &Equilibrium) -> usize {
    of.pose.coordinates.len()
}

/// The joint of a coordinate's row.
pub(super) fn joint_of(of: &Equilibrium, row: usize) -> Joint {
    of.pose.coordinates[row].dof.joint()
}

/// Torque of load and pushes in a joint's row per unit of capacity.
pub(super) fn outside_lever(of: &Equilibrium, row: usize) -> f64 {
    let pushed: f64 = reactions(of)
        .map(|column| coefficient(of, row, column) * of.value(column))
        .sum();
    let per_load = if of.capacity() == 0.0 {
        0.0
    } else {
        pushed / of.capacity()
    };
    coefficient(of, row, 0) + per_load
}

/// A coefficient of the programme.
fn coefficient(of: &Equilibrium, row: usize, column: usize) -> f64 {
    of.programme.rows_and_columns().coefficient(row, column)
}

/// The columns of the reactions.
fn reactions(of: &Equilibrium) -> std::ops::Range<usize> {
    let first = 1 + of.names.len();
    first..first + of.pose.reactions.len()
}
