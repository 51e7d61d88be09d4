//! Laws of every movement: arms and lengths, work, balance, optimum, scale, mirror, settings.

use crate::body::studied;
use crate::lifts::weakest;
use crate::numeric::optimality::{Instance, residuals};
use nalgebra::{Rotation3, Unit, Vector3};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use torquill::anatomy::{Dof, Lifter, LineStart, ShoulderPose};
use torquill::capacity::{
    Acting, BOUNDLESS, Held, Pace, Solver, StrengthRange, curve_of, plain_direction,
};
use torquill::library::{Library, Shelf, assemble};
use torquill::movement::{
    Link, Linkage, Measure, Movement, PlaneForce, Pose, Range, ReactionLimit, Sides, along, trace,
};
use torquill::numeric::{Point, solve};
use torquill::units::Length;

/// Every movement of the library with every built-in lifter.
fn everything() -> Vec<(String, String, Movement, Lifter)> {
    let library = Library::built_in();
    let mut all = Vec::new();
    for movement in library.names(Shelf::Movements) {
        for lifter in library.names(Shelf::Lifters) {
            let model = assemble(&library, &lifter, &movement, &[]).expect("a built-in model");
            all.push((movement.clone(), lifter, model.movement, model.lifter));
        }
    }
    all
}

fn one_of_each_movement() -> Vec<(String, Movement, Lifter)> {
    everything()
        .into_iter()
        .filter(|(_, lifter, _, _)| lifter == "reference-man")
        .map(|(name, _, movement, lifter)| (name, movement, lifter))
        .collect()
}

fn held_over(lifter: &Lifter, range: &Range) -> (Acting, Vec<Held>) {
    let acting = Acting::of(lifter, &range.poses).expect("sound arms");
    let curve = curve_of(&acting, range, None, Pace::Isometric).expect("every pose holds");
    (acting, curve.held)
}

/// The plain load of one side at the capacity.
fn load_of(range: &Range, held: &Held) -> PlaneForce {
    let plain = plain_direction(range.carrier);
    let share = held.capacity / range.sides.count();
    PlaneForce {
        x_n: plain.x_n * share,
        z_n: plain.z_n * share,
    }
}

/// Central difference of a length over a small step on either side.
fn slope_of(step: f64, length: impl Fn(f64) -> f64) -> f64 {
    (length(step) - length(-step)) / (2.0 * step)
}

/// The same body with the upper arm turned about an axis of the trunk.
fn arm_turned(pose: &Pose, axis: Vector3<f64>, by: f64) -> Pose {
    let turn = Rotation3::from_axis_angle(&Unit::new_normalize(axis), by);
    let shoulder = &pose.shoulder.pose;
    let bend = -shoulder.arm().cross(&shoulder.elbow_axis());
    let mut turned = pose.clone();
    turned.shoulder.pose = ShoulderPose::of_arm(turn * shoulder.arm(), turn * bend);
    turned
}

