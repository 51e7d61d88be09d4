//! What comes in at the door and cannot be: refused before anything is computed, with a message that says what to do.

use crate::calling::{Answer, call, call_in};
use std::path::Path;

/// The call was refused as bad input, in these words, and nothing was printed or left in the folder.
#[track_caller]
fn refused(answer: &Answer, words: &[&str]) {
    assert_eq!(answer.status, 2, "{answer:?}");
    assert_eq!(answer.out, "", "{answer:?}");
    for words in words {
        assert!(answer.complaint.contains(words), "{words}: {answer:?}");
    }
}

/// Names of what a folder holds.
fn inside(folder: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).expect("a folder");
    let names = entries.map(|entry| entry.expect("an entry").file_name());
    names
        .map(|name| name.to_string_lossy().into_owned())
        .collect()
}

#[test]
fn fault_two_outputs_never_go_to_one_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let vary: Vec<&str> =
        "vary squat --param segments.thigh.length --values +5% --why-figure a.png -o ./a.png"
            .split(' ')
            .collect();
    let rep = [
        "rep",
        "bench-press",
        "--load",
        "40 kg",
        "-o",
        "a.svg",
        "--animation",
        "../here/a.svg",
    ];
    let here = folder.path().join("here");
    std::fs::create_dir(&here).expect("a folder");
    refused(
        &call_in(&here, &vary),
        &[
            "--why-figure and --output both write `./a.png`",
            "a file of its own",
        ],
    );
    refused(
        &call_in(&here, &rep),
        &["--output and --animation both write"],
    );
    assert!(inside(&here).is_empty());
}

#[test]
fn fault_one_text_is_one_quantity() {
    for load in ["80 kg -5 kg", "80 kg +5 kg", "80 kg 5 kg", "5 g 80 kg"] {
        refused(
            &call(&["curve", "bench-press", "--load", load]),
            &[&format!("`{load}` is more than one mass")],
        );
    }
    call(&["curve", "bench-press", "--set", "lifter.height=5 ft 11 in"]).done();
}

#[test]
fn fault_loads_are_bounded_together_as_each_alone() {
    let many = [
        "curve",
        "bench-press",
        "--load",
        "1500 kg",
        "--load",
        "600 kg",
    ];
    refused(
        &call(&many),
        &[
            "`1500 kg + 600 kg` is no load that anybody lifts",
            "2000 kg",
        ],
    );
}

#[test]
fn fault_training_lasts_no_lifetime() {
    for months in ["inf", "-1", "1e9", "NaN"] {
        let months = format!("--training-months={months}");
        refused(
            &call(&["plan", "bench-press", "--one-rm", "80 kg", &months]),
            &["--training-months", "0 to 1200 months"],
        );
    }
}

#[test]
fn fault_work_that_does_not_fit_in_memory_is_refused_before_it_begins() {
    refused(
        &call(&["curve", "bench-press", "--samples", "100001"]),
        &["10001"],
    );
    let vary = [
        "vary",
        "bench-press",
        "--param",
        "technique.grip_width",
        "--values",
        "50 cm..90 cm:41",
        "--samples",
        "10001",
    ];
    refused(
        &call(&vary),
        &["41 curves of 10001 samples", "--samples 3658"],
    );
    let load = ["--versus", "--load", "40 kg"];
    let setups = [
        vec!["figure", "bench-press", "-o", "a.svg", "--load", "40 kg"],
        load.repeat(6),
    ]
    .concat();
    refused(&call(&setups), &["7 setups", "at most 6"]);
}

#[test]
fn fault_a_word_is_not_changed_in_percent() {
    let title = ["curve", "bench-press", "--set", "movement.title=+10%"];
    refused(&call(&title), &["is the word `Bench press`, not a number"]);
    let vary = [
        "vary",
        "bench-press",
        "--param",
        "movement.title",
        "--values",
        "-10%,+10%",
    ];
    refused(&call(&vary), &["is the word `Bench press`, not a number"]);
}

#[test]
fn fault_a_text_that_a_terminal_would_obey_is_refused_and_not_printed() {
    let folder = tempfile::tempdir().expect("a folder");
    for (sign, code) in [
        ("\\u{1b}[31m", "U+001B"),
        ("\u{1b}]0;x", "U+001B"),
        ("\\x07", "U+0007"),
        ("\\u{fffe}", "U+FFFE"),
        ("\u{202e}", "U+202E"),
    ] {
        let text =
            format!("(extends: \"reference-man\", title: \"one {sign} two\", invented: true)");
        std::fs::write(folder.path().join("one.ron"), text).expect("a file");
        for command in [
            vec!["check", "one.ron"],
            vec!["curve", "squat", "--lifter", "one.ron"],
        ] {
            let answer = call_in(folder.path(), &command);
            refused(&answer, &["`title` holds the character", code]);
            assert!(
                !answer
                    .complaint
                    .contains(['\u{1b}', '\u{7}', '\u{202e}', '\u{fffe}']),
                "{answer:?}"
            );
        }
    }
}

