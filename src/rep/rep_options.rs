//! How a repetition is done: where it starts and ends, tempo, turn-round, what follows.
//!
//! In: the lifter's choices. Out: [`RepOptions`], checked.

use crate::error::{Error, RepetitionFault, Result, TimedPart};
use crate::movement::{Begins, Movement};
use crate::units::Duration;

/// What happens between lowering and lifting.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TurnRound {
    /// Down and up in one go.
    TouchAndGo,
    /// The load is held still at the bottom for a time.
    Pause(Duration),
}

/// What follows the lowering.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum After {
    /// The lifter lifts with everything.
    #[default]
    Drive,
    /// Spotters take the load at the bottom.
    HandOver,
}

/// How a repetition is done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RepOptions {
    /// Place in the range where the lift starts, 0 = bottom of the movement.
    pub from: f64,
    /// Place where it ends, 1 = lockout.
    pub to: f64,
    /// Time of the lowering; `None` or 0 s: the lift starts from a hold at the bottom.
    pub lowering: Option<Duration>,
    /// What happens at the bottom.
    pub turn: TurnRound,
    /// What follows the lowering.
    pub after: After,
    /// Whether lowering leaves extra force behind.
    pub enhancement: bool,
    /// Step of the integration.
    pub step: Duration,
}

impl Default for RepOptions {
    /// The whole range, lowered in 2 s (common practice), touch and go, steps of 5 ms.
    fn default() -> Self {
        Self {
            from: 0.0,
            to: 1.0,
            lowering: Some(Duration::from_s(2.0)),
            turn: TurnRound::TouchAndGo,
            after: After::Drive,
            enhancement: true,
            step: Duration::from_ms(5.0),
        }
    }
}

impl RepOptions {
    /// How a repetition of this movement is usually done: lifts that begin at the floor or in a hang
    /// have no lowering before them (common practice).
    #[must_use]
    pub fn usual_for(movement: &Movement) -> Self {
        let usual = Self::default();
        match movement.begins {
            Begins::Lowering => usual,
            Begins::Lifting => Self {
                lowering: None,
                ..usual
            },
        }
    }
}

/// The shortest part of a range that a repetition may cover.
const SHORTEST_PART: f64 = 0.05;
/// The longest lowering and the longest pause, s: nobody holds a heavy load longer.
const LONGEST_S: f64 = 600.0;
/// The shortest and the longest step of the integration, ms.
const STEPS_MS: (f64, f64) = (0.01, 20.0);

impl RepOptions {
    /// Checks every choice.
    ///
    /// **Fails** naming the value and what is accepted.
    pub fn check(&self) -> Result<()> {
        let inside = |value: f64| (0.0..=1.0).contains(&value);
        if !(inside(self.from) && inside(self.to) && self.to - self.from >= SHORTEST_PART) {
            return Err(Error::bad(RepetitionFault::Part {
                from: self.from,
                to: self.to,
                shortest: SHORTEST_PART,
            }));
        }
        let pause = match self.turn {
            TurnRound::Pause(time) => time,
            TurnRound::TouchAndGo => Duration::ZERO,
        };
        let lowering = self.lowering.unwrap_or_default();
        let longest = Duration::from_s(LONGEST_S);
        for (part, time) in [(TimedPart::Lowering, lowering), (TimedPart::Pause, pause)] {
            if !(0.0..=LONGEST_S).contains(&time.as_s()) {
                return Err(Error::bad(RepetitionFault::Time {
                    part,
                    time,
                    longest,
                }));
            }
        }
        let (shortest_ms, longest_ms) = STEPS_MS;
        if !(shortest_ms..=longest_ms).contains(&self.step.as_ms()) {
            return Err(Error::bad(RepetitionFault::Step {
                step: self.step,
                least: Duration::from_ms(shortest_ms),
                most: Duration::from_ms(longest_ms),
            }));
        }
        Ok(())
    }

    /// Time of the lowering, s, if there is one.
    #[must_use]
    pub fn lowering_s(&self) -> Option<f64> {
        self.lowering
            .map(Duration::as_s)
            .filter(|time| *time != 0.0)
    }
}
