//! A pose's linear programme as rows and columns.
//!
//! In: a pose, its muscles, the passive joints, the load's direction. Out: [`PoseProgramme`], filled and solved;
//! the equation stands at [`super::Solver::solve`].

use super::muscle_force::ForcesAtPose;
use crate::error::{Error, HoldFault, Result};
use crate::movement::{Measure, PlaneForce, Pose, ReactionLimit, Sides};
use crate::numeric::{MAX_ROWS, Programme, SimplexBasis, Solution, solve};
use arrayvec::ArrayVec;

/// Load that counts as "as much as you like", N or N·m: a straight limb bears almost anything.
pub const BOUNDLESS: f64 = 1.0e5;

/// The programme of one pose after the other, in the same memory.
#[derive(Debug, Clone)]
pub(super) struct PoseProgramme {
    measure: Measure,
    share: f64,
    programme: Programme,
}

impl PoseProgramme {
    /// A programme for the poses of one range, still empty.
    ///
    /// **Fails** never for a range from `movement`.
    pub(super) fn new(measure: Measure, sides: Sides) -> Result<Self> {
        Ok(Self {
            measure,
            share: 1.0 / sides.count(),
            programme: Programme::new(1)?,
        })
    }

    /// The rows and columns as they were filled last.
    pub(super) const fn rows_and_columns(&self) -> &Programme {
        &self.programme
    }

    /// The optimum of the programme that was filled for this pose.
    ///
    /// **Fails** when no activation keeps the pose, naming the place.
    pub(super) fn solve(&self, pose: &Pose, warm: Option<&SimplexBasis>) -> Result<Solution> {
        solve(&self.programme, warm).map_err(|failure| {
            Error::no_answer(HoldFault::NoActivation {
                range: pose.load.range,
                why: failure.into(),
                moving: None,
                joint: self.joint_that_lacks(pose),
            })
        })
    }

