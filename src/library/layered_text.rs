//! The text of a model file laid over those that it extends: one text to read, and where each part of it stands.
//!
//! In: texts of files. Out: [`LayeredText`], which takes a fault's place back to the file that it stands in.

use super::built_in;
use super::complaint::{Complaint, at_their_places, doubts_and_faults, none_in_file};
use super::outline::{EXTENDS, RecordOutline};
use super::read::{check_grammar, read};
use crate::error::{Error, Fault, Place, Result};
use serde::de::DeserializeOwned;
use std::collections::BTreeMap;
use std::ops::Range;
use std::sync::{Arc, OnceLock};

/// One text to read, made of parts of files.
#[derive(Debug, Clone, Default)]
pub(super) struct LayeredText {
    /// The files: name as messages show it, text; the file itself first, what it extends behind it.
    files: Vec<(String, Arc<str>)>,
    /// The text to read.
    text: String,
    /// Where its parts stand, in order; a part without a file is made up.
    parts: Vec<TextPart>,
    /// What the file itself extends, as one text.
    base: Option<Arc<LayeredText>>,
    /// Where the value of each path begins, once that was asked for.
    begins: OnceLock<BTreeMap<String, usize>>,
}

/// A stretch of the text to read.
#[derive(Debug, Clone, Copy)]
struct TextPart {
    /// Where it begins in the text to read.
    start: usize,
    /// The file and the byte where it begins there; none for brackets and commas put between parts.
    stands: Option<(usize, usize)>,
}

impl LayeredText {
    /// The text of one file alone.
    pub fn of(file: &str, text: &str) -> Self {
        // A mark that some editors put before the text is no part of it.
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        Self {
            files: vec![(file.to_owned(), text.into())],
            text: text.to_owned(),
            parts: vec![TextPart {
                start: 0,
                stands: Some((0, 0)),
            }],
            base: None,
            begins: OnceLock::new(),
        }
    }

    /// An empty text whose parts will come from these files.
    pub fn between(own: &Self, base: &Self) -> Self {
        Self {
            files: own.files.iter().chain(&base.files).cloned().collect(),
            base: Some(Arc::new(base.clone())),
            ..Self::default()
        }
    }

    /// The text as one of its files alone has it, laid over what that one extends; none for the file itself.
    pub fn below(&self, number: usize) -> Option<&Arc<Self>> {
        let base = self.base.as_ref()?;
        match number.checked_sub(self.layers() - base.layers())? {
            0 => Some(base),
            deeper => base.below(deeper),
        }
    }

    /// The text to read.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The file itself, as messages show it.
    pub fn file(&self) -> &str {
        &self.files[0].0
    }

    /// The files that make it, the file itself first.
    pub fn files(&self) -> impl Iterator<Item = &str> {
        self.files.iter().map(|(file, _)| file.as_str())
    }

    /// How many files make it.
    pub fn layers(&self) -> usize {
        self.files.len()
    }

    /// Adds a made-up part.
    pub fn push(&mut self, text: &str) {
        self.parts.push(TextPart {
            start: self.text.len(),
            stands: None,
        });
        self.text += text;
    }

    /// Adds a stretch of another text whose files begin at `first` among the files here.
    pub fn push_from(&mut self, other: &Self, stretch: Range<usize>, first: usize) {
        let at = self.text.len();
        for (index, part) in other.parts.iter().enumerate() {
            let end = other.parts.get(index + 1).map(|next| next.start);
            let inside =
                part.start.max(stretch.start)..end.unwrap_or(other.text.len()).min(stretch.end);
            if inside.start >= inside.end {
                continue;
            }
            let ahead = inside.start - part.start;
            self.parts.push(TextPart {
                start: at + inside.start - stretch.start,
                stands: part.stands.map(|(file, byte)| (first + file, byte + ahead)),
            });
        }
        self.text += &other.text[stretch];
    }

    /// The same with a stretch replaced by a made-up text.
    pub fn with(&self, stretch: Range<usize>, text: &str) -> Self {
        let mut changed = Self {
            files: self.files.clone(),
            base: self.base.clone(),
            ..Self::default()
        };
        changed.push_from(self, 0..stretch.start, 0);
        changed.push(text);
        changed.push_from(self, stretch.end..self.text.len(), 0);
        changed
    }

    /// The part around a byte.
    fn part_at(&self, byte: usize) -> Option<(usize, &TextPart)> {
        let index = self.parts.partition_point(|part| part.start <= byte);
        let index = index.checked_sub(1)?;
        Some((index, &self.parts[index]))
    }

    /// The file that a byte comes from; none where it is made up.
    pub fn file_at(&self, byte: usize) -> Option<usize> {
        let (file, _) = self.part_at(byte)?.1.stands?;
        Some(file)
    }

    /// The file in which the value of a path stands, by its number and its name; none where no file has it.
    pub fn file_of(&self, path: &str) -> Option<(usize, &str)> {
        let file = self.file_at(*self.begins().get(path)?)?;
        Some((file, &self.files[file].0))
    }