#[test]
fn law_a_moment_arm_is_the_slope_of_length_in_every_pose() {
    const STEP: f64 = 1.0e-5;
    let mut in_space = 0;
    for (name, lifter_name, movement, lifter) in everything() {
        let range = trace(&movement, &lifter, 9).expect("a range");
        let acting = Acting::of(&lifter, &range.poses).expect("sound arms");
        for pose in &range.poses {
            // What a stretched tendon gives is not in the arms.
            for muscle in acting.muscles.iter().filter(|m| m.fibre.has_rigid_tendon()) {
                let length_in = |pose: &Pose| {
                    let at = muscle.at(&acting.curves, pose, 0.0);
                    muscle.fibre.projected_m(at.state.length_norm)
                };
                // A projection of a twentieth of the fibres is held there, whatever the arms say.
                if length_in(pose) < 0.051 * muscle.fibre.optimal_m {
                    continue;
                }
                let line = lifter.muscles[&muscle.name].shoulder.as_ref();
                let on_trunk = line.is_none_or(|line| {
                    line.starts_on == LineStart::Trunk && line.over_blade.is_none()
                });
                let arms = muscle.at(&acting.curves, pose, 0.0).arms_m;
                for (joint, arm) in arms.iter().enumerate() {
                    let coordinate = &pose.coordinates[joint];
                    let slope = if !coordinate.dof.is_shoulder() {
                        slope_of(STEP, |by| {
                            let mut turned = pose.clone();
                            turned.coordinates[joint].angle_rad += by;
                            length_in(&turned)
                        })
                    } else if on_trunk {
                        in_space += usize::from(line.is_some());
                        slope_of(STEP, |by| length_in(&arm_turned(pose, coordinate.axis, by)))
                    } else {
                        // A line from the blade or past it also follows the blade: its law is the next one.
                        continue;
                    };
                    assert!(
                        (slope + arm).abs() < 1.0e-7,
                        "{name}, {lifter_name}, {}: arm {arm}, length slope {slope}",
                        muscle.name
                    );
                }
            }
        }
    }
    assert!(
        in_space > 1000,
        "{in_space} arms of lines across the shoulder"
    );
}

/// Along the range fibres shorten as arms and turns say, and what the line's moment does beyond that is the
/// shoulder blade's.
#[test]
fn law_muscles_across_the_shoulder_shorten_along_the_range_as_their_moments_say() {
    const SAMPLES: usize = 1601;
    let step = 1.0 / (SAMPLES - 1) as f64;
    let (mut smooth, mut bent) = (0, 0);
    for (name, movement, lifter) in one_of_each_movement() {
        let range = trace(&movement, &lifter, SAMPLES).expect("a range");
        let acting = Acting::of(&lifter, &range.poses).expect("sound arms");
        let across = acting.muscles.iter().filter(|muscle| {
            lifter.muscles[&muscle.name].shoulder.is_some() && muscle.fibre.has_rigid_tendon()
        });
        for muscle in across {
            let at = |index: usize| muscle.at(&acting.curves, &range.poses[index], 0.0);
            let length = |index: usize| muscle.fibre.projected_m(at(index).state.length_norm);
            for index in (50..SAMPLES - 50).step_by(75) {
                let here = at(index);
                let pose = &range.poses[index];
                let of_moments: f64 = here
                    .arms_m
                    .iter()
                    .zip(&pose.coordinates)
                    .map(|(arm, coordinate)| arm * coordinate.slope_rad)
                    .sum();
                assert!(
                    (of_moments - here.shortening_m - here.by_blade_m).abs() < 1.0e-9,
                    "{name}, {}: {of_moments} of {here:?}",
                    muscle.name
                );
                if length(index) < 0.051 * muscle.fibre.optimal_m {
                    continue;
                }
                let over =
                    |k: usize| (length(index + k) - length(index - k)) / (2.0 * k as f64 * step);
                let finer = |k: usize| over(k) + (over(k) - over(2 * k)) / 3.0;
                // Where a line leaves its ball between these poses, its course has a corner of second order,
                // and no difference is the slope.
                let slope = finer(1);
                if (slope - finer(2)).abs() > 1.0e-7 {
                    bent += 1;
                    continue;
                }
                smooth += 1;
                assert!(
                    (slope + here.shortening_m).abs() < 1.0e-7,
                    "{name}, {}, sample {index}: shortening {}, length slope {slope}",
                    muscle.name,
                    here.shortening_m
                );
            }
        }
    }
    assert!(
        smooth > 500 && bent * 10 < smooth,
        "{smooth} places, {bent} left out"
    );
}

