//! JSON: stable keys, numbers in SI with the unit as suffix.

use serde::Serialize;

/// Any result as pretty JSON with a line break at its end; what is not finite becomes null.
#[must_use]
pub fn pretty<T: Serialize>(value: &T) -> String {
    let text = serde_json::to_string_pretty(value);
    text.expect("results are structs, so every key is a text") + "\n"
}
