//! The pose's linear programme: the largest load that muscles and surroundings can hold.
//!
//! In: a pose, the acting muscles, the load's direction, a speed. Out: [`Held`]: load, activations,
//! forces, reactions and the dual values that tell which joint gives way first.

use super::muscle_force::{Acting, MuscleAtPose, PlacedMuscle};
use crate::error::{Error, HoldFault, Result};
use crate::movement::{Measure, PlaneForce, Pose, ReactionLimit, Sides};
use crate::numeric::{MAX_ROWS, Programme, SimplexBasis, solve};
use arrayvec::ArrayVec;

/// Load that counts as "as much as you like", N or N·m: a straight limb bears almost anything.
pub const BOUNDLESS: f64 = 1.0e5;

/// What a pose holds at most.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// Largest load factor: N for a force of unit size, N·m for a torque.
    pub capacity: f64,
    /// Every acting muscle at the pose, in the order of [`Acting::muscles`].
    pub muscles: Vec<MuscleAtPose>,
    /// Activation of every acting muscle at the optimum.
    pub activations: Vec<f64>,
    /// Value of every reaction of the pose at the optimum, one side.
    pub reactions: Vec<f64>,
    /// Gain of capacity per N·m more at every coordinate.
    pub duals: Vec<f64>,
    /// Torque of all muscles at every coordinate, N·m, one side.
    pub muscle_torques_nm: Vec<f64>,
    /// Index of the coordinate that gives way first.
    pub limiting: usize,
}

/// Solves poses one after the other, each starting from the last one's basis.
#[derive(Debug)]
pub struct Solver<'a> {
    acting: &'a Acting,
    measure: Measure,
    share: f64,
    programme: Programme,
    warm: Option<SimplexBasis>,
}

impl<'a> Solver<'a> {
    /// A solver for the poses of one range.
    ///
    /// **Fails** never for a range from `movement`.
    pub fn new(acting: &'a Acting, measure: Measure, sides: Sides) -> Result<Self> {
        Ok(Self {
            acting,
            measure,
            share: 1.0 / sides.count(),
            programme: Programme::new(1)?,
            warm: None,
        })
    }

    /// The largest load along `direction` that the pose holds while the range passes at `range_speed`.
    ///
    /// ```text
    /// maximise λ
    /// Σ_i r_ij·F_i(a_i) + G_j + P_j + Σ_k R_k·c_kj + λ·(J_jᵀ w) = 0      every coordinate j
    /// balance + λ·(…) + Σ_k R_k·b_k = 0                            every balance
    /// least_k(λ) ≤ R_k ≤ most_k(λ),   0 ≤ a_i ≤ 1
    /// ```
    /// | symbol | meaning                                                     | unit    |
    /// | ------ | ----------------------------------------------------------- | ------- |
    /// | `λ`    | load factor: the load along its own direction, all sides    | N, N·m  |
    /// | `r_ij` | moment arm of muscle i at coordinate j                      | m       |
    /// | `F_i`  | force of muscle i at activation `a_i`                       | N       |
    /// | `G_j`  | torque of the limbs' weight                                 | N·m     |
    /// | `P_j`  | passive torque of the joint                                 | N·m     |
    /// | `R_k`  | reaction of the surroundings, inside its cone               | N, N·m  |
    /// | `w`    | the load's unit force on one side                           | –       |
    ///
    /// A movement that is measured in torque loads its one coordinate with λ itself, against the
    /// direction of the movement. A cost of 1e-6 per activation settles ties.
    /// **Source.** Static optimisation as a linear programme; duals as joint limits: design of the model.
    /// **Fails** when no activation keeps the pose, naming the place.
    pub fn solve(&mut self, pose: &Pose, direction: PlaneForce, range_speed: f64) -> Result<Held> {
        let placed = self.place(pose);
        self.solve_placed(&placed, pose, direction, range_speed)
    }

