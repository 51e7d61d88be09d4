//! Why what a model file extends is not to be had.
//!
//! In: the field `extends` of a file. Out: [`ExtendsFault`].

use super::Shelf;
use crate::error::Known;

/// Why what a file extends is not to be had.
#[derive(Debug, Clone, PartialEq)]
pub enum ExtendsFault {
    /// The field holds no name.
    NoName,
    /// Files extend one another in a circle.
    Circle {
        /// The files on the way round, the first one again at the end.
        files: Vec<String>,
    },
    /// No file of that kind has that name.
    NoSuchFile {
        /// The kind.
        shelf: Shelf,
        /// The name.
        name: String,
        /// The names there are.
        known: Known,
    },
}