/// Work of one newton of the plain load over the travel against its torque over the angles.
#[test]
fn law_force_over_travel_is_torque_over_angle() {
    for (name, movement, lifter) in one_of_each_movement() {
        let range = trace(&movement, &lifter, 801).expect("a range");
        let plain = plain_direction(range.carrier);
        let push = Point::new(plain.x_n, plain.z_n);
        // Torque times turn, per unit of range. A ball joint has no angles to subtract, only turns about axes.
        let rate = |pose: &Pose| -> f64 {
            // A lever's pad pushes against its own path, wherever that points.
            let path = Point::new(pose.load.dx_ds_m, pose.load.dz_ds_m);
            let along = if matches!(range.carrier, torquill::movement::Carrier::Lever { .. }) {
                path * (-1.0 / path.length())
            } else {
                push
            };
            let torques = pose.load_jacobian.iter().zip(&pose.coordinates);
            torques
                .map(|(column, c)| column.dot(along) * c.slope_rad)
                .sum()
        };
        // Simpson's rule: near straight elbows the levers bend too much for chords of this width.
        let rates: Vec<f64> = range.poses.iter().map(rate).collect();
        let arcs = rates.windows(3).step_by(2);
        let work = -arcs.map(|r| r[0] + 4.0 * r[1] + r[2]).sum::<f64>() / (3.0 * 800.0);
        let (first, last) = (&range.poses[0].load, &range.poses[800].load);
        let travel = match range.carrier {
            torquill::movement::Carrier::Lever { .. }
            | torquill::movement::Carrier::Sled { .. } => last.travel_m,
            _ => last.z_m - first.z_m,
        };
        assert!(
            (work - travel).abs() <= 1.0e-5 * travel.abs(),
            "{name}: {work} against {travel}"
        );
    }
}

/// Muscles do the work of the load and of lifting the limbs; what the surroundings push does none.
#[test]
fn law_muscles_do_the_work_of_load_and_limbs() {
    for (name, movement, lifter) in one_of_each_movement() {
        let range = trace(&movement, &lifter, 401).expect("a range");
        let (acting, held) = held_over(&lifter, &range);
        let (mut muscles, mut load, mut limbs, mut around) = (0.0, 0.0, 0.0, 0.0);
        for (pose, held) in range.poses.iter().zip(&held) {
            let force = load_of(&range, held);
            let of_joints = acting.passive_joints_nm(pose);
            for (j, c) in pose.coordinates.iter().enumerate() {
                muscles += (held.muscle_torques_nm[j] + of_joints[j]) * c.slope_rad;
                limbs += pose.gravity_nm[j] * c.slope_rad;
                if range.measure == Measure::Torque {
                    load -= held.capacity * c.slope_rad.abs();
                } else {
                    let column = pose.load_jacobian[j];
                    load += (column.x * force.x_n + column.z * force.z_n) * c.slope_rad;
                }
                for (reaction, value) in pose.reactions.iter().zip(&held.reactions) {
                    around += reaction.column[j] * value * c.slope_rad;
                }
            }
        }
        let whole = muscles.abs().max(load.abs());
        assert!(
            (muscles + load + limbs + around).abs() < 1.0e-7 * whole,
            "{name}: {muscles} {load} {limbs} {around}"
        );
        assert!(
            around.abs() <= 1.0e-7 * whole,
            "{name}: what the surroundings push does {around} of {whole}"
        );
    }
}

