//! A novice's weeks: repetitions rise at a load, then the next load begins with the fewest again (double progression).
//!
//! In: a [`SessionRequest`]. Out: the weeks that today's strength is known to hold; the weeks after them stand once, with
//! the rule by which the log decides.

use super::block_days::{
    BlockWeek, DayPurpose, day_back, days, is_coming_back, recovered, straight_day,
};
use super::draft::SessionPlan;
use super::published::NoviceWeeks;
use super::remark::{Progression, Remark};
use super::request::{DayAim, SessionRequest};
use super::straight::{RESERVE, next_load};
use super::strength::OneRmSource;
use crate::error::Result;
use crate::units::Mass;

/// A novice's weeks. What training adds is not known beforehand, so the last of them may stand for many.
pub(super) fn novice_weeks(request: &SessionRequest, weeks: u32) -> Result<Vec<BlockWeek>> {
    let mut day = first_day(&recovered(request, 1))?;
    let mut all = vec![novice_week((1, 1), &day)];
    for week in 2..=weeks {
        let well = recovered(request, week);
        let next = match week {
            2 if is_coming_back(request, week) => Some(day_on_the_way_back(&well)?),
            3 if request.lift.trainee.comes_back() => Some(first_day(&well)?),
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

fn first_day(request: &SessionRequest) -> Result<SessionPlan> {
    novice_day(request, first_share(request)?, fewest(request))
}

fn day_on_the_way_back(request: &SessionRequest) -> Result<SessionPlan> {
    let aim = aim(request, first_share(request)?, fewest(request));
    let mut day = day_back(request, aim, &request.published.straight.weeks.deload)?;
    by_the_log(request, &mut day);
    Ok(day)
}

/// Where a block begins: of a 1RM that nobody saw at the usual share; else where today's strength holds the second step too,
/// so that the weeks can rise, and no heavier than the set itself that was written down.
fn first_share(request: &SessionRequest) -> Result<f64> {
    let usual = rules(request).share;
    let most = match &request.lift.one_rm_from {
        OneRmSource::OfSet { load, .. } => request.strength().share_of(*load),
        OneRmSource::Log { .. } | OneRmSource::Given => 1.0,
        OneRmSource::Simulated { .. } => return Ok(usual),
    };
    let chart = request.chart()?;
    let (_, last) = chart.range();
    let list = &rules(request).repetitions;
    let second = list.get(1).copied().unwrap_or_else(|| fewest(request));
    let shown = chart.share_at(f64::from(second + request.reserve(RESERVE)).min(last))?;
    Ok(usual.max(shown.min(most)))
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
        // A hair more, so that rounding does not take the load below.
        let share = request.strength().share_of(load) * (1.0 + 1.0e-9);
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
