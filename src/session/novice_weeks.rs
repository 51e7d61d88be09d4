//! A novice's weeks: repetitions rise at a load, then the next load begins with the fewest again (double progression).
//!
//! In: a [`SessionRequest`]. Out: the weeks that today's strength is known to hold, the first of them the session that a
//! plan without weeks has; the weeks after them stand once, with the rule by which the log decides.

use super::block_days::{
    BlockWeek, DayPurpose, day_back, days, is_coming_back, recovered, straight_day,
};
use super::draft::SessionPlan;
use super::next_load::next_load;
use super::novice_start::{
    HAIR, aim, begun, by_the_log, fewest, next_count, rules, start, then_heavier, work_of,
};
use super::remark::Remark;
use super::request::{DayAim, SessionRequest};
use crate::error::Result;

/// A novice's weeks. What training adds is not known beforehand, so the last of them may stand for many.
pub(super) fn novice_weeks(request: &SessionRequest, weeks: u32) -> Result<Vec<BlockWeek>> {
    let comes_back = request.lift.trainee.comes_back();
    let start = start(request)?;
    let mut day = novice_day(&recovered(request, 1), start.aim)?;
    if !comes_back {
        let remark = begun(request, &start, &day.draft);
        day.draft.remarks.push(remark);
        if start.then_heavier {
            then_heavier(&mut day.draft.progression);
        }
    }
    let mut all = Vec::new();
    for week in 2..=weeks {
        let well = recovered(request, week);
        let next = match week {
            2 if is_coming_back(request, week) => Some(day_on_the_way_back(&well, start.aim)?),
            3 if comes_back => {
                let mut first = novice_day(&well, start.aim)?;
                let remark = begun(&well, &start, &first.draft);
                first.draft.remarks.push(remark);
                Some(first)
            }
            _ => next_novice_day(&well, &day)?,
        };
        let Some(next) = next else {
            all.push(novice_week((week - 1, week - 1), &day));
            all.push(novice_week((week, weeks), &held(&day)));
            return Ok(all);
        };
        if is_going_on(request, week) && work_of(&next.draft).0 > work_of(&day.draft).0 {
            then_heavier(&mut day.draft.progression);
        }
        all.push(novice_week((week - 1, week - 1), &day));
        day = next;
    }
    all.push(novice_week((weeks, weeks), &day));
    Ok(all)
}

/// Whether a week goes on from the one before by the rule, not on the way back from an illness or a break.
const fn is_going_on(request: &SessionRequest, week: u32) -> bool {
    !request.lift.trainee.comes_back() || week > 3
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

fn novice_day(request: &SessionRequest, aim: DayAim) -> Result<SessionPlan> {
    let mut day = straight_day(request, aim, &rules(request).source)?;
    by_the_log(request, &mut day.draft)?;
    Ok(day)
}

fn day_on_the_way_back(request: &SessionRequest, aim: DayAim) -> Result<SessionPlan> {
    let mut day = day_back(request, aim, &request.published.straight.weeks.deload)?;
    by_the_log(request, &mut day.draft)?;
    Ok(day)
}

/// The next step; none where today's strength is not known to hold it.
fn next_novice_day(request: &SessionRequest, before: &SessionPlan) -> Result<Option<SessionPlan>> {
    let list = &rules(request).repetitions;
    let (load, repetitions) = work_of(&before.draft);
    let more = next_count(list, repetitions);
    let heavier = next_load(request, load);
    let tries = [
        more.map(|more| (load, more)),
        heavier.map(|heavier| (heavier, fewest(request))),
    ];
    for (load, repetitions) in tries.into_iter().flatten() {
        let share = request.strength().share_of(load) * HAIR;
        if let Ok(day) = novice_day(request, aim(request, share, repetitions))
            && work_of(&day.draft) == (load, repetitions)
        {
            return Ok(Some(day));
        }
    }
    Ok(None)
}

/// The same day again, as often as the log says.
fn held(day: &SessionPlan) -> SessionPlan {
    let mut held = day.draft.clone();
    held.remarks.push(Remark::LogDecides);
    SessionPlan::new(held)
}
