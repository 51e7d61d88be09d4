//! Fully active fibres at every place and speed of a grid: the same however strong the muscles are.
//!
//! In: acting muscles, poses, speeds. Out: [`FibreNodes`], which a body's weaker and stronger versions share.

use crate::capacity::{Acting, ActingMuscle, ForcesAtPose, FullyActive, MusclePlace, PlacedMuscle};
use crate::movement::Pose;
use std::sync::OnceLock;

/// The fibres of a body over a grid of places and speeds, each solved when it is first asked for.
///
/// In balance with its tendon a fibre's length depends on shares of its peak force only, so tired and trained muscles
/// of one body have the same.
#[derive(Debug)]
pub(super) struct FibreNodes {
    speeds: Vec<f64>,
    /// Every muscle at each place, in the order of [`Acting::muscles`].
    places: Vec<Vec<MusclePlace>>,
    /// Every muscle at each speed of each place, a column of the grid a place.
    nodes: Vec<OnceLock<Vec<FullyActive>>>,
}

impl FibreNodes {
    /// The muscles at some poses; no fibre is solved yet.
    pub(super) fn of(acting: &Acting, poses: &[&Pose], speeds: &[f64]) -> Self {
        let column = |pose: &&Pose| -> Vec<MusclePlace> {
            let placed = acting.placed(pose).into_iter();
            placed.map(PlacedMuscle::into_place).collect()
        };
        Self {
            places: poses.iter().map(column).collect(),
            nodes: vec![OnceLock::new(); poses.len() * speeds.len()],
            speeds: speeds.to_vec(),
        }
    }

    /// Speeds along the range, 1/s.
    pub(super) fn speeds(&self) -> &[f64] {
        &self.speeds
    }

    /// What every muscle of a version of the body can do at a speed of a column, in the order of [`Acting::muscles`].
    pub(super) fn at<'a>(
        &'a self,
        acting: &'a Acting,
        column: usize,
        speed: usize,
    ) -> impl Iterator<Item = ForcesAtPose<'a>> + Clone {
        let places = &self.places[column];
        let fibres = self.nodes[column * self.speeds.len() + speed].get_or_init(|| {
            let each = acting.muscles.iter().zip(places);
            let active = |(muscle, place): (&ActingMuscle, &MusclePlace)| {
                place.fully_active(&muscle.fibre, &acting.curves, self.speeds[speed])
            };
            each.map(active).collect()
        });
        let each = acting.muscles.iter().zip(places).zip(fibres);
        each.map(|((muscle, place), active)| place.forces(&muscle.fibre, active))
    }
}
