//! Cluster sets: groups of one to three repetitions with short rests, against the same set straight.
//!
//! In: a [`Request`] with load and total repetitions. Out: a draft with groups and rests, and with a
//! simulated repetition the prediction of both ways of doing it, repetition by repetition.

use super::method::Method;
use super::phosphocreatine::share_back_range;
use super::plan::{Draft, NamedPrediction, PlannedSet, Tempo, warm_up_sets};
use super::prediction::{Body, predict_set};
use super::repetitions::RepetitionChart;
use super::rests::{between_sets, checked_between_sets, checked_in_cluster};
use super::schemes::{Request, chart_allows};
use super::straight;
use crate::error::Result;
use crate::progress::origin::Origin;
use crate::units::{Duration, rounded};

/// Fewest and most repetitions of a group (common practice).
pub const GROUP: (u32, u32) = (1, 3);

/// Repetitions of the session when none are asked for (assumed: the twelve of Tufano et al. 2016).
pub const USUAL_TOTAL: u32 = 12;

/// Load when none is asked for, share of 1RM (common practice: 80 to 90 %).
pub const USUAL_SHARE: f64 = 0.85;

/// Most repetitions of one cluster set before a full rest (Tufano et al. 2016: sets of 12).
pub const MOST_IN_A_SET: u32 = 12;

/// Customary repetitions of a session by load: lower and upper end of the zone in percent of 1RM, fewest and
/// most repetitions together. Loads below and between the printed zones have no row.
pub const TOTALS: &[(f64, f64, u32, u32)] = &[
    (55.0, 65.0, 18, 30),
    (70.0, 80.0, 12, 24),
    (80.0, 90.0, 10, 20),
    (90.0, 100.0, 2, 10),
];

/// Where [`TOTALS`] comes from.
pub const TOTALS_ORIGIN: Origin = Origin::Read(
    "prilepin_table",
    "a reprint; most others give 4 to 10 instead of 2 to 10 from 90 % on",
);

/// Published studies that the prediction is checked against, in words.
pub const STUDIES: &[(&str, Origin)] = &[
    (
        "clean pull, 5 repetitions, 30 s between them: faster and higher than straight sets",
        Origin::Recalled("haff_2003", "finding"),
    ),
    (
        "squat at 60 %, 3 sets of 12: velocity kept in groups of 2 and 4, better in 2",
        Origin::Read("tufano_2016", "abstract"),
    ),
    (
        "equal total rest spread in other ways: similar averages, singles keep velocity constant",
        Origin::Read("tufano_2017", "abstract"),
    ),
    (
        "clean pull: 9 sets of 2 with 45 s rest are 4 % faster than 3 sets of 6 with 180 s",
        Origin::Read("jukic_tufano_2022", "abstract"),
    ),
];

/// Repetitions of a group when none are asked for: fewer the heavier (common practice within 1 to 3).
#[must_use]
pub fn usual_group(share: f64) -> u32 {
    if share >= 0.90 {
        1
    } else if share >= 0.80 {
        2
    } else {
        3
    }
}

/// Splits a total into groups of at most `group`, as even as can be, larger ones first: 10 in threes is
/// 3, 3, 2, 2.
#[must_use]
pub fn even_groups(total: u32, group: u32) -> Vec<u32> {
    let count = total.div_ceil(group.max(1)).max(1);
    (0..count)
        .map(|index| total / count + u32::from(index < total % count))
        .collect()
}

/// Drafts cluster sets.
///
/// **Fails** when the load is above 1RM or cannot be loaded, and as the oracle does.
pub fn draft(request: &Request) -> Result<Draft> {
    let chart = RepetitionChart::published()?;
    let share = request.liftable_share(USUAL_SHARE)?;
    let load = request.loading.at_most(request.strength().load_at(share))?;
    let real_share = request.strength().share_of(load.total);
    let total = request.total_repetitions.unwrap_or(USUAL_TOTAL);
    let allowed = chart_allows(&chart, real_share);
    let group = request
        .group
        .unwrap_or_else(|| usual_group(real_share))
        .min(total);
    let (rest_within, rest_remark) = checked_in_cluster(request.rest_within)?;
    let rest_between = match request.rest_between {
        Some(rest) => checked_between_sets(rest)?,
        None => between_sets(request.level(), share).1,
    };
    let mut draft = request.draft(Method::Clusters);
    draft.sets = warm_up_sets(load.total, request.loading, &request.strength())?;
    let plain = PlannedSet::work(
        load,
        &request.strength(),
        total,
        rest_between,
        Tempo::STRENGTH,
        "every repetition fast",
    );
    let sets = even_groups(total, MOST_IN_A_SET);
    draft.sets.extend(sets.iter().map(|count| {
        plain
            .clone()
            .in_groups(even_groups(*count, group), rest_within)
    }));
    draft.remarks.extend(rest_remark);
    draft.remarks.extend(group_remark(group, allowed));
    draft.remarks.extend(total_remark(total, real_share));
    draft.remarks.push(recovery_remark(rest_within));
    draft.frequency = straight::guidance_for(request.level()).frequency.to_owned();
    draft.progression =
        "When the last repetition is as fast as the first, add a repetition in all or 2 to 5 % of load.".to_owned();
    draft.sources.push((
        "groups of 1 to 3, 30 s rest".to_owned(),
        Origin::Practice("cluster sets"),
    ));
    draft
        .sources
        .push(("repetitions of a session by load".to_owned(), TOTALS_ORIGIN));
    draft.sources.extend(
        STUDIES
            .iter()
            .map(|(words, origin)| ((*words).to_owned(), *origin)),
    );
    predict_both(request, &mut draft, &sets)?;
    Ok(draft)
}

