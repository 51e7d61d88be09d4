//! Torque of single joints, moment arms and muscle lengths against published values.

use crate::dynamometer::Joint;
use crate::evidence::paper;
use torquill::anatomy::HIP_OF_THIGH_ON_TRUNK as OF_THE_HIP;
use torquill::anatomy::{Dof, Lifter};
use torquill::library::Library;

fn lifter(name: &str) -> Lifter {
    Library::built_in().lifter(name).expect("a built-in lifter")
}

fn man() -> Lifter {
    lifter("reference-man")
}

fn woman() -> Lifter {
    lifter("reference-woman")
}

fn joint(dof: Dof, sign: f64, held: &[(Dof, f64)]) -> Joint<'_> {
    Joint { dof, sign, held }
}

const SEATED: &[(Dof, f64)] = &[(Dof::Hip, 85.0 * OF_THE_HIP)];
const KNEE_BENT: &[(Dof, f64)] = &[(Dof::Knee, 60.0)];

fn knee_extension() -> Joint<'static> {
    joint(Dof::Knee, -1.0, SEATED)
}

fn knee_flexion() -> Joint<'static> {
    joint(Dof::Knee, 1.0, SEATED)
}

fn plantarflexion(held: &[(Dof, f64)]) -> Joint<'_> {
    joint(Dof::Ankle, -1.0, held)
}

fn hip_extension() -> Joint<'static> {
    joint(Dof::Hip, -1.0, KNEE_BENT)
}

#[test]
fn published_knee_torque_sarabon_2021() {
    let (man, woman) = (man(), woman());
    let sarabon = paper("sarabon2021_knee_torque");
    for row in sarabon.rows_with("degrees") {
        let body = if row.text("who") == "man" {
            &man
        } else {
            &woman
        };
        let joint = match row.text("joint") {
            "extension" => knee_extension(),
            _ => knee_flexion(),
        };
        row.check(joint.torque(body, row.number("degrees")) / body.body_mass.as_kg());
    }
    let at_60 = knee_flexion().torque(&man, 60.0) / knee_extension().torque(&man, 60.0);
    sarabon.check("knee flexion over extension at 60 deg, man", at_60);
    let (place, _) = knee_extension().peak(&man, 10, 110);
    sarabon.check("knee extension, angle of the peak, man, deg", place);
}

#[test]
fn published_knee_torque_and_hip_angle_baumgart_2021() {
    let man = man();
    let ratio = |sign: f64| {
        let lying = joint(Dof::Knee, sign, &[(Dof::Hip, 10.0 * OF_THE_HIP)]).mean(&man, 40, 90);
        let seated = joint(Dof::Knee, sign, &[(Dof::Hip, 90.0 * OF_THE_HIP)]).mean(&man, 40, 90);
        lying / seated
    };
    let (flexion, extension) = (ratio(1.0), ratio(-1.0));
    let baumgart = paper("baumgart2021_knee_torque");
    baumgart.check_holds(
        "knee flexion is less with the hip extended (10 deg) than flexed (90 deg)",
        flexion < 1.0,
    );
    baumgart.check_holds(
        "knee extension is less with the hip extended (10 deg) than flexed (90 deg)",
        extension < 1.0,
    );
    baumgart.check_holds(
        "the hip's angle changes knee flexion more than extension",
        flexion < extension,
    );
}

