//! Names to checked values: the only room that reads model files.
//!
//! In: the folder `models/` that is compiled in, a folder of the user's, texts of model files. Out:
//! [`Library`], which hands out lifters and movements by name, and faults with their place.

mod absent;
mod adjusted;
mod assemble;
mod body_rules;
pub mod bounded_read;
mod built_in;
pub mod changed;
mod checked;
mod complaint;
pub mod content_hash;
mod curve_rules;
mod extending;
mod file_check;
mod file_facts;
mod folder_check;
mod grammar_scan;
mod group_rules;
mod hung_doubts;
mod layered_text;
mod leg_rules;
mod lift_errors;
mod listing;
mod logs;
mod measured_grips;
mod measured_sticking;
mod mending;
mod merging;
mod movement_rules;
mod muscle_rules;
mod nearest;
mod numbers;
mod operating_rules;
pub mod outline;
pub mod own_files;
mod person_tables;
mod piece_rules;
mod pieces;
mod posterior;
mod proportion_rules;
mod provenance;
mod publications;
mod published_classes;
mod published_rules;
mod published_tables;
mod read;
mod read_fault;
mod record_fields;
mod records;
mod schema_probe;
mod set_path;
mod settable;
mod setting;
mod share_units;
mod sourced_rules;
mod stock;
mod technique_needs;
mod technique_rules;
pub mod unprintable;
mod word_brackets;
mod worst_misses;

pub use crate::error::Shelf;
pub use adjusted::{Adjustable, AdjustablePlace, written_at};
pub use assemble::{Model, ModelChange, Workbench, assemble};
pub use bounded_read::{bytes_of_file, forget_read, text_of_file, was_read};
pub use changed::is_changed;
pub use checked::CheckedFile;
pub use content_hash::hash_of;
pub use file_facts::{
    BandFacts, ChainFacts, FileFacts, GymFacts, LifterFacts, MovementFacts, MuscleFacts,
    SarcomereFacts, SegmentFacts, SetupFacts,
};
pub use lift_errors::{FEWEST_ROWS, LiftErrors, PublishedError};
pub use listing::{ListedFile, ListedMuscle};
pub use measured_grips::{MeasuredGrip, MeasuredGrips};
pub use measured_sticking::MeasuredSticking;
pub use nearest::nearest;
pub use numbers::{NumberAt, get, numeric_paths};
pub use own_files::{OwnFile, model_hash};
pub use person_tables::ModelMisses;
pub use pieces::Pieces;
pub use posterior::FittedValue;
pub use provenance::Provenance;
pub use published_classes::PublishedClasses;
pub use read::read;
pub use record_fields::records_of;
pub use records::{Library, LifterFiles};
pub use schema_probe::KnownRecords;
pub use settable::{SettableNow, SettableValue, Wanted, is_of_movement};
pub use worst_misses::WorstMiss;
