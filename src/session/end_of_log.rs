//! The end of a log that a novice goes on from.
//!
//! In: nothing. Out: [`LastSession`].

use crate::progress::day::Day;
use crate::units::Mass;

/// Repetitions of the set of a day with the fewest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DayReached {
    /// How many sets there were.
    pub sets: u32,
    /// The hardest of them as it was written down: repetitions, and those that were left, where that was noted.
    pub hardest: (u32, Option<f64>),
    /// Repetitions that every set had.
    pub lifted: u32,
    /// With those that were left: what every set would have reached to failure.
    pub to_failure: u32,
}

impl DayReached {
    /// Repetitions that every set had with so many in reserve.
    #[must_use]
    pub fn kept(&self, reserve: u32) -> u32 {
        self.to_failure.saturating_sub(reserve).min(self.lifted)
    }
}

/// The sets of a log's last day at the heaviest load of that day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LastSession {
    /// Its day.
    pub day: Day,
    /// The load, body apart.
    pub load: Mass,
    /// What every set reached.
    pub reached: DayReached,
    /// The same of the day before, where that was of this load or more; none where it was not.
    pub before: Option<DayReached>,
}

impl LastSession {
    /// Repetitions that every set reached with so many in reserve.
    #[must_use]
    pub fn kept(&self, reserve: u32) -> u32 {
        self.reached.kept(reserve)
    }

    /// Whether the day before reached so many too.
    #[must_use]
    pub fn is_second(&self, count: u32, reserve: u32) -> bool {
        self.before
            .is_some_and(|before| before.kept(reserve) >= count)
    }
}
