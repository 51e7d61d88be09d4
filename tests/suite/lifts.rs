//! Whole lifts against published classes, poses, strengths and their changes with technique.

use crate::body::studied;
use crate::evidence::paper;
use torquill::capacity::Pace;
use torquill::library::{Library, assemble};
use torquill::movement::Pose;
use torquill::study::{Question, Study, study};

const G: f64 = 9.80665;

/// The smallest capacity over the range.
pub fn weakest(study: &Study) -> f64 {
    let held = study.capacity.held.iter().map(|held| held.capacity);
    held.fold(f64::INFINITY, f64::min)
}

fn plain(movement: &str, lifter: &str) -> Study {
    studied(movement, lifter, &[], None)
}

/// Angle of a coordinate in a pose, deg.
fn degrees(pose: &Pose, joint: &str) -> f64 {
    pose.coordinates
        .iter()
        .find(|c| c.dof.name() == joint)
        .map(|c| c.angle_rad.to_degrees())
        .expect("a joint of the movement")
}

/// Lean of the line from hip to shoulder from upright in a stance, deg.
fn lean(pose: &Pose) -> f64 {
    let [.., hip, _, shoulder] = pose.outline.limbs[0][..] else {
        panic!("a stance is drawn from the ankle up to the shoulder");
    };
    (shoulder.x - hip.x).atan2(shoulder.z - hip.z).to_degrees()
}

/// Flexion of the hip as the textbooks count it in a lift: the thigh against the line of the trunk, deg.
fn hip_against_trunk(pose: &Pose) -> f64 {
    lean(pose) + degrees(pose, "knee") - degrees(pose, "ankle")
}

/// Torque that load (N, both sides) and limbs ask of a joint in a pose, N·m, one side, without sign.
fn asked(pose: &Pose, joint: &str, load_n: f64) -> f64 {
    let index = pose
        .coordinates
        .iter()
        .position(|c| c.dof.name() == joint)
        .expect("a joint of the movement");
    (pose.gravity_nm[index] - 0.5 * load_n * pose.load_jacobian[index].z).abs()
}

fn first(study: &Study) -> &Pose {
    &study.range.poses[0]
}

fn last(study: &Study) -> &Pose {
    study.range.poses.last().expect("a range has poses")
}

/// The classes do not hang on one body: an invented lifter has the class of the reference person of the
/// same sex, or a curve that is the same within a tenth at both ends. (The hip thrust lies between bell
/// and falling: the back limits its lower part and the hip the upper, and build shifts their shares.)
#[test]
fn law_invented_lifters_have_the_same_classes() {
    const TENTH: f64 = 0.1;
    let library = Library::built_in();
    for movement in library.names(torquill::library::Shelf::Movements) {
        for (reference, invented) in [
            ("reference-man", &["heavy-lifter", "tall-novice"][..]),
            ("reference-woman", &["club-lifter"][..]),
        ] {
            let class = plain(&movement, reference).class;
            for name in invented {
                let other = plain(&movement, name).class;
                let alike = (other.start_ratio - class.start_ratio).abs() < TENTH
                    && (other.end_ratio - class.end_ratio).abs() < TENTH;
                assert!(other.shape == class.shape || alike, "{movement}, {name}");
            }
        }
    }
}

#[test]
fn published_poses_of_the_lifts() {
    let squat = plain("squat", "reference-man");
    let deadlift = plain("deadlift", "reference-man");
    let press = plain("leg-press", "reference-man");
    let overhead = plain("overhead-press", "reference-man");
    let pull_up = plain("pull-up", "reference-man");
    let row = plain("row", "reference-man");
    let poses = paper("textbook_poses");
    for (quantity, computed) in [
        (
            "parallel squat: knee flexion, deg",
            degrees(first(&squat), "knee"),
        ),
        (
            "parallel squat: ankle dorsiflexion, deg",
            degrees(first(&squat), "ankle"),
        ),
        (
            "parallel squat: hip flexion, deg",
            hip_against_trunk(first(&squat)),
        ),
        (
            "parallel squat: lean of the trunk, deg",
            lean(first(&squat)),
        ),
        (
            "deadlift, lift-off: knee flexion, deg",
            degrees(first(&deadlift), "knee"),
        ),
        (
            "deadlift, lift-off: ankle dorsiflexion, deg",
            degrees(first(&deadlift), "ankle"),
        ),
        (
            "deadlift, lift-off: trunk above the level, deg",
            90.0 - lean(first(&deadlift)),
        ),
        (
            "leg press, bottom: hip flexion, deg",
            degrees(first(&press), "hip"),
        ),
        (
            "leg press, bottom: knee flexion, deg",
            degrees(first(&press), "knee"),
        ),
        (
            "leg press, top: knee flexion, deg",
            degrees(last(&press), "knee"),
        ),
        (
            "overhead press, bottom: elbow flexion, deg",
            degrees(first(&overhead), "elbow"),
        ),
        (
            "overhead press, bottom: arm raised by, deg",
            degrees(first(&overhead), "shoulder_abduction"),
        ),
        (
            "pull-up, top: elbow flexion, deg",
            degrees(last(&pull_up), "elbow"),
        ),
        (
            "pull-up, top: arm raised by, deg",
            degrees(last(&pull_up), "shoulder_abduction"),
        ),
        ("row, top: elbow flexion, deg", degrees(last(&row), "elbow")),
    ] {
        poses.check(quantity, computed);
    }
    let deep = studied("squat", "reference-man", &["technique.depth=20 deg"], None);
    paper("hemmerich2006_deep_squat").check(
        "deep squat, heels down: ankle dorsiflexion, deg",
        degrees(first(&deep), "ankle"),
    );
}

