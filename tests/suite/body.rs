//! The body against the outside: segments, sarcomeres, fibre curves, elbow and shoulder torque, bench press.

use crate::evidence::paper;
use torquill::anatomy::{
    ActiveForceLength, Dof, ForceVelocity, Lifter, PassiveForceLength, SegmentName, tendon_force,
};
use torquill::capacity::Pace;
use torquill::library::{Library, assemble};
use torquill::resistance::Setup;
use torquill::study::{Question, Study, study};
use torquill::units::Mass;

fn lifter(name: &str) -> Lifter {
    Library::built_in().lifter(name).expect("a built-in lifter")
}

/// A study of a movement by a lifter with settings, at plain weight if there is one.
pub fn studied(movement: &str, lifter: &str, sets: &[&str], load_kg: Option<f64>) -> Study {
    let sets: Vec<String> = sets.iter().map(|s| (*s).to_owned()).collect();
    let model = assemble(&Library::built_in(), lifter, movement, &sets).expect("a sound model");
    let question = Question::new(movement, &model.movement, &model.lifter);
    let setups: Vec<Setup> = load_kg
        .map(|kg| Setup::plain(Mass::from_kg(kg)))
        .into_iter()
        .collect();
    study(&question, &setups).expect("a built-in movement has an answer")
}

/// Torque of all muscles at the one moving joint, with the joint's own passive torque, without the
/// limb's weight: what a gravity-corrected dynamometer reads. (angle in deg, N·m)
pub fn net_torque(study: &Study) -> Vec<(f64, f64)> {
    study
        .range
        .poses
        .iter()
        .zip(&study.capacity.held)
        .map(|(pose, held)| {
            let sign = pose.coordinates[0].slope_rad.signum();
            let torque = held.capacity - sign * pose.gravity_nm[0];
            (pose.coordinates[0].angle_rad.to_degrees(), torque)
        })
        .collect()
}

/// Straight line between the samples of a curve over rising or falling angles.
pub fn at(curve: &[(f64, f64)], angle: f64) -> f64 {
    curve
        .windows(2)
        .find(|pair| {
            let (low, high) = (pair[0].0.min(pair[1].0), pair[0].0.max(pair[1].0));
            (low - 1e-9..=high + 1e-9).contains(&angle)
        })
        .map(|pair| {
            let part = (angle - pair[0].0) / (pair[1].0 - pair[0].0);
            pair[0].1 + part * (pair[1].1 - pair[0].1)
        })
        .expect("the angle lies in the range of the movement")
}

pub fn peak(curve: &[(f64, f64)]) -> (f64, f64) {
    *curve
        .iter()
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .expect("a curve has samples")
}

#[test]
fn published_segment_masses_and_centres_de_leva_1996() {
    let (man, woman) = (lifter("reference-man"), lifter("reference-woman"));
    let leva = paper("deleva1996_segments");
    for segment in [
        SegmentName::UpperArm,
        SegmentName::Forearm,
        SegmentName::Thigh,
        SegmentName::Shank,
        SegmentName::Trunk,
    ] {
        for (body, who) in [(&man, "man"), (&woman, "woman")] {
            let (found, name) = (body.segment(segment), segment.name());
            let share = 100.0 * found.mass.as_kg() / body.body_mass.as_kg();
            leva.check(&format!("{name}, {who}: mass, % of body mass"), share);
            let centre = 100.0 * found.centre_of_mass;
            leva.check(
                &format!("{name}, {who}: centre of mass, % of length"),
                centre,
            );
        }
    }
    let sum: f64 = [
        (SegmentName::Head, 1.0),
        (SegmentName::Trunk, 1.0),
        (SegmentName::UpperArm, 2.0),
        (SegmentName::Forearm, 2.0),
        (SegmentName::Hand, 2.0),
        (SegmentName::Thigh, 2.0),
        (SegmentName::Shank, 2.0),
        (SegmentName::Foot, 2.0),
    ]
    .iter()
    .map(|(name, sides)| sides * man.segment(*name).mass.as_kg())
    .sum();
    leva.check(
        "all segments of the man, % of body mass",
        100.0 * sum / man.body_mass.as_kg(),
    );
}