#[test]
fn law_every_pose_is_in_balance_inside_its_limits() {
    for (name, lifter_name, movement, lifter) in everything() {
        let range = trace(&movement, &lifter, 21).expect("a range");
        let (acting, held) = held_over(&lifter, &range);
        for (pose, held) in range.poses.iter().zip(&held) {
            let force = load_of(&range, held);
            let at = format!("{name}, {lifter_name}, range {}", pose.load.range);
            let per = |c: [f64; 2]| c[0] * force.x_n + c[1] * force.z_n;
            let of_joints = acting.passive_joints_nm(pose);
            for (j, coordinate) in pose.coordinates.iter().enumerate() {
                let external = match range.measure {
                    Measure::Torque => -held.capacity * coordinate.slope_rad.signum(),
                    Measure::Force => per([pose.load_jacobian[j].x, pose.load_jacobian[j].z]),
                };
                let around: f64 = pose
                    .reactions
                    .iter()
                    .zip(&held.reactions)
                    .map(|(reaction, value)| reaction.column[j] * value)
                    .sum();
                let sum = held.muscle_torques_nm[j]
                    + of_joints[j]
                    + pose.gravity_nm[j]
                    + external
                    + around;
                assert!(sum.abs() < 1.0e-6, "{at}: joint {j} is off by {sum} N·m");
            }
            for balance in &pose.balances {
                let around: f64 = balance
                    .reactions
                    .iter()
                    .zip(&held.reactions)
                    .map(|(coefficient, value)| coefficient * value)
                    .sum();
                let sum = balance.constant + per(balance.per_load) + around;
                assert!(sum.abs() < 1.0e-6, "{at}: a balance is off by {sum}");
            }
            for (reaction, value) in pose.reactions.iter().zip(&held.reactions) {
                let bound = |limit: &ReactionLimit| limit.constant + per(limit.per_load);
                let (least, most) = (bound(&reaction.least), bound(&reaction.most));
                assert!(
                    *value >= least - 1.0e-6 && *value <= most + 1.0e-6,
                    "{at}: {} is {value}, outside {least} to {most}",
                    reaction.name
                );
            }
            assert!(
                held.activations
                    .iter()
                    .all(|a| (-1.0e-9..=1.0 + 1.0e-9).contains(a))
            );
        }
    }
}

/// The lifter's and the bar's centre of mass, from the outline's joints alone, is over the foot.
#[test]
fn law_lifter_and_bar_stay_over_the_foot() {
    for name in ["squat", "deadlift", "hip-thrust"] {
        for lifter in ["reference-man", "reference-woman", "tall-novice"] {
            let study = studied(name, lifter, &[], None);
            let body = Library::built_in().lifter(lifter).expect("a lifter").build;
            for (pose, held) in study.range.poses.iter().zip(&study.capacity.held) {
                let reading = pose
                    .readings
                    .iter()
                    .find(|r| r.name == "centre_of_pressure_m")
                    .expect("feet have one");
                let force = load_of(&study.range, held);
                let place = reading.at(&held.reactions, force).expect("feet press");
                assert!(
                    place >= -body.heel_to_ankle.as_m() - 1.0e-9
                        && place <= body.ankle_to_ball.as_m() + 1.0e-9,
                    "{name}, {lifter}: pressure {place} m in front of the ankle"
                );
            }
        }
    }
}

#[test]
fn law_every_optimum_is_optimal() {
    for (name, lifter_name, movement, lifter) in everything() {
        let range = trace(&movement, &lifter, 21).expect("a range");
        let acting = Acting::of(&lifter, &range.poses).expect("sound arms");
        let mut solver = Solver::new(&acting, range.measure, range.sides).expect("a solver");
        for pose in &range.poses {
            let direction = plain_direction(range.carrier);
            let held = solver.solve(pose, direction, 0.0).expect("an answer");
            let instance = programme_of(&acting, &range, pose, direction);
            let cold = solve(&instance.programme(), None).expect("the same programme");
            let off = residuals(&instance, &cold).worst();
            assert!(off < 1.0e-9, "{name}, {lifter_name}: residual {off}");
            let warm_off = (cold.values()[0] - held.capacity).abs() / held.capacity.abs().max(1.0);
            assert!(
                warm_off < 1.0e-9,
                "{name}: warm and cold differ by {warm_off}"
            );
        }
    }
}