    /// Where the value of each path begins.
    fn begins(&self) -> &BTreeMap<String, usize> {
        self.begins.get_or_init(|| {
            let outline = RecordOutline::of(&self.text);
            let mut begins = BTreeMap::new();
            for (index, node) in outline.nodes.iter().enumerate() {
                // What stands in the brackets of a word goes by the same path and comes behind it.
                begins
                    .entry(outline.path(index))
                    .or_insert(node.value.start);
            }
            begins
        })
    }

    /// Whether this file, or one before it, names a source for the value of a path: beside it or in a record around it.
    pub fn is_sourced_by(&self, file: usize, path: &str) -> bool {
        let outline = RecordOutline::of(&self.text);
        let start = outline.exact(path).map(|node| node.value.start);
        let mut at = start.and_then(|byte| outline.innermost(byte));
        while let Some(record) = at {
            if self.names_source(file, &outline, record) {
                return true;
            }
            at = outline.nodes[record].parent;
        }
        false
    }

    /// Whether this file, or one before it, names a source in a record.
    pub fn names_source(&self, file: usize, outline: &RecordOutline<'_>, record: usize) -> bool {
        outline.children(record).any(|child| {
            let is_source = outline
                .name(child)
                .is_some_and(|name| name == "source" || name.ends_with("_source"));
            let stands = self.file_at(outline.nodes[child].value.start);
            is_source && stands.is_some_and(|stands| stands <= file)
        })
    }

    /// A place of the text to read as one of its file; what is made up is told where the part before it ends.
    fn place(&self, place: &Place) -> Place {
        let bytes = place.bytes();
        let Some((mut index, mut part)) = self.part_at(bytes.start) else {
            return place.clone();
        };
        while part.stands.is_none() && index > 0 {
            index -= 1;
            part = &self.parts[index];
        }
        let Some((file, byte)) = part.stands else {
            return place.clone();
        };
        let end = self.parts.get(index + 1).map(|next| next.start);
        let end = end.unwrap_or(self.text.len()) - part.start;
        let inside = |at: usize| byte + (at - part.start).min(end);
        let (name, text) = &self.files[file];
        Place::of(name, text.clone(), inside(bytes.start)..inside(bytes.end))
    }

    /// Whether a place of the text to read is made up.
    pub fn is_made_up(&self, byte: usize) -> bool {
        self.file_at(byte).is_none()
    }

    /// The fault at its place in its file.
    pub fn located(&self, fault: Fault) -> Fault {
        match &fault.place {
            Some(place) if self.parts.len() > 1 => {
                let place = self.place(place);
                fault.at(place)
            }
            _ => fault,
        }
    }

    /// Whether all of it stands in the program's own files.
    pub fn is_shipped(&self) -> bool {
        self.files.iter().all(|(name, text)| {
            let inside = name.strip_prefix("models/");
            let shipped = inside.and_then(built_in::text);
            shipped.is_some_and(|shipped| shipped == &**text)
        })
    }

    /// The record of the text.
    ///
    /// **Fails** as [`read`] does, each fault at its place in its file.
    pub fn read<T: DeserializeOwned>(&self) -> Result<T> {
        read(self.file(), &self.text).map_err(|error| self.told(error))
    }

    /// Checks the grammar of the text, whatever it means.
    ///
    /// **Fails** as [`check_grammar`] does, at the place in its file.
    pub fn check_grammar(&self) -> Result<()> {
        check_grammar(self.file(), &self.text).map_err(|error| self.told(error))
    }

    /// Nothing, or all complaints as one error, each at its place in its file.
    pub fn none(&self, complaints: Vec<Complaint>) -> Result<()> {
        none_in_file(complaints, self.file(), &self.text).map_err(|error| self.told(error))
    }

    /// Complaints about what is no more than unlikely, each at its place in its file.
    pub fn doubts(&self, complaints: Vec<Complaint>) -> Vec<Fault> {
        let (doubts, _) = doubts_and_faults(complaints);
        let faults = at_their_places(doubts, self.file(), &self.text);
        faults
            .into_iter()
            .map(|fault| self.in_own_file(self.located(fault)))
            .collect()
    }

    /// The fault where the file names what it extends, if it stands in that: alone, the other file is sound.
    fn in_own_file(&self, fault: Fault) -> Fault {
        let is_other = |place: &Place| place.file != self.file();
        if !fault.place.as_ref().is_some_and(is_other) {
            return fault;
        }
        let (file, text) = &self.files[0];
        let outline = RecordOutline::of(text);
        let mut fields = outline.children(0);
        let named = fields.find(|field| outline.name(*field) == Some(EXTENDS));
        match named {
            Some(named) => fault.at(outline.place(file, &outline.nodes[named].value)),
            None => fault,
        }
    }

    /// Whether a value stands in a file that this one extends.
    pub fn takes_over(&self, path: &str) -> bool {
        self.file_of(path).is_some_and(|(file, _)| file > 0)
    }

    /// The error with each fault at its place in its file.
    pub fn told(&self, error: Error) -> Error {
        // Thousands of faults may stand where the last that was looked for does.
        let mut last: Option<(Place, Place)> = None;
        error.each(|fault| match (&fault.place, &last) {
            (Some(place), Some((read, stands))) if place == read => {
                let stands = stands.clone();
                fault.at(stands)
            }
            _ => {
                let read = fault.place.clone();
                let located = self.located(fault);
                last = read.zip(located.place.clone());
                located
            }
        })
    }
}
