//! A block of weeks that go on by a published rule.
//!
//! In: a [`SessionRequest`] and a number of weeks. Out: the sessions of every week, each a whole plan with its
//! cautions. A novice's repetitions rise, then the load (double progression). For others every round has fewer
//! repetitions and more load than the one before, within a round the reserve falls from week to week, and an easier
//! week ends it.

use super::draft::SessionPlan;
use super::method::Method;
use super::published::{DeloadRule, WeekRules};
use super::remark::PlanBasis;
use super::request::{DayAim, SessionRequest};
use super::schemes::plan;
use super::status::Level;
use super::straight::RESERVE;
use crate::bounds::bounds;
use crate::error::{Error, Result, SchemeFault};
use crate::source::Source;

/// Days between the two sessions of a week: Monday and Thursday, for example.
pub const DAYS_BETWEEN: u32 = 3;

/// What a lighter day takes of the week's load, so that the next heavy day finds the lifter fresh (common practice: a
/// tenth), and what it keeps more in reserve.
const LIGHTER: (f64, u32) = (0.90, 2);

/// What a method's day takes of its usual load in the first week and the second of a round (assumed).
const METHOD_WEEKS: [f64; 3] = [0.95, 0.975, 1.0];

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

/// Plans a block: the method of the request once a week beside a lighter day of straight sets; with straight sets a
/// heavy day and a lighter one. A novice gets straight sets on every day and no easier week.
///
/// **Fails** as [`plan`] does, and for no or too many weeks.
pub fn block(request: &SessionRequest, weeks: u32) -> Result<Block> {
    let bound = &bounds().block_weeks;
    if !bound.holds(f64::from(weeks)) {
        return Err(Error::bad(SchemeFault::NoBlock {
            weeks,
            most: bound.most_of_them() as u32,
        }));
    }
    plan(request)?;
    let mut daily = request.with_method(request.method);
    daily.wishes = request.wishes;
    // Two days share what a week allows.
    daily.wishes.sets_a_week = request.wishes.sets_a_week.map(|sets| (sets / 2).max(1));
    let weeks = (1..=weeks)
        .map(|week| self::week(&daily, week, weeks))
        .collect::<Result<_>>()?;
    Ok(Block { weeks })
}

fn week(request: &SessionRequest, week: u32, weeks: u32) -> Result<BlockWeek> {
    let rules = &request.published.straight.weeks;
    if request.level() == Level::Novice {
        let aim = novice_aim(request, rules, week);
        let source = &rules.novice.source;
        let session = || straight_day(request, aim, source);
        return Ok(BlockWeek {
            week,
            easier: false,
            days: days(
                (DayPurpose::Main, session()?),
                (DayPurpose::Main, session()?),
            ),
        });
    }
    let easier = week.is_multiple_of(rules.deload.every);
    let aim = round_aim(request, rules, (week, weeks))?;
    let source = &rules.rounds.source;
    let days = if easier {
        let aim = eased(aim, &rules.deload);
        let session = |share: f64| {
            let aim = DayAim {
                share: aim.share * share,
                ..aim
            };
            straight_day(request, aim, &rules.deload.source)
        };
        days(
            (DayPurpose::Easier, session(1.0)?),
            (DayPurpose::Easier, session(LIGHTER.0)?),
        )
    } else if request.method == Method::Straight {
        days(
            (DayPurpose::Main, straight_day(request, aim, source)?),
            (
                DayPurpose::Lighter,
                straight_day(request, lighter(aim), source)?,
            ),
        )
    } else {
        let step = (week - 1) % rules.deload.every;
        days(
            (DayPurpose::Overload, method_day(request, step)?),
            (
                DayPurpose::Lighter,
                straight_day(request, lighter(aim), source)?,
            ),
        )
    };
    Ok(BlockWeek { week, easier, days })
}

/// A novice's week: so many repetitions, a load that rises whenever they begin again.
fn novice_aim(request: &SessionRequest, rules: &WeekRules, week: u32) -> DayAim {
    let novice = &rules.novice;
    let count = novice.repetitions.len().max(1) as u32;
    let (rises, step) = ((week - 1) / count, (week - 1) % count);
    let (upper, lower) = novice.step_percent;
    let percent = if request.lift.lower_body && !request.lift.one_joint {
        lower
    } else {
        upper
    };
    DayAim {
        share: novice.share * (1.0 + percent / 100.0).powi(rises as i32),
        repetitions: novice.repetitions.get(step as usize).copied().unwrap_or(1),
        reserve: request.wishes.reserve.unwrap_or(RESERVE).max(RESERVE),
        sets: request.guidance().sets,
    }
}