/// The programme of one pose, with the conditions written down anew.
fn programme_of(acting: &Acting, range: &Range, pose: &Pose, direction: PlaneForce) -> Instance {
    let share = 1.0 / range.sides.count();
    let side = [direction.x_n * share, direction.z_n * share];
    let per = |c: [f64; 2]| c[0] * side[0] + c[1] * side[1];
    let muscles: Vec<_> = acting
        .muscles
        .iter()
        .map(|muscle| muscle.at(&acting.curves, pose, 0.0))
        .collect();
    let joints = pose.coordinates.len();
    let external = |j: usize| match range.measure {
        Measure::Torque => -pose.coordinates[j].slope_rad.signum(),
        Measure::Force => per([pose.load_jacobian[j].x, pose.load_jacobian[j].z]),
    };
    let of_joints = acting.passive_joints_nm(pose);
    let rest = |j: usize| {
        let passive: f64 = muscles.iter().map(|m| m.arms_m[j] * m.passive_n).sum();
        pose.gravity_nm[j] + of_joints[j] + passive
    };
    let mut right_side: Vec<f64> = (0..joints).map(|j| -rest(j)).collect();
    let mut load: Vec<f64> = (0..joints).map(external).collect();
    for balance in &pose.balances {
        right_side.push(-balance.constant);
        load.push(per(balance.per_load));
    }
    let mut columns: Vec<(f64, f64, f64, Vec<f64>)> = muscles
        .iter()
        .map(|m| {
            (
                -1.0e-6,
                0.0,
                1.0,
                m.arms_m.iter().map(|arm| arm * m.active_n).collect(),
            )
        })
        .collect();
    let mut slacks = Vec::new();
    for (k, reaction) in pose.reactions.iter().enumerate() {
        let mut column = reaction.column.clone();
        column.extend(pose.balances.iter().map(|balance| balance.reactions[k]));
        let mut bounds = [f64::NEG_INFINITY, f64::INFINITY];
        for (end, limit) in [&reaction.least, &reaction.most].into_iter().enumerate() {
            if limit.per_load == [0.0, 0.0] {
                bounds[end] = limit.constant;
                continue;
            }
            // reaction − load·(per_load·w) ∓ slack = constant
            let row = right_side.len();
            right_side.push(limit.constant);
            load.push(-per(limit.per_load));
            column.resize(row, 0.0);
            column.push(1.0);
            slacks.push((row, if end == 0 { -1.0 } else { 1.0 }));
        }
        columns.push((0.0, bounds[0], bounds[1], column));
    }
    for (row, sign) in slacks {
        let mut column = vec![0.0; row];
        column.push(sign);
        columns.push((0.0, 0.0, f64::INFINITY, column));
    }
    columns.insert(0, (1.0, -BOUNDLESS, BOUNDLESS, load));
    for column in &mut columns {
        column.3.resize(right_side.len(), 0.0);
    }
    Instance {
        right_side,
        columns,
    }
}

/// Ten thousand poses of random bodies against another solver.
#[test]
fn law_capacity_agrees_with_another_solver() {
    let mut rng = ChaCha8Rng::seed_from_u64(20_260_117);
    let all = everything();
    let (mut poses, mut worst) = (0, 0.0_f64);
    while poses < 10_000 {
        let (name, _, movement, lifter) = &all[rng.random_range(0..all.len())];
        let mut lifter = lifter.clone();
        for muscle in lifter.muscles.values_mut() {
            muscle.peak_force = muscle.peak_force * rng.random_range(0.6..1.5);
        }
        for segment in lifter.segments.values_mut() {
            segment.mass = segment.mass * rng.random_range(0.8..1.25);
            segment.length = segment.length * rng.random_range(0.98..1.02);
        }
        let Ok(range) = trace(movement, &lifter, 9) else {
            continue;
        };
        let acting = Acting::of(&lifter, &range.poses).expect("sound arms");
        let mut solver = Solver::new(&acting, range.measure, range.sides).expect("a solver");
        for pose in &range.poses {
            let direction = plain_direction(range.carrier);
            let ours = solver.solve(pose, direction, 0.0).ok();
            let theirs = programme_of(&acting, &range, pose, direction)
                .reference()
                .ok();
            match (ours, theirs) {
                (Some(ours), Some(theirs)) => {
                    let spent: f64 = ours.activations.iter().sum();
                    let objective = ours.capacity - 1.0e-6 * spent;
                    let off = (objective - theirs).abs() / theirs.abs().max(1.0);
                    worst = worst.max(off);
                    assert!(off < 1.0e-9, "{name}: {objective} against {theirs}");
                }
                (None, None) => {}
                (ours, theirs) => {
                    panic!("{name}: {:?} against {theirs:?}", ours.map(|h| h.capacity))
                }
            }
            poses += 1;
        }
    }
    println!("{poses} poses, worst relative difference {worst:e}");
}

