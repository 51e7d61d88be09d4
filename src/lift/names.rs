//! What the built-in library holds.
//!
//! In: nothing. Out: names of movements and lifters.

use crate::library::{Library, Shelf};

/// Names of all movements of the built-in library.
///
/// ```
/// assert!(torquill::movements().iter().any(|name| name == "squat"));
/// ```
#[must_use]
pub fn movements() -> Vec<String> {
    Library::built_in().movements()
}

/// Names of all lifters of the built-in library.
///
/// ```
/// assert!(torquill::lifters().iter().any(|name| name == "reference-woman"));
/// ```
#[must_use]
pub fn lifters() -> Vec<String> {
    Library::built_in().names(Shelf::Lifters)
}
