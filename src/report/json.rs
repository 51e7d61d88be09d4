//! JSON: stable keys, numbers in SI with the unit as suffix.

use super::contract::CONTRACT_VERSION;
use super::run_record::RunRecord;
use serde::Serialize;

/// A collection by name, or a list, as pretty JSON with a line break at its end.
#[must_use]
pub fn pretty_list<T: Serialize>(value: &T) -> String {
    let text = serde_json::to_string_pretty(value);
    text.expect("results are structs, so every key is a text") + "\n"
}

/// Any result as pretty JSON with the contract's version first; what is not finite becomes null.
#[must_use]
pub fn pretty<T: Serialize>(value: &T) -> String {
    let text = pretty_list(value);
    match text.strip_prefix("{\n") {
        Some(rest) => format!("{}{rest}", head()),
        None => text,
    }
}

/// What every object begins with.
fn head() -> String {
    format!("{{\n  \"contract_version\": {CONTRACT_VERSION},\n")
}

/// An object of JSON from [`pretty`] with how it was made behind the contract's version. Lists and collections by
/// name have no place for it: they come back as they are.
#[must_use]
pub fn with_provenance(json: &str, record: &RunRecord) -> String {
    match json.strip_prefix(&head()) {
        Some(rest) => format!("{}  \"provenance\": {},\n{rest}", head(), indented(record)),
        None => json.to_owned(),
    }
}

/// A list or a collection by name as an object that has it under a key, with how it was made.
#[must_use]
pub fn list_with_provenance(json: &str, key: &str, record: &RunRecord) -> String {
    let list = json.trim_end().replace('\n', "\n  ");
    let object = format!("{}  \"{key}\": {list}\n}}\n", head());
    with_provenance(&object, record)
}

/// A record as it stands inside an object.
fn indented(record: &RunRecord) -> String {
    pretty_list(record).trim_end().replace('\n', "\n  ")
}
