//! Facts to sentences: the only room that makes words, in the units and counts that were asked for.
//!
//! In: results and faults of the rooms above. Out: text for reports, figures and the command line.

pub(crate) mod advice;
pub(crate) mod axis_words;
pub(crate) mod causes;
pub mod cautions;
pub(crate) mod class_words;
pub mod cohort;
pub(crate) mod comparison;
pub(crate) mod evenness_words;
pub(crate) mod family_words;
pub mod faults;
pub(crate) mod fibre_words;
pub mod figure_words;
pub mod hanging;
pub mod hung_pieces;
pub mod implements;
pub(crate) mod lever_words;
pub(crate) mod limit_words;
pub mod loads;
pub(crate) mod map_words;
pub mod maximum;
pub mod measured;
pub mod model_files;
pub(crate) mod motion_words;
pub(crate) mod muscle_names;
pub(crate) mod parameters;
pub(crate) mod places;
pub mod plan_words;
pub(crate) mod profile_words;
pub mod progress;
pub(crate) mod prose;
pub mod quantities;
pub(crate) mod ranking_words;
pub(crate) mod reasons;
pub mod repetition;
pub mod session_figure_words;
pub mod session_remarks;
pub mod session_words;
pub(crate) mod setup_names;
pub mod setups;
pub mod sheet_words;
pub mod shown_units;
pub(crate) mod speed_words;
pub mod spotter_words;
pub mod strength_words;
pub(crate) mod swing_words;
pub(crate) mod trend_words;
pub mod versus_plain_words;

pub use causes::why_it_changed;
pub use parameters::{parameter_in_words, shown_value};
pub use setup_names::{added_name, name_of, short_name};
