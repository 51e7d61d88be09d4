//! Odd gyms and odd wishes through the program: a clear answer, or an error with status 1 or 2 and the reason.

use crate::calling::{Answer, call_in, in_one_line};
use crate::setups::{model_of, question_of};
use std::path::Path;
use torquill::resistance::Setup;
use torquill::study::load_for_effort;

fn pick(folder: &Path, gym: &str, more: &[&str]) -> Answer {
    std::fs::write(folder.join("gym.ron"), gym).expect("a file can be written");
    call_in(
        folder,
        &[
            &[
                "pick",
                "bench-press",
                "--gym",
                "gym.ron",
                "--top",
                "3",
                "--all",
            ],
            more,
        ]
        .concat(),
    )
}

/// What an odd gym is answered: its status and words of the message or of the answer.
type Odd = (&'static str, &'static str, i32, &'static [&'static str]);

const ODD: &[Odd] = &[
    (
        "empty",
        r#"Gym(title: "e")"#,
        2,
        &["owns nothing", "list at least a bar"],
    ),
    ("no file", "", 2, &["gym.ron"]),
    (
        "one plate, no bar",
        r#"Gym(title: "Hall", plates: [(mass: "20 kg", count: 1)])"#,
        2,
        &["no bar, no dumb-bells, no machine", "bars: ["],
    ),
    (
        "one plate and one band with a bar",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], plates: [(mass: "20 kg", count: 1)], bands: [(name: "loop-14mm", count: 1)])"#,
        0,
        &["no plates", "no second piece for the other side"],
    ),
    (
        "odd counts",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], plates: [(mass: "20 kg", count: 3), (mass: "5 kg", count: 5)], bands: [(name: "loop-14mm", count: 3)])"#,
        0,
        &[
            "with 6 loads",
            "2 combinations of bands",
            "would go slack on the way",
        ],
    ),
    (
        "a band shorter than the way to its anchor",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], plates: [(mass: "20 kg", count: 2)], bands: [(name: "loop-29mm", count: 2)], anchors: {"sky": (height: "550 cm")})"#,
        0,
        &[
            "beyond the safe length",
            "no band or chain of this gym does better",
        ],
    ),
    (
        "no anchor",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], bands: [(name: "loop-29mm", count: 2)], anchors: {})"#,
        0,
        &["1 combination of bands and chains with 1 load"],
    ),
    (
        "a thousand plates of each kind",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], plates: [(mass: "25 kg", count: 1000), (mass: "20 kg", count: 1000), (mass: "15 kg", count: 1000), (mass: "10 kg", count: 1000), (mass: "5 kg", count: 1000), (mass: "2.5 kg", count: 1000), (mass: "1.25 kg", count: 1000), (mass: "0.5 kg", count: 1000), (mass: "0.25 kg", count: 1000)], bands: [(name: "loop-29mm", count: 1000)])"#,
        0,
        &["Number 1 is first", "hardest effort"],
    ),
    (
        "negative mass",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "-20 kg")])"#,
        2,
        &["-20 kg", "outside"],
    ),
    (
        "negative count",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], plates: [(mass: "5 kg", count: -2)])"#,
        2,
        &["plates.0.count", "-2"],
    ),
    (
        "no number",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "nan kg")])"#,
        2,
        &["nan kg"],
    ),
    (
        "two bars of one name",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg"), (name: "bar", mass: "15 kg")])"#,
        2,
        &["listed twice"],
    ),
    (
        "two bands of one name",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], bands: [(name: "loop-14mm", count: 2), (name: "loop-14mm", count: 2)])"#,
        2,
        &["listed twice", "add the counts up"],
    ),
    (
        "two anchors of one name",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], anchors: {"a": (height: "0 cm"), "a": (height: "10 cm")})"#,
        2,
        &["given twice"],
    ),
    (
        "a plate twice",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], plates: [(mass: "20 kg", count: 2), (mass: "20 kg", count: 2)])"#,
        2,
        &["listed twice"],
    ),
    (
        "an unknown band",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], bands: [(name: "lop-14mm", count: 2)])"#,
        2,
        &["lop-14mm", "did you mean `loop-14mm`?"],
    ),
    (
        "more plates than there are",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], plates: [(mass: "20 kg", count: 100000)])"#,
        2,
        &["100000", "10000"],
    ),
    (
        "a bar too heavy for the lifter",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "100 kg")])"#,
        1,
        &["the nearest, bar (100 kg), no plates", "HELD %"],
    ),
    (
        "a step of nothing",
        r#"Gym(title: "Hall", bars: [(name: "bar", mass: "20 kg")], smallest_step: "0 kg")"#,
        2,
        &["smallest_step"],
    ),
];