#[test]
fn law_a_two_joint_muscle_without_an_arm_at_one_joint_is_a_one_joint_muscle() {
    let library = Library::built_in();
    for (movement, muscle, joint) in [
        ("squat", "rectus_femoris", Dof::Hip),
        ("leg-press", "gastrocnemius_medial", Dof::Knee),
        ("hip-thrust", "semitendinosus", Dof::Knee),
        ("triceps-extension", "triceps_long", Dof::ShoulderFlexion),
    ] {
        let model = assemble(&library, "reference-man", movement, &[]).expect("a model");
        let (mut without_arm, mut one_joint) = (model.lifter.clone(), model.lifter.clone());
        // At the shoulder the arm is that of a line; shrunk to the joint's centre it has none.
        let shrunk = without_arm.muscles.get_mut(muscle).expect("a muscle");
        let other = one_joint.muscles.get_mut(muscle).expect("a muscle");
        if joint.is_shoulder() {
            shrunk.shoulder.as_mut().expect("a line").scale = 0.0;
            other.shoulder = None;
        } else {
            shrunk.moment_arm.get_mut(&joint).expect("an arm").scale = 0.0;
            other.moment_arm.remove(&joint);
        }
        for reference in &mut other.reference {
            reference.at.remove(&joint);
        }
        let values = |lifter: &Lifter| {
            let range = trace(&model.movement, lifter, 21).expect("a range");
            let (_, held) = held_over(lifter, &range);
            held.iter().map(|h| h.capacity).collect::<Vec<_>>()
        };
        let (zero, removed, whole) = (
            values(&without_arm),
            values(&one_joint),
            values(&model.lifter),
        );
        for (a, b) in zero.iter().zip(&removed) {
            assert!(
                (a - b).abs() < 1.0e-9 * a.abs().max(1.0),
                "{movement}: {a} {b}"
            );
        }
        let moved = zero
            .iter()
            .zip(&whole)
            .any(|(a, b)| (a - b).abs() > 1.0e-3 * b.abs());
        assert!(
            moved,
            "{movement}: the second joint of {muscle} made no difference at all"
        );
    }
}

#[test]
fn law_twice_the_forces_and_weights_hold_twice_the_load() {
    for (name, movement, lifter) in one_of_each_movement() {
        let mut twice = lifter.clone();
        for muscle in twice.muscles.values_mut() {
            muscle.peak_force = muscle.peak_force * 2.0;
        }
        for segment in twice.segments.values_mut() {
            segment.mass = segment.mass * 2.0;
        }
        for joint in twice.joints.values_mut() {
            joint.low_torque = joint.low_torque * 2.0;
            joint.high_torque = joint.high_torque * 2.0;
        }
        let values = |lifter: &Lifter| {
            let range = trace(&movement, lifter, 11).expect("a range");
            let (_, held) = held_over(lifter, &range);
            held.iter().map(|h| h.capacity).collect::<Vec<_>>()
        };
        for (one, two) in values(&lifter).iter().zip(values(&twice)) {
            // The cost of 1e-6 per activation, which settles ties, does not double.
            assert!(
                (two - 2.0 * one).abs() < 1.0e-4 * one.abs().max(1.0),
                "{name}: {one} N, twice {two} N"
            );
        }
    }
}

