//! Failed attempts: a load that was not lifted bounds the 1RM from above.
//!
//! In: a [`Log`] of one lift, its sessions. Out: the lightest [`FailedAttempt`] that nothing since answers.

use super::day::Day;
use super::session_best::SessionBest;
use super::training_log::{Log, LogEntry};
use crate::units::Mass;

/// What a 1RM is less than a load that failed, at least, as a share (common practice: attempts rise by steps of 2.5 %, so
/// the one below is the most that may have been there).
const STEP_BELOW: f64 = 0.025;

/// A load that was not lifted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FailedAttempt {
    /// The day.
    pub day: Day,
    /// Line of the file, counted from 1.
    pub line: usize,
    /// The load.
    pub load: Mass,
}

impl FailedAttempt {
    /// The most that the 1RM is taken for.
    #[must_use]
    pub fn most(&self) -> Mass {
        self.load * (1.0 - STEP_BELOW)
    }
}

/// The lightest load that failed since the first of the sessions, and that was neither lifted after that nor is less than
/// what a later day stands for.
pub(super) fn unanswered(log: &Log, since: &[SessionBest]) -> Option<FailedAttempt> {
    let first = since.first()?.day;
    let attempts = log.entries.iter().enumerate();
    let failed = attempts.filter(|(_, entry)| entry.repetitions == 0 && entry.load.as_kg() > 0.0);
    let open = failed.filter(|(index, entry)| {
        entry.day >= first && !is_answered(entry, &log.entries[index + 1..], since)
    });
    let attempts = open.map(|(_, entry)| FailedAttempt {
        day: entry.day,
        line: entry.line,
        load: entry.load,
    });
    attempts.min_by(|a, b| a.load.as_kg().total_cmp(&b.load.as_kg()))
}

fn is_answered(failed: &LogEntry, after: &[LogEntry], since: &[SessionBest]) -> bool {
    let was_lifted = |entry: &LogEntry| entry.repetitions > 0 && entry.load >= failed.load;
    let shows_more =
        |session: &SessionBest| session.day > failed.day && session.estimate.one_rm >= failed.load;
    after.iter().any(was_lifted) || since.iter().any(shows_more)
}
