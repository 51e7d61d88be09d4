//! One text to one typed value, faults with their place.
//!
//! In: the text of a model file. Out: the record, or one [`Error`] that shows line and column.

use crate::error::{Error, Fault, Place, Result};
use ron::extensions::Extensions;
use serde::de::DeserializeOwned;

/// Reads one model file.
///
/// **Fails** at the first fault of the text, with its place.
pub fn read<T: DeserializeOwned>(file: &str, text: &str) -> Result<T> {
    options().from_str(text).map_err(|fault| {
        let place = Place {
            file: file.to_owned(),
            text: text.to_owned(),
            start: (fault.span.start.line, fault.span.start.col),
            end: (fault.span.end.line, fault.span.end.col),
        };
        Error::from(Fault::new(fault.code.to_string()).at(place))
    })
}

/// How model files are read: an optional value may be written without `Some(…)`.
pub(super) fn options() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME)
}
