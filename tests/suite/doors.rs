//! What comes in at the door and cannot be: refused before anything is computed, with a message that says what to do.

use crate::calling::{Answer, call, call_in, told};
use std::path::Path;

/// The call was refused as bad input, in these words, and nothing was printed or left in the folder.
#[track_caller]
fn refused(answer: &Answer, words: &[&str]) {
    told(answer, &[], words);
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
fn fault_no_output_takes_the_place_of_what_is_read() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    std::fs::create_dir(here.join("dd")).expect("a folder");
    let log = "date,lift,load,repetitions\n2026-03-02,squat,100 kg,5\n2026-03-09,squat,101 kg,5\n";
    let readings = "length,pull\n104 cm,0 N\n130 cm,80 N\n160 cm,150 N\n";
    let team = "name,sex,mass (kg),height (cm),training_months,squat (kg)\nMia,woman,64,168,14,\n";
    let files = [
        ("log.csv", log),
        ("r.csv", readings),
        ("t.csv", team),
        ("dd/log.csv", team),
        (
            "t.html",
            "task: Do\nstart: lift=squat\ngoal: max_effort <= 0.8\nhint: No\n",
        ),
    ];
    for (name, text) in files {
        std::fs::write(here.join(name), text).expect("a file");
    }
    for line in [
        "progress --log log.csv --data ./log.csv",
        "plan squat --log log.csv --data log.csv",
        "curve bench-press --band mine:r.csv --data r.csv",
        "plan squat --team t.csv -o d --data t.csv",
        "plan squat --team dd/log.csv -o dd",
        "explore -o t.html --tasks t.html",
    ] {
        let words: Vec<&str> = line.split(' ').chain(["--force"]).collect();
        let said = "is a file that this call reads, so it is not replaced";
        refused(&call_in(here, &words), &[said]);
    }
    for (name, text) in files {
        let now = std::fs::read_to_string(here.join(name)).expect("it is there");
        assert_eq!(now, text);
    }
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
    for (months, told) in [
        ("inf", "a number is due"),
        ("-1", "0 to 1200 months"),
        ("1e9", "0 to 1200 months"),
        ("NaN", "a number is due"),
    ] {
        let months = format!("--training-months={months}");
        refused(
            &call(&["plan", "bench-press", "--one-rm", "80 kg", &months]),
            &["--training-months", told],
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
        &["41 curves of 10001 samples", "--samples 2926"],
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
    let press = |one_rm: &str| call(&["plan", "bench-press", "--one-rm", one_rm]);
    for one_rm in ["1400 kg", "1 kg"] {
        refused(
            &press(one_rm),
            &[
                &format!("a 1RM of {one_rm} in the bench-press is"),
                "times what people of that sex, size and training show",
                "--training-months",
            ],
        );
    }
    let unlikely = press("340 kg").done();
    assert!(
        crate::calling::in_one_line(&unlikely.out)
            .contains("times what people of that sex, size and training show"),
        "{unlikely:?}"
    );
    let folder = tempfile::tempdir().expect("a folder");
    for (load, who) in [("900 kg", "trained men"), ("1 g", "untrained women")] {
        let log = format!(
            "date,lift,load,repetitions\n2026-03-02,squat,{load},5\n2026-03-09,squat,{load},5\n"
        );
        std::fs::write(folder.path().join("log.csv"), log).expect("a file");
        refused(
            &call_in(folder.path(), &["progress", "--log", "log.csv"]),
            &[&format!("times what {who} show")],
        );
    }
}

#[test]
fn fault_a_segment_is_held_against_the_mass_of_the_body() {
    for set in ["segments.trunk.mass=0.5 kg", "segments.head.mass=40 kg"] {
        refused(
            &call(&["max", "squat", "--set", set]),
            &["in a body of that mass it is about", "is accepted"],
        );
    }
    let odd = call(&["max", "squat", "--set", "segments.trunk.mass=60 kg"]).done();
    assert!(odd.complaint.contains("times that is usual"), "{odd:?}");
}

#[test]
fn fault_nobody_moves_a_load_at_any_speed() {
    for speed in ["--speed=5 m/s", "--speed=-50 m/s"] {
        refused(
            &call(&["curve", "bench-press", speed]),
            &["nobody moves a load at"],
        );
    }
    let told = call(&["curve", "bench-press", "--speed", "0.3 mm/s"]).complaint;
    assert!(
        told.contains("units of speed") && !told.contains("did you mean"),
        "{told}"
    );
}

#[test]
fn fault_implements_are_bounded_at_every_door() {
    for (item, said) in [
        ("collars 900 kg", "mass of both collars 1800 kg"),
        ("lowering 1900 kg", "mass hung on for the lowering 1900 kg"),
        ("counterweight 900 kg", "mass on the cable 900 kg"),
    ] {
        let call = call(&["curve", "bench-press", "--load", "40 kg", "--item", item]);
        refused(&call, &[said, "is outside what can be"]);
    }
    let band = "mine:1@floor: rest=104 cm, 130 cm=800 kg, 160 cm=1500 kg";
    let call = call(&["curve", "bench-press", "--load", "40 kg", "--band", band]);
    refused(&call, &["cannot be"]);
}

#[test]
fn fault_wishes_that_nothing_heeds_or_nobody_keeps_are_told() {
    let press = ["plan", "bench-press", "--one-rm", "100 kg"];
    for (option, value, said) in [
        ("--total-reps", "12", "only clusters heeds it"),
        ("--velocity-loss", "150%", "--velocity-loss 150 %"),
        ("--velocity-loss", "0", "--velocity-loss 0 %"),
        ("--rir", "100", "--rir 100"),
        ("--max-per-week", "0", "leaves nothing to plan"),
    ] {
        refused(&call(&[&press[..], &[option, value]].concat()), &[said]);
    }
    let young = ["--age", "20", "--training-months", "600"];
    refused(
        &call(&[&press[..], &young].concat()),
        &["nobody of 20 years has trained for 600 months"],
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
