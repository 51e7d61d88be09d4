//! Cluster sets: groups of one to three repetitions with short rests, against the same set straight.
//!
//! In: a [`SessionRequest`] with load and total repetitions. Out: a draft with groups and rests, and with a
//! simulated repetition the prediction of both ways of doing it, repetition by repetition.

use super::draft::{Draft, Predicted, SessionPrediction};
use super::method::Method;
use super::oracle::RepOracle;
use super::planned_set::{PlannedSet, SetIntent, warm_up_sets};
use super::predicted_sets::predict;
use super::prediction::{TiringBody, predict_set};
use super::published::{ClusterTable, Published, RestRange};
use super::remark::{ClusterRemark, Fate, PlanBasis, Progression, Remark};
use super::request::{SessionRequest, found};
use crate::error::{Error, Result, SessionFigureFault};
use crate::setups::Loading;
use crate::source::Source;
use crate::units::{Duration, Mass};

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
    let table = &request.published.clusters;
    let share = request.liftable_share(table.group.share)?;
    let load = request.loading_at(share)?;
    let real_share = request.strength().share_of(load.total);
    let total = wishes
        .total_repetitions
        .unwrap_or(table.set.most_repetitions);
    let in_set = total.min(table.set.most_repetitions);
    if let Some(group) = wishes.group.filter(|group| *group >= in_set) {
        return Err(Error::bad(SessionFigureFault::OneGroup { group, in_set }));
    }
    let group = wishes.group.unwrap_or_else(|| usual_group(real_share));
    Ok(Clusters {
        load,
        share: real_share,
        total,
        group: group.min(total),
        allowed: request.chart()?.allowed_at(real_share),
        rest_within: request.rest_within()?,
        rest_between: request.rest_between(share)?,
    })
}

/// Drafts cluster sets.
///
/// **Fails** when the load is above 1RM or cannot be loaded, and as the oracle does.
pub fn draft(request: &SessionRequest) -> Result<Draft> {
    let table = &request.published.clusters;
    let clusters = clusters(request)?;
    let frequency = request.guidance().frequency();
    let mut draft = request.draft(Method::Clusters, frequency, Progression::WhenLastIsFast);
    draft.sets = warm_up_sets(clusters.load.total, request.loading, &request.strength())?;
    let plain = PlannedSet::work(
        clusters.load.clone(),
        &request.strength(),
        clusters.total,
        clusters.rest_between,
        SetIntent::EveryRepetitionFast,
    );
    let sets = even_groups(clusters.total, table.set.most_repetitions);
    draft.sets.extend(sets.iter().map(|count| {
        let groups = even_groups(*count, clusters.group);
        plain.clone().in_groups(groups, clusters.rest_within)
    }));
    draft.remarks.extend(remarks(request.published, &clusters));
    draft.sources.extend(sources(table));
    predict_both(request, &mut draft, &sets)?;
    Ok(draft)
}

fn remarks(published: &Published, clusters: &Clusters) -> Vec<Remark> {
    let table = &published.clusters;
    let mut remarks = Vec::new();
    remarks.extend(rest_remark(
        &published.rests.in_cluster,
        clusters.rest_within,
    ));
    remarks.extend(group_remark(table, clusters.group, clusters.allowed));
    remarks.extend(total_remark(table, clusters.total, clusters.share));
    remarks.push(Remark::Cluster(ClusterRemark::PhosphocreatineBack {
        rest: clusters.rest_within,
        shares: published
            .phosphocreatine
            .share_back_range(clusters.rest_within),
    }));
    remarks
}

fn sources(table: &ClusterTable) -> impl Iterator<Item = (PlanBasis, Source)> {
    let numbers = [
        (PlanBasis::ClusterGroups, table.group.source.clone()),
        (PlanBasis::SessionTotals, table.totals.source.clone()),
    ];
    numbers.into_iter().chain(table.studies.iter().map(found))
}

fn rest_remark(usual: &RestRange, rest: Duration) -> Option<Remark> {
    let (least, most) = (usual.least, usual.most);
    let inside = (least..=most).contains(&rest);
    (!inside).then_some(Remark::Cluster(ClusterRemark::Rest { rest, least, most }))
}

fn group_remark(table: &ClusterTable, group: u32, allowed: Option<u32>) -> Option<Remark> {
    let usual = table.group.repetitions;
    if group > usual.1 {
        return Some(Remark::Cluster(ClusterRemark::LargeGroup { group, usual }));
    }
    allowed
        .filter(|allowed| group >= *allowed)
        .map(|allowed| Remark::Cluster(ClusterRemark::GroupAtLimit { group, allowed }))
}

fn total_remark(table: &ClusterTable, total: u32, share: f64) -> Option<Remark> {
    let percent = 100.0 * share;
    let zone = table.totals.zones.iter().find(|zone| {
        let (low, high) = zone.percent;
        (low..=high).contains(&percent)
    })?;
    let (fewest, most) = zone.repetitions;
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
    let all_done = |prediction: &SessionPrediction| prediction.stall().is_none();
    let both_done = all_done(straight) && all_done(clusters) && straight.mean_velocity_m_s() > 0.0;
    let gain_percent = both_done
        .then(|| 100.0 * (clusters.mean_velocity_m_s() / straight.mean_velocity_m_s() - 1.0));
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
