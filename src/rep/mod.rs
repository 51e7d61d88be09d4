//! One repetition in time: equation of motion, phases, trace, 1RM.
//!
//! In: a movement, a lifter, a setup, how the repetition is done. Out: [`RepTrace`] with every moment,
//! the sticking region in motion, maxima, mean velocity over load. Imports the rooms from `units` to
//! `demand`.

mod activation;
mod braking;
mod capacity_grid;
mod enhancement;
mod equation;
mod fibre_nodes;
mod grid_ground;
mod grid_nodes;
mod lifting;
mod load_velocity;
mod lowering;
mod moment;
mod one_rep_max;
mod phases;
mod range_table;
mod rep_model;
mod rep_options;
mod rep_sample;
mod repetition_trace;
mod sticking_in_motion;
mod tiring;
mod track;

pub use crate::movement::{Finish, TurnRound};
pub use activation::Activation;
pub use capacity_grid::CapacityGrid;
pub use enhancement::Enhancement;
pub use equation::MotionEquation;
pub use load_velocity::{LoadPace, LoadVelocity};
pub use moment::Phase;
pub use one_rep_max::{
    LoadableMax, OneRepMax, load_at_share, scale_for_one_rm, stronger, with_load,
};
pub use rep_model::RepModel;
pub use rep_options::{After, RepOptions};
pub use rep_sample::{RepEnd, RepSample};
pub use repetition_trace::{LiftFigures, RepTrace};
pub use sticking_in_motion::{
    LEAST_WAY, Mark, StickingInMotion, VISIBLE_DIP, slight_dip, sticking_in_motion,
};
pub use tiring::Tiring;
