//! Names to checked values: the only room that reads model files.
//!
//! In: the folder `models/` that is compiled in, a folder of the user's, texts of model files. Out:
//! [`Library`], which hands out lifters and movements by name, and faults with their place.

mod adjusted;
mod assemble;
mod body_rules;
mod built_in;
mod checked;
mod complaint;
mod curve_rules;
mod file_check;
mod file_facts;
mod grammar_scan;
mod leg_rules;
mod logs;
mod movement_rules;
mod muscle_rules;
mod nearest;
mod numbers;
mod outline;
mod pieces;
mod posterior;
mod provenance;
mod published_rules;
mod published_tables;
mod read;
mod read_fault;
mod record_fields;
mod records;
mod set_path;
mod stock;
mod technique_rules;

pub use crate::error::Shelf;
pub use adjusted::{Adjustable, AdjustablePlace, written_at};
pub use assemble::{Model, Workbench, assemble};
pub use file_facts::{
    BandFacts, ChainFacts, FileFacts, GymFacts, LifterFacts, MovementFacts, MuscleFacts,
    SarcomereFacts, SegmentFacts, SetupFacts,
};
pub use nearest::nearest;
pub use numbers::{NumberAt, get, numeric_paths};
pub use pieces::Pieces;
pub use posterior::FittedValue;
pub use provenance::Provenance;
pub use read::read;
pub use records::{Library, LifterFiles};
