//! Power and speed, on random lifters with random techniques: what muscles, joints and load do in the same moment,
//! and that lowering holds more than standing still, and that more than lifting.

use crate::rep::{kg, run};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use torquill::capacity::{Acting, Held, Solver, plain_direction};
use torquill::library::{Library, Model, Shelf, Workbench, numeric_paths};
use torquill::movement::{Carrier, Finish, Measure, Pose, Range, trace};
use torquill::rep::{RepModel, RepOptions, with_load};
use torquill::resistance::{Item, Setup, Weight};
use torquill::units::Duration;

/// A movement done by somebody in some way; `None` where such limbs do not close its path.
pub(crate) fn somebody(rng: &mut ChaCha8Rng, movement: &str) -> Option<Model> {
    let library = Library::built_in();
    let lifters = library.names(Shelf::Lifters);
    let lifter = &lifters[(rng.random::<f64>() * lifters.len() as f64) as usize];
    let bench = Workbench::open(&library, lifter, movement).expect("built in");
    let plain = bench.model(&[]).expect("built in");
    let mut percent = |most: f64| most * (2.0 * rng.random::<f64>() - 1.0);
    let mut sets = vec![
        format!("lifter.height={:+.2}%", percent(5.0)),
        format!("lifter.body_mass={:+.2}%", percent(15.0)),
        format!("lifter.strength_scale={:+.2}%", percent(30.0)),
    ];
    for number in numeric_paths(&plain) {
        let path = &number.path;
        if path.starts_with("technique.") && number.value != 0.0 {
            sets.push(format!("{path}={:+.2}%", percent(10.0)));
        }
    }
    let model = bench.model(&sets).ok()?;
    trace(&model.movement, &model.lifter, 11).ok()?;
    Some(model)
}

/// Everybody's turn in every movement: the movement's name, the model, poses and muscles.
fn with_everybody(
    seed: u64,
    each: usize,
    samples: usize,
    mut test: impl FnMut(&str, &Range, &Acting),
) {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    for name in Library::built_in().names(Shelf::Movements) {
        let mut done = 0;
        for _ in 0..3 * each {
            let Some(model) = somebody(&mut rng, &name) else {
                continue;
            };
            let range = trace(&model.movement, &model.lifter, samples).expect("it closed before");
            let acting = Acting::of(&model.lifter, &range.poses).expect("sound arms");
            test(&name, &range, &acting);
            done += 1;
            if done == each {
                break;
            }
        }
        assert!(done > 0, "{name}: nobody can do it");
    }
}

fn held(acting: &Acting, range: &Range, pose: &Pose, speed: f64) -> Option<Held> {
    let mut solver = Solver::new(acting, range.measure, range.sides).expect("a range");
    let plain = plain_direction(range.carrier);
    solver.solve(pose, plain, speed).ok()
}

/// Whether every muscle that pulls shortens as the load rises. A muscle over two joints may lengthen meanwhile, as the
/// hamstrings do where hips and bar rise before the trunk: it is stronger in lifting than in lowering there, and what
/// is said of speed then holds of each muscle, not of the whole.
fn is_pulled_along(held: &Held) -> bool {
    let muscles = held.muscles.iter().zip(&held.activations);
    muscles
        .filter(|(_, activation)| **activation > 1.0e-9)
        .all(|(muscle, _)| muscle.shortening_m >= 0.0)
}

#[test]
fn law_lowered_is_more_than_held_and_held_more_than_lifted() {
    let (mut poses, mut pulled_along) = (0, 0);
    with_everybody(11, 4, 21, |name, range, acting| {
        for pose in &range.poses {
            let still = held(acting, range, pose, 0.0).expect("it can be held");
            let rounding = 1.0e-6 * still.capacity.abs().max(1.0);
            poses += 1;
            pulled_along += i32::from(is_pulled_along(&still));
            for speed in [0.05, 0.3, 1.0] {
                let lowered = held(acting, range, pose, -speed).expect("it can be lowered");
                assert!(
                    lowered.capacity >= still.capacity - rounding || !is_pulled_along(&still),
                    "{name} at {}: lowered {} held {}",
                    pose.load.range,
                    lowered.capacity,
                    still.capacity
                );
                // At some speed no muscle follows any more.
                let Some(lifted) = held(acting, range, pose, speed) else {
                    continue;
                };
                assert!(
                    still.capacity >= lifted.capacity - rounding || !is_pulled_along(&lifted),
                    "{name} at {}: held {} lifted {}",
                    pose.load.range,
                    still.capacity,
                    lifted.capacity
                );
            }
        }
    });
    println!("{pulled_along} of {poses} poses have no muscle that lengthens as the load rises");
    assert!(2 * pulled_along > poses, "{pulled_along} of {poses}");
}