#[test]
fn published_squat_with_the_knees_held_back_fry_2003() {
    let free = plain("squat", "reference-man");
    let held = studied(
        "squat",
        "reference-man",
        &["technique.knee_travel=0 cm"],
        None,
    );
    let load = free.body_mass.as_kg() * G;
    let fry = paper("fry2003_squat");
    let knee = |study: &Study| asked(first(study), "knee", load);
    let hip = |study: &Study| asked(first(study), "hip", load);
    fry.check(
        "parallel squat with body mass: knee torque, N·m",
        knee(&free),
    );
    fry.check(
        "knee torque, knees held behind the toes over free",
        knee(&held) / knee(&free),
    );
    fry.check_holds("knees held back: more hip torque", hip(&held) > hip(&free));
    fry.check_holds(
        "knees held back: the trunk leans more",
        lean(first(&held)) > lean(first(&free)),
    );
    fry.check("parallel squat with body mass: hip torque, N·m", hip(&free));
}

#[test]
fn published_sumo_and_conventional_escamilla_2000() {
    let conventional = plain("deadlift", "reference-man");
    let sumo = studied(
        "deadlift",
        "reference-man",
        &["technique.stance=sumo"],
        None,
    );
    let escamilla = paper("escamilla2000_deadlift");
    let thigh = |pose: &Pose| degrees(pose, "knee") - degrees(pose, "ankle");
    escamilla.check(
        "lift-off: trunk more upright in sumo by, deg",
        lean(first(&conventional)) - lean(first(&sumo)),
    );
    escamilla.check(
        "way of the bar, conventional over sumo",
        last(&conventional).load.travel_m / last(&sumo).load.travel_m,
    );
    escamilla.check_holds(
        "lift-off: thigh nearer to the level in sumo",
        (thigh(first(&sumo)) - 90.0).abs() < (thigh(first(&conventional)) - 90.0).abs(),
    );
    let load = weakest(&conventional);
    paper("frontiers2025_sumo").check_holds(
        "conventional asks more hip torque than sumo at one load",
        asked(first(&conventional), "hip", load) > asked(first(&sumo), "hip", load),
    );
    let pose = first(&conventional);
    paper("brown1985_deadlift").check_holds(
        "deadlift: the hip carries the greatest torque",
        ["ankle", "knee", "shoulder_flexion"]
            .iter()
            .all(|joint| asked(pose, joint, load) < asked(pose, "hip", load)),
    );
}

#[test]
fn published_squats_high_low_and_at_angles() {
    let high = plain("squat", "reference-man");
    let low = studied(
        "squat",
        "reference-man",
        &["technique.bar_position=low"],
        None,
    );
    paper("barbell_placement2020_squat").check(
        "squat, low over high bar at one depth: least force",
        weakest(&low) / weakest(&high),
    );
    paper("glassbrook2017_squat").check_holds(
        "low bar: more lean of the trunk",
        lean(first(&low)) > lean(first(&high)),
    );
    let at_knee = |angle: f64| {
        let near = high
            .range
            .poses
            .iter()
            .zip(high.capacity.values())
            .min_by(|a, b| {
                let off = |p: &Pose| (degrees(p, "knee") - angle).abs();
                off(a.0).total_cmp(&off(b.0))
            })
            .expect("poses");
        near.1
    };
    paper("bazyler2015_isometric_squat").check_holds(
        "isometric squat: more at an inside knee angle of 120 than of 90 deg",
        at_knee(60.0) > at_knee(90.0),
    );
    let still = high.capacity.values()[50];
    let model = assemble(&Library::built_in(), "reference-man", "squat", &[]).expect("a model");
    let mut question = Question::new("squat", &model.movement, &model.lifter);
    question.pace = Pace::Linear(-0.3);
    let lowering = study(&question, &[]).expect("an answer").capacity.values()[50];
    paper("armstrong2022_squat").check(
        "squat in mid-range, lowering at 0.3 m/s over still",
        lowering / still,
    );
}

#[test]
fn published_curl_beside_the_bench_wong_2013() {
    let curl = plain("biceps-curl", "reference-man");
    // Both hands; a weight that hangs from the hand, where its lever is longest.
    let hand_n = curl
        .range
        .poses
        .iter()
        .zip(curl.capacity.values())
        .map(|(pose, torque)| torque / pose.load_jacobian[0].z.abs())
        .fold(f64::INFINITY, f64::min);
    let bench_kg = weakest(&plain("bench-press", "reference-man")) / G;
    for row in paper("wong2013_curl").rows() {
        let predicted_kg = row.number("slope") * bench_kg + row.number("constant_kg");
        row.check(2.0 * hand_n / G / predicted_kg);
    }
}

#[test]
fn published_calf_raise_over_body_mass() {
    for name in ["reference-man", "reference-woman"] {
        let calf = plain("calf-raise", name);
        let (pose, torque) = (
            last(&calf),
            calf.capacity.held.last().expect("poses").capacity,
        );
        let both_n = 2.0 * torque / pose.load_jacobian[0].z.abs();
        paper("practice_calf_raise").check(
            &format!("calf raise, {name}, high on the toes: both feet over body mass"),
            both_n / G / calf.body_mass.as_kg(),
        );
    }
}
