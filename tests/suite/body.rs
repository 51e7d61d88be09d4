//! The body against the outside: segments, sarcomeres, fibre curves, elbow and shoulder torque, bench press.

use crate::lifts::weakest;
use crate::published_table::{Row, Tolerance, check, miss};
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
    let rows = [
        (SegmentName::UpperArm, 2.71, 57.72, 2.55, 57.54),
        (SegmentName::Forearm, 1.62, 45.74, 1.38, 45.59),
        (SegmentName::Thigh, 14.16, 40.95, 14.78, 36.12),
        (SegmentName::Shank, 4.33, 43.95, 4.81, 43.52),
        (SegmentName::Trunk, 43.46, 43.1, 42.57, 37.82),
    ];
    for (segment, man_mass, man_centre, woman_mass, woman_centre) in rows {
        for (body, who, mass, centre) in [
            (&man, "man", man_mass, man_centre),
            (&woman, "woman", woman_mass, woman_centre),
        ] {
            let found = body.segment(segment);
            for (what, published, computed) in [
                (
                    "mass, % of body mass",
                    mass,
                    100.0 * found.mass.as_kg() / body.body_mass.as_kg(),
                ),
                (
                    "centre of mass, % of length",
                    centre,
                    100.0 * found.centre_of_mass,
                ),
            ] {
                check(Row {
                    quantity: &format!("{}, {who}: {what}", segment.name()),
                    published,
                    tolerance: Tolerance::Absolute(0.005),
                    computed,
                    source: "de Leva 1996, Table 4",
                    why: "half the last printed digit",
                });
            }
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
    check(Row {
        quantity: "all segments of the man, % of body mass",
        published: 100.0,
        tolerance: Tolerance::Absolute(0.01),
        computed: 100.0 * sum / man.body_mass.as_kg(),
        source: "de Leva 1996, Table 4",
        why: "sum of rounded rows",
    });
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
    let frog_published = [
        (1.27, 0.0),
        (1.67, 0.84),
        (2.05, 1.0),
        (2.20, 1.0),
        (3.65, 0.0),
    ];
    let human_published = [1.27, 1.70, 2.64, 2.81, 4.24];
    for (index, (corner, published)) in frog.iter().zip(frog_published).enumerate() {
        check(Row {
            quantity: &format!("frog sarcomere, corner {}, um", index + 1),
            published: published.0,
            tolerance: Tolerance::Absolute(0.025),
            computed: corner.0,
            source: "Gordon, Huxley & Julian 1966",
            why: "the break follows from the filaments (1.65) and was read as 1.67; others exact",
        });
    }
    for (index, (corner, published)) in human.iter().zip(human_published).enumerate() {
        check(Row {
            quantity: &format!("human sarcomere, corner {}, um", index + 1),
            published,
            tolerance: Tolerance::Absolute(0.005),
            computed: corner.0,
            source: "Walker & Schrodt 1974 (from memory)",
            why: "half the last printed digit",
        });
    }
    let optimum = library.sarcomere("human").expect("built in").optimum_um();
    check(Row {
        quantity: "human optimal sarcomere length, um",
        published: 2.7,
        tolerance: Tolerance::Interval(2.6, 2.8),
        computed: optimum,
        source: "Friden & Lieber, range 2.6-2.8",
        why: "published range",
    });
}

#[test]
fn published_fibre_curve_values() {
    let curves = lifter("reference-man").curves;
    let lengths = [0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6];
    let active = [
        0.054, 0.300, 0.683, 0.835, 0.936, 0.999, 0.953, 0.793, 0.579, 0.378, 0.224, 0.123,
    ];
    let exact = "half the last printed digit of the check values; tests the formula only";
    for (l, published) in lengths.into_iter().zip(active) {
        check(Row {
            quantity: &format!("active force at {l} optimal lengths"),
            published,
            tolerance: Tolerance::Absolute(0.001),
            computed: curves.active.at(l),
            source: "De Groote 2016 (from memory)",
            why: exact,
        });
    }
    for (l, published) in [(1.1, 0.018), (1.3, 0.119), (1.5, 0.504), (1.6, 1.0)] {
        check(Row {
            quantity: &format!("passive force at {l} optimal lengths"),
            published,
            tolerance: Tolerance::Absolute(0.001),
            computed: curves.passive.at(l),
            source: "De Groote 2016 (from memory)",
            why: exact,
        });
    }
    let parabola = ActiveForceLength::Parabola { width: 0.56 };
    let bell = ActiveForceLength::Gaussian { gamma: 0.45 };
    let thelen_passive = PassiveForceLength {
        shape: 5.0,
        strain_at_peak: 0.6,
    };
    for (what, published, computed, source) in [
        (
            "active force at 0.6, parabola",
            0.490,
            parabola.at(0.6),
            "van Soest & Bobbert 1993 (from memory)",
        ),
        (
            "active force at 1.4, parabola",
            0.490,
            parabola.at(1.4),
            "van Soest & Bobbert 1993 (from memory)",
        ),
        (
            "active force at 0.6, bell",
            0.701,
            bell.at(0.6),
            "Thelen 2003 (from memory)",
        ),
        (
            "active force at 1.5, bell",
            0.574,
            bell.at(1.5),
            "Thelen 2003 (from memory)",
        ),
        (
            "passive force at 1.4",
            0.183,
            thelen_passive.at(1.4),
            "Thelen 2003 (from memory)",
        ),
        (
            "tendon force at its strain of peak force",
            1.0,
            tendon_force(0.04, 0.04),
            "Thelen 2003 (from memory)",
        ),
    ] {
        check(Row {
            quantity: what,
            published,
            tolerance: Tolerance::Absolute(0.003),
            computed,
            source,
            why: "check values; the tendon's straight part meets 1 within 0.3 %",
        });
    }
    let hill = ForceVelocity {
        hill_a: 0.25,
        ..curves.velocity
    };
    for (v, published) in [
        (0.0, 1.0),
        (0.1, 0.643),
        (0.25, 0.375),
        (0.5, 0.167),
        (0.75, 0.0625),
        (1.0, 0.0),
    ] {
        check(Row {
            quantity: &format!("force at {v} of the greatest velocity"),
            published,
            tolerance: Tolerance::Absolute(0.001),
            computed: hill.at(v),
            source: "Hill 1938, a/F0 = 0.25",
            why: exact,
        });
    }
    let fastest = (0..=1000)
        .map(|i| f64::from(i) / 1000.0)
        .max_by(|a, b| (a * hill.at(*a)).total_cmp(&(b * hill.at(*b))))
        .expect("a grid has points");
    check(Row {
        quantity: "velocity of greatest power over the greatest velocity",
        published: 0.309,
        tolerance: Tolerance::Absolute(0.001),
        computed: fastest,
        source: "Hill 1938, analytic for a/F0 = 0.25",
        why: "step of the search",
    });
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
    for (muscle, published) in [
        ("biceps_long", 4.7),
        ("brachioradialis", 7.7),
        ("triceps_long", 2.3),
    ] {
        check(Row {
            quantity: &format!("greatest elbow arm of {muscle}, cm"),
            published,
            tolerance: Tolerance::Relative(0.15),
            computed: largest(muscle),
            source: "Murray 2000",
            why: "standard deviation between people is about 10 %",
        });
    }
    for (muscle, degrees, published) in [
        ("biceps_long", 30.0, 2.07),
        ("biceps_long", 90.0, 4.71),
        ("brachialis", 90.0, 2.78),
        ("brachioradialis", 60.0, 3.82),
        ("triceps_long", 60.0, 2.23),
    ] {
        check(Row {
            quantity: &format!("elbow arm of {muscle} at {degrees} deg, cm"),
            published,
            tolerance: Tolerance::Absolute(0.005),
            computed: arm(muscle, degrees),
            source: "quintics, Bulgarian Academy of Sciences",
            why: "half the last digit of the computed check values",
        });
    }
}

#[test]
fn published_elbow_flexion_torque_tsunoda_1993() {
    let source = "Tsunoda 1993";
    for (name, size, place) in [
        ("reference-man", 69.5, 60.0),
        ("reference-woman", 35.4, 90.0),
    ] {
        let curve = net_torque(&studied("biceps-curl", name, &[], None));
        let top = peak(&curve);
        check(Row {
            quantity: &format!("peak elbow flexion torque, {name}, N·m"),
            published: size,
            tolerance: Tolerance::Relative(0.25),
            computed: top.1,
            source,
            why: "small groups",
        });
        check(Row {
            quantity: &format!("elbow angle of the peak, {name}, deg"),
            published: place,
            tolerance: Tolerance::Absolute(20.0),
            computed: top.0,
            source,
            why: "measured every 15 deg on a flat top",
        });
    }
    let curve = net_torque(&studied("biceps-curl", "reference-man", &[], None));
    check(Row {
        quantity: "elbow flexion torque at 105 deg over the peak, men",
        published: 0.80,
        tolerance: Tolerance::Absolute(0.12),
        computed: at(&curve, 105.0) / peak(&curve).1,
        source,
        why: "spread between subjects",
    });
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
    check(Row {
        quantity: "bench press: sideways over vertical bar force, mean of the range, %",
        published: 26.3,
        tolerance: Tolerance::Interval(13.0, 34.0),
        computed: mean,
        source: "Duffey & Challis 2011",
        why: "studies disagree; two standard deviations and the range of other studies",
    });
    let outward = share.iter().filter(|s| **s > 0.0).count() as f64 / share.len() as f64;
    check(Row {
        quantity: "bench press: share of the range in which the bar is pushed outward",
        published: 1.0,
        tolerance: Tolerance::Absolute(0.0),
        computed: outward,
        source: "Duffey & Challis 2011: always outward",
        why: "a direction",
    });
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
    check(Row {
        quantity: "bench press: elbow lever of the bar falls first, then rises (1 = yes)",
        published: 1.0,
        tolerance: Tolerance::Absolute(0.0),
        computed: f64::from(falls && rises && least > 0 && least < last),
        source: "Elliott 1989",
        why: "an order of events",
    });
    let shoulder: Vec<f64> = bench
        .range
        .poses
        .iter()
        .map(|p| p.load_jacobian[0].z.abs())
        .collect();
    check(Row {
        quantity: "bench press: shoulder lever of the bar falls through the ascent (1 = yes)",
        published: 1.0,
        tolerance: Tolerance::Absolute(0.0),
        computed: f64::from(shoulder.windows(2).all(|pair| pair[1] <= pair[0] + 1e-9)),
        source: "Elliott 1989",
        why: "an order of events",
    });
}

#[test]
fn published_bench_press_static_sticking_point() {
    let bench = studied("bench-press", "reference-man", &[], Some(80.0));
    let sticking = bench.setups[0].sticking.expect("80 kg is a load");
    let values = bench.capacity.values();
    let inner = (1..values.len() - 1)
        .any(|i| values[i] < values[0] && values[i] < values[values.len() - 1]);
    check(Row {
        quantity: "bench press: isometric force has an inner minimum above the chest (1 = yes)",
        published: 1.0,
        tolerance: Tolerance::Absolute(0.0),
        computed: f64::from(inner),
        source: "van den Tillaar 2012",
        why: "a shape",
    });
    miss(
        Row {
            quantity: "bench press: static sticking point off the chest, cm",
            published: 17.5,
            tolerance: Tolerance::Interval(10.0, 22.0),
            computed: bench.axis_value(sticking.point_range),
            source: "15-20 cm, common practice",
            why: "range of practice, widened",
        },
        "the rule of thumb is of moving bars, which slow above the place of least isometric force; the \
         static region (effort within 5 %) reaches from the chest to about 13 cm",
    );
    check(Row {
        quantity: "bench press of an untrained man over body mass",
        published: 0.9,
        tolerance: Tolerance::Interval(0.7, 1.3),
        computed: weakest(&bench) / 9.80665 / bench.body_mass.as_kg(),
        source: "Duffey & Challis 2011: 90 %, men and women together",
        why: "isometric least force stands a little above a moving 1RM; men above the mixed mean",
    });
}

#[test]
fn published_classes_of_the_first_three_lifts() {
    for (movement, word) in [
        ("bench-press", "ascending"),
        ("biceps-curl", "bell-shaped"),
        ("lateral-raise", "descending"),
    ] {
        for name in ["reference-man", "reference-woman"] {
            let class = studied(movement, name, &[], None).class;
            check(Row {
                quantity: &format!("{movement}, {name}: {word} (1 = yes)"),
                published: 1.0,
                tolerance: Tolerance::Absolute(0.0),
                computed: f64::from(class.shape.word() == word),
                source: "Kulig 1984, McMaster 2009",
                why: "a class",
            });
        }
    }
}

#[test]
fn law_settings_change_curves_as_mechanics_says() {
    // A narrower grip: the hand is nearer to the shoulder and further inside the elbow, so the elbow's
    // lever grows; with the elbow too weak for that, capacity falls where it is least.
    let wide = weakest(&studied("bench-press", "reference-man", &[], None));
    let narrow = studied(
        "bench-press",
        "reference-man",
        &["technique.grip_width=60 cm"],
        None,
    );
    assert!(weakest(&narrow) < wide, "{} {wide}", weakest(&narrow));

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