/// What is doubted of a gym that is answered: its name in [`ODD`] and the places in its file. Nothing of the others.
const DOUBTED: &[(&str, &[&str])] = &[
    (
        "one plate and one band with a bar",
        &["`plates.0.count` is 1", "`bands.0.count` is 1"],
    ),
    (
        "odd counts",
        &[
            "`plates.0.count` is 3",
            "`plates.1.count` is 5",
            "`bands.0.count` is 3",
        ],
    ),
    (
        "a band shorter than the way to its anchor",
        &["`anchors.sky.height` is 5.5 m"],
    ),
];

/// Beside an answer stand warnings alone, those of this gym.
fn are_warnings_of(what: &str, beside: &str) {
    let found = DOUBTED.iter().find(|(gym, _)| *gym == what);
    let doubted = found.map_or(&[][..], |(_, doubted)| doubted);
    // Its place and line of the file are set in.
    let set_in = |line: &&str| line.starts_with([' ', '|']) || line.starts_with(char::is_numeric);
    let heads = beside
        .lines()
        .filter(|line| !line.is_empty() && !set_in(line));
    let heads: Vec<&str> = heads.collect();
    assert_eq!(heads.len(), doubted.len(), "{what}: {beside}");
    for (head, place) in heads.iter().zip(doubted) {
        assert!(
            head.starts_with("warning: ") && head.contains(place),
            "{what}: {head}"
        );
    }
}

#[test]
fn fault_odd_gyms_end_in_a_clear_answer_or_error() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    // What 100 kg ask of this lifter follows from what he holds.
    let model = model_of("bench-press");
    let question = question_of("bench-press", &model, 101);
    let held = load_for_effort(&question, &Setup::new("", Vec::new()), 1.0).expect("a load");
    let asked = format!("{} %", (100.0 * 100.0 / held.as_kg()).ceil());
    for (what, gym, status, words) in ODD {
        let said = pick(folder.path(), gym, &[]);
        assert_eq!(
            said.status, *status,
            "{what}: {}{}",
            said.out, said.complaint
        );
        let (told, quiet) = if *status == 0 {
            (&said.out, &said.complaint)
        } else {
            (&said.complaint, &said.out)
        };
        let told = &in_one_line(told);
        for word in *words {
            let word = word.replace("HELD %", &asked);
            assert!(told.contains(&word), "{what}: `{word}` is not in: {told}");
        }
        if *status == 0 {
            are_warnings_of(what, quiet);
        } else {
            assert!(quiet.is_empty(), "{what}: {quiet}");
            let head = if *status == 1 {
                "no answer: "
            } else {
                "error: "
            };
            assert!(told.contains(head), "{what}: {told}");
        }
        for bad in ["NaN", "inf ", "panicked", "unwrap"] {
            assert!(!told.contains(bad), "{what}: {told}");
        }
    }
}

#[test]
fn fault_none_fits_names_the_nearest_miss_and_what_would_make_it_fit() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let cases: [(&[&str], &[&str]); 4] = [
        (
            &["--load-at", "end=..40 kg"],
            &[
                "at the end, more than 40 kg",
                "--load-at \"end=..",
                "less --effort",
            ],
        ),
        (
            &["--load-at", "start=200 kg.."],
            &[
                "at the start, less than 200 kg",
                "--load-at \"start=",
                "more --effort",
            ],
        ),
        (&["--effort", "5%"], &["more than 5 %", "--effort "]),
        // One light band a side is never two fifths of what a strong lifter presses.
        (
            &[
                "--lifter",
                "heavy-lifter",
                "--share",
                "40%..50%",
                "--only",
                "loop-14mm",
                "--hung",
                "1",
            ],
            &["from bands and chains, less than 40 %", "--share "],
        ),
    ];
    for (limits, words) in cases {
        let ask = |limits: &[&str]| {
            call_in(
                folder.path(),
                &[
                    &["pick", "bench-press", "--gym", "college-weight-room"],
                    limits,
                ]
                .concat(),
            )
        };
        let said = ask(limits);
        assert_eq!(
            (said.status, said.out.as_str()),
            (1, ""),
            "{limits:?}: {}",
            said.complaint
        );
        for word in words {
            assert!(
                said.complaint.contains(word),
                "{limits:?}: `{word}` is not in: {}",
                said.complaint
            );
        }
        // What is said to make it fit does so.
        let hint = said.complaint.lines().find_map(|line| {
            let (_, hint) = line.split_once("hint: ")?;
            hint.contains("would make it fit").then(|| hint.to_owned())
        });
        let hint = hint.expect("a hint");
        let mut parts = hint.split_whitespace();
        let option = parts.next().expect("an option").to_owned();
        let value = match hint.split('"').nth(1) {
            Some(quoted) => quoted.to_owned(),
            None => parts.next().expect("a value").to_owned(),
        };
        let mut again: Vec<&str> = Vec::new();
        for pair in limits.chunks(2) {
            again.extend([
                pair[0],
                if pair[0] == option {
                    value.as_str()
                } else {
                    pair[1]
                },
            ]);
        }
        let said = ask(&again);
        assert_eq!(said.status, 0, "{again:?}: {}", said.complaint);
    }
}

