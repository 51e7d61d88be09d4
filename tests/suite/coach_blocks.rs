//! Blocks of weeks and careful people, as a coach would read them: loads that rise, dates, what an unwell or young lifter
//! gets, what a plan says of going on.

use crate::calling::{TRAINED_PRESS, call, call_in, in_one_line, json};
use proptest::prelude::{ProptestConfig, proptest};
use serde_json::Value;

/// The working sets of each session: its name, load, repetitions, reserve.
fn sessions(words: &[&str]) -> Vec<(String, f64, u64, u64)> {
    sessions_of(&json(words))
}

fn sessions_of(answer: &Value) -> Vec<(String, f64, u64, u64)> {
    let all = answer["sessions"].as_array().expect("sessions").clone();
    let of = |session: &Value| {
        let sets = session["sets"].as_array().expect("sets");
        let work = sets.iter().filter(|set| set["kind"] == "work");
        let top = work.max_by(|a, b| {
            let load = |set: &Value| set["load_kg"].as_f64().expect("a load");
            load(a).total_cmp(&load(b))
        });
        let top = top.expect("a working set");
        (
            session["session"].as_str().expect("a name").to_owned(),
            top["load_kg"].as_f64().expect("a load"),
            top["repetitions"].as_u64().expect("repetitions"),
            top["reserve"].as_u64().expect("a reserve"),
        )
    };
    all.iter().map(of).collect()
}

/// A novice's weeks do not go back: a lift, a lifter, the share of a usual 1RM, how many weeks.
fn weeks_never_go_back((lift, lifter, share): (usize, usize, f64), until: usize) {
    let (lift, usual) = [
        ("squat", 75.0),
        ("bench-press", 55.0),
        ("overhead-press", 35.0),
        ("biceps-curl", 15.0),
    ][lift];
    let lifter = ["reference-man", "tall-novice", "reference-woman"][lifter];
    let (one_rm, weeks) = (format!("{:.1} kg", usual * share), until.to_string());
    let who = ["plan", lift, "--lifter", lifter, "--one-rm", &one_rm];
    let more = ["--training-months", "0", "--weeks", &weeks];
    let called = call(&[&who[..], &more, &["--format", "json"]].concat());
    // Nothing that light can be loaded for some: told, not planned.
    if called.status != 0 {
        assert_eq!(called.status, 1, "{}", called.complaint);
        return;
    }
    let weeks = sessions_of(&called.json());
    // What the log decides stands once, for the weeks up to the last.
    assert!((2..=2 * until).contains(&weeks.len()), "{weeks:?}");
    let last = &weeks.last().expect("weeks").0;
    assert!(last.contains(&format!("{until}, day 4")), "{last}");
    for pair in weeks.windows(2) {
        let ((_, before, many, _), (name, load, count, reserve)) = (&pair[0], &pair[1]);
        let who = format!("{lift} {lifter} {one_rm} {name}");
        assert!(load >= before, "{who}: {load} after {before}");
        assert!(
            load > before || count >= many,
            "{who}: {count} after {many}"
        );
        assert!(*reserve >= 2, "{who}");
    }
}

