//! All faults of a text at once: each is told, its value replaced by a sound one, and the text read again.
//!
//! In: the text of a model file. Out: its record if it can be made readable, and every fault on the way.

use super::built_in;
use super::grammar_scan::TextNode;
use super::layered_text::LayeredText;
use super::outline::RecordOutline;
use super::read::read;
use super::record_fields::records_of;
use super::schema_probe::KnownRecords;
use crate::error::{Fault, ModelFault, Shelf, SyntaxFault, TextFault, What};
use serde::de::DeserializeOwned;
use std::collections::BTreeMap;
use std::ops::Range;
use std::sync::LazyLock;

/// What the readers know of every kind.
static KNOWN: LazyLock<BTreeMap<Shelf, KnownRecords>> = LazyLock::new(|| {
    let kinds = Shelf::ALL.into_iter();
    kinds.map(|shelf| (shelf, records_of(shelf))).collect()
});

/// Faults of types that one reading tells at most.
const MOST_FAULTS: usize = 25;

/// A text read in spite of its faults.
pub(super) struct MendedText<T> {
    /// The record, if the text could be made readable.
    pub record: Option<T>,
    /// The text that it was read from.
    pub text: LayeredText,
    /// Every fault on the way, each at its place in its file.
    pub faults: Vec<Fault>,
}

/// Reads a text and goes on behind each fault of a type; a broken grammar ends it.
pub(super) fn read_on<T: DeserializeOwned>(shelf: Shelf, text: &LayeredText) -> MendedText<T> {
    let mut mended = read_fault_by_fault(shelf, text);
    mended.faults = lacking_together(mended.faults);
    mended
}

/// All fields that one record lacks as one fault.
fn lacking_together(faults: Vec<Fault>) -> Vec<Fault> {
    let mut together: Vec<Fault> = Vec::new();
    for fault in faults {
        let of_record = lacking(&fault).map(|(path, field)| (path.to_owned(), field.to_owned()));
        let first = of_record.as_ref().and_then(|(path, _)| {
            let mut told = together.iter_mut();
            told.find(|told| lacking(told).is_some_and(|(other, _)| other == path))
        });
        match (first, of_record) {
            (Some(first), Some((_, field))) => {
                if let What::Model(ModelFault::Text(TextFault::MissingField { others, .. })) =
                    &mut first.what
                {
                    others.push(field);
                }
            }
            _ => together.push(fault),
        }
    }
    together
}

/// The record that lacks a field, and the field.
fn lacking(fault: &Fault) -> Option<(&str, &str)> {
    match &fault.what {
        What::Model(ModelFault::Text(TextFault::MissingField { path, field, .. })) => {
            Some((path, field))
        }
        _ => None,
    }
}

fn read_fault_by_fault<T: DeserializeOwned>(shelf: Shelf, text: &LayeredText) -> MendedText<T> {
    let mut mended = MendedText {
        record: None,
        text: text.clone(),
        faults: Vec::new(),
    };
    let mut lost: Vec<String> = Vec::new();
    while mended.faults.len() < MOST_FAULTS {
        let error = match read(mended.text.file(), mended.text.text()) {
            Ok(record) => {
                mended.record = Some(record);
                return mended;
            }
            Err(error) => error,
        };
        let Some(fault) = error.faults().first() else {
            return mended;
        };
        let byte = fault.place.as_ref().map(|place| place.bytes().start);
        let is_ours = byte.is_some_and(|byte| mended.text.is_made_up(byte));
        if is_ours && !mended.faults.is_empty() || follows_from(fault, &lost) {
            return mended;
        }
        let told = with_words(shelf, fault.clone());
        mended.faults.push(mended.text.located(told));
        let Some(next) =
            byte.and_then(|byte| repaired(shelf, &mended.text, fault, byte, &mut lost))
        else {
            return mended;
        };
        mended.text = next;
    }
    mended
}

/// A fault where a word of a choice is missing, with the words that there are.
fn with_words(shelf: Shelf, fault: Fault) -> Fault {
    let What::Model(ModelFault::Text(TextFault::Syntax {
        path,
        what: SyntaxFault::Name,
        found,
    })) = &fault.what
    else {
        return fault;
    };
    let field = path.rsplit('.').find(|step| step.parse::<usize>().is_err());
    let known = KNOWN.get(&shelf).map(|known| &known.words_of);
    let words = field.and_then(|field| known?.get(field));
    let Some(words) = words else {
        return fault;
    };
    let what = TextFault::Syntax {
        path: path.clone(),
        what: SyntaxFault::NoWord {
            words: words.iter().map(|word| (*word).to_owned()).collect(),
        },
        found: found.clone(),
    };
    Fault {
        place: fault.place,
        ..Fault::new(what)
    }
}

