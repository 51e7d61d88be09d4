//! The pyramid: rising loads and falling repetitions up to a top set.
//!
//! In: a [`Request`]. Out: a draft in which each set's load is what the published chart gives for its
//! repetitions and those kept in reserve; compared with the fatigue that the sets before carry over.

use super::method::Method;
use super::plan::{Draft, PlannedSet, SetKind, Tempo, warm_up_sets};
use super::repetitions::RepetitionChart;
use super::rests::{between_sets, checked_between_sets};
use super::schemes::{Request, chart_allows};
use super::status::Level;
use super::straight;
use crate::error::{Error, Result};
use crate::progress::origin::Origin;
use crate::units::rounded;

/// Repetitions of the sets, ascending pyramid (common practice): 10, 8, 6, 4, 2.
pub const REPETITIONS: &[u32] = &[10, 8, 6, 4, 2];

/// Repetitions kept in reserve before the top set, and in it (common practice: "only the last set is near a
/// repetition maximum if the earlier ones are kept one or two short").
pub const RESERVES: (u32, u32) = (2, 1);

/// An old pyramid as published, in shares of the 10RM, for comparison.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PublishedPyramid {
    /// Its name.
    pub name: &'static str,
    /// Percent of the 10RM of each set of ten.
    pub percent_of_10rm: [f64; 3],
    /// Where it comes from.
    pub origin: Origin,
}

/// Rising and falling pyramids as published.
pub const PUBLISHED: &[PublishedPyramid] = &[
    PublishedPyramid {
        name: "DeLorme and Watkins 1948, rising",
        percent_of_10rm: [50.0, 75.0, 100.0],
        origin: Origin::Recalled("delorme_watkins_1948", "three sets of ten"),
    },
    PublishedPyramid {
        name: "Zinovieff 1951, falling (Oxford)",
        percent_of_10rm: [100.0, 75.0, 50.0],
        origin: Origin::Recalled("zinovieff_1951", "the textbook's short form of ten sets"),
    },
];

/// Drafts an ascending pyramid; `repetitions` of the request is the top set's, `load` its load.
///
/// **Fails** when the top set asked for is above 1RM, or has more repetitions than the set before it.
pub fn draft(request: &Request) -> Result<Draft> {
    let chart = RepetitionChart::published()?;
    let steps = steps(request)?;
    let mut draft = request.draft(Method::Pyramid);
    for (index, repetitions) in steps.iter().enumerate() {
        let top = index + 1 == steps.len();
        let reserve = if top { RESERVES.1 } else { RESERVES.0 };
        let usual = chart.share_at(f64::from(repetitions + reserve))?;
        let share = if top {
            request.liftable_share(usual)?
        } else {
            usual
        };
        draft.sets.push(set(request, share, *repetitions, top)?);
    }
    keep_rising(&mut draft)?;
    let first = draft.sets[0].load.total;
    let mut sets = warm_up_sets(first, request.loading, &request.strength())?;
    sets.append(&mut draft.sets);
    draft.sets = sets;
    draft.frequency = straight::guidance_for(request.level()).frequency.to_owned();
    draft.progression =
        "When the top set has two repetitions in reserve, raise every load by 2 to 5 %.".to_owned();
    draft.sources.push((
        "repetitions 10, 8, 6, 4, 2".to_owned(),
        Origin::Practice("ascending pyramid"),
    ));
    draft.remarks.extend(beyond_chart(&chart, &draft));
    straight::predict(request, &mut draft)?;
    draft.remarks.extend(widest_gap(&draft));
    Ok(draft)
}

