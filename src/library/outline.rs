//! Where everything stands in the text of a model file.
//!
//! In: a RON text, sound or broken. Out: [`Outline`], a tree of its fields, keys and list items with
//! their stretches of bytes, so that a rule that names `muscles.brachialis.pennation` can show the
//! line. It knows the grammar only; reading values is left to `read`.

use crate::error::Place;
use std::ops::Range;

/// Nesting deeper than this is left alone (the reader refuses it at 128).
const DEEPEST: usize = 150;

/// One field, key or item of the text.
#[derive(Debug, Clone)]
pub(super) struct Node<'a> {
    parent: Option<usize>,
    step: Step<'a>,
    /// The stretch of the field's name or the map's key.
    pub key: Option<Range<usize>>,
    /// The stretch of the value, its type's name included.
    pub value: Range<usize>,
    /// The type or variant named before the bracket: `Assumed` of `Assumed("…")`.
    pub tag: Option<&'a str>,
    /// Whether the value is one thing in the brackets of its tag; paths pass through such a tag.
    newtype: bool,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Step<'a> {
    Root,
    Name(&'a str),
    Item(usize),
}

/// The tree of a text, parents before children.
#[derive(Debug, Clone)]
pub(super) struct Outline<'a> {
    text: &'a str,
    /// Every field, key and item, in the order of the text; the first is the whole.
    pub nodes: Vec<Node<'a>>,
}

impl<'a> Outline<'a> {
    /// The tree of a text; a broken text gives the part before the break.
    pub fn of(text: &'a str) -> Self {
        let mut scanner = Scanner {
            text,
            at: 0,
            nodes: Vec::new(),
        };
        scanner.attributes();
        scanner.value(None, Step::Root, None, 0);
        Self {
            text,
            nodes: scanner.nodes,
        }
    }

    /// The node of a path such as `muscles.brachialis.pennation`, or the deepest one on the way to it.
    pub fn find(&self, path: &str) -> Option<&Node<'a>> {
        let mut at = self.inside(0)?;
        for step in path.split('.').filter(|step| !step.is_empty()) {
            let Some(next) = self.children(at).find(|child| self.is_called(*child, step)) else {
                break;
            };
            at = self.inside(next).unwrap_or(next);
        }
        let mut node = self.nodes.get(at)?;
        while let (None, Some(parent)) = (&node.key, node.parent) {
            if !self.nodes[parent].newtype {
                break;
            }
            node = &self.nodes[parent];
        }
        Some(node)
    }

    /// The node itself, or what stands in the brackets of its tag.
    fn inside(&self, mut at: usize) -> Option<usize> {
        while self.nodes.get(at)?.newtype {
            at = self.children(at).next()?;
        }
        Some(at)
    }

    /// The parts of a node, in the order of the text.
    pub fn children(&self, of: usize) -> impl Iterator<Item = usize> + '_ {
        (of + 1..self.nodes.len()).filter(move |index| self.nodes[*index].parent == Some(of))
    }

    fn is_called(&self, index: usize, step: &str) -> bool {
        match self.nodes[index].step {
            Step::Root => false,
            Step::Name(name) => name == step,
            Step::Item(number) => step.parse() == Ok(number),
        }
    }

    /// The name of a field or key.
    pub fn name(&self, index: usize) -> Option<&'a str> {
        match self.nodes[index].step {
            Step::Name(name) => Some(name),
            Step::Root | Step::Item(_) => None,
        }
    }

    /// The deepest node around a byte.
    pub fn innermost(&self, byte: usize) -> Option<usize> {
        let around = |node: &Node<'_>| {
            let start = node.key.as_ref().map_or(node.value.start, |key| key.start);
            (start..node.value.end).contains(&byte)
        };
        self.nodes.iter().rposition(around)
    }

    /// The path of a node: `muscles.brachialis.moment_arm.elbow`; empty for the whole.
    pub fn path(&self, index: usize) -> String {
        let mut steps = Vec::new();
        let mut at = Some(index);
        while let Some(node) = at.map(|at| &self.nodes[at]) {
            let skipped = node.parent.is_some_and(|parent| self.nodes[parent].newtype);
            match node.step {
                Step::Name(name) => steps.push(name.to_owned()),
                Step::Item(number) if !skipped => steps.push(number.to_string()),
                Step::Root | Step::Item(_) => {}
            }
            at = node.parent;
        }
        steps.reverse();
        steps.join(".")
    }

    /// The text of a stretch.
    pub fn slice(&self, stretch: &Range<usize>) -> &'a str {
        &self.text[stretch.clone()]
    }

    /// The place of a stretch in the file.
    pub fn place(&self, file: &str, stretch: &Range<usize>) -> Place {
        Place::of(file, self.text, stretch.clone())
    }

    /// The second of two fields or keys of one name in one record or map.
    pub fn repeated(&self) -> Vec<usize> {
        let mut seen = std::collections::BTreeSet::new();
        (0..self.nodes.len())
            .filter(|index| match self.nodes[*index].step {
                Step::Name(name) => !seen.insert((self.nodes[*index].parent, name)),
                Step::Root | Step::Item(_) => false,
            })
            .collect()
    }

    /// Bare numbers that are not finite: `NaN`, `inf`, `1e999`.
    pub fn not_finite(&self) -> Vec<usize> {
        let is_so = |node: &Node<'_>| {
            node.tag.is_none()
                && self.slice(&node.value).len() < 40
                && self
                    .slice(&node.value)
                    .parse::<f64>()
                    .is_ok_and(|number| !number.is_finite())
        };
        (0..self.nodes.len())
            .filter(|index| is_so(&self.nodes[*index]))
            .collect()
    }
}

