//! What to do with it today: loads, rests, schemes, fatigue, cautions.
pub mod cautions;
pub mod day;
pub mod equations;
pub mod load_velocity;
pub mod loads;
pub mod log;
pub mod log_file;
pub mod method;
pub mod one_rep_max;
pub mod origin;
mod plates;
pub mod rests;
pub mod status;
pub mod warm_up;
