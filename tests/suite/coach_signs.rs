//! What a coach of many years would not sign: a bar that nobody can hold, an age, an old log, a start below what was lifted, too
//! few warm-ups, a step that the gym cannot make.

use crate::calling::{HEAVY_SQUAT, TRAINED_PRESS, call, call_in, in_one_line, json, refused};
use proptest::prelude::*;
use std::path::Path;
use torquill::progress::day::Day;
use torquill::progress::one_rm_now::{LAY_OFF_DAYS, LayOff, MOST_LOST, OLDEST_LOG_DAYS};
use torquill::session::spotting::HELD_BY_EACH_KG;

/// The first group of a pattern as a number, in a text of one line.
#[track_caller]
fn number(text: &str, pattern: &str) -> f64 {
    let found = numbers(text, pattern);
    *found
        .first()
        .unwrap_or_else(|| panic!("no {pattern} in {text}"))
}

fn numbers(text: &str, pattern: &str) -> Vec<f64> {
    let pattern = regex::Regex::new(pattern).expect("a pattern");
    let found = pattern.captures_iter(text);
    found
        .map(|found| found[1].parse().expect("a number"))
        .collect()
}

/// The text of a call that ends well, in one line.
#[track_caller]
fn said(arguments: &[&str]) -> String {
    in_one_line(&call(arguments).done().out)
}

