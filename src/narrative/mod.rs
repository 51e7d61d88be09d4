//! Facts to sentences: the only room that makes words, in the units and counts that were asked for.
//!
//! In: results and faults of the rooms above. Out: text for reports, figures and the command line.

pub(crate) mod advice;
pub(crate) mod causes;
pub mod cautions;
pub(crate) mod comparison;
pub mod faults;
pub mod hanging;
pub mod loads;
pub(crate) mod muscle_names;
pub(crate) mod parameters;
pub(crate) mod places;
pub(crate) mod prose;
pub mod quantities;
pub(crate) mod reasons;
pub(crate) mod rep_words;
pub mod setups;

pub use causes::why_it_changed;
pub use parameters::{parameter_in_words, shown_value};
pub use rep_words::{rep_sentences, rep_title};
mod setup_names;

pub use setup_names::{added_name, name_of, short_name};
