//! Implements as text: options of the command line, records of a setup file.
//!
//! In: an option's text or a RON record, and what bands, chains and anchors there are. Out: items and setups.
//! Imports `error`, `units` and `resistance`.

mod item_texts;
mod readings_text;
mod setup_file;
mod texts;

pub use item_texts::{ITEM_KINDS, ItemKind, item_from_text};
pub use readings_text::{readings_from_csv, readings_from_text};
pub use setup_file::{ItemRecord, SetupFile};
pub use texts::{
    PieceText, Stock, band_from_text, chain_from_text, load_from_text, own_band_from_text,
    setup_from_texts,
};
