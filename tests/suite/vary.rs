//! What changed values do: families, causes, maps, ranks, and the command that shows them.

use crate::calling::{Answer, call_on, in_one_line};
use crate::lift_by_another_name::LIFTS;
use approx::assert_relative_eq;
use proptest::prelude::*;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use serde_json::Value;
use torquill::library::{Library, Workbench, numeric_paths};
use torquill::narrative::why_it_changed;
use torquill::study::{
    BothWays, Compared, Conditions, Family, Parameter, RankStep, Ranked, family, pair_grid, rank,
};
use torquill::units::System;

fn bench(movement: &str) -> Workbench {
    Workbench::open(&Library::built_in(), "reference-man", movement).expect("a built-in model")
}

fn varied(movement: &str, path: &str, values: &str) -> Family {
    let parameter = Parameter::read(path, values).expect("values");
    family(&bench(movement), &[], &parameter, &Conditions::default()).expect("a family")
}

/// Calls `vary` on this many threads; pictures that it writes are no empty ones.
fn call(arguments: &[&str], threads: &str) -> Answer {
    let folder = tempfile::tempdir().expect("a folder");
    let answer = call_on(threads, folder.path(), &[&["vary"], arguments].concat());
    for file in std::fs::read_dir(folder.path()).expect("a folder") {
        let bytes = std::fs::read(file.expect("a file").path()).expect("a file");
        assert!(bytes.len() > 5_000, "a picture of {} bytes", bytes.len());
    }
    answer
}

#[test]
fn law_a_longer_arm_is_stronger_and_its_fibres_end_shorter() {
    let family = varied(
        "biceps-curl",
        "muscles.biceps_long.moment_arm.elbow",
        "-20%,-10%,0%,+10%,+20%",
    );
    let figures = |index: usize| &family.variants[index].figures;
    for index in 1..5 {
        assert!(
            figures(index).start > figures(index - 1).start,
            "start {index}"
        );
        assert!(
            figures(index).peak > figures(index - 1).peak,
            "peak {index}"
        );
        // The muscle shortens more for the same turn, so its best length comes earlier.
        assert!(
            figures(index).peak_range <= figures(index - 1).peak_range,
            "place {index}"
        );
    }
    assert!(
        figures(4).end < figures(0).end,
        "short fibres win at the end"
    );
    assert!(family.has_present());
    let words = why_it_changed(&family, &family.variants[4], System::Metric);
    for part in [
        "biceps brachii long head: moment arm ",
        "biceps brachii long head: fibres ",
    ] {
        assert!(words.contains(part), "{words}");
    }
}

#[test]
fn law_a_row_of_a_map_is_a_family() {
    let bench = bench("bench-press");
    let asked = Conditions::default();
    let grips = Parameter::read("technique.grip_width", "60 cm..80 cm:3").expect("values");
    let tucks = Parameter::read("technique.tuck", "20 deg,40 deg").expect("values");
    let map = pair_grid(&bench, &[], [grips.clone(), tucks], &asked).expect("a map");
    for (row, tuck) in ["20 deg", "40 deg"].iter().enumerate() {
        let sets = [format!("technique.tuck={tuck}")];
        let family = family(&bench, &sets, &grips, &asked).expect("a family");
        for (cell, variant) in map.cells[row].iter().zip(&family.variants) {
            assert_eq!(cell.as_ref(), Some(&variant.figures), "{tuck}");
        }
    }
}