    /// The joint at which the least torque from outside would keep the pose; `None` where none at one joint alone does.
    ///
    /// ```text
    /// minimise  t⁺ + t⁻   with t⁺ − t⁻ added to row j,   t ≥ 0;   the row whose least sum is least
    /// ```
    /// `t` torque, N·m. **Source.** Elastic rows of a programme without an answer: Chinneck & Dravnieks 1991, ORSA J. Comput. 3:157-168
    /// (from memory). **Fails.** Never.
    fn joint_that_lacks(&self, pose: &Pose) -> Option<&'static str> {
        /// What 1 N·m from outside costs beside 1 N of load: more than any load can be worth.
        const DEAR: f64 = 1.0e3;
        let rows = self.programme.rows();
        let needed = |row: usize| -> Option<f64> {
            let mut helped = self.programme.clone();
            let mut column = [0.0; MAX_ROWS];
            for sign in [1.0, -1.0] {
                column[row] = sign;
                helped
                    .add_column(-DEAR, 0.0, f64::INFINITY, &column[..rows])
                    .ok()?;
            }
            let solution = solve(&helped, None).ok()?;
            let outside = solution.values().iter().rev().take(2);
            Some(outside.sum())
        };
        let joints = pose.coordinates.iter().enumerate();
        let kept = joints.filter_map(|(row, coordinate)| Some((needed(row)?, coordinate.dof)));
        let (_, dof) = kept.min_by(|a, b| a.0.total_cmp(&b.0))?;
        Some(dof.joint().name())
    }

    /// Fills the programme: one column for the load, one a muscle, one a reaction, one a gap of a cone.
    ///
    /// **Fails** on numbers that are none.
    pub(super) fn build<'m>(
        &mut self,
        pose: &Pose,
        muscles: impl Iterator<Item = ForcesAtPose<'m>> + Clone,
        joints_nm: &[f64],
        direction: PlaneForce,
    ) -> Result<()> {
        let conditions = pose.coordinates.len() + pose.balances.len();
        let reactions = pose.reactions.iter();
        let cones: usize = reactions
            .map(|r| cone_rows(&r.least) + cone_rows(&r.most))
            .sum();
        let rows = conditions + cones;
        let side = [direction.x_n * self.share, direction.z_n * self.share];
        self.programme.clear(rows)?;
        let (mut right, mut load) = ([0.0; MAX_ROWS], [0.0; MAX_ROWS]);
        let (right, load) = (&mut right[..rows], &mut load[..rows]);
        right_side(pose, muscles.clone(), joints_nm, right);
        self.load_column(pose, side, load);
        let mut cone_columns: ArrayVec<(usize, usize, f64), MAX_ROWS> = ArrayVec::new();
        let mut row = conditions;
        for (k, reaction) in pose.reactions.iter().enumerate() {
            for (limit, sign) in [(&reaction.least, -1.0), (&reaction.most, 1.0)] {
                if cone_rows(limit) == 1 {
                    // sign·R + slack − sign·λ·(per_load·w) = sign·constant
                    load[row] = -sign * per_load(limit.per_load, side);
                    right[row] = sign * limit.constant;
                    cone_columns.push((k, row, sign));
                    row += 1;
                }
            }
        }
        self.programme.set_right_side(right)?;
        self.programme
            .add_column(1.0, -BOUNDLESS, BOUNDLESS, load)?;
        self.add_muscles(muscles, rows)?;
        self.add_reactions(pose, rows, &cone_columns)
    }

    fn add_muscles<'m>(
        &mut self,
        muscles: impl Iterator<Item = ForcesAtPose<'m>>,
        rows: usize,
    ) -> Result<()> {
        let mut column = [0.0; MAX_ROWS];
        let column = &mut column[..rows];
        for muscle in muscles {
            for (entry, arm) in column.iter_mut().zip(muscle.arms_m) {
                *entry = arm * muscle.active_n;
            }
            self.programme.add_column(-1.0e-6, 0.0, 1.0, column)?;
        }
        Ok(())
    }

    fn load_column(&self, pose: &Pose, side: [f64; 2], load: &mut [f64]) {
        let joints = pose.coordinates.len();
        match self.measure {
            Measure::Torque => load[0] = -pose.coordinates[0].slope_rad.signum(),
            Measure::Force => {
                for (entry, jacobian) in load.iter_mut().zip(&pose.load_jacobian) {
                    *entry = jacobian.x * side[0] + jacobian.z * side[1];
                }
            }
        }
        for (b, balance) in pose.balances.iter().enumerate() {
            load[joints + b] = per_load(balance.per_load, side);
        }
    }

    fn add_reactions(
        &mut self,
        pose: &Pose,
        rows: usize,
        cone_columns: &[(usize, usize, f64)],
    ) -> Result<()> {
        let joints = pose.coordinates.len();
        let mut column = [0.0; MAX_ROWS];
        let column = &mut column[..rows];
        for (k, reaction) in pose.reactions.iter().enumerate() {
            column.fill(0.0);
            column[..joints].copy_from_slice(&reaction.column);
            for (b, balance) in pose.balances.iter().enumerate() {
                column[joints + b] = balance.reactions[k];
            }
            for (_, row, sign) in cone_columns.iter().filter(|c| c.0 == k) {
                column[*row] = *sign;
            }
            let bound = |limit: &ReactionLimit, open: f64| {
                if cone_rows(limit) == 1 {
                    open
                } else {
                    limit.constant
                }
            };
            self.programme.add_column(
                0.0,
                bound(&reaction.least, f64::NEG_INFINITY),
                bound(&reaction.most, f64::INFINITY),
                column,
            )?;
        }
        for (_, row, _) in cone_columns {
            column.fill(0.0);
            column[*row] = 1.0;
            self.programme.add_column(0.0, 0.0, f64::INFINITY, column)?;
        }
        Ok(())
    }
}

/// What limbs, joints and relaxed muscles ask of every coordinate, and the constant part of every balance.
fn right_side<'m>(
    pose: &Pose,
    muscles: impl Iterator<Item = ForcesAtPose<'m>> + Clone,
    joints_nm: &[f64],
    right: &mut [f64],
) {
    let joints = pose.coordinates.len();
    for (j, sum) in right.iter_mut().enumerate().take(joints) {
        let muscles = muscles.clone();
        let passive: f64 = muscles.map(|m| m.arms_m[j] * m.passive_n).sum();
        *sum = -(pose.gravity_nm[j] + passive + joints_nm[j]);
    }
    for (b, balance) in pose.balances.iter().enumerate() {
        right[joints + b] = -balance.constant;
    }
}

/// 1 if the limit grows with the load and needs a row of its own, else 0.
fn cone_rows(limit: &ReactionLimit) -> usize {
    usize::from(limit.per_load != [0.0, 0.0])
}

fn per_load(coefficients: [f64; 2], side: [f64; 2]) -> f64 {
    coefficients[0] * side[0] + coefficients[1] * side[1]
}
