//! What the live page says: what a change did and why, what a place of the range asks for.
//!
//! In: studies before and after, their causes, a place, units. Out: sentences.

use super::axis_words::AxisWords;
use super::causes::cause_in_words;
use super::limit_words::gives_way;
use super::prose::{capital, percent};
use super::shown_units::ShownUnits;
use crate::study::{Cause, Study};
use crate::units::System;

/// The curve before the last change.
pub(crate) const BEFORE: &str = "before";

/// Lengths at which no living fibre is known.
pub(crate) const NO_LIVING_FIBRE: &str = "no living fibre";

/// A joint with the movement that is meant where it has several: "elbow", "shoulder (flexion)".
#[must_use]
pub fn joint_axis(study: &Study, joint: usize) -> String {
    let name = study.range.poses[0].coordinates[joint].dof.name();
    match name.split_once('_') {
        Some((joint, "horizontal")) => format!("{joint} (horizontal adduction)"),
        Some((joint, plane)) => format!("{joint} ({plane})"),
        None => study.joint(joint).to_owned(),
    }
}

/// The same where a unit in brackets follows: "shoulder flexion".
fn plain_axis(study: &Study, joint: usize) -> String {
    joint_axis(study, joint).replace(['(', ')'], "")
}

/// Moment arms about a moving joint.
#[must_use]
pub(crate) fn arm_axis(study: &Study, joint: usize, units: System) -> AxisWords {
    let quantity = format!("Moment arm, {}", plain_axis(study, joint));
    (quantity, units.length_unit().symbol)
}

/// Muscle moments about a moving joint.
#[must_use]
pub(crate) fn moment_axis(study: &Study, joint: usize, units: System) -> AxisWords {
    let quantity = format!("Muscle moment, {}", plain_axis(study, joint));
    (quantity, units.torque_unit().symbol)
}

/// That the page was written, and how it is handed on.
#[must_use]
pub fn page_written(file: &str) -> String {
    format!("{file}: opens in any browser, from a disk as well; hand it on as it is")
}

/// What a change did to a curve and to its load, a sentence each.
#[must_use]
pub fn change_in_words(
    before: &Study,
    after: &Study,
    causes: &[Cause],
    units: System,
) -> Vec<String> {
    let unit = units.load_unit(after.range.measure);
    // Where only the load differs, one word tells what the three places would.
    let stays = before.capacity.values() == after.capacity.values();
    let told = causes.iter().filter(|_| !stays);
    let mut lines: Vec<String> = told
        .map(|cause| capital(&cause_in_words(cause, unit, units)) + ".")
        .collect();
    if stays && !causes.is_empty() {
        lines.push("Strength stays as it was: only the load changes.".to_owned());
    }
    lines.extend(hardest_in_words(before, after, units));
    lines
}

/// What a goal of a task is about, by its key in the summary.
#[must_use]
pub fn goal_in_words(key: &str) -> &'static str {
    match key {
        "class" => "class of the curve",
        "peak_range" => "place of the peak (0 start, 1 end)",
        "start_ratio" => "strength at the start (1 is the peak's)",
        "end_ratio" => "strength at the end (1 is the peak's)",
        "trough_ratio" => "strength in the trough (1 is the weaker end's)",
        "range_of_motion_m" => "way of the load, m",
        "sticking_point_range" => "hardest place (0 start, 1 end)",
        "sticking_point_m" => "hardest place, m",
        "sticking_point_deg" => "hardest place, deg",
        "max_effort" => "greatest effort (1 is all strength)",
        "limiting_joint" => "joint that gives way first",
        _ => "flattening against plain weight, %",
    }
}

/// Where the load is hardest before and after, and how hard.
fn hardest_in_words(before: &Study, after: &Study, units: System) -> Option<String> {
    let sticking = |study: &Study| {
        let sticking = study.setups.first()?.sticking?;
        let told = study.told(units);
        Some((
            told.at_place(sticking.point_range),
            percent(sticking.max_effort),
        ))
    };
    let (was, is) = (sticking(before), sticking(after)?);
    Some(match was {
        Some(was) if was == is => {
            format!("The load stays hardest {}, at {} of strength.", is.0, is.1)
        }
        Some(was) if was.0 == is.0 => format!(
            "The load stays hardest {}, at {} of strength in place of {}.",
            is.0, is.1, was.1
        ),
        Some(was) => format!(
            "The load is hardest {} at {} of strength; before it was {} at {}.",
            is.0, is.1, was.0, was.1
        ),
        None => format!("The load is hardest {} at {} of strength.", is.0, is.1),
    })
}

/// What holds at a sample of the range.
#[must_use]
pub fn place_in_words(study: &Study, sample: usize, units: System) -> String {
    let unit = units.load_unit(study.range.measure);
    let pose = &study.range.poses[sample];
    let held = &study.capacity.held[sample];
    let show = |value: f64| {
        format!(
            "{} {}",
            super::quantities::rounded(unit.of(value), 0),
            unit.symbol
        )
    };
    let place = capital(&study.told(units).at_place(pose.load.range));
    let way = gives_way(study, sample);
    let can = show(held.capacity);
    match study.setups.first() {
        None => format!("{place}: at most {can}; {way}."),
        Some(setup) => format!(
            "{place}: the load asks for {} of {can}, {} of strength; {way}.",
            show(setup.values[sample]),
            percent(setup.effort[sample])
        ),
    }
}