#[test]
fn published_ankle_torque() {
    let (man, woman) = (man(), woman());
    let straight = plantarflexion(&[(Dof::Knee, 0.0)]);
    let bent = plantarflexion(&[(Dof::Knee, 90.0)]);
    let (sale, fugl_meyer) = (
        paper("sale1982_ankle_torque"),
        paper("fuglmeyer1980_ankle_torque"),
    );
    let solianik = paper("solianik_ankle_torque");
    for (quantity, joint) in [
        (
            "plantarflexion optimum, knee straight, deg dorsiflexed",
            straight,
        ),
        ("plantarflexion optimum, knee bent, deg dorsiflexed", bent),
    ] {
        sale.check(quantity, joint.peak(&man, -30, 30).0);
    }
    fugl_meyer.check(
        "plantarflexion, knee bent over straight",
        bent.mean(&man, 0, 20) / straight.mean(&man, 0, 20),
    );
    fugl_meyer.check(
        "plantarflexion, woman over man",
        straight.mean(&woman, 0, 20) / straight.mean(&man, 0, 20),
    );
    solianik.check(
        "plantarflexion at 25 deg dorsiflexion, man, N·m",
        straight.torque(&man, 25.0),
    );
    solianik.check(
        "dorsiflexion at 25 deg plantarflexion, man, N·m",
        joint(Dof::Ankle, 1.0, &[(Dof::Knee, 0.0)]).torque(&man, -25.0),
    );
    let curve: Vec<f64> = [-30.0, -20.0, -10.0, 0.0, 10.0, 20.0]
        .iter()
        .map(|d| straight.torque(&man, *d))
        .collect();
    sale.check_holds(
        "plantarflexion torque rises all the way from 30 deg plantarflexion to 20 deg dorsiflexion",
        curve.windows(2).all(|pair| pair[1] > pair[0]),
    );
}

#[test]
fn published_leg_torque_anderson_2007() {
    let man = man();
    let anderson = paper("anderson2007_leg_torque");
    let straight = plantarflexion(&[(Dof::Knee, 0.0)]);
    for (quantity, computed) in [
        (
            "knee extension at 60 deg, N·m",
            knee_extension().active_torque(&man, 60.0),
        ),
        (
            "knee extension at 90 deg, N·m",
            knee_extension().active_torque(&man, 90.0),
        ),
        (
            "knee flexion at 20 deg, N·m",
            knee_flexion().active_torque(&man, 20.0),
        ),
        (
            "knee flexion at 60 deg, N·m",
            knee_flexion().active_torque(&man, 60.0),
        ),
        (
            "hip extension at 0 deg, N·m",
            hip_extension().active_torque(&man, OF_THE_HIP * 0.0),
        ),
        (
            "hip extension at 20 deg, N·m",
            hip_extension().active_torque(&man, OF_THE_HIP * 20.0),
        ),
        (
            "hip extension at 60 deg, N·m",
            hip_extension().active_torque(&man, OF_THE_HIP * 60.0),
        ),
        (
            "hip extension at 90 deg, N·m",
            hip_extension().active_torque(&man, OF_THE_HIP * 90.0),
        ),
        (
            "plantarflexion at 20 deg dorsiflexion, N·m",
            straight.active_torque(&man, 20.0),
        ),
    ] {
        anderson.check(quantity, computed);
    }
}

#[test]
fn published_handbook_strengths() {
    let man = man();
    let handbook = paper("stobbe1982_handbook_torque");
    let straight = plantarflexion(&[(Dof::Knee, 0.0)]);
    for (quantity, computed) in [
        (
            "knee extension at 60 deg, N·m",
            knee_extension().torque(&man, 60.0),
        ),
        (
            "hip extension at 90 deg, N·m",
            hip_extension().torque(&man, OF_THE_HIP * 90.0),
        ),
        (
            "plantarflexion, foot square, N·m",
            straight.torque(&man, 0.0),
        ),
        (
            "elbow flexion at 90 deg, N·m",
            joint(Dof::Elbow, 1.0, &[]).torque(&man, 90.0),
        ),
        (
            "elbow extension at 90 deg, N·m",
            joint(Dof::Elbow, -1.0, &[]).torque(&man, 90.0),
        ),
    ] {
        handbook.check(quantity, computed);
    }
}

