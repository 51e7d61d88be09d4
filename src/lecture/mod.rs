//! The lecture: which figures make the set, in which order.
//!
//! In: what the figures draw from. Out: the list from which command, page and tests are derived.

mod lecture_figure;
mod live_states;
mod one_lift;
mod stories;
mod syllabus;

pub use lecture_figure::LectureFigure;
pub use live_states::live_state;
pub use one_lift::ONE_LIFT;
pub use syllabus::LECTURE;
