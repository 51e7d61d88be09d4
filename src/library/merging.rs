//! A model file laid over the one that it extends: what it names takes the place of what stands there.
//!
//! In: two texts. Out: one [`LayeredText`]. Records and maps are merged field by field; lists, words and values are
//! replaced whole; `None` takes an entry of a map out.

use super::layered_text::LayeredText;
use super::outline::{EXTENDS, RecordOutline};

/// What a file says laid over what it extends.
pub(super) fn laid_over(own: &LayeredText, base: &LayeredText) -> LayeredText {
    let mut merger = Merger {
        own,
        base,
        own_outline: RecordOutline::of(own.text()),
        base_outline: RecordOutline::of(base.text()),
        merged: LayeredText::between(own, base),
    };
    if merger.own_outline.nodes.is_empty() || merger.base_outline.nodes.is_empty() {
        return own.clone();
    }
    merger.value(0, 0);
    merger.merged
}

/// How a value is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Shape {
    /// `(field: value, …)`, with or without a word before it.
    Record,
    /// `{key: value, …}`.
    Map,
    /// A word with one thing in its brackets: `Some(…)`, `Sweep((…))`.
    Wrapped,
    /// Anything else.
    Single,
}

struct Merger<'a> {
    own: &'a LayeredText,
    base: &'a LayeredText,
    own_outline: RecordOutline<'a>,
    base_outline: RecordOutline<'a>,
    merged: LayeredText,
}

impl Merger<'_> {
    /// Writes one value of both files.
    fn value(&mut self, own: usize, base: usize) {
        let shapes = (
            shape(&self.own_outline, own),
            shape(&self.base_outline, base),
        );
        let tags = (
            self.own_outline.nodes[own].tag,
            self.base_outline.nodes[base].tag,
        );
        match shapes {
            (Shape::Wrapped, Shape::Wrapped) if tags.0 == tags.1 => {
                self.in_brackets(own, base, |merger| {
                    let own = merger.own_outline.children(own).next();
                    let base = merger.base_outline.children(base).next();
                    if let (Some(own), Some(base)) = (own, base) {
                        merger.value(own, base);
                    }
                });
            }
            (Shape::Record | Shape::Map, Shape::Wrapped) if tags.0.is_none() => {
                self.in_base_brackets(base, |merger| {
                    let base = merger.base_outline.children(base).next();
                    if let Some(base) = base {
                        merger.value(own, base);
                    }
                });
            }
            (Shape::Record, Shape::Record) if tags.0.is_none() || tags.0 == tags.1 => {
                self.in_brackets(own, base, |merger| merger.fields(own, base));
            }
            (Shape::Record, Shape::Record) if own == 0 => {
                self.in_brackets(own, base, |merger| merger.fields(own, base));
            }
            (Shape::Map, Shape::Map) => {
                self.in_brackets(own, base, |merger| merger.fields(own, base));
            }
            _ => {
                let stretch = self.own_outline.nodes[own].value.clone();
                self.merged.push_from(self.own, stretch, 0);
            }
        }
    }

    /// The word of the base and the brackets of the file itself round something.
    fn in_brackets(&mut self, own: usize, base: usize, inside: impl FnOnce(&mut Self)) {
        let (open, close) = brackets(&self.own_outline, own);
        let start = self.own_outline.nodes[own].value.start;
        let word = self.base_outline.nodes[base].tag.unwrap_or_default();
        if own == 0 {
            // The whole record goes by no name: each kind of file has its own.
            self.merged.push_from(self.own, open..open + 1, 0);
        } else if start == open {
            self.merged.push(word);
            self.merged.push_from(self.own, open..open + 1, 0);
        } else {
            self.merged.push_from(self.own, start..open + 1, 0);
        }
        inside(self);
        self.merged.push_from(self.own, close..close + 1, 0);
    }

    /// The word and the brackets of the base round something.
    fn in_base_brackets(&mut self, base: usize, inside: impl FnOnce(&mut Self)) {
        let first = self.own.layers();
        let (open, close) = brackets(&self.base_outline, base);
        let start = self.base_outline.nodes[base].value.start;
        self.merged.push_from(self.base, start..open + 1, first);
        inside(self);
        self.merged.push_from(self.base, close..close + 1, first);
    }

    /// Fields or entries: those of the base, changed where the file names them, then those of the file alone.
    fn fields(&mut self, own: usize, base: usize) {
        let first = self.own.layers();
        let is_map = shape(&self.own_outline, own) == Shape::Map;
        let mine: Vec<usize> = self.own_outline.children(own).collect();
        let theirs: Vec<usize> = self.base_outline.children(base).collect();
        let named = |outline: &RecordOutline<'_>, index: usize| {
            outline.name(index).unwrap_or_default().to_owned()
        };
        let names: Vec<String> = theirs
            .iter()
            .map(|index| named(&self.base_outline, *index))
            .collect();
        for (at, name) in theirs.into_iter().zip(&names) {
            let changed = mine
                .iter()
                .copied()
                .find(|index| named(&self.own_outline, *index) == *name);
            match changed {
                Some(changed) if is_map && self.is_taken_out(changed) => {}
                Some(changed) => {
                    self.key(changed);
                    self.value(changed, at);
                    self.merged.push(",\n");
                }
                None => {
                    let node = &self.base_outline.nodes[at];
                    let start = node.key.as_ref().map_or(node.value.start, |key| key.start);
                    let stretch = start..node.value.end;
                    self.merged.push_from(self.base, stretch, first);
                    self.merged.push(",\n");
                }
            }
        }
        // A field or key that stands twice is passed on, so that the reader tells it.
        let mut seen = std::collections::BTreeSet::new();
        for index in mine {
            let name = named(&self.own_outline, index);
            let is_new = !names.contains(&name) || !seen.insert(name.clone());
            let is_told = own == 0 && name == EXTENDS;
            if is_new && !is_told && !(is_map && self.is_taken_out(index)) {
                self.key(index);
                let stretch = self.own_outline.nodes[index].value.clone();
                self.merged.push_from(self.own, stretch, 0);
                self.merged.push(",\n");
            }
        }
    }

    /// Whether an entry of a map is to be taken out.
    fn is_taken_out(&self, index: usize) -> bool {
        self.own_outline
            .slice(&self.own_outline.nodes[index].value)
            .trim()
            == "None"
    }

    /// The name of a field or the key of an entry, as the file itself writes it.
    fn key(&mut self, index: usize) {
        if let Some(key) = self.own_outline.nodes[index].key.clone() {
            self.merged.push_from(self.own, key, 0);
            self.merged.push(": ");
        }
    }
}

/// How a value is written.
fn shape(outline: &RecordOutline<'_>, index: usize) -> Shape {
    let node = &outline.nodes[index];
    let text = outline.slice(&node.value);
    if text.starts_with('{') {
        return Shape::Map;
    }
    let is_in_brackets = text.starts_with('(') || node.tag.is_some();
    if !is_in_brackets {
        return Shape::Single;
    }
    let mut children = outline.children(index);
    let all_named = children.all(|child| outline.name(child).is_some());
    if all_named {
        Shape::Record
    } else if node.newtype && node.tag.is_some() {
        Shape::Wrapped
    } else {
        Shape::Single
    }
}

/// The bytes of the opening and the closing bracket of a value in brackets.
pub(super) fn brackets(outline: &RecordOutline<'_>, index: usize) -> (usize, usize) {
    let node = &outline.nodes[index];
    let text = outline.slice(&node.value);
    let opens = text.find(['(', '{']).unwrap_or(0);
    (
        node.value.start + opens,
        node.value.end.saturating_sub(1).max(node.value.start),
    )
}
