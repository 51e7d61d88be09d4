//! How a maximum of a movement is done: how it starts, what happens at the bottom, how it is finished.
//!
//! In: the `protocol` of a file of `models/movements/`. Out: [`Protocol`], which every maximum, repetition
//! and plan of the movement follows unless it is told otherwise.

use crate::source::Source;
use crate::units::Duration;
use serde::{Deserialize, Serialize};

/// How one repetition of a movement is usually done, and with it what its maximum is the maximum of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Protocol {
    /// What a repetition begins with.
    pub start: LiftStart,
    /// What happens between lowering and lifting.
    pub turn: TurnRound,
    /// What the end of the range asks for.
    pub finish: Finish,
    /// Where the three come from.
    pub source: Source,
}

/// What a repetition begins with.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum LiftStart {
    /// The load is taken over at the top and lowered in this time, as from a rack.
    Lowered(Duration),
    /// The load is held at the bottom, as in a hang or on the shoulders.
    Held,
    /// The load lies on the floor, on stops or in its stack; the slack is out before it moves, so the
    /// muscles bear all of it at the first moment as in a hold.
    Resting,
}

/// What happens between lowering and lifting.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum TurnRound {
    /// Down and up in one go.
    TouchAndGo,
    /// The load is held still at the bottom for a time.
    Pause(Duration),
}

/// What the end of the range asks for before a lift counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Finish {
    /// The load comes to rest there and is held.
    Held,
    /// The load need only get there, as when a bar is pulled against a bench.
    Reached,
}

impl Default for Protocol {
    /// Lowered in 2 s, touch and go, held at the end.
    fn default() -> Self {
        Self {
            start: LiftStart::Lowered(Duration::from_s(2.0)),
            turn: TurnRound::TouchAndGo,
            finish: Finish::Held,
            source: Source::CommonPractice("usual".to_owned()),
        }
    }
}
