//! How a plan goes on: from the last session of a novice's log, over every bar of a gym, up to the most that can be lowered, from
//! a session alone to a block.

use crate::calling::{Answer, call, call_in, in_one_line, json};
use proptest::prelude::{ProptestConfig, proptest};
use serde_json::Value;

/// Load and repetitions of the first working set.
fn work_of(session: &Value) -> (f64, u64) {
    let sets = session["sets"].as_array().expect("sets");
    let set = sets.iter().find(|set| set["kind"] == "work");
    let set = set.expect("a working set");
    let load = set["load_kg"].as_f64().expect("a load");
    (load, set["repetitions"].as_u64().expect("repetitions"))
}

/// A novice's plan from a log of squats.
fn novice(rows: &str, more: &[&str]) -> Answer {
    let folder = tempfile::tempdir().expect("a folder");
    let text = format!("date,lift,load (kg),repetitions,reserve\n{rows}");
    std::fs::write(folder.path().join("log.csv"), text).expect("written");
    let words = [
        "plan",
        "squat",
        "--log",
        "log.csv",
        "--training-months",
        "4",
    ];
    let words = [&words[..], &["--format", "json"], more].concat();
    call_in(folder.path(), &words).done()
}

/// Sets that rise to a load and repetitions, which are done once or twice.
fn goes_on(load: f64, count: u64, is_twice: bool) {
    let mut rows = format!(
        "2026-11-02,squat,{},{count},2\n2026-11-09,squat,{},{count},2\n",
        load - 5.0,
        load - 2.5
    );
    for day in ["2026-11-16", "2026-11-19"]
        .iter()
        .take(1 + usize::from(is_twice))
    {
        rows += &format!("{day},squat,{load},{count},2\n").repeat(3);
    }
    let today = novice(&rows, &[]).json();
    let first = novice(&rows, &["--weeks", "3"]).json();
    let now = work_of(&today["sessions"][0]);
    assert_eq!(now, work_of(&first["sessions"][0]), "{rows}");
    let next = match count {
        12 => (load + 2.5, 8),
        _ => (load, count + 1),
    };
    let known = if is_twice { next } else { (load, count) };
    let is_known = |(kg, times): &(f64, u64)| (kg - now.0).abs() < 1.0e-6 && *times == now.1;
    assert!(is_known(&known), "{now:?}: {rows}");
    let says = format!("every set reached {count} repetitions at {load} kg with 2 in reserve");
    assert!(today.to_string().contains(&says), "{says}: {today}");
}

proptest! {
    // Every case makes two whole plans.
    #![proptest_config(ProptestConfig::with_cases(3))]

    #[test]
    fn law_a_novices_log_goes_on_from_its_last_session(
        steps in 0..10_u32, count in 8..13_u64, is_twice: bool,
    ) {
        goes_on(40.0 + 2.5 * f64::from(steps), count, is_twice);
    }
}

#[test]
fn law_a_novice_who_reached_the_top_twice_goes_to_the_next_load() {
    goes_on(60.0, 12, true);
    goes_on(50.0, 8, false);
}

/// A failed set and a break are no session to go on from.
#[test]
fn fault_a_failed_set_is_not_gone_on_from() {
    // As many sets as are planned: one alone shows one.
    let last = "2026-11-09,squat,52.5,8,2\n".repeat(3);
    let rows = &format!("2026-11-02,squat,50,8,2\n{last}");
    let failed = novice(&format!("{rows}2026-11-16,squat,60,0,0\n"), &[]).json();
    let rested = novice(rows, &["--start", "2027-01-11"]).json();
    for answer in [failed, rested] {
        assert!(!answer.to_string().contains("The log goes on"), "{answer}");
        assert!(work_of(&answer["sessions"][0]).0 < 52.5, "{answer}");
    }
    // A slip does not count: the session before it is gone on from.
    for slip in [82.5, 525.0] {
        let rows = format!("{rows}2026-11-16,squat,{slip},8,2\n");
        let planned = work_of(&novice(&rows, &[]).json()["sessions"][0]).0;
        assert!((52.5..=57.5).contains(&planned), "{slip}: {planned}");
    }
    // Repetitions that were left are not repetitions that were lifted.
    let light = "2026-11-02,squat,60,3,9\n2026-11-09,squat,60,3,9\n";
    let answer = novice(light, &[]).json().to_string();
    assert!(!answer.contains("every set reached 10"), "{answer}");
}

const WOMAN: &str = "plan bench-press --one-rm 30kg --lifter reference-woman --training-months 6 --gym college-weight-room";

