//! Limits by joint: how much of each joint's strength the heaviest load takes at every place.
//!
//! In: a lift of several joints. Out: a figure whose title says which joint gives way where.

use super::desk::Desk;
use super::sheet::{Chart, Sheet};
use super::strength_curve::{level_axis, points, poses_at};
use crate::error::Result;
use crate::narrative::prose::{capital, percent};
use crate::plot::{Axis, Extent, Heading, LineChart, Panel, Role, Series};
use crate::study::{Study, joint_use};

/// Limits of a press.
pub fn limits_in_a_press(desk: &Desk<'_>) -> Result<Sheet> {
    limits(desk, "bench-press")
}

/// Limits of a squat.
pub fn limits_in_a_squat(desk: &Desk<'_>) -> Result<Sheet> {
    limits(desk, "squat")
}

fn limits(desk: &Desk<'_>, movement: &str) -> Result<Sheet> {
    let study = &desk.lift(movement)?.study;
    let stretches = stretches(study);
    let chart = LineChart {
        heading: Heading {
            title: format!("{}: {}", study.movement_title, stretches_in_words(&stretches)),
            subtitle: format!(
                "{}: how much of each joint's strength the heaviest load takes, place by place",
                desk.who()
            ),
            footnote: "100 %: every muscle that can help this joint is fully active. A joint that gives way can stay \
                       below where muscles over two joints must serve the other one too."
                .to_owned(),
            description: format!(
                "Share of each joint's strength in use at the heaviest load of the {}, over the {}. {}.",
                study.movement_title.to_lowercase(),
                study.axis,
                shares_in_words(study, &stretches)
            ),
..super::phrases()
},
        x: level_axis(study, desk.units),
        panels: vec![panel(desk, study)],
        poses: poses_at(study, desk.units, None),
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "A chain is as strong as its weakest link: at every place of the range one joint gives way first, and \
         strengthening another one would not help there.",
    ))
}

fn panel(desk: &Desk<'_>, study: &Study) -> Panel {
    let series = (0..study.range.poses[0].coordinates.len())
        .map(|joint| {
            let used: Vec<f64> = joint_use(study, joint).iter().map(|u| 100.0 * u).collect();
            Series {
                name: study.joint(joint).to_owned(),
                points: points(study, desk.units, &used),
                role: Role::Series(joint),
            }
        })
        .collect();
    Panel {
        axis: Axis::new("Strength in use", "%").reaching(Extent::Exactly([0.0, 108.0])),
        series,
        ..Panel::default()
    }
}

/// A stretch of samples in which one joint gives way first.
struct Stretch {
    joint: &'static str,
    from: usize,
    to: usize,
}

/// Stretches in order; ones shorter than a twentieth of the range are taken into their neighbour.
fn stretches(study: &Study) -> Vec<Stretch> {
    let held = &study.capacity.held;
    let least = held.len() / 20;
    let mut found: Vec<Stretch> = Vec::new();
    for (index, pose) in held.iter().enumerate() {
        let joint = study.joint(pose.limiting);
        match found.last_mut() {
            Some(last) if last.joint == joint => last.to = index,
            _ => found.push(Stretch {
                joint,
                from: index,
                to: index,
            }),
        }
    }
    found.retain(|stretch| stretch.to - stretch.from >= least);
    let mut joined: Vec<Stretch> = Vec::new();
    for stretch in found {
        match joined.last_mut() {
            Some(last) if last.joint == stretch.joint => last.to = stretch.to,
            _ => joined.push(stretch),
        }
    }
    joined
}

/// "the shoulder gives way first, near lockout the elbow".
fn stretches_in_words(stretches: &[Stretch]) -> String {
    match stretches {
        [] => "no joint gives way first for long".to_owned(),
        [only] => format!("the {} gives way first all the way", only.joint),
        [first, second] => format!(
            "first the {} gives way, then the {}",
            first.joint, second.joint
        ),
        [first, .., last] => {
            let between: Vec<String> = stretches[1..stretches.len() - 1]
                .iter()
                .map(|stretch| format!("the {}", stretch.joint))
                .collect();
            format!(
                "the {} gives way first, then {}, at the end the {}",
                first.joint,
                between.join(", then "),
                last.joint
            )
        }
    }
}

fn shares_in_words(study: &Study, stretches: &[Stretch]) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    let told: Vec<String> = stretches
        .iter()
        .map(|stretch| {
            format!(
                "the {} gives way first from {} to {} of the range",
                stretch.joint,
                percent(stretch.from as f64 / last),
                percent(stretch.to as f64 / last)
            )
        })
        .collect();
    capital(&told.join("; "))
}
