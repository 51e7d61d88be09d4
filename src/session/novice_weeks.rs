//! A novice's weeks: repetitions rise at a load, then the next load begins with the fewest again (double progression).
//!
//! In: a [`SessionRequest`]. Out: the weeks that today's strength is known to hold; the weeks after them stand once, with
//! the rule by which the log decides.

use super::block_days::{
    BlockWeek, DayPurpose, day_back, days, is_coming_back, recovered, straight_day,
    straight_request,
};
use super::draft::SessionPlan;
use super::fitting::is_held;
use super::published::NoviceWeeks;
use super::remark::{Progression, Remark};
use super::request::{DayAim, SessionRequest};
use super::straight::{RESERVE, next_load};
use super::strength::OneRmSource;
use crate::error::Result;
use crate::units::Mass;

/// Weeks of somebody who comes back that are lighter than the steps: this one and the next.
const LIGHTER_WEEKS: u32 = 2;

/// A novice's weeks. What training adds is not known beforehand, so the last of them may stand for many.
pub(super) fn novice_weeks(request: &SessionRequest, weeks: u32) -> Result<Vec<BlockWeek>> {
    let lighter = match request.lift.trainee.comes_back() {
        true => LIGHTER_WEEKS,
        false => 0,
    };
    let rising = weeks.saturating_sub(lighter).max(FEWEST_STEPS);
    let begin = beginning(&recovered(request, 2), rising)?;
    let mut day = novice_day(&recovered(request, 1), begin, fewest(request))?;
    if lighter == 0 {
        let remark = begun(request, &day);
        day.draft.remarks.push(remark);
    }
    let mut all = vec![novice_week((1, 1), &day)];
    for week in 2..=weeks {
        let well = recovered(request, week);
        let next = match week {
            2 if is_coming_back(request, week) => Some(day_on_the_way_back(&well, begin)?),
            3 if request.lift.trainee.comes_back() => {
                let mut first = novice_day(&well, begin, fewest(request))?;
                let remark = begun(&well, &first);
                first.draft.remarks.push(remark);
                Some(first)
            }
            _ => next_novice_day(&well, &day)?,
        };
        let Some(next) = next else {
            all.push(novice_week((week, weeks), &held(&day)));
            break;
        };
        day = next;
        all.push(novice_week((week, week), &day));
    }
    Ok(all)
}

fn novice_week((week, until): (u32, u32), day: &SessionPlan) -> BlockWeek {
    BlockWeek {
        week,
        until,
        easier: false,
        days: days(
            (DayPurpose::Main, day.clone()),
            (DayPurpose::Main, day.clone()),
        ),
    }
}

fn rules<'a>(request: &SessionRequest<'a>) -> &'a NoviceWeeks {
    &request.published.straight.weeks.novice
}

fn fewest(request: &SessionRequest) -> u32 {
    rules(request).repetitions.first().copied().unwrap_or(1)
}

fn aim(request: &SessionRequest, share: f64, repetitions: u32) -> DayAim {
    DayAim {
        share,
        repetitions,
        reserve: request.wishes.reserve.unwrap_or(RESERVE).max(RESERVE),
        sets: request.guidance().sets,
    }
}

fn novice_day(request: &SessionRequest, share: f64, repetitions: u32) -> Result<SessionPlan> {
    let aim = aim(request, share, repetitions);
    let mut day = straight_day(request, aim, &rules(request).source)?;
    by_the_log(request, &mut day);
    Ok(day)
}

fn day_on_the_way_back(request: &SessionRequest, share: f64) -> Result<SessionPlan> {
    let aim = aim(request, share, fewest(request));
    let mut day = day_back(request, aim, &request.published.straight.weeks.deload)?;
    by_the_log(request, &mut day);
    Ok(day)
}

/// Steps that the shortest block has, so that it can rise at all.
const FEWEST_STEPS: u32 = 2;

/// A hair more, so that rounding does not take the load below.
const HAIR: f64 = 1.0 + 1.0e-9;

/// Where a block begins, share of the 1RM: at the heaviest load from which every step of so many weeks is known to hold
/// today; never above the usual share where nobody saw the 1RM, never heavier than the set that was written down, never
/// below the least share of the table. Where that is too few steps, at the load with the most of them.
fn beginning(request: &SessionRequest, weeks: u32) -> Result<f64> {
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
        let held = steps_at(request, share)?;
        if held == 0 {
            // Nothing above a load that does not hold is reached.
            (steps, found) = (0, None);
            continue;
        }
        steps += held;
        if share <= most * HAIR {
            found = Some(share * HAIR);
            if steps >= weeks {
                break;
            }
        }
    }
    Ok(found.unwrap_or_else(|| rules.share.min(most)))
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

/// How many of the steps at a load are known to hold today, from the fewest repetitions on.
fn steps_at(request: &SessionRequest, share: f64) -> Result<u32> {
    let list = &rules(request).repetitions;
    for (before, repetitions) in list.iter().enumerate().rev() {
        let aim = aim(request, share * HAIR, *repetitions);
        if is_held(&straight_request(request, aim))? {
            return Ok(before as u32 + 1);
        }
    }
    Ok(0)
}

/// What is told of where the weeks begin.
fn begun(request: &SessionRequest, day: &SessionPlan) -> Remark {
    let list = &rules(request).repetitions;
    let (load, _) = work_of(day);
    Remark::WeeksBegin {
        load,
        share: request.strength().share_of(load),
        ends: (fewest(request), list.last().copied().unwrap_or(1)),
        reserve: request.reserve(RESERVE),
        simulated: request.oracle.is_some(),
    }
}

/// The load and repetitions of a day's working sets.
fn work_of(day: &SessionPlan) -> (Mass, u32) {
    let set = day.working_sets().next();
    set.map_or((Mass::ZERO, 0), |set| (set.load.total, set.repetitions()))
}

/// The next step; none where today's strength is not known to hold it.
fn next_novice_day(request: &SessionRequest, before: &SessionPlan) -> Result<Option<SessionPlan>> {
    let list = &rules(request).repetitions;
    let (load, repetitions) = work_of(before);
    let more = list.iter().find(|count| **count > repetitions);
    let heavier = next_load(request, load);
    let tries = [
        more.map(|more| (load, *more)),
        heavier.map(|heavier| (heavier, fewest(request))),
    ];
    for (load, repetitions) in tries.into_iter().flatten() {
        let share = request.strength().share_of(load) * HAIR;
        if let Ok(day) = novice_day(request, share, repetitions)
            && work_of(&day) == (load, repetitions)
        {
            return Ok(Some(day));
        }
    }
    Ok(None)
}

/// The rule by which the log decides, in place of the calendar.
fn by_the_log(request: &SessionRequest, day: &mut SessionPlan) {
    let list = &rules(request).repetitions;
    let (load, repetitions) = work_of(day);
    let mut next = [None; 3];
    let mut last = load;
    for place in &mut next {
        *place = next_load(request, last);
        last = place.unwrap_or(last);
    }
    day.draft.progression = Progression::ByTheLog {
        repetitions,
        more: list.iter().copied().find(|count| *count > repetitions),
        ends: (fewest(request), list.last().copied().unwrap_or(repetitions)),
        reserve: request.reserve(RESERVE),
        next,
    };
}

/// The same day again, as often as the log says.
fn held(day: &SessionPlan) -> SessionPlan {
    let mut held = day.draft.clone();
    held.remarks.push(Remark::LogDecides);
    SessionPlan::new(held)
}
