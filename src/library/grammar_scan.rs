//! Walks the grammar of a model file, sound or broken.
//!
//! In: a RON text. Out: its [`TextNode`]s, parents before children, up to where the text makes no sense any
//! more. It knows the grammar only; reading values is left to `read`.

use std::ops::Range;

/// Nesting deeper than this is left alone (the reader refuses it at 128).
const DEEPEST: usize = 150;

/// Most parts of a text: the largest file of the program has some 8000. What stands behind them is not looked at.
pub(super) const MOST_PARTS: usize = 20_000;

/// One field, key or item of the text.
#[derive(Debug, Clone)]
pub struct TextNode<'a> {
    /// The node it stands in.
    pub parent: Option<usize>,
    /// What it is called there.
    pub step: Step<'a>,
    /// The stretch of the field's name or the map's key.
    pub key: Option<Range<usize>>,
    /// The stretch of the value, its type's name included.
    pub value: Range<usize>,
    /// The type or variant named before the bracket: `Assumed` of `Assumed("…")`.
    pub tag: Option<&'a str>,
    /// Whether the value is one thing in the brackets of its tag; paths pass through such a tag.
    pub newtype: bool,
}

/// What a node is called in the one it stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step<'a> {
    /// The whole.
    Root,
    /// A field or key.
    Name(&'a str),
    /// A value without a name, by its number.
    Item(usize),
}

/// The nodes of a text; a broken text gives the part before the break.
pub(super) fn nodes_of(text: &str) -> Vec<TextNode<'_>> {
    let mut scanner = Scanner {
        text,
        at: 0,
        nodes: Vec::new(),
    };
    scanner.attributes();
    scanner.value(None, Step::Root, None, 0);
    scanner.nodes
}

/// Walks a text and notes what stands where; every step reports whether the text made sense.
struct Scanner<'a> {
    text: &'a str,
    at: usize,
    nodes: Vec<TextNode<'a>>,
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
        self.nodes.push(TextNode {
            parent,
            step,
            key,
            value: self.at..self.text.len(),
            tag: None,
            newtype: false,
        });
        let sound = depth < DEEPEST && index <= MOST_PARTS && self.body(index, depth);
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
