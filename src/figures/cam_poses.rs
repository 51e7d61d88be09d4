//! The cam of a machine as it turns with the lever, drawn to scale.
//!
//! In: a lift of one joint under a stack over a cam. Out: the cam at three places of the range, with its cable.

use super::over_range::OverRange;
use crate::narrative::cam_words::cam_caption;
use crate::plot::{StickFigure, StripPose};
use crate::study::SetupStudy;
use crate::units::System;

/// How far below the axis the cable is drawn, m (a drawing's measure).
const CABLE_M: f64 = 0.035;
/// Every so many samples a point of the rim is drawn.
const RIM_STEP: usize = 4;

/// The cam at start, middle and end, each with the moment arm of the stack there.
///
/// ```text
/// p(α) = r(α)·n(α) + r′(α)·n′(α),   n(α) = (cos α, sin α)
/// ```
/// `r` distance of the cable's line from the axis (m), `α` the direction of that distance in the cam, which turns by the lever's
/// angle: `α = −(θ − θ₀)`. Then the cable hangs level with the axis at `x = r`. **Source.** A closed convex curve by its
/// support function.
pub(super) fn cam_poses(over: &OverRange<'_>, setup: &SetupStudy, units: System) -> Vec<StripPose> {
    let study = over.told.study;
    let angles: Vec<f64> = study
        .range
        .poses
        .iter()
        .map(|pose| pose.coordinates[0].angle_rad - study.range.poses[0].coordinates[0].angle_rad)
        .collect();
    let radii = setup.cam_radii_m(&study.range.carrier);
    let last = radii.len() - 1;
    let slope = |at: usize| {
        let (from, to) = (at.saturating_sub(1), (at + 1).min(last));
        // Over −θ, as the cam sees it.
        -(radii[to] - radii[from]) / (angles[to] - angles[from])
    };
    let slopes: Vec<f64> = (0..=last).map(slope).collect();
    let edge = |at: usize, turned_rad: f64| {
        let (sin, cos) = (turned_rad - angles[at]).sin_cos();
        [
            radii[at] * cos - slopes[at] * sin,
            radii[at] * sin + slopes[at] * cos,
        ]
    };
    let place = |here: usize| {
        let rim = (0..last).step_by(RIM_STEP).chain([last]);
        let rim = rim.map(|at| edge(at, angles[here]));
        let axis = [[0.0, 0.0]];
        let outline: Vec<[f64; 2]> = axis.into_iter().chain(rim).chain(axis).collect();
        let [x, y] = edge(here, angles[here]);
        let cable = [[x, y], [x, -CABLE_M]];
        let sides = outline.windows(2).map(|pair| [pair[0], pair[1]]);
        let figure = StickFigure {
            // The moment arm: level, from the axis to the cable's line.
            limbs: vec![vec![[0.0, 0.0], [x, 0.0]]],
            supports: sides.chain([cable]).collect(),
            ..StickFigure::default()
        };
        StripPose {
            at: over.place(here as f64 / last as f64),
            caption: cam_caption(
                over.told.place_and_unit(here as f64 / last as f64),
                x,
                units,
            ),
            figure,
        }
    };
    [0, last / 2, last].map(place).to_vec()
}
