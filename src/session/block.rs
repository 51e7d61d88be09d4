//! A block of weeks that go on by a published rule.
//!
//! In: a [`SessionRequest`] and a number of weeks. Out: the sessions of every week, each a whole plan with its
//! cautions. A novice's repetitions rise, then the load (double progression). For others every round has fewer
//! repetitions and more load than the one before, within a round the reserve falls from week to week, and an easier
//! week ends it.

use super::draft::SessionPlan;
use super::method::Method;
use super::published::WeekRules;
use super::remark::{PlanBasis, Progression, Remark};
use super::request::{DayAim, SessionRequest};
use super::schemes::{EASIER_RESERVE, eased, plan};
use super::status::Level;
use super::straight::{MORE_REPETITIONS, RESERVE, next_load};
use crate::bounds::bounds;
use crate::error::{Error, Result, SchemeFault};
use crate::source::Source;
use crate::units::Mass;

/// Days between the two sessions of a week: Monday and Thursday, for example.
pub const DAYS_BETWEEN: u32 = 3;

/// What a lighter day takes of the week's load, so that the next heavy day finds the lifter fresh (common practice: a
/// tenth), and what it keeps more in reserve.
const LIGHTER: (f64, u32) = (0.90, EASIER_RESERVE);

/// What a method's day takes less of its usual load for every week, and every round, that is still to come (assumed).
const METHOD_STEP: f64 = 0.025;
/// Weeks of a round in which a method's day rises: all but the easier one.
const RISING_WEEKS: u32 = 3;

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
    let weeks = match request.level() {
        Level::Novice => novice_weeks(&daily, weeks)?,
        _ => (1..=weeks)
            .map(|week| self::week(&recovered(&daily, week), week, weeks))
            .collect::<Result<_>>()?,
    };
    Ok(Block { weeks })
}

/// The request of a week: who is ill or sore now is taken to be well again from the second week on.
fn recovered<'a>(request: &SessionRequest<'a>, week: u32) -> SessionRequest<'a> {
    let mut well = request.with_method(request.method);
    well.wishes = request.wishes;
    well.lift.trainee.unwell_or_sore &= week == 1;
    well
}

/// A novice's weeks: repetitions rise at a load, then the next load that can be set up begins with the fewest again
/// (double progression). Where today's strength allows neither, the week before is done again, and is told so.
fn novice_weeks(request: &SessionRequest, weeks: u32) -> Result<Vec<BlockWeek>> {
    let rules = &request.published.straight.weeks.novice;
    let first = |request: &SessionRequest| {
        let fewest = rules.repetitions.first().copied().unwrap_or(1);
        novice_day(request, rules.share, fewest)
    };
    let mut day = first(&recovered(request, 1))?;
    let mut all = vec![novice_week(1, &day)];
    for week in 2..=weeks {
        let request = recovered(request, week);
        day = match week {
            2 if request.lift.trainee != day.draft.lift.trainee => first(&request)?,
            _ => next_novice_day(&request, &day)?,
        };
        all.push(novice_week(week, &day));
    }
    Ok(all)
}

fn novice_week(week: u32, day: &SessionPlan) -> BlockWeek {
    BlockWeek {
        week,
        easier: false,
        days: days(
            (DayPurpose::Main, day.clone()),
            (DayPurpose::Main, day.clone()),
        ),
    }
}

fn novice_day(request: &SessionRequest, share: f64, repetitions: u32) -> Result<SessionPlan> {
    let aim = DayAim {
        share,
        repetitions,
        reserve: request.wishes.reserve.unwrap_or(RESERVE).max(RESERVE),
        sets: request.guidance().sets,
    };
    straight_day(
        request,
        aim,
        &request.published.straight.weeks.novice.source,
    )
}

/// The load and repetitions of a day's working sets.
fn work_of(day: &SessionPlan) -> (Mass, u32) {
    let set = day.working_sets().next();
    set.map_or((Mass::ZERO, 0), |set| (set.load.total, set.repetitions()))
}

