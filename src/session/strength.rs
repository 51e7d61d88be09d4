//! The lift that is planned: whose, how strong, and what shares of 1RM are of.
//!
//! In: a movement, who trains, a 1RM, body mass that is part of the load. Out: [`PlannedLift`]; loads as shares
//! and back.

use super::end_of_log::LastSession;
use super::status::{Level, Trainee};
use crate::movement::Handling;
use crate::progress::day::Day;
use crate::progress::one_rm_now::{LayOff, OneRmNow, TOLD_FROM_DAYS};
use crate::progress::trend_line::TrendLine;
use crate::progress::unconfirmed::Jump;
use crate::progress::verdict::{Sureness, Verdict};
use crate::units::Mass;

/// What shares of 1RM are of: the load alone, or the load and the body that hangs or stands on it.
///
/// ```text
/// share = (load + body) / (1RM + body)
/// ```
/// **Shape.** Rises with the load; 1 at the 1RM. **Source.** A pull-up is planned by what hangs from the
/// hands, body included (common practice); everywhere else `body` is zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strength {
    /// The 1RM, body apart.
    pub one_rm: Mass,
    /// Body mass that is part of the load.
    pub body: Mass,
}

impl Strength {
    /// A load as a share of the 1RM.
    #[must_use]
    pub fn share_of(&self, load: Mass) -> f64 {
        (load + self.body).as_kg() / (self.one_rm + self.body).as_kg()
    }

    /// The load at a share of the 1RM; none at all where the body alone is more.
    #[must_use]
    pub fn load_at(&self, share: f64) -> Mass {
        let whole_kg = share * (self.one_rm + self.body).as_kg();
        Mass::from_kg((whole_kg - self.body.as_kg()).max(0.0))
    }
}

/// Where a 1RM comes from.
#[derive(Debug, Clone, PartialEq, Default)]
pub enum OneRmSource {
    /// It was told.
    #[default]
    Given,
    /// The recent trend of a training log.
    Log {
        /// What the trend is.
        verdict: Verdict,
        /// How sure that is.
        sureness: Sureness,
        /// The line through the recent sessions.
        line: Box<TrendLine>,
        /// What it is taken from.
        now: OneRmNow,
        /// The last day with a set of the lift.
        last: Day,
        /// The day of the first session, where it is told; without it the log is taken to end shortly before.
        begins: Option<Day>,
        /// The lay-off before the stretch, if there was one.
        lay_off: Option<LayOff>,
        /// Sets that do not count: far more than the days before explain.
        jumps: Vec<Jump>,
        /// The lay-off between the log and the first session of the plan.
        since: Option<LayOff>,
        /// The sets of the last day at its heaviest load; none where one of them failed.
        goes_on_from: Option<LastSession>,
    },
    /// By the equations from a set that was told.
    OfSet {
        /// What was lifted.
        load: Mass,
        /// How often.
        repetitions: u32,
    },
    /// Simulated for a lifter.
    Simulated {
        /// What the lifter is called.
        lifter: String,
        /// Whether the lifter's file was fitted to measurements of this very lift.
        measured: bool,
        /// How far off it may be, where the file says how well the lifter is known: of a lift that nobody measured, and of a
        /// measured one where more than the 1RM is planned.
        range: Option<SimulatedRange>,
    },
}

/// How far off a simulated 1RM may be, by versions of the lifter that are as plausible.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SimulatedRange {
    /// The 1RM of the lifter as the file stands.
    pub simulated: Mass,
    /// Lower end of the interval that holds four in five.
    pub low: Mass,
    /// Upper end.
    pub high: Mass,
}

impl SimulatedRange {
    /// The 1RM that is planned from until the lift is tested: the lower end, and never more than what is simulated.
    #[must_use]
    pub fn careful(&self) -> Mass {
        Mass::from_kg(self.low.as_kg().min(self.simulated.as_kg()))
    }
}

