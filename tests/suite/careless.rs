//! What careless hands type: options that change nothing, numbers below nothing, shares in any form, files of other kinds.

use super::calling::{call, call_in, refused, told};

const PRESS: [&str; 4] = ["plan", "bench-press", "--one-rm", "100 kg"];

#[test]
fn fault_an_option_that_changes_nothing_is_refused() {
    let cases: [(&[&str], &str); 10] = [
        (
            &["plan", "squat", "--one-rm", "100 kg", "--athlete", "Bob"],
            "--athlete changes nothing without --log",
        ),
        (
            &[
                "plan",
                "squat",
                "--one-rm",
                "100 kg",
                "--dates",
                "day-first",
            ],
            "--dates changes nothing without --log",
        ),
        (
            &["pick", "squat", "--gym", "garage", "--top", "5"],
            "--top changes nothing without --all, --format or --data",
        ),
        (
            &[
                "vary",
                "squat",
                "--param",
                "lifter.height",
                "--values",
                "1.7 m,1.8 m",
                "--by",
                "7",
            ],
            "--by changes nothing without --rank",
        ),
        (
            &["curve", "squat", "--people", "3", "--detail"],
            "--detail changes nothing without --format or --data",
        ),
        (
            &["rep", "squat", "--size", "page"],
            "--size changes nothing without",
        ),
        (
            &["max", "squat", "--theme", "dark"],
            "--theme changes nothing without --output",
        ),
        (
            &["plan", "squat", "--one-rm", "100 kg", "--paper", "a4"],
            "--paper changes nothing without --sheet",
        ),
        (
            &["max", "squat", "--people", "3", "--velocities"],
            "--people",
        ),
        (
            &["max", "squat", "--people", "3", "--eccentric", "3 s"],
            "--people",
        ),
    ];
    for (arguments, words) in cases {
        refused(arguments, &[words]);
    }
    for more in [["--to-load", "100 kg"], ["--step", "1 kg"], ["-o", "a.svg"]] {
        refused(
            &[&["max", "squat", "--people", "3"][..], &more].concat(),
            &["--people"],
        );
    }
}

#[test]
fn fault_a_number_below_nothing_is_told_as_one() {
    for (more, words) in [
        (["--age", "-3"], "-3"),
        (["--training-months", "-1"], "-1"),
        (["--rest", "-20 s"], "-20 s"),
        (["--sets", "-2"], "a whole number is due"),
    ] {
        refused(&[&PRESS[..], &more].concat(), &[words]);
    }
    refused(&["plan", "squat", "--one-rm", "-20 kg"], &["`-20 kg`"]);
    refused(&["rep", "squat", "--lowering", "-1 s"], &["`-1 s`"]);
    refused(
        &["curve", "squat", "--samples", "-1"],
        &["a whole number is due"],
    );
    refused(
        &["max", "squat", "--people", "-4"],
        &["a whole number is due"],
    );
}

#[test]
fn law_a_share_is_read_in_either_form() {
    let pairs: [[&[&str]; 2]; 3] = [
        [
            &["curve", "squat", "--load", "60 kg", "--region-share", "90%"],
            &["curve", "squat", "--load", "60 kg", "--region-share", "0.9"],
        ],
        [
            &["max", "biceps-curl", "--from", "50%"],
            &["max", "biceps-curl", "--from", "0.5"],
        ],
        [
            &[
                "vary",
                "biceps-curl",
                "--rank",
                "--by",
                "4%",
                "--samples",
                "11",
            ],
            &[
                "vary",
                "biceps-curl",
                "--rank",
                "--by",
                "4",
                "--samples",
                "11",
            ],
        ],
    ];
    for [one, other] in pairs {
        assert_eq!(call(one).done().out, call(other).done().out, "{one:?}");
    }
    refused(
        &["curve", "squat", "--region-share", "much"],
        &["write 80% or 0.8"],
    );
    refused(
        &["curve", "squat", "--region-share", "95"],
        &["did you mean 95%?"],
    );
    refused(
        &["curve", "squat", "--region-share", "1e-300"],
        &["a region share of 0 %"],
    );
}

#[test]
fn fault_a_file_that_would_hold_something_else_is_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let there = |arguments: &[&str]| call_in(folder.path(), arguments);
    let json = there(&["curve", "biceps-curl", "--format", "json"])
        .done()
        .out;
    std::fs::write(folder.path().join("a.json"), json).expect("a file");
    let explain = ["explain", "biceps-curl", "--at", "50%"];
    let cases: [(&[&str], &[&str], &str); 4] = [
        (
            &["again", "a.json"],
            &["-o", "b.csv"],
            "`b.csv` would hold JSON",
        ),
        (&explain, &["-o", "x.docx"], ".txt or .md or .html"),
        (
            &explain,
            &["--format", "html", "-o", "x.md"],
            "`x.md` would hold a page",
        ),
        (
            &["figure", "biceps-curl"],
            &["-o", ".svg"],
            "has no name before its ending",
        ),
    ];
    for (arguments, more, words) in cases {
        let all = [arguments, more].concat();
        told(&there(&all), &all, &[words]);
    }
    there(&["again", "a.json", "-o", "b.json"]).done();
    let left = std::fs::read_dir(folder.path()).expect("a folder").count();
    assert_eq!(left, 2, "nothing else was written");
}

