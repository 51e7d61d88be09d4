//! Limits by joint: what each joint of a lift alone could bear, and the curve that they leave.
//!
//! In: a lift of several joints. Out: a figure whose title says which joint gives way where.

use super::desk::{Desk, Lift};
use super::prose::{capital, percent};
use super::sheet::{Chart, Sheet};
use super::strength_curve::{ceiling, force_axis, level_axis, points, shown};
use super::{Heading, LineChart, Panel, Role, Series};
use crate::capacity::{Acting, joint_alone};
use crate::error::Result;
use crate::study::Study;

/// Limits of a press.
pub fn limits_in_a_press(desk: &Desk<'_>) -> Result<Sheet> {
    limits(desk, "bench-press")
}

/// Limits of a squat.
pub fn limits_in_a_squat(desk: &Desk<'_>) -> Result<Sheet> {
    limits(desk, "squat")
}

fn limits(desk: &Desk<'_>, movement: &str) -> Result<Sheet> {
    let lift = desk.lift(movement)?;
    let study = &lift.study;
    let stretches = stretches(study);
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "{}: {}",
                study.movement_title,
                stretches_in_words(&stretches)
            ),
            subtitle: format!(
                "{}: the load that each joint alone could bear, the others as strong as you like",
                desk.who()
            ),
            footnote: format!(
                "Capacity is never above the lowest joint; it is below it where muscles serve two joints at once. {}",
                study.sides_in_words()
            ),
            description: format!(
                "Capacity of the {} over the {}, and one curve for every joint alone. {}.",
                study.movement_title.to_lowercase(),
                study.axis,
                shares_in_words(study, &stretches)
            ),
        },
        x: level_axis(study, desk.units),
        panels: vec![panel(desk, lift)?],
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "A chain is as strong as its weakest link: at every place of the range one joint gives way first, and \
         strengthening another one would not help there.",
    ))
}

fn panel(desk: &Desk<'_>, lift: &Lift) -> Result<Panel> {
    let study = &lift.study;
    let acting = Acting::of(&lift.model.lifter, &study.range.poses)?;
    let capacity = study.capacity.values();
    let mut series = vec![Series {
        name: "capacity".to_owned(),
        points: points(study, desk.units, &shown(study, desk.units, &capacity)),
        role: Role::Reference,
    }];
    for joint in 0..study.range.poses[0].coordinates.len() {
        let alone = joint_alone(&acting, &study.range, &study.capacity, joint)?;
        series.push(Series {
            name: format!("{} alone", study.joint(joint)),
            points: points(study, desk.units, &shown(study, desk.units, &alone)),
            role: Role::Series(joint),
        });
    }
    let in_units = shown(study, desk.units, &capacity);
    // The joints that are far from limiting lie above what matters.
    let top = ceiling(&in_units, 1.6 * super::classes::median(&in_units));
    Ok(Panel {
        axis: force_axis(study, desk.units).reaching(top),
        series,
        ..Panel::default()
    })
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
