//! A log as a table: rows of fields, and where each of them stands in the file.
//!
//! In: the text of the file. Out: [`LogTable`]: its separator, its rows, the [`Place`] of a row or a field.
//! Fields in double quotes may hold separators and line breaks; empty rows and rows that begin with `#` are remarks.

use crate::bounds::is_shown;
use crate::error::{Error, FileFault, Place, Result};
use std::ops::Range;
use std::sync::Arc;

/// The file that is read.
pub struct LogTable {
    /// Its name, as the user gave it.
    file: String,
    /// The whole of it; places of faults share it.
    text: Arc<str>,
    /// What parts its fields.
    separator: char,
}

/// A row of the table.
pub struct TableRow<'a> {
    /// Line of the file, counted from 1.
    pub line: usize,
    /// The byte at which it begins.
    pub start: usize,
    record: &'a csv::StringRecord,
}

impl TableRow<'_> {
    /// The field at a position, without blanks around it; empty behind the last.
    pub fn field(&self, position: usize) -> &str {
        self.record.get(position).unwrap_or("").trim()
    }

    /// How many fields there are, empty ones at the end left out.
    pub fn width(&self) -> usize {
        let filled = (0..self.record.len()).rev();
        let mut filled = filled.skip_while(|position| self.field(*position).is_empty());
        filled.next().map_or(0, |last| last + 1)
    }

    /// Every field.
    pub fn fields(&self) -> impl Iterator<Item = &str> {
        self.record.iter().map(str::trim)
    }

    /// Nothing in it, or a remark.
    fn is_remark(&self) -> bool {
        self.width() == 0 || self.field(0).starts_with('#')
    }
}

impl LogTable {
    /// The table of a text; a mark that some editors put before it is no part of it.
    pub fn of(file: &str, text: &str) -> Self {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        // Signs that a terminal would obey are shown as what cannot be read.
        let text = &text.replace(|sign: char| !is_shown(sign.into()), "\u{fffd}");
        // Old spreadsheets end lines with a carriage return alone.
        let text: Arc<str> = if text.contains('\n') {
            text.as_str().into()
        } else {
            text.replace('\r', "\n").into()
        };
        Self {
            file: file.to_owned(),
            separator: separator_of(&text),
            text,
        }
    }

    /// **Fails** where a line is longer than a row of any table.
    pub fn check(&self) -> Result<()> {
        let long = self.text.lines().position(|line| line.len() > MOST_LINE);
        long.map_or(Ok(()), |index| {
            Err(Error::bad(FileFault::LongLine {
                file: self.file.clone(),
                line: index + 1,
                most: MOST_LINE,
            }))
        })
    }

    /// The file, as the user named it.
    pub fn file(&self) -> &str {
        &self.file
    }

