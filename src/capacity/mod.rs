//! The most a pose can hold: the linear programme of muscles, limbs and surroundings.
//!
//! In: a lifter and a range of poses. Out: capacity, activations, the joint that gives way first, and
//! the class of the curve.

mod capacity_curve;
mod class;
mod muscle_force;
mod programme;

pub use capacity_curve::{CapacityCurve, Pace, curve_of, plain_direction};
pub use class::{Class, CurveShape, WEAK_END, class_of};
pub use muscle_force::{Acting, ActingMuscle, MuscleAtPose, PerCoordinate, PlacedMuscle};
pub use programme::{BOUNDLESS, Held, Solver};
