//! What the muscles on the other side of the joints can do to stop a load.
//!
//! In: poses, acting muscles, the load's direction. Out: the generalised force with which the lifter can hold the
//! load back at every pose.

use super::grid_ground::lever_of;
use crate::capacity::{Acting, Solver};
use crate::error::Result;
use crate::movement::{Carrier, Measure, PlaneForce, Pose, Range};
use crate::units::{Mass, STANDARD_GRAVITY_M_S2};

/// Every so many poses the programme is solved; between them the answer is a straight line.
const STRIDE: usize = 10;

/// Greatest generalised force against the lift, N·m per unit of range, one a pose.
///
/// ```text
/// B = min(λ, m·g)·|w · dx/ds|       λ: the pose's programme with the load turned round: as if a rope pulled it on
/// ```
/// `m·g` the lifter's weight: who lies, stands or sits pulls a bar down with no more than that, or leaves bench or
/// floor; torques of one limb have no such limit. **Shape.** 0 or more. 0 where nothing grips the load from above: under a bar on the shoulders, at the floor, on a
/// sled or a lever's pad, whoever stops pushing can only wait for gravity.
/// **Source.** The same programme as capacity; fast aimed movements end by the antagonists' burst (Gottlieb et al.
/// 1989, from memory). **Differs.** Of standing still; lengthening muscles brake harder.
pub(super) fn braking(
    acting: &Acting,
    range: &Range,
    directions: &[PlaneForce],
    body: Mass,
) -> Result<Vec<f64>> {
    let count = range.poses.len();
    if !is_gripped(range) {
        return Ok(vec![0.0; count]);
    }
    let mut solver = Solver::new(acting, range.measure, range.sides)?;
    let most = match range.measure {
        Measure::Force => body.as_kg() * STANDARD_GRAVITY_M_S2,
        Measure::Torque => f64::INFINITY,
    };
    let mut known: Vec<(usize, f64)> = Vec::new();
    let places = (0..count).step_by(STRIDE);
    for index in places.chain(Some(count - 1).filter(|last| last % STRIDE != 0)) {
        let (pose, direction) = (&range.poses[index], directions[index]);
        let held = solver.solve(&turned_round(pose, range.measure), against(direction), 0.0);
        let lever = lever_of(pose, direction, range.measure).abs();
        // No answer: the pose cannot be kept against such a pull at all.
        let force = held.map_or(0.0, |held| (held.capacity.min(most) * lever).max(0.0));
        known.push((index, force));
    }
    Ok((0..count).map(|index| between(&known, index)).collect())
}

/// Whether hands hold the load, so that they can pull it back.
fn is_gripped(range: &Range) -> bool {
    let hands = |pose: &Pose| pose.reactions.iter().any(|r| r.name == "lateral");
    match range.carrier {
        Carrier::Dumbbell => true,
        Carrier::Bar => range.poses.first().is_some_and(hands),
        Carrier::Sled { .. } | Carrier::Lever { .. } | Carrier::Body => false,
    }
}

fn against(direction: PlaneForce) -> PlaneForce {
    PlaneForce {
        x_n: -direction.x_n,
        z_n: -direction.z_n,
    }
}

/// A pose under the load turned round: the programme of a torque takes its load's sense from the way its angle moves,
/// and what hands may push sideways grows with the size of the load, whichever way it pulls.
fn turned_round(pose: &Pose, measure: Measure) -> Pose {
    let mut turned = pose.clone();
    for reaction in &mut turned.reactions {
        for limit in [&mut reaction.least, &mut reaction.most] {
            limit.per_load = limit.per_load.map(|share| -share);
        }
    }
    if measure == Measure::Torque {
        for coordinate in &mut turned.coordinates {
            coordinate.slope_rad = -coordinate.slope_rad;
        }
    }
    turned
}

/// The value at an index on the straight lines through known ones.
fn between(known: &[(usize, f64)], index: usize) -> f64 {
    let after = known.partition_point(|(at, _)| *at < index);
    let (right, high) = known[after.min(known.len() - 1)];
    if right == index || after == 0 {
        return high;
    }
    let (left, low) = known[after - 1];
    low + (high - low) * (index - left) as f64 / (right - left) as f64
}
