//! JSON: stable keys, numbers in SI with the unit as suffix.

use super::contract::CONTRACT_VERSION;
use super::run_record::RunRecord;
use serde::Serialize;
use serde_json::Serializer;
use serde_json::ser::{Formatter, PrettyFormatter};
use std::io::{self, Write};

/// A collection by name, or a list, as pretty JSON with a line break at its end.
#[must_use]
pub fn pretty_list<T: Serialize>(value: &T) -> String {
    const IN_MEMORY: &str =
        "results are structs, so every key is a text, and memory can be written";
    let mut bytes = Vec::new();
    let mut writer = Serializer::with_formatter(&mut bytes, Unsigned(PrettyFormatter::new()));
    value.serialize(&mut writer).expect(IN_MEMORY);
    bytes.push(b'\n');
    String::from_utf8(bytes).expect("JSON is text")
}

/// Pretty JSON in which a nothing has no sign: -0.0 is 0.0.
struct Unsigned<'a>(PrettyFormatter<'a>);

impl Formatter for Unsigned<'_> {
    fn write_f64<W: ?Sized + Write>(&mut self, writer: &mut W, value: f64) -> io::Result<()> {
        self.0.write_f64(writer, unsigned(value))
    }

    fn begin_array<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.begin_array(writer)
    }

    fn end_array<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_array(writer)
    }

    fn begin_array_value<W: ?Sized + Write>(
        &mut self,
        writer: &mut W,
        first: bool,
    ) -> io::Result<()> {
        self.0.begin_array_value(writer, first)
    }

    fn end_array_value<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_array_value(writer)
    }

    fn begin_object<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.begin_object(writer)
    }

    fn end_object<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_object(writer)
    }

    fn begin_object_key<W: ?Sized + Write>(
        &mut self,
        writer: &mut W,
        first: bool,
    ) -> io::Result<()> {
        self.0.begin_object_key(writer, first)
    }

    fn begin_object_value<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.begin_object_value(writer)
    }

    fn end_object_value<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.0.end_object_value(writer)
    }
}

/// The same number; a nothing without a sign.
pub(super) fn unsigned(value: f64) -> f64 {
    value + 0.0
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
