//! The end of a log that a novice goes on from.
//!
//! In: nothing. Out: [`LastSession`].

use crate::progress::day::Day;
use crate::units::Mass;

/// The sets of a log's last day at the heaviest load of that day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LastSession {
    /// Its day.
    pub day: Day,
    /// The load, body apart.
    pub load: Mass,
    /// Repetitions of the set with the fewest, counting those that were left: what every set would have reached to failure.
    pub to_failure: u32,
    /// The same of the day before, where that was of this load or more; none where it was not.
    pub before: Option<u32>,
}

impl LastSession {
    /// Repetitions that every set reached with so many in reserve.
    #[must_use]
    pub const fn kept(&self, reserve: u32) -> u32 {
        self.to_failure.saturating_sub(reserve)
    }

    /// Whether the day before reached so many too.
    #[must_use]
    pub fn is_second(&self, count: u32, reserve: u32) -> bool {
        self.before.is_some_and(|before| before >= count + reserve)
    }
}