fn group_remark(group: u32, allowed: Option<u32>) -> Option<String> {
    if group > GROUP.1 {
        return Some(format!(
            "groups of {group} are larger than usual ({} to {})",
            GROUP.0, GROUP.1
        ));
    }
    allowed.filter(|allowed| group >= *allowed).map(|allowed| {
        format!("a group of {group} is already all that the chart allows at this load ({allowed})")
    })
}

fn total_remark(total: u32, share: f64) -> Option<String> {
    let percent = 100.0 * share;
    let zone = TOTALS
        .iter()
        .find(|(low, high, ..)| (*low..=*high).contains(&percent))?;
    let (.., fewest, most) = *zone;
    (!(fewest..=most).contains(&total)).then(|| {
        format!(
            "{total} repetitions at {} % of 1RM lie outside the customary {fewest} to {most} of a session",
            rounded(percent, 0)
        )
    })
}

fn recovery_remark(rest: Duration) -> String {
    let (least, most) = share_back_range(rest);
    format!(
        "In {} s, {} to {} % of the phosphocreatine spent comes back (published recoveries differ that much).",
        rounded(rest.as_s(), 0),
        rounded(100.0 * least, 0),
        rounded(100.0 * most, 0)
    )
}

/// Predicts the sets in groups and the same sets straight, with the same rests between the sets.
fn predict_both(request: &Request, draft: &mut Draft, straight_sets: &[u32]) -> Result<()> {
    let Some(oracle) = request.oracle else {
        return Ok(());
    };
    straight::predict(request, draft)?;
    let Some(work) = draft.sets.last() else {
        return Ok(());
    };
    let mut body = Body::fresh(&oracle.joints);
    let mut sets = Vec::new();
    for count in straight_sets {
        sets.push(predict_set(
            oracle,
            work.load.total,
            &[*count],
            Duration::ZERO,
            &mut body,
        )?);
        body.rest(work.rest_after)?;
    }
    let fatigue = body.trace().to_vec();
    let straight = NamedPrediction {
        name: "straight".to_owned(),
        sets,
        fatigue,
    };
    if let Some(clusters) = draft.predictions.last() {
        draft.remarks.push(comparison(&straight, clusters));
    }
    draft.predictions.push(straight);
    Ok(())
}

fn comparison(straight: &NamedPrediction, clusters: &NamedPrediction) -> String {
    let gain = if straight.mean_velocity_m_s() > 0.0 {
        100.0 * (clusters.mean_velocity_m_s() / straight.mean_velocity_m_s() - 1.0)
    } else {
        0.0
    };
    format!(
        "Predicted: straight, {}; in clusters, {}; over all repetitions asked for, the clusters are {} % faster.",
        fate(straight),
        fate(clusters),
        rounded(gain, 0)
    )
}

/// "repetition 9 stalls", "the last repetition moves at 0.34 m/s".
fn fate(prediction: &NamedPrediction) -> String {
    if let Some(number) = prediction.sets.iter().find_map(|set| set.stalls_at()) {
        return format!("repetition {number} stalls");
    }
    let mut repetitions = prediction.sets.iter().flat_map(|set| &set.repetitions);
    let last = repetitions.rfind(|repetition| repetition.completed);
    let velocity_m_s = last.map_or(0.0, |repetition| repetition.mean_velocity.as_m_s());
    format!(
        "the last repetition moves at {} m/s",
        rounded(velocity_m_s, 2)
    )
}
