//! What was once answered calmly and cannot be, what ends at once when it is asked to, and what is looked at before the work.

use crate::calling::{call_in, refused};

#[test]
fn fault_a_fibre_of_millimetres_curls_no_ton() {
    for command in [
        "curve", "max", "rep", "plan", "explain", "figure", "pick", "vary",
    ] {
        let more: &[&str] = match command {
            "explain" => &["--at", "middle"],
            "figure" => &["-o", "a.svg"],
            "pick" => &["--gym", "garage"],
            "vary" => &["--rank"],
            _ => &[],
        };
        let set = "muscles.brachialis.optimal_fibre_length=-90%";
        refused(
            &[&[command, "biceps-curl", "--set", set], more].concat(),
            &["makes fibres of", "optimal lengths in the brachialis"],
        );
    }
}

#[test]
fn fault_a_slip_of_the_unit_of_an_arm_is_no_finding() {
    let path = "muscles.brachialis.moment_arm.elbow";
    let vary = ["vary", "biceps-curl", "--param", path];
    for values in ["+900%,+1500%", "-5%,+900%"] {
        refused(
            &[&vary[..], &["--values", values, "--why"]].concat(),
            &["moment_arm.elbow", "makes an arm of"],
        );
    }
    let set = format!("{path}=+900%");
    for command in ["curve", "max"] {
        refused(
            &[command, "biceps-curl", "--set", &set],
            &["makes an arm of"],
        );
    }
}

#[test]
fn fault_more_samples_than_are_read_are_refused_by_all_that_take_them() {
    for (command, more) in [
        ("curve", &[][..]),
        ("figure", &["-o", "a.svg"][..]),
        ("pick", &["--gym", "garage"][..]),
        ("vary", &["--rank"][..]),
    ] {
        refused(
            &[&[command, "bench-press", "--samples", "100000"], more].concat(),
            &["5 to 10001"],
        );
    }
}

/// Neither the lift nor the lifter is there, and what is wrong with the output is told: it was looked at before them.
#[test]
fn fault_outputs_are_looked_at_before_anything_is_computed() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("is.svg"), "theirs").expect("a file");
    let commands: [&[&str]; 7] = [
        &["figure", "nothing"],
        &["curve", "nothing"],
        &["max", "nothing"],
        &["rep", "nothing"],
        &["plan", "nothing"],
        &["pick", "nothing", "--gym", "nowhere"],
        &["vary", "nothing", "--rank"],
    ];
    for command in commands {
        for (target, said) in [
            ("nowhere/a.svg", "nowhere"),
            ("a.txt", "a.txt"),
            ("is.svg", "is.svg"),
        ] {
            let option = if command[0] == "curve" {
                "--data"
            } else {
                "-o"
            };
            let words = [command, &[option, target]].concat();
            let answer = call_in(folder.path(), &words);
            assert_eq!(
                (answer.status, answer.out.as_str()),
                (2, ""),
                "{words:?}: {}",
                answer.complaint
            );
            assert!(
                answer.complaint.contains(said) && !answer.complaint.contains("nothing"),
                "{words:?}: {}",
                answer.complaint
            );
        }
    }
    let held = std::fs::read_dir(folder.path()).expect("a folder").count();
    assert_eq!(held, 1);
}

#[test]
fn fault_a_list_of_none_and_a_name_that_fills_a_page_are_refused() {
    let pick = ["pick", "squat", "--gym", "garage", "--all", "--top", "0"];
    refused(&pick, &["--top 0 lists nothing"]);
    let name = "x".repeat(201);
    let person = "--sex man --height 180cm --mass 80kg --lift squat=100kg";
    let words: Vec<&str> = person.split(' ').collect();
    refused(
        &[&["fit", "--name", &name][..], &words].concat(),
        &["the name is 201 letters long; at most 200 are shown"],
    );
}

#[test]
fn fault_no_lift_or_person_of_a_log_sends_signs_to_the_terminal() {
    let folder = tempfile::tempdir().expect("a folder");
    for sign in ["\u{1b}[31m", "\u{1b}]0;x\u{7}", "\u{202e}", "\u{9b}2J"] {
        for (head, row) in [
            (
                "date,lift,load,repetitions",
                format!("2026-03-02,sq{sign}uat,100 kg,5"),
            ),
            (
                "date,lift,load,repetitions,athlete",
                format!("2026-03-02,squat,100 kg,5,A{sign}b"),
            ),
        ] {
            let second = row.replace("03-02", "03-09");
            let log = format!("{head}\n{row}\n{second}\n");
            std::fs::write(folder.path().join("log.csv"), log).expect("a file");
            for words in [
                &["progress", "--log", "log.csv"][..],
                &["plan", "squat", "--log", "log.csv"],
            ] {
                let answer = call_in(folder.path(), words);
                let said = answer.out.clone() + &answer.complaint;
                let obeyed = ['\u{1b}', '\u{7}', '\u{202e}', '\u{9b}'];
                assert!(!said.is_empty() && !said.contains(obeyed), "{answer:?}");
            }
        }
    }
}

#[test]
fn fault_what_two_limits_allow_together_is_more_than_memory_or_time_hold() {
    let samples = ["--samples", "10001"];
    let detail = ["curve", "squat", "--detail", "--format", "csv"];
    refused(
        &[&detail[..], &samples].concat(),
        &["10001 samples", "gigabyte", "up to --samples 4001"],
    );
    let people = ["curve", "squat", "--people", "100000"];
    refused(
        &[&people[..], &samples].concat(),
        &["100000 people with 10001 samples", "up to --samples 200"],
    );
}