/// The text without the fault; none where nobody knows what is meant.
fn repaired(
    shelf: Shelf,
    text: &LayeredText,
    fault: &Fault,
    byte: usize,
    lost: &mut Vec<String>,
) -> Option<LayeredText> {
    let outline = RecordOutline::of(text.text());
    match &fault.what {
        What::Model(ModelFault::Text(TextFault::NoSuchField { known, .. })) => {
            let node = named_at(&outline, byte)?;
            match known
                .near
                .first()
                .filter(|near| is_missing(&outline, node, near))
            {
                Some(near) => Some(text.with(node.key.clone()?, near)),
                None => removed(text, node),
            }
        }
        What::Model(ModelFault::Text(TextFault::Syntax {
            what: SyntaxFault::DecimalComma { meant },
            ..
        })) => {
            let written = fault.place.as_ref()?.bytes();
            Some(text.with(written, meant))
        }
        What::Model(ModelFault::Text(
            TextFault::FieldTwice { .. } | TextFault::GivenTwice { .. },
        )) => removed(text, named_at(&outline, byte)?),
        What::Model(ModelFault::Text(TextFault::MissingField { path, field, .. })) => {
            let record = outline.exact(path)?;
            let opens = outline.slice(&record.value).find('(')?;
            let inside = record.value.start + opens + 1;
            let sample = sample(shelf, field)?;
            Some(text.with(inside..inside, &format!("{field}: {sample},")))
        }
        What::Model(ModelFault::Text(
            TextFault::NotFinite { .. }
            | TextFault::NoSuchWord { .. }
            | TextFault::Type(_)
            | TextFault::Refused { .. }
            | TextFault::Syntax {
                what:
                    SyntaxFault::Boolean
                    | SyntaxFault::Name
                    | SyntaxFault::Number
                    | SyntaxFault::WholeNumber
                    | SyntaxFault::Text
                    | SyntaxFault::ListBegins
                    | SyntaxFault::MapBegins
                    | SyntaxFault::RecordBegins,
                ..
            },
        ))
        | What::Quantity(_)
        | What::Implement(_) => {
            let node = named_at(&outline, byte)?;
            let is_key = node.key.as_ref().is_some_and(|key| key.contains(&byte));
            let is_bare = matches!(
                &fault.what,
                What::Model(ModelFault::Text(TextFault::Syntax {
                    what: SyntaxFault::Text,
                    ..
                }))
            );
            if let Some(key) = node.key.clone().filter(|_| is_key && is_bare) {
                let quoted = format!("\"{}\"", outline.slice(&key));
                return Some(text.with(key, &quoted));
            }
            let name = node
                .key
                .as_ref()
                .map(|key| outline.slice(key).trim_matches('"'))?;
            match sample(shelf, name).filter(|_| !is_key) {
                Some(sample) => Some(text.with(node.value.clone(), sample)),
                None => {
                    lost.push(name.to_owned());
                    removed(text, node)
                }
            }
        }
        _ => None,
    }
}

/// Whether a fault is no more than what a field that was taken out leaves behind.
fn follows_from(fault: &Fault, lost: &[String]) -> bool {
    match &fault.what {
        What::Model(ModelFault::Text(TextFault::MissingField { field, .. })) => {
            lost.contains(field)
        }
        _ => false,
    }
}

/// Whether the record round a field has none of that name.
fn is_missing(outline: &RecordOutline<'_>, node: &TextNode<'_>, name: &str) -> bool {
    let record = node.parent.unwrap_or(0);
    outline
        .children(record)
        .all(|child| outline.name(child) != Some(name))
}

/// The deepest field or entry round a byte.
fn named_at<'o, 'a>(outline: &'o RecordOutline<'a>, byte: usize) -> Option<&'o TextNode<'a>> {
    let mut at = outline.innermost(byte)?;
    while outline.nodes[at].key.is_none() {
        at = outline.nodes[at].parent?;
    }
    Some(&outline.nodes[at])
}

/// The text without a field and the comma behind it.
fn removed(text: &LayeredText, node: &TextNode<'_>) -> Option<LayeredText> {
    let start = node.key.as_ref()?.start;
    let behind = &text.text()[node.value.end..];
    let blank = behind.len() - behind.trim_start().len();
    let comma = usize::from(behind.trim_start().starts_with(','));
    let stretch: Range<usize> = start..node.value.end + if comma > 0 { blank + comma } else { 0 };
    Some(text.with(stretch, ""))
}

/// A sound value of a field, as the first shipped file of the kind that has it writes it.
fn sample(shelf: Shelf, field: &str) -> Option<&'static str> {
    let mut names: Vec<&str> = built_in::names(shelf.folder()).collect();
    names.sort_unstable();
    names.into_iter().find_map(|name| {
        let text = built_in::text(&format!("{}/{name}.ron", shelf.folder()))?;
        let outline = RecordOutline::of(text);
        let mut nodes = 0..outline.nodes.len();
        let found = nodes.find(|index| outline.name(*index) == Some(field))?;
        Some(outline.slice(&outline.nodes[found].value))
    })
}
