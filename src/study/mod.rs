//! The recipe: chains the rooms for one question.
//!
//! In: checked values from `library`. Out: plain results for `charts` and `report`.

mod advice;
mod field;
mod muscles;
mod pick;
mod picked;
mod repetition;
mod session_oracle;
#[allow(clippy::module_inception)]
mod study;
mod vary;

pub use advice::Advice;
pub use muscles::{MusclePart, joint_use, muscle_parts, muscle_torque_nm};
pub use pick::{Counts, Pick, Request, pick};
pub use picked::Picked;
pub use repetition::{Heaviness, RepStudy, USUAL_STEP_KG, maximum, repetition, rigged};
pub use session_oracle::{lifter_of_one_rm, simulated_oracle};
pub use study::{
    Question, SetupStudy, Study, load_for_effort, load_points, load_torque_nm, study, with_body,
};
pub use vary::{Leverage, Variant, family, rank, reasons, sensitivity, strength, studied, values};