/// Where chart and fatigue model differ most in what a set allows.
fn widest_gap(draft: &Draft) -> Option<String> {
    let work = draft.sets.iter().filter(|set| set.kind == SetKind::Work);
    let gaps = (1..).zip(work).filter_map(|(number, set): (u32, _)| {
        let allowed = set.allowed?;
        let (chart, model) = (allowed.by_chart?, f64::from(allowed.by_model?));
        Some((number, chart, model))
    });
    let (number, chart, model) = gaps.max_by(|a, b| {
        let gap = |of: &(u32, f64, f64)| (of.1 - of.2).abs();
        gap(a).total_cmp(&gap(b)).then(b.0.cmp(&a.0))
    })?;
    let words = format!(
        "set {number}, {} by the chart when rested, {} by the fatigue model after the sets before",
        rounded(chart, 1),
        rounded(model, 0)
    );
    Some(if (chart - model).abs() < 1.0 {
        format!("Chart and fatigue model agree within a repetition to failure (widest: {words}).")
    } else {
        format!("Chart and fatigue model disagree most in {words} (repetitions to failure).")
    })
}

/// A top set that was asked for may be more than the chart allows even a rested lifter.
fn beyond_chart(chart: &RepetitionChart, draft: &Draft) -> Option<String> {
    let top = draft.sets.last()?;
    let allowed = chart_allows(chart, top.share)?;
    (top.repetitions() > allowed).then(|| {
        format!(
            "top set: {} repetitions at {} % of 1RM are more than the chart allows ({allowed})",
            top.repetitions(),
            rounded(100.0 * top.share, 0)
        )
    })
}

/// Falling repetitions: the usual ones down to the top set's; an intermediate lifter stops at four.
fn steps(request: &Request) -> Result<Vec<u32>> {
    let usual_top = if request.level() == Level::Advanced {
        2
    } else {
        4
    };
    let top = request.repetitions.unwrap_or(usual_top);
    let mut steps: Vec<u32> = REPETITIONS
        .iter()
        .copied()
        .filter(|repetitions| *repetitions > top)
        .collect();
    steps.push(top);
    if steps.len() < 2 {
        return Err(Error::bad(format!(
            "a top set of {top} repetitions leaves no set below it"
        ))
        .hint(format!(
            "the top set of a pyramid has fewer than {} repetitions",
            REPETITIONS[0]
        )));
    }
    let wanted = request.sets.map_or(steps.len(), |sets| sets as usize);
    if wanted < 2 || wanted > steps.len() {
        return Err(Error::bad(format!(
            "{wanted} sets make no pyramid with a top set of {top}"
        ))
        .hint(format!("2 to {} sets", steps.len())));
    }
    Ok(steps.split_off(steps.len() - wanted))
}

fn set(request: &Request, share: f64, repetitions: u32, top: bool) -> Result<PlannedSet> {
    let load = request.loading.at_most(request.strength().load_at(share))?;
    let rest = match request.rest_between {
        Some(rest) => checked_between_sets(rest)?,
        None => between_sets(request.level(), share).1,
    };
    let intent = if top {
        "top set, one in reserve"
    } else {
        "build up, two in reserve"
    };
    Ok(PlannedSet::work(
        load,
        &request.strength(),
        repetitions,
        rest,
        Tempo::STRENGTH,
        intent,
    ))
}

/// A pyramid whose loads do not rise is none: a top set that was asked for may lie below the steps.
fn keep_rising(draft: &mut Draft) -> Result<()> {
    let top_kg = draft.sets.last().map_or(0.0, |set| set.load.total.as_kg());
    let last = draft.sets.len().saturating_sub(1);
    let mut kept = Vec::new();
    for (index, set) in draft.sets.drain(..).enumerate() {
        let before_kg = kept
            .last()
            .map_or(0.0, |set: &PlannedSet| set.load.total.as_kg());
        let kg = set.load.total.as_kg();
        if index == last || (kg > before_kg && kg < top_kg) {
            kept.push(set);
        }
    }
    draft.sets = kept;
    if draft.sets.len() < 2 {
        return Err(
            Error::no_answer("the loads of this gym leave no steps below the top set")
                .hint("use smaller plates, or straight sets"),
        );
    }
    Ok(())
}
