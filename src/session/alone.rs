//! How a session that is planned alone and the first of a block differ, for lifters who train by rounds.
//!
//! In: a request with its draft, or both plans. Out: [`Alone`].

use super::alone_remark::Alone;
use super::draft::{Draft, SessionPlan};
use super::method::Method;
use super::request::SessionRequest;
use super::status::Level;
use super::straight::RESERVE;

/// A session of straight sets that nobody shaped by a wish, beside a block's.
pub(super) fn stands_alone(request: &SessionRequest, draft: &Draft) -> Option<Alone> {
    let wishes = &request.wishes;
    let is_usual = wishes.load.is_none() && wishes.repetitions.is_none() && request.aim.is_none();
    let is_usual = is_usual && draft.method == Method::Straight;
    if !is_usual || request.level() == Level::Novice || request.lift.trainee.comes_back() {
        return None;
    }
    let rounds = &request.published.straight.weeks.rounds;
    let first = rounds.reserves.first().copied().unwrap_or(RESERVE);
    Some(Alone::Session {
        share: request.guidance().share * request.ease,
        rounds: rounds.repetitions_of(request.lift.one_joint).to_vec(),
        reserve: first.max(wishes.reserve.unwrap_or(0)),
    })
}

/// How the first day of a block differs from the session that is planned alone, where both are straight sets.
pub(super) fn not_alone(alone: &SessionPlan, first: &SessionPlan) -> Option<Alone> {
    let of = |plan: &SessionPlan| {
        let set = plan.working_sets().next()?;
        Some((set.load.total, set.repetitions(), set.reserve))
    };
    let is_straight = |plan: &SessionPlan| plan.draft.method == Method::Straight;
    let (one, here) = (of(alone)?, of(first)?);
    let differ = (one.0, one.1) != (here.0, here.1);
    let differ = differ && !alone.draft.lift.trainee.comes_back();
    (differ && is_straight(alone) && is_straight(first)).then_some(Alone::FirstOfBlock {
        alone: (one.0, one.1),
        here,
    })
}
