//! Reads a training log from CSV text, every bad row named by line with what is wrong.
//!
//! In: the text of the file and its name. Out: a [`Log`]; or all bad rows at once, each with its place;
//! or, on request, the log without them. Separator comma or semicolon; lines that begin with `#` are
//! remarks.

use super::log_header::header;
use super::log_line::{LogText, fields};
use super::log_row::{BadField, entry};
use super::training_log::{Log, SkippedRow};
use crate::error::{Error, Fault, LogFault, Result};

/// What becomes of rows that cannot be read.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum BadRows {
    /// The file is refused with all of them.
    #[default]
    Refused,
    /// They are left out and listed in [`Log::skipped`].
    LeftOut,
}

/// More bad rows than this are counted, not shown one by one.
const MOST_ROWS: usize = 25;

/// Reads a log.
///
/// **Fails** with every bad row at once (the first 25 in full), each with line and column; with the
/// header alone when that is wrong; and when no row is left.
pub fn read_log(file: &str, text: &str, bad_rows: BadRows) -> Result<Log> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let page = LogText { file, text };
    let named = || file.to_owned();
    let mut lines = rows(text);
    let Some((line, first)) = lines.next() else {
        return Err(Error::bad(LogFault::Empty { file: named() }));
    };
    let separator = if first.contains(';') { ';' } else { ',' };
    let header = header(&page, line, first, separator)?;
    let (mut good, mut bad) = (Vec::new(), Vec::new());
    for (line, content) in lines {
        match entry(&header, line, &fields(content, separator)) {
            Ok(entry) => good.push(entry),
            Err(faults) => bad.push((line, faults)),
        }
    }
    if !bad.is_empty() && (good.is_empty() || bad_rows == BadRows::Refused) {
        return Err(all_of(&page, bad));
    }
    if good.is_empty() {
        return Err(Error::bad(LogFault::NoRows { file: named() }));
    }
    let skipped = bad.into_iter().map(|(line, row)| SkippedRow {
        line,
        faults: row.into_iter().map(|bad| bad.fault).collect(),
    });
    Ok(Log::from_rows(good, skipped.collect()))
}

/// The lines that hold something, with their numbers, counted from 1.
fn rows(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.lines()
        .enumerate()
        .map(|(index, line)| (index + 1, line))
        .filter(|(_, line)| {
            let line = line.trim();
            !line.is_empty() && !line.starts_with('#')
        })
}

fn all_of(page: &LogText, bad: Vec<(usize, Vec<BadField>)>) -> Error {
    let more = bad.len().saturating_sub(MOST_ROWS);
    let shown = bad.into_iter().take(MOST_ROWS);
    let mut fields: Vec<(usize, BadField)> = shown
        .flat_map(|(line, row)| row.into_iter().map(move |field| (line, field)))
        .collect();
    let last = fields.pop();
    let fault = |(line, field): (usize, BadField), is_last: bool| {
        let BadField { fault, columns } = field;
        Fault::new(LogFault::Row {
            line,
            fault,
            is_last,
        })
        .at(page.place(line, columns))
    };
    let mut faults: Vec<Fault> = fields
        .into_iter()
        .map(|field| fault(field, false))
        .collect();
    faults.extend(last.map(|field| fault(field, more == 0)));
    if more > 0 {
        faults.push(Fault::new(LogFault::MoreRows(more)));
    }
    Error::bad_input(faults)
}
