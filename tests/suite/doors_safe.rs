//! Loads beyond the maximum, logs with a lost digit, and options that change nothing: told or refused at every door alike.

use crate::calling::{call, call_in, in_one_line, refused};
use torquill::library::Library;
use torquill::movement::{Catch, Handover};

/// What the refusal of a plan says between its first colon and the end of the line.
fn planned_reason(lift: &str) -> Option<String> {
    let words = [
        "plan",
        lift,
        "--one-rm",
        "140 kg",
        "--training-months",
        "48",
        "--method",
        "overloaded-lowering",
    ];
    let answer = call(&words);
    let said = in_one_line(&answer.complaint);
    let from = said.find("no more than the 1RM is lowered in the")?;
    let told = &said[from..];
    Some(told.split(" | ").next().unwrap_or(told).trim().to_owned())
}

/// One judge: where no helper can take the load, a plan, a maximum and a repetition say the same.
#[test]
fn fault_a_lowering_that_no_helper_can_take_is_advised_nowhere() {
    let library = Library::built_in();
    for lift in ["deadlift", "hip-thrust", "bench-press", "row"] {
        let handling = library.movement(lift).expect("a movement").handling;
        let reason = planned_reason(lift);
        assert_eq!(
            reason.is_some(),
            matches!(handling.overload, Handover::No(_)),
            "{lift}"
        );
        let max = call(&["max", lift, "--eccentric", "3 s"]).done();
        let words = in_one_line(&max.out);
        let json = call(&["max", lift, "--eccentric", "3 s", "--format", "json"])
            .done()
            .json();
        let cautions = json["cautions"].to_string();
        assert!(!cautions.contains("caution:"), "{cautions}");
        let is_more = words.contains("The muscles would lower");
        let rep = call(&[
            "rep",
            lift,
            "--load",
            "110%",
            "--lowering",
            "3 s",
            "--hand-over",
        ]);
        match reason {
            Some(reason) => {
                for told in [&words, &cautions] {
                    assert!(told.contains(&reason), "{lift}: {reason} / {told}");
                    assert_eq!(told.contains("nobody is to try that"), is_more, "{told}");
                    assert!(!told.contains("spotters who know"), "{told}");
                }
                assert!(!words.contains("Lowered under control"), "{words}");
                let said = in_one_line(&rep.complaint);
                assert!(said.contains(&reason), "{said}");
                assert_ne!(rep.status, 0);
            }
            None => {
                assert!(cautions.contains("experienced lifters only"), "{cautions}");
                let arms = handling.catch == Catch::SafetyArms;
                assert!(
                    rep.out.contains("caution: Experienced lifters"),
                    "{}",
                    rep.out
                );
                assert_eq!(
                    rep.out.contains("Safety arms at the lowest point AND"),
                    arms
                );
                let less = call(&[
                    "rep",
                    lift,
                    "--load",
                    "80%",
                    "--lowering",
                    "3 s",
                    "--hand-over",
                ]);
                assert!(!less.done().out.contains("caution:"));
            }
        }
    }
}

#[test]
fn fault_a_card_says_that_its_load_is_lowered() {
    let card = |speed: &str| {
        let words = [
            "pick",
            "bench-press",
            "--gym",
            "garage",
            "--hung",
            "1",
            "--speed",
            speed,
        ];
        in_one_line(&call(&words).done().out)
    };
    let lowered = card("-1 m/s");
    assert!(
        lowered.contains("lowered at 1 m/s, not lifted"),
        "{lowered}"
    );
    let lifted = card("0.2 m/s");
    assert!(lifted.contains("lifted at 0.2 m/s all the way"), "{lifted}");
    assert!(!lifted.contains("lowered at"), "{lifted}");
}

/// Nine kilograms after ninety are a lost digit until a second day shows as little, whatever the order of size.
#[test]
fn fault_a_fall_to_a_tenth_is_doubted() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = |loads: &[u32]| {
        let rows = loads.iter().zip([2, 5, 9, 12, 16, 19, 23]);
        let rows = rows.map(|(load, day)| format!("2026-02-{day:02},bench-press,{load} kg,5,1\n"));
        let text = format!("date,lift,load,reps,rir\n{}", rows.collect::<String>());
        std::fs::write(folder.path().join("log.csv"), text).expect("written");
    };
    let progress = || {
        let answer = call_in(folder.path(), &["progress", "--log", "log.csv"]).done();
        in_one_line(&answer.out)
    };
    let plan = || {
        let words = [
            "plan",
            "bench-press",
            "--log",
            "log.csv",
            "--training-months",
            "48",
        ];
        call_in(folder.path(), &words)
    };
    log(&[84, 86, 88, 88, 90, 9]);
    let told = progress();
    assert!(
        told.contains("below the best day before; more than 50 % is taken for a slip"),
        "{told}"
    );
    assert!(!told.contains("1RM now 10.8"), "{told}");
    let refusal = plan();
    assert_eq!(refusal.status, 2, "{}", refusal.out);
    assert!(
        refusal.complaint.contains("less than 50 % of"),
        "{}",
        refusal.complaint
    );
    // So it is in a log that has doubled since its first day.
    log(&[30, 40, 50, 60, 62, 6]);
    assert_eq!(plan().status, 2);
    // The same in the middle is left out, and a second low day makes both count.
    log(&[84, 86, 9, 88, 88, 90]);
    assert!(progress().contains("is taken for a slip"));
    assert_eq!(plan().done().status, 0);
    log(&[84, 86, 88, 88, 35, 36]);
    assert!(!progress().contains("is taken for a slip"));
    log(&[84, 86, 88, 88, 50]);
    assert!(!progress().contains("is taken for a slip"));
}

