//! A draft made to hold: its sets are simulated and looked up in the chart, and repetitions or loads are lowered until
//! every set keeps its reserve.
//!
//! In: a [`SessionRequest`]. Out: a draft that the simulation lifts as planned, with what was lowered among its
//! remarks; or a refusal where figures that were asked for do not hold.

use super::draft::Draft;
use super::drafting::drafted;
use super::last_session::shows;
use super::method::Method;
use super::planned_set::{PlannedSet, SetKind};
use super::remark::{ChartRemark, Kept, Remark};
use super::repetitions::RepetitionChart;
use super::request::SessionRequest;
use super::status::Level;
use crate::error::{Error, Result, SchemeFault};

/// Steps in which loads are eased, share of the usual load.
const EASE_STEP: f64 = 0.02;
/// Most steps: down to half the usual load.
const MOST_STEPS: u32 = 25;
/// Fewest repetitions of a strength set before the load is lowered instead (common practice: triples).
const FEWEST: u32 = 3;

/// The draft of a scheme, lowered until it holds.
///
/// **Fails** where load and repetitions were both asked for and do not hold, where nothing lighter does, and as the
/// scheme does.
pub(super) fn fitted(request: &SessionRequest) -> Result<Draft> {
    let chart = request.chart()?;
    let draft = drafted(request)?;
    if holds(request, &chart, &draft) || is_shown(request, &draft)? {
        return Ok(draft);
    }
    let wishes = &request.wishes;
    let fixed_load = wishes.load.is_some() || request.method.is_accommodating();
    let fixed_repetitions = match request.method {
        Method::Clusters => wishes.total_repetitions.is_some(),
        _ => wishes.repetitions.is_some(),
    };
    let by_repetitions = request.method == Method::Straight || request.method.is_accommodating();
    if fixed_load {
        let fewer = match by_repetitions {
            true => fewer_repetitions(request, &chart, &draft, 1)?,
            false => None,
        };
        return match fewer {
            Some(fewer) if !fixed_repetitions => Ok(fewer),
            found => Err(not_held(&draft, found.as_ref())),
        };
    }
    // A novice's weeks keep their load and do a repetition less; rounds keep their repetitions and take load off.
    let keeps_load = request.aim.is_none() || request.level() == Level::Novice;
    if by_repetitions && !fixed_repetitions && keeps_load {
        let fewest = match request.level() {
            Level::Novice => request.published.straight.novice.repetitions.0,
            _ => FEWEST,
        };
        return nearest(request, &chart, &draft, fewest);
    }
    match lighter(request, &chart, &draft) {
        // Nothing lighter can be loaded: fewer repetitions than usual are better than none.
        Err(fault) if by_repetitions && !fixed_repetitions => {
            fewer_repetitions(request, &chart, &draft, 1)?.ok_or(fault)
        }
        found => found,
    }
}

/// Whether the scheme's own loads and repetitions hold, nothing lowered.
///
/// **Fails** as the scheme does.
pub(super) fn is_held(request: &SessionRequest) -> Result<bool> {
    let request = &request.only_if_it_holds();
    Ok(holds(request, &request.chart()?, &drafted(request)?))
}

fn work(draft: &Draft) -> impl Iterator<Item = &PlannedSet> {
    draft.sets.iter().filter(|set| set.kind == SetKind::Work)
}

/// Whether every working set reaches lockout with its reserve, in the simulation and by the chart; sets with rests
/// inside only have to reach it, since the chart is of sets without. Lowered sets keep a reserve of their own.
fn holds(request: &SessionRequest, chart: &RepetitionChart, draft: &Draft) -> bool {
    if draft.method == Method::OverloadedLowering {
        return true;
    }
    let predicted = draft.predictions.first();
    let stalls = predicted.is_some_and(|prediction| prediction.stall().is_some());
    !stalls && slows(request, draft).is_none() && keeps_reserve(chart, draft)
}

/// Whether a novice's log shows every working set of a day.
fn is_shown(request: &SessionRequest, draft: &Draft) -> Result<bool> {
    if request.aim.is_none() || draft.method != Method::Straight || slows(request, draft).is_some()
    {
        return Ok(false);
    }
    for set in work(draft) {
        if !shows(request, set.load.total, set.repetitions(), set.reserve)? {
            return Ok(false);
        }
    }
    Ok(true)
}

/// The loss of velocity at which sets were to end, where one of them loses more.
fn slows(request: &SessionRequest, draft: &Draft) -> Option<f64> {
    let most = request.wishes.velocity_loss?;
    let predicted = draft.predictions.first()?;
    let slows = predicted.sets.iter().any(|set| set.velocity_loss() > most);
    slows.then_some(most)
}

/// Whether every working set without rests inside keeps its reserve, by the chart and in the simulation.
fn keeps_reserve(chart: &RepetitionChart, draft: &Draft) -> bool {
    let short = |set: &PlannedSet| {
        let needed = set.repetitions() + set.reserve;
        let by_model = set.allowed.and_then(|allowed| allowed.by_model);
        let by_chart = chart.allowed_at(set.hardness());
        set.groups.len() == 1
            && [by_model, by_chart]
                .into_iter()
                .flatten()
                .any(|allowed| allowed < needed)
    };
    !work(draft).any(short)
}

/// What a lower load or count keeps that the draft one step above it does not.
fn kept(request: &SessionRequest, chart: &RepetitionChart, draft: &Draft) -> Kept {
    let reserves = || work(draft).map(|set| set.reserve);
    let (least, most) = (reserves().min(), reserves().max());
    match slows(request, draft) {
        Some(loss) if keeps_reserve(chart, draft) => Kept::Velocity(loss),
        _ if least == most => Kept::Reserve(most.unwrap_or(0)),
        _ => Kept::OwnReserves,
    }
}