#[test]
fn law_a_mirrored_linkage_is_the_mirrored_linkage() {
    let mut rng = ChaCha8Rng::seed_from_u64(77);
    for _ in 0..500 {
        let count = rng.random_range(1..5);
        let links: Vec<Link> = (0..count)
            .map(|index| {
                let length_m = rng.random_range(0.2..0.6);
                Link {
                    length_m,
                    mass_kg: rng.random_range(0.5..20.0),
                    centre_m: 0.45 * length_m,
                    inertia_kg_m2: rng.random_range(0.01..0.5),
                    coordinate: Some(index),
                    sign: if rng.random::<bool>() { 1.0 } else { -1.0 },
                    offset_rad: rng.random_range(-1.0..1.0),
                }
            })
            .collect();
        let base = Point::new(rng.random_range(-1.0..1.0), rng.random_range(0.0..1.0));
        let direction = rng.random_range(-3.0..3.0);
        let angles: Vec<f64> = (0..count).map(|_| rng.random_range(-2.0..2.0)).collect();
        let slopes: Vec<f64> = (0..count).map(|_| rng.random_range(-2.0..2.0)).collect();
        let plain = Linkage {
            base,
            base_direction_rad: direction,
            links: links.clone(),
        };
        let mirrored = Linkage {
            base: Point::new(-base.x, base.z),
            base_direction_rad: std::f64::consts::PI - direction,
            links: links
                .into_iter()
                .map(|link| Link {
                    sign: -link.sign,
                    offset_rad: -link.offset_rad,
                    ..link
                })
                .collect(),
        };
        let (one, two) = (plain.place(&angles), mirrored.place(&angles));
        for (a, b) in one.joints.iter().zip(&two.joints) {
            assert!((a.x + b.x).abs() < 1.0e-12 && (a.z - b.z).abs() < 1.0e-12);
        }
        for (a, b) in one.gravity_nm().iter().zip(two.gravity_nm()) {
            assert!((a - b).abs() < 1.0e-9, "{a} {b}");
        }
        let mass = (one.effective_mass(&slopes), two.effective_mass(&slopes));
        assert!((mass.0 - mass.1).abs() < 1.0e-9 * mass.0);
        let end = |placed: &torquill::movement::Placed<'_>| {
            let last = placed.joints[count];
            along(&placed.jacobian(count - 1, last), &slopes)
        };
        let (speed, mirror) = (end(&one), end(&two));
        assert!((speed.x + mirror.x).abs() < 1.0e-12 && (speed.z - mirror.z).abs() < 1.0e-12);
    }
}

/// Least capacity, and the torque over the angle's middle, with a setting.
fn least(movement: &str, set: &str) -> f64 {
    let sets: Vec<&str> = if set.is_empty() { vec![] } else { vec![set] };
    weakest(&studied(movement, "reference-man", &sets, None))
}

