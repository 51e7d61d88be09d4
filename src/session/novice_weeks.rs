//! A novice's weeks: repetitions rise at a load, then the next load begins with the fewest again (double progression).
//!
//! In: a [`SessionRequest`]. Out: the weeks that today's strength is known to hold; the weeks after them stand once, with
//! the rule by which the log decides.

use super::block_days::{
    BlockWeek, DayPurpose, day_back, days, is_coming_back, recovered, straight_day,
    straight_request,
};
use super::draft::SessionPlan;
use super::published::NoviceWeeks;
use super::remark::{PlanBasis, Progression, Remark};
use super::request::{DayAim, SessionRequest};
use super::schemes::plan;
use super::straight::{RESERVE, next_load};
use crate::error::{FaultKind, Result};
use crate::units::Mass;

/// A novice's weeks: they begin at today's session. What training adds is not known beforehand, so the last of them may stand
/// for many.
pub(super) fn novice_weeks(request: &SessionRequest, weeks: u32) -> Result<Vec<BlockWeek>> {
    let comes_back = request.lift.trainee.comes_back();
    let mut day = single_session(&recovered(request, 1))?;
    if !comes_back {
        let remark = begun(request, &day, true);
        day.draft.remarks.push(remark);
    }
    let mut all = vec![novice_week((1, 1), &day)];
    for week in 2..=weeks {
        let well = recovered(request, week);
        let next = match week {
            2 if is_coming_back(request, week) => Some(day_on_the_way_back(&well)?),
            3 if comes_back => {
                let mut first = single_session(&well)?;
                let remark = begun(&well, &first, false);
                first.draft.remarks.push(remark);
                Some(first)
            }
            _ => next_novice_day(&well, &day)?,
        };
        let Some(next) = next else {
            all.push(novice_week((week, weeks), &held(&well, &day)));
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

/// The session that stands alone, as a day of the weeks: load and repetitions are those of a plan without weeks.
fn single_session(request: &SessionRequest) -> Result<SessionPlan> {
    let mut alone = straight_request(request, None);
    alone.wishes.reserve = request.wishes.reserve;
    let mut day = plan(&alone)?;
    let source = rules(request).source.clone();
    day.draft.sources.push((PlanBasis::Weeks, source));
    by_the_log(request, &mut day);
    Ok(day)
}

fn day_on_the_way_back(request: &SessionRequest) -> Result<SessionPlan> {
    let (load, repetitions) = work_of(&single_session(request)?);
    let share = request.strength().share_of(load) * HAIR;
    let aim = aim(request, share, repetitions);
    let mut day = day_back(request, aim, &request.published.straight.weeks.deload)?;
    by_the_log(request, &mut day);
    Ok(day)
}

/// A hair more, so that rounding does not take the load below.
const HAIR: f64 = 1.0 + 1.0e-9;

/// What is told of where the weeks begin.
fn begun(request: &SessionRequest, day: &SessionPlan, is_today: bool) -> Remark {
    let list = &rules(request).repetitions;
    let (load, repetitions) = work_of(day);
    Remark::WeeksBegin {
        load,
        repetitions,
        is_today,
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

/// The step after a load and its repetitions: the next repetitions of the list there; after the last of them the next load
/// with the fewest. None where no heavier load can be set up.
fn next_step(request: &SessionRequest, (load, repetitions): (Mass, u32)) -> Option<(Mass, u32)> {
    let mut list = rules(request).repetitions.iter();
    match list.find(|count| **count > repetitions) {
        Some(more) => Some((load, *more)),
        None => next_load(request, load).map(|heavier| (heavier, fewest(request))),
    }
}

/// The next step; none where today's strength is not known to hold it.
fn next_novice_day(request: &SessionRequest, before: &SessionPlan) -> Result<Option<SessionPlan>> {
    let Some((load, repetitions)) = next_step(request, work_of(before)) else {
        return Ok(None);
    };
    let share = request.strength().share_of(load) * HAIR;
    let day = match novice_day(request, share, repetitions) {
        Err(fault) if fault.kind() == FaultKind::NoAnswer => return Ok(None),
        day => day?,
    };
    Ok((work_of(&day) == (load, repetitions)).then_some(day))
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
fn held(request: &SessionRequest, day: &SessionPlan) -> SessionPlan {
    let mut held = day.draft.clone();
    // What is told of the first day is told there.
    held.remarks
        .retain(|remark| !matches!(remark, Remark::WeeksBegin { .. }));
    held.remarks.push(Remark::LogDecides {
        next: next_step(request, work_of(day)),
        reserve: request.reserve(RESERVE),
    });
    SessionPlan::new(held)
}
