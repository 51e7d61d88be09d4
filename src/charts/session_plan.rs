//! A planned session: predicted velocity of every repetition, and the fatigue of the joints over time.

use super::{Axis, Extent, Heading, LineChart, Look, Panel, Role, Series};
use crate::draw::Scene;
use crate::error::{Error, Result};
use crate::session::plan::{NamedPrediction, Plan};
use crate::units::{System, rounded};

/// Predicted velocities, one line a way of doing the session, above load by repetition.
///
/// **Fails** if nothing was predicted.
pub fn session_chart(plan: &Plan, units: System, look: Look) -> Result<Scene> {
    let predictions = &plan.draft.predictions;
    if predictions.is_empty() {
        return Err(Error::no_answer(
            "nothing was predicted for this session, so there is no figure",
        )
        .hint("a movement that can be simulated and a lifter are needed"));
    }
    let series = predictions
        .iter()
        .enumerate()
        .map(|(index, prediction)| Series {
            name: prediction.name.clone(),
            points: velocities(prediction),
            role: Role::Series(index),
        })
        .collect();
    LineChart {
        heading: Heading {
            title: title(predictions),
            subtitle: format!(
                "{}, {}, 1RM {}",
                plan.draft.movement.replace('-', " "),
                plan.draft.method.name(),
                units.mass(plan.draft.one_rm)
            ),
            footnote: "Three-compartment fatigue of the joints coupled to the simulated repetition; a line that ends early stalls there.".to_owned(),
            description: description(predictions),
        },
        x: Axis::new("Repetition", "").reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Mean velocity", "m/s"),
            series,
            ..Panel::default()
        }],
        ..LineChart::default()
    }
    .scene(look)
}

/// Share of capacity left in every joint over the session.
///
/// **Fails** if nothing was predicted.
pub fn fatigue_chart(plan: &Plan, look: Look) -> Result<Scene> {
    let Some(prediction) = plan.draft.predictions.last() else {
        return Err(Error::no_answer(
            "nothing was predicted for this session, so there is no figure",
        ));
    };
    let mut joints: Vec<_> = prediction.fatigue.iter().map(|s| s.joint).collect();
    joints.sort();
    joints.dedup();
    let series: Vec<Series> = joints
        .iter()
        .enumerate()
        .map(|(index, joint)| Series {
            name: format!("{joint:?}").to_lowercase(),
            points: prediction
                .fatigue
                .iter()
                .filter(|s| s.joint == *joint)
                .map(|s| [s.time_s / 60.0, 100.0 * s.shares.capacity_share()])
                .collect(),
            role: Role::Series(index),
        })
        .collect();
    let least = series
        .iter()
        .flat_map(|s| s.points.iter().map(|p| p[1]))
        .fold(100.0, f64::min);
    LineChart {
        heading: Heading {
            title: format!("{}: down to {} % of fresh capacity", prediction.name, rounded(least, 0)),
            subtitle: "Share of fresh capacity left at each joint through the session".to_owned(),
            footnote: "Three-compartment model (Xia & Frey Law 2008) with the rest multiplier (Looft 2018).".to_owned(),
            description: format!("The joints fall to {} % of their capacity.", rounded(least, 0)),
        },
        x: Axis::new("Time", "min").reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Capacity left", "%"),
            series,
            ..Panel::default()
        }],
        ..LineChart::default()
    }
    .scene(look)
}

fn velocities(prediction: &NamedPrediction) -> Vec<[f64; 2]> {
    prediction
        .sets
        .iter()
        .flat_map(|set| &set.repetitions)
        .enumerate()
        .map(|(index, rep)| [index as f64 + 1.0, rep.mean_velocity.as_m_s()])
        .collect()
}

fn title(predictions: &[NamedPrediction]) -> String {
    let words =
        |p: &NamedPrediction| format!("{} keep {} m/s", p.name, rounded(p.mean_velocity_m_s(), 2));
    match predictions {
        [one] => format!(
            "Mean velocity {} m/s over the session",
            rounded(one.mean_velocity_m_s(), 2)
        ),
        [first, .., last] => format!("Mean velocity: {}, {}", words(first), words(last)),
        [] => String::new(),
    }
}

fn description(predictions: &[NamedPrediction]) -> String {
    predictions
        .iter()
        .map(|p| {
            format!(
                "{}: {} repetitions reach lockout, mean velocity {} m/s.",
                p.name,
                p.completed(),
                rounded(p.mean_velocity_m_s(), 2)
            )
        })
        .collect::<Vec<_>>()
        .join(" ")
}
