//! What would be answered calmly though it cannot be: told, or refused, with the next move.

use crate::calling::{call, call_in, in_one_line, json, refused, told};
use std::time::{SystemTime, UNIX_EPOCH};
use torquill::progress::day::Day;

/// A person to fit.
const PERSON: [&str; 9] = [
    "fit", "--name", "a", "--sex", "man", "--mass", "80 kg", "--height", "180 cm",
];

#[test]
fn fault_one_measurement_counts_once() {
    for second in ["squat=100 kg", "squat=100.0 kg", "squat = 100000 g"] {
        let twice = ["--lift", "squat=100 kg", "--lift", second];
        refused(
            &[&PERSON[..], &twice].concat(),
            &[&format!("`{second}` is told twice"), "tell it once"],
        );
    }
}

#[test]
fn fault_a_chain_takes_no_anchor() {
    let press = ["curve", "bench-press", "--load", "40 kg", "--chain"];
    refused(
        &[&press[..], &["chain-10mm:1@rack-high"]].concat(),
        &["a chain takes no anchor, and `rack-high` is one", "@20 cm"],
    );
    call(&[&press[..], &["chain-10mm:1@20 cm"]].concat()).done();
}

#[test]
fn fault_a_trace_of_one_row_is_no_repetition() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("one.csv"), "time,position\n0,0\n").expect("a file");
    let arguments = [&PERSON[..], &["--trace", "squat=80 kg @ one.csv"]].concat();
    told(
        &call_in(folder.path(), &arguments),
        &arguments,
        &["one.csv has 1 row with a time and a position"],
    );
    let one = [&arguments[..], &["--columns", "time,time"]].concat();
    told(
        &call_in(folder.path(), &one),
        &one,
        &["`time,time` does not name two columns"],
    );
}

#[test]
fn fault_no_strength_gives_a_maximum_of_a_gram() {
    let answer = call(&["max", "bench-press", "--to-load", "1 g"]);
    assert_eq!((answer.status, answer.out.as_str()), (1, ""));
    assert!(
        answer.complaint.contains("no strength of this lifter"),
        "{}",
        answer.complaint
    );
}

#[test]
fn fault_the_live_page_reads_no_files() {
    let folder = tempfile::tempdir().expect("a folder");
    let show = ["show", "lifter", "club-lifter", "-o", "mine.ron"];
    call_in(folder.path(), &show).done();
    for named in [
        ["--lifter", "mine.ron"],
        ["--lifter", "./mine.ron"],
        ["--movement", "squat.ron"],
    ] {
        let arguments = [&["explore", "-o", "page.html"][..], &named].concat();
        told(
            &call_in(folder.path(), &arguments),
            &arguments,
            &["the page reads no files", "name a built-in one"],
        );
    }
    assert!(!folder.path().join("page.html").exists());
}

#[test]
fn fault_a_setup_without_items_is_unsound() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("empty.ron");
    std::fs::write(&file, "(name: \"nothing\", items: [])\n").expect("a file");
    for arguments in [
        &["check", "empty.ron"][..],
        &["curve", "squat", "--setup", "empty.ron"],
    ] {
        told(
            &call_in(folder.path(), arguments),
            arguments,
            &["the setup has no items", "empty.ron:1:", "items: [Weight("],
        );
    }
}

#[test]
fn fault_a_log_of_days_to_come_is_no_log() {
    let now = SystemTime::now().duration_since(UNIX_EPOCH);
    let days = now.expect("a clock after 1970").as_secs() / 86_400;
    let first = Day::from_date(1970, 1, 1).expect("a day");
    let today = first
        .after(u32::try_from(days).expect("days"))
        .expect("today");
    // Without a clock that may be right there is nothing to judge by.
    if today.date().0 < 2026 {
        return;
    }
    let folder = tempfile::tempdir().expect("a folder");
    let log = |first: Day| {
        let rows = (0..6_u32).map(|week| {
            let day = first.after(7 * week).expect("a day");
            format!("{day},squat,{} kg,5,2\n", 100 + week)
        });
        let rows: String = rows.collect();
        std::fs::write(
            folder.path().join("log.csv"),
            format!("date,lift,load,repetitions,rir\n{rows}"),
        )
        .expect("a file");
    };
    let read = [
        &["progress", "--log", "log.csv"][..],
        &["plan", "squat", "--log", "log.csv"],
        &[&PERSON[..], &["--log", "log.csv"]].concat(),
    ];
    let ahead = today.after(3 * 365).expect("a day");
    log(ahead);
    for arguments in read {
        told(
            &call_in(folder.path(), arguments),
            arguments,
            &[
                &format!("line 2: the set is of {ahead}, more than a year after today, {today}"),
                "correct the year",
            ],
        );
    }
    // Whoever says when the plan begins means those years.
    let start = ahead.after(40).expect("a day").to_string();
    let plan = ["plan", "squat", "--log", "log.csv", "--start", &start];
    call_in(folder.path(), &plan).done();
    // What was done up to today is read.
    log(Day::from_date(2025, 1, 6).expect("a day"));
    call_in(folder.path(), &["progress", "--log", "log.csv"]).done();
}