#[test]
fn published_sarcomere_corners() {
    let library = Library::built_in();
    let frog = library
        .sarcomere("frog")
        .expect("a built-in species")
        .corners();
    let human = library
        .sarcomere("human")
        .expect("a built-in species")
        .corners();
    for (name, corners, paper) in [
        ("frog", frog, paper("gordon1966_sarcomere")),
        ("human", human, paper("walker1974_sarcomere")),
    ] {
        for (index, corner) in corners.iter().enumerate() {
            let quantity = format!("{name} sarcomere, corner {}, um", index + 1);
            paper.check(&quantity, corner.0);
        }
    }
    let optimum = library.sarcomere("human").expect("built in").optimum_um();
    paper("friden_lieber_sarcomere").check("human optimal sarcomere length, um", optimum);
}

#[test]
fn published_fibre_curve_values() {
    let curves = lifter("reference-man").curves;
    for row in paper("degroote2016_fibre_curves").rows() {
        let length = row.number("length");
        row.check(match row.text("force") {
            "active" => curves.active.at(length),
            _ => curves.passive.at(length),
        });
    }
    let parabola = ActiveForceLength::Parabola { width: 0.56 };
    let bell = ActiveForceLength::Gaussian { gamma: 0.45 };
    let thelen_passive = PassiveForceLength {
        shape: 5.0,
        strain_at_peak: 0.6,
    };
    let soest = paper("vansoest1993_fibre_curve");
    soest.check("active force at 0.6, parabola", parabola.at(0.6));
    soest.check("active force at 1.4, parabola", parabola.at(1.4));
    let thelen = paper("thelen2003_fibre_curves");
    thelen.check("active force at 0.6, bell", bell.at(0.6));
    thelen.check("active force at 1.5, bell", bell.at(1.5));
    thelen.check("passive force at 1.4", thelen_passive.at(1.4));
    let stretched = tendon_force(0.04, 0.04);
    thelen.check("tendon force at its strain of peak force", stretched);
    let hill = ForceVelocity {
        hill_a: 0.25,
        ..curves.velocity
    };
    let published = paper("hill1938_force_velocity");
    for row in published.rows_with("velocity") {
        row.check(hill.at(row.number("velocity")));
    }
    let fastest = (0..=1000)
        .map(|i| f64::from(i) / 1000.0)
        .max_by(|a, b| (a * hill.at(*a)).total_cmp(&(b * hill.at(*b))))
        .expect("a grid has points");
    published.check(
        "velocity of greatest power over the greatest velocity",
        fastest,
    );
}

#[test]
fn published_elbow_moment_arms() {
    let man = lifter("reference-man");
    let arm = |muscle: &str, degrees: f64| {
        let curve = man.muscles[muscle].moment_arm[&Dof::Elbow]
            .curve()
            .expect("a sound arm");
        100.0 * curve.at(degrees.to_radians()).abs()
    };
    let largest = |muscle: &str| {
        (0..=130)
            .map(|d| arm(muscle, f64::from(d)))
            .fold(0.0, f64::max)
    };
    for row in paper("murray2000_moment_arms").rows() {
        row.check(largest(row.text("muscle")));
    }
    for row in paper("academy_elbow_quintics").rows() {
        row.check(arm(row.text("muscle"), row.number("degrees")));
    }
}