/// Walks a text and notes what stands where; every step reports whether the text made sense.
struct Scanner<'a> {
    text: &'a str,
    at: usize,
    nodes: Vec<Node<'a>>,
}

impl<'a> Scanner<'a> {
    fn rest(&self) -> &'a str {
        &self.text[self.at..]
    }

    fn next_is(&self, sign: char) -> bool {
        self.rest().starts_with(sign)
    }

    fn take(&mut self, sign: char) -> bool {
        let there = self.next_is(sign);
        if there {
            self.at += sign.len_utf8();
        }
        there
    }

    /// Skips blanks and comments.
    fn blank(&mut self) {
        loop {
            let rest = self.rest();
            let trimmed = rest.trim_start();
            self.at += rest.len() - trimmed.len();
            if trimmed.starts_with("//") {
                self.at += trimmed.find('\n').unwrap_or(trimmed.len());
            } else if trimmed.starts_with("/*") {
                self.at += block_comment(trimmed);
            } else {
                return;
            }
        }
    }

    /// Skips `#![enable(…)]` at the head of the file.
    fn attributes(&mut self) {
        self.blank();
        while self.rest().starts_with("#![") {
            self.at += self
                .rest()
                .find(']')
                .map_or(self.rest().len(), |end| end + 1);
            self.blank();
        }
    }

    /// Notes a value and all its parts.
    fn value(
        &mut self,
        parent: Option<usize>,
        step: Step<'a>,
        key: Option<Range<usize>>,
        depth: usize,
    ) -> bool {
        self.blank();
        let index = self.nodes.len();
        self.nodes.push(Node {
            parent,
            step,
            key,
            value: self.at..self.text.len(),
            tag: None,
            newtype: false,
        });
        let sound = depth < DEEPEST && self.body(index, depth);
        if sound {
            self.nodes[index].value.end = self.at;
        }
        sound
    }

    fn body(&mut self, index: usize, depth: usize) -> bool {
        if self.next_is('"') || self.next_is('\'') || raw_string(self.rest()).is_some() {
            return self.quoted();
        }
        if self.take('[') {
            return self.items(index, ']', depth).is_some();
        }
        if self.take('{') {
            return self.entries(index, depth);
        }
        if self.take('(') {
            return self.items(index, ')', depth).is_some();
        }
        let tag = self.word();
        if tag.is_empty() {
            return false;
        }
        let behind = self.at;
        self.blank();
        if !self.take('(') {
            self.at = behind;
            return true;
        }
        self.nodes[index].tag = Some(tag);
        let unnamed = self.items(index, ')', depth);
        self.nodes[index].newtype = unnamed == Some(1);
        unnamed.is_some()
    }

    /// Fields and items up to the closing bracket; how many of them have no name.
    fn items(&mut self, index: usize, close: char, depth: usize) -> Option<usize> {
        let mut unnamed = 0;
        loop {
            self.blank();
            if self.take(close) {
                return Some(unnamed);
            }
            let start = self.at;
            let name = if close == ')' { self.word() } else { "" };
            let key = start..self.at;
            self.blank();
            let named = !name.is_empty() && self.take(':');
            let sound = if named {
                self.value(Some(index), Step::Name(name), Some(key), depth + 1)
            } else {
                self.at = start;
                unnamed += 1;
                self.value(Some(index), Step::Item(unnamed - 1), None, depth + 1)
            };
            self.blank();
            if !sound || !(self.take(',') || self.next_is(close)) {
                return None;
            }
        }
    }

    /// Entries of a map up to its closing brace.
    fn entries(&mut self, index: usize, depth: usize) -> bool {
        loop {
            self.blank();
            if self.take('}') {
                return true;
            }
            let start = self.at;
            let quoted = self.next_is('"');
            let sound = if quoted {
                self.quoted()
            } else {
                !self.word().is_empty()
            };
            let key = start..self.at;
            let name = &self.text[key.clone()];
            let name = if quoted { name.trim_matches('"') } else { name };
            self.blank();
            if !sound || !self.take(':') {
                return false;
            }
            let sound = self.value(Some(index), Step::Name(name), Some(key), depth + 1);
            self.blank();
            if !sound || !(self.take(',') || self.next_is('}')) {
                return false;
            }
        }
    }

    /// An identifier or a number.
    fn word(&mut self) -> &'a str {
        let rest = self.rest();
        let is_inside = |c: char| c.is_alphanumeric() || "_+-.#".contains(c);
        let end = rest.find(|c| !is_inside(c)).unwrap_or(rest.len());
        self.at += end;
        &rest[..end]
    }

    /// A string, a raw string or a sign in single quotes.
    fn quoted(&mut self) -> bool {
        if let Some(length) = raw_string(self.rest()) {
            self.at += length;
            return true;
        }
        let close = if self.next_is('\'') { '\'' } else { '"' };
        let mut escaped = false;
        for (index, sign) in self.rest().char_indices().skip(1) {
            if sign == close && !escaped {
                self.at += index + 1;
                return true;
            }
            escaped = sign == '\\' && !escaped;
        }
        false
    }
}

