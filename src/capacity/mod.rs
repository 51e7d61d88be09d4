//! The most a pose can hold: the linear programme of muscles, limbs and surroundings.
//!
//! In: a lifter and a range of poses. Out: capacity, activations, the joint that gives way first, and
//! the class of the curve.

mod class;
mod curve;
mod muscle_force;
mod programme;

pub use class::{Class, Shape, WEAK_END, class_of};
pub use curve::{CapacityCurve, Pace, curve_of, plain_direction};
pub use muscle_force::{Acting, ActingMuscle, MuscleAtPose, PlacedMuscle};
pub use programme::{BOUNDLESS, Held, Solver};
