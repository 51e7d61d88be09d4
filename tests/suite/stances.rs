//! Lifters on both feet: legs in space, a back that can give way, poses against measured lifts.

use crate::body::studied;
use crate::dynamometer::Joint;
use crate::evidence::paper;
use torquill::anatomy::{Dof, Lifter, SegmentName};
use torquill::library::{Library, assemble};
use torquill::movement::{BarPlace, Feet, Movement, PathRecord, Pose, Range, trace};
use torquill::units::{Angle, Length, Mass};

const G: f64 = 9.80665;

fn model(movement: &str, sets: &[&str]) -> (Movement, Lifter) {
    let sets: Vec<String> = sets.iter().map(|s| (*s).to_owned()).collect();
    let model =
        assemble(&Library::built_in(), "reference-man", movement, &sets).expect("a built-in model");
    (model.movement, model.lifter)
}

fn traced(movement: &str, sets: &[&str], samples: usize) -> Range {
    let (movement, lifter) = model(movement, sets);
    trace(&movement, &lifter, samples).expect("a range")
}

fn row(pose: &Pose, dof: Dof) -> usize {
    let place = pose.coordinates.iter().position(|c| c.dof == dof);
    place.expect("a joint of the movement")
}

const STANCES: [(&str, &[&str]); 4] = [
    ("squat", &[]),
    (
        "squat",
        &["technique.bar_position=low", "technique.depth=20 deg"],
    ),
    ("deadlift", &[]),
    ("deadlift", &["technique.stance=sumo"]),
];

/// Sum of torque times turn from one end of the range to the other, by the trapezoidal rule.
fn work(range: &Range, torque: impl Fn(&Pose, usize) -> f64) -> f64 {
    let pairs = range.poses.windows(2);
    pairs
        .flat_map(|pair| (0..pair[0].coordinates.len()).map(move |j| (pair, j)))
        .map(|(pair, j)| {
            let turn = pair[1].coordinates[j].angle_rad - pair[0].coordinates[j].angle_rad;
            0.5 * (torque(&pair[0], j) + torque(&pair[1], j)) * turn
        })
        .sum()
}

/// The bar rises as evenly as the range says by what the joints turn, also over legs that stand wide and
/// turned out. (Slopes are differences of the angles and err most near the straight knee.)
#[test]
fn law_the_joints_of_a_stance_lift_the_bar() {
    for (movement, sets) in STANCES {
        let range = traced(movement, sets, 101);
        let way = range.poses[100].load.z_m - range.poses[0].load.z_m;
        for pose in &range.poses {
            let coordinates = pose.coordinates.iter();
            let lifted: f64 = coordinates
                .zip(&pose.load_jacobian)
                .map(|(c, column)| column.z * c.slope_rad)
                .sum();
            assert!(
                (lifted - way).abs() < 1.0e-6,
                "{movement} {sets:?}: {lifted} {way}"
            );
        }
    }
}

/// What a heavier leg asks of the joints over the range is the work of raising it.
#[test]
fn law_the_joints_of_a_stance_lift_the_legs() {
    let centre = |pose: &Pose, share: f64, lower: usize| {
        let [below, above] = [
            pose.outline.limbs[0][lower].z,
            pose.outline.limbs[0][lower + 1].z,
        ];
        below + share * (above - below)
    };
    for (movement, sets) in STANCES {
        for (segment, lower) in [(SegmentName::Shank, 0), (SegmentName::Thigh, 1)] {
            let (movement, mut lifter) = model(movement, sets);
            let own = trace(&movement, &lifter, 401).expect("a range");
            let limb = lifter.segments.get_mut(&segment).expect("a leg");
            limb.mass = Mass::from_kg(limb.mass.as_kg() + 1.0);
            let share = 1.0 - limb.centre_of_mass;
            let heavier = trace(&movement, &lifter, 401).expect("a range");
            let asked = |range: &Range| work(range, |pose, j| pose.gravity_nm[j]);
            let rise = centre(&own.poses[400], share, lower) - centre(&own.poses[0], share, lower);
            let more = asked(&own) - asked(&heavier);
            assert!(
                (more - G * rise).abs() < 1.0e-3,
                "{segment:?}: {more} {rise}"
            );
        }
    }
}