proptest! {
    // Every case makes the plans of a block.
    #![proptest_config(ProptestConfig::with_cases(6))]

    /// From week to week a novice's load never falls; at one load the repetitions never fall.
    #[test]
    fn law_a_novices_weeks_never_go_back(who in (0..4_usize, 0..3_usize, 0.6..1.3_f64), weeks in 4..13_usize) {
        weeks_never_go_back(who, weeks);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    #[ignore = "48 blocks: nightly"]
    fn law_no_novices_weeks_go_back(who in (0..4_usize, 0..3_usize, 0.6..1.3_f64), weeks in 4..13_usize) {
        weeks_never_go_back(who, weeks);
    }
}

/// A novice's weeks rise every week: repetitions at a load, then the next load with the fewest again; where they stand
/// still it is because neither the next repetitions nor the next load keep two in reserve today.
#[test]
fn law_a_novices_weeks_rise_to_the_last() {
    for (lift, one_rm, weeks) in [
        ("squat", "80 kg", "4"),
        ("squat", "80 kg", "12"),
        ("bench-press", "60 kg", "6"),
        ("deadlift", "100 kg", "8"),
        ("overhead-press", "45 kg", "4"),
    ] {
        let words = ["plan", lift, "--one-rm", one_rm, "--weeks", weeks];
        let sessions = sessions(&words);
        let main: Vec<_> = sessions.iter().step_by(2).collect();
        assert!(main.len() >= 2, "{lift} {one_rm}: {main:?}");
        for pair in main.windows(2) {
            let ((_, before, many, _), (name, load, count, _)) = (pair[0], pair[1]);
            let rises = (load == before && count > many) || (load > before && *count == 8);
            let tried = |load: f64, count: u64| {
                let (load, count) = (format!("{load} kg"), count.to_string());
                let more = ["--load", &load, "--reps", &count, "--sets", "3"];
                call(&[&words[..4], &more].concat()).status
            };
            if !rises {
                assert!(name.starts_with("Weeks "), "{lift} {one_rm}: {main:?}");
                let next = (many + 2, load + 2.5);
                assert!(next.0 > 12 || tried(*load, next.0) == 1, "{lift}: {main:?}");
                assert_eq!(tried(next.1, 8), 1, "{lift}: {main:?}");
            }
        }
        let told = call(&words).done().out;
        let begins = format!("The weeks begin at {} kg", main[0].1);
        assert!(in_one_line(&told).contains(&begins), "{begins}: {told}");
    }
}

#[test]
fn law_a_trained_lifters_method_comes_back_heavier_every_round() {
    for method in ["pyramid", "clusters"] {
        let weeks = sessions(&[
            "plan",
            "bench-press",
            "--one-rm",
            "140 kg",
            "--training-months",
            "60",
            "--method",
            method,
            "--weeks",
            "12",
        ]);
        let main: Vec<f64> = weeks
            .iter()
            .filter(|week| week.0.contains(&format!("{method} day")))
            .map(|week| week.1)
            .collect();
        assert_eq!(main.len(), 9, "{weeks:?}");
        for pair in main.chunks(3).collect::<Vec<_>>().windows(2) {
            assert!(pair[1][2] > pair[0][2], "{method}: {main:?}");
        }
    }
}

#[test]
fn law_a_block_with_a_first_day_has_dates() {
    let words = [
        "plan",
        "squat",
        "--one-rm",
        "140 kg",
        "--training-months",
        "30",
        "--weeks",
        "5",
        "--start",
        "2024-02-26",
    ];
    let answer = json(&words);
    let dates: Vec<&str> = answer["sessions"]
        .as_array()
        .expect("sessions")
        .iter()
        .map(|session| session["date"].as_str().expect("a date"))
        .collect();
    // 2024 has a 29 February.
    assert_eq!(
        dates[..5],
        [
            "2024-02-26",
            "2024-02-29",
            "2024-03-04",
            "2024-03-07",
            "2024-03-11"
        ]
    );
    let table = call(&words);
    assert!(
        table.out.contains("Week 1, day 4, 2024-02-29"),
        "{}",
        table.out
    );
    let csv = call(&[&words[..], &["--format", "csv"]].concat()).out;
    assert!(csv.lines().nth(1).expect("a row").contains("2024-02-26"));
}

#[test]
fn fault_a_first_day_that_is_none() {
    for (date, says) in [
        ("2023-02-29", "that month has 28 days"),
        ("1.8.2026", "no date"),
    ] {
        let told = call(&["plan", "squat", "--weeks", "4", "--start", date]);
        assert_eq!(told.status, 2);
        assert!(told.complaint.contains(says), "{}", told.complaint);
    }
    assert_eq!(call(&["plan", "squat", "--start", "2026-01-01"]).status, 2);
}

#[test]
fn law_the_unwell_get_less_of_everything() {
    for extra in [&[][..], &["--method", "clusters"], &["--weeks", "2"]] {
        let words = [
            &[
                "plan",
                "bench-press",
                "--one-rm",
                "100 kg",
                "--training-months",
                "24",
            ],
            extra,
        ]
        .concat();
        let well = sessions(&words);
        let unwell_words = [&words[..], &["--unwell"]].concat();
        let unwell = sessions(&unwell_words);
        assert!(unwell[0].1 < well[0].1, "{extra:?}: {unwell:?} {well:?}");
        assert!(unwell[0].3 >= 2);
        let told = call(&unwell_words);
        assert!(told.out.contains("a lighter session"), "{}", told.out);
        if extra.contains(&"--weeks") {
            assert!(unwell[2].1 < well[2].1, "half way back in the second week");
        }
    }
}

#[test]
fn law_the_old_and_novices_keep_repetitions_in_reserve() {
    for who in [
        ["--age", "71", "--training-months", "200"],
        ["--age", "30", "--training-months", "0"],
    ] {
        let words = [
            &["plan", "bench-press", "--one-rm", "100 kg", "--rir", "0"],
            &who[..],
        ]
        .concat();
        let answer = sessions(&words);
        assert!(answer[0].3 >= 2, "{who:?}");
        assert!(answer[0].1 <= 70.0, "{who:?}: {answer:?}");
        let told = call(&words).out;
        assert!(told.contains("2 in reserve instead of 0"), "{told}");
    }
    // Somebody trained may go to failure.
    let trained = sessions(&[
        "plan",
        "bench-press",
        "--one-rm",
        "100 kg",
        "--training-months",
        "30",
        "--rir",
        "0",
    ]);
    assert_eq!(trained[0].3, 0);
}

#[test]
fn law_going_on_is_told_by_the_load_and_with_the_reserve() {
    let answer = json(&[
        "plan",
        "squat",
        "--one-rm",
        "60 kg",
        "--training-months",
        "0",
        "--reps",
        "8",
    ]);
    let session = &answer["sessions"][0];
    let sets = session["sets"].as_array().expect("sets");
    let work = sets.iter().find(|set| set["kind"] == "work").expect("work");
    let (load, count) = (
        work["load_kg"].as_f64().expect("a load"),
        work["repetitions"].as_u64().expect("repetitions"),
    );
    let told = session["progression"].as_str().expect("words");
    let shown = |kg: f64| format!("{}", (10.0 * kg).round() / 10.0);
    for part in [
        format!("When {} repetitions with 2 in reserve", count + 2),
        format!("{} kg to {} kg", shown(0.02 * load), shown(0.1 * load)),
        format!(
            "the lightest load here that is 2 % more is {} kg",
            shown(load + 2.5)
        ),
    ] {
        assert!(told.contains(&part), "{part}: {told}");
    }
}

#[test]
fn law_a_log_is_planned_from_as_progress_reads_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let rows: String = (1..=6)
        .flat_map(|day| {
            [
                format!("{day}/8/2026;Back squat;{};5;Mia\n", 100 + day),
                format!("{day}/8/2026;Back squat;60;5;Tom\n"),
            ]
        })
        .collect();
    let text = format!("Day;Exercise;Weight (kg);Reps;Athlete\n{rows}");
    std::fs::write(folder.path().join("log.csv"), text).expect("written");
    let base = [
        "plan",
        "squat",
        "--log",
        "log.csv",
        "--training-months",
        "12",
    ];
    for (more, says) in [
        (&["--dates", "day-first"][..], "--athlete"),
        (&["--athlete", "Mia"][..], "--dates"),
    ] {
        let told = call_in(folder.path(), &[&base[..], more].concat());
        assert_eq!(told.status, 2, "{}", told.out);
        assert!(told.complaint.contains(says), "{}", told.complaint);
    }
    let read = [&base[..], &["--athlete", "Mia", "--dates", "day-first"]].concat();
    let told = call_in(folder.path(), &read);
    assert_eq!(told.status, 0, "{}", told.complaint);
    assert!(told.out.contains("from the log"), "{}", told.out);
    let alone = call(&["plan", "squat", "--athlete", "Mia"]);
    assert_eq!(alone.status, 2, "an athlete without a log");
}

