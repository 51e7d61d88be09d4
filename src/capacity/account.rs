//! Where a change of capacity comes from: an exact account, muscle by muscle and factor by factor.
//!
//! In: parts from [`super::account()`]. Out: [`Account`], whose parts add up to the change.

use super::muscle_force::ForceTerms;
use crate::anatomy::{Dof, FibreState, Joint};

/// What a muscle's share in the capacity is a product of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ForceFactor {
    /// Moment arm at the joints that limit.
    Arm,
    /// Peak isometric force.
    PeakForce,
    /// Fibre length: active force-length factor.
    Length,
    /// Fibre speed: force-velocity factor.
    Speed,
    /// Pennation.
    Pennation,
    /// Passive force of stretched fibres.
    Passive,
    /// Activation at the optimum.
    Activation,
}

impl ForceFactor {
    /// All of them.
    pub const ALL: [Self; 7] = [
        Self::Arm,
        Self::PeakForce,
        Self::Length,
        Self::Speed,
        Self::Pennation,
        Self::Passive,
        Self::Activation,
    ];
}

/// A length about one axis of a joint before and after, and what its change adds to the capacity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lever {
    /// The joint's axis.
    pub dof: Dof,
    /// A moment arm or the load's lever in the pose before and in the pose after, m; positive where muscle or load
    /// turns the angle up.
    pub length_m: [f64; 2],
    /// Part of the change, N or N·m.
    pub part: f64,
}

/// One muscle's share in a change.
#[derive(Debug, Clone, PartialEq)]
pub struct MuscleShare {
    /// Its name in the model.
    pub name: String,
    /// Part of every factor, in the order of [`ForceFactor::ALL`], N or N·m.
    pub parts: [f64; 7],
    /// The arm's part by axis.
    pub arms: Vec<Lever>,
    /// Capacity per newton of its force, before and after, each by its own weights; negative where it works against.
    pub gain: [f64; 2],
    /// Force along the tendon before and after, N.
    pub force_n: [f64; 2],
    /// Activation before and after.
    pub activation: [f64; 2],
    /// Fibres before and after.
    pub fibres: [FibreState; 2],
    /// Factors of the force before and after.
    pub terms: [ForceTerms; 2],
}

impl MuscleShare {
    /// The part of one factor.
    #[must_use]
    pub fn part(&self, factor: ForceFactor) -> f64 {
        self.parts[factor as usize]
    }
}

/// A joint's share in the limit at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointLimit {
    /// The joint.
    pub joint: Joint,
    /// What a share more strength there would add, over the same at all joints.
    pub share: f64,
}

/// A change of capacity and its parts, N or N·m.
#[derive(Debug, Clone, PartialEq)]
pub struct Account {
    /// Capacity before and after.
    pub capacity: [f64; 2],
    /// The muscles, in the order of their names.
    pub muscles: Vec<MuscleShare>,
    /// The lever of the load, with the pushes of hands and feet that go with it, about every axis.
    pub levers: Vec<Lever>,
    /// How many sides the capacity is of: rows, weights and arms are of one.
    pub sides: f64,
    /// Whether pushes beside the load have a lever about a joint.
    pub has_pushes: bool,
    /// What else the surroundings give: how far a push may go, friction, balance over the foot.
    pub supports: f64,
    /// The limbs' own weight.
    pub limbs: f64,
    /// Passive torque of the joints.
    pub passive_joints: f64,
    /// What none of these explains: a limb so straight that anything is borne, or a programme of another shape.
    pub rest: f64,
    /// What 1 N·m more at every coordinate adds to the capacity, before and after.
    pub weights: [Vec<f64>; 2],
    /// Joints that limit before and after, the first first.
    pub limits: [Vec<JointLimit>; 2],
    /// In how many stretches the same conditions bind on the way from before to after.
    pub stretches: usize,
}

impl Account {
    /// Capacity after less capacity before.
    #[must_use]
    pub fn change(&self) -> f64 {
        self.capacity[1] - self.capacity[0]
    }

    /// Between which prices one metre of the load's lever about an axis is worth anything, N/m or 1/m.
    ///
    /// ```text
    /// λ·u/n ... λ′·u′/n     least and most over both capacities and both weights
    /// ```
    /// `λ` capacity, `u` weight of the axis, `n` sides; a dash marks what is after. **Shape.** Over one stretch an axis's
    /// part is the change of its lever at a price between them. **Fails.** Never.
    #[must_use]
    pub fn lever_prices(&self, row: usize) -> [f64; 2] {
        let weights = [0, 1].map(|side| self.weights[side][row] / self.sides);
        let capacities = self.capacity.iter();
        let prices = capacities.flat_map(|capacity| weights.map(|weight| capacity * weight));
        prices.fold(
            [f64::INFINITY, f64::NEG_INFINITY],
            |[least, most], price| [least.min(price), most.max(price)],
        )
    }

    /// The part of the load's levers about all axes.
    #[must_use]
    pub fn lever(&self) -> f64 {
        self.levers.iter().map(|lever| lever.part).sum()
    }
}