#[test]
fn law_settings_move_curves_the_way_mechanics_says() {
    // A half squat holds much more than a parallel one.
    let parallel = least("squat", "");
    // unless the back gives way first, which bears as much there.
    let strong = "muscles.erector_spinae.peak_force=+200%";
    let half = studied(
        "squat",
        "reference-man",
        &["technique.depth=-40 deg", strong],
        None,
    );
    assert!(weakest(&half) > 1.3 * least("squat", strong));
    assert!(least("squat", "technique.depth=-40 deg") > 1.1 * parallel);
    // A wide stance stands the trunk up and shortens the way.
    let way = |set: &str| {
        let sets: Vec<&str> = if set.is_empty() { vec![] } else { vec![set] };
        let study = studied("deadlift", "reference-man", &sets, None);
        study.range.poses.last().expect("poses").load.travel_m
    };
    assert!(way("technique.stance=sumo") < way(""));
    // A higher foot on the plate loads the hip more, a lower one the knee.
    let hip_share = |set: &str| {
        let study = studied("leg-press", "reference-man", &[set], None);
        let held = &study.capacity.held[0];
        held.muscle_torques_nm[0].abs() / held.muscle_torques_nm[1].abs()
    };
    let (high, low) = ("technique.foot_height=26 cm", "technique.foot_height=14 cm");
    assert!(hip_share(high) > hip_share(low));
    // Level rails carry the sled; the legs press no less for it.
    let level = least("leg-press", "technique.sled_angle=0 deg");
    assert!(
        (level / least("leg-press", "") - 1.0).abs() < 0.1,
        "{level}"
    );
    // A bent knee slackens the calf, a hip that is flexed stretches the hamstrings.
    assert!(least("calf-raise", "technique.knee_angle=90 deg") < least("calf-raise", ""));
    let flexed = "technique.hip_angle=85 deg";
    assert!(least("leg-curl", flexed) > least("leg-curl", ""));
    // A longer arm of all quadriceps at one joint makes its torque grow in mid-range.
    let at_mid = |set: &[&str]| {
        studied("knee-extension", "reference-man", set, None)
            .capacity
            .held[50]
            .capacity
    };
    let longer = [
        "muscles.vastus_lateralis.moment_arm.knee=+5%",
        "muscles.vastus_medialis.moment_arm.knee=+5%",
        "muscles.vastus_intermedius.moment_arm.knee=+5%",
    ];
    assert!(at_mid(&longer) > at_mid(&[]));
}

#[test]
fn law_a_long_limb_makes_the_lever_longer() {
    let library = Library::built_in();
    let lever = |cm: Option<f64>| {
        let model = assemble(&library, "reference-man", "squat", &[]).expect("a model");
        let mut lifter = model.lifter;
        if let Some(cm) = cm {
            let thigh = torquill::anatomy::SegmentName::Thigh;
            lifter.segments.get_mut(&thigh).expect("a thigh").length = Length::from_cm(cm);
        }
        let range = trace(&model.movement, &lifter, 5).expect("a range");
        range.poses[0].load_jacobian[2].z.abs()
    };
    assert!(lever(Some(46.0)) > lever(None));
}

#[test]
fn law_both_sides_share_the_load() {
    let (_, movement, lifter) = one_of_each_movement()
        .into_iter()
        .find(|(name, _, _)| name == "bench-press")
        .expect("a bench press");
    let range = trace(&movement, &lifter, 5).expect("a range");
    let acting = Acting::of(&lifter, &range.poses).expect("sound arms");
    let hold = |sides: Sides| {
        let mut solver = Solver::new(&acting, range.measure, sides).expect("a solver");
        let down = plain_direction(range.carrier);
        solver
            .solve(&range.poses[2], down, 0.0)
            .expect("an answer")
            .capacity
    };
    let (one, both) = (hold(Sides::One), hold(Sides::Both));
    assert!((both - 2.0 * one).abs() < 1.0e-6 * both, "{one} {both}");
}

#[test]
fn law_capacities_by_strength_are_those_of_the_stronger_lifter() {
    for (name, movement, lifter) in one_of_each_movement() {
        let range = trace(&movement, &lifter, 11).expect("the lift can be traced");
        let acting = Acting::of(&lifter, &range.poses).expect("sound arms");
        // Each muscle has a factor of its own.
        let factors: Vec<f64> = (0..acting.muscles.len())
            .map(|k| 1.1 + 0.1 * (k % 7) as f64)
            .collect();
        let mut stronger = lifter.clone();
        for (acting, factor) in acting.muscles.iter().zip(&factors) {
            let muscle = stronger.muscles.get_mut(&acting.name).expect("it acts");
            muscle.peak_force = muscle.peak_force * *factor;
        }
        let quick = StrengthRange::of(&acting, &range);
        let quick = quick.capacities(&range, &factors).expect("it holds");
        let (_, held) = held_over(&stronger, &range);
        for (quick, held) in quick.iter().zip(&held) {
            let miss = (quick / held.capacity - 1.0).abs();
            assert!(miss < 1.0e-6, "{name}: {quick}, {}", held.capacity);
        }
    }
}
