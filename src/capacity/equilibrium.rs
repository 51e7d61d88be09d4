//! One place's programme with its optimum, kept with all it was made of, so that two of them can be compared.
//!
//! In: acting muscles, a range, a sample, a pace. Out: [`Equilibrium`]; mixtures of two on the straight line
//! between them.

use super::capacity_curve::{Pace, plain_direction, range_speed};
use super::muscle_force::{Acting, ForceTerms, ForcesAtPose, MuscleAtPose, PerCoordinate};
use super::pose_programme::PoseProgramme;
use crate::anatomy::FibreState;
use crate::error::Result;
use crate::movement::{PlaneForce, Pose, Range, ReactionLimit};
use crate::numeric::{Point, Solution};

/// A pose held at capacity: what acts there, and what it weighs.
#[derive(Debug, Clone)]
pub struct Equilibrium {
    pub(super) names: Vec<String>,
    pub(super) pose: Pose,
    pub(super) terms: Vec<ForceTerms>,
    pub(super) muscles: Vec<MuscleAtPose>,
    pub(super) joints_nm: PerCoordinate,
    pub(super) sides: f64,
    direction: PlaneForce,
    pub(super) programme: PoseProgramme,
    solution: Solution,
}

impl Equilibrium {
    /// The equilibrium at a sample of a range, along the plain load's direction.
    ///
    /// **Fails** as the curve does that the sample is of.
    pub fn at(acting: &Acting, range: &Range, index: usize, pace: Pace) -> Result<Self> {
        let pose = range.poses[index].clone();
        let speed = range_speed(range, index, pace)?;
        let placed = acting.muscles.iter();
        let placed: Vec<_> = placed
            .map(|muscle| muscle.placed(&acting.curves, &pose))
            .collect();
        let at_speed = placed.iter();
        let muscles = at_speed.map(|muscle| muscle.at(&acting.curves, speed));
        let terms = placed.iter();
        let terms = terms.map(|muscle| muscle.terms(&acting.curves, speed));
        Self::solved(
            acting.muscles.iter().map(|m| m.name.clone()).collect(),
            pose.clone(),
            terms.collect(),
            muscles.collect(),
            acting.passive_joints_nm(&pose),
            plain_direction(range.carrier),
            (
                PoseProgramme::new(range.measure, range.sides)?,
                range.sides.count(),
            ),
        )
    }

    fn solved(
        names: Vec<String>,
        pose: Pose,
        terms: Vec<ForceTerms>,
        muscles: Vec<MuscleAtPose>,
        joints_nm: PerCoordinate,
        direction: PlaneForce,
        (mut programme, sides): (PoseProgramme, f64),
    ) -> Result<Self> {
        programme.build(
            &pose,
            muscles.iter().map(ForcesAtPose::from),
            &joints_nm,
            direction,
        )?;
        let solution = programme.solve(&pose, None)?;
        Ok(Self {
            names,
            pose,
            terms,
            muscles,
            joints_nm,
            sides,
            direction,
            programme,
            solution,
        })
    }

    /// The largest load that is held, N or N·m.
    #[must_use]
    pub fn capacity(&self) -> f64 {
        self.solution.values()[0]
    }

    /// What one unit more on a row of the programme adds to the capacity; a coordinate's unit is 1 N·m.
    pub(super) fn weight(&self, row: usize) -> f64 {
        -self.solution.duals()[row]
    }

    /// The optimum's value of a column: load, muscles, reactions, gaps of cones.
    pub(super) fn value(&self, column: usize) -> f64 {
        self.solution.values()[column]
    }

    /// How many columns there are.
    pub(super) fn columns(&self) -> usize {
        self.solution.values().len()
    }

    /// How many rows there are.
    pub(super) const fn rows(&self) -> usize {
        self.programme.rows_and_columns().rows()
    }

    /// Activation of a muscle at the optimum.
    pub(super) fn activation(&self, muscle: usize) -> f64 {
        self.value(1 + muscle)
    }

    /// State of a muscle's fibres.
    pub(super) fn fibres(&self, muscle: usize) -> FibreState {
        self.muscles[muscle].state
    }

    /// Force of a muscle along its tendon, N.
    pub(super) fn force_n(&self, muscle: usize) -> f64 {
        self.terms[muscle].force_n(self.activation(muscle))
    }

