//! Reads a training log from the text of any spreadsheet, every bad row named by line with what is wrong.
//!
//! In: the text of the file and its name, how it is to be read. Out: a [`Log`]; or all bad rows at once, each with
//! its place; or, on request, the log without them. Fields are parted by comma, semicolon or tab; columns may stand in
//! any order, others beside them; lines that begin with `#` are remarks.

use super::lift_names::LiftNames;
use super::log_dates::date_order;
use super::log_header::{LogHeader, header, is_header};
use super::log_note::LogNote;
use super::log_row::{BadField, RowReader, is_bare_number};
use super::log_table::LogTable;
use super::training_log::{Log, LogEntry, SkippedRow};
use crate::error::{DateOrder, Error, Fault, LogColumn, LogFault, Result};
use crate::movement::lift_name;
use std::collections::BTreeSet;

/// What becomes of rows that cannot be read.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum BadRows {
    /// The file is refused with all of them.
    #[default]
    Refused,
    /// They are left out and listed in [`Log::skipped`].
    LeftOut,
}

/// How a log is read.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LogReading {
    /// What becomes of rows that cannot be read.
    pub bad_rows: BadRows,
    /// What stands first in dates such as 1/8/2024; without it the dates themselves must prove it.
    pub dates: Option<DateOrder>,
    /// What lifts are called.
    pub names: LiftNames,
}

/// More bad rows, or faults of them, than these are counted, not shown one by one.
const MOST_ROWS: usize = 25;

/// Faults of bad rows that are told after a summary.
const MOST_AFTER_SUMMARY: usize = 11;

/// Up to so many bad rows are told without a summary before them.
const FEW_ROWS: usize = 5;

/// The header stands in one of the first rows that hold anything; above it, spreadsheets have titles.
const HEADER_WITHIN: usize = 10;

/// Reads a log.
///
/// **Fails** with every bad row at once (the first 25 in full), each with line and column; with the header alone when
/// that is wrong; with what holds for the whole file (numbers without a unit, dates of two meanings, a quote that
/// stays open); and when no row is left.
pub fn read_log(file: &str, text: &str, reading: &LogReading) -> Result<Log> {
    let table = LogTable::of(file, text);
    table.check()?;
    let (mut header, header_line) = found_header(&table)?;
    let seen = first_look(&table, &mut header, (header_line, reading.bad_rows))?;
    let (order, proof) = date_order(&table, &header, header_line, reading.dates)?;
    let mut notes = Vec::new();
    notes.extend(seen.unitless.map(LogNote::SpeedWithoutUnit));
    if !header.ignored.is_empty() {
        notes.push(LogNote::ColumnsIgnored(header.ignored.clone()));
    }
    notes.extend(proof);
    if header.head(LogColumn::Exertion).is_some() && header.head(LogColumn::Reserve).is_none() {
        notes.push(LogNote::ReserveByExertion);
    }
    let reader = RowReader {
        header,
        names: &reading.names,
        order,
        has_athletes: seen.has_athletes,
    };
    let rows = ReadRows::of(&table, &reader, header_line);
    rows.checked(&table, reading.bad_rows)?;
    notes.extend(rows.aliases(&reading.names));
    if rows.not_done > 0 {
        notes.push(LogNote::NotDoneYet(rows.not_done));
    }
    if rows.has_several_sets {
        notes.push(LogNote::SetsByRepetitions);
    }
    Ok(Log {
        skipped_more: rows.bad.saturating_sub(rows.skipped.len()),
        notes,
        ..Log::from_rows(rows.good, rows.skipped)
    })
}

/// The header, and the line it stands in.
///
/// **Fails** on a file without rows, and as [`header`] does on the first row where none looks like one.
fn found_header(table: &LogTable) -> Result<(LogHeader, usize)> {
    let (mut first, mut found) = (None, None);
    let mut looked_at = 0;
    table.rows(|row| {
        looked_at += 1;
        if first.is_none() {
            first = Some((header(table, row), row.line));
        }
        if is_header(row) {
            found = Some((header(table, row), row.line));
        }
        found.is_none() && looked_at < HEADER_WITHIN
    });
    match found.or(first) {
        Some((header, line)) => Ok((header?, line)),
        None => Err(Error::bad(LogFault::Empty {
            file: table.file().to_owned(),
        })),
    }
}

/// What must be known of the whole file before its rows are read.
struct FirstLook {
    /// Whether any row names who lifted.
    has_athletes: bool,
    /// Heading of a column of velocities that is not read, because nothing tells its unit.
    unitless: Option<String>,
}