#[test]
fn law_every_plan_in_one_says_the_plain_one_once() {
    let all = sessions(&[
        "plan",
        "squat",
        "--one-rm",
        "60 kg",
        "--training-months",
        "0",
        "--method",
        "all",
    ]);
    assert_eq!(all.len(), 1, "{all:?}");
}

#[test]
fn law_supramaximal_days_climb_to_the_one_rm_first() {
    let answer = json(&[&TRAINED_PRESS[..], &["--method", "overloaded-lowering"]].concat());
    let sets = answer["sessions"][0]["sets"].as_array().expect("sets");
    let first = sets.iter().position(|set| set["kind"] == "work");
    let before = &sets[first.expect("work") - 1];
    let load = before["load_kg"].as_f64().expect("a load");
    assert!((136.0..=140.0).contains(&load), "{before}");
    assert_eq!(before["repetitions"], 1);
}

#[test]
fn law_bars_on_the_floor_without_full_plates_are_told_to_stand_on_blocks() {
    let deadlift = call(&["plan", "deadlift", "--one-rm", "60 kg"]).out;
    assert!(deadlift.contains("set it on blocks"), "{deadlift}");
    let squat = call(&["plan", "squat", "--one-rm", "60 kg"]).out;
    assert!(!squat.contains("set it on blocks"), "{squat}");
}
