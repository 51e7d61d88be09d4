//! The three states of a joint's muscle through a session: resting, active, fatigued.
//!
//! In: a plan with predictions. Out: small panels: the most tired joint for each way of doing the session,
//! or every joint where there is one way.

use super::session_plan::{capital, nothing_predicted};
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::plan_words::least_by_joint;
use crate::narrative::quantities::rounded;
use crate::narrative::session::{joint_name, predicted_name};
use crate::plot::{Axis, Extent, Fill, Heading, Look, Role, Series, SmallMultiples, SmallPanel};
use crate::session::fatigue::FatigueJoint;
use crate::session::method::Method;
use crate::session::plan::{Predicted, SessionPlan, SessionPrediction};

/// The states over time.
///
/// **Fails** if nothing was predicted.
pub fn fatigue_chart(plan: &SessionPlan, look: Look) -> Result<Scene> {
    let predictions = &plan.draft.predictions;
    let first = predictions.first().ok_or_else(nothing_predicted)?;
    let panels: Vec<(String, &SessionPrediction, FatigueJoint)> = if predictions.len() == 1 {
        least_by_joint(first)
            .into_keys()
            .map(|joint| (capital(joint_name(joint)), first, joint))
            .collect()
    } else {
        let (joint, _) = most_tired(first);
        predictions
            .iter()
            .map(|p| (capital(predicted_name(p.of)), p, joint))
            .collect()
    };
    let most_s = predictions
        .iter()
        .flat_map(|p| p.fatigue.iter().map(|sample| sample.time_s))
        .fold(0.0, f64::max);
    SmallMultiples {
        heading: Heading {
            title: title(predictions),
            subtitle: "Share of the muscle that rests, works and is fatigued; what is not fatigued is what is left".to_owned(),
            footnote: "Three-compartment model (Xia & Frey Law 2008), rest multiplier (Looft et al. 2018).".to_owned(),
            description: predictions.iter().map(spoken).collect::<Vec<_>>().join(" "),
..super::sheet::phrases()
},
        x: Axis::new("Time", "min").reaching(Extent::Exactly([0.0, most_s / 60.0])),
        y: Axis::new("Share of the muscle", "%").reaching(Extent::FromZeroTo(100.0)),
        panels: panels
            .iter()
            .map(|(title, prediction, joint)| panel(title, prediction, *joint))
            .collect(),
        columns: None,
    }
    .scene(look)
}

/// The joint with the least left, and how much that is.
fn most_tired(prediction: &SessionPrediction) -> (FatigueJoint, f64) {
    least_by_joint(prediction)
        .into_iter()
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .unwrap_or((FatigueJoint::General, 1.0))
}

fn panel(title: &str, prediction: &SessionPrediction, joint: FatigueJoint) -> SmallPanel {
    let samples: Vec<_> = prediction
        .fatigue
        .iter()
        .filter(|sample| sample.joint == joint)
        .collect();
    let line = |share: &dyn Fn(&crate::session::fatigue::Compartments) -> f64| -> Vec<[f64; 2]> {
        samples
            .iter()
            .map(|sample| [sample.time_s / 60.0, 100.0 * share(&sample.shares)])
            .collect()
    };
    let fatigued = line(&|shares| shares.fatigued);
    let used = line(&|shares| shares.fatigued + shares.active);
    let level = |percent: f64| {
        used.iter()
            .map(|point| [point[0], percent])
            .collect::<Vec<_>>()
    };
    let fill = |upper: Vec<[f64; 2]>, lower: Vec<[f64; 2]>, role: Role| Fill { upper, lower, role };
    let least = 100.0 - fatigued.iter().map(|point| point[1]).fold(0.0, f64::max);
    SmallPanel {
        title: title.to_owned(),
        note: format!("{}, least left {} %", joint_name(joint), rounded(least, 0)),
        fills: vec![
            fill(fatigued.clone(), level(0.0), Role::Series(1)),
            fill(used.clone(), fatigued.clone(), Role::Series(0)),
        ],
        series: vec![
            Series {
                name: "fatigued".to_owned(),
                points: fatigued,
                role: Role::Series(1),
            },
            Series {
                name: "fatigued and active".to_owned(),
                points: used,
                role: Role::Muted,
            },
        ],
        ..SmallPanel::default()
    }
}

fn title(predictions: &[SessionPrediction]) -> String {
    let left = |p: &SessionPrediction| {
        let (_, share) = most_tired(p);
        format!("{} % left {}", rounded(100.0 * share, 0), in_sets(p.of))
    };
    let joint = predictions
        .first()
        .map_or(FatigueJoint::General, |p| most_tired(p).0);
    let words: Vec<String> = predictions.iter().map(left).collect();
    format!("{}: {}", capital(joint_name(joint)), words.join(", "))
}

/// "in clusters", "with bands", "in straight sets".
fn in_sets(of: Predicted) -> String {
    let name = predicted_name(of);
    match of {
        Predicted::By(Method::Straight) => "in straight sets".to_owned(),
        Predicted::By(Method::Pyramid) => "in the pyramid".to_owned(),
        Predicted::By(Method::Bands | Method::Chains) | Predicted::PlainWeight => {
            format!("with {name}")
        }
        Predicted::By(_) => format!("in {name}"),
    }
}

fn spoken(prediction: &SessionPrediction) -> String {
    let joints: Vec<String> = least_by_joint(prediction)
        .into_iter()
        .map(|(joint, share)| format!("{} {} %", joint_name(joint), rounded(100.0 * share, 0)))
        .collect();
    format!(
        "{}: least left {}.",
        predicted_name(prediction.of),
        joints.join(", ")
    )
}
