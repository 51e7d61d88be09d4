//! The body of a pose with its muscles, as plain lines.
//!
//! In: a study, a sample of its range. Out: [`BodyPicture`] in metres; the muscles run as in every other picture
//! ([`super::muscle_paths`]).

use super::body_lines::stick_figure;
use super::muscle_paths::{DrawnArms, muscle_path, shown_joints};
use crate::plot::{DrawnLoad, StickFigure};
use crate::study::Study;
use serde::Serialize;

/// Arms shorter than this cross no joint, m.
const CROSSES_M: f64 = 0.001;
/// In so many places along a bone muscles begin in turn (a drawing's measure).
const PLACES: usize = 4;

/// A pose as lines, x forwards and y upwards, m.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BodyPicture {
    /// Each limb as its joints in order.
    pub limbs: Vec<Vec<[f64; 2]>>,
    /// Middle of the head and its radius.
    pub head: Option<([f64; 2], f64)>,
    /// Floor, bench, seat, a bar from the front.
    pub supports: Vec<[[f64; 2]; 2]>,
    /// Middle of the load, and the radius of plates where it is seen from its end.
    pub load: Option<([f64; 2], Option<f64>)>,
    /// The muscles of one side.
    pub muscles: Vec<DrawnMuscle>,
}

/// One muscle as a line.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawnMuscle {
    /// Its number in the study.
    pub number: usize,
    /// Its way past the joints.
    pub way: Vec<[f64; 2]>,
}

/// Left, lower, right and upper end of all poses, m.
#[must_use]
pub fn body_extent(study: &Study) -> [f64; 4] {
    let carrier = study.range.carrier;
    let figures = study.range.poses.iter().map(|p| stick_figure(p, carrier));
    let extents = figures.filter_map(|figure: StickFigure| figure.extent());
    let join = |a: [f64; 4], b: [f64; 4]| {
        [
            a[0].min(b[0]),
            a[1].min(b[1]),
            a[2].max(b[2]),
            a[3].max(b[3]),
        ]
    };
    extents.reduce(join).unwrap_or([0.0, 0.0, 1.0, 1.0])
}

/// The body at a sample.
#[must_use]
pub fn body_picture(study: &Study, sample: usize) -> BodyPicture {
    let pose = &study.range.poses[sample];
    let figure = stick_figure(pose, study.range.carrier);
    let shown = shown_joints(study);
    let held = &study.capacity.held[sample];
    let muscles = held.muscles.iter().enumerate();
    BodyPicture {
        muscles: muscles
            .filter_map(|(number, muscle)| {
                let arms = muscle.arms_m.iter();
                let arms: Vec<Option<f64>> = arms
                    .map(|arm_m| (arm_m.abs() > CROSSES_M).then_some(*arm_m))
                    .collect();
                let drawn = DrawnArms {
                    name: &study.capacity.muscles[number].replace('_', " "),
                    arms_m: &arms,
                    place: number % PLACES,
                };
                let way = muscle_path(study, sample, &shown, drawn, (0, None))?.points;
                Some(DrawnMuscle { number, way })
            })
            .collect(),
        limbs: figure.limbs,
        head: figure.head,
        supports: figure.supports,
        load: figure.load.map(|load| match load {
            DrawnLoad::Bar { at, radius_m } => (at, Some(radius_m)),
            DrawnLoad::Dumbbell { at } => (at, None),
        }),
    }
}
