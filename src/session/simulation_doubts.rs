//! Where the simulation of a set is not to be gone by: far more repetitions than the chart, a stop that never comes.
//!
//! In: the working sets of a draft with what chart and simulation allow. Out: remarks as facts.

use super::draft::Draft;
use super::oracle::RepOracle;
use super::planned_set::{PlannedSet, SetKind};
use super::prediction::{MOST_REPETITIONS, TiringBody, predict_set};
use super::remark::{ChartRemark, Remark};
use super::request::SessionRequest;
use crate::units::Duration;

/// From how many times the chart's repetitions on the simulated ones are told as too many (assumed: twice; people alike in
/// training differ by 30 % of the repetitions beyond the first).
pub const FAR_ABOVE_CHART: f64 = 2.0;

/// What is to be doubted of a predicted draft.
pub(super) fn doubts(request: &SessionRequest, oracle: &RepOracle, draft: &Draft) -> Vec<Remark> {
    let overstated = overstated(request, oracle, draft);
    let unreached = stop_not_reached(request, oracle, draft);
    let both = overstated.into_iter().chain(unreached);
    both.map(Remark::Chart).collect()
}

/// Working sets without rests inside.
fn straight_sets(draft: &Draft) -> impl Iterator<Item = &PlannedSet> {
    let work = draft.sets.iter().filter(|set| set.kind == SetKind::Work);
    work.filter(|set| set.groups.len() == 1)
}

/// The set where the simulation goes furthest beyond the chart.
fn overstated(request: &SessionRequest, oracle: &RepOracle, draft: &Draft) -> Option<ChartRemark> {
    let times = |set: &PlannedSet| {
        let allowed = set.allowed?;
        let by_chart = allowed.by_chart.filter(|count| *count >= 1.0)?;
        let by_model = allowed.by_model?;
        let times = f64::from(by_model) / by_chart;
        (times >= FAR_ABOVE_CHART).then_some((times, by_chart, by_model))
    };
    let worst = straight_sets(draft)
        .filter_map(times)
        .max_by(|a, b| a.0.total_cmp(&b.0))?;
    Some(ChartRemark::Overstated {
        by_chart: worst.1,
        by_model: worst.2,
        one_joint: request.lift.one_joint,
        published: oracle.repetitions_overstated,
    })
}

/// The loss of velocity at which sets were to end, where all that the chart allows does not lose it.
fn stop_not_reached(
    request: &SessionRequest,
    oracle: &RepOracle,
    draft: &Draft,
) -> Option<ChartRemark> {
    let loss = request.wishes.velocity_loss?;
    let first = straight_sets(draft).next()?;
    let by_chart = first.allowed?.by_chart? + 1.0e-6;
    let repetitions = (by_chart.floor() as u32).clamp(1, MOST_REPETITIONS);
    let mut body = TiringBody::fresh(&oracle.joints);
    let load = first.load.total;
    let set = predict_set(oracle, load, &[repetitions], Duration::ZERO, &mut body).ok()?;
    let reached = set.velocity_loss();
    (reached < loss).then_some(ChartRemark::StopNotReached {
        loss,
        reached,
        repetitions,
    })
}
