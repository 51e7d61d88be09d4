//! Implements as text: options of the command line, records of a setup file.
//!
//! In: an option's text or a RON record, and what bands, chains and anchors there are. Out: items and setups.
//! Imports `error`, `units` and `resistance`.

mod hung_texts;
mod implement_rows;
mod machine_texts;
mod named_pieces;
mod option_words;
mod own_band;
mod piece_texts;
mod readings_text;
mod setup_file;
mod weight_texts;

pub use hung_texts::HungTexts;
pub use implement_rows::{IMPLEMENTS, ImplementRow, item_from_text};
pub use named_pieces::Stock;
pub use option_words::{Field, load_from_text};
pub use own_band::{OwnBandText, own_band_from_readings, own_band_from_text};
pub use piece_texts::{band_from_text, chain_from_text, setup_from_texts};
pub use readings_text::{readings_from_csv, readings_from_text};
pub use setup_file::{ItemRecord, SetupFile};
