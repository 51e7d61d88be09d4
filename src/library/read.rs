//! One text to one typed value, with faults that say place, fault and next move.
//!
//! In: the text of a model file. Out: the record, or an [`Error`] that marks the line. Syntax and
//! types stop at the first fault; names given twice and numbers that are not finite are all told.

use super::grammar_scan::{MOST_PARTS, nodes_of};
use super::outline::RecordOutline;
use super::read_fault::{as_fault, one_line};
use crate::error::{Error, Fault, FileFault, Result, TextFault};
use ron::extensions::Extensions;
use serde::de::{DeserializeOwned, IgnoredAny};

/// Reads one model file.
///
/// **Fails** at the first fault of syntax or type; else with every field or key that is given twice
/// and every number that is not finite.
pub fn read<T: DeserializeOwned>(file: &str, text: &str) -> Result<T> {
    // A mark that some editors put before the text is no part of it.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let value = options().from_str(text).map_err(|fault| {
        let missing = no_record(file, text).err();
        missing.unwrap_or_else(|| as_fault(file, text, &fault).into())
    })?;
    let outline = RecordOutline::of(text);
    let faults = beyond_types(file, &outline);
    if faults.is_empty() {
        Ok(value)
    } else {
        Err(Error::bad_input(faults))
    }
}

/// Most bytes of a model file: the largest of the program has a tenth of that.
const MOST_MB: u64 = 1;

/// **Fails** for a text that is larger than any model file, before anything is made of it.
pub(super) fn bounded(file: &str, text: &str) -> Result<()> {
    if text.len() as u64 > MOST_MB * 1_000_000 {
        return Err(Error::bad(FileFault::TooLarge {
            file: file.to_owned(),
            most_mb: MOST_MB,
        }));
    }
    match nodes_of(text).len() > MOST_PARTS {
        false => Ok(()),
        true => Err(Error::bad(TextFault::TooManyParts {
            file: file.to_owned(),
            most: MOST_PARTS,
        })),
    }
}

/// Checks that a text holds records, lists and values as the grammar has them, whatever they mean.
///
/// **Fails** at the first fault of syntax.
pub(super) fn check_grammar(file: &str, text: &str) -> Result<()> {
    let read = options().from_str::<IgnoredAny>(text);
    read.map(|_| ())
        .map_err(|fault| as_fault(file, text, &fault).into())
}

/// Refuses a text without any record in it.
pub(super) fn no_record(file: &str, text: &str) -> Result<()> {
    let outline = RecordOutline::of(text);
    let is_bare = outline.children(0).next().is_none();
    let stretch = outline
        .nodes
        .first()
        .map_or(0..0, |node| node.value.clone());
    let begins = outline.slice(&stretch);
    if !is_bare || begins.starts_with(['(', '{']) {
        return Ok(());
    }
    Err(if begins.is_empty() {
        Error::bad(TextFault::Empty {
            file: file.to_owned(),
        })
    } else {
        let line = one_line(text, stretch.start..stretch.end);
        let fault = Fault::new(TextFault::NoRecord);
        fault.at(outline.place(file, &line)).into()
    })
}

/// How model files are read: an optional value may be written without `Some(…)`.
fn options() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME)
}

/// More faults of a kind than anybody mends at once.
const MOST_FAULTS: usize = 1000;

/// What is wrong although every type fits: a name given twice, a sign that cannot be shown, a number that is not finite.
fn beyond_types(file: &str, outline: &RecordOutline<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    for index in outline.repeated().into_iter().take(MOST_FAULTS) {
        let node = &outline.nodes[index];
        let stretch = node.key.clone().unwrap_or(node.value.clone());
        let path = outline.path(index);
        let fault = Fault::new(TextFault::GivenTwice { path });
        faults.push(fault.at(outline.place(file, &stretch)));
    }
    for (index, code) in outline.unprintable().into_iter().take(MOST_FAULTS) {
        let node = &outline.nodes[index];
        let path = outline.path(index);
        let fault = Fault::new(TextFault::Unprintable { path, code });
        faults.push(fault.at(outline.place(file, &node.value)));
    }
    for (index, letters, most) in outline.too_long().into_iter().take(MOST_FAULTS) {
        let node = &outline.nodes[index];
        let path = outline.path(index);
        let fault = Fault::new(TextFault::TooLong {
            letters,
            most,
            path,
        });
        let start = node.value.start;
        faults.push(fault.at(outline.place(file, &(start..start + 1))));
    }
    for index in outline.not_finite().into_iter().take(MOST_FAULTS) {
        let stretch = &outline.nodes[index].value;
        let fault = Fault::new(TextFault::NotFinite {
            path: outline.path(index),
            written: outline.slice(stretch).to_owned(),
        });
        faults.push(fault.at(outline.place(file, stretch)));
    }
    faults
}
