//! A novice's first session: the load from which repetitions and loads can rise for weeks within today's strength.
//!
//! In: a [`SessionRequest`]. Out: the [`NoviceStart`] of a session today, be it planned alone or as the first of a block; the rule
//! by which the log goes on.

use super::draft::Draft;
use super::end_of_log::LastSession;
use super::fitting::is_held;
use super::last_session::{reached, shows, shows_a_set, shows_so_many};
use super::next_load::{far_step, next_load};
use super::planned_set::SetKind;
use super::published::NoviceWeeks;
use super::remark::{PlanBasis, Progression, Remark, WeeksBegin};
use super::request::{DayAim, SessionRequest};
use super::status::Level;
use super::straight::RESERVE;
use super::strength::OneRmSource;
use crate::error::Result;
use crate::units::Mass;

/// Steps that are looked for within today's strength, one a week: two months (assumed: by then the log has told how fast
/// a novice gains).
const STEPS: u32 = 8;

/// A hair more, so that rounding does not take the load below.
pub(super) const HAIR: f64 = 1.0 + 1.0e-9;

/// Where a novice begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct NoviceStart {
    /// Load, repetitions, reserve and sets.
    pub aim: DayAim,
    /// Steps that are known to hold today, the first among them, as far as they were looked for.
    pub steps: u32,
    /// Whether the second of them is a heavier load.
    pub then_heavier: bool,
    /// The session of a log that it goes on from, and the repetitions that it reached.
    pub on_from: Option<(LastSession, u32)>,
}

/// Where a novice begins who asks for neither load nor repetitions; none for others, and where a block asks for the day.
pub(super) fn start_today(request: &SessionRequest) -> Result<Option<NoviceStart>> {
    if begins_today(request) {
        start(request).map(Some)
    } else {
        Ok(None)
    }
}

/// Whether a session is that of a novice who asks for neither load nor repetitions, and of no block.
pub(super) fn begins_today(request: &SessionRequest) -> bool {
    let wishes = &request.wishes;
    let is_asked = wishes.load.is_some() || wishes.repetitions.is_some() || request.aim.is_some();
    request.level() == Level::Novice && !is_asked
}

/// Where a novice begins: at the heaviest load from which [`STEPS`] steps are known to hold today; never above the usual
/// share where nobody saw the 1RM, never heavier than the set that was written down, never below the least share of the
/// table. Where that is too few steps, at the load with the most of them.
///
/// Who has a log goes on from its last session instead, by the rule of [`by_the_log`].
pub(super) fn start(request: &SessionRequest) -> Result<NoviceStart> {
    if let Some(last) = request.lift.last_session()
        && let Some(on) = going_on(request, &last)?
    {
        return Ok(on);
    }
    let rules = rules(request);
    let strength = request.strength();
    let most = match &request.lift.one_rm_from {
        OneRmSource::OfSet { load, .. } => strength.share_of(*load),
        OneRmSource::Log { .. } | OneRmSource::Given => 1.0,
        OneRmSource::Simulated { .. } => rules.share,
    };
    let chart = request.chart()?;
    let (_, last) = chart.range();
    let first_step = f64::from(fewest(request) + request.reserve(RESERVE));
    let by_chart = chart.share_at(first_step.min(last))?;
    let mut steps = 0;
    let mut found = None;
    for load in rungs(request).into_iter().rev() {
        let share = strength.share_of(load);
        if share > by_chart * HAIR {
            continue;
        }
        let held = steps_at(request, share, fewest(request))?;
        if held == 0 {
            // Nothing above a load that does not hold is reached.
            (steps, found) = (0, None);
            continue;
        }
        steps += held;
        if share <= most * HAIR {
            found = Some((share * HAIR, steps, held == 1 && steps > 1));
            if steps >= STEPS {
                break;
            }
        }
    }
    let (share, steps, then_heavier) = found.unwrap_or_else(|| (rules.share.min(most), 0, false));
    Ok(NoviceStart {
        aim: aim(request, share, fewest(request)),
        steps,
        then_heavier,
        on_from: None,
    })
}

