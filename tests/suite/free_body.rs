//! Lifts as free bodies: moments in balance, levers as in the picture, the floor's answer.

use torquill::anatomy::Dof;
use torquill::capacity::Acting;
use torquill::draw::{Primitive, Scene};
use torquill::figures::{Chart, muscles_on_skeleton};
use torquill::library::Library;
use torquill::movement::{Measure, View};
use torquill::plot::{BodyMark, Look, Size};
use torquill::study::{Desk, FreeBody, muscle_parts};
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
            let (size_n, through) = (body.through_n, body.through);
            let seen_n = through.magnitude_n();
            for joint in &body.joints {
                joints += 1;
                let sum = joint.load_nm + joint.pushed_nm + joint.limbs_nm - joint.held_nm;
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
                let along = drawn.x * through.x_n + drawn.z * through.z_n;
                assert!(along.abs() < 1e-6 * seen_n.max(1.0), "{name}: {joint:?}");
                let off_m = (drawn.length() - joint.lever_m).abs();
                // Limbs that leave the plane of the picture look shorter or longer; the note below the picture says so.
                let is_in_plane = study.range.measure == Measure::Torque
                    || ["leg-press", "hip-thrust"].contains(&name.as_str());
                let most_m = if is_in_plane {
                    2.1e-3
                } else {
                    f64::max(0.02, 0.25 * joint.lever_m)
                };
                assert!(off_m < most_m, "{name}: {off_m} {joint:?}");
            }
        }
    }
    assert!(
        joints > 100 && levers > 60,
        "{joints} joints, {levers} levers in the picture"
    );
}

#[test]
fn law_what_a_free_body_holds_is_what_its_muscles_and_joints_make() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    for lift in desk.lifts() {
        let study = &lift.study;
        let acting = Acting::of(&lift.model.lifter, &study.range.poses).expect("its muscles");
        for (sample, pose) in study.range.poses.iter().enumerate() {
            let held = &study.capacity.held[sample];
            let tissue_nm = acting.passive_joints_nm(pose);
            for (row, joint) in FreeBody::of(study, None, sample).joints.iter().enumerate() {
                let made = (held.muscle_torques_nm[row] + tissue_nm[row]).abs();
                assert!(
                    (made - joint.held_nm).abs() < 1e-6 * (1.0 + made),
                    "{} {sample}: {made} {joint:?}",
                    study.movement_name
                );
            }
        }
    }
}

#[test]
fn law_bench_floor_load_and_weight_balance_in_the_hip_thrust() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let study = &desk.lift("hip-thrust").expect("the hip thrust").study;
    for (sample, pose) in study.range.poses.iter().enumerate() {
        let body = FreeBody::of(study, None, sample);
        let floor = body.floor.expect("feet on the floor");
        let bench = body.bench.expect("a bench");
        let upward = floor.force_n + bench.force.z_n + body.load.z_n - floor.body_n;
        let along = floor.along_n + bench.force.x_n + body.load.x_n;
        let size = floor.force_n + bench.force.z_n;
        assert!(
            upward.abs() < 1e-6 * size && along.abs() < 1e-6 * size,
            "{sample}"
        );
        let ankle = pose.outline.centres[0].x;
        let about_ankle = floor.force_n * (floor.at_m - ankle)
            - floor.body_n * (floor.body_at_m - ankle)
            + bench.force.z_n * (bench.at.x - ankle)
            - bench.force.x_n * bench.at.z
            + body.load.z_n * (pose.outline.centres[2].x - ankle);
        assert!(about_ankle.abs() < 1e-6 * size, "{sample}: {about_ankle}");
    }
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

/// The muscle of the title, drawn at three places of lifts of one joint: as far from the joint as its arm is long, and
/// without a kink.
#[test]
fn law_a_drawn_muscle_keeps_its_arm_and_has_no_kink() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    for name in [
        "biceps-curl",
        "triceps-extension",
        "knee-extension",
        "leg-curl",
    ] {
        let study = &desk.lift(name).expect("a built-in lift").study;
        let sheet = muscles_on_skeleton(study, System::Metric).expect("a joint in view");
        let Chart::Bodies(chart) = &sheet.chart else {
            panic!("{name}: no bodies");
        };
        for panel in &chart.bodies.panels {
            let lever = panel
                .marks
                .iter()
                .position(|mark| matches!(mark, BodyMark::Lever { .. }));
            let lever = lever.expect("a lever");
            let [
                BodyMark::Filled { points, .. } | BodyMark::Line { points, .. },
                BodyMark::Lever { ends, .. },
            ] = &panel.marks[lever - 1..=lever]
            else {
                panic!("{name}: no line below its lever");
            };
            let less = |a: [f64; 2], b: [f64; 2]| [a[0] - b[0], a[1] - b[1]];
            let dot = |a: [f64; 2], b: [f64; 2]| a[0] * b[0] + a[1] * b[1];
            let arm_m = dot(less(ends[1], ends[0]), less(ends[1], ends[0])).sqrt();
            let stretches = points
                .windows(2)
                .map(|pair| (pair[0], less(pair[1], pair[0])));
            let stretches: Vec<([f64; 2], [f64; 2])> = stretches
                .filter(|(_, step)| dot(*step, *step) > 1e-9)
                .collect();
            let steps: Vec<[f64; 2]> = stretches.iter().map(|(_, step)| *step).collect();
            for pair in steps.windows(2) {
                let cosine =
                    dot(pair[0], pair[1]) / (dot(pair[0], pair[0]) * dot(pair[1], pair[1])).sqrt();
                assert!(cosine > 0.7, "{name}, {}: a kink, {cosine}", panel.title);
            }
            // Square to its arm: the arm's end lies on the line or on its straight continuation.
            let nearest = stretches.iter().map(|(from, step)| {
                let away = less(ends[1], *from);
                (away[0] * step[1] - away[1] * step[0]).abs() / dot(*step, *step).sqrt()
            });
            let off_m = nearest.fold(f64::INFINITY, f64::min);
            assert!(
                off_m < 0.002,
                "{name}, {}: off by {off_m} m of {arm_m} m",
                panel.title
            );
            // Its length stands beside it, and the sign of a right angle at its end.
            let told = panel.marks.iter().find_map(|mark| match mark {
                BodyMark::Name { text, .. } => text.strip_suffix(" cm")?.parse::<f64>().ok(),
                _ => None,
            });
            let told = told.expect("the arm's length");
            assert!((told - 100.0 * arm_m).abs() < 0.06, "{name}: {told} cm");
            let sign = &panel.marks[lever];
            let BodyMark::Lever { square_to, .. } = sign else {
                panic!("{name}: no lever");
            };
            assert!(square_to.is_some(), "{name}: {sign:?}");
        }
    }
}

