//! What to do with it today: which loads, rests and sets follow.
//!
//! In: a 1RM, its trend, what the gym can load, who the lifter is, and the repetition as a function.
//! Out: plans as plain data, each with its cautions. The cheapest way in is [`schemes::plan`] for a session,
//! [`block::block`] for weeks.

pub mod accommodating;
pub mod accommodating_setup;
pub mod alone;
pub mod alone_remark;
pub mod block;
pub mod block_days;
pub mod clusters;
pub mod disagreement;
pub mod draft;
mod drafting;
pub mod eccentric;
pub mod end_of_log;
pub mod far_step;
pub mod fatigue;
mod fatigue_joint;
mod fitting;
pub mod heeded;
mod last_session;
pub mod lowering_limits;
pub mod lowering_remark;
pub mod maximum_test;
pub mod method;
pub mod muscle_state;
mod next_load;
mod novice_start;
mod novice_weeks;
pub mod oracle;
pub mod overload;
pub mod overload_ground;
pub mod phosphocreatine;
pub mod planned_set;
pub mod predicted_sets;
pub mod prediction;
pub mod published;
pub mod pyramid;
pub mod remark;
pub mod repetitions;
pub mod request;
pub mod rests;
pub mod schemes;
pub mod session_cautions;
mod simulation_doubts;
pub mod spotting;
pub mod status;
pub mod straight;
pub mod strength;
pub mod warm_up;