/// Where a log goes on: the next step of the rule after two sessions that reached the last one, where that is known to hold;
/// else what was lifted, again, or what that shows of the fewest repetitions where it was fewer. None where it shows nothing, and
/// of a load that cannot be set up.
fn going_on(request: &SessionRequest, last: &LastSession) -> Result<Option<NoviceStart>> {
    let reserve = kept_in_reserve(request);
    let Some(count) = reached(last, rules(request), reserve) else {
        return from_fewer(request, last);
    };
    let Ok(again) = request.loading.at_most(last.load) else {
        return Ok(None);
    };
    let told = |start: NoviceStart| NoviceStart {
        on_from: Some((*last, count)),
        ..start
    };
    if last.is_second(count, reserve) {
        let list = &rules(request).repetitions;
        let more = list.iter().copied().find(|more| *more > count);
        let heavier = next_load(request, last.load);
        let tries = [
            more.map(|more| (again.total, more)),
            heavier.map(|load| (load, fewest(request))),
        ];
        for (load, repetitions) in tries.into_iter().flatten() {
            let on = from_here(request, load, repetitions)?;
            if on.steps > 0 || shows(request, load, repetitions, reserve)? {
                return Ok(Some(told(on)));
            }
        }
    }
    let on = from_here(request, again.total, count)?;
    Ok(Some(told(on)))
}

/// Where every set of the last session did not reach the fewest repetitions: the heaviest load at which those take no more by
/// the chart than was lifted, and that is known to hold where fewer sets were done than are planned.
fn from_fewer(request: &SessionRequest, last: &LastSession) -> Result<Option<NoviceStart>> {
    let reserve = kept_in_reserve(request);
    let kept = last.kept(reserve);
    let loads = request.loading.all().iter().rev().map(|load| load.total);
    for load in loads.filter(|load| kept > 0 && *load <= last.load) {
        if shows_a_set(request, load, fewest(request), reserve)? {
            let start = from_here(request, load, fewest(request))?;
            if start.steps > 0 || shows_so_many(request) {
                let on_from = Some((*last, kept));
                return Ok(Some(NoviceStart { on_from, ..start }));
            }
        }
    }
    Ok(None)
}

/// A start at a load and repetitions, with the steps that are known to hold from there on.
fn from_here(request: &SessionRequest, load: Mass, repetitions: u32) -> Result<NoviceStart> {
    let share = |load: Mass| request.strength().share_of(load);
    let held = steps_at(request, share(load), repetitions)?;
    let more = match held {
        // What is done again need not be known to hold; the step after it must.
        0 => steps_at(request, share(load), repetitions + 1)?,
        held => held - 1,
    };
    let mut above = 0;
    let mut next = next_load(request, load);
    while let Some(load) = next.filter(|_| more + above < STEPS) {
        match steps_at(request, share(load), fewest(request))? {
            0 => break,
            held => above += held,
        }
        next = next_load(request, load);
    }
    Ok(NoviceStart {
        aim: aim(request, share(load) * HAIR, repetitions),
        steps: if held > 0 { 1 + more + above } else { 0 },
        then_heavier: more == 0 && above > 0,
        on_from: None,
    })
}

/// The loads from the least share of a novice up, each the next step of the one before.
fn rungs(request: &SessionRequest) -> Vec<Mass> {
    let strength = request.strength();
    let least = strength.load_at(rules(request).least_share);
    let first = request.loading.at_least(least, request.lift.one_rm);
    let first = first.map(|loading| loading.total);
    let is_below_one_rm = |load: &Mass| *load <= request.lift.one_rm;
    std::iter::successors(first, |load| {
        next_load(request, *load).filter(is_below_one_rm)
    })
    .collect()
}

/// How many of the steps at a load are known to hold today, from so many repetitions on.
fn steps_at(request: &SessionRequest, share: f64, from: u32) -> Result<u32> {
    let allowed = request.chart()?.allowed_at(share);
    let mut held = 0;
    let list = rules(request).repetitions.iter();
    for repetitions in list.filter(|count| **count >= from) {
        let aim = aim(request, share * HAIR, *repetitions);
        // What the chart refuses need not be simulated.
        let is_refused = allowed.is_some_and(|allowed| allowed < repetitions + aim.reserve);
        if is_refused || !is_held(&request.straight(aim))? {
            break;
        }
        held += 1;
    }
    Ok(held)
}

