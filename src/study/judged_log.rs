//! A training log studied: the sets of one athlete and lift, their trend, their load-velocity profile; refused where it
//! ends at what nobody lifts.
//!
//! In: the name or path of a log, an athlete, a lift. Out: [`LogStudy`].

use super::log_study::{LogChoice, log_of};
use super::log_trend::trend_of;
use super::possible_maximum::check_of_anybody;
use super::possible_rows::without_impossible;
use crate::error::Result;
use crate::library::Library;
use crate::progress::log_profile::{NoProfile, VelocityProfile, velocity_profile};
use crate::progress::training_log::Log;
use crate::progress::trend::Trend;
use crate::units::Mass;

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
    let judge = |log: &Log| trend_of(library, log);
    let (log, trend) = without_impossible(log, choice.bad_rows, judge)?;
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
