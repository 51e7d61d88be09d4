//! Capacity over a range for many strengths of the same muscles.
//!
//! In: acting muscles, poses; then a factor on each muscle's force. Out: capacities, one a pose.

use super::capacity_curve::plain_direction;
use super::muscle_force::{Acting, ForcesAtPose, MuscleAtPose, PerCoordinate};
use super::pose_programme::PoseProgramme;
use crate::error::Result;
use crate::movement::Range;
use crate::numeric::SimplexBasis;

/// The muscles at every pose of a range, held still; forces in proportion to what they are here.
///
/// A muscle's fibres and tendon stretch by shares of its peak force, so a muscle that is stronger in all its fibres is at the
/// same lengths and makes all its forces larger by the same factor.
#[derive(Debug, Clone)]
pub struct StrengthRange {
    poses: Vec<(Vec<MuscleAtPose>, PerCoordinate)>,
}

impl StrengthRange {
    /// The muscles at the poses of a range.
    #[must_use]
    pub fn of(acting: &Acting, range: &Range) -> Self {
        let poses = range.poses.iter().map(|pose| {
            let muscles = acting.muscles.iter();
            let muscles = muscles.map(|muscle| muscle.at(&acting.curves, pose, 0.0));
            (muscles.collect(), acting.passive_joints_nm(pose))
        });
        Self {
            poses: poses.collect(),
        }
    }

    /// What each pose of the same range holds along the plain load's direction, with a factor on each muscle's force.
    ///
    /// **Fails** where no activation keeps a pose.
    pub fn capacities(&self, range: &Range, factors: &[f64]) -> Result<Vec<f64>> {
        let mut programme = PoseProgramme::new(range.measure, range.sides)?;
        let direction = plain_direction(range.carrier);
        let mut warm: Option<SimplexBasis> = None;
        let each = range.poses.iter().zip(&self.poses);
        each.map(|(pose, (placed, joints_nm))| {
            let muscles = placed.iter().zip(factors);
            let forces = muscles.map(|(muscle, factor)| ForcesAtPose {
                arms_m: &muscle.arms_m,
                passive_n: muscle.passive_n * factor,
                active_n: muscle.active_n * factor,
            });
            programme.build(pose, forces, joints_nm, direction)?;
            let solution = programme.solve(pose, warm.as_ref())?;
            warm = Some(*solution.basis());
            Ok(solution.values()[0])
        })
        .collect()
    }
}
