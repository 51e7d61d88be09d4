//! The range from start to end: every pose of a movement for a lifter, on one set of samples.
//!
//! In: a movement, a lifter, how many samples. Out: [`Range`], the poses that capacity and demand share.

use super::arm::ArmPath;
use super::bridge::BridgePath;
use super::leg_press::LegPressPath;
use super::limb_weight::LimbWeight;
use super::load_point::Carrier;
use super::pose::Pose;
use super::record::{Measure, Movement, PathRecord, Sides};
use super::stance::StancePath;
use super::sweep::SweepPath;
use super::traced_path::TracedPath;
use crate::anatomy::Lifter;
use crate::bounds::bounds;
use crate::error::{Error, PathFault, Result};

/// All poses of a movement on one set of samples, evenly spaced in the range.
#[derive(Debug, Clone, PartialEq)]
pub struct Range {
    /// The poses, `range` from 0 to 1.
    pub poses: Vec<Pose>,
    /// One limb or two.
    pub sides: Sides,
    /// Force or torque.
    pub measure: Measure,
    /// How the load is taken.
    pub carrier: Carrier,
}

/// A load that ends no more than this below its start is not helped along its way, m: a slip of drawing, not a lift.
const LEVEL_M: f64 = 0.01;

impl Range {
    /// How far the load ends below where it starts, m; none where it ends level or above.
    #[must_use]
    pub fn sinks_m(&self) -> Option<f64> {
        let (first, last) = self.poses.first().zip(self.poses.last())?;
        Some(first.load.z_m - last.load.z_m).filter(|sinks| *sinks > LEVEL_M)
    }
}

/// Traces a movement.
///
/// # Algorithm
/// 1. The path gives the angles at every sample.
/// 2. Their slopes come from a central difference of fourth order, step 0.001 of the range
///    (error near 1e-12 for smooth paths), or what the path asks for.
/// 3. The path makes the pose.
///
/// **Fails** if the limbs cannot close the path, naming the place, or on an unusable sample count.
pub fn trace(movement: &Movement, lifter: &Lifter, samples: usize) -> Result<Range> {
    let bound = &bounds().samples;
    if !bound.holds(samples as f64) {
        return Err(Error::bad(PathFault::Samples {
            asked: samples,
            least: bound.fewest(),
            most: bound.most_of_them(),
        }));
    }
    let way = LiftWay::of(movement, lifter)?;
    let last = (samples - 1) as f64;
    let poses = (0..samples)
        .map(|index| way.pose(index as f64 / last))
        .collect::<Result<Vec<_>>>()?;
    Ok(Range {
        poses,
        sides: movement.sides,
        measure: movement.measure,
        carrier: movement.carrier()?,
    })
}

/// The way of a movement for a lifter, of which the pose at any place can be asked.
pub struct LiftWay {
    path: Box<dyn TracedPath>,
}

impl LiftWay {
    /// The way of this lifter.
    ///
    /// **Fails** as [`trace`] where the limbs cannot make the first or last pose.
    pub fn of(movement: &Movement, lifter: &Lifter) -> Result<Self> {
        movement.check_technique()?;
        let path = path_of(movement, lifter)?;
        Ok(Self { path })
    }

    /// The pose at a place.
    ///
    /// **Fails** where the limbs cannot make it.
    pub fn pose(&self, range: f64) -> Result<Pose> {
        pose_at(self.path.as_ref(), range)
    }
}

/// One place of a movement: its pose, and the limbs whose weight is part of it.
///
/// **Fails** as [`trace`] where the limbs cannot make the pose.
pub fn trace_place(
    movement: &Movement,
    lifter: &Lifter,
    range: f64,
) -> Result<(Pose, Vec<LimbWeight>)> {
    let way = LiftWay::of(movement, lifter)?;
    let limbs = way.path.limbs(range, &way.path.angles(range)?)?;
    Ok((way.pose(range)?, limbs))
}

fn path_of(movement: &Movement, lifter: &Lifter) -> Result<Box<dyn TracedPath>> {
    Ok(match &movement.path {
        PathRecord::Sweep(record) => Box::new(SweepPath::new(record, movement, lifter)?),
        PathRecord::Arm(record) => Box::new(ArmPath::new(record, movement, lifter)?),
        PathRecord::LegPress(record) => Box::new(LegPressPath::new(record, movement, lifter)?),
        PathRecord::Stance(record) => Box::new(StancePath::new(record, movement, lifter)?),
        PathRecord::Bridge(record) => Box::new(BridgePath::new(record, movement, lifter)?),
    })
}

fn pose_at(path: &dyn TracedPath, s: f64) -> Result<Pose> {
    let step = path.step();
    let angles = path.angles(s)?;
    let (near_up, near_down) = (path.angles(s + step)?, path.angles(s - step)?);
    let (far_up, far_down) = (path.angles(s + 2.0 * step)?, path.angles(s - 2.0 * step)?);
    let slopes: Vec<f64> = (0..angles.len())
        .map(|j| (8.0 * (near_up[j] - near_down[j]) - (far_up[j] - far_down[j])) / (12.0 * step))
        .collect();
    let pose = path.pose(s, &angles, &slopes)?;
    let finite = pose.gravity_nm.iter().all(|g| g.is_finite())
        && pose.coordinates.iter().all(|c| c.angle_rad.is_finite());
    if finite {
        Ok(pose)
    } else {
        Err(Error::bad(PathFault::PoseNotFinite { range: s }))
    }
}