/// Force times shortening of every muscle, its shortening from lengths of neighbouring poses, against torque times
/// turn of every joint; what the shoulder blade's own muscles do is told apart.
#[test]
fn law_muscle_power_is_joint_power_at_every_speed() {
    const SAMPLES: usize = 801;
    with_everybody(12, 1, SAMPLES, |name, range, acting| {
        let step = 1.0 / (SAMPLES - 1) as f64;
        for index in (4..SAMPLES - 4).step_by(37) {
            let pose = &range.poses[index];
            for speed in [-0.8, 0.2, 0.9] {
                let Some(held) = held(acting, range, pose, speed) else {
                    continue;
                };
                let (mut muscles_w, mut blade_w, mut whole_w) = (0.0, 0.0, 0.0_f64);
                for (number, muscle) in acting.muscles.iter().enumerate() {
                    let at = &held.muscles[number];
                    let force_n = at.passive_n + held.activations[number] * at.active_n;
                    // Muscle and tendon together: the projected fibres where the tendon does not give.
                    let length_m = |pose: &Pose| {
                        let state = muscle.at(&acting.curves, pose, 0.0).state;
                        muscle.fibre.projected_m(state.length_norm)
                    };
                    let shortening_m = if muscle.fibre.has_rigid_tendon() {
                        let (before, after) = (&range.poses[index - 1], &range.poses[index + 1]);
                        (length_m(before) - length_m(after)) / (2.0 * step)
                    } else {
                        at.shortening_m
                    };
                    if length_m(pose) < 0.051 * muscle.fibre.optimal_m {
                        // Held there, whatever the arms say.
                        muscles_w += force_n * at.shortening_m * speed;
                    } else {
                        muscles_w += force_n * shortening_m * speed;
                    }
                    blade_w += force_n * at.by_blade_m * speed;
                    whole_w += (force_n * at.shortening_m * speed).abs();
                }
                let turns = pose.coordinates.iter().map(|c| c.slope_rad);
                let torques = held.muscle_torques_nm.iter();
                let joints_w: f64 = torques.zip(turns).map(|(t, turn)| t * turn * speed).sum();
                assert!(
                    (muscles_w + blade_w - joints_w).abs() <= 2.0e-3 * whole_w.max(1.0),
                    "{name} at {}, {speed}: muscles {muscles_w} W, blade {blade_w} W, joints {joints_w} W",
                    pose.load.range
                );
            }
        }
    });
}

/// In a repetition: what full activation brings at that place and speed, times what is active, is what the load's weight
/// takes and what kinetic energy gains; and what it brings is, but for corners of the surface it is read off, what a
/// fresh programme says.
#[test]
fn law_muscle_power_in_a_repetition_is_load_power_and_energy_change() {
    let mut read_off: Vec<f64> = Vec::new();
    let mut rng = ChaCha8Rng::seed_from_u64(13);
    for name in [
        "bench-press",
        "squat",
        "deadlift",
        "biceps-curl",
        "overhead-press",
    ] {
        let model = (0..20)
            .find_map(|_| somebody(&mut rng, name))
            .expect("somebody");
        let moving = RepModel::new(&model.movement, &model.lifter).expect("a model");
        let options = RepOptions::usual_for(&model.movement);
        let max = moving
            .one_rm(&Setup::default(), &options)
            .expect("a maximum");
        let load = kg(0.85 * max.load.as_kg());
        let trace_of = run(&moving, &with_load(&Setup::default(), load), &options);
        let range = trace(&model.movement, &model.lifter, 1601).expect("poses");
        let acting = Acting::of(&model.lifter, &range.poses).expect("arms");
        let lift = trace_of.lifting();
        let peak_w = lift
            .iter()
            .map(|s| s.force * s.velocity)
            .fold(0.0, f64::max);
        for (index, pair) in lift.windows(3).enumerate().step_by(3) {
            let [before, now, after] = pair else {
                unreachable!("windows of three")
            };
            let is_smooth = index > 2 && now.range < 0.9 && now.held_back == 0.0;
            if !is_smooth {
                continue;
            }
            let pose = &range.poses[(now.range * 1600.0).round() as usize];
            let lever = match range.measure {
                Measure::Force => pose.load.dx_ds_m.hypot(pose.load.dz_ds_m),
                Measure::Torque => pose.coordinates[0].slope_rad.abs(),
            };
            let speed = now.velocity / lever;
            let held = held(&acting, &range, pose, speed).expect("it moves so");
            let sides = match range.measure {
                Measure::Force => range.sides.count(),
                Measure::Torque => 1.0,
            };
            // Relaxed limb: weight, capsules, stretched muscles; one side.
            let of_joints = acting.passive_joints_nm(pose);
            let relaxed: f64 = pose
                .coordinates
                .iter()
                .enumerate()
                .map(|(j, c)| {
                    let stretched: f64 =
                        held.muscles.iter().map(|m| m.arms_m[j] * m.passive_n).sum();
                    (pose.gravity_nm[j] + of_joints[j] + stretched) * c.slope_rad
                })
                .sum::<f64>()
                * sides;
            let along = match range.measure {
                Measure::Force => {
                    let plain = plain_direction(range.carrier);
                    -(plain.x_n * pose.load.dx_ds_m + plain.z_n * pose.load.dz_ds_m)
                }
                Measure::Torque => lever,
            };
            let drive = now.activation * (1.0 + now.enhancement) * (1.0 - now.spent);
            let muscles_w =
                |capacity: f64| (drive * (capacity * along - relaxed) + relaxed) * speed;
            let load_w = now.demand * now.velocity;
            let gained_w = (after.kinetic_j - before.kinetic_j) / (after.time_s - before.time_s);
            let surface_n = now.capacity * lever / along;
            let own_w = muscles_w(surface_n);
            assert!(
                (own_w - load_w - gained_w).abs() < 0.015 * peak_w,
                "{name} at {}: muscles {own_w} W, load {load_w} W, energy {gained_w} W, peak {peak_w} W",
                now.range
            );
            read_off.push((own_w - muscles_w(held.capacity)).abs() / peak_w);
        }
    }
    // A surface through known places cuts the corners where another joint gives way.
    read_off.sort_by(f64::total_cmp);
    let at = |share: f64| read_off[(share * (read_off.len() - 1) as f64) as usize];
    assert!(
        at(0.95) < 0.005 && at(0.98) < 0.02 && at(1.0) < 0.06,
        "{} {} {}",
        at(0.95),
        at(0.98),
        at(1.0)
    );
}

