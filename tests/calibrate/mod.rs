//! The calibration: the most probable parameters of the muscles, given priors and joint-level targets.
//!
//! `problem` reads `models/calibration/`, `quantity` computes a target, `body` builds the lifters,
//! `answer` finds the parameters and how sure they are, `text` writes them into the model files.

pub mod answer;
pub mod body;
pub mod posterior;
pub mod problem;
pub mod quantity;
pub mod text;
