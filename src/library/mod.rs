//! Names to checked values: the only room that reads model files.
//!
//! In: the folder `models/` that is compiled in, a folder of the user's, texts of model files. Out:
//! [`Library`], which hands out lifters and movements by name, and faults with their place.

mod built_in;
mod nearest;
mod read;
mod records;
mod shelf;

pub use nearest::{did_you_mean, nearest};
pub use read::read;
pub use records::Library;
pub use shelf::Shelf;