/// The heaviest load of a draft over that of another, as shares of the 1RM.
fn share_left(found: &Draft, usual: &Draft) -> f64 {
    let heaviest = |draft: &Draft| work(draft).map(|set| set.share).fold(0.0, f64::max);
    heaviest(found) / heaviest(usual).max(f64::MIN_POSITIVE)
}

/// The most repetitions that hold at the load, down to the fewest; `None` where those do not.
fn fewer_repetitions(
    request: &SessionRequest,
    chart: &RepetitionChart,
    draft: &Draft,
    fewest: u32,
) -> Result<Option<Draft>> {
    let usual = work(draft).map(PlannedSet::repetitions).max().unwrap_or(1);
    let mut too_many = draft.clone();
    for repetitions in (fewest..usual).rev() {
        let mut fewer = request.with_method(request.method);
        fewer.wishes = request.wishes;
        fewer.wishes.repetitions = Some(repetitions);
        let mut found = drafted(&fewer)?;
        if holds(request, chart, &found) {
            found
                .remarks
                .push(Remark::Chart(ChartRemark::FewerRepetitions {
                    usual,
                    planned: repetitions,
                    kept: kept(request, chart, &too_many),
                }));
            return Ok(Some(found));
        }
        too_many = found;
    }
    Ok(None)
}

/// Of all loads and repetitions that hold, the heaviest load with at least the fewest repetitions, and the most of them
/// there: loads are eased in steps only where not even the fewest hold.
fn nearest(
    request: &SessionRequest,
    chart: &RepetitionChart,
    usual: &Draft,
    fewest: u32,
) -> Result<Draft> {
    let reserve = work(usual).map(|set| set.reserve).max().unwrap_or(0);
    let mut tried = usual.clone();
    for steps in 0..=MOST_STEPS {
        let mut easier = request.with_method(request.method);
        easier.wishes = request.wishes;
        easier.ease = request.ease * (1.0 - EASE_STEP * f64::from(steps));
        if steps > 0 {
            // Where nothing lighter can be loaded, fewer repetitions than usual are better than none.
            let Ok(next) = drafted(&easier) else { break };
            if work(&next).eq(work(&tried)) {
                continue;
            }
            let kept = kept(request, chart, &tried);
            let found = match holds(request, chart, &next) {
                true => Some(next.clone()),
                false => fewer_repetitions(&easier, chart, &next, fewest)?,
            };
            tried = next;
            if let Some(mut found) = found {
                let left = share_left(&found, usual);
                let fewest = Some(fewest);
                let remark = ChartRemark::Eased { left, fewest, kept };
                found.remarks.push(Remark::Chart(remark));
                return Ok(found);
            }
        } else if let Some(fewer) = fewer_repetitions(&easier, chart, &tried, fewest)? {
            return Ok(fewer);
        }
    }
    let nothing = || Error::no_answer(SchemeFault::NothingHolds { reserve });
    let draft = drafted(request)?;
    fewer_repetitions(request, chart, &draft, 1)?.ok_or_else(nothing)
}

/// The heaviest draft that holds, loads eased in steps.
fn lighter(request: &SessionRequest, chart: &RepetitionChart, draft: &Draft) -> Result<Draft> {
    let reserve = work(draft).map(|set| set.reserve).max().unwrap_or(0);
    let eased = |steps: u32| {
        let mut easier = request.with_method(request.method);
        easier.wishes = request.wishes;
        easier.ease = request.ease * (1.0 - EASE_STEP * f64::from(steps));
        drafted(&easier)
    };
    let nothing = || Error::no_answer(SchemeFault::NothingHolds { reserve });
    // The first step that holds lies above `low` and not above `high`.
    let (mut low, mut high) = (0, MOST_STEPS);
    let mut found = eased(high);
    while found.is_err() && high > 1 {
        high -= 1;
        found = eased(high);
    }
    let mut found = found.map_err(|_| nothing())?;
    if !holds(request, chart, &found) {
        return Err(nothing());
    }
    let mut too_heavy = draft.clone();
    while high - low > 1 {
        let middle = u32::midpoint(low, high);
        let tried = eased(middle)?;
        if holds(request, chart, &tried) {
            (high, found) = (middle, tried);
        } else {
            (low, too_heavy) = (middle, tried);
        }
    }
    let left = share_left(&found, draft);
    let kept = kept(request, chart, &too_heavy);
    let fixed = request.wishes.repetitions.is_some() || request.aim.is_some();
    let fewest = fixed.then(|| work(&found).map(PlannedSet::repetitions).min());
    let fewest = fewest.flatten();
    let remark = ChartRemark::Eased { left, fewest, kept };
    found.remarks.push(Remark::Chart(remark));
    Ok(found)
}

fn not_held(draft: &Draft, found: Option<&Draft>) -> Error {
    let heaviest = work(draft).max_by(|a, b| a.hardness().total_cmp(&b.hardness()));
    let most = |draft: &Draft| work(draft).map(PlannedSet::repetitions).max();
    Error::no_answer(SchemeFault::NotHeld {
        load: heaviest.map_or(draft.lift.one_rm, |set| set.load.total),
        repetitions: most(draft).unwrap_or(0),
        reserve: heaviest.map_or(0, |set| set.reserve),
        holds: found.and_then(most),
    })
}
