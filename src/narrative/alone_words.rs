//! In words, how a session that is planned alone and the first of a block differ.
//!
//! In: [`Alone`], units. Out: sentences.

use super::prose::{counted_noun, either, percent};
use super::quantities::QuantityWords;
use crate::session::alone_remark::Alone;
use crate::units::System;

/// How the two differ, and why.
#[must_use]
pub(super) fn alone_or_in_a_block(alone: &Alone, units: System) -> String {
    match alone {
        Alone::Session {
            share,
            rounds,
            reserve,
        } => format!(
            "This session stands alone, at what guidance means for such training ({} of 1RM). A block (--weeks) goes by rounds of \
             {} repetitions instead, each of which begins with {reserve} in reserve: its first session may be another.",
            percent(*share),
            either(&rounds.iter().map(u32::to_string).collect::<Vec<_>>())
        ),
        Alone::FirstOfBlock { alone, here } => format!(
            "Planned alone, today's session would be {} × {}, by guidance for such training. A block goes by rounds: this one begins \
             with {} and {} in reserve, so {} × {}.",
            units.mass(alone.0),
            alone.1,
            counted_noun(here.1, "repetition"),
            here.2,
            units.mass(here.0),
            here.1
        ),
    }
}