#[test]
fn fault_what_a_search_or_set_cannot_heed_is_refused() {
    let press = ["pick", "bench-press", "--gym", "garage"];
    for (more, words) in [
        (&["--at", "start"][..], "--at changes nothing"),
        (
            &[
                "--goal",
                "profile",
                "--profile",
                "0=60%, 1=80%",
                "--effort",
                "50%",
            ],
            "--effort changes nothing",
        ),
        (&["--hung", "0", "--only", "bands"], "nothing may hang"),
    ] {
        refused(&[&press[..], more].concat(), &[words]);
    }
    let none = call(&["pick", "bench-press", "--gym", "garage", "--only", "chains"]);
    assert_eq!((none.status, none.out.as_str()), (1, ""));
    assert!(
        none.complaint.contains("has no chains"),
        "{}",
        none.complaint
    );
    let clusters = [
        "plan",
        "bench-press",
        "--one-rm",
        "100 kg",
        "--training-months",
        "48",
        "--method",
        "clusters",
    ];
    refused(
        &[&clusters[..], &["--group", "5", "--total-reps", "3"]].concat(),
        &["a straight set"],
    );
    refused(
        &[&clusters[..6], &["--weeks", "4", "--fatigue", "w.svg"]].concat(),
        &["a picture holds one session"],
    );
    for (drawn, option, value) in [
        ("holders", "--region-share", "80%"),
        ("free-body", "--samples", "31"),
    ] {
        refused(
            &[
                "figure",
                "bench-press",
                "--draw",
                drawn,
                option,
                value,
                "-o",
                "a.svg",
            ],
            &["changes nothing without --draw curve"],
        );
    }
}

#[test]
fn fault_a_few_people_are_told_as_a_few() {
    let few = call(&["max", "biceps-curl", "--people", "1"]).done().out;
    assert!(few.contains("single people or between two"), "{few}");
    let many = call(&["max", "biceps-curl", "--people", "10"]).done().out;
    assert!(!many.contains("single people"), "{many}");
}

/// A line tells of work that is long by its own measure, and its time left is that of the rest at the same pace.
#[test]
fn law_the_time_left_follows_from_what_is_done() {
    use std::time::Duration;
    use torquill::narrative::waiting_words::waiting_in_words;
    for (passed, progress, words) in [
        (5, [1, 100], Some("working: 1 % done, some 9 minutes left")),
        (5, [1, 4], Some("working: 25 % done, some 15 seconds left")),
        (5, [3, 4], None),
        (5, [0, 4], Some("working for 5 s, and no part is done")),
        (3600, [1, 4], Some("some 3 hours left")),
    ] {
        let told = waiting_in_words(Duration::from_secs(passed), progress);
        match words {
            None => assert_eq!(told, None),
            Some(words) => assert!(
                told.clone().is_some_and(|told| told.contains(words)),
                "{told:?}"
            ),
        }
    }
}

/// Who asks for a maximum is warned of an odd lifter's file; a page, which could not hold it, is not written.
#[test]
fn fault_an_odd_lifter_is_warned_of_and_in_no_page() {
    let folder = tempfile::tempdir().expect("a folder");
    let shown = call(&["show", "lifters", "reference-man"]).done().out;
    let odd = shown.replace("sex: Man", "sex: Woman");
    std::fs::write(folder.path().join("me.ron"), odd).expect("written");
    let maximum = ["max", "biceps-curl", "--lifter", "me.ron"];
    let told = call_in(folder.path(), &maximum).done().complaint;
    assert!(
        told.contains("warning: ") && told.contains("is a table of the other sex"),
        "{told}"
    );
    let page = ["explore", "--lifter", "me.ron", "-o", "me.html"];
    let refused = call_in(folder.path(), &page);
    assert_eq!(refused.status, 2, "{}", refused.complaint);
    assert!(!folder.path().join("me.html").exists());
}