/// Length of the block comment that a text begins with; comments nest.
fn block_comment(text: &str) -> usize {
    let mut depth = 0;
    let mut at = 0;
    while at < text.len() {
        if text[at..].starts_with("/*") {
            depth += 1;
            at += 2;
        } else if text[at..].starts_with("*/") {
            depth -= 1;
            at += 2;
            if depth == 0 {
                return at;
            }
        } else {
            at += text[at..].chars().next().map_or(1, char::len_utf8);
        }
    }
    text.len()
}

/// Length of the raw string (`r"…"`, `r#"…"#`) that a text begins with.
fn raw_string(text: &str) -> Option<usize> {
    let behind = text.strip_prefix('r')?;
    let fence = behind.len() - behind.trim_start_matches('#').len();
    let inside = behind[fence..].strip_prefix('"')?;
    let close = format!("\"{}", "#".repeat(fence));
    let end = inside.find(&close)?;
    Some(1 + fence + 1 + end + close.len())
}

#[cfg(test)]
mod tests {
    use super::Outline;

    const TEXT: &str = r#"// a table
Table(
    muscles: { "biceps": (pennation: "75 deg", at: {elbow: Angle("1 deg")}) }, /* ü /* n */ */
    list: [1.0, NaN, (r"a", 'b')], path: Arm((friction: 0.5)), path: Free,
)"#;

    #[test]
    fn regress_finds_fields_keys_items_and_passes_through_tags() {
        let outline = Outline::of(TEXT);
        let value = |path: &str| outline.slice(&outline.find(path).expect(path).value);
        assert_eq!(value("muscles.biceps.pennation"), "\"75 deg\"");
        assert_eq!(value("muscles.biceps.at.elbow"), "Angle(\"1 deg\")");
        assert_eq!(value("list.2.0"), "r\"a\"");
        assert_eq!(value("path.friction"), "0.5");
        assert_eq!(value("muscles.biceps.nowhere"), value("muscles.biceps"));
        let inner = TEXT.find("0.5").expect("it is there");
        let inner = outline.innermost(inner).expect("it is inside");
        assert_eq!(outline.path(inner), "path.friction");
    }

    #[test]
    fn regress_finds_repeated_fields_and_numbers_that_are_not_finite() {
        let outline = Outline::of(TEXT);
        let names = |found: Vec<usize>| -> Vec<String> {
            found.into_iter().map(|index| outline.path(index)).collect()
        };
        assert_eq!(names(outline.repeated()), ["path"]);
        assert_eq!(names(outline.not_finite()), ["list.1"]);
    }

    #[test]
    fn fault_a_broken_text_gives_what_stands_before_the_break() {
        let outline = Outline::of("(a: 1, b: (c: \"x");
        assert_eq!(
            outline.slice(&outline.find("a").expect("a is read").value),
            "1"
        );
        assert!(outline.innermost(12).is_some());
    }
}