/// Pixels a metre at which a line of a scene draws a limb; none where no line does.
fn scale_of(limb: &[[f64; 2]], scene: &Scene) -> Option<f64> {
    let lines = scene.shapes.iter().filter_map(|shape| match shape {
        Primitive::Polyline { points, .. } if points.len() == limb.len() => Some(points),
        _ => None,
    });
    let less = |a: [f64; 2], b: [f64; 2]| [a[0] - b[0], a[1] - b[1]];
    let of = |points: &Vec<[f64; 2]>| {
        let drawn = less(points[1], points[0]);
        let real = less(limb[1], limb[0]);
        let scale = drawn[0].hypot(drawn[1]) / real[0].hypot(real[1]);
        let mut places = points.iter().zip(limb);
        let is_it = places.all(|(px, m)| {
            let [x, y] = less(*px, points[0]);
            let [along, up] = less(*m, limb[0]);
            (x - scale * along).abs() < 0.01 && (y + scale * up).abs() < 0.01
        });
        is_it.then_some(scale)
    };
    lines.filter_map(of).next()
}

/// The limb at its three places is drawn on one scale, in every size and on lifts of one joint and of several.
#[test]
fn law_a_limb_with_its_muscles_stands_on_one_scale() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    for name in ["biceps-curl", "knee-extension", "squat", "bench-press"] {
        let study = &desk.lift(name).expect("a built-in lift").study;
        let sheet = muscles_on_skeleton(study, System::Metric).expect("a joint in view");
        let Chart::Bodies(chart) = &sheet.chart else {
            panic!("{name}: no bodies");
        };
        for size in [Size::Slide, Size::UnderTitle, Size::Page] {
            let look = Look {
                size,
                ..Look::default()
            };
            let scene = sheet.untitled_scene(look).expect("it has room");
            let scales = chart.bodies.panels.iter().map(|panel| {
                let limb = panel.figure.limbs.iter().max_by_key(|limb| limb.len());
                scale_of(limb.expect("a limb"), &scene).expect("it is drawn")
            });
            let scales: Vec<f64> = scales.collect();
            assert_eq!(scales.len(), 3, "{name}");
            for scale in &scales {
                assert!(
                    (scale - scales[0]).abs() < 1e-3 * scale,
                    "{name} {size:?}: {scales:?}"
                );
            }
        }
    }
}

/// Of several joints a drawing that is small beside its numbers shows no muscle: it has at least two fifths of the height.
#[test]
fn law_the_muscles_of_a_large_lift_are_drawn_large() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    for name in ["squat", "deadlift", "leg-press"] {
        let study = &desk.lift(name).expect("a built-in lift").study;
        let sheet = muscles_on_skeleton(study, System::Metric).expect("a joint in view");
        let Chart::Bodies(chart) = &sheet.chart else {
            panic!("{name}: no bodies");
        };
        let scene = sheet.chart.scene(Look::default()).expect("it has room");
        let panels = &chart.bodies.panels;
        let limbs = panels.iter().flat_map(|panel| &panel.figure.limbs);
        let heights = limbs.flatten().map(|point| point[1]);
        let [low, high] = [f64::min, f64::max].map(|of| heights.clone().reduce(of));
        let high_m = high.expect("a limb") - low.expect("a limb");
        let limb = panels[0].figure.limbs.iter().max_by_key(|limb| limb.len());
        let scale = scale_of(limb.expect("a limb"), &scene).expect("it is drawn");
        let share = scale * high_m / scene.height;
        assert!(share > 0.4, "{name}: {share} of the height");
    }
}

#[test]
fn law_heads_are_counted_where_they_turn_a_joint_and_muscles_stay_apart() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("the reference man");
    let (mut counted, mut teres) = (0, 0);
    for lift in desk.lifts() {
        let study = &lift.study;
        for coordinate in 0..study.range.poses[0].coordinates.len() {
            for part in muscle_parts(study, coordinate) {
                let begins = part.name.replace(' ', "_");
                let turns = |(at, name): &(usize, &String)| {
                    let mut held = study.capacity.held.iter();
                    let is_femoris = name.starts_with("biceps_femoris");
                    name.starts_with(&begins)
                        && is_femoris == begins.starts_with("biceps_femoris")
                        && held.any(|held| held.muscles[*at].arms_m[coordinate] != 0.0)
                };
                let own = study.capacity.muscles.iter().enumerate().filter(turns);
                let lift = &study.movement_name;
                assert_eq!(own.count(), part.heads, "{lift}: {}", part.name);
                counted += 1;
                if part.name.starts_with("teres") {
                    assert_eq!(part.heads, 1, "{lift}");
                    teres += 1;
                }
            }
        }
    }
    assert!(
        counted > 100 && teres > 2,
        "{counted} muscles, {teres} teres"
    );
}
