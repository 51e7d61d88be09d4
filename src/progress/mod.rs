//! Training log, estimates of the 1RM, trend: is it a plateau, and how sure is that?
//!
//! In: a training log. Out: the 1RM of every set by published equations, a trend with its uncertainty, and
//! what the log cannot tell. The cheapest way in is [`trend::trend`].

pub mod bar_trace;
mod bend;
pub mod day;
pub mod estimate;
pub mod failed_attempt;
pub mod foreign_headings;
pub mod lift_facts;
pub mod lift_names;
mod log_dates;
pub mod log_file;
pub mod log_header;
pub mod log_limits;
pub mod log_note;
pub mod log_profile;
mod log_row;
pub mod log_table;
pub mod one_rm_now;
pub mod published_equations;
pub mod repetition_equations;
pub mod session_best;
pub mod team_cells;
pub mod team_file;
pub mod traced_repetitions;
pub mod training_log;
pub mod trend;
pub mod trend_line;
pub mod unconfirmed;
pub mod velocity_equations;
pub mod verdict;
pub mod written_date;
