//! A block of weeks that go on by a published rule.
//!
//! In: a [`SessionRequest`] and a number of weeks. Out: the sessions of every week, each a whole plan with its
//! cautions. A novice's repetitions rise, then the load (double progression). For others every round has fewer
//! repetitions and more load than the one before, within a round the reserve falls from week to week, and an easier
//! week ends it.

use super::alone::not_alone;
use super::block_days::{
    BlockWeek, DayPurpose, by_weeks, day_back, days, is_coming_back, recovered, share_of,
    straight_day,
};
use super::draft::SessionPlan;
use super::heeded::Wished;
use super::method::Method;
use super::novice_weeks::novice_weeks;
use super::published::WeekRules;
use super::remark::{Progression, Remark};
use super::request::{DayAim, NOVICE_RESERVE, SessionRequest, SessionWishes};
use super::schemes::{EASIER_RESERVE, eased, left_out, plan};
use super::status::Level;
use super::straight::RESERVE;
use crate::bounds::bounds;
use crate::error::{Error, Result, SchemeFault};
use crate::progress::one_rm_now::LayOff;

/// What a lighter day takes of the week's load, so that the next heavy day finds the lifter fresh (common practice: a
/// tenth), and what it keeps more in reserve.
const LIGHTER: (f64, u32) = (0.90, EASIER_RESERVE);

/// What a method's day takes less of its usual load for every week, and every round, that is still to come (assumed).
const METHOD_STEP: f64 = 0.025;
/// Weeks of a round in which a method's day rises: all but the easier one.
const RISING_WEEKS: u32 = 3;

/// A block of weeks.
#[derive(Debug, Clone, PartialEq)]
pub struct Block {
    /// The weeks.
    pub weeks: Vec<BlockWeek>,
}

/// Refuses a block of no weeks, and of more than are planned.
pub fn check_weeks(weeks: u32) -> Result<()> {
    let bound = &bounds().block_weeks;
    if bound.holds(f64::from(weeks)) {
        return Ok(());
    }
    Err(Error::bad(SchemeFault::NoBlock {
        weeks,
        most: bound.most_of_them() as u32,
    }))
}

/// Plans a block: the method of the request once a week beside a lighter day of straight sets; with straight sets a
/// heavy day and a lighter one. A novice gets straight sets on every day and no easier week.
///
/// **Fails** as [`plan`] does, and for no or too many weeks.
pub fn block(request: &SessionRequest, weeks: u32) -> Result<Block> {
    check_weeks(weeks)?;
    let alone = plan(request)?;
    let mut daily = request.with_method(request.method);
    daily.wishes = request.wishes;
    // Two days share what a week allows.
    daily.wishes.sets_a_week = request.wishes.sets_a_week.map(|sets| (sets / 2).max(1));
    let old = request.lift.old_log();
    let made = if old.is_some() { 1 } else { weeks };
    let mut all = match request.level() {
        Level::Novice => {
            if request.method != Method::Straight {
                // Sets of a method that is not planned are not sets of what takes its place.
                daily.wishes.sets = None;
            }
            let mut all = novice_weeks(&daily, made)?;
            let first = all.first_mut().and_then(|week| week.days.first_mut());
            if let Some(day) = first.filter(|_| request.method != Method::Straight) {
                let kept = [Wished::Reserve, Wished::VelocityLoss, Wished::SetsAWeek];
                day.plan.draft.remarks.extend(left_out(request, &kept));
            }
            all
        }
        _ => (1..=made)
            .map(|week| self::week(&daily, week, weeks))
            .collect::<Result<_>>()?,
    };
    let first = all.first_mut().and_then(|week| week.days.first_mut());
    if let Some(day) = first {
        day.plan.draft.remarks.extend(more_in_reserve(request));
    }
    if let Some(since) = old {
        stay_light(&mut all, weeks, since);
        return Ok(Block { weeks: all });
    }
    let first = all.first_mut().and_then(|week| week.days.first_mut());
    if let Some(day) = first.filter(|_| request.level() != Level::Novice) {
        let remark = not_alone(&unshaped(request, alone)?, &day.plan);
        day.plan.draft.remarks.extend(remark.map(Remark::Alone));
    }
    Ok(Block { weeks: all })
}

/// What is kept in reserve in spite of a lower wish.
fn more_in_reserve(request: &SessionRequest) -> Option<Remark> {
    let asked = request.wishes.reserve?;
    if request.level() == Level::Novice {
        let kept = NOVICE_RESERVE;
        return (asked < kept).then_some(Remark::ReserveRaised { asked, kept });
    }
    let reserves = &request.published.straight.weeks.rounds.reserves;
    let (most, least) = (reserves.iter().max()?, reserves.iter().min()?);
    (asked < *most).then_some(Remark::RoundsKeepMore {
        asked,
        kept: (*most, asked.max(*least)),
    })
}

/// The session that is planned alone where nobody wishes for a load or repetitions, neither of which a block heeds.
fn unshaped(request: &SessionRequest, alone: SessionPlan) -> Result<SessionPlan> {
    let wishes = request.wishes;
    if wishes.load.is_none() && wishes.repetitions.is_none() {
        return Ok(alone);
    }
    let mut usual = request.with_method(request.method);
    usual.wishes = SessionWishes {
        load: None,
        repetitions: None,
        ..wishes
    };
    plan(&usual)
}

