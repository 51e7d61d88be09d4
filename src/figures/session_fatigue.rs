//! The three states of a joint's muscle through a session: resting, active, fatigued.
//!
//! In: a plan with predictions. Out: small panels: the most tired joint for each way of doing the session,
//! or every joint where there is one way.

use super::sheet::heading;
use crate::draw::Scene;
use crate::error::{Error, FigureFault, Result};
use crate::narrative::plan_words::least_by_joint;
use crate::narrative::prose::capital;
use crate::narrative::session_figure_words::{
    FATIGUED_AND_ACTIVE, SHARE_OF_MUSCLE, fatigue_words, least_of_joint, most_tired,
};
use crate::narrative::session_words::{joint_name, predicted_name};
use crate::plot::{Axis, Extent, Fill, Look, Role, Series, SmallMultiples, SmallPanel, Time};
use crate::session::draft::{SessionPlan, SessionPrediction};
use crate::session::fatigue::{Compartments, FatigueJoint};
use std::ops::Range;

/// The states over time.
///
/// **Fails** if nothing was predicted.
pub fn fatigue_chart(plan: &SessionPlan, look: Look) -> Result<Scene> {
    let predictions = &plan.draft.predictions;
    let panels = match predictions.as_slice() {
        [] => return Err(Error::no_answer(FigureFault::NothingPredicted)),
        [only] => least_by_joint(only)
            .into_keys()
            .map(|joint| panel(joint_name(joint), only, joint))
            .collect(),
        [first, ..] => {
            let (joint, _) = most_tired(first);
            let ways = predictions.iter();
            ways.map(|way| panel(predicted_name(way.of), way, joint))
                .collect()
        }
    };
    let times = predictions.iter().flat_map(|way| &way.fatigue);
    let most_s = times.map(|sample| sample.time_s).fold(0.0, f64::max);
    SmallMultiples {
        heading: heading(&fatigue_words(predictions)),
        x: Axis::new("Time", "min")
            .reaching(Extent::Exactly([0.0, most_s / 60.0]))
            .timed(Time::Rising),
        y: Axis::new(SHARE_OF_MUSCLE, "%").reaching(Extent::FromZeroTo(100.0)),
        panels,
        columns: None,
    }
    .scene(look)
}

/// A joint through one way of doing the session.
fn panel(title: &str, prediction: &SessionPrediction, joint: FatigueJoint) -> SmallPanel {
    let line = |share: fn(&Compartments) -> f64| -> Vec<[f64; 2]> {
        let samples = prediction.fatigue.iter();
        samples
            .filter(|sample| sample.joint == joint)
            .map(|sample| [sample.time_s / 60.0, 100.0 * share(&sample.shares)])
            .collect()
    };
    let fatigued = line(|shares| shares.fatigued);
    let used = line(|shares| shares.fatigued + shares.active);
    let working = working(&used, &fatigued);
    let ground = used.iter().map(|point| [point[0], 0.0]).collect();
    let most = fatigued.iter().map(|point| point[1]).fold(0.0, f64::max);
    let fill = |upper: &[[f64; 2]], lower: Vec<[f64; 2]>, role: Role| Fill {
        upper: upper.to_vec(),
        lower,
        role,
    };
    SmallPanel {
        title: capital(title),
        note: least_of_joint(joint, 100.0 - most),
        fills: vec![
            fill(&fatigued, ground, Role::Series(1)),
            fill(&used, fatigued.clone(), Role::Series(0)),
        ],
        // The line over what works stays thin: repetition after repetition it goes up and down.
        series: vec![
            Series::new("fatigued", fatigued, Role::Series(1)),
            Series::new(FATIGUED_AND_ACTIVE, used, Role::Muted).in_pieces(working),
        ],
        ..SmallPanel::default()
    }
}

/// The stretches in which something is active, each with the moments of rest before and behind it: at rest both lines are one.
fn working(used: &[[f64; 2]], fatigued: &[[f64; 2]]) -> Vec<Range<usize>> {
    /// Less of a muscle than this is at rest, %.
    const AT_REST_PERCENT: f64 = 0.1;
    let works = |at: usize| used[at][1] - fatigued[at][1] > AT_REST_PERCENT;
    let mut stretches: Vec<Range<usize>> = Vec::new();
    for at in (0..used.len()).filter(|at| works(*at)) {
        let (from, to) = (at.saturating_sub(1), (at + 2).min(used.len()));
        match stretches.last_mut() {
            Some(last) if last.end >= from => last.end = to,
            _ => stretches.push(from..to),
        }
    }
    stretches
}