#[test]
fn fault_what_stands_twice_or_against_itself_in_a_text_is_told() {
    for (load, words) in [
        (
            ["--item", "cable 40 kg, from floor, from rack-high"],
            "`from` stands twice",
        ),
        (
            ["--band", "loop-29mm:1,single,doubled"],
            "`single` and `doubled`",
        ),
        (["--chain", "chain-10mm:1,left,right"], "`left` and `right`"),
        (
            [
                "--band",
                "mine: rest=104 cm, rest=90 cm, 130 cm=8 kg, 160 cm=15 kg",
            ],
            "two lengths at rest",
        ),
    ] {
        refused(&[&["curve", "bench-press"][..], &load].concat(), &[words]);
    }
}

#[test]
fn fault_speeds_that_nobody_moves_are_refused_with_what_is_taken() {
    refused(
        &["rep", "bench-press", "--lowering", "0.001 s"],
        &["4 m/s", "is the shortest for this way"],
    );
    let answer = call(&["rep", "bench-press", "--lowering", "0.001 s"]);
    let shortest = answer
        .complaint
        .split('"')
        .nth(1)
        .expect("a time")
        .to_owned();
    // Whether that lowering can be kept to is another question.
    let tried = call(&["rep", "bench-press", "--lowering", &shortest]);
    assert_ne!(tried.status, 2, "{}", tried.complaint);
    let fast = call(&["curve", "squat", "--speed", "3 m/s"]);
    assert!(fast.complaint.contains("3 m/s"), "{}", fast.complaint);
}

#[test]
fn law_a_maximum_that_is_lifted_is_told_whatever_is_lowered() {
    let plain = call(&["max", "bench-press"]).done().out;
    let fast = call(&["max", "bench-press", "--eccentric", "0.3 s"])
        .done()
        .out;
    assert_eq!(fast.lines().next(), plain.lines().next());
    assert!(fast.contains("--eccentric more time"), "{fast}");
    let lost = call(&["max", "bench-press", "--item", "spotter 5000 N"])
        .done()
        .out;
    assert!(lost.contains("gets away in the lowering"), "{lost}");
    assert!(!plain.contains("gets away"), "{plain}");
}

#[test]
fn fault_a_lifter_too_weak_for_the_limbs_is_told_so() {
    let weak = [
        "curve",
        "biceps-curl",
        "--set",
        "lifter.strength_scale=0.1",
        "--load",
        "8 kg",
    ];
    let answer = call(&weak);
    assert_eq!(answer.status, 1);
    for words in ["cannot hold the limbs alone", "at the elbow", "N·m"] {
        assert!(answer.complaint.contains(words), "{}", answer.complaint);
    }
    assert!(!answer.complaint.contains("--load"), "{}", answer.complaint);
}

#[test]
fn fault_a_broken_file_that_extends_is_told_in_itself() {
    let folder = tempfile::tempdir().expect("a folder");
    let cases: [(&str, &str, &[&str], u32); 3] = [
        (
            "me.ron",
            "(extends: \"reference-man\", title: \"My lifter,\nheight: \"180 cm\",\n)",
            &["curve", "squat", "--lifter", "me.ron"],
            2,
        ),
        (
            "cut.ron",
            "(extends: \"reference-man\",\nheight: \"1.9 m\",",
            &["curve", "squat", "--lifter", "cut.ron"],
            2,
        ),
        (
            "gym.ron",
            "(extends: \"garage\",\ntitle: \"x,\n)",
            &["pick", "squat", "--gym", "gym.ron"],
            2,
        ),
    ];
    for (name, text, call, line) in cases {
        std::fs::write(folder.path().join(name), text).expect("a file");
        let answer = call_in(folder.path(), call);
        assert_eq!(answer.status, 2, "{name}: {}", answer.complaint);
        let place = format!("{name}:{line}");
        assert!(
            answer.complaint.contains(&place) && !answer.complaint.contains("models/"),
            "{name}: {}",
            answer.complaint
        );
        assert!(
            !answer.complaint.contains("no field"),
            "{}",
            answer.complaint
        );
    }
}

#[test]
fn regress_a_band_by_own_readings_is_called_so() {
    let band = "loop-14mm:1@floor: rest=104 cm, 130 cm=50 kg, 160 cm=90 kg";
    let own = call(&["curve", "bench-press", "--load", "40 kg", "--band", band])
        .done()
        .out;
    assert!(
        own.contains("loop-14mm (own readings)") && !own.contains("14 mm band"),
        "{own}"
    );
}

#[test]
fn fault_a_load_has_no_part_in_drawn_muscles() {
    let muscles = ["figure", "biceps-curl", "--draw", "muscles"];
    let loaded = [&muscles[..], &["--load", "10 kg", "-o", "muscles.png"]].concat();
    refused(&loaded, &["a load has no part", "--draw free-body"]);
}
