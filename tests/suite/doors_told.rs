//! What contradicts itself or changes nothing, and what is no training: told before any work, with the way out.

use crate::calling::{call, call_in, refused, told};
use std::path::Path;
use torquill::progress::bar_trace::BarTrace;

#[test]
fn fault_a_value_that_is_set_twice_is_refused() {
    let press = ["curve", "bench-press", "--set"];
    for (first, second, words) in [
        (
            "technique.grip_width=60 cm",
            "technique.grip_width=70 cm",
            "`technique.grip_width` is set twice: to `60 cm` and to `70 cm`",
        ),
        (
            "technique.grip_width=60 cm",
            "technique.grip_width=60 cm",
            "is set twice, both times to `60 cm`",
        ),
        (
            "lifter.height=+2%",
            " lifter.height =-3%",
            "is set twice: to `+2%` and to `-3%`",
        ),
        (
            "technique.grip_width=60 cm",
            "movement.technique.grip_width=70 cm",
            "`technique.grip_width` and `movement.technique.grip_width` are one value",
        ),
        (
            "muscles.triceps_lateral.moment_arm.elbow=+5%",
            "muscles.triceps_lateral.moment_arm.elbow.scale=1.1",
            "are one value, and it is set twice",
        ),
    ] {
        refused(
            &[&press[..], &[first, "--set", second]].concat(),
            &[words, "leave one of the two out"],
        );
    }
    for command in [
        &["max", "bench-press"][..],
        &["rep", "bench-press"],
        &["plan", "bench-press"],
        &["explain", "bench-press", "--at", "middle"],
        &["figure", "bench-press", "-o", "a.svg"],
        &["pick", "bench-press", "--gym", "garage"],
        &["vary", "bench-press", "--rank"],
        &["parameters", "bench-press"],
    ] {
        let twice = [
            "--set",
            "lifter.height=180 cm",
            "--set",
            "lifter.height=1 m",
        ];
        refused(
            &[command, &twice].concat(),
            &["`lifter.height` is set twice"],
        );
    }
    // Others are set beside each other, and what is varied goes on from what is set.
    let both = [
        "--set",
        "technique.grip_width=60 cm",
        "--set",
        "lifter.height=180 cm",
    ];
    call(&[&["curve", "bench-press"], &both[..]].concat()).done();
    call(&[
        "vary",
        "bench-press",
        "--set",
        "technique.grip_width=60 cm",
        "--param",
        "technique.grip_width",
        "--values",
        "-5%,+5%",
    ])
    .done();
}

#[test]
fn fault_no_rest_is_no_plan() {
    let press = ["plan", "bench-press", "--one-rm", "100 kg"];
    for rest in ["0 s", "0.5 s", "9.9 s"] {
        refused(
            &[&press[..], &["--rest", rest]].concat(),
            &["between sets is none", "from 10 s on", "--rest-within"],
        );
    }
    let clusters = ["--method", "clusters", "--training-months", "60"];
    for rest in ["0 s", "4.9 s"] {
        refused(
            &[&press[..], &clusters, &["--rest-within", rest]].concat(),
            &["inside a cluster set is none", "from 5 s on"],
        );
    }
    call(&[&press[..], &["--rest", "10 s"]].concat()).done();
    call(&[&press[..], &clusters, &["--rest-within", "5 s"]].concat()).done();
}

#[test]
fn fault_a_lowering_of_minutes_is_no_lift() {
    for command in ["max", "rep"] {
        for (option, part) in [("--lowering", "lowering"), ("--pause", "pause")] {
            refused(
                &[command, "bench-press", option, "600 s"],
                &[&format!("a {part} of 600 s is outside"), "0 to 60 s"],
            );
        }
    }
    refused(
        &["max", "bench-press", "--eccentric", "600 s"],
        &["a lowering of 600 s"],
    );
}

#[test]
fn fault_what_a_method_does_not_heed_names_those_that_do() {
    let press = ["plan", "bench-press", "--one-rm", "100 kg"];
    let cases: [(&[&str], &[&str]); 8] = [
        (
            &["--rest-within", "20 s"],
            &[
                "--rest-within changes nothing in straight",
                "only clusters heeds it",
                "--method clusters",
            ],
        ),
        (
            &["--effort", "80%"],
            &["--effort changes nothing in straight", "bands and chains"],
        ),
        (
            &["--last-overload", "3"],
            &["--last-overload changes nothing", "overloaded-lowering"],
        ),
        (
            &["--weeks", "4", "--load", "60 kg"],
            &["--load changes nothing in a block of straight"],
        ),
        (
            &["--method", "clusters", "--reps", "3"],
            &["--reps changes nothing in clusters", "pyramid"],
        ),
        (
            &["--sets", "4", "--max-per-week", "3"],
            &["--sets 4 is more in one session than --max-per-week 3 allows"],
        ),
        (
            &[
                "--method",
                "bands",
                "--training-months",
                "60",
                "--chain",
                "chain-10mm:1",
            ],
            &["--method bands without bands among what hangs", "--band"],
        ),
        (
            &["--velocity-loss", "0.2%"],
            &["--velocity-loss 0.2 % is none that a set ends at: 5 % to 80 %"],
        ),
    ];
    for (more, words) in cases {
        refused(&[&press[..], more].concat(), words);
    }
}

