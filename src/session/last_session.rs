//! The last session of a log as a novice goes on from it: the rule of the sheet, applied to what was lifted.
//!
//! In: a [`LastSession`]. Out: what it reached, and whether it shows a set.

use super::end_of_log::LastSession;
use super::next_load::next_load;
use super::published::NoviceWeeks;
use super::request::SessionRequest;
use super::status::Level;
use crate::error::Result;
use crate::units::Mass;

/// Of the repetitions of a list, the most that the last session reached with so many in reserve; none where it reached
/// fewer than the fewest.
pub(super) fn reached(last: &LastSession, rules: &NoviceWeeks, reserve: u32) -> Option<u32> {
    let kept = last.kept(reserve);
    let list = rules.repetitions.iter().copied();
    list.filter(|count| *count <= kept).max()
}

/// Fewest repetitions to failure from which the chart is followed to the fewest of a novice's list (assumed: from fewer on it
/// is too far, and strength of few repetitions is not yet endurance of many).
const FOLLOWED_FROM: u32 = 5;

/// Whether a novice's log shows the working sets of a day: each as [`shows_a_set`] has it, and no fewer of them were done. What
/// one set showed is one set: more of them tire, and have to hold by chart and simulation.
pub(super) fn shows(
    request: &SessionRequest,
    load: Mass,
    repetitions: u32,
    reserve: u32,
) -> Result<bool> {
    Ok(shows_so_many(request) && shows_a_set(request, load, repetitions, reserve)?)
}

/// Whether the last session of a log had as many sets at its load as are planned.
pub(super) fn shows_so_many(request: &SessionRequest) -> bool {
    let planned = request.sets(request.guidance().sets);
    let last = request.lift.last_session();
    last.is_some_and(|last| last.reached.sets >= planned)
}

/// Whether a novice's log shows a set: its last session lifted the load as often and with as much in reserve; or two did, and
/// one more was left in every set of the last beyond the repetition that is added; or it is the fewest repetitions at a load up
/// to the very next one and takes no more by the chart. What was seen goes before chart and simulation.
///
/// ```text
/// load / share(repetitions + reserve) ≤ load lifted / share(repetitions to failure)
/// ```
/// Shares of the 1RM are those of the chart, within its range.
pub(super) fn shows_a_set(
    request: &SessionRequest,
    load: Mass,
    repetitions: u32,
    reserve: u32,
) -> Result<bool> {
    let last = request.lift.last_session();
    let Some(last) = last.filter(|_| request.level() == Level::Novice) else {
        return Ok(false);
    };
    // No log shows more than the 1RM that was made of it.
    if request.strength().share_of(load) > 1.0 {
        return Ok(false);
    }
    let kept = last.kept(reserve);
    if load <= last.load && repetitions <= kept {
        return Ok(true);
    }
    // Twice kept with so many left: the sheet's next repetition was in every set.
    if load <= last.load && repetitions == kept + 1 && last.is_second(kept, reserve) {
        return Ok(repetitions < last.reached.to_failure);
    }
    let least = request.published.straight.weeks.novice.repetitions.first();
    let is_next = next_load(request, last.load) == Some(load);
    let is_below = load <= last.load && last.reached.to_failure >= FOLLOWED_FROM;
    if !(is_next || is_below) || least.is_none_or(|least| repetitions > *least) {
        return Ok(false);
    }
    let chart = request.chart()?;
    let (fewest, most) = chart.range();
    let taken = |load: Mass, to_failure: u32| {
        let share = chart.share_at(f64::from(to_failure).clamp(fewest, most));
        share.map(|share| request.strength().share_of(load) / share)
    };
    Ok(taken(load, repetitions + reserve)? <= taken(last.load, last.reached.to_failure)?)
}
