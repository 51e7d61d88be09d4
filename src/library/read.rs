//! One text to one typed value, with faults that say place, fault and next move.
//!
//! In: the text of a model file. Out: the record, or an [`Error`] that marks the line. Syntax and
//! types stop at the first fault; names given twice and numbers that are not finite are all told.

use super::nearest::{did_you_mean, nearest, one_of};
use super::outline::{Node, Outline};
use crate::error::{Error, Fault, ImplementFault, Place, Result};
use crate::narrative::quantities::expected_quantity;
use crate::units::{QuantityFault, QuantityKind};
use ron::error::{Error as Code, SpannedError};
use ron::extensions::Extensions;
use serde::de::DeserializeOwned;
use std::ops::Range;

/// Reads one model file.
///
/// **Fails** at the first fault of syntax or type; else with every field or key that is given twice
/// and every number that is not finite.
pub fn read<T: DeserializeOwned>(file: &str, text: &str) -> Result<T> {
    // A mark that some editors put before the text is no part of it.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let value = options().from_str(text).map_err(|fault| {
        let missing = no_record(file, text).err();
        missing.unwrap_or_else(|| in_words(file, text, &fault).into())
    })?;
    let outline = Outline::of(text);
    let faults = beyond_types(file, &outline);
    if faults.is_empty() {
        Ok(value)
    } else {
        Err(Error::bad_input(faults))
    }
}

/// Refuses a text without any record in it.
pub(super) fn no_record(file: &str, text: &str) -> Result<()> {
    let outline = Outline::of(text);
    let is_bare = outline.children(0).next().is_none();
    let stretch = outline
        .nodes
        .first()
        .map_or(0..0, |node| node.value.clone());
    let begins = outline.slice(&stretch);
    if !is_bare || begins.starts_with(['(', '{']) {
        return Ok(());
    }
    let fault = if begins.is_empty() {
        Fault::new(format!("`{file}` holds no record"))
    } else {
        let line = one_line(text, stretch.start..stretch.end);
        Fault::new("no record begins here").at(outline.place(file, &line))
    };
    Err(fault
        .hint("a model file is one record in brackets: ( field: value, … )")
        .into())
}

/// How model files are read: an optional value may be written without `Some(…)`.
fn options() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME)
}

/// What is wrong although every type fits: a name given twice, a number that is not finite.
fn beyond_types(file: &str, outline: &Outline<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    for index in outline.repeated() {
        let node = &outline.nodes[index];
        let stretch = node.key.clone().unwrap_or(node.value.clone());
        faults.push(
            Fault::new(format!("`{}` is given twice", outline.path(index)))
                .at(outline.place(file, &stretch))
                .label("the second one")
                .hint("keep one of the two"),
        );
    }
    for index in outline.not_finite() {
        let stretch = &outline.nodes[index].value;
        faults.push(
            Fault::new(format!(
                "`{}` is {}, which is not a finite number",
                outline.path(index),
                outline.slice(stretch)
            ))
            .at(outline.place(file, stretch))
            .label("expected a finite number"),
        );
    }
    faults
}

/// A fault of the reader in our words.
fn in_words(file: &str, text: &str, fault: &SpannedError) -> Fault {
    let place = Place {
        file: file.to_owned(),
        text: text.to_owned(),
        start: (fault.span.start.line, fault.span.start.col),
        end: (fault.span.end.line, fault.span.end.col),
    };
    let stretch = one_line(text, place.bytes());
    // Whatever the reader looked for, nothing is left: the text ends too early.
    let code = match &fault.code {
        Code::UnclosedBlockComment | Code::ExpectedStringEnd | Code::Message(_) => &fault.code,
        _ if text[stretch.start..].trim().is_empty() => &Code::Eof,
        code => code,
    };
    let scene = Scene {
        file,
        outline: Outline::of(text),
        runs_on: place.start.0 != place.end.0,
        place: Place::of(file, text, stretch),
    };
    scene.fault(code)
}

/// The part of a stretch on its first line; an empty stretch moves on to the next sign.
fn one_line(text: &str, stretch: Range<usize>) -> Range<usize> {
    let start = if stretch.is_empty() {
        let rest = &text[stretch.start..];
        let next = stretch.start + rest.len() - rest.trim_start().len();
        if next == text.len() {
            stretch.start
        } else {
            next
        }
    } else {
        stretch.start
    };
    let sign = text[start..].chars().next().map_or(0, char::len_utf8);
    let line = text[start..].find('\n').unwrap_or(text.len() - start);
    start..stretch.end.max(start + sign).min(start + line)
}