#[test]
fn published_elbow_flexion_torque_tsunoda_1993() {
    let tsunoda = paper("tsunoda1993_elbow_torque");
    for name in ["reference-man", "reference-woman"] {
        let curve = net_torque(&studied("biceps-curl", name, &[], None));
        let top = peak(&curve);
        tsunoda.check(&format!("peak elbow flexion torque, {name}, N·m"), top.1);
        tsunoda.check(&format!("elbow angle of the peak, {name}, deg"), top.0);
    }
    let curve = net_torque(&studied("biceps-curl", "reference-man", &[], None));
    tsunoda.check(
        "elbow flexion torque at 105 deg over the peak, men",
        at(&curve, 105.0) / peak(&curve).1,
    );
}

#[test]
fn published_bench_press_sideways_force_duffey_challis_2011() {
    let bench = studied("bench-press", "reference-man", &[], None);
    let share: Vec<f64> = bench
        .capacity
        .held
        .iter()
        .map(|held| 100.0 * held.reactions[0] / (held.capacity / 2.0))
        .collect();
    let mean = share.iter().sum::<f64>() / share.len() as f64;
    paper("duffey2011_bench_press").check(
        "bench press: sideways over vertical bar force, mean of the range, %",
        mean,
    );
    let outward = share.iter().filter(|s| **s > 0.0).count() as f64 / share.len() as f64;
    paper("duffey2011_bench_press").check(
        "bench press: share of the range in which the bar is pushed outward",
        outward,
    );
}

#[test]
fn published_bench_press_elbow_lever_elliott_1989() {
    let bench = studied("bench-press", "reference-man", &[], Some(80.0));
    // Distance across between hand and elbow, the weight's lever about the elbow.
    let lever: Vec<f64> = bench
        .range
        .poses
        .iter()
        .map(|pose| {
            let columns = &pose.load_jacobian;
            // The load's upward motion with elbow flexion is the hand's distance across from the elbow.
            columns[1].z.abs()
        })
        .collect();
    let least = (0..lever.len())
        .min_by(|a, b| lever[*a].total_cmp(&lever[*b]))
        .expect("a range has poses");
    let last = lever.len() - 1;
    let (falls, rises) = (lever[0] > lever[least], lever[last] > lever[least]);
    paper("elliott1989_bench_press").check(
        "bench press: elbow lever of the bar falls first, then rises (1 = yes)",
        f64::from(falls && rises && least > 0 && least < last),
    );
    let shoulder: Vec<f64> = bench
        .range
        .poses
        .iter()
        .map(|p| p.load_jacobian[0].z.abs())
        .collect();
    paper("elliott1989_bench_press").check(
        "bench press: shoulder lever of the bar falls through the ascent (1 = yes)",
        f64::from(shoulder.windows(2).all(|pair| pair[1] <= pair[0] + 1e-9)),
    );
}

#[test]
fn published_bench_press_static_sticking_point() {
    let bench = studied("bench-press", "reference-man", &[], Some(80.0));
    let sticking = bench.setups[0].sticking.expect("80 kg is a load");
    let values = bench.capacity.values();
    let inner = (1..values.len() - 1)
        .any(|i| values[i] < values[0] && values[i] < values[values.len() - 1]);
    paper("vandentillaar2012_isometric").check(
        "bench press: isometric force has an inner minimum above the chest (1 = yes)",
        f64::from(inner),
    );
    paper("practice_sticking_point").check(
        "bench press: static sticking point off the chest, cm",
        bench.axis_value(sticking.point_range),
    );
}

#[test]
fn law_the_classes_that_figures_tell_are_those_of_the_table_of_evidence() {
    let told = Library::built_in()
        .published_classes()
        .expect("a sound file");
    let mut known = std::collections::BTreeMap::new();
    for row in paper("kulig1984_classes").rows() {
        let class = row.text("class").to_owned();
        known.insert(row.text("movement").to_owned(), class);
    }
    assert_eq!(told.by_lift, known);
}

#[test]
fn published_classes_of_the_lifts() {
    for row in paper("kulig1984_classes").rows() {
        let (movement, name) = (row.text("movement"), row.text("lifter"));
        let class = studied(movement, name, &[], None).class;
        row.check(f64::from(class.shape.word() == row.text("class")));
    }
}

