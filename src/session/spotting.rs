//! Who helps with a session: how many, where they stand, what they call.
//!
//! In: what a plan does. Out: [`Spotting`], or none where a spotter does not belong.

use super::method::Method;
use super::session_cautions::Circumstances;
use crate::movement::{Handover, HelperPlace, SpotterPlace, SpotterRule};

/// Who helps, and the words they agree on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spotting {
    /// How many spotters.
    pub spotters: u32,
    /// Where they stand.
    pub stand: SpottersStand,
    /// Which words they agree on.
    pub calls: SpotterCalls,
}

/// Where spotters stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SpottersStand {
    /// A single one.
    Alone(SpotterPlace),
    /// One at each end of the bar.
    AtBarEnds,
    /// Those who bring more than 1RM back.
    Helping(HelperPlace),
}

/// Which words spotters and lifter agree on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SpotterCalls {
    /// For a load that is lifted.
    Lift {
        /// Whether the bar is handed off at the start.
        hand_off: bool,
    },
    /// For more than 1RM that is lowered.
    Lowering,
}

/// Spotters and their words, or `None` where a spotter does not belong (pulls from the floor, machines).
#[must_use]
pub fn spotting(plan: &Circumstances) -> Option<Spotting> {
    if plan.method == Method::OverloadedLowering {
        return match plan.handling.overload {
            Handover::Yes { helpers, stand, .. } => Some(Spotting {
                spotters: helpers,
                stand: SpottersStand::Helping(stand),
                calls: SpotterCalls::Lowering,
            }),
            Handover::BodyOnly { .. } | Handover::No(_) => None,
        };
    }
    match plan.handling.spotter {
        SpotterRule::OneOrTwo {
            place,
            two_from,
            hand_off,
        } if plan.with_bar => {
            let alone = plan.heaviest_share < two_from;
            Some(Spotting {
                spotters: if alone { 1 } else { 2 },
                stand: if alone {
                    SpottersStand::Alone(place)
                } else {
                    SpottersStand::AtBarEnds
                },
                calls: SpotterCalls::Lift { hand_off },
            })
        }
        _ => None,
    }
}
