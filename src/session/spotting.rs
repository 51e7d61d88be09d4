//! Who helps with a session: how many, where they stand, what they call.
//!
//! In: what a plan does. Out: [`Spotting`], or none where a spotter does not belong.

use super::method::Method;
use super::session_cautions::Circumstances;
use crate::movement::{Handling, Handover, HelperPlace, SpotterPlace, SpotterRule};
use crate::units::Mass;

/// Who helps, and the words they agree on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spotting {
    /// How many spotters.
    pub spotters: u32,
    /// Where they stand.
    pub stand: SpottersStand,
    /// Which words they agree on.
    pub calls: SpotterCalls,
    /// The most that one helper is taken to hold, where the load is more and by its share of the 1RM one would do.
    pub too_heavy_for_one: Option<Mass>,
}

/// Most that one spotter is taken to bring back alone, kg, whatever its share of the lifter's 1RM (assumed: about what a man
/// who hardly trains lifts from the floor; a spotter has no better grip of it).
pub const ONE_SPOTTER_KG: f64 = 100.0;

/// Most that each of several helpers is taken to hold of a load that is lost, kg (assumed: less than two thirds of what one
/// brings back who lifts together with the lifter; bent, at the end of a bar, without warning).
pub const HELD_BY_EACH_KG: f64 = 60.0;

/// A rounding error is no excess.
const ROUNDING: f64 = 1.0e-9;

/// Helpers who take plates off a bar on safety arms, one at each end so that it stays even.
const AT_BOTH_ENDS: u32 = 2;

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
    /// For more than 1RM that is lowered to safety arms, where it stays until plates are off.
    LoweringToArms,
}

/// Spotters and their words, or `None` where a spotter does not belong (pulls from the floor, machines).
#[must_use]
pub fn spotting(plan: &Circumstances) -> Option<Spotting> {
    if plan.method == Method::OverloadedLowering && plan.off_arms {
        return Some(Spotting {
            spotters: AT_BOTH_ENDS,
            stand: SpottersStand::AtBarEnds,
            calls: SpotterCalls::LoweringToArms,
            too_heavy_for_one: None,
        });
    }
    if plan.method == Method::OverloadedLowering {
        return match plan.handling.overload {
            Handover::Yes { helpers, stand, .. } => Some(Spotting {
                spotters: helpers,
                stand: SpottersStand::Helping(stand),
                calls: SpotterCalls::Lowering,
                too_heavy_for_one: None,
            }),
            Handover::BodyOnly { .. } | Handover::No(_) => None,
        };
    }
    if let (true, Handover::Yes { helpers, stand, .. }, SpotterRule::OneOrTwo { hand_off, .. }) = (
        plan.with_bar && plan.heaviest_share > 1.0 + ROUNDING,
        plan.handling.overload,
        plan.handling.spotter,
    ) {
        // What may lie on the lifter and cannot be lifted takes as many as its lowering does.
        return Some(Spotting {
            spotters: helpers,
            stand: SpottersStand::Helping(stand),
            calls: SpotterCalls::Lift { hand_off },
            too_heavy_for_one: None,
        });
    }
    match plan.handling.spotter {
        SpotterRule::OneOrTwo {
            place,
            two_from,
            hand_off,
        } if plan.with_bar => {
            let one_would_do = plan.heaviest_share < two_from;
            let most = Mass::from_kg(ONE_SPOTTER_KG);
            let alone = one_would_do && plan.heaviest <= most;
            Some(Spotting {
                spotters: if alone { 1 } else { 2 },
                stand: if alone {
                    SpottersStand::Alone(place)
                } else {
                    SpottersStand::AtBarEnds
                },
                calls: SpotterCalls::Lift { hand_off },
                too_heavy_for_one: (one_would_do && !alone).then_some(most),
            })
        }
        _ => None,
    }
}

/// Spotters of a load above the 1RM that may come to lie on the lifter: those who would take it in a lowering, else two.
#[must_use]
pub const fn beyond_one_rm(handling: &Handling) -> u32 {
    match handling.overload {
        Handover::Yes { helpers, .. } => helpers,
        Handover::BodyOnly { .. } | Handover::No(_) => AT_BOTH_ENDS,
    }
}
