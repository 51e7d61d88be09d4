//! The best set of every day of a log, with the 1RM that it stands for.
//!
//! In: a [`Log`] of one lift. Out: a [`SessionBest`] a day, days without a usable set left out.

use super::day::Day;
use super::estimate::{Estimate, estimate};
use super::published_equations::PublishedEstimates;
use super::training_log::{Log, LogEntry};
use super::velocity_equations::one_rm_from_velocity;
use crate::units::Mass;

/// The best set of one day.
#[derive(Debug, Clone, PartialEq)]
pub struct SessionBest<'a> {
    /// The day.
    pub day: Day,
    /// Weeks since the first day of the log.
    pub week: f64,
    /// The set it is taken from.
    pub set: LogEntry,
    /// Its estimate, with every equation.
    pub estimate: Estimate<'a>,
    /// The 1RM that the noted velocity stands for, where an equation was published.
    pub by_velocity: Option<Mass>,
}

impl SessionBest<'_> {
    /// Its estimate, kg.
    #[must_use]
    pub fn kg(&self) -> f64 {
        self.estimate.one_rm.as_kg()
    }
}

/// The best sets by day, in order of time; a day with sets beyond the range of the equations counts only by
/// its other sets, if it has any.
#[must_use]
pub(super) fn session_bests<'a>(
    log: &Log,
    published: &'a PublishedEstimates,
) -> Vec<SessionBest<'a>> {
    let days = log.by_day();
    let Some(first) = days.first().map(|(day, _)| *day) else {
        return Vec::new();
    };
    days.into_iter()
        .filter_map(|(day, sets)| session_best(published, first, day, sets))
        .collect()
}

fn session_best<'a>(
    published: &'a PublishedEstimates,
    first: Day,
    day: Day,
    sets: &[LogEntry],
) -> Option<SessionBest<'a>> {
    let estimated = sets.iter().filter_map(|set| {
        let of_set = estimate(
            &published.repetitions,
            Some(&set.lift),
            set.load,
            set.repetitions,
            set.reserve.unwrap_or(0.0),
        )?;
        Some((set, of_set))
    });
    // A set inside the range of the equations beats any set beyond it.
    let (set, estimate) = estimated.max_by(|(_, a), (_, b)| {
        let by_range = b.beyond_range.cmp(&a.beyond_range);
        by_range.then(a.one_rm.as_kg().total_cmp(&b.one_rm.as_kg()))
    })?;
    let by_velocity = set
        .velocity
        .and_then(|v| one_rm_from_velocity(&published.velocity, &set.lift, set.load, v));
    Some(SessionBest {
        day,
        week: day.weeks_since(first),
        set: set.clone(),
        estimate,
        by_velocity,
    })
}