#[test]
fn law_small_changes_up_and_down_are_opposite_and_match_the_family() {
    let bench = bench("biceps-curl");
    let asked = Conditions::default();
    let ranks = rank(&bench, &[], 0.2, Compared::Start, &asked).expect("ranks");
    assert!(ranks.rows.len() > 20, "{} values matter", ranks.rows.len());
    for pair in ranks.rows.windows(2) {
        assert!(pair[0].size_percent() >= pair[1].size_percent());
    }
    for row in ranks.rows.iter().filter(|row| row.size_percent() > 0.01) {
        let (Some(lowered), Some(raised)) = (row.lowered_percent, row.raised_percent) else {
            continue;
        };
        let sum = lowered + raised;
        // The programme has kinks only where another joint takes over: none at the start of a curl.
        assert!(
            sum.abs() < 0.1 * row.size_percent(),
            "{}: {row:?}",
            row.number.path
        );
    }
    let by_share = |row: &&Ranked| matches!(row.by, RankStep::Percent(_));
    for row in ranks.rows.iter().filter(by_share).take(5) {
        let raised = row.raised_percent.expect("it can be raised");
        let parameter = Parameter::read(&row.number.path, "-0.2%,+0.2%").expect("values");
        let family = family(&bench, &[], &parameter, &asked).expect("a family");
        let ratio = family.variants[1].figures.start / family.base_figures.start;
        assert_relative_eq!(100.0 * (ratio - 1.0), raised, epsilon = 1e-9);
        let per_percent = family.sensitivity.expect("a number").start_percent.mean();
        assert_relative_eq!(per_percent, 5.0 * raised, max_relative = 0.05);
    }
}