    /// Calls `see` with every row that holds something, in order, until it says that this is enough.
    pub fn rows(&self, mut see: impl FnMut(&TableRow<'_>) -> bool) {
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .delimiter(u8::try_from(self.separator).unwrap_or(b','))
            .comment(Some(b'#'))
            .from_reader(self.text.as_bytes());
        let mut record = csv::StringRecord::new();
        let (mut line, mut counted) = (1, 0);
        // The text is UTF-8 and rows may be of any width, so there is nothing that could fail.
        while reader.read_record(&mut record).unwrap_or(false) {
            let at = record.position().map_or(0, csv::Position::byte);
            let start = self.behind_remarks(usize::try_from(at).unwrap_or(counted));
            line += self.text[counted..start].matches('\n').count();
            counted = start;
            let row = TableRow {
                line,
                start,
                record: &record,
            };
            if !row.is_remark() && !see(&row) {
                break;
            }
        }
    }

    /// Calls `see` with every row below a line, until it says that this is enough.
    pub fn below(&self, line: usize, mut see: impl FnMut(&TableRow<'_>) -> bool) {
        self.rows(|row| row.line <= line || see(row));
    }

    /// The next byte from which a row begins: behind empty lines and remarks, which the reader passes over.
    fn behind_remarks(&self, from: usize) -> usize {
        let mut at = from;
        for line in self.text[from..].split_inclusive('\n') {
            let bare = line.trim_end_matches(['\r', '\n']);
            if !(bare.is_empty() || bare.starts_with('#')) {
                break;
            }
            at += line.len();
        }
        at
    }

    /// The place of a field of the row that begins at a byte; without one, of the whole row.
    pub fn place(&self, start: usize, field: Option<usize>) -> Place {
        let fields = self.stretches(start).0;
        let whole = || {
            let end = fields.last().map_or(start, |field| field.end);
            let line = self.text[start..].find('\n').map_or(end, |at| start + at);
            start..end.min(line.max(start))
        };
        let stretch = field.and_then(|field| fields.get(field).cloned());
        Place::of(&self.file, self.text.clone(), stretch.unwrap_or_else(whole))
    }

    /// Whether a field of the row that begins at a byte opens a quote that nothing closes.
    pub fn has_open_quote(&self, start: usize) -> bool {
        self.stretches(start).1
    }

    /// The fields of the row that begins at a byte, blanks around them left out; and whether a quote stays open.
    fn stretches(&self, start: usize) -> (Vec<Range<usize>>, bool) {
        let mut fields = Vec::new();
        let (mut begins, mut quoted, mut end) = (start, false, self.text.len());
        for (index, sign) in self.text[start..].char_indices() {
            let at = start + index;
            if sign == '"' && (quoted || at == begins) {
                quoted = !quoted;
            } else if sign == '"' && self.text[..at].ends_with('"') && at > begins + 1 {
                // Two quotes inside a quoted field are one quote, and the field goes on.
                quoted = true;
            } else if sign == self.separator && !quoted {
                fields.push(self.bare(begins..at));
                begins = at + 1;
            } else if sign == '\n' && !quoted {
                end = at;
                break;
            }
        }
        fields.push(self.bare(begins..end));
        (fields, quoted)
    }

    /// A stretch without the blanks around it.
    fn bare(&self, stretch: Range<usize>) -> Range<usize> {
        let text = &self.text[stretch.clone()];
        let start = stretch.start + text.len() - text.trim_start().len();
        start..(stretch.start + text.trim_end().len()).max(start)
    }
}

/// Most bytes of a line, assumed: a long note in every field of a wide row.
const MOST_LINE: usize = 100_000;

/// Rows that are looked at for the separator; above the header, spreadsheets have titles.
const FIRST_ROWS: usize = 10;

/// What parts the fields: of semicolon, tab and comma the one that stands most often in one of the first rows, outside
/// quotes. A comma between digits parts none where the row has one of the others: it is a decimal comma.
fn separator_of(text: &str) -> char {
    let filled = text.lines().filter(|line| !line.starts_with('#'));
    let first: Vec<&str> = filled.take(FIRST_ROWS).collect();
    let count = |separator: char| {
        let counted = first.iter().map(|line| counted(line, separator));
        counted.max().unwrap_or(0)
    };
    // The last of equal counts is taken: a comma parts fields only where nothing else does.
    [',', '\t', ';']
        .into_iter()
        .max_by_key(|separator| count(*separator))
        .filter(|separator| count(*separator) > 0)
        .unwrap_or(',')
}

/// How often a sign parts fields in a line, as far as it can be told from the line alone.
fn counted(line: &str, separator: char) -> usize {
    let has_other = line.contains([';', '\t']);
    let is_digit = |sign: Option<char>| sign.is_some_and(|sign| sign.is_ascii_digit());
    let (mut quoted, mut before, mut count) = (false, None, 0);
    let mut signs = line.chars().peekable();
    while let Some(sign) = signs.next() {
        quoted ^= sign == '"';
        let is_decimal =
            sign == ',' && has_other && is_digit(before) && is_digit(signs.peek().copied());
        count += usize::from(sign == separator && !quoted && !is_decimal);
        before = Some(sign);
    }
    count
}
