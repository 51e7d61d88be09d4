//! The working sets of a draft, predicted one after the other.
//!
//! In: a [`RepOracle`] and a [`Draft`] with its sets. Out: the draft with velocities, fatigue, and what every set
//! would allow by chart and by fatigue model; where the two disagree stands among the remarks.

use super::disagreement::Disagreement;
use super::draft::{Draft, Predicted, SessionPrediction};
use super::oracle::RepOracle;
use super::planned_set::{PlannedSet, RepetitionsAllowed, SetKind};
use super::prediction::{TiringBody, predict_set, repetitions_to_failure, repetitions_up_to};
use super::remark::{ChartRemark, PlanBasis, Remark};
use super::request::SessionRequest;
use super::simulation_doubts::doubts;
use crate::error::Result;
use crate::units::Mass;

/// Predicts the working sets of a draft one after the other, and notes on each what would be possible.
///
/// Does nothing without an oracle. **Fails** as the oracle does.
pub fn predict(request: &SessionRequest, draft: &mut Draft) -> Result<()> {
    request
        .oracle
        .map_or(Ok(()), |oracle| predict_with(request, oracle, draft))
}

/// The same with a given oracle.
pub fn predict_with(request: &SessionRequest, oracle: &RepOracle, draft: &mut Draft) -> Result<()> {
    let chart = request.chart()?;
    let mut body = TiringBody::fresh(&oracle.joints);
    let mut sets = Vec::new();
    for set in draft
        .sets
        .iter_mut()
        .filter(|set| set.kind == SetKind::Work)
    {
        let load = set.load.total;
        set.allowed = Some(RepetitionsAllowed {
            by_chart: chart.repetitions_at(set.hardness()).ok(),
            by_model: match request.only_if_it_holds {
                true => repetitions_up_to(oracle, load, set.repetitions() + set.reserve, &body),
                false => repetitions_to_failure(oracle, load, &body),
            }
            .ok(),
        });
        let predicted = predict_set(oracle, load, &set.groups, set.rest_within, &mut body)?;
        sets.push(predicted);
        body.rest(set.rest_after)?;
    }
    draft.remarks.extend(disagreements(draft));
    let doubts = doubts(request, oracle, draft);
    draft.remarks.extend(doubts);
    draft.predictions.push(SessionPrediction {
        of: Predicted::By(draft.method),
        sets,
        fatigue: body.trace().to_vec(),
    });
    let source = request.published.fatigue.prediction_source.clone();
    draft.sources.push((PlanBasis::Prediction, source));
    Ok(())
}

/// The working sets of a draft with another load on, without bands and chains.
pub fn as_plain_sets(oracle: &RepOracle, load: Mass, draft: &Draft) -> Result<SessionPrediction> {
    let mut body = TiringBody::fresh(&oracle.joints);
    let mut sets = Vec::new();
    for set in draft.sets.iter().filter(|set| set.kind == SetKind::Work) {
        let predicted = predict_set(oracle, load, &set.groups, set.rest_within, &mut body)?;
        sets.push(predicted);
        body.rest(set.rest_after)?;
    }
    Ok(SessionPrediction {
        of: Predicted::PlainWeight,
        sets,
        fatigue: body.trace().to_vec(),
    })
}

/// Sets that the fatigue model does not see through, neighbours of one kind together.
fn disagreements(draft: &Draft) -> Vec<Remark> {
    let mut found: Vec<Disagreement> = Vec::new();
    let work = draft.sets.iter().filter(|set| set.kind == SetKind::Work);
    for one in (1..).zip(work).filter_map(disagreement) {
        match found.last_mut() {
            Some(known) if continues(known, &one) => known.sets.1 = one.sets.1,
            _ => found.push(one),
        }
    }
    let remark = |one| Remark::Chart(ChartRemark::Disagreement(one));
    found.into_iter().map(remark).collect()
}

/// Whether a set is the next one after those known, and like them.
fn continues(known: &Disagreement, one: &Disagreement) -> bool {
    known.sets.1 + 1 == one.sets.0
        && Disagreement {
            sets: one.sets,
            ..*known
        } == *one
}

fn disagreement((number, set): (usize, &PlannedSet)) -> Option<Disagreement> {
    let allowed = set.allowed?;
    let (planned, by_model) = (set.repetitions(), allowed.by_model?);
    if set.groups.len() > 1 || by_model >= planned {
        return None;
    }
    Some(Disagreement {
        sets: (number, number),
        load: set.load.total,
        planned,
        by_chart: allowed.by_chart?,
        by_model,
    })
}
