//! The model behind the live page: questions as JSON in, answers as JSON out, what was read kept between them.
//!
//! In: what the page asks. Out: numbers, charts and sentences of the rooms above; nothing is computed twice, and
//! nothing here knows a browser.

mod answer;
mod catalogue;
mod dial;
mod drawn;
mod laboratory;
mod page_address;
mod page_place;
mod page_state;
mod questions;
mod shown_chart;
mod shown_factors;
mod solved_state;
mod task_check;
mod task_file;
mod usual_loads;

pub use catalogue::{Catalogue, catalogue};
pub use dial::DIAL_GROUPS;
pub use laboratory::Laboratory;
pub use page_state::{PageState, PageUnits, check_name};
pub use task_check::{TaskGround, check_tasks};
pub use task_file::{PageTask, TaskFile, tasks_from_text};