/// A trace as a spreadsheet of another country writes it.
fn trace(separator: &str, comma: &str) -> String {
    let mut text = format!("time (s){separator}position (m)\n");
    for step in 0..400 {
        let time = f64::from(step) * 0.02;
        let height = 0.5 + 0.25 * (1.0 - (time * 1.6).cos());
        let row = format!("{time:.2}{separator}{height:.4}\n").replace('.', comma);
        text += &row;
    }
    text
}

#[test]
fn fault_traces_are_read_as_logs_are() {
    let read = |separator: &str, comma: &str| {
        let text = trace(separator, comma);
        BarTrace::read("bar.csv", &text, "time,position").expect("a trace")
    };
    let plain = read(",", ".");
    assert_eq!(plain.points.len(), 400);
    for (separator, comma) in [(";", ","), ("\t", ","), (";", "."), ("\t", ".")] {
        assert_eq!(read(separator, comma), plain, "{separator} {comma}");
    }
}

/// A task file whose start, goal and hint are these lines.
fn tasks(folder: &Path, lines: &str) -> crate::calling::Answer {
    std::fs::write(folder.join("tasks.txt"), lines).expect("a file");
    call_in(
        folder,
        &["explore", "-o", "lab.html", "--tasks", "tasks.txt"],
    )
}

#[test]
fn fault_a_task_that_contradicts_itself_is_refused_at_its_line() {
    let folder = tempfile::tempdir().expect("a folder");
    let task = "task: Turn the load\n";
    let start = "start: #v=1&lift=biceps-curl&load=12\n";
    let goal = "goal: max_effort < 0.3\n";
    for (text, line, words) in [
        (
            format!("{task}start: #v=2&lift=biceps-curl&load=12\n{goal}"),
            2,
            "of version `2` of the page, and there is version 1",
        ),
        (
            format!("{task}start: #v=&lift=biceps-curl&load=12\n{goal}"),
            2,
            "of version `` of the page",
        ),
        (
            format!("{task}start: #lift=biceps-curl&load=12&load=5\n{goal}"),
            2,
            "says `load` twice",
        ),
        (
            format!("{task}start: #lift=biceps-curl&lift=squat&load=12\n{goal}"),
            2,
            "says `lift` twice",
        ),
        (
            format!(
                "{task}start: #lift=biceps-curl&set=lifter.height%3D1.8+m&set=lifter.height%3D1.7+m\n{goal}"
            ),
            2,
            "`lifter.height` is set twice",
        ),
        (
            format!("{task}{start}{goal}hint: One\nhint: Two\n"),
            5,
            "line 5 is a second hint of one task; the first stands in line 4",
        ),
        (
            format!("{task}{start}{start}{goal}"),
            3,
            "line 3 is a second start of one task",
        ),
        (
            format!("{task}{start}{goal}{goal}"),
            4,
            "line 4 is a second goal of one task",
        ),
        (
            format!("task:\n{start}{goal}"),
            1,
            "there is nothing behind `task:`",
        ),
        (
            format!("{task}{start}{goal}hint: \n"),
            4,
            "there is nothing behind `hint:`",
        ),
    ] {
        let answer = tasks(folder.path(), &text);
        told(&answer, &[&text], &[words, &format!("tasks.txt:{line}:")]);
        assert!(!folder.path().join("lab.html").exists());
    }
    let state = include_str!("../../page/src/state.js");
    assert!(state.contains("const VERSION = 1;"), "the page's version");
    let whole = tasks(folder.path(), &format!("{task}{start}{goal}hint: Less\n"));
    assert_eq!(whole.status, 0, "{whole:?}");
}

