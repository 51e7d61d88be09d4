//! What to do with it today: is it a plateau, and which loads, rests and sets follow.
//!
//! In: a training log, a 1RM, what the gym can load, who the lifter is, and the repetition as a function.
//! Out: a trend with its uncertainty, and plans as plain data, each with its cautions. The cheapest way in
//! is [`schemes::plan`] for a session, [`block::block`] for weeks, [`trend::trend`] for a log.

pub mod accommodating;
mod bend;
pub mod block;
pub mod cautions;
pub mod clusters;
pub mod day;
pub mod eccentric;
pub mod equations;
pub mod fatigue;
pub mod limits;
pub mod load_velocity;
pub mod loads;
pub mod log;
pub mod log_file;
pub mod method;
pub mod muscle_state;
pub mod numbers;
pub mod one_rep_max;
pub mod oracle;
pub mod origin;
pub mod overload;
pub mod phosphocreatine;
pub mod plan;
pub mod plan_words;
pub mod prediction;
pub mod pyramid;
pub mod repetitions;
pub mod rests;
pub mod schemes;
pub mod status;
pub mod straight;
pub mod trend;
pub mod warm_up;
