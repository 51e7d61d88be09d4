//! A pose as a free body: the load, its lever about every joint, the limbs' own weight, and what holds both.
//!
//! In: a study, a setup or none, a sample. Out: [`FreeBody`] of one side, whose moments balance at every joint.

use super::asked_torques::asked_torques_nm;
use super::question::{SetupStudy, Study};
use crate::anatomy::Dof;
use crate::capacity::plain_direction;
use crate::movement::{Measure, PlaneForce, View};
use crate::numeric::Point;

/// One joint of a free body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FreeJoint {
    /// Its degree of freedom.
    pub dof: Dof,
    /// Its centre in the picture, m.
    pub centre: Point,
    /// Lever of the load about it, m.
    pub lever_m: f64,
    /// The point of the load's line of action that is nearest to the joint, if the picture shows the lever about as long as it is.
    pub foot: Option<Point>,
    /// Moment of the load, N·m, positive where muscles have to hold it.
    pub load_nm: f64,
    /// Moment of the limbs' own weight, likewise.
    pub limbs_nm: f64,
    /// What muscles and tissue of the joint have to hold, N·m: the sum of both.
    pub held_nm: f64,
}

/// The floor's answer, where lifter and load stand on it alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FloorForce {
    /// Upward force on one side, N.
    pub force_n: f64,
    /// Where it acts, m along the floor of the picture.
    pub at_m: f64,
    /// Weight of the body above the feet, one side, N.
    pub body_n: f64,
    /// Where that acts, m.
    pub body_at_m: f64,
}

/// A pose as a free body.
#[derive(Debug, Clone, PartialEq)]
pub struct FreeBody {
    /// Force of the load on one side, N.
    pub load: PlaneForce,
    /// Where it acts in the picture, m.
    pub at: Point,
    /// The joints, in the order of their coordinates.
    pub joints: Vec<FreeJoint>,
    /// The floor's answer, if the lift stands on the floor.
    pub floor: Option<FloorForce>,
}

/// A lever that is longer or shorter in the picture by less than this share, and less than this, is drawn: limbs that do not move
/// in the plane of the picture look shorter (a drawing's measures).
const ALIKE: f64 = 0.25;
/// The least difference that is let pass, m.
const ALIKE_M: f64 = 0.02;

impl FreeBody {
    /// A sample of a study under a setup, or under the most that it can hold.
    ///
    /// ```text
    /// M_held = M_load + M_limbs,   M_load = ∓ J_jᵀ F,   lever = M_load / |F|
    /// N = W + |F|,   N·x_N = W·x_W + moment of the load about the ankle
    /// ```
    /// `J` motion of the load per turn of the joint (m), `F` load of one side (N), `W` weight of the body above the
    /// feet, `N` force of the floor at `x_N`. **Source.** Statics. **Differs.** Sideways pushes of hands are left out.
    /// **Fails.** Never.
    #[must_use]
    pub fn of(study: &Study, setup: Option<&SetupStudy>, sample: usize) -> Self {
        let pose = &study.range.poses[sample];
        let load = load_of(study, setup, sample);
        let outline = &pose.outline;
        let at = match outline.view {
            View::Side => outline.load,
            // Seen from the front the load is drawn between the hands; it acts in each of them.
            View::Front => outline.limbs[0].last().copied().unwrap_or(outline.load),
        };
        let asked = asked_torques_nm(study, setup, sample);
        let joints = asked.iter().enumerate().map(|(row, held)| {
            let side = if *held < 0.0 { -1.0 } else { 1.0 };
            let limbs_nm = -side * pose.gravity_nm[row];
            let load_nm = side * held - limbs_nm;
            let size_n = load.magnitude_n().max(f64::MIN_POSITIVE);
            let lever_m = load_nm.abs() / size_n;
            let centre = outline.centres[row];
            let along = Point::new(load.x_n / size_n, load.z_n / size_n);
            let foot = at + along * (centre - at).dot(along);
            let off_m = ((foot - centre).length() - lever_m).abs();
            let is_shown = off_m < ALIKE_M.max(ALIKE * lever_m);
            FreeJoint {
                dof: pose.coordinates[row].dof,
                centre,
                lever_m,
                foot: is_shown.then_some(foot),
                load_nm,
                limbs_nm,
                held_nm: side * held,
            }
        });
        Self {
            load,
            at,
            joints: joints.collect(),
            floor: floor_of(study, sample, load),
        }
    }
}

/// The load of one side.
fn load_of(study: &Study, setup: Option<&SetupStudy>, sample: usize) -> PlaneForce {
    let share = 1.0 / study.range.sides.count();
    let force = match (setup, study.range.measure) {
        (Some(setup), _) => setup.demand.samples[sample].up.force,
        (None, measure) => {
            let plain = plain_direction(study.range.carrier);
            let capacity = study.capacity.held[sample].capacity;
            let lever_m = match measure {
                Measure::Force => 1.0,
                // A torque is that of a weight where the limb carries it.
                Measure::Torque => {
                    let column = study.range.poses[sample].load_jacobian[0];
                    (column.x * plain.x_n + column.z * plain.z_n).abs()
                }
            };
            let size = capacity / lever_m.max(1.0e-3) / share;
            let size = if measure == Measure::Force {
                capacity
            } else {
                size
            };
            PlaneForce {
                x_n: plain.x_n * size,
                z_n: plain.z_n * size,
            }
        }
    };
    PlaneForce {
        x_n: share * force.x_n,
        z_n: share * force.z_n,
    }
}

/// Of a pose whose only reaction is the pressure under the foot.
fn floor_of(study: &Study, sample: usize, load: PlaneForce) -> Option<FloorForce> {
    let pose = &study.range.poses[sample];
    let ([balance], [reading]) = (&pose.balances[..], &pose.readings[..]) else {
        return None;
    };
    if reading.name != "centre_of_pressure_m" {
        return None;
    }
    let over = reading.over.as_ref()?;
    let force_n = over.value(&[0.0], load);
    let moment_nm =
        -(balance.constant + balance.per_load[0] * load.x_n + balance.per_load[1] * load.z_n);
    // Moments count from the ankle, which stands at the picture's origin.
    let ankle = pose.outline.centres.first()?.x;
    Some(FloorForce {
        force_n,
        at_m: ankle + moment_nm / force_n,
        body_n: over.constant,
        body_at_m: ankle - balance.constant / over.constant,
    })
}