/// A fault's surroundings.
struct Scene<'a> {
    file: &'a str,
    outline: Outline<'a>,
    /// Where the reader stopped, as far as it is on one line.
    place: Place,
    /// Whether what the reader stopped at goes on behind that line.
    runs_on: bool,
}

impl Scene<'_> {
    fn fault(self, code: &Code) -> Fault {
        match code {
            Code::Message(message) => self.refused(message),
            Code::NoSuchStructField {
                expected,
                found,
                outer,
            } => Fault::new(format!(
                "`{found}` is no field of {}",
                record(outer.as_deref())
            ))
            .at(self.place)
            .label("no such field")
            .hint(fields_hint(found, expected)),
            Code::MissingStructField { field, outer } => self.missing(field, outer.as_deref()),
            Code::DuplicateStructField { field, .. } => {
                Fault::new(format!("the field `{field}` is given twice"))
                    .at(self.place)
                    .label("the second one")
                    .hint("keep one of the two")
            }
            Code::NoSuchEnumVariant {
                expected,
                found,
                outer,
            } => variant(found, expected, outer.as_deref(), self.place),
            Code::InvalidValueForType { expected, found } => self.wrong_type(expected, found),
            Code::ExpectedDifferentLength { expected, found } => self.wrong_count(expected, *found),
            Code::ExpectedDifferentStructName { expected, found } => Fault::new(format!(
                "`{found}` stands here instead of {}",
                record(Some(expected))
            ))
            .at(self.place)
            .label("write the fields in plain brackets: ( field: value, … )"),
            Code::ExpectedComma => self.comma(),
            other => self.syntax(other),
        }
    }

    /// The path of what the fault stands in; empty for the whole file.
    fn path(&self) -> String {
        let index = self.outline.innermost(self.place.bytes().start);
        index
            .map(|index| self.outline.path(index))
            .unwrap_or_default()
    }

    /// The value that begins where the fault stands or behind the blanks there, if it is on one line.
    fn value(&self) -> Option<Range<usize>> {
        let text = &self.place.text;
        let byte = self.place.bytes().start;
        let byte = byte + text[byte..].len() - text[byte..].trim_start().len();
        let inside = |node: &&Node<'_>| node.value.contains(&byte);
        let value = self.outline.nodes.iter().rfind(inside)?.value.clone();
        let short = value.len() <= 60 && !text[value.clone()].contains(['\n', '(', '[', '{']);
        short.then_some(value)
    }

    /// The fault at the value that begins there, or where the reader stopped.
    fn at_value(self, fault: Fault) -> Fault {
        match self.value() {
            Some(value) => fault.at(self.outline.place(self.file, &value)),
            None => fault.at(self.place),
        }
    }

    /// A value that its own type refuses.
    fn refused(self, message: &str) -> Fault {
        let start = self.place.bytes().start;
        if self.runs_on && self.place.text[..start].ends_with('"') {
            return Fault::new("a text is not closed on its line")
                .at(self.place)
                .hint("add the closing quote");
        }
        if let Some(fault) = QuantityFault::from_serde_message(message) {
            return self.at_value(Fault::new(fault));
        }
        if let Some(refusal) = ImplementFault::from_serde_message(message) {
            let field = refusal.field();
            let value = field.and_then(|field| self.named_in(&format!("{field} ")));
            let fault = Fault::new(refusal);
            return match value {
                Some(value) => fault.at(self.outline.place(self.file, &value)),
                None => self.at_value(fault),
            };
        }
        let fault = Fault::new(message);
        match self.named_in(message) {
            Some(value) => fault.at(self.outline.place(self.file, &value)),
            None => self.at_value(fault),
        }
    }

    /// The field that a record's own check begins its message with; the reader only tells the end of
    /// the record.
    fn named_in(&self, message: &str) -> Option<Range<usize>> {
        let end = self.place.bytes().start;
        let end = if self.place.text[..end].ends_with(')') {
            end - 1
        } else {
            end
        };
        let closes = self.place.text[end..].starts_with(')');
        let record = self.outline.innermost(end).filter(|_| closes)?;
        let begins = |index: &usize| {
            let name = self.outline.name(*index).unwrap_or("").replace('_', " ");
            let rest = message.replace('_', " ");
            !name.is_empty() && rest.starts_with(&format!("{name} "))
        };
        let mut inside = (record + 1..self.outline.nodes.len()).filter(begins);
        inside
            .next()
            .map(|index| self.outline.nodes[index].value.clone())
    }

    /// A missing field: the reader stops at the closing bracket, the reader of the message wants to
    /// know which record it is.
    fn missing(self, field: &str, outer: Option<&str>) -> Fault {
        let bytes = self.place.bytes();
        let around = [bytes.start, bytes.start.saturating_sub(1)]
            .into_iter()
            .find_map(|byte| self.outline.innermost(byte));
        let path = around
            .map(|index| self.outline.path(index))
            .unwrap_or_default();
        let what = if path.is_empty() {
            format!("the file lacks the field `{field}`")
        } else {
            format!("`{path}` lacks the field `{field}`")
        };
        let stretch = around.and_then(|index| self.outline.nodes[index].key.clone());
        let place = stretch.map_or(self.place, |stretch| {
            self.outline.place(self.file, &stretch)
        });
        let fault = Fault::new(what)
            .at(place)
            .label(format!("{} without `{field}`", record(outer)));
        if field == "source" || field.ends_with("_source") {
            fault.hint(format!(
                "say where the numbers come from: {field}: Published(\"key_of_sources.ron\", \"Table 1\"), or FromMemory, Derived, Assumed(\"reason\"), CommonPractice"
            ))
        } else {
            fault.hint(format!("add `{field}: …` inside its brackets"))
        }
    }

    fn wrong_type(self, expected: &str, found: &str) -> Fault {
        // Passing, against the map: these words move to the rooms of words with all the others of this file.
        let quantity = QuantityKind::from_expectation(expected).map(expected_quantity);
        let found = found
            .replace("the unsigned integer", "the number")
            .replace("the signed integer", "the number")
            .replace("the floating point number", "the number")
            .replace("the string", "the text")
            .replace("a unit value", "nothing")
            .replace("a sequence", "a list");
        let expected = match expected {
            "f64" => "a number",
            "a boolean" => "true or false",
            "u32" | "u64" | "usize" => "a whole number",
            other => quantity.as_deref().unwrap_or(other),
        };
        let path = self.path();
        let at = if path.is_empty() {
            String::new()
        } else {
            format!("`{path}`: ")
        };
        let fault = Fault::new(format!("{at}expected {expected}, found {found}"));
        self.at_value(fault.label(format!("expected {expected}")))
    }

    /// Too few or too many values in brackets.
    fn wrong_count(self, expected: &str, found: usize) -> Fault {
        let words = expected.strip_prefix("tuple variant ").and_then(|rest| {
            let (name, count) = rest.split_once(" with ")?;
            Some((
                name.split("::").last()?,
                count.trim_end_matches(" elements"),
            ))
        });
        let fault = match words {
            Some((name, count)) => Fault::new(format!(
                "`{name}` takes {count} values in its brackets, found {found}"
            )),
            None => Fault::new(format!("expected {expected}, found {found} of them")),
        };
        let fault = match words {
            Some(("Published" | "FromMemory" | "Derived", _)) => fault.hint(
                "write the key of sources.ron and the place: (\"holzbaur_2005\", \"Table 2\")",
            ),
            _ => fault,
        };
        fault.at(self.place)
    }

    /// A missing comma: told at the value that it is missing behind.
    fn comma(self) -> Fault {
        let byte = self.place.bytes().start;
        let ends = self.outline.nodes.iter().map(|node| node.value.end);
        let before = ends.filter(|end| *end <= byte).max();
        let message = "expected a comma or a closing bracket";
        match before {
            Some(end) => Fault::new(message)
                .at(self.outline.place(self.file, &(end.saturating_sub(1)..end)))
                .label("behind this"),
            None => Fault::new(message).at(self.place),
        }
    }

    fn syntax(self, code: &Code) -> Fault {
        let (message, hint) = syntax(code);
        let found = match self.value() {
            Some(value) if !value.is_empty() => format!(", found {}", self.outline.slice(&value)),
            _ => String::new(),
        };
        let path = self.path();
        let at = if path.is_empty() {
            String::new()
        } else {
            format!("`{path}`: ")
        };
        let fault = Fault::new(format!("{at}{message}{found}"));
        let fault = if hint.is_empty() {
            fault
        } else {
            fault.hint(hint)
        };
        self.at_value(fault)
    }
}

