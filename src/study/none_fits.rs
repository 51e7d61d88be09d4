//! The answer where no setup fits: the nearest miss, and what it misses.
//!
//! In: what a search met, the wish. Out: a fault with quantities.

use super::solve::SolvedLift;
use crate::anatomy::Training;
use crate::error::{Error, NearestSetup, PickFault, Result, Shortfall};
use crate::movement::Carrier;
use crate::setups::{Choosing, Gap, Missed, SetupLimit, Wish, hung_pairs};
use crate::units::Mass;

/// The fault where nothing fits.
pub(super) fn none_fits(
    lift: &SolvedLift<'_>,
    choosing: &Choosing<'_>,
    (missed, unit): (Option<Missed>, f64),
) -> Result<Error> {
    let gym = choosing.gym.title.clone();
    let Some(missed) = missed else {
        return Ok(Error::no_answer(PickFault::NothingMet { gym }));
    };
    let effort = lift.setup(&missed.loaded.setup)?.effort;
    let hardest = effort.into_iter().fold(0.0, f64::max) / unit;
    let novice = lift.question().lifter.training == Training::Novice;
    let is_body = lift.range.carrier == Carrier::Body;
    let with_legs = lift.question().movement.lifts_with_legs();
    let who = [novice, is_body, with_legs];
    Ok(Error::no_answer(PickFault::NoneFits {
        gym,
        nearest: Box::new(NearestSetup {
            plain: (&missed.loaded.loading).into(),
            hung: hung_pairs(&missed.loaded.setup.items, &choosing.gym.anchors),
            shortfall: shortfall(&missed.gap, &choosing.wish, hardest, who),
            misses_more: missed.gap.and_others,
        }),
    }))
}

fn shortfall(gap: &Gap, wish: &Wish, hardest: f64, who: [bool; 3]) -> Shortfall {
    let [novice, is_body, with_legs] = who;
    let [has, needs] = [gap.has, gap.needs].map(Mass::from_kg);
    match gap.limit {
        SetupLimit::LightestLoad => Shortfall::TooHard {
            effort: hardest,
            wished: wish.effort,
            most: novice.then(|| Wish::default().effort),
            is_body,
            with_legs,
        },
        SetupLimit::AllCarried => Shortfall::AllCarried {
            weight: has,
            carried: needs,
        },
        SetupLimit::LeftWhenBandsGo => Shortfall::LeftWhenBandsGo {
            left: has,
            most: needs,
        },
        SetupLimit::FeltAboveOneRm => Shortfall::FeltAboveOneRm {
            felt: has,
            most: needs,
        },
        SetupLimit::BothWays => Shortfall::BothWays,
        SetupLimit::LeastShare => Shortfall::LeastShare {
            has: gap.has,
            needs: gap.needs,
        },
        SetupLimit::MostShare => Shortfall::MostShare {
            has: gap.has,
            needs: gap.needs,
        },
        SetupLimit::LeastLoad(place) => Shortfall::LeastLoad {
            at: wish.loads[place].at,
            has,
            needs,
        },
        SetupLimit::MostLoad(place) => Shortfall::MostLoad {
            at: wish.loads[place].at,
            has,
            needs,
        },
    }
}
