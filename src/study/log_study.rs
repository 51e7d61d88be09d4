//! A training log studied: the sets of one athlete and lift, their trend, their load-velocity profile.
//!
//! In: the name or path of a log, an athlete, a lift. Out: [`LogStudy`].

use super::possible_maximum::check_of_anybody;
use crate::error::{DateOrder, Result};
use crate::library::Library;
use crate::progress::log_file::{BadRows, LogReading, read_log};
use crate::progress::log_profile::{NoProfile, VelocityProfile, velocity_profile};
use crate::progress::training_log::Log;
use crate::progress::trend::{Trend, trend};
use crate::units::Mass;

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

/// A training log of one lift and its trend.
#[derive(Debug, Clone, PartialEq)]
pub struct LogStudy<'a> {
    /// The sets of the lift, with what is odd about the log.
    pub log: Log,
    /// Their trend.
    pub trend: Trend<'a>,
    /// Their load-velocity profile, or why there is none; nothing where no velocity is noted.
    pub profile: Option<std::result::Result<VelocityProfile<'a>, NoProfile>>,
}

/// Studies a log by path, or an invented one by name; the only lift of it, if none is named.
///
/// **Fails** with every bad row, unless they are to be left out; where athlete or lift are not clear; with too few
/// sessions for a trend; and where it ends at a 1RM that nobody has.
pub fn log_study<'a>(
    library: &'a Library,
    choice: &LogChoice,
    lift: Option<&str>,
) -> Result<LogStudy<'a>> {
    let lift = lift.map(|lift| library.lift_names().named(lift));
    let log = log_of(library, choice)?.of_lift(lift.as_deref())?;
    let trend = trend_of(library, &log)?;
    check_possible(library, &log, trend.one_rm_now())?;
    let profile = velocity_profile(&log, &library.published()?.estimates.velocity);
    Ok(LogStudy {
        log,
        trend,
        profile,
    })
}

/// Refuses the 1RM that a log ends at where nobody has it; of a lift that no movement stands for nothing is known.
fn check_possible(library: &Library, log: &Log, one_rm: Mass) -> Result<()> {
    let lift = log.entries.first().map_or("", |entry| &entry.lift);
    match library.movements().iter().any(|movement| movement == lift) {
        true => check_of_anybody(library, lift, one_rm),
        false => Ok(()),
    }
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
    Ok(Trend {
        title: is_known
            .then(|| library.movement(lift).ok())
            .flatten()
            .map(|movement| movement.title),
        ..found
    })
}