#[test]
fn fault_a_sign_that_cannot_be_shown_comes_in_by_no_word_of_a_command() {
    for (word, code) in [
        ("movement.title=a \u{1b}[31m b", "U+001B"),
        ("movement.title=a\u{202e}b", "U+202E"),
        ("movement.title=a\u{fffe}b", "U+FFFE"),
        ("technique.\u{7}=1 cm", "U+0007"),
    ] {
        let answer = call(&["curve", "squat", "--set", word]);
        refused(
            &answer,
            &["word 4 of the command holds the character", code],
        );
        assert!(
            !answer
                .complaint
                .contains(['\u{1b}', '\u{7}', '\u{202e}', '\u{fffe}']),
            "{answer:?}"
        );
    }
    refused(&call(&["cur\u{1b}[2Jve"]), &["word 1 of the command"]);
    let file = "own\u{9b}.ron";
    refused(&call(&["check", file]), &["U+009B"]);
}

#[test]
fn fault_long_words_and_texts_are_refused_and_never_repeated() {
    let (long, longer) = ("A".repeat(3000), "A".repeat(10_000));
    let title = format!("movement.title={long}");
    refused(
        &call(&["figure", "squat", "-o", "a.svg", "--set", &title]),
        &["its value is 3000 letters long; at most 200 are shown"],
    );
    let title = format!("movement.title={longer}");
    refused(
        &call(&["figure", "squat", "-o", "a.svg", "--set", &title]),
        &["word 6 of the command is 10015 letters long; at most 5000 are read"],
    );
    let named = call(&["curve", "squat", "--lifter", &long]);
    refused(&named, &["no lifter is called `AAA"]);
    assert!(named.complaint.len() < 1000, "{}", named.complaint.len());
    let folder = tempfile::tempdir().expect("a folder");
    let text = format!("(extends: \"squat\", title: \"{longer}\")");
    std::fs::write(folder.path().join("one.ron"), text).expect("a file");
    let file = call_in(folder.path(), &["check", "one.ron"]);
    refused(
        &file,
        &["`title` is 10000 letters long; at most 200 are shown"],
    );
    assert!(file.complaint.len() < 1000, "{}", file.complaint.len());
    let log = format!("date,lift,load,repetitions\n{}", longer.repeat(100));
    std::fs::write(folder.path().join("one.csv"), log).expect("a file");
    let log = call_in(folder.path(), &["progress", "--log", "one.csv"]);
    refused(&log, &["one.csv"]);
    assert!(log.complaint.len() < 3000, "{}", log.complaint.len());
}

#[test]
fn fault_ranges_that_run_backward_and_options_that_nothing_heeds_are_told() {
    let pick = ["pick", "bench-press", "--gym", "garage"];
    for (option, value, words) in [
        (
            "--load-at",
            "end=120 kg..80 kg",
            "`end=120 kg..80 kg` runs backward",
        ),
        (
            "--profile",
            "0=60%, 1=80%",
            "--profile is for --goal profile alone",
        ),
        (
            "--limit-at",
            "0.2",
            "--limit-at is for --goal most-load alone",
        ),
    ] {
        refused(&call(&[&pick[..], &[option, value]].concat()), &[words]);
    }
    for points in ["1=60%, 0=80%", "0=60%, 0=80%, 1=70%"] {
        let profile = ["--goal", "profile", "--profile", points];
        refused(&call(&[&pick[..], &profile].concat()), &["runs backward"]);
    }
}

#[test]
fn fault_a_maximum_that_nobody_has_is_not_planned_with() {
    refused(
        &call(&["plan", "squat", "--one-rm", "90000 kg"]),
        &[
            "--one-rm 90000 kg is no load that anybody lifts",
            "up to 1500 kg",
        ],
    );
}

#[cfg(unix)]
#[test]
fn fault_whatever_is_there_and_cannot_be_read_is_an_error_never_the_built_in_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let lifters = folder.path().join("own/lifters");
    std::fs::create_dir_all(&lifters).expect("folders");
    let file = lifters.join("reference-man.ron");
    let asked = ["curve", "bench-press", "--models", "own"];
    std::os::unix::fs::symlink("nowhere.ron", &file).expect("a link");
    refused(
        &call_in(folder.path(), &asked),
        &["cannot read `own/lifters/reference-man.ron`"],
    );
    std::fs::remove_file(&file).expect("it was there");
    std::fs::create_dir(&file).expect("a folder");
    refused(
        &call_in(folder.path(), &asked),
        &["reference-man.ron`: it is a folder"],
    );
    std::fs::remove_dir(&file).expect("it was there");
    std::fs::remove_dir(&lifters).expect("it was there");
    std::os::unix::fs::symlink("nowhere", &lifters).expect("a link");
    refused(&call_in(folder.path(), &asked), &["own"]);
}
