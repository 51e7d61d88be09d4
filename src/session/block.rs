//! A block of weeks: one overload day and one lighter day a week, loads rising, the last week easier.
//!
//! In: a [`SessionRequest`] and a number of weeks. Out: the sessions of every week, each a whole plan with its
//! cautions.

use super::draft::SessionPlan;
use super::method::Method;
use super::overload;
use super::request::SessionRequest;
use super::schemes::plan;
use super::status::Level;
use crate::bounds::bounds;
use crate::error::{Error, Result, SchemeFault};

/// Weeks of a round: three that rise and one easier (common practice).
pub const ROUND_WEEKS: u32 = 4;

/// Rise of the lighter day from week to week, share of the load: the small end of ACSM 2009's 2 to 10 %.
pub const WEEKLY_RISE: f64 = 0.02;

/// What an easier week takes: share of the load and of the sets (common practice: a tenth lighter, about
/// half the sets).
pub const EASIER: (f64, f64) = (0.90, 0.5);

/// Days between the two sessions of a week: Monday and Thursday, for example.
pub const DAYS_BETWEEN: u32 = 3;

/// What a day of a block is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayPurpose {
    /// The day of straight sets that rise.
    Main,
    /// The day of the method that was asked for.
    Overload,
    /// A lighter day, so that the overload day finds the lifter fresh.
    Lighter,
    /// A day of an easier week.
    Easier,
}

/// One session of a week.
#[derive(Debug, Clone, PartialEq)]
pub struct BlockDay {
    /// Day of the week, from 1.
    pub day: u32,
    /// What the day is for.
    pub purpose: DayPurpose,
    /// The session.
    pub plan: SessionPlan,
}

/// One week.
#[derive(Debug, Clone, PartialEq)]
pub struct BlockWeek {
    /// Number of the week, from 1.
    pub week: u32,
    /// Whether it is an easier one.
    pub easier: bool,
    /// Its sessions.
    pub days: Vec<BlockDay>,
}

/// A block of weeks.
#[derive(Debug, Clone, PartialEq)]
pub struct Block {
    /// The weeks.
    pub weeks: Vec<BlockWeek>,
}

/// Plans a block: the method of the request once a week, straight sets on the other day, the last week of
/// every round (and of the block) easier and without the overload day.
///
/// A novice gets straight sets on every day. **Fails** as [`plan`] does, and for no or too many weeks.
pub fn block(request: &SessionRequest, weeks: u32) -> Result<Block> {
    let bound = &bounds().block_weeks;
    if !bound.holds(f64::from(weeks)) {
        return Err(Error::bad(SchemeFault::NoBlock {
            weeks,
            most: bound.most_of_them() as u32,
        }));
    }
    plan(request)?;
    let weeks = (1..=weeks)
        .map(|week| self::week(request, week, weeks))
        .collect::<Result<_>>()?;
    Ok(Block { weeks })
}

fn week(request: &SessionRequest, week: u32, weeks: u32) -> Result<BlockWeek> {
    let easier = week > 1 && (week == weeks || week.is_multiple_of(ROUND_WEEKS));
    let step = (week - 1) % ROUND_WEEKS;
    let plain = request.level() == Level::Novice || request.method == Method::Straight;
    let days = if easier {
        easier_days(request)?
    } else if plain {
        // Rises from the usual load by a step a week.
        let main = 1.0 + WEEKLY_RISE * f64::from(step);
        let session = || straight_day(request, main, false);
        days(
            (DayPurpose::Main, session()?),
            (DayPurpose::Main, session()?),
        )
    } else {
        // A tenth below it, so that the overload day finds the lifter fresh.
        let light = EASIER.0 + WEEKLY_RISE * f64::from(step);
        days(
            (DayPurpose::Overload, overload_day(request, step)?),
            (DayPurpose::Lighter, straight_day(request, light, false)?),
        )
    };
    Ok(BlockWeek { week, easier, days })
}

fn easier_days(request: &SessionRequest) -> Result<Vec<BlockDay>> {
    let session = |share: f64| straight_day(request, share, true);
    Ok(days(
        (DayPurpose::Easier, session(EASIER.0)?),
        (DayPurpose::Easier, session(EASIER.0 * EASIER.0)?),
    ))
}

fn days(first: (DayPurpose, SessionPlan), second: (DayPurpose, SessionPlan)) -> Vec<BlockDay> {
    [(1, first), (1 + DAYS_BETWEEN, second)]
        .into_iter()
        .map(|(day, (purpose, plan))| BlockDay { day, purpose, plan })
        .collect()
}

/// The method of the request; overloaded lowering climbs through its window week by week.
fn overload_day(request: &SessionRequest, step: u32) -> Result<SessionPlan> {
    if request.method != Method::OverloadedLowering || request.wishes.load.is_some() {
        return plan(request);
    }
    let (least, most) = request.published.eccentric.overload.shares;
    let top = least + (most - least) * f64::from(step + 1) / f64::from(ROUND_WEEKS - 1);
    Ok(SessionPlan::new(overload::draft(
        request,
        (least, top.min(most)),
    )?))
}

/// Straight sets at a share of the usual load, five repetitions (a novice's ten) well short of failure.
fn straight_day(request: &SessionRequest, of_usual: f64, easier: bool) -> Result<SessionPlan> {
    let guidance = request.guidance();
    let mut straight = request.with_method(Method::Straight);
    straight.wishes.load = Some(request.strength().load_at(guidance.share * of_usual));
    straight.wishes.repetitions = Some(if request.level() == Level::Novice {
        10
    } else {
        5
    });
    straight.wishes.rest_between = request.wishes.rest_between;
    if easier {
        straight.wishes.sets = Some(((f64::from(guidance.sets) * EASIER.1).ceil() as u32).max(1));
    }
    plan(&straight)
}
