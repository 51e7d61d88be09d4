//! What a training log says to a plan: the 1RM that it ends at, and what happened since.
//!
//! In: a log, what is asked of a plan. Out: the 1RM, where it is from, [`LogFacts`]; how a measured lifter differs.

use super::log_study::{LogChoice, log_of};
use super::log_trend::trend_of;
use super::model_maximum::{is_measured, simulated_one_rm};
use super::plan_question::{PlanNote, PlanQuestion};
use super::possible_rows::without_impossible;
use super::question::Question;
use super::session_oracle::carried_body;
use crate::anatomy::LifterRecord;
use crate::error::{Error, PlanFault, Result};
use crate::library::Library;
use crate::movement::lift_name;
use crate::progress::day::Day;
use crate::progress::one_rm_now::{LayOff, NowFrom};
use crate::progress::session_best::SessionBest;
use crate::progress::training_log::{Log, LogEntry, SkippedRow};
use crate::progress::trend::Trend;
use crate::progress::unconfirmed::without_jumps;
use crate::session::end_of_log::{DayReached, LastSession};
use crate::session::strength::{OneRmSource, PlannedLift};
use crate::units::Mass;

/// Days since the return from a lay-off in which somebody is just back (common practice: load returns over two weeks).
const RETURN_DAYS: i32 = 14;

/// A log's 1RM over the one that a lifter was fitted to, or the other way round, from which that is told (assumed: some
/// months of training; less is within what fits and logs scatter).
const OTHER_STRENGTH: f64 = 1.25;

/// What the days of a log ask for.
pub(super) struct LogFacts {
    /// Days of a lay-off that ends with this plan, or ended shortly before.
    pub back_from_break: Option<u32>,
    /// A load that failed and bounds the 1RM.
    pub failed: Option<Mass>,
    /// Days since a set that left nothing in reserve, where the plan has a first day.
    pub days_since_all_out: Option<u32>,
    /// The body that is lifted with the load, and whether the log leaves it out; none where no body is.
    pub body: Option<(Mass, bool)>,
    /// Rows that were left out on request, the first ones, and how many more.
    pub left_out: (Vec<SkippedRow>, usize),
}

/// The 1RM that the trend of a log ends at; the log may call the lift by any name of the movement.
///
/// **Fails** as reading the log does, where the plan begins before the log ends, and where the log leaves out the body.
pub(super) fn one_rm_of_log(
    choice: &LogChoice,
    asked: &PlanQuestion,
    library: &Library,
    question: &Question<'_>,
) -> Result<(Mass, OneRmSource, LogFacts)> {
    let log = log_of(library, choice)?;
    let own = lift_name(&asked.movement);
    let handling = &question.movement.handling;
    let mut lifts = log.entries.iter().map(|entry| entry.lift.as_str());
    let lift = lifts
        .clone()
        .find(|lift| *lift == own)
        .or_else(|| lifts.find(|lift| handling.is_called(lift)))
        .map_or(own.clone(), str::to_owned);
    let log = log.of_lift(Some(&lift))?;
    let body = carried_body(&question.movement.carrier()?, question.lifter);
    let (log, leaves_out_body) = log.holding_body(body);
    let judge = |log: &Log| trend_of(library, log);
    let (log, trend) = without_impossible(log, choice.bad_rows, judge)?;
    let last = trend.last_day();
    if let Some(start) = asked.start.filter(|start| *start <= last) {
        return Err(Error::bad(PlanFault::StartInLog {
            start: start.to_string(),
            last: last.to_string(),
        }));
    }
    check_fall(&trend)?;
    let today = asked.start.unwrap_or(last);
    let since = trend.break_until(today);
    let one_rm = trend.one_rm_now();
    if one_rm < body {
        return Err(Error::bad(PlanFault::LogBelowBody { one_rm, body }));
    }
    let added = left_after(since, one_rm)? - body;
    if let Some(lay_off) = since.filter(|_| added.as_kg() < 0.0) {
        return Err(forgotten(lay_off));
    }
    let ended = since.or(trend.lay_off);
    let ended = ended.filter(|lay_off| today.days_since(lay_off.to) < RETURN_DAYS);
    let goes_on_from = match trend.now.from {
        NowFrom::Failed(_) => None,
        // A set that is taken for a slip is nothing to go on from.
        _ => last_session(
            &without_jumps(&log, &library.published()?.estimates).0,
            body,
        ),
    };
    let facts = LogFacts {
        back_from_break: ended.and_then(|lay_off| u32::try_from(lay_off.days()).ok()),
        failed: match trend.now.from {
            NowFrom::Failed(failed) => Some(failed.load - body),
            _ => None,
        },
        days_since_all_out: asked
            .start
            .and_then(|start| all_out(&log, &trend.sessions, start)),
        body: (body > Mass::ZERO).then_some((body, leaves_out_body)),
        left_out: (log.skipped, log.skipped_more),
    };
    let from = OneRmSource::Log {
        verdict: trend.verdict,
        sureness: trend.sureness,
        line: Box::new(trend.recent),
        now: trend.now,
        last,
        begins: asked.start,
        lay_off: trend.lay_off,
        jumps: trend.jumps,
        since,
        goes_on_from,
    };
    Ok((added, from, facts))
}