    /// Whether both have the same muscles, coordinates, reactions and rows.
    pub(super) fn is_shaped_like(&self, other: &Self) -> bool {
        let dofs = |of: &Self| -> Vec<_> { of.pose.coordinates.iter().map(|c| c.dof).collect() };
        let reactions =
            |of: &Self| -> Vec<_> { of.pose.reactions.iter().map(|r| r.name).collect() };
        self.names == other.names
            && dofs(self) == dofs(other)
            && reactions(self) == reactions(other)
            && self.pose.balances.len() == other.pose.balances.len()
            && (self.rows(), self.columns()) == (other.rows(), other.columns())
    }

    /// Whether the same conditions bind: the same muscles are full, free or off, the same reactions at their ends.
    pub(super) fn binds_like(&self, other: &Self) -> bool {
        self.solution.basis().binds_like(other.solution.basis())
    }

    /// The optimum halfway on the straight line of all factors between two equilibria of one shape.
    ///
    /// **Fails** where nothing holds such a pose.
    pub(super) fn halfway(&self, other: &Self) -> Result<Self> {
        let terms: Vec<ForceTerms> = mixed(&self.terms, &other.terms, mixed_terms);
        let muscles = self.muscles.iter().zip(&other.muscles).zip(&terms);
        let muscles = muscles.map(|((one, two), terms)| {
            let passive_n = terms.force_n(0.0);
            MuscleAtPose {
                arms_m: half_each(&one.arms_m, &two.arms_m).collect(),
                passive_n,
                active_n: terms.force_n(1.0) - passive_n,
                ..MuscleAtPose::default()
            }
        });
        Self::solved(
            self.names.clone(),
            mixed_pose(&self.pose, &other.pose),
            terms.clone(),
            muscles.collect(),
            half_each(&self.joints_nm, &other.joints_nm).collect(),
            PlaneForce {
                x_n: half(self.direction.x_n, other.direction.x_n),
                z_n: half(self.direction.z_n, other.direction.z_n),
            },
            (self.programme.clone(), self.sides),
        )
    }
}

fn half(one: f64, two: f64) -> f64 {
    f64::midpoint(one, two)
}

fn half_each<'a>(one: &'a [f64], two: &'a [f64]) -> impl Iterator<Item = f64> + 'a {
    one.iter().zip(two).map(|(one, two)| half(*one, *two))
}

fn mixed<T>(one: &[T], two: &[T], mix: impl Fn(&T, &T) -> T) -> Vec<T> {
    one.iter()
        .zip(two)
        .map(|(one, two)| mix(one, two))
        .collect()
}

fn mixed_terms(one: &ForceTerms, two: &ForceTerms) -> ForceTerms {
    let both = |one: [f64; 2], two: [f64; 2]| [half(one[0], two[0]), half(one[1], two[1])];
    ForceTerms {
        peak_n: half(one.peak_n, two.peak_n),
        length_factor: half(one.length_factor, two.length_factor),
        speed_factor: half(one.speed_factor, two.speed_factor),
        passive: both(one.passive, two.passive),
        cos_pennation: both(one.cos_pennation, two.cos_pennation),
    }
}

/// What a programme reads of a pose, halfway between two.
fn mixed_pose(one: &Pose, two: &Pose) -> Pose {
    let limit = |one: &ReactionLimit, two: &ReactionLimit| ReactionLimit {
        constant: half(one.constant, two.constant),
        per_load: [0, 1].map(|way| half(one.per_load[way], two.per_load[way])),
    };
    let mut pose = one.clone();
    pose.gravity_nm = half_each(&one.gravity_nm, &two.gravity_nm).collect();
    pose.load_jacobian = mixed(&one.load_jacobian, &two.load_jacobian, |one, two| {
        Point::new(half(one.x, two.x), half(one.z, two.z))
    });
    for (mix, two) in pose.reactions.iter_mut().zip(&two.reactions) {
        mix.column = half_each(&mix.column, &two.column).collect();
        mix.least = limit(&mix.least, &two.least);
        mix.most = limit(&mix.most, &two.most);
    }
    for (mix, two) in pose.balances.iter_mut().zip(&two.balances) {
        mix.constant = half(mix.constant, two.constant);
        mix.per_load = [0, 1].map(|way| half(mix.per_load[way], two.per_load[way]));
        mix.reactions = half_each(&mix.reactions, &two.reactions).collect();
    }
    pose
}