pub(super) fn rules<'a>(request: &SessionRequest<'a>) -> &'a NoviceWeeks {
    &request.published.straight.weeks.novice
}

pub(super) fn fewest(request: &SessionRequest) -> u32 {
    rules(request).repetitions.first().copied().unwrap_or(1)
}

/// Repetitions that a novice's days keep in reserve.
fn kept_in_reserve(request: &SessionRequest) -> u32 {
    request.wishes.reserve.unwrap_or(RESERVE).max(RESERVE)
}

/// A novice's day with a load and repetitions.
pub(super) fn aim(request: &SessionRequest, share: f64, repetitions: u32) -> DayAim {
    DayAim {
        share,
        repetitions,
        reserve: kept_in_reserve(request),
        sets: request.wishes.sets.unwrap_or(request.guidance().sets),
    }
}

/// A draft of today as the first of a novice's weeks: where they begin, and the rule by which the log goes on.
///
/// **Fails** as the chart does.
pub(super) fn begin(
    request: &SessionRequest,
    start: &NoviceStart,
    draft: &mut Draft,
) -> Result<()> {
    by_the_log(request, draft)?;
    // Who is not well yet begins when well again.
    if !request.lift.trainee.comes_back() {
        if start.then_heavier {
            then_heavier(&mut draft.progression);
        }
        draft.remarks.push(begun(request, start, draft));
    }
    let source = rules(request).source.clone();
    draft.sources.push((PlanBasis::Weeks, source));
    Ok(())
}

/// What is told of where the weeks begin.
pub(super) fn begun(request: &SessionRequest, start: &NoviceStart, draft: &Draft) -> Remark {
    let list = &rules(request).repetitions;
    let (load, repetitions) = work_of(draft);
    let is_again = |(last, count): &(LastSession, u32)| {
        last.load == load && *count == repetitions && shows_so_many(request)
    };
    Remark::WeeksBegin(WeeksBegin {
        load,
        goes_before: start.steps == 0 && start.on_from.as_ref().is_some_and(is_again),
        share: request.strength().share_of(load),
        steps: start.steps,
        ends: (fewest(request), list.last().copied().unwrap_or(1)),
        reserve: request.reserve(RESERVE),
        simulated: request.oracle.is_some(),
        on_from: start.on_from,
    })
}

/// The repetitions of the next step at a load: one more below the fewest of the list, then those of the list; none at its last.
pub(super) fn next_count(list: &[u32], repetitions: u32) -> Option<u32> {
    let next = list.iter().copied().find(|count| *count > repetitions)?;
    Some(match list.first() {
        Some(fewest) if repetitions < *fewest => repetitions + 1,
        _ => next,
    })
}

/// The load and repetitions of a day's working sets.
pub(super) fn work_of(draft: &Draft) -> (Mass, u32) {
    let mut sets = draft.sets.iter();
    let set = sets.find(|set| set.kind == SetKind::Work);
    set.map_or((Mass::ZERO, 0), |set| (set.load.total, set.repetitions()))
}

/// The rule by which the log decides, in place of the calendar.
///
/// **Fails** as the chart does.
pub(super) fn by_the_log(request: &SessionRequest, draft: &mut Draft) -> Result<()> {
    let list = &rules(request).repetitions;
    let (load, repetitions) = work_of(draft);
    let far = far_step(request, load, (fewest(request), request.reserve(RESERVE)))?;
    let mut next = [None; 3];
    let mut last = load;
    for place in &mut next {
        *place = next_load(request, last);
        last = place.unwrap_or(last);
    }
    draft.progression = Progression::ByTheLog {
        repetitions,
        more: next_count(list, repetitions),
        ends: (fewest(request), list.last().copied().unwrap_or(repetitions)),
        reserve: request.reserve(RESERVE),
        next,
        far,
    };
    Ok(())
}

/// The next step is the heavier load: more repetitions are not known to hold today, and that is.
pub(super) const fn then_heavier(progression: &mut Progression) {
    if let Progression::ByTheLog { more, .. } = progression {
        *more = None;
    }
}