#[test]
fn law_a_nothing_has_no_sign() {
    let curve = ["curve", "bench-press", "--load", "-0 kg", "--samples", "5"];
    let lowering = ["rep", "squat", "--load", "60%"];
    for command in [&curve[..], &lowering] {
        for format in ["csv", "json"] {
            let answer = call(&[command, &["--format", format]].concat()).done();
            let cells = answer.out.split([',', '\n', ' ']);
            let signed: Vec<&str> = cells.filter(|cell| ["-0.0", "-0"].contains(cell)).collect();
            assert!(signed.is_empty(), "{command:?} {format}: {signed:?}");
        }
    }
}

#[test]
fn fault_numbers_changed_in_a_file_are_told_by_again() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    let curve = ["curve", "bench-press", "--load", "40 kg", "--samples", "5"];
    let csv = call(&[&curve[..], &["--format", "csv", "--provenance"]].concat()).done();
    let told = json(&curve);
    let value = &told["samples"][0]["capacity_n"];
    let capacity = value.as_f64().expect("a number").to_string();
    let other = "1234.5";
    let json = call(&[&curve[..], &["--format", "json"]].concat()).done();
    for (name, text) in [("a.csv", &csv.out), ("a.json", &json.out)] {
        let write = |text: &str| std::fs::write(here.join(name), text).expect("a file");
        write(text);
        let same = call_in(here, &["again", name]).done();
        assert_eq!((same.complaint.as_str(), &same.out), ("", text), "{name}");
        write(&text.replace('\n', "\r\n"));
        let same = call_in(here, &["again", name]).done();
        assert_eq!(same.complaint, "", "{name}");
        assert!(text.contains(&capacity), "{name}: {text}");
        write(&text.replace(&capacity, other));
        let changed = call_in(here, &["again", name]).done();
        assert_eq!(&changed.out, text);
        for word in ["does not say what its command prints now", other, &capacity] {
            assert!(
                changed.complaint.contains(word),
                "{name}: {}",
                changed.complaint
            );
        }
        let rows: Vec<&str> = text.lines().collect();
        if name == "a.csv" {
            write(&rows[..rows.len() - 1].join("\n"));
            let cut = call_in(here, &["again", name]).done();
            assert!(
                cut.complaint.contains("in row 5 of its table"),
                "{}",
                cut.complaint
            );
        }
    }
}

#[test]
fn fault_what_is_hung_or_loaded_has_a_name_and_is_there() {
    let folder = tempfile::tempdir().expect("a folder");
    for (option, written) in [
        ("--plates", "0 x 5 kg"),
        ("--bands", "loop-29mm x 0"),
        ("--bars", " = 20 kg"),
        ("--anchors", "= 10 cm"),
    ] {
        let arguments = ["gym", "-o", "g.ron", option, written];
        let answer = call_in(folder.path(), &arguments);
        assert_eq!(answer.status, 2, "{arguments:?}: {}", answer.complaint);
        assert!(!folder.path().join("g.ron").exists(), "{arguments:?}");
    }
    let unnamed = "(title: \"x\", bars: [(name: \"\", mass: \"20 kg\")], anchors: {\" \": (height: \"10 cm\")}, \
                   source: Assumed(\"x\"))";
    std::fs::write(folder.path().join("g.ron"), unnamed).expect("a file");
    let check = ["check", "g.ron"];
    let answer = call_in(folder.path(), &check);
    told(
        &answer,
        &check,
        &[
            "`bars.0.name` has no name",
            "`anchors` has no name",
            "rack foot",
        ],
    );
}

