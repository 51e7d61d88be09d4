//! Measures of lifts held still: places, levers, fibres, ratios of force.

use super::lifted::ratio;
use super::{Asked, settings};
use crate::body::studied;
use torquill::movement::Pose;
use torquill::study::Study;

/// A muscle matters at a joint from this share of the torque of all that pull its way.
const MATTERS: f64 = 0.1;

fn study_of(asked: &Asked, load_kg: Option<f64>) -> Study {
    let sets = settings(asked);
    let sets: Vec<&str> = sets.iter().map(String::as_str).collect();
    studied(&asked.lift, &asked.lifter, &sets, load_kg)
}

/// The value of a measure of this file; `None` for a measure that is none of them.
pub fn value(asked: &Asked) -> Option<Option<f64>> {
    Some(match asked.measure.as_str() {
        "fibre_least" => fibres(asked).map(|(least, _)| least),
        "fibre_most" => fibres(asked).map(|(_, most)| most),
        "hardest_angle" => {
            let study = study_of(asked, Some(10.0));
            let place = study.setups[0].sticking.map(|s| s.point_range);
            place.map(|range| study.drawn_angle_deg(range))
        }
        "hardest_above_bottom" => {
            let study = study_of(asked, Some(40.0));
            study.setups[0].sticking.map(|s| s.point_range)
        }
        "travel" => {
            let plain = Asked::of("", &asked.lift, &asked.lifter, "");
            ratio(Some(travel_m(asked)), Some(travel_m(&plain)))
        }
        "travel_cm" => Some(100.0 * travel_m(asked)),
        "lateral" => Some(lateral(&study_of(asked, None))),
        "isometric_ratio" => isometric_ratio(asked),
        "joint_angle" => {
            let study = study_of(asked, None);
            let at = asked.number("range") * (study.range.poses.len() - 1) as f64;
            degrees(
                &study.range.poses[at.round() as usize],
                asked.words("joint"),
            )
        }
        "trunk_lean" => trunk_lean(&study_of(asked, None).range.poses[0]),
        _ => return None,
    })
}

fn travel_m(asked: &Asked) -> f64 {
    let study = study_of(asked, None);
    study.range.poses.last().expect("poses").load.travel_m
}

/// Sideways over vertical force of the hands, mean over the range, %.
fn lateral(study: &Study) -> f64 {
    let shares = study
        .capacity
        .held
        .iter()
        .map(|held| 100.0 * held.reactions[0] / (held.capacity / 2.0));
    shares.sum::<f64>() / study.capacity.held.len() as f64
}

/// Angle of a coordinate in a pose, deg.
pub fn degrees(pose: &Pose, joint: &str) -> Option<f64> {
    let mut all = pose.coordinates.iter();
    let found = all.find(|c| c.dof.name() == joint)?;
    Some(found.angle_rad.to_degrees())
}

/// Lean of the line from hip to shoulder from upright in a stance, deg.
pub fn trunk_lean(pose: &Pose) -> Option<f64> {
    let [.., hip, _, shoulder] = pose.outline.limbs.first()?[..] else {
        return None;
    };
    Some((shoulder.x - hip.x).atan2(shoulder.z - hip.z).to_degrees())
}

/// Thigh above the level in a stance, deg.
pub fn thigh_above_level(pose: &Pose) -> Option<f64> {
    Some(90.0 - (degrees(pose, "knee")? - degrees(pose, "ankle")?))
}

/// Force held at one place over that at another; places by knee angle or by the bar's height above the floor.
fn isometric_ratio(asked: &Asked) -> Option<f64> {
    /// Height of the bar on discs of 450 mm, cm.
    const FLOOR_CM: f64 = 22.5;
    let study = study_of(asked, None);
    let by = ["knee", "elbow", "height", "range"]
        .into_iter()
        .find(|name| asked.text(name).is_some())
        .expect("a place");
    let place = |pose: &Pose| match by {
        "height" => Some(FLOOR_CM + 100.0 * pose.load.travel_m),
        "range" => Some(pose.load.range),
        joint => degrees(pose, joint),
    };
    let at = |wanted: f64| {
        let nearest = study
            .range
            .poses
            .iter()
            .zip(study.capacity.values())
            .filter_map(|(pose, force)| Some(((place(pose)? - wanted).abs(), force)))
            .min_by(|a, b| a.0.total_cmp(&b.0))?;
        Some(nearest.1)
    };
    ratio(at(asked.number(by)), at(asked.number("beside")))
}

/// Shortest and longest fibre that matters over the range, in optimal lengths.
fn fibres(asked: &Asked) -> Option<(f64, f64)> {
    let study = study_of(asked, None);
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    for held in &study.capacity.held {
        for joint in 0..held.muscle_torques_nm.len() {
            let torques: Vec<f64> = held
                .muscles
                .iter()
                .zip(&held.activations)
                .map(|(m, a)| m.arms_m[joint] * (m.passive_n + a * m.active_n))
                .collect();
            let sense = held.muscle_torques_nm[joint].signum();
            let all: f64 = torques.iter().map(|t| (sense * t).max(0.0)).sum();
            for (torque, muscle) in torques.iter().zip(&held.muscles) {
                if sense * torque >= MATTERS * all && all > 1.0 {
                    least = least.min(muscle.state.length_norm);
                    most = most.max(muscle.state.length_norm);
                }
            }
        }
    }
    (most > 0.0).then_some((least, most))
}