/// A week of a round: the load that the chart gives for its repetitions and those kept in reserve.
fn round_aim(
    request: &SessionRequest,
    rules: &WeekRules,
    (week, weeks): (u32, u32),
) -> Result<DayAim> {
    let every = rules.deload.every.max(1);
    let list = match request.lift.one_joint {
        true => &rules.rounds.one_joint,
        false => &rules.rounds.repetitions,
    };
    let rounds = weeks.div_ceil(every) as usize;
    let round = ((week - 1) / every) as usize;
    // A single round is of the middle kind; several begin with the most repetitions.
    let kind = if rounds == 1 {
        list.len() / 2
    } else {
        round % list.len()
    };
    let repetitions = list.get(kind).copied().unwrap_or(1);
    let reserves = &rules.rounds.reserves;
    let step = ((week - 1) % every) as usize % reserves.len();
    let least = request.wishes.reserve.unwrap_or(0);
    let reserve = reserves.get(step).copied().unwrap_or(RESERVE).max(least);
    let chart = request.chart()?;
    let (_, most) = chart.range();
    let share = chart.share_at(f64::from(repetitions + reserve).min(most))?;
    Ok(DayAim {
        share,
        repetitions,
        reserve,
        sets: request.guidance().sets,
    })
}

/// The same day in an easier week.
fn eased(aim: DayAim, rule: &DeloadRule) -> DayAim {
    let (share, sets) = rule.left;
    DayAim {
        share: aim.share * share,
        reserve: aim.reserve + LIGHTER.1,
        sets: ((f64::from(aim.sets) * sets).ceil() as u32).max(1),
        ..aim
    }
}

/// The same day, lighter.
fn lighter(aim: DayAim) -> DayAim {
    DayAim {
        share: aim.share * LIGHTER.0,
        reserve: aim.reserve + LIGHTER.1,
        sets: aim.sets.saturating_sub(1).max(1),
        ..aim
    }
}

fn days(first: (DayPurpose, SessionPlan), second: (DayPurpose, SessionPlan)) -> Vec<BlockDay> {
    [(1, first), (1 + DAYS_BETWEEN, second)]
        .into_iter()
        .map(|(day, (purpose, plan))| BlockDay { day, purpose, plan })
        .collect()
}

/// The method of the request, a little less of it in the first weeks of a round: of the load, of the window of
/// overloaded lowering, or, where bands and chains stay as they are, of the repetitions.
fn method_day(request: &SessionRequest, step: u32) -> Result<SessionPlan> {
    let mut day = request.with_method(request.method);
    day.wishes = request.wishes;
    let guidance = request.guidance();
    let (least, most) = request.published.eccentric.overload.shares;
    let last = METHOD_WEEKS.len() as u32 - 1;
    let step = step.min(last);
    let aim = DayAim {
        share: least + (most - least) * f64::from(step + 1) / f64::from(last + 1),
        repetitions: 1,
        reserve: request.wishes.reserve.unwrap_or(RESERVE) + last - step,
        sets: guidance.sets,
    };
    match request.method {
        Method::OverloadedLowering | Method::Bands | Method::Chains => day.aim = Some(aim),
        _ => day.ease = METHOD_WEEKS[step as usize],
    }
    plan(&day)
}

/// Straight sets as a day of the block asks for them.
fn straight_day(request: &SessionRequest, aim: DayAim, source: &Source) -> Result<SessionPlan> {
    let mut straight = request.with_method(Method::Straight);
    straight.wishes.rest_between = request.wishes.rest_between;
    straight.wishes.velocity_loss = request.wishes.velocity_loss;
    straight.wishes.sets_a_week = request.wishes.sets_a_week;
    straight.aim = Some(aim);
    let mut planned = plan(&straight)?;
    planned
        .draft
        .sources
        .push((PlanBasis::Weeks, source.clone()));
    Ok(planned)
}