#[test]
fn law_settings_change_curves_as_mechanics_says() {
    // A narrower grip: the hand is nearer to the shoulder by half of it and further inside the elbow, so at
    // every place the load asks less of the muscles that draw the arm across and more of the elbow.
    let with_grip = |set: &str| studied("bench-press", "reference-man", &[set], None);
    let wide = with_grip("technique.grip_width=81 cm");
    let narrow = with_grip("technique.grip_width=61 cm");
    let lever = |study: &Study, sample: usize, dof: Dof| {
        let pose = &study.range.poses[sample];
        let index = pose.coordinates.iter().position(|c| c.dof == dof);
        pose.load_jacobian[index.expect("a row of the arm")].z
    };
    for sample in 0..wide.range.poses.len() {
        let change = |dof: Dof| lever(&narrow, sample, dof) - lever(&wide, sample, dof);
        let (across, elbow) = (change(Dof::ShoulderHorizontal), change(Dof::Elbow));
        assert!((across + 0.1).abs() < 1e-9, "sample {sample}: {across} m");
        assert!(elbow < -0.02, "sample {sample}: {elbow} m");
    }
    // At the chest the shoulder limits, and gains; toward straight arms the elbow does, and loses.
    let change = |sample: usize| narrow.capacity.values()[sample] / wide.capacity.values()[sample];
    assert!(change(0) > 1.0, "at the chest {}", change(0));
    for sample in 60..wide.range.poses.len() {
        assert!(change(sample) < 1.0, "sample {sample}: {}", change(sample));
    }

    // A longer biceps arm: more torque near mid-range, shorter fibres in flexion.
    let plain = studied("biceps-curl", "reference-man", &[], None);
    let longer = studied(
        "biceps-curl",
        "reference-man",
        &["muscles.biceps_long.moment_arm.elbow=+10%"],
        None,
    );
    let index = plain
        .capacity
        .muscles
        .iter()
        .position(|m| m == "biceps_long")
        .expect("a flexor");
    let last = plain.range.poses.len() - 1;
    let length =
        |study: &Study, sample: usize| study.capacity.held[sample].muscles[index].state.length_norm;
    assert!(length(&longer, last) < length(&plain, last));
    let at_60 = |study: &Study| at(&net_torque(study), 60.0);
    assert!(at_60(&longer) > at_60(&plain));
}

#[test]
fn law_a_curve_at_speed_is_weaker_lifting_and_stronger_lowering() {
    let library = Library::built_in();
    let model = assemble(&library, "reference-man", "biceps-curl", &[]).expect("a sound model");
    let mut question = Question::new("biceps-curl", &model.movement, &model.lifter);
    let mut strength = |degrees: f64| {
        question.pace = Pace::Angular(degrees.to_radians());
        let study = study(&question, &[]).expect("an answer");
        study.capacity.values()[50]
    };
    let (lifting, held, lowering) = (strength(60.0), strength(0.0), strength(-60.0));
    assert!(
        lifting < held && held < lowering,
        "{lifting} {held} {lowering}"
    );
}

#[test]
fn law_plain_weight_flattens_nothing_and_pounds_are_kilograms() {
    let bench = studied("bench-press", "reference-man", &[], Some(80.0));
    let flattening = bench.setups[0].flattening_percent.expect("a load");
    assert!(flattening.abs() < 1e-9, "{flattening}");
    let library = Library::built_in();
    let model = assemble(&library, "reference-man", "bench-press", &[]).expect("a sound model");
    let question = Question::new("bench-press", &model.movement, &model.lifter);
    let pounds = study(
        &question,
        &[Setup::plain(Mass::from_lb(80.0 / 0.453_592_37))],
    )
    .expect("an answer");
    let (kg, lb) = (&bench.setups[0].effort, &pounds.setups[0].effort);
    assert!(kg.iter().zip(lb).all(|(a, b)| (a - b).abs() < 1e-12));
}