#[test]
fn fault_help_that_outweighs_the_load_leaves_nothing_to_lower() {
    let helped = [
        "rep",
        "squat",
        "--load",
        "0 kg",
        "--item",
        "counterweight 20 kg",
    ];
    let answer = call(&helped);
    assert_eq!(answer.status, 1, "{}", answer.complaint);
    for word in ["help outweighs the load", "rises by itself"] {
        assert!(answer.out.contains(word), "{}", answer.out);
    }
    for word in [
        "there is nothing to lower",
        "put load on, or take help away",
    ] {
        assert!(answer.complaint.contains(word), "{}", answer.complaint);
    }
    // A load that is too heavy is told as such.
    let heavy = call(&["rep", "squat", "--load", "500 kg"]);
    assert_eq!(heavy.status, 1, "{}", heavy.complaint);
    assert!(
        heavy.complaint.contains("too heavy to be lowered"),
        "{}",
        heavy.complaint
    );
}

#[test]
fn fault_few_people_make_no_tenths() {
    for (people, is_few) in [("1", true), ("9", true), ("30", false)] {
        let answer = call(&["curve", "biceps-curl", "--samples", "5", "--people", people]).done();
        let is_told = answer
            .out
            .contains("Of fewer than 10 people there is no tenth");
        assert_eq!(is_told, is_few, "{people}: {}", answer.out);
    }
}

#[test]
fn fault_a_path_or_a_name_of_nothing_is_told() {
    for (arguments, words) in [
        (
            &["curve", "squat", "--set", "technique.=1"][..],
            "`technique.=1` sets nothing",
        ),
        (
            &["curve", "squat", "--set", "lifter..height=1 m"],
            "sets nothing",
        ),
        (&["vary", "squat"], "nothing is said of what to vary"),
        (
            &["progress", "--log", "rising", "--lift", ""],
            "a value is required for '--lift",
        ),
        (
            &["progress", "--log", "rising", "--athlete", ""],
            "a value is required for '--athlete",
        ),
        (
            &["parameters", "squat", "--find", ""],
            "a value is required for '--find",
        ),
        (&["plan", "squat", "--sets", "0"], "ask for 1 or more"),
    ] {
        refused(arguments, &[words]);
    }
}

/// Nouns in the plural that a count of one never stands before.
const PLURALS: [&str; 18] = [
    "days",
    "weeks",
    "months",
    "sets",
    "rows",
    "repetitions",
    "samples",
    "people",
    "plates",
    "bars",
    "bands",
    "chains",
    "sessions",
    "items",
    "pieces",
    "values",
    "parts",
    "faults",
];

#[track_caller]
fn one_is_no_plural(text: &str) {
    let words: Vec<&str> = text.split_whitespace().collect();
    for pair in words.windows(2) {
        let noun = pair[1].trim_end_matches([',', '.', ':', ';', ')']);
        let before = pair[0].trim_start_matches('(');
        assert!(
            before != "1" || !PLURALS.contains(&noun),
            "{pair:?} in {text}"
        );
    }
}

#[test]
fn law_one_is_no_plural() {
    let strong = ["--training-months", "60", "--one-rm", "120 kg"];
    let overload = [
        &["plan", "bench-press", "--method", "overloaded-lowering"][..],
        &strong,
        &["--last-overload", "1"],
    ];
    let plan = ["plan", "squat", "--sets", "1", "--reps", "1"];
    let values = ["vary", "squat", "--param", "lifter.height", "--values"];
    for (arguments, says) in [
        (&["curve", "squat", "--samples", "1"][..], "1 sample is"),
        (
            &["max", "squat", "--people", "1", "--part", "1/2"],
            "1 person is",
        ),
        (&[&plan[..], &strong].concat(), "1 of 1 repetition"),
        (&[&values[..], &["1 cm..2 cm:1"]].concat(), "1 value is"),
    ] {
        let answer = call(arguments);
        let all = in_one_line(&(answer.out + &answer.complaint));
        assert!(all.contains(says), "{arguments:?}: {all}");
        one_is_no_plural(&all);
    }
    let told = call(&overload.concat());
    one_is_no_plural(&told.complaint);
    assert!(
        told.complaint.contains("was 1 day ago"),
        "{}",
        told.complaint
    );
}
