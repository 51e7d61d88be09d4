//! A file is judged alike by `check` and by the commands that read it: no curve, ranking or picture comes of what is refused,
//! and what is unlikely is told.

use super::{absurd, folder, plausible};
use crate::calling::{Answer, call_in};
use std::collections::BTreeSet;
use tempfile::TempDir;
use torquill::library::Shelf;

/// Where a file of a shelf stands, and the command that reads it; none where no command reads such files.
fn reader(shelf: Shelf) -> Option<(&'static str, &'static [&'static str])> {
    const SEGMENTS: &[&str] = &["curve", "squat", "--lifter", "of-segments"];
    const MUSCLES: &[&str] = &["curve", "squat", "--lifter", "of-muscles"];
    const CURVES: &[&str] = &["curve", "squat", "--lifter", "of-curves"];
    Some(match shelf {
        Shelf::Lifters => (
            "own/lifters/own.ron",
            &["curve", "squat", "--lifter", "own/lifters/own.ron"],
        ),
        Shelf::Movements => ("own/movements/own.ron", &["curve", "own/movements/own.ron"]),
        Shelf::Setups => (
            "own/setups/own.ron",
            &["curve", "squat", "--setup", "own/setups/own.ron"],
        ),
        Shelf::Gyms => (
            "own/gyms/own.ron",
            &[
                "pick",
                "squat",
                "--gym",
                "own/gyms/own.ron",
                "--samples",
                "5",
            ],
        ),
        Shelf::Bands => (
            "own/bands/own.ron",
            &["curve", "squat", "--load", "20 kg", "--band", "own:1"],
        ),
        Shelf::Chains => (
            "own/chains/own.ron",
            &["curve", "squat", "--load", "20 kg", "--chain", "own:1"],
        ),
        Shelf::Segments => ("own/segments/own.ron", SEGMENTS),
        Shelf::Muscles => ("own/muscles/own.ron", MUSCLES),
        Shelf::Curves => ("own/curves/own.ron", CURVES),
        _ => return None,
    })
}

/// A folder with the file, and lifters that are made of it.
fn placed(shelf: Shelf, place: &str, text: &str) -> TempDir {
    let of = |field: &str| format!("(extends: \"reference-man\", {field}: \"own\")");
    let lifters = [
        (
            Shelf::Segments,
            "own/lifters/of-segments.ron",
            of("segments"),
        ),
        (Shelf::Muscles, "own/lifters/of-muscles.ron", of("muscles")),
        (Shelf::Curves, "own/lifters/of-curves.ron", of("curves")),
    ];
    let beside = lifters.iter().filter(|(of, ..)| *of == shelf);
    let mut files = vec![(place, text)];
    files.extend(beside.map(|(_, place, text)| (*place, text.as_str())));
    folder(&files)
}

/// The messages of a call, without the lines of the file and the next moves.
fn errors(answer: &Answer) -> BTreeSet<&str> {
    let lines = answer.complaint.lines();
    lines.filter(|line| line.starts_with("error: ")).collect()
}

/// Files that `check` refuses by what it tries or reads on for, as no other command does: a body that nobody asked about, and
/// what was meant by a broken text.
const BY_CHECK_ALONE: [&str; 7] = [
    "lift_strength: {\"squat\": 4.9}",
    "optimal_fibre_length: \"9 mm\"",
    "training: \"Advanced\"",
    "pull: [(\"130 cm\", \"8 kg\")]",
    "up: Fixed(\"4 cm\")",
    "shape: Constant(\"9 cm\")",
    "vera-limbs",
];

#[test]
fn fault_what_check_refuses_is_refused_in_the_same_words_by_what_reads_it() {
    let mut unlike = Vec::new();
    let mut judged = 0;
    for (shelf, text, _) in absurd::IMPOSSIBLE.into_iter().chain(plausible::REFUSED) {
        let Some((place, command)) = reader(shelf) else {
            continue;
        };
        if BY_CHECK_ALONE.iter().any(|part| text.contains(part)) {
            continue;
        }
        let folder = placed(shelf, place, text);
        let call = |words: &[&str]| call_in(folder.path(), &[words, &["--models", "own"]].concat());
        let (checked, read) = (call(&["check", place]), call(command));
        judged += 1;
        let is_alike = [&checked, &read].map(|answer| (answer.status, answer.out.as_str()))
            == [(2, ""); 2]
            && !errors(&checked).is_empty()
            && errors(&checked).is_subset(&errors(&read));
        if !is_alike {
            unlike.push(format!("{text}\n{checked:?}\n{read:?}"));
        }
    }
    assert!(judged >= 35, "{judged} files");
    assert!(unlike.is_empty(), "{}", unlike.join("\n\n"));
}

/// In the lift that it is about, a muscle is refused whoever reads it.
#[test]
fn fault_a_muscle_that_tears_in_a_lift_is_refused_in_that_lift() {
    for (muscle, said) in [
        ("optimal_fibre_length: \"9 mm\"", "makes fibres of"),
        (
            "peak_force: \"4000 N\", optimal_fibre_length: \"20 cm\", moment_arm: {elbow: (shape: Constant(\"9 cm\"))}",
            "makes the elbow reach",
        ),
    ] {
        let text = format!("(extends: \"reference\", muscles: {{\"brachialis\": ({muscle})}})");
        let folder = placed(Shelf::Muscles, "own/muscles/own.ron", &text);
        for words in [
            &["check", "own/muscles/own.ron"][..],
            &["curve", "triceps-extension", "--lifter", "of-muscles"],
            &["max", "triceps-extension", "--lifter", "of-muscles"],
        ] {
            let answer = call_in(folder.path(), &[words, &["--models", "own"]].concat());
            assert_eq!((answer.status, answer.out.as_str()), (2, ""), "{answer:?}");
            assert!(answer.complaint.contains(said), "{words:?}: {answer:?}");
        }
    }
}

/// What is only unlikely about gear is told by every command that hangs it or looks for it.
#[test]
fn fault_unlikely_gear_is_told_by_what_reads_it() {
    let mut untold = Vec::new();
    let mut judged = 0;
    for (shelf, text, expected) in absurd::UNLIKELY.into_iter().chain(plausible::TOLD) {
        if !matches!(shelf, Shelf::Bands | Shelf::Chains | Shelf::Gyms) {
            continue;
        }
        let (place, command) = reader(shelf).expect("gear is read");
        let folder = placed(shelf, place, text);
        let read = call_in(folder.path(), &[command, &["--models", "own"]].concat());
        judged += 1;
        // There the file is called `mine`.
        let expected = &expected.replace("as `mine`", "as `own`");
        let warned = read.complaint.contains("warning: ") && read.complaint.contains(expected);
        if read.status == 2 || !warned {
            untold.push(format!("{text}\n{read:?}\nexpected {expected}"));
        }
    }
    assert!(judged >= 10, "{judged} files");
    assert!(untold.is_empty(), "{}", untold.join("\n\n"));
}
