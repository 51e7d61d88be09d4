//! What no body, gear or lift can be is refused; what is only unlikely is told and can be used; `check`, the reader and
//! the commands judge alike. All faults of a file are told at once.

use super::{check, folder, words, wrong};
use crate::calling::{call, call_in};
use torquill::library::Shelf;

/// Files that must be refused, with a word of the message and the line that it stands at.
pub const IMPOSSIBLE: [(Shelf, &str, &str); 32] = [
    (
        Shelf::Lifters,
        "(extends: \"reference-man\",\nlift_strength: {\"squatt\": 1.1})",
        "squatt",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\",\nlift_strength: {\"squat\": 4.9})",
        "2: `lift_strength.squat`",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\", scatter: (of: [\"strength_scale\"], covariance: [[0.1]],\nversions: [[3], [-3], [0]], source: Assumed(\"x\")))",
        "makes strength_scale 20.09; 0.1 to 5 is accepted",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\", scatter: (of: [\"strength_scale\"],\ncovariance: [[-0.1]], source: Assumed(\"x\")))",
        "is no covariance",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\", scatter: (\nof: [\"height\"], covariance: [[0.1]], source: Assumed(\"x\")))",
        "is no strength",
    ),
    (
        Shelf::Setups,
        "(name: \"s\", items: [\nWeight(Plates(each: \"20 kg\", pairs: 4000000000))])",
        "pairs of plates 4000000000 is outside what can be",
    ),
    (
        Shelf::Setups,
        "(name: \"s\", items: [\nCable((stack: \"40 kg\", lead: Direction(\"3000 deg\")))])",
        "direction of the cable",
    ),
    (
        Shelf::Movements,
        "(extends: \"squat\",\nprotocol: (start: Lowered(\"9000 s\")))",
        "2: `protocol.start`",
    ),
    (
        Shelf::Segments,
        "(extends: \"de-leva-men\",\nrows: {hand: (length: \"862 mm\")})",
        "2: `rows.hand.length` is 86.2 cm; at that height it is about 8",
    ),
    (
        Shelf::Segments,
        "(extends: \"de-leva-men\",\nbreadths: (biacromial: 0.0))",
        "2: `breadths.biacromial` is 0 of standing height",
    ),
    (
        Shelf::Segments,
        "(extends: \"de-leva-men\",\nbreadths: (biacromial: 0.0001))",
        "2: `breadths.biacromial` is 0 cm; at that height",
    ),
    (
        Shelf::Segments,
        "(extends: \"de-leva-men\",\nbreadths: (hip_to_lumbar: 0.4))",
        "2: `breadths.hip_to_lumbar`",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\",\njoints: {ankle: (high: \"150 deg\")})",
        "2: `joints.ankle.high` is 150 deg",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"soleus\": (\nreference: [(at: {ankle: \"150 deg\"}, fibre_length: 1.0, source: Assumed(\"x\"))])})",
        "2: `muscles.soleus.reference.0.at.ankle` is 150 deg",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (\nmoment_arm: {elbow: (shape: Constant(\"50 cm\"))})})",
        "2: `muscles.brachialis.moment_arm.elbow.shape` makes an arm of 50 cm",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (\noptimal_fibre_length: \"9 mm\")})",
        "2: `muscles.brachialis.optimal_fibre_length` makes fibres of",
    ),
    (
        Shelf::Curves,
        "(extends: \"default\",\nactive: Bells([(b1: 1.0, b2: 1.0, b3: -0.3, b4: 0.0)]))",
        "2: `active.0.b3` gives the bell a width of -0.3",
    ),
    (
        Shelf::Curves,
        "(extends: \"default\",\ndynamics: (enhancement: 1.7))",
        "2: `dynamics.enhancement` is 1.7",
    ),
    (
        Shelf::Curves,
        "(extends: \"default\",\npassive: (strain_at_peak: -0.6))",
        "2: `passive.strain_at_peak`",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\",\nstrength_scale: 0.0)",
        "2: `strength_scale` is 0",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\",\nstrength: {\"deltoids\": -1.0})",
        "2: `strength.deltoids` is -1",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\",\nheight: \"230 cm\", body_mass: \"31 kg\")",
        "2: `body_mass` is 5.9 kg for each square metre",
    ),
    (
        Shelf::Movements,
        "(extends: \"row\",\npath: (shoulder_height: OverHips(-0.5)))",
        "2: `path.shoulder_height` is -0.5",
    ),
    (
        Shelf::Movements,
        "(extends: \"row\", technique: {\"torso_angle\": (least: Angle(\"-60 deg\"),\nvalue: Angle(\"-30 deg\"))})",
        "2: `technique.torso_angle` puts the shoulders below the hips",
    ),
    (
        Shelf::Movements,
        "(extends: \"biceps-curl\",\npath: (to: \"230 deg\"))",
        "2: `path.to` is 230 deg",
    ),
    (
        Shelf::Movements,
        "(extends: \"calf-raise\",\npath: (to: \"150 deg\"))",
        "2: `path.to` is 150 deg",
    ),
    (
        Shelf::Bands,
        "(extends: \"loop-29mm\", pull: (rubber: (\nc1: \"50000 MPa\")))",
        "1: pull at the largest stretch",
    ),
    (
        Shelf::Bands,
        "(extends: \"loop-29mm\",\npull: Readings([(\"130 cm\", \"90000 kg\"), (\"160 cm\", \"95000 kg\")]))",
        "2: the reading",
    ),
    (
        Shelf::Bands,
        "(extends: \"loop-29mm\",\npull: Readings([(\"130 cm\", \"20 kg\"), (\"160 cm\", \"10 kg\")]))",
        "2: the band pulls 196.1 N",
    ),
    (
        Shelf::Bands,
        "(extends: \"loop-29mm\", pull: (\nwidth: \"-3 mm\"))",
        "2: width",
    ),
    (
        Shelf::Chains,
        "(extends: \"chain-8mm\",\nlinks: PerMetre(\"900 kg/m\"))",
        "2: mass per metre",
    ),
    (
        Shelf::Gyms,
        "(extends: \"garage\",\nbars: [(name: \"bar\", mass: \"2000 kg\")])",
        "2: `bars.0.mass`",
    ),
];

#[test]
fn fault_what_cannot_be_is_refused_at_its_line() {
    for (shelf, text, expected) in IMPOSSIBLE {
        let told = wrong(shelf, text);
        let is_told = told
            .iter()
            .any(|line| line.contains(expected) || line.starts_with(expected));
        assert!(is_told, "{text}\n{told:#?}\nexpected {expected}");
    }
}

/// Files that can be used, with a word of what is unlikely about them.
pub const UNLIKELY: [(Shelf, &str, &str); 9] = [
    (
        Shelf::Segments,
        "(extends: \"de-leva-men\", rows: {hand: (length: \"130 mm\")})",
        "`rows.hand.length` is 13 cm",
    ),
    (
        Shelf::Segments,
        "(extends: \"de-leva-men\", breadths: (biacromial: 0.1))",
        "`breadths.biacromial` is 17.4 cm",
    ),
    (
        Shelf::Muscles,
        "(extends: \"reference\", muscles: {\"brachialis\": (moment_arm: {elbow: (shape: Constant(\"14 cm\"))}, optimal_fibre_length: \"60 cm\")})",
        "makes an arm of 14 cm",
    ),
    (
        Shelf::Curves,
        "(extends: \"default\", dynamics: (enhancement: 0.7))",
        "`dynamics.enhancement` is 0.7; 0 to 0.5 is usual",
    ),
    (
        Shelf::Lifters,
        "(title: \"Plain\", invented: true, sex: Man, height: \"174 cm\", body_mass: \"73 kg\", training: Novice, segments: \"de-leva-men\", muscles: \"reference\", curves: \"default\", strength_scale: 1.0, source: Invented(\"x\"))",
        "`strength` names no group",
    ),
    (
        Shelf::Lifters,
        "(extends: \"reference-man\", strength_scale: 0.12)",
        "`strength_scale` is 0.12",
    ),
    (
        Shelf::Bands,
        "(extends: \"loop-102mm\", pull: (width: \"450 mm\"))",
        "`pull` is ",
    ),
    (
        Shelf::Bands,
        "(name: \"odd\", rest_length: \"100 cm\", pull: Readings([(\"110 cm\", \"100 N\"), (\"130 cm\", \"95 N\"), (\"200 cm\", \"400 N\")]))",
        "goes badly with the law of rubber",
    ),
    (
        Shelf::Chains,
        "(extends: \"chain-8mm\", links: PerMetre(\"20 kg/m\"))",
        "`links` is 20 kg/m",
    ),
];

#[test]
fn fault_what_is_unlikely_is_told_and_can_be_used() {
    for (shelf, text, expected) in UNLIKELY {
        let checked = check(shelf, text);
        let checked =
            checked.unwrap_or_else(|error| panic!("{text}: {}", crate::calling::said(&error)));
        let told: Vec<String> = checked.doubts.iter().map(words).collect();
        assert!(
            told.iter().any(|line| line.contains(expected)),
            "{text}\n{told:#?}"
        );
    }
}

#[test]
fn law_nothing_about_a_shipped_file_is_unlikely() {
    let library = torquill::library::Library::built_in();
    for shelf in Shelf::ALL {
        for name in library.names(shelf) {
            let (file, text) = library.text(shelf, &name).expect("it is shipped");
            let checked = library
                .check_text(Some(shelf), &file, &text)
                .expect("it is sound");
            let told: Vec<String> = checked.doubts.iter().map(words).collect();
            assert!(told.is_empty(), "{name}: {told:#?}");
        }
    }
    for movement in library.movements() {
        for lifter in library.names(Shelf::Lifters) {
            let model =
                torquill::library::assemble(&library, &lifter, &movement, &[]).expect("sound");
            let told: Vec<String> = model.doubts.iter().map(words).collect();
            assert!(told.is_empty(), "{lifter}, {movement}: {told:#?}");
        }
    }
}

/// What `check` refuses or doubts in a lifter's file, a command that reads it and `--set` refuse or doubt as well.
#[test]
fn law_check_reader_and_setting_judge_alike() {
    let cases = [
        ("segments.hand.length", "862 mm", 2, "is 86.2 cm"),
        ("segments.hand.length", "13 cm", 0, "is 13 cm"),
        (
            "build.biacromial_breadth",
            "1 mm",
            2,
            "`build.biacromial_breadth`",
        ),
        (
            "muscles.brachialis.optimal_fibre_length",
            "-90%",
            2,
            "makes fibres of",
        ),
        (
            "muscles.brachialis.moment_arm.elbow",
            "+1500%",
            2,
            "makes an arm of",
        ),
        (
            "joints.elbow.high",
            "190 deg",
            2,
            "`joints.elbow.high` is 190 deg",
        ),
        ("curves.dynamics.enhancement", "1.7", 2, "is 1.7"),
        ("lifter.strength_scale", "0.12", 0, "0.25 to 3 is usual"),
        (
            "segments.trunk.length",
            "5 cm",
            2,
            "`segments.trunk.length`",
        ),
    ];
    for (path, value, status, expected) in cases {
        let set = format!("{path}={value}");
        let answer = call(&["curve", "biceps-curl", "--samples", "5", "--set", &set]);
        assert_eq!(answer.status, status, "{set}: {}", answer.complaint);
        assert!(
            answer.complaint.contains(expected),
            "{set}: {}",
            answer.complaint
        );
        assert_eq!(answer.out.is_empty(), status != 0, "{set}");
    }
    let own = "(extends: \"reference-man\", strength_scale: 0.12)";
    let folder = folder(&[("own/lifters/weak.ron", own)]);
    let checked = call_in(folder.path(), &["check", "own/lifters/weak.ron"]).done();
    let read = call_in(
        folder.path(),
        &["curve", "biceps-curl", "--lifter", "own/lifters/weak.ron"],
    )
    .done();
    for answer in [checked, read] {
        assert!(
            answer.complaint.starts_with("warning: "),
            "{}",
            answer.complaint
        );
        assert!(
            answer.complaint.contains("0.25 to 3 is usual"),
            "{}",
            answer.complaint
        );
    }
}

#[test]
fn fault_all_faults_of_a_file_are_told_at_once() {
    let text = r#"(
    title: "Several",
    invented: maybe,
    sex: Men,
    hight: "175 cm",
    height: "175",
    body_mass: 80,
    training: Novice,
    segments: "de-leva-man",
    muscles: "reference",
    curves: "default",
    strength: {"elbow_flexors": 90.0},
    strength_sources: {"*": FromMemory("nobody_2020", "x")},
    source: Invented("x"),
)"#;
    let told = wrong(Shelf::Lifters, text);
    for expected in [
        "3: ",
        "4: `Men` is no",
        "5: `hight` is no field",
        "6: `175` has no unit",
        "7: `body_mass`: expected a mass",
        "9: `segments` is `de-leva-man`",
        "12: `strength.elbow_flexors` is 90",
        "13: `nobody_2020` is no publication",
        "lacks the field `strength_scale`",
    ] {
        assert!(
            told.iter().any(|line| line.contains(expected)),
            "{expected}\n{told:#?}"
        );
    }
    assert_eq!(told.len(), 9, "{told:#?}");
}

#[test]
fn fault_a_movement_without_its_handling_is_shown_a_file_to_copy() {
    let shipped = std::fs::read_to_string(super::repository("models/movements/biceps-curl.ron"))
        .expect("shipped");
    let (before, rest) = shipped
        .split_once("    handling: (")
        .expect("it has the field");
    let behind = rest.split_once("\n    ),\n").expect("it ends").1;
    let told = wrong(Shelf::Movements, &format!("{before}{behind}"));
    assert_eq!(told.len(), 1);
    assert!(
        told[0].contains("lacks the field `handling`")
            && told[0].contains("torquill show movement biceps-curl"),
        "{}",
        told[0]
    );
}

#[test]
fn fault_a_share_without_its_unit_is_refused_where_a_length_could_be_meant() {
    for (set, expected) in [
        (
            "technique.grip_width=1",
            "`1` is no length and no number of shoulder breadths",
        ),
        ("movement.path.shoulder_height=52", "`52` has no unit"),
    ] {
        let answer = call(&["curve", "bench-press", "--samples", "5", "--set", set]);
        assert_eq!(answer.status, 2, "{set}");
        assert!(
            answer.complaint.contains(expected),
            "{set}: {}",
            answer.complaint
        );
    }
    let values = [
        "vary",
        "bench-press",
        "--param",
        "technique.grip_width",
        "--values",
    ];
    call(
        &[
            &values[..],
            &[
                "1.5 shoulder breadths..2 shoulder breadths:2",
                "--samples",
                "11",
            ],
        ]
        .concat(),
    )
    .done();
    assert_eq!(
        call(&[&values[..], &["1.5..2:2", "--samples", "11"]].concat()).status,
        2
    );
    let written = |value: &str| {
        let set = format!("technique.grip_width={value}");
        crate::calling::json(&["curve", "bench-press", "--samples", "5", "--set", &set])["samples"]
            .clone()
    };
    assert_eq!(written("1.9 shoulder breadths"), written("+0%"));
}