/// A longer arm with fibres that are longer by as much: lengths and speeds in optimal lengths stay.
#[test]
fn law_a_longer_arm_at_the_same_fibre_excursion_turns_harder() {
    let library = Library::built_in();
    for (movement, muscle, joint) in [
        ("biceps-curl", "brachialis", "elbow"),
        ("knee-extension", "vastus_lateralis", "knee"),
        ("calf-raise", "soleus", "ankle"),
        ("triceps-extension", "triceps_lateral", "elbow"),
    ] {
        for lifter in library.names(Shelf::Lifters) {
            let bench = Workbench::open(&library, &lifter, movement).expect("built in");
            let capacities = |sets: &[String]| -> Vec<f64> {
                let model = bench.model(sets).expect("it can be set");
                let range = trace(&model.movement, &model.lifter, 41).expect("poses");
                let acting = Acting::of(&model.lifter, &range.poses).expect("arms");
                let poses = range.poses.iter();
                poses
                    .map(|pose| held(&acting, &range, pose, 0.0).expect("held").capacity)
                    .collect()
            };
            let more = [
                format!("muscles.{muscle}.moment_arm.{joint}=+10%"),
                format!("muscles.{muscle}.optimal_fibre_length=+10%"),
            ];
            for (before, after) in capacities(&[]).iter().zip(capacities(&more)) {
                assert!(after > *before, "{movement}, {lifter}: {before} {after}");
            }
        }
    }
}

/// A taller lifter of the same mass has no more muscle: force times fibre length of every muscle stays.
#[test]
fn law_muscle_volume_stays_when_only_height_changes() {
    let library = Library::built_in();
    for lifter in library.names(Shelf::Lifters) {
        let bench = Workbench::open(&library, &lifter, "squat").expect("built in");
        let plain = bench.model(&[]).expect("built in").lifter;
        for percent in [-8.0, 4.0, 10.0] {
            let sets = [format!("lifter.height={percent:+}%")];
            let other = bench.model(&sets).expect("it can be set").lifter;
            for (name, muscle) in &plain.muscles {
                let volume = |m: &torquill::anatomy::Muscle| {
                    m.peak_force.as_n() * m.optimal_fibre_length.as_m()
                };
                let ratio = volume(&other.muscles[name]) / volume(muscle);
                assert!(
                    (ratio - 1.0).abs() < 1.0e-9,
                    "{lifter} {percent}: {name} {ratio}"
                );
            }
        }
    }
}

/// Loads over a whole lift: more is lowered in 3 s than lifted and held. A lift that counts when it arrives
/// may go beyond what can be held there, and so beyond what can be lowered from there.
#[test]
fn law_more_is_lowered_than_lifted_in_every_lift() {
    let library = Library::built_in();
    for name in library.names(Shelf::Movements) {
        for who in library.names(Shelf::Lifters) {
            let bench = Workbench::open(&library, &who, &name).expect("built in");
            let model = bench.model(&[]).expect("built in");
            let moving = RepModel::new(&model.movement, &model.lifter).expect("a model");
            let mut body = Setup::default();
            if model.movement.carrier().expect("a carrier") == Carrier::Body {
                body.items
                    .push(Item::Weight(Weight::BodyMass(model.lifter.body_mass)));
            }
            let usual = RepOptions::usual_for(&model.movement);
            let options = RepOptions {
                finish: Finish::Held,
                ..usual
            };
            // Who does not lift the own body is no case.
            let Ok(lifted) = moving.one_rm(&body, &options) else {
                continue;
            };
            let time = Duration::from_s(3.0);
            let lowered = moving
                .eccentric_max(&body, time, &options)
                .expect("it is lowered");
            assert!(
                lowered.load > lifted.load,
                "{name}, {who}: lowered {lowered:?}, lifted {lifted:?}"
            );
            if usual.finish == Finish::Reached {
                let reached = moving.one_rm(&body, &usual).expect("it is lifted");
                assert!(
                    reached.load >= lifted.load,
                    "{name}, {who}: reached {reached:?}, held {lifted:?}"
                );
            }
        }
    }
}
