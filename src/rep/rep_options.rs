//! How a repetition is done: where it starts and ends, tempo, turn-round, what follows.
//!
//! In: the lifter's choices. Out: [`RepOptions`], checked.

use crate::bounds::bounds;
use crate::error::{Error, RepetitionFault, Result, TimedPart};
use crate::movement::{Finish, LiftStart, Movement, TurnRound};
use crate::units::Duration;

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
    /// What the end of the lift asks for.
    pub finish: Finish,
    /// Whether lowering leaves extra force behind.
    pub enhancement: bool,
    /// Step of the integration.
    pub step: Duration,
}

impl Default for RepOptions {
    /// The whole range, lowered in 2 s (common practice), touch and go, held at the end, steps of 5 ms.
    fn default() -> Self {
        Self {
            from: 0.0,
            to: 1.0,
            lowering: Some(Duration::from_s(2.0)),
            turn: TurnRound::TouchAndGo,
            after: After::Drive,
            finish: Finish::Held,
            enhancement: true,
            step: Duration::from_ms(5.0),
        }
    }
}

impl RepOptions {
    /// How a maximum of this movement is done, as its file says.
    #[must_use]
    pub fn usual_for(movement: &Movement) -> Self {
        let protocol = &movement.protocol;
        Self {
            lowering: match protocol.start {
                LiftStart::Lowered(time) => Some(time),
                LiftStart::Held | LiftStart::Resting => None,
            },
            turn: protocol.turn,
            finish: protocol.finish,
            ..Self::default()
        }
    }
}

impl RepOptions {
    /// Checks every choice.
    ///
    /// **Fails** naming the value and what is accepted.
    pub fn check(&self) -> Result<()> {
        let bounds = bounds();
        let inside = |value: f64| (0.0..=1.0).contains(&value);
        let part = self.to - self.from;
        if !(inside(self.from) && inside(self.to) && bounds.range_part.holds(part)) {
            return Err(Error::bad(RepetitionFault::Part {
                from: self.from,
                to: self.to,
                shortest: bounds.range_part.least(),
            }));
        }
        let pause = match self.turn {
            TurnRound::Pause(time) => time,
            TurnRound::TouchAndGo => Duration::ZERO,
        };
        let lowering = self.lowering.unwrap_or_default();
        let longest = Duration::from_s(bounds.phase_time.most());
        for (part, time) in [(TimedPart::Lowering, lowering), (TimedPart::Pause, pause)] {
            if !bounds.phase_time.holds(time.as_s()) {
                return Err(Error::bad(RepetitionFault::Time {
                    part,
                    time,
                    longest,
                }));
            }
        }
        let bound = &bounds.time_step;
        if !bound.holds(self.step.as_ms()) {
            return Err(Error::bad(RepetitionFault::Step {
                step: self.step,
                least: Duration::from_ms(bound.least()),
                most: Duration::from_ms(bound.most()),
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
