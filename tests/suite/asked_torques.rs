//! What `joint_torques_nm` tells: the torque that the muscles of one side have to make about each joint.

use crate::rep::{lifter, movement};

use torquill::library::{Library, Shelf};
use torquill::movement::{Carrier, Measure, PlaneForce};
use torquill::resistance::{Item, Setup, Weight};
use torquill::study::{Question, Study, asked_torques_nm, study};
use torquill::units::Mass;

fn loaded(movement_name: &str, lifter_name: &str, load_kg: f64) -> Study {
    let (movement, body) = (movement(movement_name), lifter(lifter_name));
    let question = Question::new(movement_name, &movement, &body);
    let mut setup = Setup::plain(Mass::from_kg(load_kg));
    if movement.carrier().unwrap() == Carrier::Body {
        setup
            .items
            .push(Item::Weight(Weight::BodyMass(body.body_mass)));
    }
    study(&question, &[setup]).unwrap_or_else(|e| panic!("{movement_name}: {e}"))
}

#[test]
fn law_without_a_load_a_single_joint_is_asked_for_its_capacity_and_its_limb() {
    for name in Library::built_in().names(Shelf::Movements) {
        let found = loaded(&name, "reference-man", 5.0);
        if found.range.measure != Measure::Torque {
            continue;
        }
        for (index, pose) in found.range.poses.iter().enumerate() {
            let asked = asked_torques_nm(&found, None, index);
            let held = &found.capacity.held[index];
            let sense = pose.coordinates[0].slope_rad.signum();
            let load_alone = sense * (asked[0] + pose.gravity_nm[0]);
            assert!(
                (load_alone - held.capacity).abs() < 1.0e-9 * held.capacity.abs().max(1.0),
                "{name} {index}: {load_alone} {}",
                held.capacity
            );
        }
    }
}

/// Virtual work: joint torques times joint angles are the work of load and limbs along the path; bar and plate push square to it.
#[test]
fn law_asked_torques_do_the_work_of_load_and_limbs() {
    for name in Library::built_in().names(Shelf::Movements) {
        for who in ["reference-man", "reference-woman"] {
            let found = loaded(&name, who, 20.0);
            let sides = found.range.sides.count();
            for (index, pose) in found.range.poses.iter().enumerate() {
                let work_of = |force: PlaneForce| {
                    -(force.x_n * pose.load.dx_ds_m + force.z_n * pose.load.dz_ds_m) / sides
                };
                let along = |torques: &[f64]| -> f64 {
                    let turns = pose.coordinates.iter().map(|c| c.slope_rad);
                    torques.iter().zip(turns).map(|(t, turn)| t * turn).sum()
                };
                let with = asked_torques_nm(&found, Some(&found.setups[0]), index);
                let force = found.setups[0].demand.samples[index].up.force;
                let expected = work_of(force) - along(&pose.gravity_nm);
                // Turns are differences of poses: what plate or bar push does no work to that precision of each term.
                let turns = pose.coordinates.iter().map(|c| c.slope_rad);
                let sizes = with.iter().zip(turns).map(|(t, turn)| (t * turn).abs());
                let size = sizes.fold(expected.abs().max(1.0), f64::max);
                assert!(
                    (along(&with) - expected).abs() < 1.0e-6 * size,
                    "{name} {who} {index}: {} {expected}",
                    along(&with)
                );
            }
        }
    }
}
