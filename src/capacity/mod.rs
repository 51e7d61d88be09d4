//! The most a pose can hold: the linear programme of muscles, limbs and surroundings.
//!
//! In: a lifter and a range of poses. Out: capacity, activations, the joint that gives way first, and
//! the class of the curve.

mod account;
mod account_split;
mod capacity_curve;
mod class;
mod equilibrium;
mod muscle_force;
mod pose_programme;
mod programme;
mod strength_range;
mod stretch;

pub use account::{Account, ForceFactor, JointLimit, Lever, MuscleShare};
pub use account_split::account;
pub use capacity_curve::{CapacityCurve, Pace, curve_of, plain_direction};
pub use class::{Class, CurveShape, WEAK_END, between_the_ends, class_of, class_with};
pub use equilibrium::Equilibrium;
pub use muscle_force::{
    Acting, ActingMuscle, ForceTerms, ForcesAtPose, FullyActive, MuscleAtPose, MusclePlace,
    PerCoordinate, PlacedMuscle,
};
pub use pose_programme::BOUNDLESS;
pub use programme::{Held, Solver};
pub use strength_range::StrengthRange;
