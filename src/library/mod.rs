//! Names to checked values: the only room that reads model files.
//!
//! In: the folder `models/` that is compiled in, a folder of the user's, texts of model files. Out:
//! [`Library`], which hands out lifters and movements by name, and faults with their place.

mod assemble;
mod body_rules;
mod built_in;
mod check;
mod complaint;
mod leg_rules;
mod logs;
mod movement_rules;
mod muscle_rules;
mod nearest;
mod numbers;
mod outline;
mod published;
mod published_rules;
mod read;
mod records;
mod set_path;
mod shelf;
mod stock;

pub use assemble::{Model, Workbench, assemble};
pub use check::Summary;
pub use nearest::{did_you_mean, nearest};
pub use numbers::{NumberAt, get, numeric_paths};
pub use read::read;
pub use records::{Library, LifterFiles};
pub use shelf::Shelf;
pub use stock::Pieces;
