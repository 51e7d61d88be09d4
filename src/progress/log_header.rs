//! The header of a log: which column stands where.
//!
//! In: the header's line. Out: the place of every column; or all that is wrong with the header at once.

use super::log_line::{LogField, LogText, fields};
use crate::error::{Error, Fault, LogColumn, LogFault, Result};

/// A spelling is near a column's name when it takes this many slips at most.
const MOST_SLIPS: usize = 2;

/// Other spellings of a column, blanks written as underscores.
const fn also(column: LogColumn) -> &'static [&'static str] {
    match column {
        LogColumn::Date => &["day"],
        LogColumn::Lift => &["movement", "exercise"],
        LogColumn::Load => &["weight"],
        LogColumn::Repetitions => &["reps"],
        LogColumn::Velocity => &["mean_velocity"],
        LogColumn::Reserve => &["rir", "reps_in_reserve", "repetitions_in_reserve"],
        LogColumn::Note => &["notes", "remark"],
    }
}

const fn is_needed(column: LogColumn) -> bool {
    use LogColumn::{Date, Lift, Load, Repetitions};
    matches!(column, Date | Lift | Load | Repetitions)
}

/// Where each column stands in the file.
#[derive(Debug, Clone, Default)]
pub(super) struct LogHeader {
    places: [Option<usize>; LogColumn::ALL.len()],
}

impl LogHeader {
    /// The columns of the file.
    pub(super) fn count(&self) -> usize {
        self.places.iter().flatten().count()
    }

    /// The field of a column, if the row fills it.
    pub(super) fn field<'a>(
        &self,
        column: LogColumn,
        fields: &'a [LogField],
    ) -> Option<&'a LogField> {
        self.places[column as usize]
            .and_then(|position| fields.get(position))
            .filter(|field| !field.value.is_empty())
    }
}

/// Reads the header.
///
/// **Fails** on columns that are unknown, stand twice or are missing, all at once.
pub(super) fn header(
    page: &LogText,
    line: usize,
    written: &str,
    separator: char,
) -> Result<LogHeader> {
    let mut header = LogHeader::default();
    let mut faults = Vec::new();
    for (position, field) in fields(written, separator).iter().enumerate() {
        let place = page.place(line, field.columns);
        match known(&field.value) {
            Some(column) if header.places[column as usize].is_some() => {
                faults.push(Fault::new(LogFault::ColumnTwice(column)).at(place));
            }
            Some(column) => header.places[column as usize] = Some(position),
            None => faults.push(Fault::new(unknown(&field.value)).at(place)),
        }
    }
    for column in LogColumn::ALL.into_iter().filter(|c| is_needed(*c)) {
        if header.places[column as usize].is_none() {
            let whole = page.place(line, (1, written.chars().count() + 1));
            faults.push(Fault::new(LogFault::NoColumn(column)).at(whole));
        }
    }
    if faults.is_empty() {
        Ok(header)
    } else {
        Err(Error::bad_input(faults))
    }
}

fn known(written: &str) -> Option<LogColumn> {
    let written = written.to_lowercase().replace(' ', "_");
    LogColumn::ALL
        .into_iter()
        .find(|column| column.name() == written || also(*column).contains(&written.as_str()))
}

fn unknown(written: &str) -> LogFault {
    let slips =
        |column: LogColumn| strsim::damerau_levenshtein(column.name(), &written.to_lowercase());
    let near = LogColumn::ALL
        .into_iter()
        .min_by_key(|column| slips(*column))
        .filter(|column| slips(*column) <= MOST_SLIPS);
    LogFault::UnknownColumn {
        written: written.to_owned(),
        near,
    }
}
