//! The pose's linear programme: the largest load that muscles and surroundings can hold.
//!
//! In: a pose, the acting muscles, the load's direction, a speed. Out: [`Held`]: load, activations,
//! forces, reactions and the dual values that tell which joint gives way first.

use super::muscle_force::{Acting, ForcesAtPose, MuscleAtPose};
use super::pose_programme::PoseProgramme;
use crate::error::Result;
use crate::movement::{Measure, PlaneForce, Pose, Sides};
use crate::numeric::SimplexBasis;

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
    programme: PoseProgramme,
    warm: Option<SimplexBasis>,
}

impl<'a> Solver<'a> {
    /// A solver for the poses of one range.
    ///
    /// **Fails** never for a range from `movement`.
    pub fn new(acting: &'a Acting, measure: Measure, sides: Sides) -> Result<Self> {
        Ok(Self {
            acting,
            programme: PoseProgramme::new(measure, sides)?,
            warm: None,
        })
    }

    /// A solver that starts at the basis of another one's last answer.
    ///
    /// **Fails** as [`Solver::new`].
    pub fn from_basis(
        acting: &'a Acting,
        (measure, sides): (Measure, Sides),
        basis: SimplexBasis,
    ) -> Result<Self> {
        let mut solver = Self::new(acting, measure, sides)?;
        solver.warm = Some(basis);
        Ok(solver)
    }

    /// The basis of the last answer.
    #[must_use]
    pub const fn basis(&self) -> Option<SimplexBasis> {
        self.warm
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
        let acting = self.acting;
        let muscles = acting.muscles.iter();
        let muscles = muscles.map(|muscle| muscle.at(&acting.curves, pose, range_speed));
        self.solve_muscles(muscles.collect(), pose, direction)
    }

    /// The same as [`Solver::solve`] with the muscles as they are at the pose and at some speed.
    pub fn solve_muscles(
        &mut self,
        muscles: Vec<MuscleAtPose>,
        pose: &Pose,
        direction: PlaneForce,
    ) -> Result<Held> {
        let joints_nm = self.acting.passive_joints_nm(pose);
        self.programme.build(
            pose,
            muscles.iter().map(ForcesAtPose::from),
            &joints_nm,
            direction,
        )?;
        let solution = self.programme.solve(pose, self.warm.as_ref())?;
        self.warm = Some(*solution.basis());
        let values = solution.values();
        let count = muscles.len();
        let activations = values[1..=count].to_vec();
        let reactions = values[1 + count..1 + count + pose.reactions.len()].to_vec();
        let rows = pose.coordinates.len();
        let duals: Vec<f64> = solution.duals()[..rows].to_vec();
        let muscle_torques_nm = torques(muscles.iter().map(ForcesAtPose::from), &activations, rows);
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

    /// Capacity and the coordinate that gives way first, as [`Solver::solve`] finds them, of known forces and passive joints.
    ///
    /// **Fails** as [`Solver::solve`].
    pub fn capacity_of<'m>(
        &mut self,
        forces: impl Iterator<Item = ForcesAtPose<'m>> + Clone,
        joints_nm: &[f64],
        pose: &Pose,
        direction: PlaneForce,
    ) -> Result<(f64, usize)> {
        self.programme
            .build(pose, forces.clone(), joints_nm, direction)?;
        let solution = self.programme.solve(pose, self.warm.as_ref())?;
        self.warm = Some(*solution.basis());
        let rows = pose.coordinates.len();
        let torques_nm = torques(forces, &solution.values()[1..], rows);
        let limiting = limiting(pose, &solution.duals()[..rows], &torques_nm);
        Ok((solution.values()[0], limiting))
    }
}

fn torques<'m>(
    muscles: impl Iterator<Item = ForcesAtPose<'m>> + Clone,
    activations: &[f64],
    rows: usize,
) -> Vec<f64> {
    (0..rows)
        .map(|j| {
            muscles
                .clone()
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
