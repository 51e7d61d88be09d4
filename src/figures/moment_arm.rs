//! Moment arms and fibre lengths over the joint angle, muscle by muscle.
//!
//! In: a lift of one joint. Out: figures of the two things that make torque out of fibres.

use super::desk::Desk;
use super::sheet::{Chart, Sheet};
use super::strength_curve::{level_axis, points};
use crate::error::Result;
use crate::narrative::muscle_names::muscle_label;
use crate::narrative::places::place_in_words;
use crate::plot::{Axis, Extent, Heading, Labels, LevelLine, LineChart, Panel, Role, Series};
use crate::study::{MusclePart, Study, muscle_parts};
use crate::units::{Length, System, rounded};

/// The lift whose joint is shown.
const LIFT: &str = "biceps-curl";
/// Most curves that stay readable beside each other, assumed.
const MOST_MUSCLES: usize = 5;

/// Moment arms over the joint angle.
pub fn moment_arms(desk: &Desk<'_>) -> Result<Sheet> {
    let study = &desk.lift(LIFT)?.study;
    let parts = shown(study);
    let factor = match desk.units {
        System::Metric => 100.0,
        System::Us => 1.0 / Length::from_in(1.0).as_m(),
    };
    let unit = match desk.units {
        System::Metric => "cm",
        System::Us => "in",
    };
    let (longest, place, arm_m) = extreme(&parts, |part| &part.arm_m, f64::max);
    let last = (study.range.poses.len() - 1) as f64;
    let at = place_in_words(study, place as f64 / last, desk.units);
    let arms = parts.iter().map(|part| {
        let least = part.arm_m.iter().copied().fold(f64::INFINITY, f64::min);
        let most = part.arm_m.iter().copied().fold(0.0, f64::max);
        format!(
            "{} {} to {} {unit}",
            part.name,
            rounded(factor * least, 1),
            rounded(factor * most, 1)
        )
    });
    let described: Vec<String> = arms.collect();
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "Levers change with the angle: {} reaches {} {unit} at {at}",
                longest.name,
                rounded(factor * arm_m, 1)
            ),
            subtitle: format!("{}, moment arms of the muscles that flex the {}", desk.who(), study.joint(0)),
            footnote: "Moment arm: distance of a muscle's line of pull from the joint's axis. Heads of one muscle \
                       are shown together."
                .to_owned(),
            description: format!(
                "Moment arms over {}, least to greatest: {}.",
                study.axis,
                described.join("; ")
            ),
..super::phrases()
},
        x: level_axis(study, desk.units),
        panels: vec![Panel {
            axis: Axis::new("Moment arm", unit),
            series: curves(desk, study, &parts, |part| {
                part.arm_m.iter().map(|arm| factor * arm).collect()
            }),
            ..Panel::default()
        }],
        labels: Labels::Column,
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "The same muscle force makes more torque where its line of pull runs farther from the joint. A moment arm also \
         says how fast fibres shorten: a long one uses up their length sooner.",
    ))
}

/// Fibre lengths over the joint angle.
pub fn fibre_lengths(desk: &Desk<'_>) -> Result<Sheet> {
    let study = &desk.lift(LIFT)?.study;
    let parts = shown(study);
    let (shortest, _, least) = extreme(&parts, |part| &part.fibre_norm, f64::min);
    let spans: Vec<String> = parts
        .iter()
        .map(|part| {
            let last = part.fibre_norm.len() - 1;
            let [start, end] = [part.fibre_norm[0], part.fibre_norm[last]];
            format!(
                "{} {} to {} %",
                part.name,
                rounded(100.0 * start, 0),
                rounded(100.0 * end, 0)
            )
        })
        .collect();
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "Fibres run short towards the end: {} down to {} %",
                shortest.name,
                rounded(100.0 * least, 0)
            ),
            subtitle: format!("{}, fibre lengths in the {}", desk.who(), study.movement_title.to_lowercase()),
            footnote: "Optimal length: where a fibre makes its greatest active force. Heads of one muscle are shown \
                       together."
                .to_owned(),
            description: format!(
                "Fibre lengths in percent of the optimal length over {}, start to end: {}.",
                study.axis,
                spans.join("; ")
            ),
..super::phrases()
},
        x: level_axis(study, desk.units),
        panels: vec![Panel {
            axis: Axis::new("Fibre length, optimal = 100", "%").reaching(Extent::FromZero),
            series: curves(desk, study, &parts, |part| {
                part.fibre_norm.iter().map(|length| 100.0 * length).collect()
            }),
            levels: vec![LevelLine {
                at: 100.0,
                label: "optimal length".to_owned(),
            }],
            ..Panel::default()
        }],
        labels: Labels::Column,
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "Every degree of the joint costs each muscle as much length as its moment arm is long. What starts near the \
         optimum ends on the weak, short side of the length-tension curve.",
    ))
}

/// The muscles that make most of the torque.
fn shown(study: &Study) -> Vec<MusclePart> {
    let mut parts = muscle_parts(study, 0);
    parts.truncate(MOST_MUSCLES);
    parts
}

fn curves(
    desk: &Desk<'_>,
    study: &Study,
    parts: &[MusclePart],
    values: impl Fn(&MusclePart) -> Vec<f64>,
) -> Vec<Series> {
    let curve = |(index, part): (usize, &MusclePart)| Series {
        name: muscle_label(part),
        points: points(study, desk.units, &values(part)),
        role: Role::Series(index),
    };
    parts.iter().enumerate().map(curve).collect()
}

/// The muscle that goes farthest, the sample and the value.
fn extreme(
    parts: &[MusclePart],
    values: impl Fn(&MusclePart) -> &Vec<f64>,
    farther: fn(f64, f64) -> f64,
) -> (&MusclePart, usize, f64) {
    let mut best = (&parts[0], 0, values(&parts[0])[0]);
    for part in parts {
        for (index, value) in values(part).iter().enumerate() {
            if *value != best.2 && farther(*value, best.2) == *value {
                best = (part, index, *value);
            }
        }
    }
    best
}