/// What is counted on of a 1RM behind a lay-off.
///
/// **Fails** where that is so long that nobody knows.
fn left_after(since: Option<LayOff>, one_rm: Mass) -> Result<Mass> {
    match since {
        Some(lay_off) if lay_off.is_forgotten() => Err(forgotten(lay_off)),
        Some(lay_off) => Ok(one_rm * lay_off.kept()),
        None => Ok(one_rm),
    }
}

fn forgotten(lay_off: LayOff) -> Error {
    Error::no_answer(PlanFault::LogTellsNothing {
        last: lay_off.from.to_string(),
        days: lay_off.days(),
    })
}

/// The sets of the last day at its heaviest load, body apart; none where one of them failed. A set without a noted reserve
/// counts as done to failure, as in the estimates.
fn last_session(log: &Log, body: Mass) -> Option<LastSession> {
    let mut days = log.by_day().into_iter().rev();
    let (day, sets) = days.next()?;
    let heaviest = sets.iter().map(|set| set.load).reduce(Mass::max)?;
    let reached = |sets: &[LogEntry]| -> Option<DayReached> {
        let sets = || sets.iter().filter(|set| set.load >= heaviest);
        let left = |set: &LogEntry| set.reserve.unwrap_or(0.0).max(0.0).floor() as u32;
        let to_failure = |set: &LogEntry| set.repetitions + left(set);
        let hardest = sets().min_by_key(|set| to_failure(set))?;
        let reached = DayReached {
            sets: sets().count() as u32,
            hardest: (hardest.repetitions, hardest.reserve),
            lifted: sets().map(|set| set.repetitions).min()?,
            to_failure: to_failure(hardest),
        };
        Some(reached).filter(|reached| reached.lifted > 0)
    };
    Some(LastSession {
        day,
        load: heaviest - body,
        reached: reached(sets)?,
        before: days.next().and_then(|(_, sets)| reached(sets)),
    })
}

/// What is lifted now is not known behind a last day that shows less than half: a slip, or a lifter who is hurt.
///
/// **Fails** where the log ends with such a day.
fn check_fall(trend: &Trend<'_>) -> Result<()> {
    let mut falls = trend.jumps.iter().filter(|jump| jump.is_fall());
    match falls.find(|fall| fall.day() == trend.last_day()) {
        Some(fall) => Err(Error::bad(PlanFault::LogEndsInFall {
            line: fall.set.line,
            load: fall.set.load,
            one_rm: fall.one_rm,
            before: fall.before,
        })),
        None => Ok(()),
    }
}

/// Days from the last day of the log to the first of the plan, where a set of that day was not lifted or left nothing in
/// reserve; the best set counts as done to failure where it notes none, as in the estimates.
fn all_out(log: &Log, sessions: &[SessionBest<'_>], start: Day) -> Option<u32> {
    let last = log.entries.iter().map(|entry| entry.day).max()?;
    let mut of_day = log.entries.iter().filter(|entry| entry.day == last);
    let best = sessions.last().filter(|best| best.day == last);
    let is_best = |entry: &LogEntry| best.is_none_or(|best| best.set.line == entry.line);
    let is_all_out = of_day.any(|entry| match entry.reserve {
        _ if entry.repetitions == 0 => true,
        Some(left) => left <= 0.0,
        None => is_best(entry),
    });
    let days = u32::try_from(start.days_since(last)).ok();
    days.filter(|_| is_all_out)
}

/// A lifter who was fitted to measurements of this lift, and a log that shows another strength.
///
/// **Fails** as the simulation of the 1RM does.
pub(super) fn differing_lifter(
    question: &Question<'_>,
    record: Option<&LifterRecord>,
    lift: &PlannedLift,
) -> Result<Option<PlanNote>> {
    if !matches!(lift.one_rm_from, OneRmSource::Log { .. }) {
        return Ok(None);
    }
    if !record.is_some_and(|record| is_measured(record, question)) {
        return Ok(None);
    }
    let fitted = simulated_one_rm(question)?;
    let ratio = (lift.one_rm + lift.body).as_kg() / (fitted + lift.body).as_kg();
    let differs = !(1.0 / OTHER_STRENGTH..=OTHER_STRENGTH).contains(&ratio);
    Ok(differs.then(|| PlanNote::LifterDiffers {
        lifter: question.lifter.title.clone(),
        fitted,
        of_log: lift.one_rm,
    }))
}
