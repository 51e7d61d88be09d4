//! Sets that stand for far more than any day before, or for less than half of it: named, and counted only when a second day shows as much.
//!
//! In: a [`Log`] of one lift. Out: the sessions that count, and every [`Jump`] that was left out of them.

use super::day::Day;
use super::one_rm_now::LAY_OFF_DAYS;
use super::published_equations::PublishedEstimates;
use super::session_best::{SessionBest, session_bests};
use super::training_log::{Log, LogEntry};
use crate::units::Mass;

/// A day's best above every day before by more than this is taken for a slip until a second day comes as near to it
/// (common practice: from session to session loads rise by 2 to 10 %; a day's form moves a maximum by less).
pub const JUMP_SHARE: f64 = 0.10;

/// A day's best below this share of the best of the days before is taken for a slip until a later day lies below it too, unless an
/// earlier day was within [`JUMP_SHARE`] of it, or a lay-off lies between (assumed: a digit that is left out makes a tenth; weeks of illness take far less than half).
pub const FALL_SHARE: f64 = 0.50;

/// A set that stands for more, or for far less, than the days before explain.
#[derive(Debug, Clone, PartialEq)]
pub struct Jump {
    /// The set.
    pub set: LogEntry,
    /// The 1RM that it stands for.
    pub one_rm: Mass,
    /// The best of the days before.
    pub before: Mass,
}

impl Jump {
    fn of(session: &SessionBest, before_kg: f64) -> Self {
        Self {
            set: session.set.clone(),
            one_rm: session.estimate.one_rm,
            before: Mass::from_kg(before_kg),
        }
    }

    /// The day.
    #[must_use]
    pub const fn day(&self) -> Day {
        self.set.day
    }

    /// Whether it stands for less than the days before.
    #[must_use]
    pub fn is_fall(&self) -> bool {
        self.one_rm < self.before
    }

    /// How much more it is than the best before, as a share; negative where it is less.
    #[must_use]
    pub fn excess(&self) -> f64 {
        self.one_rm.as_kg() / self.before.as_kg() - 1.0
    }
}

/// A log of one lift without the sets that do not count, and those, in order.
#[must_use]
pub fn without_jumps(log: &Log, published: &PublishedEstimates) -> (Log, Vec<Jump>) {
    let (_, counted, jumps) = confirmed(log, published);
    (counted, jumps)
}

/// The sessions that count, the log without what does not, and that. A day of which a set is left out counts by its
/// other sets.
pub(super) fn confirmed<'a>(
    log: &Log,
    published: &'a PublishedEstimates,
) -> (Vec<SessionBest<'a>>, Log, Vec<Jump>) {
    let mut log = log.clone();
    let mut jumps = Vec::new();
    loop {
        let sessions = session_bests(&log, published);
        let Some(jump) = first_jump(&sessions).or_else(|| first_fall(&sessions)) else {
            return (sessions, log, jumps);
        };
        // Sets of one line, such as 3x5, go together; a day that shows less than half has no better one.
        let is_fall = jump.is_fall();
        log.entries.retain(|entry| match is_fall {
            true => entry.day != jump.set.day,
            false => entry.line != jump.set.line,
        });
        jumps.push(jump);
    }
}

fn first_jump(sessions: &[SessionBest]) -> Option<Jump> {
    let mut best_kg = sessions.first()?.kg();
    for (index, session) in sessions.iter().enumerate().skip(1) {
        let is_shown_again = || {
            let later = &sessions[index + 1..];
            later
                .iter()
                .any(|later| later.kg() * (1.0 + JUMP_SHARE) >= session.kg())
        };
        if session.kg() > best_kg * (1.0 + JUMP_SHARE) && !is_shown_again() {
            return Some(Jump::of(session, best_kg));
        }
        best_kg = best_kg.max(session.kg());
    }
    None
}

fn first_fall(sessions: &[SessionBest]) -> Option<Jump> {
    let mut best_kg = sessions.first()?.kg();
    for (index, session) in sessions.iter().enumerate().skip(1) {
        let least_kg = FALL_SHARE * best_kg;
        let rested = session.day.days_since(sessions[index - 1].day);
        let is_as_low = |other: &SessionBest| other.kg() < least_kg;
        let is_shown_again = || sessions[index + 1..].iter().any(is_as_low);
        let is_near = |other: &SessionBest| other.kg() <= session.kg() * (1.0 + JUMP_SHARE);
        let was_shown = || sessions[..index].iter().any(is_near);
        if is_as_low(session) && rested <= LAY_OFF_DAYS && !was_shown() && !is_shown_again() {
            return Some(Jump::of(session, best_kg));
        }
        best_kg = best_kg.max(session.kg());
    }
    None
}