#[test]
fn fault_a_file_whose_command_is_not_what_it_would_run_is_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let said = call(&[
        "max",
        "biceps-curl",
        "--set",
        "movement.title=It's $5",
        "--format",
        "json",
    ]);
    let said = said.done().out;
    let again = |text: &str| {
        std::fs::write(folder.path().join("a.json"), text).expect("a file");
        call_in(folder.path(), &["again", "a.json"])
    };
    assert_eq!(again(&said).done().out, said);
    let shown = said.replacen("torquill max biceps-curl", "torquill max squat", 1);
    assert_ne!(shown, said);
    let run = said.replacen("\"biceps-curl\"", "\"squat\"", 1);
    assert_ne!(run, said);
    let open = said.replacen("torquill max", "torquill 'max", 1);
    for text in [shown, run, open] {
        told(
            &again(&text),
            &["again"],
            &[
                "the file shows the command `torquill ",
                "and would run `torquill ",
            ],
        );
    }
}

#[test]
fn fault_a_damaged_picture_says_nothing_of_its_making() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    call_in(
        here,
        &["figure", "biceps-curl", "--samples", "5", "-o", "a.png"],
    )
    .done();
    let whole = std::fs::read(here.join("a.png")).expect("a picture");
    let again = |bytes: &[u8]| {
        std::fs::write(here.join("b.png"), bytes).expect("a file");
        let answer = call_in(here, &["again", "b.png", "-o", "c.png"]);
        let _ = std::fs::remove_file(here.join("c.png"));
        answer
    };
    again(&whole).done();
    let text = whole
        .windows(4)
        .position(|four| four == b"tEXt")
        .expect("it says how it was made");
    // In the text, in the picture, in a checksum.
    for byte in [text + 40, whole.len() / 2, whole.len() - 20] {
        let mut damaged = whole.clone();
        damaged[byte] ^= 1;
        told(
            &again(&damaged),
            &["again"],
            &["b.png` is damaged", "checksum"],
        );
    }
    for length in [text + 40, whole.len() / 2, whole.len() - 1] {
        told(&again(&whole[..length]), &["again"], &["b.png` is cut off"]);
    }
}

#[test]
fn fault_a_source_that_nobody_listed_is_refused_by_all_that_read_the_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    let lifter = "(extends: \"reference-man\", title: \"One\", strength_scale: 1.1, source: Published(\"nobody_1999\", \"table 1\"))";
    std::fs::write(here.join("one.ron"), lifter).expect("a file");
    let words = ["nobody_1999", "one.ron:1:"];
    for command in [
        &["check", "one.ron"][..],
        &["curve", "squat", "--lifter", "one.ron"],
        &["max", "squat", "--lifter", "one.ron"],
        &["plan", "squat", "--lifter", "one.ron"],
    ] {
        told(&call_in(here, command), command, &words);
    }
    std::fs::create_dir_all(here.join("own/lifters")).expect("folders");
    std::fs::rename(here.join("one.ron"), here.join("own/lifters/one.ron")).expect("it is there");
    let asked = ["curve", "squat", "--models", "own", "--lifter", "one"];
    told(&call_in(here, &asked), &asked, &words);
    // A list of one's own makes it known at both doors; one with an empty entry is none at either.
    let list = "{\"nobody_1999\": (citation: \"Nobody 1999, invented\", used_for: \"a test\", seen: Read)}";
    std::fs::write(here.join("own/sources.ron"), list).expect("a file");
    call_in(here, &asked).done();
    call_in(here, &["check", "own/lifters/one.ron", "--models", "own"]).done();
    std::fs::write(
        here.join("own/sources.ron"),
        list.replace("Nobody 1999, invented", " "),
    )
    .expect("a file");
    for command in [
        &asked[..],
        &["check", "own/sources.ron"],
        &["sources", "--models", "own"],
    ] {
        told(
            &call_in(here, command),
            command,
            &["nobody_1999.citation", "is empty"],
        );
    }
}

