//! A training log as it is read: the sets of one athlete, and the trend of a lift.
//!
//! In: the name or path of a log, an athlete. Out: a log, a trend.

use super::possible_maximum::check_of_anybody;
use crate::error::{DateOrder, PersonFault, Result, What};
use crate::library::Library;
use crate::progress::log_file::{BadRows, LogReading, read_log};
use crate::progress::training_log::Log;
use crate::progress::trend::{Trend, trend};

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

/// The trend of a log of one lift, read with what the lift's movement says.
pub(super) fn trend_of<'a>(library: &'a Library, log: &Log) -> Result<Trend<'a>> {
    let lift = log.entries.first().map_or("", |entry| &entry.lift);
    let facts = library.lift_facts(lift);
    let found = trend(log, facts, &library.published()?.estimates)?;
    let is_known = library.movements().iter().any(|name| name == lift);
    if is_known {
        check_best(library, lift, &found)?;
    }
    Ok(Trend {
        title: is_known
            .then(|| library.movement(lift).ok())
            .flatten()
            .map(|movement| movement.title),
        ..found
    })
}

/// Refuses a log whose best session nobody shows: a digit or a unit of that line is wrong.
fn check_best(library: &Library, lift: &str, trend: &Trend<'_>) -> Result<()> {
    let best = &trend.sessions[trend.best];
    let jumps = trend.jumps.iter().map(|jump| (jump.set.line, jump.one_rm));
    let shown = jumps.chain([(best.set.line, best.estimate.one_rm)]);
    let (set_line, one_rm) = shown
        .max_by(|a, b| a.1.as_kg().total_cmp(&b.1.as_kg()))
        .unwrap_or((best.set.line, best.estimate.one_rm));
    let checked = check_of_anybody(library, lift, one_rm);
    checked.map_err(|error| {
        error.each(|mut fault| {
            if let What::Person(PersonFault::ImpossibleOneRm { line, .. }) = &mut fault.what {
                *line = Some(set_line);
            }
            fault
        })
    })
}
