//! A stretch of a text file that a fault stands in.
//!
//! In: file name, text, bytes. Out: line and column, counted from 1, and back to bytes.

use std::ops::Range;
use std::sync::Arc;

/// A stretch of a text file, lines and columns counted from 1, columns in characters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// The file as the user named it.
    pub file: String,
    /// The whole text of that file, so that the line can be shown; places of one text share it.
    pub text: Arc<str>,
    /// First line and column of the faulty stretch.
    pub start: (usize, usize),
    /// Line and column just behind the faulty stretch.
    pub end: (usize, usize),
}

impl Place {
    /// The place of a stretch of bytes; a stretch outside the text is cut to it.
    #[must_use]
    pub fn of(file: &str, text: impl Into<Arc<str>>, bytes: Range<usize>) -> Self {
        let text = text.into();
        let position = |byte: usize| {
            let byte = (0..=byte.min(text.len())).rfind(|at| text.is_char_boundary(*at));
            let before = &text[..byte.unwrap_or(0)];
            let line_start = before.rfind('\n').map_or(0, |end| end + 1);
            let line = before[..line_start].lines().count() + 1;
            let column = before[line_start..].chars().count() + 1;
            (line, column)
        };
        Self {
            file: file.to_owned(),
            start: position(bytes.start),
            end: position(bytes.end.max(bytes.start)),
            text,
        }
    }

    /// The stretch in bytes of the text; positions behind a line's end count as its end.
    #[must_use]
    pub fn bytes(&self) -> Range<usize> {
        let byte = |(line, column): (usize, usize)| {
            let before: usize = self
                .text
                .split_inclusive('\n')
                .take(line.saturating_sub(1))
                .map(str::len)
                .sum();
            let line = self.text[before..].split('\n').next().unwrap_or("");
            let inside = line.char_indices().nth(column.saturating_sub(1));
            before + inside.map_or(line.len(), |(index, _)| index)
        };
        let start = byte(self.start);
        start..byte(self.end).max(start)
    }
}
