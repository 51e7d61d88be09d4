//! Facts of joints and muscles that nothing was set by, and every published value that a measure gives.

use crate::dynamometer::Joint;
use crate::evidence::{paper, papers};
use crate::measures::{Asked, value};
use torquill::anatomy::HIP_OF_THIGH_ON_TRUNK;
use torquill::anatomy::{Dof, Lifter};
use torquill::library::Library;

fn lifter(name: &str) -> Lifter {
    Library::built_in().lifter(name).expect("a built-in lifter")
}

/// Greatest torque of a joint over a range of angles at a speed of shortening, deg/s.
fn peak_at_speed(joint: &Joint<'_>, body: &Lifter, speed: f64) -> f64 {
    (10..=100)
        .step_by(2)
        .map(|degrees| joint.torque_at_speed(body, f64::from(degrees), speed))
        .fold(0.0, f64::max)
}

#[test]
fn published_knee_flexion_over_extension_at_speed_rosene_2001() {
    let man = lifter("reference-man");
    let held = [(Dof::Hip, 85.0 * HIP_OF_THIGH_ON_TRUNK)];
    let peak = |sign: f64, speed: f64| {
        let knee = Joint {
            dof: Dof::Knee,
            sign,
            held: &held,
        };
        peak_at_speed(&knee, &man, speed)
    };
    let ratio = |speed: f64| peak(1.0, speed) / peak(-1.0, speed);
    for row in paper("rosene2001_ratio").rows() {
        row.check(ratio(row.number("fast")) / ratio(row.number("slow")));
    }
}

#[test]
fn published_hip_flexion_ito_2024() {
    let man = lifter("reference-man");
    let hip = Joint {
        dof: Dof::Hip,
        sign: 1.0,
        held: &[(Dof::Knee, 90.0)],
    };
    let torques = [0.0, 30.0, 60.0, 90.0, 105.0]
        .map(|degrees| hip.torque(&man, HIP_OF_THIGH_ON_TRUNK * degrees));
    let ito = paper("ito2024_hip_flexion");
    ito.check_holds(
        "hip flexion torque: least at 0 deg of 0, 30, 60, 90, 105",
        torques[1..].iter().all(|torque| *torque > torques[0]),
    );
    ito.check_holds(
        "hip flexion torque: greatest at 105 deg of 0, 30, 60, 90, 105",
        torques[..4].iter().all(|torque| *torque < torques[4]),
    );
}

/// How much a muscle shortens as a joint goes from straight to 90 deg, mm, with its sign.
fn shortening_mm(body: &Lifter, muscle: &str, dof: Dof) -> f64 {
    let arm = body.muscles[muscle].moment_arm[&dof].curve();
    let arm = arm.expect("a sound arm");
    1000.0 * arm.shortening(0.0, 90.0_f64.to_radians())
}

#[test]
fn published_hamstrings_by_hip_and_knee() {
    let man = lifter("reference-man");
    // From hip 0, knee 90 to hip 90, knee 0: flexion of the hip lengthens, extension of the knee too.
    let lengthening = |muscle: &str| {
        shortening_mm(&man, muscle, Dof::Knee) - shortening_mm(&man, muscle, Dof::Hip)
    };
    for row in paper("kellis2022_hamstrings").rows() {
        row.check(lengthening("semimembranosus") / lengthening(row.text("muscle")));
    }
    let woman = lifter("reference-woman");
    let by = |dof| shortening_mm(&woman, "biceps_femoris_long", dof).abs();
    paper("chleboun2001_biceps_femoris").check(
        "biceps femoris, woman: change of fibre length by 90 deg at the hip over 90 deg at the knee",
        by(Dof::Hip) / by(Dof::Knee),
    );
}

/// Every row that names a measure; a value that the model does not give is no number, and missed.
#[test]
fn published_values_that_measures_give() {
    for paper in papers() {
        for row in paper.rows_with("measure") {
            let asked = Asked::of(
                row.text("measure"),
                row.text("movement"),
                row.text("lifter"),
                row.text("with"),
            );
            row.check(value(&asked).unwrap_or(f64::NAN));
        }
    }
}
