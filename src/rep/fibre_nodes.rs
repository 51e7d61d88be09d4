//! Fully active fibres at every place and speed of a grid: the same however strong the muscles are.
//!
//! In: acting muscles, poses, speeds. Out: [`FibreNodes`], which a body's weaker and stronger versions share.

use crate::capacity::{Acting, FullyActive};
use crate::movement::Pose;
use rayon::prelude::*;

/// The fibres of a body over a grid of places and speeds.
///
/// In balance with its tendon a fibre's length depends on shares of its peak force only, so tired and trained muscles
/// of one body have the same.
#[derive(Debug)]
pub(super) struct FibreNodes {
    speeds: Vec<f64>,
    muscles: usize,
    /// Muscle by muscle at each speed of each place, a column of the grid a place.
    columns: Vec<Vec<FullyActive>>,
}

impl FibreNodes {
    /// Solves the fibres of every muscle, one place after the other in parallel.
    pub(super) fn of(acting: &Acting, poses: &[&Pose], speeds: &[f64]) -> Self {
        let column = |pose: &&Pose| -> Vec<FullyActive> {
            let placed = acting.placed(pose);
            let at = |speed: &f64| {
                let speed = *speed;
                let curves = &acting.curves;
                placed.iter().map(move |m| m.fully_active(curves, speed))
            };
            speeds.iter().flat_map(at).collect()
        };
        Self {
            columns: poses.par_iter().map(column).collect(),
            speeds: speeds.to_vec(),
            muscles: acting.muscles.len(),
        }
    }

    /// Speeds along the range, 1/s.
    pub(super) fn speeds(&self) -> &[f64] {
        &self.speeds
    }

    /// Every muscle at a speed of a column, in the order of [`Acting::muscles`].
    pub(super) fn at(&self, column: usize, speed: usize) -> &[FullyActive] {
        let from = speed * self.muscles;
        &self.columns[column][from..from + self.muscles]
    }
}