fn next_novice_day(request: &SessionRequest, before: &SessionPlan) -> Result<SessionPlan> {
    let is_held = |remark: &Remark| matches!(remark, Remark::HeldForStrength { .. });
    if before.draft.remarks.iter().any(is_held) {
        return Ok(before.clone());
    }
    let list = &request.published.straight.weeks.novice.repetitions;
    let (load, repetitions) = work_of(before);
    let more = list.iter().find(|count| **count > repetitions);
    let heavier = next_load(request, load);
    let tries = [
        more.map(|more| (load, *more)),
        heavier.map(|heavier| (heavier, list.first().copied().unwrap_or(1))),
    ];
    for (load, repetitions) in tries.into_iter().flatten() {
        // A hair more, so that rounding does not take the load below.
        let share = request.strength().share_of(load) * (1.0 + 1.0e-9);
        if let Ok(day) = novice_day(request, share, repetitions)
            && work_of(&day) == (load, repetitions)
        {
            return Ok(day);
        }
    }
    let mut held = before.draft.clone();
    held.remarks.push(Remark::HeldForStrength {
        repetitions: repetitions + MORE_REPETITIONS,
        reserve: request.reserve(RESERVE),
        next: heavier,
    });
    Ok(SessionPlan::new(held))
}

fn week(request: &SessionRequest, week: u32, weeks: u32) -> Result<BlockWeek> {
    let rules = &request.published.straight.weeks;
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
        let to_come = to_come((week, weeks), rules.deload.every.max(1));
        days(
            (DayPurpose::Overload, method_day(request, to_come)?),
            (
                DayPurpose::Lighter,
                straight_day(request, lighter(aim), source)?,
            ),
        )
    };
    Ok(BlockWeek { week, easier, days })
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

/// How much is still to come before the heaviest day of a method.
#[derive(Debug, Clone, Copy)]
struct ToCome {
    /// Weeks of this round that rise on.
    weeks: u32,
    /// Rounds after this one.
    rounds: u32,
    /// Rounds in all.
    of_rounds: u32,
}

fn to_come((week, weeks): (u32, u32), every: u32) -> ToCome {
    let of_rounds = weeks.div_ceil(every);
    ToCome {
        weeks: (RISING_WEEKS - 1).saturating_sub((week - 1) % every),
        rounds: of_rounds - 1 - (week - 1) / every,
        of_rounds,
    }
}

/// The method of the request, a little less of it in every week and round before the last: of the load, of the window of
/// overloaded lowering, or, where bands and chains stay as they are, of the repetitions.
fn method_day(request: &SessionRequest, to_come: ToCome) -> Result<SessionPlan> {
    let mut day = request.with_method(request.method);
    day.wishes = request.wishes;
    let guidance = request.guidance();
    let (least, most) = request.published.eccentric.overload.shares;
    let steps = to_come.weeks + to_come.rounds;
    let of_steps = RISING_WEEKS - 1 + to_come.of_rounds;
    let aim = DayAim {
        share: least + (most - least) * (1.0 - f64::from(steps) / f64::from(of_steps)),
        repetitions: 1,
        reserve: request.wishes.reserve.unwrap_or(RESERVE) + to_come.weeks + to_come.rounds.min(1),
        sets: guidance.sets,
    };
    match request.method {
        Method::OverloadedLowering | Method::Bands | Method::Chains => day.aim = Some(aim),
        _ => day.ease = 1.0 - METHOD_STEP * f64::from(steps),
    }
    let mut planned = plan(&day)?;
    by_weeks(&mut planned);
    Ok(planned)
}

/// What the weeks say stands in place of a rule of one's own for the next session.
fn by_weeks(planned: &mut SessionPlan) {
    if let Progression::WhenRepetitions {
        repetitions,
        reserve,
        ..
    } = planned.draft.progression
    {
        planned.draft.progression = Progression::ByWeeks {
            repetitions,
            reserve,
        };
    }
}

/// Straight sets as a day of the block asks for them.
fn straight_day(request: &SessionRequest, aim: DayAim, source: &Source) -> Result<SessionPlan> {
    let mut straight = request.with_method(Method::Straight);
    straight.wishes.rest_between = request.wishes.rest_between;
    straight.wishes.velocity_loss = request.wishes.velocity_loss;
    straight.wishes.sets_a_week = request.wishes.sets_a_week;
    straight.aim = Some(aim);
    let mut planned = plan(&straight)?;
    by_weeks(&mut planned);
    planned
        .draft
        .sources
        .push((PlanBasis::Weeks, source.clone()));
    Ok(planned)
}
