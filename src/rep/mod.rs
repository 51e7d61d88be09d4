//! One repetition in time: equation of motion, phases, trace, 1RM.
//!
//! In: a movement, a lifter, a setup, how the repetition is done. Out: [`RepTrace`] with every moment,
//! the sticking region in motion, maxima, mean velocity over load. Imports the rooms from `units` to
//! `demand`.

mod activation;
mod enhancement;
mod equation;
mod grid;
mod lifting;
mod load_velocity;
mod lowering;
mod model;
mod moment;
mod one_rep_max;
mod options;
mod phases;
mod sticking_in_motion;
mod table;
mod trace;
mod track;

pub use activation::Activation;
pub use enhancement::Enhancement;
pub use equation::MotionEquation;
pub use grid::CapacityGrid;
pub use load_velocity::{LoadPace, LoadVelocity};
pub use model::RepModel;
pub use moment::Phase;
pub use one_rep_max::{OneRepMax, load_at_share, scale_for_one_rm, stronger, with_load};
pub use options::{After, RepOptions, TurnRound};
pub use sticking_in_motion::{LEAST_WAY, Mark, StickingInMotion, VISIBLE_DIP, sticking_in_motion};
pub use trace::{LiftFigures, Outcome, RepSample, RepTrace};
