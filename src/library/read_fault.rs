//! What stops the reader of model files, as a fact at the place where an editor would mend it.
//!
//! In: a fault of the reader, its text. Out: a [`Fault`] with path and place.

use super::grammar_scan::TextNode;
use super::nearest::known;
use super::outline::RecordOutline;
use crate::error::{
    ExpectedType, Fault, FoundValue, ImplementFault, Place, SyntaxFault, TextFault, TypeFault,
};
use crate::units::{Length, QuantityFault, QuantityKind};
use ron::error::{Error as Code, SpannedError};
use std::ops::Range;

/// A fault of the reader as ours.
pub(super) fn as_fault(file: &str, text: &str, fault: &SpannedError) -> Fault {
    let place = Place {
        file: file.to_owned(),
        text: text.into(),
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
    let scene = FaultScene {
        file,
        outline: RecordOutline::of(text),
        runs_on: place.start.0 != place.end.0,
        place: Place::of(file, text, stretch),
    };
    scene.fault(code)
}

/// The part of a stretch on its first line; an empty stretch moves on to the next sign.
pub(super) fn one_line(text: &str, stretch: Range<usize>) -> Range<usize> {
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
struct FaultScene<'a> {
    file: &'a str,
    outline: RecordOutline<'a>,
    /// Where the reader stopped, as far as it is on one line.
    place: Place,
    /// Whether what the reader stopped at goes on behind that line.
    runs_on: bool,
}

impl FaultScene<'_> {
    fn fault(self, code: &Code) -> Fault {
        match code {
            Code::Message(message) => self.refused(message),
            Code::NoSuchStructField {
                expected,
                found,
                outer,
            } => self.here(TextFault::NoSuchField {
                field: found.clone(),
                record: outer.clone(),
                known: known(found, expected),
            }),
            Code::MissingStructField { field, outer } => self.missing(field, outer.clone()),
            Code::DuplicateStructField { field, .. } => self.here(TextFault::FieldTwice {
                field: (*field).to_owned(),
            }),
            Code::NoSuchEnumVariant {
                expected,
                found,
                outer,
            } => self.here(TextFault::NoSuchWord {
                word: found.clone(),
                choice: outer.clone(),
                known: known(found, expected),
            }),
            Code::InvalidValueForType { expected, found } => self.wrong_type(expected, found),
            Code::ExpectedDifferentLength { expected, found } => self.wrong_count(expected, *found),
            Code::ExpectedDifferentStructName { expected, found } => {
                self.here(TextFault::Type(TypeFault::OtherRecord {
                    found: found.clone(),
                    expected: (*expected).to_owned(),
                }))
            }
            Code::ExpectedComma => self.comma(),
            other => self.syntax(other),
        }
    }

    /// The fault where the reader stopped.
    fn here(self, fault: TextFault) -> Fault {
        Fault::new(fault).at(self.place)
    }

    /// The path of what the fault stands in; empty for the whole file.
    fn path(&self) -> String {
        self.path_at(self.place.bytes().start)
    }

    fn path_at(&self, byte: usize) -> String {
        let index = self.outline.innermost(byte);
        index
            .map(|index| self.outline.path(index))
            .unwrap_or_default()
    }

    /// The value that begins where the fault stands or behind the blanks there, if it is on one line.
    fn value(&self) -> Option<Range<usize>> {
        let text = &self.place.text;
        let byte = self.place.bytes().start;
        let byte = byte + text[byte..].len() - text[byte..].trim_start().len();
        let inside = |node: &&TextNode<'_>| node.value.contains(&byte);
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
            return self.here(TextFault::OpenQuote);
        }
        if let Some(fault) = QuantityFault::from_serde_message(message) {
            return self.at_value(Fault::new(fault));
        }
        if let Some(fault) = ImplementFault::from_serde_message(message) {
            let field = fault.field().and_then(|field| self.field_inside(field));
            let field = field.or_else(|| self.reading_inside(fault.reading()?));
            let field = field.or_else(|| self.text_before(fault.text()?));
            let fault = Fault::new(fault);
            return match field {
                Some(value) => fault.at(self.outline.place(self.file, &value)),
                None => self.at_value(fault),
            };
        }
        let why = message.to_owned();
        self.at_value(Fault::new(TextFault::Refused { why }))
    }

    /// The value of a field of the record that a check of its own refuses; the reader only tells the end
    /// of the record.
    fn field_inside(&self, field: &str) -> Option<Range<usize>> {
        let record = self.refused_record()?;
        let mut inside = record + 1..self.outline.nodes.len();
        let index = inside.find(|index| self.outline.name(*index) == Some(field))?;
        Some(self.outline.nodes[index].value.clone())
    }

    /// The reading of a length in that record.
    fn reading_inside(&self, length: Length) -> Option<Range<usize>> {
        let record = self.refused_record()?;
        let is_it = |index: &usize| {
            let first = self.outline.children(*index).next();
            let text = first.map(|first| self.outline.slice(&self.outline.nodes[first].value));
            let read = text.and_then(|text| Length::from_text(text.trim_matches('"')).ok());
            read.is_some_and(|read| (read.as_m() - length.as_m()).abs() < 1.0e-9)
        };
        let index = (record + 1..self.outline.nodes.len()).find(is_it)?;
        Some(self.outline.nodes[index].value.clone())
    }

    /// The last value before the fault that is this text.
    fn text_before(&self, text: &str) -> Option<Range<usize>> {
        let byte = self.place.bytes().start;
        let is_it = |node: &&TextNode<'_>| {
            let written = self.outline.slice(&node.value);
            node.value.end <= byte
                && written.trim_matches('"') == text
                && written.len() > text.len()
        };
        Some(self.outline.nodes.iter().rfind(is_it)?.value.clone())
    }

    /// The record that a check of its own refuses.
    fn refused_record(&self) -> Option<usize> {
        let end = self.place.bytes().start;
        let end = if self.place.text[..end].ends_with(')') {
            end - 1
        } else {
            end
        };
        let closes = self.place.text[end..].starts_with(')');
        self.outline.innermost(end).filter(|_| closes)
    }

    /// A missing field: the reader stops at the closing bracket, the reader of the message wants to
    /// know which record it is.
    fn missing(self, field: &str, record: Option<String>) -> Fault {
        let bytes = self.place.bytes();
        let around = [bytes.start, bytes.start.saturating_sub(1)]
            .into_iter()
            .find_map(|byte| self.outline.innermost(byte));
        let path = around
            .map(|index| self.outline.path(index))
            .unwrap_or_default();
        let fault = Fault::new(TextFault::MissingField {
            path,
            field: field.to_owned(),
            others: Vec::new(),
            record,
        });
        match around.and_then(|index| self.key_of(index)) {
            Some(stretch) => fault.at(self.outline.place(self.file, &stretch)),
            None => fault.at(self.place),
        }
    }

    /// The name of a record, which stands before the word whose brackets it is in.
    fn key_of(&self, mut index: usize) -> Option<Range<usize>> {
        loop {
            let node = &self.outline.nodes[index];
            if node.key.is_some() {
                return node.key.clone();
            }
            index = node
                .parent
                .filter(|parent| self.outline.nodes[*parent].newtype)?;
        }
    }

    fn wrong_type(self, expected: &str, found: &str) -> Fault {
        let fault = TypeFault::WrongType {
            path: self.path(),
            expected: expected_type(expected),
            found: found_value(found),
        };
        self.at_value(Fault::new(TextFault::Type(fault)))
    }

    /// Too few or too many values in brackets.
    fn wrong_count(self, expected: &str, found: usize) -> Fault {
        let words = expected.strip_prefix("tuple variant ").and_then(|rest| {
            let (name, count) = rest.split_once(" with ")?;
            Some((name.split("::").last()?, count.strip_suffix(" elements")?))
        });
        self.here(TextFault::Type(match words {
            Some((word, takes)) => TypeFault::WrongCount {
                word: word.to_owned(),
                takes: takes.to_owned(),
                found,
            },
            None => TypeFault::WrongLength {
                expected: expected.to_owned(),
                found,
            },
        }))
    }

    /// A missing comma: told at the value that it is missing behind.
    fn comma(self) -> Fault {
        let byte = self.place.bytes().start;
        if let Some(value) = self.decimal_round(byte) {
            let fault = TypeFault::WrongType {
                path: self.path(),
                expected: ExpectedType::WholeNumber,
                found: FoundValue::Number(self.outline.slice(&value).to_owned()),
            };
            return Fault::new(TextFault::Type(fault)).at(self.outline.place(self.file, &value));
        }
        let ends = self.outline.nodes.iter().map(|node| node.value.end);
        match ends.filter(|end| *end <= byte).max() {
            Some(end) => Fault::new(TextFault::NoComma { behind: true })
                .at(self.outline.place(self.file, &(end.saturating_sub(1)..end))),
            None => self.here(TextFault::NoComma { behind: false }),
        }
    }

    /// A number with decimals in which the reader of whole numbers stops at the point.
    fn decimal_round(&self, byte: usize) -> Option<Range<usize>> {
        let node = &self.outline.nodes[self.outline.innermost(byte)?];
        let written = self.outline.slice(&node.value);
        let stops_inside = node.value.start < byte && byte < node.value.end;
        let is_number = written.contains('.') && written.parse::<f64>().is_ok();
        (stops_inside && is_number).then(|| node.value.clone())
    }

    /// The number whose comma was taken for the end of its whole part, and the same with a point.
    fn decimal_comma(&self) -> Option<(Range<usize>, String)> {
        let text = &self.place.text;
        let decimals = self.place.bytes().start;
        let before = text.get(..decimals)?.strip_suffix(',')?;
        let is_digit = |sign: char| sign.is_ascii_digit();
        let whole = before.len() - before.trim_end_matches(is_digit).len();
        let rest = text.get(decimals..)?;
        let count = rest.len() - rest.trim_start_matches(is_digit).len();
        let start = before.len() - whole;
        let is_number = whole > 0 && count > 0 && !before[..start].ends_with('.');
        is_number.then(|| {
            let meant = format!("{}.{}", &before[start..], &rest[..count]);
            (start..decimals + count, meant)
        })
    }

    fn syntax(self, code: &Code) -> Fault {
        if let Some((written, meant)) = self.decimal_comma() {
            let fault = Fault::new(TextFault::Syntax {
                path: self.path_at(written.start),
                what: SyntaxFault::DecimalComma { meant },
                found: Some(self.outline.slice(&written).to_owned()),
            });
            return fault.at(self.outline.place(self.file, &written));
        }
        let value = self.value().filter(|value| !value.is_empty());
        let fault = Fault::new(TextFault::Syntax {
            path: self.path(),
            what: broken_grammar(code),
            found: value.map(|value| self.outline.slice(&value).to_owned()),
        });
        self.at_value(fault)
    }
}

