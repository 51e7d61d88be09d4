//! The pyramid: rising loads and falling repetitions up to a top set.
//!
//! In: a [`SessionRequest`]. Out: a draft in which each set's load is what the published chart gives for its
//! repetitions and those kept in reserve; compared with the fatigue that the sets before carry over.

use super::draft::Draft;
use super::method::Method;
use super::planned_set::{PlannedSet, SetIntent, SetKind, warm_up_sets};
use super::predicted_sets::predict;
use super::remark::{ChartRemark, PlanBasis, Progression, Remark};
use super::repetitions::RepetitionChart;
use super::request::SessionRequest;
use super::status::Level;
use crate::error::{Error, Result, SchemeFault};

/// Drafts an ascending pyramid; `repetitions` of the request is the top set's, `load` its load.
///
/// **Fails** when the top set asked for is above 1RM, or has more repetitions than the set before it.
pub fn draft(request: &SessionRequest) -> Result<Draft> {
    let chart = request.chart()?;
    let frequency = request.guidance().frequency();
    let mut draft = request.draft(Method::Pyramid, frequency, Progression::WhenTopSetIsEasy);
    let steps = keep_rising(sets(request, &chart)?)?;
    let first = steps[0].load.total;
    draft.sets = warm_up_sets(first, request.loading, &request.strength())?;
    draft.sets.extend(steps);
    let source = request.published.pyramid.source.clone();
    draft.sources.push((PlanBasis::PyramidSteps, source));
    draft.remarks.extend(beyond_chart(&chart, &draft));
    predict(request, &mut draft)?;
    draft.remarks.extend(widest_gap(&draft));
    Ok(draft)
}

/// Where chart and fatigue model differ most in what a set allows.
fn widest_gap(draft: &Draft) -> Option<Remark> {
    let work = draft.sets.iter().filter(|set| set.kind == SetKind::Work);
    let gaps = (1..).zip(work).filter_map(|(number, set): (u32, _)| {
        let allowed = set.allowed?;
        let (chart, model) = (allowed.by_chart?, f64::from(allowed.by_model?));
        Some((number, chart, model))
    });
    let (set, by_chart, by_model) = gaps.max_by(|a, b| {
        let gap = |of: &(u32, f64, f64)| (of.1 - of.2).abs();
        gap(a).total_cmp(&gap(b)).then(b.0.cmp(&a.0))
    })?;
    Some(Remark::Chart(ChartRemark::WidestGap {
        set,
        by_chart,
        by_model,
    }))
}

/// A top set that was asked for may be more than the chart allows even a rested lifter.
fn beyond_chart(chart: &RepetitionChart, draft: &Draft) -> Option<Remark> {
    let top = draft.sets.last()?;
    let allowed = chart.allowed_at(top.share)?;
    (top.repetitions() > allowed).then_some(Remark::Chart(ChartRemark::TopSetBeyond {
        repetitions: top.repetitions(),
        share: top.share,
        allowed,
    }))
}

/// Falling repetitions: the usual ones down to the top set's; an intermediate lifter stops at four.
fn steps(request: &SessionRequest) -> Result<Vec<u32>> {
    let usual_top = if request.level() == Level::Advanced {
        2
    } else {
        4
    };
    let top = request.wishes.repetitions.unwrap_or(usual_top);
    let usual = &request.published.pyramid.repetitions;
    let mut steps: Vec<u32> = usual
        .iter()
        .copied()
        .filter(|repetitions| *repetitions > top)
        .collect();
    steps.push(top);
    if steps.len() < 2 {
        return Err(Error::bad(SchemeFault::NoStepBelow {
            top,
            fewer_than: usual[0],
        }));
    }
    let most = steps.len();
    let sets = request.wishes.sets.map_or(most, |sets| sets as usize);
    if sets < 2 || sets > most {
        return Err(Error::bad(SchemeFault::NoPyramid { sets, top, most }));
    }
    Ok(steps.split_off(most - sets))
}

/// The sets from the longest to the top set.
fn sets(request: &SessionRequest, chart: &RepetitionChart) -> Result<Vec<PlannedSet>> {
    let steps = steps(request)?;
    let last = steps.len() - 1;
    let reserves = request.published.pyramid.reserves;
    let set = |(index, repetitions): (usize, &u32)| {
        let top = index == last;
        let reserve = if top { reserves.1 } else { reserves.0 };
        let usual = chart.share_at(f64::from(repetitions + reserve))?;
        let share = if top {
            request.liftable_share(usual)?
        } else {
            usual * request.ease
        };
        set(request, share, *repetitions, top)
    };
    steps.iter().enumerate().map(set).collect()
}

fn set(request: &SessionRequest, share: f64, repetitions: u32, top: bool) -> Result<PlannedSet> {
    let load = request.loading.at_most(request.strength().load_at(share))?;
    let rest = request.rest_between(share)?;
    let intent = if top {
        SetIntent::TopSet
    } else {
        SetIntent::BuildUp
    };
    let strength = request.strength();
    let reserves = request.published.pyramid.reserves;
    let reserve = if top { reserves.1 } else { reserves.0 };
    let set = PlannedSet::work(load, &strength, repetitions, rest, intent);
    Ok(set.keeping(request.reserve(reserve)))
}

/// A pyramid whose loads do not rise is none: a top set that was asked for may lie below the steps.
fn keep_rising(sets: Vec<PlannedSet>) -> Result<Vec<PlannedSet>> {
    let top_kg = sets.last().map_or(0.0, |set| set.load.total.as_kg());
    let last = sets.len().saturating_sub(1);
    let mut kept: Vec<PlannedSet> = Vec::new();
    for (index, set) in sets.into_iter().enumerate() {
        let before_kg = kept.last().map_or(0.0, |set| set.load.total.as_kg());
        let kg = set.load.total.as_kg();
        if index == last || (kg > before_kg && kg < top_kg) {
            kept.push(set);
        }
    }
    if kept.len() < 2 {
        return Err(Error::no_answer(SchemeFault::NoStepsInGym));
    }
    Ok(kept)
}