/// A fault of syntax: what is wrong, and what to look for.
fn syntax(code: &Code) -> (String, &'static str) {
    const BRACKETS: &str = "records stand in ( ), maps in { }, lists in [ ]; look for a bracket or a value too many or too few";
    let (message, hint) = match code {
        Code::Eof => ("the file ends in the middle of a record", BRACKETS),
        Code::ExpectedMapColon => ("expected `:`", "write `name: value`"),
        Code::ExpectedMap => ("expected `{`", "a map is { name: value, … }"),
        Code::ExpectedMapEnd => ("expected `}`", BRACKETS),
        Code::ExpectedArray => ("expected `[`", "a list is [ value, … ]"),
        Code::ExpectedArrayEnd => ("expected `]`", BRACKETS),
        Code::ExpectedStructLike | Code::ExpectedNamedStructLike(_) => {
            ("expected `(`", "a record is ( field: value, … )")
        }
        Code::ExpectedStructLikeEnd | Code::ExpectedOptionEnd => ("expected `)`", BRACKETS),
        Code::ExpectedString => ("expected a text in quotes", ""),
        Code::ExpectedStringEnd => ("a text is not closed", "add the closing quote"),
        Code::ExpectedBoolean => ("expected true or false", ""),
        Code::ExpectedFloat => ("expected a number", ""),
        Code::ExpectedInteger | Code::IntegerOutOfBounds => ("expected a whole number", ""),
        Code::ExpectedIdentifier | Code::SuggestRawIdentifier(_) | Code::InvalidIdentifier(_) => (
            "expected a name",
            "names begin with a letter and hold letters, digits and `_`",
        ),
        Code::TrailingCharacters => (
            "something stands behind the end of the record",
            "a model file holds one record; look for a bracket that is closed too early",
        ),
        Code::UnclosedBlockComment => ("a comment `/*` is not closed", "add `*/`"),
        Code::ExceededRecursionLimit => ("brackets are nested too deeply", ""),
        other => return (other.to_string(), ""),
    };
    (message.to_owned(), hint)
}