#[test]
fn fault_outputs_that_cannot_be_are_told_before_the_answer() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    std::fs::write(here.join("there.caption.txt"), "theirs").expect("a file");
    let plan = [
        "plan",
        "bench-press",
        "--one-rm",
        "140 kg",
        "--training-months",
        "48",
    ];
    let cases: [(&[&str], &str); 12] = [
        (
            &[
                "progress", "--log", "rising", "-o", "a.svg", "--size", "wide",
            ],
            "wide",
        ),
        (
            &["progress", "--log", "rising", "-o", "no/a.svg"],
            "the folder `no`",
        ),
        (
            &["progress", "--log", "rising", "-o", "there.caption.txt"],
            "exists already",
        ),
        (
            &["max", "biceps-curl", "-o", "a.svg", "--size", "wide"],
            "wide",
        ),
        (
            &["vary", "squat", "--rank", "-o", "a.svg", "--size", "0x0"],
            "0x0",
        ),
        (
            &["rep", "biceps-curl", "-o", "a.svg", "--size", "wide"],
            "wide",
        ),
        (
            &["rep", "biceps-curl", "--animation", "a.png"],
            "an animated picture is an .svg",
        ),
        (
            &[
                "rep",
                "biceps-curl",
                "--versus-plain",
                "--over-time",
                "a.svg",
            ],
            "--versus-plain draws one picture",
        ),
        (
            &["figure", "squat", "--words", "-o", "there.svg"],
            "there.caption.txt` exists already",
        ),
        (
            &[&plan[..], &["-o", "a.svg", "--size", "wide"]].concat(),
            "wide",
        ),
        (
            &[&plan[..], &["--weeks", "2", "--sheet", "a.svg"]].concat(),
            "a picture holds one session",
        ),
        (
            &[
                &plan[..],
                &["--method", "all", "--gym", "garage", "--sheet", "a.png"],
            ]
            .concat(),
            "a picture holds one session",
        ),
    ];
    for (command, words) in cases {
        told(&call_in(here, command), command, &[words]);
    }
    assert_eq!(std::fs::read_dir(here).expect("a folder").count(), 1);
}

#[test]
fn fault_grams_are_not_told_as_nothing() {
    refused(
        &["plan", "bench-press", "--one-rm", "8 g"],
        &["a 1RM of 0.008 kg"],
    );
    let us = ["plan", "bench-press", "--one-rm", "8 g", "--units", "us"];
    let answer = call(&us);
    assert!(!answer.complaint.contains(" 0 lb"), "{answer:?}");
}

#[test]
fn fault_figures_of_a_session_are_judged_before_its_lift_is_looked_for() {
    for (more, words) in [
        (["--sets", "0"], "0 sets are no session"),
        (["--reps", "1000"], "1000 repetitions of a set are more"),
        (["--rest", "31 min"], "is too long"),
    ] {
        refused(&[&["plan", "nothing"][..], &more].concat(), &[words]);
    }
}

#[test]
fn fault_options_that_the_picture_does_not_follow_are_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    let team = "name,sex,mass (kg),height (cm),squat (kg)\nMia,woman,64,168,85\n";
    std::fs::write(here.join("team.csv"), team).expect("a file");
    for (command, words) in [
        (
            "plan squat --one-rm 100kg --sheet s.html --theme dark",
            "--theme changes nothing without --output, --fatigue or --loads",
        ),
        (
            "plan squat --one-rm 100kg --sheet s.html --size page",
            "--size changes nothing without --output",
        ),
        (
            "plan squat --team team.csv -o d --theme dark",
            "--theme changes nothing",
        ),
        (
            "fit --name A --sex man --mass 80kg --height 180cm --lift squat=100kg -o a.ron --size page",
            "--size changes nothing without --picture",
        ),
        (
            "figure squat -o a.png --live-text",
            "--live-text changes nothing here",
        ),
        (
            "figure squat -o a.svg --draw muscles --people 3",
            "--people changes nothing without --draw curve",
        ),
        (
            "figure squat -o a.svg --draw holders --scatter",
            "--scatter changes nothing without --draw curve",
        ),
        (
            "figure squat -o a.svg --load 60kg --as-loaded",
            "--as-loaded changes nothing without --versus",
        ),
        (
            "curve squat --force",
            "--force changes nothing without --data",
        ),
        (
            "vary squat --param technique.depth --values 0deg,5deg --measure end",
            "--measure changes nothing for one parameter",
        ),
        (
            "rep squat --hand-over --lowering 0s",
            "--hand-over changes nothing where the load is not lowered first",
        ),
        (
            "rep squat --no-enhancement --lowering 0s",
            "--no-enhancement changes nothing where the load is not lowered first",
        ),
        (
            "max deadlift --no-enhancement",
            "--no-enhancement changes nothing where the load is not lowered first",
        ),
    ] {
        let words_of_it: Vec<&str> = command.split(' ').collect();
        told(&call_in(here, &words_of_it), &words_of_it, &[words]);
    }
    assert_eq!(std::fs::read_dir(here).expect("a folder").count(), 1);
}