/// Looks at all rows for what would else be told of every row.
///
/// A velocity is no need: where bad rows are left out, so is a column of them without a unit.
///
/// **Fails** on numbers whose unit is told nowhere, and on a quote that stays open to the end.
fn first_look(
    table: &LogTable,
    header: &mut LogHeader,
    (header_line, bad_rows): (usize, BadRows),
) -> Result<FirstLook> {
    let mut has_athletes = false;
    let mut last = None;
    let mut bare: [Option<(usize, String)>; 2] = [None, None];
    let columns = [LogColumn::Load, LogColumn::Velocity];
    table.below(header_line, |row| {
        has_athletes |= header.field(LogColumn::Athlete, row).is_some();
        last = Some((row.start, row.line));
        // A row that is too wide is told as one: its fields stand in the wrong columns.
        let has_unit = row.width() > header.width || header.field(LogColumn::Unit, row).is_some();
        for (column, first) in columns.into_iter().zip(&mut bare) {
            let told = has_unit && (column == LogColumn::Load || row.width() > header.width);
            let number = header
                .field(column, row)
                .filter(|text| is_bare_number(text));
            if let (None, false, Some(number)) = (&first, told, number) {
                *first = Some((row.start, number.to_owned()));
            }
        }
        true
    });
    if let Some((start, line)) = last.filter(|(start, _)| table.has_open_quote(*start)) {
        let fault = Fault::new(LogFault::OpenQuote { line });
        return Err(fault.at(table.place(start, None)).into());
    }
    let mut unitless = None;
    let speed = header.head(LogColumn::Velocity);
    if let (BadRows::LeftOut, Some(head), Some(_)) = (bad_rows, speed, &bare[1])
        && head.unit.is_none()
    {
        unitless = Some(head.heading.clone());
        header.forget(LogColumn::Velocity);
    }
    let without = columns.into_iter().zip(bare).filter_map(|(column, first)| {
        let head = header.head(column).filter(|head| head.unit.is_none())?;
        let (start, written) = first?;
        let fault = Fault::new(LogFault::NoUnit {
            column,
            heading: head.heading.clone(),
            written,
        });
        Some(fault.at(table.place(start, Some(head.position))))
    });
    let faults: Vec<Fault> = without.collect();
    if faults.is_empty() {
        Ok(FirstLook {
            has_athletes,
            unitless,
        })
    } else {
        Err(Error::bad_input(faults))
    }
}

/// The rows of a log, good and bad.
#[derive(Default)]
struct ReadRows {
    good: Vec<LogEntry>,
    /// The first bad rows: where each begins, its line, what is wrong.
    shown: Vec<(usize, usize, Vec<BadField>)>,
    /// The same as facts of the log.
    skipped: Vec<SkippedRow>,
    /// How many rows are bad.
    bad: usize,
    /// Rows of a sheet to fill in where nothing is filled in yet.
    not_done: usize,
    /// Lifts as written.
    written: BTreeSet<String>,
    /// Whether a row stands for several sets.
    has_several_sets: bool,
}

impl ReadRows {
    fn of(table: &LogTable, reader: &RowReader<'_>, header_line: usize) -> Self {
        let mut rows = Self::default();
        table.below(header_line, |row| {
            if reader.is_not_done(row) {
                rows.not_done += 1;
                return true;
            }
            match reader.sets(row) {
                Ok(sets) => {
                    let lift = reader.header.field(LogColumn::Lift, row).unwrap_or("");
                    if !rows.written.contains(lift) {
                        rows.written.insert(lift.to_owned());
                    }
                    rows.has_several_sets |= sets.len() > 1 && reader.tells_sets(row);
                    rows.good.extend(sets);
                }
                Err(faults) => {
                    rows.bad += 1;
                    if rows.shown.len() < MOST_ROWS {
                        rows.skipped.push(SkippedRow {
                            line: row.line,
                            faults: faults.iter().map(|bad| bad.fault.clone()).collect(),
                        });
                        rows.shown.push((row.start, row.line, faults));
                    }
                }
            }
            true
        });
        rows
    }

    /// Nothing, where there are good rows and bad ones are none or may be left out.
    fn checked(&self, table: &LogTable, bad_rows: BadRows) -> Result<()> {
        if self.bad > 0 && (self.good.is_empty() || bad_rows == BadRows::Refused) {
            return Err(self.all_of(table));
        }
        if self.good.is_empty() && self.not_done > 0 {
            return Err(Error::bad(LogFault::NothingDone {
                file: table.file().to_owned(),
                rows: self.not_done,
            }));
        }
        if self.good.is_empty() {
            return Err(Error::bad(LogFault::NoRows {
                file: table.file().to_owned(),
            }));
        }
        Ok(())
    }

    fn all_of(&self, table: &LogTable) -> Error {
        let mut faults = Vec::new();
        if self.bad > FEW_ROWS {
            faults.push(Fault::new(LogFault::BadRows {
                file: table.file().to_owned(),
                count: self.bad,
            }));
        }
        let mut told = 0;
        let most = match self.bad {
            0..=FEW_ROWS => MOST_ROWS,
            _ => MOST_AFTER_SUMMARY,
        };
        for (start, line, row) in &self.shown {
            if faults.len() + row.len() > most && told > 0 {
                break;
            }
            told += 1;
            let more = self.bad - told;
            for (index, BadField { fault, field }) in row.iter().enumerate() {
                let fault = Fault::new(LogFault::Row {
                    line: *line,
                    fault: fault.clone(),
                    is_last: more == 0 && index + 1 == row.len(),
                });
                faults.push(fault.at(table.place(*start, *field)));
            }
        }
        if self.bad > told {
            faults.push(Fault::new(LogFault::MoreRows(self.bad - told)));
        }
        Error::bad_input(faults)
    }

    /// Which written names stand for which lifts, where a table of names was needed to tell.
    fn aliases(&self, names: &LiftNames) -> Option<LogNote> {
        let renamed = self.written.iter().filter_map(|written| {
            let lift = names.named(written);
            let plain = lift_name(written);
            (lift != plain).then(|| (written.clone(), lift))
        });
        let renamed: Vec<(String, String)> = renamed.collect();
        (!renamed.is_empty()).then_some(LogNote::LiftsRenamed(renamed))
    }
}
