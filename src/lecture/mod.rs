//! The lecture: which figures make the set, in which order.
//!
//! In: what the figures draw from. Out: the list from which command, page and tests are derived.

mod lecture_figure;
mod live_states;
mod syllabus;

pub use lecture_figure::LectureFigure;
pub use live_states::live_state;
pub use syllabus::LECTURE;
