//! A training log as it is read: the sets of one athlete.
//!
//! In: the name or path of a log, an athlete. Out: a log.

use crate::error::{DateOrder, Result};
use crate::library::Library;
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
}

/// The sets of one athlete in a log.
pub(super) fn log_of(library: &Library, choice: &LogChoice) -> Result<Log> {
    let (file, text) = library.log_text(&choice.name)?;
    let reading = LogReading {
        bad_rows: choice.bad_rows,
        dates: choice.dates,
        names: library.lift_names(),
    };
    read_log(&file, &text, &reading)?.of_athlete(choice.athlete.as_deref())
}