#[test]
fn published_shoulder_torque() {
    let (man, woman) = (man(), woman());
    let flexion = joint(Dof::ShoulderFlexion, 1.0, &[]);
    let extension = joint(Dof::ShoulderFlexion, -1.0, &[]);
    let abduction = joint(Dof::ShoulderAbduction, 1.0, &[]);
    let adduction = joint(Dof::ShoulderAbduction, -1.0, &[]);
    let dynamic = paper("shoulder_flexion_strength");
    for (quantity, degrees) in [
        ("shoulder flexion at 0 deg, man, N·m", 0.0),
        ("shoulder flexion at 45 deg, man, N·m", 45.0),
    ] {
        dynamic.check(quantity, flexion.torque(&man, degrees));
    }
    dynamic.check(
        "shoulder flexion, 45 over 0 deg",
        flexion.torque(&man, 45.0) / flexion.torque(&man, 0.0),
    );
    dynamic.check(
        "shoulder flexion, woman over man",
        flexion.torque(&woman, 0.0) / flexion.torque(&man, 0.0),
    );
    let still = flexion.torque(&man, 45.0);
    dynamic.check(
        "shoulder flexion at 45 deg, lowering at 50 deg/s over still",
        flexion.torque_at_speed(&man, 45.0, -50.0) / still,
    );
    dynamic.check(
        "shoulder flexion at 45 deg, lifting at 50 deg/s over still",
        flexion.torque_at_speed(&man, 45.0, 50.0) / still,
    );
    let greatest = |joint: Joint<'_>, to: i32| joint.peak(&man, 0, to).1;
    let (up, back) = (greatest(flexion, 150), greatest(extension, 150));
    let (out, down) = (greatest(abduction, 120), greatest(adduction, 150));
    let ratios = paper("isokinetic1985_shoulder");
    for (quantity, computed) in [
        ("shoulder extension over flexion", back / up),
        ("shoulder adduction over abduction", down / out),
    ] {
        ratios.check(quantity, computed);
    }
    ratios.check_holds(
        "adduction, extension, flexion, abduction: each stronger than the next",
        down > back && back > up && up > out,
    );
    let mixed = 0.5 * (down + greatest_of(&woman, adduction));
    paper("holzbaur2007_shoulder_torque")
        .check("shoulder adduction, mean of man and woman, N·m", mixed);
    paper("isokinetic1989_shoulder").check(
        "shoulder adduction, woman over man",
        greatest_of(&woman, adduction) / down,
    );
}

fn greatest_of(lifter: &Lifter, joint: Joint<'_>) -> f64 {
    joint.peak(lifter, 0, 150).1
}

#[test]
fn published_shapes_kulig_1984() {
    let man = man();
    let kulig = paper("kulig1984_torque_shapes");
    let torque =
        |dof, sign, held: &[(Dof, f64)], degrees| joint(dof, sign, held).torque(&man, degrees);
    let (flexion, abduction) = (Dof::ShoulderFlexion, Dof::ShoulderAbduction);
    for (what, strong, weak) in [
        (
            "shoulder flexion is stronger at the side than at 90 deg",
            torque(flexion, 1.0, &[], 0.0),
            torque(flexion, 1.0, &[], 90.0),
        ),
        (
            "shoulder abduction is stronger at the side than at 90 deg",
            torque(abduction, 1.0, &[], 0.0),
            torque(abduction, 1.0, &[], 90.0),
        ),
        (
            "shoulder extension is stronger at 90 deg than at the side",
            torque(flexion, -1.0, &[], 90.0),
            torque(flexion, -1.0, &[], 0.0),
        ),
        (
            "shoulder adduction is stronger at 90 deg than at the side",
            torque(abduction, -1.0, &[], 90.0),
            torque(abduction, -1.0, &[], 0.0),
        ),
        (
            "hip extension is stronger flexed (90 deg) than straight",
            torque(Dof::Hip, -1.0, KNEE_BENT, 90.0 * OF_THE_HIP),
            torque(Dof::Hip, -1.0, KNEE_BENT, 0.0),
        ),
        (
            "knee flexion, lying, is stronger near extension than at 90 deg",
            torque(Dof::Knee, 1.0, &[(Dof::Hip, 15.0 * OF_THE_HIP)], 10.0),
            torque(Dof::Knee, 1.0, &[(Dof::Hip, 15.0 * OF_THE_HIP)], 90.0),
        ),
    ] {
        kulig.check_holds(what, strong > weak);
    }
    let extension = joint(Dof::Elbow, -1.0, &[]);
    let (place, top) = extension.peak(&man, 10, 130);
    kulig.check("elbow extension, angle of the peak, deg", place);
    kulig.check_holds(
        "elbow extension falls toward both ends",
        extension.torque(&man, 10.0) < 0.9 * top && extension.torque(&man, 130.0) < 0.9 * top,
    );
    let knee = knee_extension();
    kulig.check(
        "knee extension at 65 deg over the greatest",
        knee.torque(&man, 65.0) / knee.peak(&man, 10, 110).1,
    );
}

