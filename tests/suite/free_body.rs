//! Lifts as free bodies: moments in balance, levers as in the picture, the floor's answer.

use torquill::anatomy::Dof;
use torquill::library::Library;
use torquill::movement::View;
use torquill::study::{Desk, FreeBody};
use torquill::units::System;

#[test]
fn law_moments_of_a_free_body_are_in_balance_at_every_joint_of_every_lift() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let (mut joints, mut levers) = (0, 0);
    for lift in desk.lifts() {
        let study = &lift.study;
        let name = &study.movement_name;
        for sample in [0, study.range.poses.len() / 2, study.range.poses.len() - 1] {
            let body = FreeBody::of(study, None, sample);
            let size_n = body.load.magnitude_n();
            for joint in &body.joints {
                joints += 1;
                let sum = joint.load_nm + joint.limbs_nm - joint.held_nm;
                assert!(
                    sum.abs() < 1e-9 * (1.0 + joint.held_nm),
                    "{name}: {joint:?}"
                );
                let moment = size_n * joint.lever_m - joint.load_nm.abs();
                assert!(
                    moment.abs() < 1e-6 * (1.0 + joint.held_nm),
                    "{name}: {joint:?}"
                );
                let Some(foot) = joint.foot else { continue };
                levers += 1;
                // The lever in the picture is square to the force, and as long as the moment says.
                let drawn = foot - joint.centre;
                let along = drawn.x * body.load.x_n + drawn.z * body.load.z_n;
                assert!(along.abs() < 1e-6 * size_n.max(1.0), "{name}: {joint:?}");
                assert!(
                    (drawn.length() - joint.lever_m).abs() < 2.1e-3,
                    "{name}: {joint:?}"
                );
            }
        }
    }
    assert!(
        joints > 100 && levers > 60,
        "{joints} joints, {levers} levers in the picture"
    );
}

#[test]
fn law_levers_of_a_weight_about_the_lower_back_are_level_distances() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    for name in ["squat", "deadlift"] {
        let study = &desk.lift(name).expect("it stands").study;
        for (sample, pose) in study.range.poses.iter().enumerate() {
            assert_eq!(pose.outline.view, View::Side);
            let body = FreeBody::of(study, None, sample);
            for joint in &body.joints {
                // The leg turns out and works in a plane of its own; the trunk in that of the picture.
                if joint.dof == Dof::Lumbar {
                    let level = (pose.load.x_m - joint.centre.x).abs();
                    assert!(
                        (level - joint.lever_m).abs() < 1e-6,
                        "{name} {sample}: {joint:?}"
                    );
                }
            }
        }
    }
}

#[test]
fn law_the_floor_bears_body_and_load_and_balances_them_about_the_ankle() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let study = &desk.lift("squat").expect("the squat").study;
    for (sample, pose) in study.range.poses.iter().enumerate() {
        let body = FreeBody::of(study, None, sample);
        let floor = body.floor.expect("a squat stands on the floor");
        let load_n = -body.load.z_n;
        assert!((floor.force_n - floor.body_n - load_n).abs() < 1e-9 * floor.force_n);
        let ankle = pose.outline.centres[0].x;
        let about_ankle = floor.force_n * (floor.at_m - ankle)
            - floor.body_n * (floor.body_at_m - ankle)
            - load_n * (pose.load.x_m - ankle);
        assert!(
            about_ankle.abs() < 1e-6 * floor.force_n,
            "{sample}: {about_ankle}"
        );
        // The heaviest load keeps the pressure under the foot.
        assert!((-0.1..0.25).contains(&(floor.at_m - ankle)), "{floor:?}");
    }
}