/// A 1RM that hardly anybody of that kind has.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UnlikelyOneRm {
    /// The 1RM over what people of that sex, size and training show.
    pub over_expected: f64,
    /// The same in standard deviations.
    pub deviations: f64,
    /// What it would be if pounds were taken for kilograms, body apart, where that fits such people much better.
    pub in_pounds: Option<Mass>,
}

/// The lift that is planned.
#[derive(Debug, Clone, PartialEq)]
pub struct PlannedLift {
    /// Name of the movement.
    pub movement: String,
    /// Its title.
    pub title: String,
    /// How the movement is handled.
    pub handling: Handling,
    /// Whether one joint moves, as in curls, extensions and raises.
    pub one_joint: bool,
    /// Whether hips, knees or ankles lift.
    pub lower_body: bool,
    /// Whether the bar starts on the floor, at the height that its plates give it.
    pub from_floor: bool,
    /// Who trains.
    pub trainee: Trainee,
    /// The 1RM, body apart.
    pub one_rm: Mass,
    /// Body mass that is part of the load: all of it where the body hangs or stands on the load, else none.
    pub body: Mass,
    /// Where the 1RM comes from.
    pub one_rm_from: OneRmSource,
    /// How far the 1RM is from what people show, where that is far.
    pub unlikely: Option<UnlikelyOneRm>,
}

impl PlannedLift {
    /// What shares of 1RM are of.
    #[must_use]
    pub const fn strength(&self) -> Strength {
        Strength {
            one_rm: self.one_rm,
            body: self.body,
        }
    }

    /// Whether somebody saw this lift lifted: a 1RM that is told, of a log, or of a lifter measured in the lift.
    #[must_use]
    pub const fn is_tested(&self) -> bool {
        !matches!(
            self.one_rm_from,
            OneRmSource::Simulated {
                measured: false,
                ..
            }
        )
    }

    /// The lay-off between the log that the 1RM is of and the plan: nobody saw what is left of that strength.
    #[must_use]
    pub const fn old_log(&self) -> Option<LayOff> {
        match &self.one_rm_from {
            OneRmSource::Log { since, .. } => *since,
            _ => None,
        }
    }

    /// The last day of the log that the 1RM is of, where no day of the plan tells how old that is.
    #[must_use]
    pub const fn undated_log(&self) -> Option<Day> {
        match &self.one_rm_from {
            OneRmSource::Log {
                last, begins: None, ..
            } => Some(*last),
            _ => None,
        }
    }

    /// Days without a session before the plan, where they are many and no lay-off.
    #[must_use]
    pub fn days_off(&self) -> Option<i32> {
        match &self.one_rm_from {
            OneRmSource::Log {
                last,
                begins: Some(begins),
                since: None,
                ..
            } => Some(begins.days_since(*last)).filter(|days| *days >= TOLD_FROM_DAYS),
            _ => None,
        }
    }

    /// How far off the 1RM may be, where it is a simulated one that nobody tested.
    #[must_use]
    pub const fn untested(&self) -> Option<&SimulatedRange> {
        if self.is_tested() { None } else { self.range() }
    }

    /// How far off a simulated 1RM may be, where that is known.
    #[must_use]
    pub const fn range(&self) -> Option<&SimulatedRange> {
        match &self.one_rm_from {
            OneRmSource::Simulated { range, .. } => range.as_ref(),
            _ => None,
        }
    }

    /// What a novice goes on from: the last session of the log, but for who comes back from a break.
    #[must_use]
    pub const fn last_session(&self) -> Option<LastSession> {
        match &self.one_rm_from {
            OneRmSource::Log { goes_on_from, .. } if self.trainee.back_from_break.is_none() => {
                *goes_on_from
            }
            _ => None,
        }
    }

    /// Training status.
    #[must_use]
    pub fn level(&self) -> Level {
        self.trainee.level()
    }
}