#[test]
fn law_the_heaviest_weight_is_where_the_load_takes_all() {
    use torquill::resistance::Setup;
    use torquill::units::Mass;
    for movement in ["bench-press", "squat", "biceps-curl", "row"] {
        let family = varied(movement, "lifter.strength_scale", "-10%,+10%");
        for (scale, variant) in ["-10%", "+10%"].iter().zip(&family.variants) {
            let heaviest = variant.figures.held_kg.expect("a weight can be held");
            let asked = Conditions {
                load: Some(Setup::plain(Mass::from_kg(heaviest))),
                ..Conditions::default()
            };
            let model = bench(movement)
                .model(&[format!("lifter.strength_scale={scale}")])
                .expect("a model");
            let study = asked.of(&model).expect("a study");
            let effort = study.setups[0]
                .sticking
                .expect("a hardest place")
                .max_effort;
            assert_relative_eq!(effort, 1.0, max_relative = 1e-9);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]
    #[test]
    fn fault_any_text_of_values_is_read_or_refused(text in "[-+0-9.,:% a-z]{0,24}") {
        if let Ok(parameter) = Parameter::read("technique.grip_width", &text) {
            prop_assert!((1..=41).contains(&parameter.values.len()));
            prop_assert!(parameter.values.iter().all(|value| !value.trim().is_empty()));
        }
    }
}

#[test]
fn regress_the_command_answers_the_students_question() {
    let question = [
        "biceps-curl",
        "--param",
        "muscles.biceps_long.moment_arm.elbow",
        "--values",
        "-20%,-10%,0%,+10%,+20%",
        "-o",
        "v.png",
    ];
    let Answer {
        status,
        out,
        complaint,
    } = call(&question, "2");
    assert_eq!((status, complaint.as_str()), (0, ""));
    for words in [
        "as it is",
        "bell-shaped",
        "Per 1 % more",
        "biceps brachii long head: moment arm",
        "+20 %",
    ] {
        assert!(out.contains(words), "`{words}` is not in {out}");
    }
    let json = [&question[..5], &["--format", "json"]].concat();
    let answer = call(&json, "2").json();
    assert_eq!(answer["variants"].as_array().map(Vec::len), Some(5));
    assert_eq!(answer["variants"][4]["value"], "+20%");
    assert!(answer["sensitivity_per_percent"]["start_percent"].as_f64() > Some(0.0));
    let csv = [&question[..5], &["--format", "csv"]].concat();
    let Answer { out, .. } = call(&csv, "2");
    // The model as it is has one row, not a second one as a change of nothing.
    assert_eq!(out.lines().count(), 6);
    let head = "parameter,is_baseline,value,value_si,unit,class,peak_capacity_nm,";
    assert!(out.starts_with(head), "{out}");
}

#[test]
fn law_ranks_and_maps_are_the_same_on_any_number_of_threads() {
    let rank = ["biceps-curl", "--rank", "-o", "r.png", "--format", "csv"];
    let map = [
        "bench-press",
        "--param",
        "technique.grip_width",
        "--values",
        "60 cm..80 cm:3",
        "--param",
        "technique.tuck",
        "--values",
        "20 deg,40 deg",
        "-o",
        "map.svg",
    ];
    for question in [&rank[..], &map[..]] {
        let one = call(question, "1");
        assert_eq!((one.status, one.complaint.as_str()), (0, ""));
        assert_eq!(one.out, call(question, "2").out);
    }
    let Answer { out, .. } = call(&map, "2");
    assert!(out.contains("grip_width") && out.contains("in kg"), "{out}");
}

#[test]
fn regress_words_are_values_too() {
    let Answer { status, out, .. } = call(
        &[
            "squat",
            "--param",
            "technique.bar_position",
            "--values",
            "high,low",
        ],
        "2",
    );
    assert_eq!(status, 0);
    assert!(out.contains("Bar position low:\n  At the start"), "{out}");
}

#[test]
fn fault_bad_questions_are_refused_with_the_next_step() {
    let grip = ["bench-press", "--param", "technique.grip_width", "--values"];
    let cases: [(&[&str], &[&str], &str); 8] = [
        (&grip, &["10%,20%"], "write +10% or -10%"),
        (&grip, &["+70 cm"], "write `70 cm` for that value itself"),
        (&grip, &["300 cm,400 cm"], "35 cm to 100 cm"),
        (&grip, &["60 cm..80 in:3"], "its ends are in"),
        (&grip[..3], &[], "do not belong together"),
        (
            &["bench-press"],
            &["--rank", "--by", "90"],
            "outside 0.1 to 50 %",
        ),
        (
            &["bench-press", "--param", "technique.grip", "--values"],
            &["1 m,2 m"],
            "did you mean `grip_width`",
        ),
        (&["bench-pres"], &["--rank"], "bench-press"),
    ];
    for (first, more, words) in cases {
        let question = [first, more, &["-o", "never.png"]].concat();
        let Answer {
            status,
            out,
            complaint,
        } = call(&question, "2");
        assert_eq!((status, out.as_str()), (2, ""), "{question:?}: {complaint}");
        assert!(complaint.contains(words), "{question:?}: {complaint}");
        assert_eq!(
            complaint.matches(words).count(),
            1 + usize::from(words.contains("cm to")),
            "{complaint}"
        );
    }
}

#[test]
fn law_zeros_and_small_angles_are_changed_and_every_value_tells_where_it_comes_from() {
    for movement in ["biceps-curl", "squat", "bench-press", "knee-extension"] {
        let bench = bench(movement);
        let ranks = rank(&bench, &[], 5.0, Compared::Held, &Conditions::default())
            .or_else(|_| rank(&bench, &[], 5.0, Compared::Peak, &Conditions::default()))
            .expect("ranks");
        let model = bench.model(&[]).expect("a model");
        let all = numeric_paths(&model).len();
        assert_eq!(
            ranks.rows.len() + ranks.without_effect.len() + ranks.undone.len(),
            all,
            "{movement}: no value is left out"
        );
        for row in &ranks.rows {
            assert!(row.from.source.is_some(), "{movement}: {}", row.number.path);
            let amount = match row.by {
                RankStep::Percent(percent) => 0.01 * percent * row.number.value.abs(),
                RankStep::Amount(amount) => amount,
            };
            assert!(amount > 0.0, "{movement}: {row:?}");
            if row.number.path.starts_with("technique.") && row.number.unit == "rad" {
                assert!(amount.to_degrees() > 4.999, "{movement}: {row:?}");
            }
        }
    }
}

#[test]
fn law_the_nearest_source_is_told() {
    let bench = bench("biceps-curl");
    let source = |path: &str| {
        let found = bench.provenance(path).expect("sound").source;
        format!("{:?}", found.expect(path))
    };
    for (path, words) in [
        ("muscles.brachialis.max_velocity", "zajac_1989"),
        ("curves.dynamics.drive_rise", "Maffiuletti"),
        ("curves.dynamics.enhancement_half_life", "wilson_1991"),
        ("segments.forearm.length", "length column"),
        ("segments.forearm.mass", "Table 4\""),
        ("build.ankle_height", "drillis_contini_1966"),
        ("lifter.height", "de_leva_1996"),
        ("technique.shoulder_angle", ""),
        ("joints.elbow.high_torque", "Academy"),
    ] {
        assert!(source(path).contains(words), "{path}: {}", source(path));
    }
}

/// A share of nothing is nothing, and is told to be.
#[test]
fn fault_a_share_of_zero_is_told_to_change_nothing() {
    let words = [
        "vary",
        "squat",
        "--param",
        "technique.depth",
        "--values",
        "+10%",
    ];
    let told = crate::calling::in_one_line(&crate::calling::call(&words).done().out);
    assert!(
        told.contains("Nothing changes: every value is the one that is there. A share of 0 is 0"),
        "{told}"
    );
    let words = [
        "vary",
        "squat",
        "--param",
        "technique.depth",
        "--values",
        "10 deg",
    ];
    let told = crate::calling::call(&words).done().out;
    assert!(!told.contains("Nothing changes"), "{told}");
}

/// A change of nothing is the model as it is: it has a line in the table, no reasons and no row of its own in a file.
#[test]
fn regress_a_change_of_nothing_has_no_rows() {
    let asked = |more: &[&str], zero: &str| {
        let values = format!("{zero},+20%");
        let arguments = [
            &[
                "biceps-curl",
                "--param",
                "muscles.biceps_long.moment_arm.elbow",
                "--values",
                &values,
            ],
            more,
        ];
        call(&arguments.concat(), "2").done().out
    };
    for zero in ["0%", "+0%", "-0%", "+0.0%"] {
        for more in [
            &["--why", "--format", "csv"][..],
            &["--why"],
            &["--curves", "--format", "csv"],
            &["--format", "csv"],
        ] {
            let told = asked(more, zero);
            assert!(
                told.contains("+20") && !told.contains("+0%"),
                "{zero} {more:?}: {told}"
            );
            assert!(more != ["--why"] || !told.contains("as it is"), "{told}");
        }
    }
}

/// The arm at the shoulder is looked for where those of other joints stand: the hint leads to its own path, and that works.
#[test]
fn fault_an_arm_at_the_shoulder_is_set_by_its_line() {
    let arguments = |path: &'static str| ["lateral-raise", "--param", path, "--values", "+20%"];
    let refused = call(
        &arguments("muscles.deltoid_middle.moment_arm.shoulder"),
        "2",
    );
    assert_eq!(refused.status, 2, "{}", refused.out);
    assert!(
        refused
            .complaint
            .contains("`muscles.deltoid_middle.shoulder.scale`"),
        "{}",
        refused.complaint
    );
    let taken = call(&arguments("muscles.deltoid_middle.shoulder.scale"), "2");
    assert_eq!(taken.status, 0, "{}", taken.complaint);
}

/// Figures do not hang on the samples: 101 and 1001 of them tell the same, also where another joint takes over between two.
#[test]
fn law_figures_are_those_of_ten_times_the_samples() {
    /// The most that a figure differs, as a share.
    const AGREE: f64 = 5.0e-4;
    /// Below this a sensitivity has no sign that counts, %.
    const FELT: f64 = 0.05;
    let mut rng = ChaCha8Rng::seed_from_u64(7);
    let mut cases = vec![(
        "squat",
        "segments.thigh.length".to_owned(),
        "+5%".to_owned(),
    )];
    for lift in LIFTS {
        let numbers = numeric_paths(&bench(lift).model(&[]).expect("a model"));
        for _ in 0..2 {
            let number = &numbers[rng.random_range(0..numbers.len())];
            let percent: f64 = rng.random_range(2.0..8.0);
            cases.push((lift, number.path.clone(), format!("{percent:+.2}%")));
        }
    }
    let mut met = 0;
    for (lift, path, value) in &cases {
        let of = |samples: usize| {
            let asked = Conditions {
                samples,
                ..Conditions::default()
            };
            let parameter = Parameter::read(path, value).expect("a value");
            family(&bench(lift), &[], &parameter, &asked)
        };
        let (Ok(coarse), Ok(fine)) = (of(101), of(1001)) else {
            continue;
        };
        let case = format!("{lift} {path} {value}");
        for measure in [
            Compared::Peak,
            Compared::Start,
            Compared::End,
            Compared::Held,
        ] {
            let both = [&coarse, &fine].map(|family| {
                [&family.base_figures, &family.variants[0].figures]
                    .map(|figures| figures.value(measure))
            });
            let [coarse, fine] = both;
            for (a, b) in coarse.into_iter().zip(fine) {
                let (Some(a), Some(b)) = (a, b) else {
                    continue;
                };
                assert!(
                    (a - b).abs() <= AGREE * b.abs(),
                    "{case} {measure:?}: {a} {b}"
                );
                met += 1;
            }
        }
        if let (Some(a), Some(b)) = (coarse.sensitivity, fine.sensitivity) {
            let held = |percent: Option<BothWays>| percent.map_or(0.0, BothWays::mean);
            let pairs = [
                (a.peak_percent.mean(), b.peak_percent.mean()),
                (held(a.held_percent), held(b.held_percent)),
            ];
            for (a, b) in pairs {
                assert!(
                    a * b > 0.0 || a.abs().max(b.abs()) < FELT,
                    "{case}: {a} {b} % per %"
                );
            }
        }
    }
    assert!(met > 120, "{met}");
}

/// Where one more joint gives way just at the present value, more strength does nothing and less takes away: both are told.
#[test]
fn law_more_and_less_are_told_apart_where_the_limit_changes_hands() {
    let question = [
        "deadlift",
        "--param",
        "muscles.erector_spinae.peak_force",
        "--values",
        "-1%,+1%",
    ];
    let told = call(&question, "2");
    assert_eq!(told.status, 0, "{}", told.complaint);
    let told = in_one_line(&told.out);
    let json = call(&[&question[..], &["--format", "json"]].concat(), "2").json();
    let start = |curve: &Value| curve["start_capacity_n"].as_f64().expect("a number");
    let now = start(&json["baseline"]);
    let percent = |variant: usize| 100.0 * (start(&json["variants"][variant]) / now - 1.0);
    let (less, more) = (percent(0), percent(1));
    assert!(
        more.abs() < 0.01 && less < -0.5,
        "no kink any more: choose another lift; {less} {more}"
    );
    let says = format!("start 0 % (1 % less: \u{2212}{:.2} %)", -less);
    assert!(told.contains(&says), "`{says}` is not in {told}");
}

/// A curve that all fibres share does not change their speed: what it gives is told.
#[test]
fn law_another_curve_is_told_as_what_it_gives() {
    for (lift, param, speed, factor, state) in [
        (
            "calf-raise",
            "curves.velocity.hill_a",
            "60 deg/s",
            "force-velocity factor",
            "fibre speed",
        ),
        (
            "squat",
            "curves.velocity.voluntary_share",
            "-0.5 m/s",
            "force-velocity factor",
            "fibre speed",
        ),
    ] {
        let question = [
            lift,
            "--param",
            param,
            "--values=-20%",
            "--speed",
            speed,
            "--why",
        ];
        let told = call(&question, "2");
        assert_eq!(told.status, 0, "{}", told.complaint);
        let told = in_one_line(&told.out);
        assert!(told.contains(factor), "{told}");
        assert!(!told.contains(state), "{told}");
    }
}
