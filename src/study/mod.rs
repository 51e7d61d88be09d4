//! The recipe: chains the rooms for one question.
//!
//! In: checked values from `library`. Out: plain results for `charts` and `report`.

mod advice;
mod cause;
mod cohort;
mod compared;
mod family;
mod load_for_effort;
mod muscles;
mod newton_cost;
mod none_fits;
mod pair_grid;
mod parameter;
mod pick;
mod pick_answer;
mod question;
mod rank;
mod rep_study;
mod session_oracle;
mod session_setup;
mod solve;
mod versus_plain;

pub use crate::error::{Advice, Instead, Means, Remedy};
pub use cause::{Cause, Spot};
pub use cohort::{Cohort, Member, Scatter, cohort, invented, mean_and_deviation, quantile};
pub use compared::{Compared, Conditions, Figures, usual_comparison};
pub use family::{Family, Sensitivity, Undone, Variant, family};
pub use load_for_effort::load_for_effort;
pub use muscles::{MusclePart, joint_use, muscle_parts, muscle_torque_nm};
pub use newton_cost::cost_field;
pub use pair_grid::{PairGrid, pair_grid};
pub use parameter::Parameter;
pub use pick::pick;
pub use pick_answer::{PickAnswer, PickQuestion, Picked};
pub use question::{Question, SetupStudy, Study};
pub use rank::{Ranked, Ranks, rank};
pub use rep_study::{Heaviness, RepStudy, USUAL_STEP_KG, maximum, repetition, rigged};
pub use session_oracle::{carried_body, lifter_of_one_rm, simulated_oracle};
pub use session_setup::{SessionSetup, best_setup, named_setup};
pub use solve::{load_points, load_torque_nm, study, with_body};
pub use versus_plain::{LiftShape, VersusPlain, versus_plain};
