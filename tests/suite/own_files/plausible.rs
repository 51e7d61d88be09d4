//! What a file says against itself or against any body is told: techniques that nothing reads, joints with other limbs,
//! arms against their group, torques beyond any that was measured, tables of the other sex, gear without its pair.

use super::{check, folder, library, words, wrong};
use crate::calling::call_in;
use torquill::library::Shelf;

/// Files that can be used, with a word of the warning.
pub const TOLD: [(Shelf, &str, &str); 28] = [
    (
        Shelf::Movements,
        "(extends: \"biceps-curl\", technique: {\"shoulder_angle\": (value: Angle(\"-35 deg\"), source: Assumed(\"x\"))})",
        "`path` lets the load sink from its start on, over 24 % of the range",
    ),
    (
        Shelf::Movements,
        "(extends: \"bench-press\", technique: {\"grip\": (value: Length(\"81 cm\"), meaning: \"x\", source: Assumed(\"x\"))})",
        "`technique.grip` is read by nothing: neither path nor carrier names it; did you mean `grip_width`?",
    ),
    (
        Shelf::Movements,
        "(extends: \"bench-press\", axis: \"elbow flexion\")",
        "`axis` names an angle",
    ),
    (
        Shelf::Movements,
        "(extends: \"triceps-extension\", path: (from: \"10 deg\", to: \"125 deg\", source: Assumed(\"x\")))",
        "`path` lets the load end ",
    ),
    (
        Shelf::Movements,
        "(extends: \"triceps-extension\", path: (joint_height: \"2.9 m\", source: Assumed(\"x\")))",
        "`path.joint_height` is 2.9 m; 0.03 to 2.3 m is usual",
    ),
    (
        Shelf::Movements,
        "(extends: \"triceps-extension\", handling: (called: [\"squat\"]))",
        "`handling.called.0` is a name of the squat, which moves in another way",
    ),
    (
        Shelf::Movements,
        "(extends: \"biceps-curl\", path: (to: \"120 deg\"))",
        "`path.to` is changed without a source; say where",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (group: \"elbow_flexers\")})",
        "`muscles.brachialis.group` is a new strength group: no strength factor of a built-in lifter holds for it; did you mean `elbow_flexors`?",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (group: \"shoulder_flexors\")})",
        "known groups: cuff, deltoids,",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (moment_arm: {elbow: (shape: Constant(\"-2 cm\"), source: Assumed(\"x\"))})})",
        "`muscles.brachialis.moment_arm.elbow` pulls the angle of the elbow the other way than its group, which pulls it up",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (group: \"plantarflexors\")})",
        "`muscles.brachialis.group` is a group of muscles about: ankle",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (along: thigh)})",
        "`muscles.brachialis.along` is at none of the joints",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (peak_force: \"7000 N\", source: Assumed(\"x\"))})",
        "`muscles.brachialis.peak_force` makes the elbow reach ",
    ),
    (
        Shelf::Segments,
        "(extends: \"de-leva-women\", rows: {thigh: (length: \"47 cm\"), shank: (length: \"55 cm\"), trunk: (length: \"62 cm\")}, length_source: Assumed(\"x\"))",
        "`rows` adds up to ",
    ),
    (
        Shelf::Segments,
        "(extends: \"de-leva-women\", rows: {thigh: (length: \"37 cm\")})",
        "`rows.thigh.length` is changed without a source",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-woman\", segments: \"de-leva-men\", source: Assumed(\"x\"))",
        "`segments` is a table of the other sex",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-woman\", lengths: {thigh: \"50 cm\"}, source: Assumed(\"x\"))",
        "`lengths.thigh` is 50 cm; at that height it is about ",
    ),
    (
        Shelf::Bands,
        "(extends: \"loop-29mm\", name: \"mine\", pull: (width: \"4.5 mm\", thickness: \"22 mm\"))",
        "`pull.thickness` is more than `width`",
    ),
    (
        Shelf::Bands,
        "(extends: \"loop-29mm\", name: \"other\")",
        "`name` is not that of the file: the library knows it as `mine`",
    ),
    (
        Shelf::Chains,
        "(extends: \"chain-8mm\", name: \"other\")",
        "`name` is not that of the file",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\", belt: false, plates: [(mass: \"20 kg\", count: 3)])",
        "`plates.0.count` is 3, and a bar is loaded in pairs, so one of them is never used",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\", belt: false, plates: [(mass: \"20 kg\", count: 1)])",
        "`plates.0.count` is 1, and a bar is loaded in pairs, so it is never used",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\", bands: [(name: \"loop-14mm\", count: 1)])",
        "`bands.0.count` is 1",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\", collars: \"5 kg\")",
        "`collars` is 5 kg; 0 to 2.5 kg is usual",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\", safety_arms: (lowest: \"40 cm\", highest: \"3 m\", step: \"40 cm\"))",
        "`safety_arms.highest` is 3 m; 0.1 to 1.8 m is usual",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\", chains: [(name: \"chain-8mm\", count: 2, leaders: [\"3 m\"])])",
        "`chains.0.leaders.0` is 3 m; 0 to 2 m is usual",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\", anchors: {\"beam\": (height: \"5.9 m\")})",
        "`anchors.beam.height` is 5.9 m; 0 to 4 m is usual",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\", bars: [(name: \"bar\", mass: \"1.5 kg\")])",
        "`bars.0.mass` is 1.5 kg; 2 to 40 kg is usual",
    ),
];

#[test]
fn fault_what_contradicts_itself_is_told_and_can_be_used() {
    let mut lacking = Vec::new();
    for (shelf, text, expected) in TOLD {
        match check(shelf, text) {
            Ok(checked) => {
                let told: Vec<String> = checked.doubts.iter().map(words).collect();
                if !told.iter().any(|line| line.contains(expected)) {
                    lacking.push(format!("{text}\n{told:#?}\nexpected {expected}"));
                }
            }
            Err(error) => lacking.push(format!("{text}: {}", crate::calling::said(&error))),
        }
    }
    assert!(lacking.is_empty(), "{}", lacking.join("\n\n"));
}

/// Files that are refused, with line and word of the message.
pub const REFUSED: [(Shelf, &str, &str); 17] = [
    (
        Shelf::Movements,
        "(extends: \"biceps-curl\",\npath: Sweep(limb: Shank))",
        "2: `path.limb` is not what the elbow carries; write Forearm",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-woman\",\ntraining: \"Advanced\")",
        "2: `training`: \"Advanced\" begins with none of the words that can stand here; write it without quotes: Advanced",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-woman\",\nstrength_scale: \"110 %\")",
        "2: `strength_scale`: expected a number, found \"110 %\"; write the share as a number: 1.1",
    ),
    (
        Shelf::Bands,
        "(extends: \"loop-29mm\", name: \"mine\",\npull: [(\"130 cm\", \"8 kg\")])",
        "2: `pull`: this begins with none of the words that can stand here; begin with one of: Dimensions, Readings",
    ),
    (
        Shelf::Bands,
        "(name: \"mine\", rest_length: \"104 cm\",\npull: Readings([(\"130 cm\", \"8,5 kg\"), (\"160 cm\", \"15 kg\")]))",
        "2: `8,5 kg` is no pull: decimals are written with a point, \"8.5 kg\"",
    ),
    (
        Shelf::Movements,
        "(extends: \"squat\", technique: {\"knee_travel\": (\nvalue: Number(0.5))})",
        "2: `technique.knee_travel` must be a length such as \"60 cm\" or left free; it is a plain number; write Length(\"5 cm\") or Free",
    ),
    (
        Shelf::Movements,
        "(extends: \"squat\", technique: {\"depth\": (least: Angle(\"0 deg\"), most: Angle(\"150 deg\"),\nvalue: Angle(\"110 deg\"))})",
        "2: `technique.depth` is 110 deg; it must lie between -75 and 40 deg",
    ),
    (
        Shelf::Movements,
        "(extends: \"squat\", technique: {\"bar_position\": (\nvalue: Choice(now: \"top\", of: [\"top\", \"low\"]))})",
        "2: `technique.bar_position` offers `top`, which its path does not understand",
    ),
    (
        Shelf::Movements,
        "(extends: \"squat\", technique: {\n\"depth\": None})",
        "needs the technique parameter `depth`, an angle such as \"30 deg\"; add to technique: \"depth\": (value: Angle(\"30 deg\")",
    ),
    (
        Shelf::Movements,
        "(extends: \"biceps-curl\",\npath: (limb: Shank))",
        "2: `path.limb` is not what the elbow carries; write Forearm",
    ),
    (
        Shelf::Movements,
        "(extends: \"biceps-curl\",\npath: (joint: hip, from: \"5 deg\", to: \"90 deg\", limb: Shank))",
        "2: `path.joint` is the hip, and no single limb hangs from it",
    ),
    (
        Shelf::Movements,
        "(extends: \"bench-press\",\nmeasure: Torque)",
        "2: `measure` is `Torque`, and several joints move; write Force",
    ),
    (
        Shelf::Movements,
        "(extends: \"overhead-press\", technique: {\"grip_width\": (value: OfShoulders(1.3)), \"elbows_forward\": (value: Angle(\"60 deg\"))},\npath: (start: (forward: Fixed(\"10 cm\"), up: Fixed(\"4 cm\"))))",
        "2: `path` cannot be done by reference-man: no muscle activation keeps the pose at range ",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (\npeak_force: \"4000 N\", optimal_fibre_length: \"20 cm\", moment_arm: {elbow: (shape: Constant(\"9 cm\"))})})",
        "2: `muscles.brachialis.peak_force` makes the elbow reach ",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\",\nsegments: \"nowhere/nothing.ron\")",
        "2: `segments`: cannot read `nowhere/nothing.ron`",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\",\nsegments: \"vera-limbs\")",
        "a file of your own, DIR/segments/vera-limbs.ron, is found with --models DIR",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\",\nbands: [(name: \"loop-14mm\", count: 4.5)])",
        "2: `bands.0.count`: expected a whole number, found the number 4.5",
    ),
];

#[test]
fn fault_what_cannot_be_done_or_read_is_refused_at_its_line() {
    let mut lacking = Vec::new();
    for (shelf, text, expected) in REFUSED {
        let told = match check(shelf, text) {
            Ok(_) => vec!["is taken for sound".to_owned()],
            Err(_) => wrong(shelf, text),
        };
        if !told.iter().any(|line| line.contains(expected)) {
            lacking.push(format!("{text}\n{told:#?}\nexpected {expected}"));
        }
    }
    assert!(lacking.is_empty(), "{}", lacking.join("\n\n"));
}

/// A stance written from scratch that lacks fields in three of its records.
const UNFINISHED: &str = r#"(
    title: "Box squat", axis: "height of the bar", away_from: "off the box",
    carrier: Bar, sides: Both, measure: Force,
    handling: (called: ["box squat"], catch: SafetyArms, spotter: Nobody, overload: No(OnHips), rounding_back: false, general_equations: Fair, source: CommonPractice("x")),
    technique: {
        "depth": (value: Angle("5 deg"), meaning: "x", source: Assumed("x")),
        "knee_travel": (value: Number(1.0), meaning: "x", source: Assumed("x")),
    },
    path: Stance((
        bar: OnBack(
            high: (along: 1.06, behind: 0.10),
            low: (along: 0.95),
            ankle_per_knee: 0.2,
            feet: (between: "55 cm"),
        ),
        lumbar: "20 deg",
        bar_over: 0.5,
    )),
    limits: "x",
    checks: "x",
)"#;

#[test]
fn fault_all_that_several_records_lack_is_told_in_one_round() {
    let told = wrong(Shelf::Movements, UNFINISHED).join("\n");
    for expected in [
        "lacks the fields `ankle_course`, `end_ankle`, `end_knee`, `end_lumbar`, `source`",
        "`path.bar.feet` lacks the fields `turned_out`, `source`",
        "`path.bar.low` lacks the field `behind`",
        "`technique.knee_travel` must be a length",
        "needs the technique parameter `bar_position`, a word",
    ] {
        assert!(told.contains(expected), "{expected}\n{told}");
    }
    for type_name in ["StanceRecord", "LiftOff", "Feet`", "BackPlace"] {
        assert!(!told.contains(type_name), "{type_name}\n{told}");
    }
}

#[test]
fn fault_an_unknown_joint_has_no_bounds() {
    let text = "(extends: \"biceps-curl\", path: (joint: wrist, from: \"-50 deg\", to: \"60 deg\", limb: Hand, source: Assumed(\"x\")))";
    let told = wrong(Shelf::Movements, text);
    assert!(
        told.iter().any(|line| line.contains("`wrist` is no joint")),
        "{told:#?}"
    );
    assert!(
        told.iter().all(|line| !line.contains("must lie")),
        "{told:#?}"
    );
}

#[test]
fn fault_a_reading_is_told_at_its_own_line() {
    let text = "(\nname: \"mine\",\nrest_length: \"100 cm\",\npull: Readings([\n(\"130 cm\", \"20 kg\"),\n(\"160 cm\", \"10 kg\"),\n]),\n)";
    let told = wrong(Shelf::Bands, text);
    assert!(told[0].starts_with("6: the band pulls"), "{told:#?}");
    let text = "(\nname: \"mine\",\nrest_length: \"100 cm\",\npull: Readings([\n(\"95 cm\", \"2 kg\"),\n(\"160 cm\", \"10 kg\"),\n]),\n)";
    let told = wrong(Shelf::Bands, text);
    assert!(told[0].starts_with("5: "), "{told:#?}");
}

/// Tables of one's own beside a lifter, by path and by name.
#[test]
fn law_paths_of_tables_are_seen_from_the_lifters_folder() {
    let table = "(extends: \"de-leva-women\", rows: {thigh: (length: \"38 cm\")}, length_source: Assumed(\"x\"))";
    let by_path =
        "(extends: \"reference-woman\", segments: \"../segments/own.ron\", source: Assumed(\"x\"))";
    let by_name = "(extends: \"reference-woman\", segments: \"own\", source: Assumed(\"x\"))";
    let files = [
        ("mine/segments/own.ron", table),
        ("mine/lifters/path.ron", by_path),
        ("mine/lifters/name.ron", by_name),
    ];
    let folder = folder(&files);
    let check = |arguments: &[&str]| call_in(folder.path(), &[&["check"][..], arguments].concat());
    check(&["mine/lifters/path.ron"]).done();
    check(&["mine/lifters/name.ron", "--models", "mine"]).done();
    let refused = check(&["mine/lifters/name.ron"]);
    assert_eq!(refused.status, 2);
    assert!(
        refused
            .complaint
            .contains("DIR/segments/own.ron, is found with --models DIR"),
        "{}",
        refused.complaint
    );
    let curve = ["curve", "biceps-curl", "--samples", "5", "--format", "json"];
    let own = [&curve[..], &["--lifter", "mine/lifters/path.ron"]].concat();
    call_in(folder.path(), &own).done();
}

#[test]
fn law_own_lengths_are_not_scaled_and_the_rest_is() {
    let own = "(extends: \"reference-woman\", height: \"150 cm\", body_mass: \"55 kg\", lengths: {thigh: \"33 cm\"}, source: Assumed(\"x\"))";
    let folder = folder(&[("lifters/own.ron", own)]);
    let library = library(&folder);
    let (lifter, plain) = (
        library.lifter("own").expect("sound"),
        library.lifter("reference-woman").expect("sound"),
    );
    for (name, segment) in &lifter.segments {
        let ratio = segment.length.as_m() / plain.segments[name].length.as_m();
        if name.name() == "thigh" {
            assert!((segment.length.as_cm() - 33.0).abs() < 1.0e-9);
        } else {
            let heights = lifter.height.as_m() / plain.height.as_m();
            assert!((ratio - heights).abs() < 1.0e-12, "{}", name.name());
        }
    }
}

/// A lift of a file bears its title everywhere, whatever its path; a log is no model file, and one of the folder is found by
/// its name.
#[test]
fn regress_titles_logs_and_folders_of_ones_own() {
    let lift =
        "(extends: \"bench-press\", title: \"Press of mine\", handling: (called: [\"my press\"]))";
    let log = "date,lift,load,repetitions\n2026-03-02,my press,50 kg,5\n2026-03-09,my press,52.5 kg,5\n2026-03-16,my press,55 kg,5\n";
    let folder = folder(&[
        ("own/movements/my-press.ron", lift),
        ("own/logs/me.csv", log),
    ]);
    let answer = call_in(
        folder.path(),
        &[
            "plan",
            "own/movements/my-press.ron",
            "--method",
            "straight",
            "--one-rm",
            "80 kg",
        ],
    );
    assert!(answer.out.contains("Press of mine"), "{answer:?}");
    assert!(!answer.out.contains("own/movements"), "{answer:?}");
    let answer = call_in(
        folder.path(),
        &["progress", "--log", "me", "--models", "own"],
    );
    assert_eq!(answer.status, 0, "{answer:?}");
    let answer = call_in(folder.path(), &["check", "own/logs/me.csv"]);
    assert_eq!(answer.status, 2);
    assert!(
        answer.complaint.contains("is a table, no model file"),
        "{answer:?}"
    );
    let answer = call_in(folder.path(), &["check", "own", "--models", "own"]).done();
    assert!(
        answer.out.contains("my-press.ron: a sound movement"),
        "{answer:?}"
    );
    let found = call_in(
        folder.path(),
        &["parameters", "biceps-curl", "--find", "biceps moment arm"],
    );
    assert_eq!(found.status, 0, "{found:?}");
}