#[test]
fn fault_odd_wishes_are_refused_with_the_range() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    for (more, word) in [
        (["--effort", "0%"], "5 %"),
        (["--effort", "101%"], "100 %"),
        (["--hung", "99"], "6 at most"),
        (["--share", "40%..20%"], "no share"),
        (["--only", "sauna"], "it has: bands, plain"),
        (["--at", "2"], "0"),
        (["--load-at", "end=heavy"], "heavy"),
        (["--profile", "0=60%"], ""),
    ] {
        let mut arguments = vec!["pick", "bench-press", "--gym", "garage"];
        arguments.extend(more);
        if more[0] == "--profile" {
            arguments.extend(["--goal", "profile"]);
        }
        if more[0] == "--at" {
            arguments.extend(["--goal", "most-load"]);
        }
        let said = call_in(folder.path(), &arguments);
        assert_eq!(
            (said.status, said.out.as_str()),
            (2, ""),
            "{more:?}: {}",
            said.complaint
        );
        assert!(
            said.complaint.contains(word),
            "{more:?}: {}",
            said.complaint
        );
    }
}

/// A lifter who holds the own body at four fifths of his strength.
const STRONG: [&str; 4] = [
    "--lifter",
    "heavy-lifter",
    "--set",
    "lifter.strength_scale=1.9",
];

#[test]
fn law_every_gym_answers_or_says_what_it_lacks_for_every_movement_goal_and_form() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let goals: [&[&str]; 4] = [
        &["--goal", "flattest"],
        &[
            "--goal",
            "most-load",
            "--at",
            "end",
            "--limit-at",
            "0.2",
            "--units",
            "us",
        ],
        &["--goal", "share", "--share", "20%", "--format", "csv"],
        &[
            "--goal",
            "profile",
            "--profile",
            "0=60%, 0.5=80%, 1=80%",
            "--format",
            "json",
        ],
    ];
    let movements = [
        "bench-press",
        "leg-press",
        "pull-up",
        "leg-curl",
        "biceps-curl",
    ];
    for gym in ["garage", "college-weight-room", "strength-lab"] {
        for movement in movements {
            for goal in goals {
                let ask = ["pick", movement, "--gym", gym, "--samples", "31", "--all"];
                // Who cannot hold the own body is helped by a machine's counterweight, or told that this gym has none;
                // a lifter who can gets an answer.
                let lifter: &[&str] = match movement {
                    "pull-up" => &STRONG,
                    _ => &[],
                };
                if movement == "pull-up" && gym != "garage" {
                    let said = call_in(folder.path(), &[&ask, goal].concat());
                    assert_eq!(said.status, 0, "{goal:?}: {}", said.complaint);
                    assert!(said.out.contains("counterweight"), "{goal:?}: {}", said.out);
                } else if movement == "pull-up" {
                    let said = call_in(folder.path(), &[&ask, goal].concat());
                    assert_eq!((said.status, said.out.as_str()), (1, ""), "{goal:?}");
                    let told = said.complaint;
                    let why = ["this lifter cannot hold it", "would make it fit"];
                    assert!(told.contains("the nearest, the body alone"), "{told}");
                    assert!(why.iter().any(|why| told.contains(why)), "{told}");
                }
                let arguments = [&ask, goal, lifter].concat();
                let said = call_in(folder.path(), &arguments);
                if gym == "garage" && ["leg-press", "leg-curl"].contains(&movement) {
                    assert_eq!(said.status, 1, "{arguments:?}");
                    assert!(said.complaint.contains("has no "), "{}", said.complaint);
                    continue;
                }
                assert_eq!(said.status, 0, "{arguments:?}: {}", said.complaint);
                assert!(!said.out.contains("NaN"), "{arguments:?}");
                match goal.last() {
                    Some(&"json") => {
                        let json: serde_json::Value =
                            serde_json::from_str(&said.out).expect("JSON");
                        assert!(
                            json["ranked"]
                                .as_array()
                                .is_some_and(|list| !list.is_empty())
                        );
                        assert!(json["ranked"][0]["plain_mass_kg"].is_number());
                        assert!(
                            json["summary"]["cautions"]
                                .as_array()
                                .is_some_and(|c| !c.is_empty())
                        );
                    }
                    Some(&"csv") => {
                        let lines: Vec<&str> = said.out.lines().collect();
                        assert!(lines[0].starts_with("rank,bar_and_plates,bands_and_chains,"));
                        assert!(lines.len() >= 2, "{}", said.out);
                        assert!(said.complaint.contains("caution: "), "{}", said.complaint);
                    }
                    _ => assert!(said.out.contains("How to load them"), "{}", said.out),
                }
            }
        }
    }
}
