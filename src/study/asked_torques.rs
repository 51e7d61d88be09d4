//! What load, limbs and surroundings ask of every joint of one side.
//!
//! In: a study, a setup or none. Out: torques, one a coordinate, and the reactions of the surroundings that belong to them.

use super::question::{SetupStudy, Study};
use crate::capacity::plain_direction;
use crate::movement::{Measure, PlaneForce};

/// Torque that the muscles of one side have to make about every moving joint at a sample, N·m.
///
/// ```text
/// with a load     τ_j = −( (J_jᵀ F)/n + G_j + Σ R_k·c_kj )    F the load's force, lifted or held
/// without         the same with F = λ·w, λ the capacity;  measured in torque  τ_j = ±λ − G_j
/// ```
/// | symbol | meaning                                                        | unit   |
/// | ------ | -------------------------------------------------------------- | ------ |
/// | `J_j`  | motion of the load's point per turn of the joint               | m      |
/// | `n`    | sides that share the load                                      | –      |
/// | `G_j`  | torque of the limbs' own weight, positive where it raises `q_j` | N·m    |
/// | `R_k`  | push of the surroundings ([`reactions_under`])                 | N, N·m |
/// | `c_kj` | its torque on the joint per unit                               | m, –   |
/// | `w`    | direction of the plain load                                    | –      |
///
/// **Shape.** Positive where the muscles have to turn the joint's angle up (flexion, abduction,
/// horizontal adduction, dorsiflexion), negative where down. The sign of `λ` is that of the movement. The
/// speed of a curve changes `λ`, not what a load asks. **Fails.** Never.
#[must_use]
pub fn asked_torques_nm(study: &Study, setup: Option<&SetupStudy>, index: usize) -> Vec<f64> {
    let pose = &study.range.poses[index];
    let share = 1.0 / study.range.sides.count();
    let mut asked: Vec<f64> = pose.gravity_nm.iter().map(|gravity| -gravity).collect();
    if let Some(force) = force_n(study, setup, index) {
        for (torque, column) in asked.iter_mut().zip(&pose.load_jacobian) {
            *torque -= share * (column.x * force.x_n + column.z * force.z_n);
        }
    } else {
        let capacity = study.capacity.held[index].capacity;
        asked[0] += pose.coordinates[0].slope_rad.signum() * capacity;
    }
    let reactions = reactions_under(study, setup, index);
    for (reaction, size) in pose.reactions.iter().zip(&reactions) {
        for (torque, entry) in asked.iter_mut().zip(&reaction.column) {
            *torque -= size * entry;
        }
    }
    asked
}

/// Pushes of the surroundings on one side, N or N·m, in the order of the pose's reactions.
///
/// ```text
/// R = R_0 + (R_λ − R_0)·|F|/λ
/// ```
/// `R_λ` at the heaviest load of the place, `R_0` of the body alone, `F` the load. **Why.** Below the heaviest load many pushes
/// keep the pose; between two that do, every mean does, within friction and in balance. **Source.** Assumed. **Fails.** Never.
#[must_use]
pub fn reactions_under(study: &Study, setup: Option<&SetupStudy>, index: usize) -> Vec<f64> {
    let held = &study.capacity.held[index];
    let share = match setup {
        Some(setup) if held.capacity > 0.0 => {
            setup.demand.samples[index].up.force.magnitude_n() / held.capacity
        }
        _ => 1.0,
    };
    let unloaded = &study.capacity.unloaded[index];
    let alone = |k: usize| unloaded.get(k).copied().unwrap_or(0.0);
    let most = held.reactions.iter().enumerate();
    most.map(|(k, most)| alone(k) + share * (most - alone(k)))
        .collect()
}

/// The load's force, all sides; `None` where a torque is measured and no load asked for.
fn force_n(study: &Study, setup: Option<&SetupStudy>, index: usize) -> Option<PlaneForce> {
    match (setup, study.range.measure) {
        (Some(setup), _) => Some(setup.demand.samples[index].up.force),
        (None, Measure::Force) => {
            let plain = plain_direction(study.range.carrier);
            let capacity = study.capacity.held[index].capacity;
            Some(PlaneForce {
                x_n: plain.x_n * capacity,
                z_n: plain.z_n * capacity,
            })
        }
        (None, Measure::Torque) => None,
    }
}