#[test]
fn published_eccentric_and_concentric_torque() {
    let man = man();
    let stotz = paper("stotz2022_joint_speed");
    let straight = [(Dof::Knee, 0.0)];
    for (what, joint, degrees) in [
        ("knee extension at 60 deg", knee_extension(), 60.0),
        ("knee flexion at 60 deg", knee_flexion(), 60.0),
        ("hip extension at 60 deg", hip_extension(), 60.0),
        (
            "plantarflexion, foot square",
            plantarflexion(&straight),
            0.0,
        ),
    ] {
        let still = joint.torque(&man, degrees);
        stotz.check(
            &format!("{what}, giving way at 60 deg/s over still"),
            joint.torque_at_speed(&man, degrees, -60.0) / still,
        );
        stotz.check(
            &format!("{what}, shortening at 60 deg/s over still"),
            joint.torque_at_speed(&man, degrees, 60.0) / still,
        );
    }
}

/// Moment arm of a muscle at an angle, mm, without sign.
fn arm_mm(lifter: &Lifter, muscle: &str, dof: Dof, degrees: f64) -> f64 {
    let arm = lifter.muscles[muscle].moment_arm[&dof].curve();
    1000.0 * arm.expect("a sound arm").at(degrees.to_radians()).abs()
}

/// Change of a muscle's length from straight to 90 deg at a joint, mm, without sign.
fn excursion_mm(lifter: &Lifter, muscle: &str, dof: Dof) -> f64 {
    let arm = lifter.muscles[muscle].moment_arm[&dof].curve();
    let curve = arm.expect("a sound arm");
    1000.0 * curve.shortening(0.0, 90.0_f64.to_radians()).abs()
}

#[test]
fn published_leg_moment_arms() {
    let man = man();
    let nemeth = paper("nemeth1985_hip_arms");
    for paper in [
        &paper("mri_quadriceps_arm"),
        &paper("wolfram2018_achilles_arm"),
        &paper("maganaris2000_achilles_arm"),
        &paper("spoor1990_knee_arms"),
        &nemeth,
    ] {
        for row in paper.rows_with("muscle") {
            let dof = match row.text("joint") {
                "hip" => Dof::Hip,
                "knee" => Dof::Knee,
                _ => Dof::Ankle,
            };
            row.check(arm_mm(&man, row.text("muscle"), dof, row.number("degrees")));
        }
    }
    let halved = arm_mm(&man, "gluteus_maximus", Dof::Hip, 90.0)
        / arm_mm(&man, "gluteus_maximus", Dof::Hip, 0.0);
    nemeth.check("gluteus maximus arm at 90 deg over straight", halved);
    let hamstring = |d| arm_mm(&man, "biceps_femoris_long", Dof::Hip, d);
    nemeth.check_holds(
        "hamstrings' hip arm rises to 35 deg and falls beyond",
        hamstring(35.0) > hamstring(0.0) && hamstring(35.0) > hamstring(90.0),
    );
    nemeth.check_holds(
        "adductor magnus: a small extensor arm when straight, one of the largest beyond 75 deg",
        arm_mm(&man, "adductor_magnus", Dof::Hip, 0.0) < 20.0
            && arm_mm(&man, "adductor_magnus", Dof::Hip, 90.0) > hamstring(90.0),
    );
}

#[test]
fn published_two_joint_lengths_visser_1990() {
    let man = man();
    let visser = paper("visser1990_leg_lengths");
    visser.check_holds(
        "biceps femoris: the hip changes its length much more than the knee",
        excursion_mm(&man, "biceps_femoris_long", Dof::Hip)
            > 1.5 * excursion_mm(&man, "biceps_femoris_long", Dof::Knee),
    );
    let hip = excursion_mm(&man, "rectus_femoris", Dof::Hip);
    let knee = excursion_mm(&man, "rectus_femoris", Dof::Knee);
    visser.check_holds(
        "rectus femoris: the knee changes its length more than the hip",
        hip < knee,
    );
}
