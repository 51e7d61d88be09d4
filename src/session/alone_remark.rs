//! What there is to say of a session that is planned alone, beside the first of a block.
//!
//! In: nothing. Out: [`Alone`].

use crate::units::Mass;

/// How the two differ.
#[derive(Debug, Clone, PartialEq)]
pub enum Alone {
    /// A session on its own: at the share of the guidance, while a block begins by the repetitions of its rounds.
    Session {
        /// Share of the 1RM that guidance means.
        share: f64,
        /// Repetitions of the rounds of a block.
        rounds: Vec<u32>,
        /// Repetitions in reserve in the first week of a round.
        reserve: u32,
    },
    /// The first day of a block, which is not the session that is planned alone.
    FirstOfBlock {
        /// Load and repetitions of the session alone.
        alone: (Mass, u32),
        /// Load, repetitions and reserve of the first day.
        here: (Mass, u32, u32),
    },
}