/// Feet under the hips that point forward: every lever of the bar is its distance in front of the joint.
/// Wide feet that point outward: the hip's lever in the leg's own plane is longer than that, because the
/// force of the floor acts outside the hip as well as in front of it.
#[test]
fn law_levers_of_a_planar_stance_are_distances_and_a_wide_one_has_longer() {
    let (mut movement, lifter) = model("squat", &[]);
    let PathRecord::Stance(record) = &mut movement.path else {
        panic!("a squat is a stance");
    };
    let BarPlace::OnBack { feet, .. } = &mut record.bar else {
        panic!("a squat bears the bar on the back");
    };
    *feet = Feet {
        between: Length::from_m(lifter.build.hip_breadth.as_m()),
        turned_out: Angle::from_deg(0.0),
        source: feet.source.clone(),
    };
    for pose in &trace(&movement, &lifter, 21).expect("a range").poses {
        let joints = &pose.outline.limbs[0];
        for (j, dof) in [Dof::Ankle, Dof::Knee, Dof::Hip, Dof::Lumbar]
            .into_iter()
            .enumerate()
        {
            let lever = pose.load_jacobian[row(pose, dof)].z.abs();
            let distance = (pose.load.x_m - joints[j].x).abs();
            assert!(
                (lever - distance).abs() < 1.0e-9,
                "{dof:?}: {lever} {distance}"
            );
        }
    }
    for pose in &traced("deadlift", &["technique.stance=sumo"], 21).poses {
        let hip = pose.load_jacobian[row(pose, Dof::Hip)].z.abs();
        assert!(hip > 1.05 * (pose.load.x_m - pose.outline.limbs[0][2].x).abs());
    }
}

/// A back that is weak gives way first, and a stronger one lifts more only where it did.
#[test]
fn law_a_weak_back_limits_the_deadlift() {
    let limiting = |set: &str| {
        let study = studied("deadlift", "reference-man", &[set], None);
        let held = &study.capacity.held[0];
        (
            study.range.poses[0].coordinates[held.limiting].dof,
            held.capacity,
        )
    };
    let (weak, weak_n) = limiting("muscles.erector_spinae.peak_force=-40%");
    let (strong, strong_n) = limiting("muscles.erector_spinae.peak_force=+200%");
    assert_eq!(weak, Dof::Lumbar);
    assert_ne!(strong, Dof::Lumbar);
    assert!(strong_n > 1.2 * weak_n);
}

/// A longer arm of one muscle raises its joint's torque when its fibres go through the same lengths.
///
/// At one fibre length a longer arm also draws the fibres over more of their length-tension curve: the
/// gluteus maximus of the hip thrust, short at lockout, then ends shorter and can lose more force than
/// its lever gains. That is physics, not a fault; so fibres and reference length grow with the arm here.
#[test]
fn law_a_longer_arm_at_one_fibre_excursion_is_stronger() {
    let longer = [
        "muscles.gluteus_maximus.moment_arm.hip=+10%",
        "muscles.gluteus_maximus.optimal_fibre_length=+10%",
    ];
    for movement in ["hip-thrust", "deadlift", "squat"] {
        let own = studied(movement, "reference-man", &[], None);
        let changed = studied(movement, "reference-man", &longer, None);
        for (one, other) in own.capacity.held.iter().zip(&changed.capacity.held) {
            assert!(other.capacity > one.capacity * (1.0 - 1.0e-6), "{movement}");
        }
    }
}

/// Knees held back load hip and back more and the knee less; what the lift then does hangs on the joint
/// that limits it: a bar that the knee limited gets lighter, one that hip or back limited heavier.
#[test]
fn law_knees_held_back_shift_the_load_to_hip_and_back() {
    let lever = |set: &[&str], dof| {
        let pose = &traced("squat", set, 5).poses[0];
        pose.load_jacobian[row(pose, dof)].z.abs()
    };
    let held: &[&str] = &["technique.knee_travel=-6 cm"];
    assert!(lever(held, Dof::Knee) < lever(&[], Dof::Knee));
    assert!(lever(held, Dof::Hip) > lever(&[], Dof::Hip));
    assert!(lever(held, Dof::Lumbar) > lever(&[], Dof::Lumbar));
}

#[test]
fn published_lumbar_extension_torque_1997() {
    let library = Library::built_in();
    let extension = Joint {
        dof: Dof::Lumbar,
        sign: -1.0,
        held: &[],
    };
    let table = paper("lumbar1997_extension_torque");
    for row in table.rows_with("device_degrees") {
        let name = format!("reference-{}", row.text("who"));
        let lifter = library.lifter(&name).expect("a built-in lifter");
        // The device counts from full extension; standing is 24 deg there. Both sides push it.
        let lumbar_deg = row.number("device_degrees") - 24.0;
        row.check(2.0 * extension.torque(&lifter, lumbar_deg));
    }
}