/// A block from a log that ended before a lay-off: the sessions of its first, easy week, again in every week, because nobody
/// saw what is left of the strength that later weeks would return to.
///
/// **Source.** Common practice: after a lay-off the load follows what is lifted now; how much strength is lost is known for
/// groups, not for one lifter ([`crate::progress::one_rm_now::LAY_OFF_DAYS`]).
fn stay_light(first: &mut [BlockWeek], weeks: u32, since: LayOff) {
    for week in first {
        week.until = weeks;
        for day in &mut week.days {
            day.purpose = DayPurpose::ComingBack;
            day.plan.draft.progression = Progression::AfterTheFirstLog;
            let remark = Remark::StaysLight { since };
            day.plan.draft.remarks.insert(0, remark);
        }
    }
}

/// A week: `asked` is the request as it was put, with who is unwell now.
fn week(asked: &SessionRequest, week: u32, weeks: u32) -> Result<BlockWeek> {
    let request = &recovered(asked, week);
    let rules = &request.published.straight.weeks;
    let easier = week.is_multiple_of(rules.deload.every);
    let aim = round_aim(request, rules, (week, weeks))?;
    let source = &rules.rounds.source;
    let straight = |aim: DayAim| straight_day(request, aim, source);
    let days = if is_coming_back(asked, week) {
        let back = day_back(request, aim, &rules.deload)?;
        let lighter = lighter(below(aim, &back, LIGHTER.0));
        days(
            (DayPurpose::ComingBack, back),
            (DayPurpose::Lighter, straight(lighter)?),
        )
    } else if easier {
        let usual = straight(aim)?;
        let aim = eased(aim, &rules.deload);
        let aim = below(aim, &usual, rules.deload.left.0);
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
        let main = straight(aim)?;
        let lighter = below(lighter(aim), &main, LIGHTER.0);
        days(
            (DayPurpose::Main, main),
            (DayPurpose::Lighter, straight(lighter)?),
        )
    } else {
        let purpose = DayPurpose::Of(request.method);
        days(
            (purpose, method_day(request, rules, (week, weeks))?),
            (DayPurpose::Lighter, straight(lighter(aim))?),
        )
    };
    let mut days = days;
    if week < weeks && (week + 1).is_multiple_of(rules.deload.every) {
        for day in &mut days {
            if let Progression::ByWeeks { easier_next, .. } = &mut day.plan.draft.progression {
                *easier_next = true;
            }
        }
    }
    Ok(BlockWeek {
        week,
        until: week,
        easier,
        days,
    })
}

/// The aim with no more than a share of the load of another day, which may be lighter than was aimed at.
fn below(aim: DayAim, other: &SessionPlan, share: f64) -> DayAim {
    let most = share_of(other).map_or(aim.share, |other| other * share);
    DayAim {
        share: aim.share.min(most),
        ..aim
    }
}

/// A week of a round: the load that the chart gives for its repetitions and those kept in reserve.
fn round_aim(
    request: &SessionRequest,
    rules: &WeekRules,
    (week, weeks): (u32, u32),
) -> Result<DayAim> {
    let every = rules.deload.every.max(1);
    let list = rules.rounds.repetitions_of(request.lift.one_joint);
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
/// overloaded lowering, or, of bands and chains, of the plates beside them.
fn method_day(
    request: &SessionRequest,
    rules: &WeekRules,
    (week, weeks): (u32, u32),
) -> Result<SessionPlan> {
    let to_come = to_come((week, weeks), rules.deload.every.max(1));
    let mut day = request.with_method(request.method);
    day.wishes = request.wishes;
    let (least, most) = request.published.eccentric.overload.shares;
    // One set less for every week of the round that is still to come (assumed).
    let (_, most_sets) = request.published.eccentric.overload.sets;
    let steps = to_come.weeks + to_come.rounds;
    let of_steps = RISING_WEEKS - 1 + to_come.of_rounds;
    match request.method {
        Method::Bands | Method::Chains => {
            day.aim = Some(accommodating_aim(request, rules, (week, weeks))?);
        }
        Method::OverloadedLowering => {
            day.aim = Some(DayAim {
                share: least + (most - least) * (1.0 - f64::from(steps) / f64::from(of_steps)),
                repetitions: 1,
                reserve: request.wishes.reserve.unwrap_or(RESERVE)
                    + to_come.weeks
                    + to_come.rounds.min(1),
                sets: (most_sets - to_come.weeks).max(1),
            });
        }
        _ => day.ease = request.ease * (1.0 - METHOD_STEP * f64::from(steps)),
    }
    let mut planned = plan(&day)?;
    by_weeks(&mut planned);
    Ok(planned)
}

/// A day with bands or chains: repetitions and reserve as the round has them; the effort at the hardest place rises as the
/// straight sets of the weeks do, to that of the whole setup in the heaviest week.
fn accommodating_aim(
    request: &SessionRequest,
    rules: &WeekRules,
    (week, weeks): (u32, u32),
) -> Result<DayAim> {
    let aim = round_aim(request, rules, (week, weeks))?;
    let rising = (1..=weeks).filter(|week| !week.is_multiple_of(rules.deload.every));
    let shares = rising.map(|week| round_aim(request, rules, (week, weeks)).map(|aim| aim.share));
    let heaviest = shares
        .collect::<Result<Vec<f64>>>()?
        .into_iter()
        .fold(aim.share, f64::max);
    let whole = request.setup.map_or(1.0, |setup| setup.max_effort);
    Ok(DayAim {
        share: aim.share / heaviest * whole,
        ..aim
    })
}