/// What is lowered is held by helpers who can hold all of it, or stands on the arms after every single lowering.
#[test]
fn law_nobody_holds_a_lost_bar_that_is_too_heavy() {
    let mut seen = [0, 0];
    for lift in ["squat", "bench-press"] {
        for one_rm in [80, 130, 149, 160, 200, 230] {
            let one_rm = format!("{one_rm} kg");
            let words = [
                "plan",
                lift,
                "--lifter",
                "heavy-lifter",
                "--one-rm",
                &one_rm,
            ];
            let words = [&words[..], &["--method", "overloaded-lowering"]].concat();
            if call(&words).status != 0 {
                continue;
            }
            let text = said(&words);
            let answer = json(&words);
            let sets = answer["sessions"][0]["sets"].as_array().expect("sets");
            let work = || sets.iter().filter(|set| set["kind"] == "work");
            let heaviest = work()
                .filter_map(|set| set["load_kg"].as_f64())
                .fold(0.0, f64::max);
            let is_held = heaviest <= 3.0 * HELD_BY_EACH_KG;
            seen[usize::from(is_held)] += 1;
            assert_eq!(
                text.contains("falls to each of 3 helpers"),
                is_held,
                "{text}"
            );
            assert_eq!(
                text.contains("Nobody holds or lifts this bar"),
                !is_held,
                "{text}"
            );
            assert_eq!(
                text.contains("helpers take the load at once"),
                is_held,
                "{text}"
            );
            if !is_held {
                let most = work().filter_map(|set| set["repetitions"].as_u64()).max();
                assert_eq!(most, Some(1), "{answer}");
                assert!(
                    text.contains("spotters: 2, one at each end of the bar"),
                    "{text}"
                );
                let left = number(&text, r"take plates off to ([0-9.]+) kg or less");
                assert!(left < 0.71 * heaviest, "{text}");
            }
        }
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

proptest! {
    /// A lay-off costs nothing up to four weeks and then more with every day, up to a bound.
    #[test]
    fn law_a_lay_off_costs_the_more_the_longer(first in 1_u32..900, more in 1_u32..400) {
        let from = Day::from_date(2020, 1, 1).expect("a day");
        let lay_off = |days: u32| LayOff { from, to: from.after(days).expect("a day") };
        let (short, long) = (lay_off(first), lay_off(first + more));
        prop_assert!(long.kept() <= short.kept());
        prop_assert_eq!(short.kept() >= 1.0, short.days() <= LAY_OFF_DAYS);
        prop_assert!(long.kept() >= 1.0 - MOST_LOST - 1.0e-12);
        if long.kept() > 1.0 - MOST_LOST && long.days() > LAY_OFF_DAYS {
            prop_assert!(long.kept() < short.kept());
        }
    }
}

const LOG: &str = "date,lift,load,reps,rir\n2024-05-01,bench press,40 kg,8,2\n";

fn log_of(folder: &Path, last: &str) {
    std::fs::write(folder.join("log.csv"), format!("{LOG}{last}")).expect("a file");
}

/// A plan counts on less of a log the older it is, and after two years on nothing.
#[test]
fn law_an_older_log_is_planned_lighter_and_then_not_at_all() {
    let folder = tempfile::tempdir().expect("a folder");
    log_of(folder.path(), "2024-05-04,bench press,42.5 kg,8,2\n");
    let ask = |start: &str| {
        let words = [
            "plan",
            "bench-press",
            "--lifter",
            "reference-woman",
            "--log",
            "log.csv",
        ];
        call_in(folder.path(), &[&words[..], &["--start", start]].concat())
    };
    let one_rm = |start: &str| number(&in_one_line(&ask(start).done().out), r"1RM ([0-9.]+) kg");
    let shown = ["2024-05-20", "2024-07-01", "2024-12-01", "2025-12-01"].map(one_rm);
    assert!(
        shown.is_sorted_by(|earlier, later| earlier > later),
        "{shown:?}"
    );
    let last = Day::from_date(2024, 5, 4).expect("a day");
    let limit = u32::try_from(OLDEST_LOG_DAYS).expect("days");
    let at = |days: u32| last.after(days).expect("a day").to_string();
    ask(&at(limit)).done();
    for start in [at(limit + 1), "2090-01-01".to_owned()] {
        let refused = ask(&start);
        assert_eq!(refused.status, 1, "{}", refused.out);
        let told = in_one_line(&refused.complaint);
        assert!(
            told.contains("nobody knows") && told.contains("--one-rm"),
            "{told}"
        );
    }
}

/// A novice whose sets fell short of the fewest repetitions goes on from what they show by the chart, not from far below.
#[test]
fn law_a_novice_goes_on_from_what_was_lifted() {
    for (last, least_kg) in [
        ("2024-05-04,bench press,42.5 kg,8,2\n", 42.5),
        ("2024-05-04,bench press,42.5 kg,8,1\n", 40.0),
        ("2024-05-04,bench press,42.5 kg,8,0\n", 37.5),
        (
            "2024-05-04,bench press,42.5 kg,8,2\n2024-05-04,bench press,42.5 kg,7,1\n",
            37.5,
        ),
        ("2024-05-04,bench press,42.5 kg,5,2\n", 37.5),
    ] {
        let folder = tempfile::tempdir().expect("a folder");
        log_of(folder.path(), &last.repeat(3));
        let words = [
            "plan",
            "bench-press",
            "--lifter",
            "reference-woman",
            "--log",
            "log.csv",
        ];
        let words = [&words[..], &["--training-months", "3"]].concat();
        let text = in_one_line(&call_in(folder.path(), &words).done().out);
        let load = number(&text, r"1 to 3 ([0-9.]+) kg");
        assert!((least_kg..=42.5).contains(&load), "{last}: {load}: {text}");
        assert!(text.contains("The log goes on: on 2024-05-04"), "{text}");
    }
}

/// A plan tells the height of the safety arms that a pick tells of the same lift, lifter and gym.
#[test]
fn law_a_plan_and_a_pick_set_the_arms_alike() {
    for lift in ["squat", "bench-press"] {
        let of = ["--lifter", "heavy-lifter", "--gym", "college-weight-room"];
        let pick = said(&[&["pick", lift][..], &of].concat());
        let plan = said(&[&["plan", lift, "--one-rm", "140 kg"][..], &of].concat());
        let height = number(&plan, r"Safety arms at ([0-9]+) cm");
        let told = numbers(&pick, r"at ([0-9]+) cm, [0-9]+ cm below the bar");
        assert_eq!(told.first(), Some(&height), "{pick}: {plan}");
    }
    let without = said(&[&HEAVY_SQUAT[..]].concat());
    assert!(!without.contains("Safety arms at"), "{without}");
}

/// Warm-ups with bands climb to what is felt at the top, however light the plates: none is a leap, none above the 1RM.
#[test]
fn law_warm_ups_with_heavy_bands_climb_to_what_is_felt() {
    for band in ["loop-45mm:1", "loop-64mm:1", "loop-45mm:2"] {
        let text = said(&[&HEAVY_SQUAT[..], &["--band", band, "--method", "bands"]].concat());
        let tops = numbers(&text, r"kg \(([0-9]+) %\) at the top");
        let (work, warm_ups) = tops.split_last().expect("sets");
        assert!(warm_ups.len() >= 3, "{tops:?}");
        assert!(
            warm_ups.is_sorted() && warm_ups.iter().all(|top| *top <= 100.0),
            "{tops:?}"
        );
        assert!(warm_ups[0] <= 0.62 * work, "{tops:?}");
        let steps = tops.windows(2).map(|pair| pair[1] - pair[0]);
        assert!(steps.fold(0.0, f64::max) <= 0.25 * work, "{tops:?}");
    }
}

/// A remark on a pyramid says what its table says: the top set keeps one, the others two.
#[test]
fn law_a_pyramids_note_agrees_with_its_table() {
    let words = ["--one-rm", "150 kg", "--method", "pyramid"];
    let text = said(
        &[
            &["plan", "bench-press", "--lifter", "heavy-lifter"],
            &words[..],
        ]
        .concat(),
    );
    assert!(text.contains("top set, at least 1 in reserve"), "{text}");
    assert!(!text.contains("keeps 2 in reserve in every set"), "{text}");
    assert!(
        text.contains("keeps in every set what is planned in reserve"),
        "{text}"
    );
}

/// Where the next load is far, repetitions come first, and the load is named with what it is more.
#[test]
fn law_a_far_step_is_told_as_what_it_is() {
    let of = [
        "plan",
        "lateral-raise",
        "--lifter",
        "reference-woman",
        "--one-rm",
        "4 kg",
    ];
    for months in ["1", "12"] {
        let text = said(&[&of[..], &["--training-months", months]].concat());
        let load = number(&text, r"1 to [0-9] ([0-9.]+) kg");
        let next = number(&text, r"The next load here is ([0-9.]+) kg");
        let more = number(&text, r"The next load here is [0-9.]+ kg, ([0-9]+) % more");
        assert!((100.0 * (next / load - 1.0) - more).abs() < 0.51, "{text}");
        assert!(more > 10.0 && !text.contains("raise the load by"), "{text}");
        assert!(!text.contains(&format!("go to {next} kg with")), "{text}");
    }
    let near = said(&[&TRAINED_PRESS[..]].concat());
    assert!(
        near.contains("raise the load by 2 to 10 %") && !near.contains("The next load here is")
    );
}

/// A total of a session is told in whole pounds.
#[test]
fn law_totals_are_in_whole_pounds() {
    let text = said(&[&HEAVY_SQUAT[..], &["--units", "us"]].concat());
    assert!(
        regex_found(&text, r", [0-9]+ lb in the working sets"),
        "{text}"
    );
}

fn regex_found(text: &str, pattern: &str) -> bool {
    regex::Regex::new(pattern)
        .expect("a pattern")
        .is_match(text)
}

/// The strength that a small maximum implies is found, and has that maximum; the body alone is a maximum, too.
#[test]
fn law_small_maxima_have_their_strength() {
    for (lift, load) in [
        ("squat", 30.0),
        ("squat", 12.0),
        ("bench-press", 10.0),
        ("pull-up", 0.0),
    ] {
        let known = format!("{load} kg");
        let of = ["max", lift, "--lifter", "heavy-lifter"];
        let answer = json(&[&of[..], &["--to-load", &known]].concat());
        let scale = answer["summary"]["strength_scale"]
            .as_f64()
            .expect("a scale");
        let set = format!("lifter.strength_scale={scale}");
        let found = json(&[&of[..], &["--set", &set]].concat());
        let kg = found["summary"]["one_rm_kg"].as_f64().expect("a maximum");
        assert!((kg - load).abs() < 0.2, "{lift}: {kg} {load}");
    }
}

/// The page of who is planned nothing says why and what to do.
#[test]
fn law_the_page_of_the_injured_and_ill_says_what_to_do() {
    let folder = tempfile::tempdir().expect("a folder");
    let team = "name,sex,mass,height,training_months,injured,unwell,squat,bench-press\n\
        Ill (invented),man,80 kg,1.80 m,36,no,yes,150 kg,\n\
        Hurt (invented),man,80 kg,1.80 m,36,yes,no,150 kg,100 kg\n";
    std::fs::write(folder.path().join("t.csv"), team).expect("a file");
    call_in(
        folder.path(),
        &["plan", "all", "--team", "t.csv", "-o", "sheets"],
    )
    .done();
    let page = |name: &str| {
        std::fs::read_to_string(folder.path().join("sheets").join(name)).expect("a page")
    };
    let hurt = page("hurt-invented.html");
    assert!(
        hurt.contains("nothing planned") && hurt.contains("see a clinician first"),
        "{hurt}"
    );
    assert!(hurt.contains("Squat and bench-press: "), "{hurt}");
    let ill = page("ill-invented.html");
    assert!(
        ill.contains("Bench-press: ") && ill.contains("wait until recovered"),
        "{ill}"
    );
}

/// After a lay-off one session stands in place of every method, and says so.
#[test]
fn law_one_session_for_all_methods_names_them() {
    let words = [
        "plan",
        "squat",
        "--lifter",
        "heavy-lifter",
        "--log",
        "gappy",
        "--method",
        "all",
    ];
    let text = said(&[&words[..], &["--start", "2024-12-01"]].concat());
    for method in ["pyramid", "clusters", "bands", "chains"] {
        let after = text.split("stands in place of ").nth(1).expect("a note");
        let note = after.split(':').next().expect("its methods");
        let is_refused = text.contains(&format!("not planned: {method}"));
        assert!(is_refused || note.contains(method), "{method}: {text}");
    }
}

/// No barbell maximum above every record; and huge help from above goes with what is left when it goes.
#[test]
fn fault_loads_beyond_people() {
    let heavy = ["plan", "squat", "--lifter", "heavy-lifter", "--one-rm"];
    refused(
        &[&heavy[..], &["700 kg"]].concat(),
        &["no load that anybody lifts", "650 kg"],
    );
    for (command, load) in [("max", &[][..]), ("rep", &["--load", "110 kg"])] {
        let with = [
            &[command, "squat", "--band", "loop-102mm:2@rack-high"][..],
            load,
        ]
        .concat();
        let text = said(&with);
        let left = number(&text, r"If the bands go, ([0-9.]+) kg are left");
        let plain = number(
            &text,
            r"of the ([0-9.]+) kg that this lifter lifts without them",
        );
        assert!(left > plain, "{text}");
    }
    let thin = said(&[
        "rep",
        "squat",
        "--band",
        "loop-14mm:1@rack-high",
        "--load",
        "50 kg",
    ]);
    assert!(!thin.contains("If the bands go"), "{thin}");
}

/// The attempts of a test reach the upper end of what is expected by steps that are told.
#[test]
fn law_a_test_reaches_what_is_expected() {
    let folder = tempfile::tempdir().expect("a folder");
    let team = "name,sex,mass,height,training_months,squat,bench-press,deadlift\n\
        A,man,80 kg,1.80 m,36,150 kg,,180 kg\nB,woman,60 kg,1.65 m,36,,,\nC,man,75 kg,1.75 m,2,,40 kg,\n";
    std::fs::write(folder.path().join("t.csv"), team).expect("a file");
    call_in(
        folder.path(),
        &["plan", "all", "--team", "t.csv", "-o", "sheets"],
    )
    .done();
    let mut seen = 0;
    for name in ["a", "b", "c"] {
        let page = std::fs::read_to_string(folder.path().join(format!("sheets/{name}.html")));
        let page = page.expect("a page");
        for section in page
            .split("<section")
            .filter(|one| one.contains(" kg first"))
        {
            let first = number(section, r"([0-9.]+) kg first");
            let step = number(section, r"add up to ([0-9]+) %");
            let attempts = number(
                section,
                r": ([0-9]+) (?:attempts|sets) by the largest steps",
            );
            let reaches = number(section, r"reach ([0-9.]+) kg");
            let most = first * (1.0 + (step + 0.5) / 100.0).powf(attempts - 1.0);
            assert!(
                step <= 20.0 && most >= reaches,
                "{first} {step} {attempts} {reaches}"
            );
            let expected = number(section, r"lifts ([0-9.]+) kg in the simulation");
            assert!(reaches > 0.8 * expected, "{reaches} {expected}");
            seen += 1;
        }
    }
    assert!(seen >= 5, "{seen}");
}

/// Two lifts of the legs with heavy sets come on days of their own, each planned rested.
#[test]
fn law_two_heavy_lifts_of_the_legs_come_apart() {
    let folder = tempfile::tempdir().expect("a folder");
    let team = "name,sex,mass,height,training_months,squat,deadlift\nA,man,80 kg,1.80 m,36,150 kg,180 kg\n";
    std::fs::write(folder.path().join("t.csv"), team).expect("a file");
    let told = call_in(
        folder.path(),
        &["plan", "all", "--team", "t.csv", "-o", "sheets"],
    )
    .done();
    let told = in_one_line(&told.out);
    assert!(
        regex_found(&told, r"day A: squat \(.*day B: deadlift \("),
        "{told}"
    );
}

/// A gym's file that was just written is found by what the message says.
#[test]
fn fault_a_gym_of_ones_own_without_its_ending() {
    let folder = tempfile::tempdir().expect("a folder");
    call_in(folder.path(), &["gym", "-o", "home.ron"]).done();
    let answer = call_in(folder.path(), &["pick", "squat", "--gym", "home"]);
    assert_eq!(answer.status, 2);
    let told = in_one_line(&answer.complaint);
    assert!(
        told.contains("home.ron is named by its path, with its ending"),
        "{told}"
    );
    call_in(folder.path(), &["pick", "squat", "--gym", "home.ron"]).done();
}

/// So many repetitions are planned for nobody; the most of the sets and of their repetitions alone are.
#[test]
fn fault_hundreds_of_repetitions_are_planned_for_nobody() {
    let plan = |sets: &str, reps: &str| {
        let words = [
            "plan",
            "squat",
            "--one-rm",
            "210 kg",
            "--training-months",
            "120",
        ];
        call(&[&words[..], &["--sets", sets, "--reps", reps]].concat())
    };
    for (sets, reps) in [("12", "30"), ("10", "20"), ("11", "11")] {
        let answer = plan(sets, reps);
        assert_eq!(answer.status, 2, "{}", answer.out);
        let told = in_one_line(&answer.complaint);
        assert!(
            told.contains("a session is planned with at most 120"),
            "{told}"
        );
    }
    for (sets, reps) in [("12", "10"), ("4", "30")] {
        let answer = plan(sets, reps);
        assert!(
            !answer.complaint.contains("at most 120"),
            "{}",
            answer.complaint
        );
    }
}

/// Who comes back takes no week early.
#[test]
fn law_who_is_unwell_takes_no_week_early() {
    let words = [
        "plan",
        "squat",
        "--one-rm",
        "120 kg",
        "--training-months",
        "48",
        "--weeks",
        "4",
    ];
    let early = "Take the next week's loads early";
    let well = in_one_line(&call(&words).done().out);
    assert!(well.contains(early), "{well}");
    let unwell = call(&[&words[..], &["--unwell"]].concat()).done().out;
    let unwell = in_one_line(&unwell);
    // The first week is of who is not well yet.
    let first = unwell.find("As the weeks say").expect("a rule");
    assert!(
        unwell[first..].starts_with("As the weeks say, none early"),
        "{unwell}"
    );
}