/// What the reader expected, from its own name for it.
fn expected_type(name: &str) -> ExpectedType {
    match name {
        "f64" => ExpectedType::Number,
        "a boolean" => ExpectedType::Boolean,
        "u32" | "u64" | "usize" => ExpectedType::WholeNumber,
        other => QuantityKind::from_expectation(other).map_or_else(
            || ExpectedType::Other(other.to_owned()),
            ExpectedType::Quantity,
        ),
    }
}

/// What the reader found, from its own marks for it.
fn found_value(marked: &str) -> FoundValue {
    let numbers = [
        "the unsigned integer ",
        "the signed integer ",
        "the floating point number ",
    ];
    if let Some(number) = numbers.iter().find_map(|mark| marked.strip_prefix(mark)) {
        return FoundValue::Number(number.to_owned());
    }
    match marked {
        "a unit value" => FoundValue::Nothing,
        "a sequence" => FoundValue::List,
        other => other.strip_prefix("the string ").map_or_else(
            || FoundValue::Other(other.to_owned()),
            |text| FoundValue::Text(text.to_owned()),
        ),
    }
}

/// How the grammar is broken, from the reader's own codes.
fn broken_grammar(code: &Code) -> SyntaxFault {
    match code {
        Code::Eof => SyntaxFault::EndsEarly,
        Code::ExpectedMapColon => SyntaxFault::Colon,
        Code::ExpectedMap => SyntaxFault::MapBegins,
        Code::ExpectedMapEnd => SyntaxFault::MapEnds,
        Code::ExpectedArray => SyntaxFault::ListBegins,
        Code::ExpectedArrayEnd => SyntaxFault::ListEnds,
        Code::ExpectedStructLike | Code::ExpectedNamedStructLike(_) => SyntaxFault::RecordBegins,
        Code::ExpectedStructLikeEnd | Code::ExpectedOptionEnd => SyntaxFault::RecordEnds,
        Code::ExpectedString => SyntaxFault::Text,
        Code::ExpectedStringEnd => SyntaxFault::TextEnds,
        Code::ExpectedBoolean => SyntaxFault::Boolean,
        Code::ExpectedFloat => SyntaxFault::Number,
        Code::ExpectedInteger | Code::IntegerOutOfBounds => SyntaxFault::WholeNumber,
        Code::ExpectedIdentifier | Code::SuggestRawIdentifier(_) | Code::InvalidIdentifier(_) => {
            SyntaxFault::Name
        }
        Code::TrailingCharacters => SyntaxFault::Trailing,
        Code::UnclosedBlockComment => SyntaxFault::CommentEnds,
        Code::ExceededRecursionLimit => SyntaxFault::TooDeep,
        other => SyntaxFault::Other(other.to_string()),
    }
}
