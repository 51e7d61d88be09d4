//! The recipe: chains the rooms for one question.
//!
//! In: checked values from `library`. Out: plain results for `charts` and `report`.

mod advice;
mod cause;
mod cohort;
mod field;
mod grid;
mod ground;
mod measured;
mod muscles;
mod near_miss;
mod parameter;
mod pick;
mod picked;
mod rank;
mod repetition;
mod session_oracle;
mod session_setup;
#[allow(clippy::module_inception)]
mod study;
mod vary;
mod versus_plain;
mod why;

pub use advice::Advice;
pub use cause::Cause;
pub use cohort::{Cohort, Member, Scatter, cohort, invented, mean_and_deviation, quantile};
pub use field::field;
pub use grid::{Grid, grid};
pub use ground::{load_points, load_torque_nm, with_body};
pub use measured::{Asked, Figures, Measured};
pub use muscles::{MusclePart, joint_use, muscle_parts, muscle_torque_nm};
pub use parameter::{Parameter, parameter_in_words, shown_value};
pub use pick::{Counts, Pick, Request, pick};
pub use picked::Picked;
pub use rank::{Ranked, Ranks, rank};
pub use repetition::{Heaviness, RepStudy, USUAL_STEP_KG, maximum, repetition, rigged};
pub use session_oracle::{carried_body, lifter_of_one_rm, simulated_oracle};
pub use session_setup::{SessionSetup, best_setup, named_setup};
pub use study::{Question, SetupStudy, Study, load_for_effort, study};
pub use vary::{Family, Sensitivity, Undone, Variant, family};
pub use versus_plain::{LiftShape, VersusPlain, versus_plain};
