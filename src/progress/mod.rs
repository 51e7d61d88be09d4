//! Training log, estimates of the 1RM, trend: is it a plateau, and how sure is that?
//!
//! In: a training log. Out: the 1RM of every set by published equations, a trend with its uncertainty, and
//! what the log cannot tell. The cheapest way in is [`trend::trend`].

mod bend;
pub mod day;
pub mod estimate;
pub mod lift_facts;
pub mod log_file;
mod log_header;
pub mod log_limits;
mod log_line;
mod log_row;
pub mod published_equations;
pub mod repetition_equations;
pub mod session_best;
pub mod training_log;
pub mod trend;
pub mod trend_line;
pub mod velocity_equations;
pub mod verdict;