    /// The muscles at a pose, for any number of speeds there.
    #[must_use]
    pub fn place(&self, pose: &Pose) -> Vec<PlacedMuscle<'a>> {
        let acting: &'a Acting = self.acting;
        let muscles = acting.muscles.iter();
        muscles
            .map(|muscle| muscle.placed(&acting.curves, pose))
            .collect()
    }

    /// The same as [`Solver::solve`] with muscles from [`Solver::place`] at the same pose.
    pub fn solve_placed(
        &mut self,
        placed: &[PlacedMuscle<'_>],
        pose: &Pose,
        direction: PlaneForce,
        range_speed: f64,
    ) -> Result<Held> {
        let muscles: Vec<MuscleAtPose> = placed
            .iter()
            .map(|muscle| muscle.at(&self.acting.curves, range_speed))
            .collect();
        self.build(pose, &muscles, direction)?;
        let solution = solve(&self.programme, self.warm.as_ref()).map_err(|failure| {
            Error::no_answer(HoldFault::NoActivation {
                range: pose.load.range,
                why: failure.into(),
            })
        })?;
        self.warm = Some(*solution.basis());
        let values = solution.values();
        let count = muscles.len();
        let activations = values[1..=count].to_vec();
        let reactions = values[1 + count..1 + count + pose.reactions.len()].to_vec();
        let rows = pose.coordinates.len();
        let duals: Vec<f64> = solution.duals()[..rows].to_vec();
        let muscle_torques_nm = torques(&muscles, &activations, rows);
        let limiting = limiting(pose, &duals, &muscle_torques_nm);
        Ok(Held {
            capacity: values[0],
            muscles,
            activations,
            reactions,
            duals,
            muscle_torques_nm,
            limiting,
        })
    }

    fn build(
        &mut self,
        pose: &Pose,
        muscles: &[MuscleAtPose],
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
        self.right_side(pose, muscles, right);
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

    /// What limbs, joints and relaxed muscles ask of every coordinate, and the constant part of every balance.
    fn right_side(&self, pose: &Pose, muscles: &[MuscleAtPose], right: &mut [f64]) {
        let joints = pose.coordinates.len();
        let of_joints = self.acting.passive_joints_nm(pose);
        for (j, sum) in right.iter_mut().enumerate().take(joints) {
            let passive: f64 = muscles.iter().map(|m| m.arms_m[j] * m.passive_n).sum();
            *sum = -(pose.gravity_nm[j] + passive + of_joints[j]);
        }
        for (b, balance) in pose.balances.iter().enumerate() {
            right[joints + b] = -balance.constant;
        }
    }

    fn add_muscles(&mut self, muscles: &[MuscleAtPose], rows: usize) -> Result<()> {
        let mut column = [0.0; MAX_ROWS];
        let column = &mut column[..rows];
        for muscle in muscles {
            for (entry, arm) in column.iter_mut().zip(&muscle.arms_m) {
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

/// 1 if the limit grows with the load and needs a row of its own, else 0.
fn cone_rows(limit: &ReactionLimit) -> usize {
    usize::from(limit.per_load != [0.0, 0.0])
}

fn per_load(coefficients: [f64; 2], side: [f64; 2]) -> f64 {
    coefficients[0] * side[0] + coefficients[1] * side[1]
}

fn torques(muscles: &[MuscleAtPose], activations: &[f64], rows: usize) -> Vec<f64> {
    (0..rows)
        .map(|j| {
            muscles
                .iter()
                .zip(activations)
                .map(|(m, a)| m.arms_m[j] * (m.passive_n + a * m.active_n))
                .sum()
        })
        .collect()
}

/// The coordinate whose strength would raise the load most.
///
/// The dual `y_j = ∂λ/∂τ_j` times the muscles' torque there is the gain of capacity per unit share of
/// strength added at that coordinate. A joint's coordinates gain together: first the joint with the greatest
/// `|Σ y_j·τ_j|`, then its greatest coordinate.
fn limiting(pose: &Pose, duals: &[f64], torques_nm: &[f64]) -> usize {
    let gain = |j: usize| duals[j] * torques_nm[j];
    let joint = |j: usize| pose.coordinates[j].dof.joint();
    let of_joint = |j: usize| -> f64 {
        let same = (0..duals.len()).filter(|k| joint(*k) == joint(j));
        same.map(gain).sum::<f64>().abs()
    };
    let order = |a: &usize, b: &usize| {
        let joints = of_joint(*a).total_cmp(&of_joint(*b));
        joints.then(gain(*a).abs().total_cmp(&gain(*b).abs()))
    };
    (0..duals.len())
        .max_by(|a, b| order(a, b).then(b.cmp(a)))
        .unwrap_or(0)
}