#[test]
fn fault_slips_of_every_day_are_told() {
    let person = "fit --name A --sex man --mass 80kg --height 180cm --lift squat=100kg";
    let person: Vec<&str> = person.split(' ').collect();
    let twice = ["--limb", "forearm=27 cm", "--limb", "Forearm=25 cm"];
    refused(
        &[&person[..], &twice].concat(),
        &["the forearm is told twice: 27 cm and 25 cm"],
    );
    for (command, words) in [
        ("max squat --step 1000kg", "0.01 to 100 kg"),
        (
            "max squat --to-load 10000kg",
            "--to-load 10000 kg is no load that anybody lifts",
        ),
        (
            "max squat --people 10 --part 1/100",
            "10 people are not shared into 100 parts",
        ),
        (
            "show lifter reference-man -o mine.txt",
            "`mine.txt` would be no model file",
        ),
        ("show log rising -o mine.ron", "end its name in .csv"),
        (
            "curve squat --band loop-29mm:1@",
            "names no place behind `@`",
        ),
        (
            "curve squat --lifter /dev/null",
            "given by its path, which ends in .ron",
        ),
    ] {
        refused(&command.split(' ').collect::<Vec<_>>(), &[words]);
    }
}

/// Numbers with a comma: one that can only part decimals is shown with a point, one that may part thousands in both ways.
#[test]
fn fault_commas_of_a_fit_are_told_by_what_they_may_mean() {
    let person = "fit --name A --sex man --mass 80kg --height 180cm --lift";
    let person: Vec<&str> = person.split(' ').collect();
    for (lift, words) in [
        (
            "squat=11,25 kg",
            "decimals are written with a point, \"11.25 kg\"",
        ),
        ("squat=1,125 kg", "write \"1.125 kg\" or \"1125 kg\""),
        (
            "squat=1.125,5 kg",
            "thousands are written without a mark, \"1125.5 kg\"",
        ),
    ] {
        refused(&[&person[..], &[lift]].concat(), &[words]);
    }
    let folder = tempfile::tempdir().expect("a folder");
    let log = |load: &str| {
        let log = format!(
            "date;lift;load (kg);repetitions;RIR\n23.3.2026;squat;{load};5;1\n30.3.2026;squat;{load};5;1\n"
        );
        std::fs::write(folder.path().join("log.csv"), log).expect("a file");
        let words = "progress --format json --log log.csv";
        call_in(folder.path(), &words.split(' ').collect::<Vec<_>>())
    };
    let read = log("111,25").done().json();
    assert_eq!(read["sessions"][0]["load_kg"], 111.25, "{read}");
    told(
        &log("1,125"),
        &["1,125"],
        &["may part decimals or thousands", "log.csv:2:17"],
    );
}

#[test]
fn fault_files_that_contradict_themselves_are_refused_at_every_door() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    let lifter = |rest: &str| {
        let text = format!("(extends: \"reference-man\", {rest})");
        std::fs::write(here.join("one.ron"), text).expect("a file");
    };
    for (rest, words) in [
        ("title: \" \"", "`title` is empty"),
        (
            "title: \"T\", training_months: 300.0, age_years: 20.0",
            "nobody of 20 years has trained for 300 months",
        ),
    ] {
        lifter(rest);
        for command in [
            &["check", "one.ron"][..],
            &["curve", "squat", "--lifter", "one.ron"],
        ] {
            told(&call_in(here, command), command, &[words, "one.ron:1:"]);
        }
    }
    let gym = "(extends: \"garage\", title: \"\")";
    std::fs::write(here.join("gym.ron"), gym).expect("a file");
    for command in [
        &["check", "gym.ron"][..],
        &["pick", "squat", "--gym", "gym.ron"],
    ] {
        told(&call_in(here, command), command, &["`title` is empty"]);
    }
    let weeks = "(extends: \"straight-sets\", weeks: (novice: (least_share: 0.7)))";
    std::fs::create_dir_all(here.join("own/published")).expect("folders");
    std::fs::write(here.join("own/published/straight-sets.ron"), weeks).expect("a file");
    for command in [
        &["check", "own/published/straight-sets.ron"][..],
        &["plan", "squat", "--models", "own"],
    ] {
        told(
            &call_in(here, command),
            command,
            &["is 0.7, and `weeks.novice.share`, the most of it, is 0.6"],
        );
    }
}

#[test]
fn fault_a_reserve_against_its_rating_is_told_at_its_line() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = |reserve: &str, rating: &str| {
        let text = format!(
            "date,lift,load,repetitions,RIR,RPE\n2026-03-09,squat,100 kg,5,{reserve},{rating}\n\
             2026-03-16,squat,100 kg,5,2,8\n"
        );
        std::fs::write(folder.path().join("log.csv"), text).expect("a file");
        call_in(folder.path(), &["progress", "--log", "log.csv"])
    };
    told(
        &log("2", "10"),
        &["progress"],
        &[
            "log.csv:2:",
            "2 in reserve and a rating of 10 tell different sets: 10 would leave 0",
        ],
    );
    for (reserve, rating) in [("2", "8"), ("2", "8.5"), ("2", "7"), ("2", ""), ("", "10")] {
        log(reserve, rating).done();
    }
}
