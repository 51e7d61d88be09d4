//! What load and limbs ask of every joint of one side.
//!
//! In: a study, a setup or none. Out: torques, one a coordinate.

use super::question::{SetupStudy, Study};
use crate::capacity::plain_direction;
use crate::movement::{Measure, PlaneForce};

/// Torque that the muscles of one side have to make about every moving joint at a sample, N·m.
///
/// ```text
/// with a load     τ_j = −( (J_jᵀ F)/n + G_j )            F the load's force, lifted or held
/// without         the same with F = λ·w, λ the capacity;  measured in torque  τ_j = ±λ − G_j
/// ```
/// | symbol | meaning                                                        | unit |
/// | ------ | -------------------------------------------------------------- | ---- |
/// | `J_j`  | motion of the load's point per turn of the joint               | m    |
/// | `n`    | sides that share the load                                      | –    |
/// | `G_j`  | torque of the limbs' own weight, positive where it raises `q_j` | N·m  |
/// | `w`    | direction of the plain load                                    | –    |
///
/// **Shape.** Positive where the muscles have to turn the joint's angle up (flexion, abduction,
/// horizontal adduction, dorsiflexion), negative where down. The sign of `λ` is that of the movement.
/// **Differs.** What hands and feet may push sideways beside it is no part of it: load and limbs only. The
/// speed of a curve changes `λ`, not what a load asks. **Fails.** Never.
#[must_use]
pub fn asked_torques_nm(study: &Study, setup: Option<&SetupStudy>, index: usize) -> Vec<f64> {
    let pose = &study.range.poses[index];
    let capacity = study.capacity.held[index].capacity;
    let share = 1.0 / study.range.sides.count();
    let by_force = |force: PlaneForce| {
        let columns = pose.load_jacobian.iter().zip(&pose.gravity_nm);
        let asked = columns.map(|(column, gravity)| {
            -(share * (column.x * force.x_n + column.z * force.z_n) + gravity)
        });
        asked.collect()
    };
    match (setup, study.range.measure) {
        (Some(setup), _) => by_force(setup.demand.samples[index].up.force),
        (None, Measure::Force) => {
            let plain = plain_direction(study.range.carrier);
            by_force(PlaneForce {
                x_n: plain.x_n * capacity,
                z_n: plain.z_n * capacity,
            })
        }
        (None, Measure::Torque) => {
            let mut asked: Vec<f64> = pose.gravity_nm.iter().map(|gravity| -gravity).collect();
            asked[0] += pose.coordinates[0].slope_rad.signum() * capacity;
            asked
        }
    }
}