fn variant(found: &str, expected: &[&str], outer: Option<&str>, place: Place) -> Fault {
    let (one, many) = kind_of_word(outer);
    let fault = Fault::new(format!("`{found}` is no {one}"))
        .at(place)
        .label(format!("expected a {one}"));
    one_of(found, expected, many)
        .into_iter()
        .fold(fault, Fault::hint)
}

fn fields_hint(found: &str, expected: &[&str]) -> String {
    match nearest(found, expected).as_slice() {
        [] => format!("its fields are: {}", expected.join(", ")),
        _ => did_you_mean(found, expected),
    }
}

/// What an editor of files calls a record.
fn record(outer: Option<&str>) -> String {
    let known = match outer {
        Some("LifterRecord") => "a lifter",
        Some("SegmentTable") => "a segment table",
        Some("SegmentRow") => "a segment's row",
        Some("MuscleTable") => "a muscle table",
        Some("Muscle") => "a muscle",
        Some("MomentArm") => "a moment arm",
        Some("Reference") => "a reference pose",
        Some("Curves") => "a set of curves",
        Some("Movement") => "a movement",
        Some("Technique") => "a technique parameter",
        Some("Handling") => "the handling of a lift",
        Some("SweepRecord") => "a sweep",
        Some("ArmRecord") => "a hand's path",
        Some("Band" | "BandRecord") => "a band",
        Some("Chain" | "ChainRecord") => "a chain",
        Some("Publication") => "a publication",
        Some(other) => return format!("`{other}`"),
        None => "this record",
    };
    known.to_owned()
}

/// What an editor of files calls a word of a choice, and several of them.
fn kind_of_word(outer: Option<&str>) -> (&'static str, &'static str) {
    match outer {
        Some("Dof") => ("joint", "joints"),
        Some("SegmentName") => ("segment", "segments"),
        Some("Source") => ("kind of source", "kinds of source"),
        Some("CarrierRecord") => ("carrier", "carriers"),
        Some("PathRecord") => ("kind of path", "kinds of path"),
        Some("ArmShape") => ("shape of a moment arm", "shapes of a moment arm"),
        Some("TechniqueValue") => ("kind of technique value", "kinds of technique value"),
        Some("Sex") => ("sex in the tables", "words here"),
        Some("Training") => ("training status", "states of training"),
        _ => ("word that fits here", "words here"),
    }
}