/// Between the loads of the light bar stands the heavier bar alone.
#[test]
fn law_a_heavier_bar_fills_the_steps_of_a_light_one() {
    let asked = |more: &str| {
        let words = format!("{WOMAN} {more}");
        json(&words.split_whitespace().collect::<Vec<_>>())
    };
    let block = asked("--weeks 4");
    let sessions = block["sessions"].as_array().expect("sessions");
    let loads: Vec<f64> = sessions.iter().map(|day| work_of(day).0).collect();
    assert!(loads.contains(&20.0), "{loads:?}");
    let exact = asked("--load 20kg");
    assert!((work_of(&exact["sessions"][0]).0 - 20.0).abs() < 1.0e-6);
    assert!(!exact.to_string().contains("cannot be set up here"));
    let between = asked("--load 21kg");
    assert!((work_of(&between["sessions"][0]).0 - 20.0).abs() < 1.0e-6);
    let says = "21 kg cannot be set up here: planned with the next load below, 20 kg.";
    assert!(between.to_string().contains(says), "{between}");
}

/// What a sheet of overloaded lowering says to add can be planned, and no step beyond it.
fn what_is_added_can_be_planned(one_rm: f64) {
    let one_rm = format!("{one_rm} kg");
    let words = [
        "plan",
        "bench-press",
        "--one-rm",
        &one_rm,
        "--training-months",
        "60",
    ];
    let words = [
        &words[..],
        &[
            "--method",
            "overloaded-lowering",
            "--gym",
            "college-weight-room",
        ],
    ]
    .concat();
    let answer = call(&[&words[..], &["--format", "json"]].concat());
    let answer = answer.done();
    let session = &answer.json()["sessions"][0];
    let says = session["progression"].as_str().expect("words");
    let most = regex::Regex::new("(?:up to|1RM:) ([0-9.]+) kg").expect("a pattern");
    let most = most.captures(says).unwrap_or_else(|| panic!("{says}"));
    let most: f64 = most[1].parse().expect("a load");
    let sets = session["sets"].as_array().expect("sets");
    let top = sets.iter().filter_map(|set| set["load_kg"].as_f64());
    let top = top.fold(0.0, f64::max);
    assert_eq!(
        says.starts_with("No step"),
        most <= top + 1.0e-6,
        "{says} {top}"
    );
    let with = |load: f64| {
        let load = format!("{load} kg");
        call(&[&words[..], &["--load", &load]].concat()).status
    };
    assert_eq!((with(most), with(most + 2.5)), (0, 1), "{one_rm}: {says}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3))]

    #[test]
    fn law_what_lowering_says_to_add_can_be_planned(one_rm in 120..170_u32) {
        what_is_added_can_be_planned(f64::from(one_rm));
    }
}

/// Every week of a novice tells of no repetitions but its own when it says what must be reached.
#[test]
fn law_a_novices_weeks_tell_one_rule() {
    let words = [
        "plan",
        "squat",
        "--one-rm",
        "70 kg",
        "--training-months",
        "3",
        "--weeks",
        "12",
    ];
    let answer = json(&words);
    let reaches = regex::Regex::new("reaches ([0-9]+)").expect("a pattern");
    for session in answer["sessions"].as_array().expect("sessions") {
        let says = session["progression"].as_str().expect("words");
        let told: Vec<u64> = reaches
            .captures_iter(says)
            .map(|found| found[1].parse().expect("a count"))
            .collect();
        assert_eq!(told, [work_of(session).1], "{says}");
    }
}

/// A block says what the session alone would be, and that one says that it is alone.
#[test]
fn law_a_session_alone_and_a_block_tell_their_difference() {
    let words = [
        "plan",
        "squat",
        "--one-rm",
        "200 kg",
        "--training-months",
        "72",
    ];
    let alone = json(&words);
    let block = json(&[&words[..], &["--weeks", "4"]].concat());
    let [one, first] = [&alone, &block].map(|answer| work_of(&answer["sessions"][0]));
    assert_ne!(one, first);
    let says = format!(
        "today's session would be {} kg × {}, by guidance",
        one.0, one.1
    );
    let told = in_one_line(&block.to_string());
    assert!(told.contains(&says), "{says}: {told}");
    assert!(
        told.contains(&format!("so {} kg × {}.", first.0, first.1)),
        "{told}"
    );
    assert!(alone.to_string().contains("This session stands alone"));
    assert!(!block.to_string().contains("This session stands alone"));
}

proptest! {
    /// No printed R² is more than it is, and none is off by a thousandth.
    #[test]
    fn law_an_r_squared_is_never_told_as_more(r_squared in 0.9..1.0_f64) {
        let told = torquill::narrative::log_words::r_squared_in_words(r_squared);
        let told: f64 = told.parse().expect("a number");
        assert!(told <= r_squared && told > r_squared - 0.001_001, "{told} {r_squared}");
        assert!(told < 1.0);
    }
}
