//! Cluster sets: groups of one to three repetitions with short rests, against the same set straight.
//!
//! In: a [`SessionRequest`] with load and total repetitions. Out: a draft with groups and rests, and with a
//! simulated repetition the prediction of both ways of doing it, repetition by repetition.

use super::draft::{Draft, Predicted, SessionPrediction};
use super::method::Method;
use super::oracle::RepOracle;
use super::phosphocreatine::share_back_range;
use super::planned_set::{PlannedSet, SetIntent, warm_up_sets};
use super::predicted_sets::predict;
use super::prediction::{TiringBody, predict_set};
use super::remark::{ClusterRemark, Fate, PlanBasis, Progression, Remark};
use super::repetitions::RepetitionChart;
use super::request::SessionRequest;
use super::rests::{IN_CLUSTER, between_sets, checked_between_sets, checked_in_cluster};
use super::straight::guidance_for;
use crate::error::Result;
use crate::progress::origin::Origin;
use crate::setups::Loading;
use crate::units::{Duration, Mass};

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

/// Load, groups and rests of a cluster session.
struct Clusters {
    load: Loading,
    share: f64,
    total: u32,
    group: u32,
    allowed: Option<u32>,
    rest_within: Duration,
    rest_between: Duration,
}

fn clusters(request: &SessionRequest) -> Result<Clusters> {
    let wishes = &request.wishes;
    let share = request.liftable_share(USUAL_SHARE)?;
    let load = request.loading.at_most(request.strength().load_at(share))?;
    let real_share = request.strength().share_of(load.total);
    let total = wishes.total_repetitions.unwrap_or(USUAL_TOTAL);
    let group = wishes.group.unwrap_or_else(|| usual_group(real_share));
    Ok(Clusters {
        load,
        share: real_share,
        total,
        group: group.min(total),
        allowed: RepetitionChart::published()?.allowed_at(real_share),
        rest_within: checked_in_cluster(wishes.rest_within)?,
        rest_between: match wishes.rest_between {
            Some(rest) => checked_between_sets(rest)?,
            None => between_sets(request.level(), share).1,
        },
    })
}

/// Drafts cluster sets.
///
/// **Fails** when the load is above 1RM or cannot be loaded, and as the oracle does.
pub fn draft(request: &SessionRequest) -> Result<Draft> {
    let clusters = clusters(request)?;
    let frequency = guidance_for(request.level()).frequency;
    let mut draft = request.draft(Method::Clusters, frequency, Progression::WhenLastIsFast);
    draft.sets = warm_up_sets(clusters.load.total, request.loading, &request.strength())?;
    let plain = PlannedSet::work(
        clusters.load.clone(),
        &request.strength(),
        clusters.total,
        clusters.rest_between,
        SetIntent::EveryRepetitionFast,
    );
    let sets = even_groups(clusters.total, MOST_IN_A_SET);
    draft.sets.extend(sets.iter().map(|count| {
        let groups = even_groups(*count, clusters.group);
        plain.clone().in_groups(groups, clusters.rest_within)
    }));
    draft.remarks.extend(remarks(&clusters));
    draft.sources.extend(sources());
    predict_both(request, &mut draft, &sets)?;
    Ok(draft)
}

fn remarks(clusters: &Clusters) -> Vec<Remark> {
    let mut remarks = Vec::new();
    remarks.extend(rest_remark(clusters.rest_within));
    remarks.extend(group_remark(clusters.group, clusters.allowed));
    remarks.extend(total_remark(clusters.total, clusters.share));
    remarks.push(Remark::Cluster(ClusterRemark::PhosphocreatineBack {
        rest: clusters.rest_within,
        shares: share_back_range(clusters.rest_within),
    }));
    remarks
}

fn sources() -> Vec<(PlanBasis, Origin)> {
    let mut sources = vec![
        (PlanBasis::ClusterGroups, Origin::Practice("cluster sets")),
        (PlanBasis::SessionTotals, TOTALS_ORIGIN),
    ];
    let studies = STUDIES.iter();
    sources
        .extend(studies.map(|(words, origin)| (PlanBasis::Finding((*words).to_owned()), *origin)));
    sources
}

fn rest_remark(rest: Duration) -> Option<Remark> {
    let (least_s, most_s) = (IN_CLUSTER.least_s, IN_CLUSTER.most_s);
    let inside = (least_s..=most_s).contains(&rest.as_s());
    (!inside).then_some(Remark::Cluster(ClusterRemark::Rest {
        rest,
        least: Duration::from_s(least_s),
        most: Duration::from_s(most_s),
    }))
}

fn group_remark(group: u32, allowed: Option<u32>) -> Option<Remark> {
    if group > GROUP.1 {
        return Some(Remark::Cluster(ClusterRemark::LargeGroup {
            group,
            usual: GROUP,
        }));
    }
    allowed
        .filter(|allowed| group >= *allowed)
        .map(|allowed| Remark::Cluster(ClusterRemark::GroupAtLimit { group, allowed }))
}

fn total_remark(total: u32, share: f64) -> Option<Remark> {
    let percent = 100.0 * share;
    let zone = TOTALS
        .iter()
        .find(|(low, high, ..)| (*low..=*high).contains(&percent))?;
    let (.., fewest, most) = *zone;
    (!(fewest..=most).contains(&total)).then_some(Remark::Cluster(ClusterRemark::UnusualTotal {
        total,
        share,
        usual: (fewest, most),
    }))
}

/// Predicts the sets in groups and the same sets straight, with the same rests between the sets.
fn predict_both(request: &SessionRequest, draft: &mut Draft, straight_sets: &[u32]) -> Result<()> {
    let Some(oracle) = request.oracle else {
        return Ok(());
    };
    predict(request, draft)?;
    let Some(work) = draft.sets.last() else {
        return Ok(());
    };
    let (load, rest) = (work.load.total, work.rest_after);
    let straight = straight_instead(oracle, load, rest, straight_sets)?;
    if let Some(clusters) = draft.predictions.last() {
        draft.remarks.push(comparison(&straight, clusters));
    }
    draft.predictions.push(straight);
    Ok(())
}

fn straight_instead(
    oracle: &RepOracle,
    load: Mass,
    rest: Duration,
    counts: &[u32],
) -> Result<SessionPrediction> {
    let mut body = TiringBody::fresh(&oracle.joints);
    let mut sets = Vec::new();
    for count in counts {
        let set = predict_set(oracle, load, &[*count], Duration::ZERO, &mut body)?;
        sets.push(set);
        body.rest(rest)?;
    }
    Ok(SessionPrediction {
        of: Predicted::By(Method::Straight),
        sets,
        fatigue: body.trace().to_vec(),
    })
}

fn comparison(straight: &SessionPrediction, clusters: &SessionPrediction) -> Remark {
    let gain_percent = if straight.mean_velocity_m_s() > 0.0 {
        100.0 * (clusters.mean_velocity_m_s() / straight.mean_velocity_m_s() - 1.0)
    } else {
        0.0
    };
    Remark::Cluster(ClusterRemark::AgainstStraight {
        straight: fate(straight),
        clusters: fate(clusters),
        gain_percent,
    })
}

fn fate(prediction: &SessionPrediction) -> Fate {
    if let Some(number) = prediction.sets.iter().find_map(|set| set.stalls_at()) {
        return Fate::Stalls(number);
    }
    let mut repetitions = prediction.sets.iter().flat_map(|set| &set.repetitions);
    let last = repetitions.rfind(|repetition| repetition.completed);
    Fate::LastMovesAt(last.map_or(0.0, |repetition| repetition.mean_velocity.as_m_s()))
}
