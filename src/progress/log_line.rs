//! A line of a log, split into fields that know where they stand.
//!
//! In: a line and the separator. Out: [`LogField`]s, and the [`Place`] of a stretch of the file.

use crate::error::Place;

/// The file that is read.
pub(super) struct LogText<'a> {
    /// Its name, as the user gave it.
    pub file: &'a str,
    /// The whole of it.
    pub text: &'a str,
}

impl LogText<'_> {
    /// A stretch of a line.
    pub(super) fn place(&self, line: usize, columns: (usize, usize)) -> Place {
        Place {
            file: self.file.to_owned(),
            text: self.text.to_owned(),
            start: (line, columns.0),
            end: (line, columns.1),
        }
    }
}

/// A field without its quotes and blanks, and the columns it fills, counted from 1.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct LogField {
    /// What stands in it.
    pub value: String,
    /// First column, and the one just behind it.
    pub columns: (usize, usize),
}

/// Splits a line; a field in double quotes may hold the separator, and "" inside it is one quote.
pub(super) fn fields(line: &str, separator: char) -> Vec<LogField> {
    let mut found = Vec::new();
    let (mut value, mut start, mut quoted) = (String::new(), 1, false);
    let mut column = 1;
    let mut characters = line.chars().peekable();
    while let Some(c) = characters.next() {
        match c {
            '"' if quoted && characters.peek() == Some(&'"') => {
                characters.next();
                column += 1;
                value.push('"');
            }
            '"' if quoted || value.trim().is_empty() => quoted = !quoted,
            _ if c == separator && !quoted => {
                found.push(LogField {
                    value: value.trim().to_owned(),
                    columns: (start, column),
                });
                value.clear();
                start = column + 1;
            }
            _ => value.push(c),
        }
        column += 1;
    }
    found.push(LogField {
        value: value.trim().to_owned(),
        columns: (start, column),
    });
    found
}
