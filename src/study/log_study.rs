//! A training log as it is read: the sets of one athlete.
//!
//! In: the name or path of a log, an athlete. Out: a log.

use crate::error::{DateOrder, Error, LogFault, Result};
use crate::library::Library;
use crate::progress::day::Day;
use crate::progress::log_file::{BadRows, LogReading, read_log};
use crate::progress::training_log::Log;

/// Which log, and how it is read.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LogChoice {
    /// Path of a file, or the name of an invented log.
    pub name: String,
    /// Whose sets; without it the log must hold one athlete.
    pub athlete: Option<String>,
    /// What stands first in dates such as 1/8/2024.
    pub dates: Option<DateOrder>,
    /// What becomes of rows that cannot be read.
    pub bad_rows: BadRows,
    /// Today, where it is known: nothing was done long after it.
    pub today: Option<Day>,
}

/// Days by which a log may lie ahead of today (assumed: clocks and time zones differ, and no clock is wrong by a year).
const MOST_AHEAD: i32 = 366;

/// The sets of one athlete in a log.
pub(super) fn log_of(library: &Library, choice: &LogChoice) -> Result<Log> {
    let (file, text) = library.log_text(&choice.name)?;
    let reading = LogReading {
        bad_rows: choice.bad_rows,
        dates: choice.dates,
        names: library.lift_names(),
    };
    let log = read_log(&file, &text, &reading)?.of_athlete(choice.athlete.as_deref())?;
    match choice.today {
        Some(today) => check_done(&log, today).map(|()| log),
        None => Ok(log),
    }
}

/// **Fails** with the first set of the file that lies long after today.
fn check_done(log: &Log, today: Day) -> Result<()> {
    let ahead = log
        .entries
        .iter()
        .filter(|entry| entry.day.days_since(today) > MOST_AHEAD);
    match ahead.min_by_key(|entry| entry.line) {
        None => Ok(()),
        Some(entry) => Err(Error::bad(LogFault::Ahead {
            line: entry.line,
            day: entry.day.to_string(),
            today: today.to_string(),
        })),
    }
}
