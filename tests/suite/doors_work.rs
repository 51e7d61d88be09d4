//! What is told before the work, or instead of it: advice that can be followed, work that is bounded.

use crate::calling::{call, call_in};
use proptest::test_runner::{Config, TestRunner};
use std::cell::Cell;

#[test]
fn fault_advice_names_no_value_that_is_refused() {
    let known = 0.3_f64..8.0;
    let lifts = [
        ("bench-press", 62.0),
        ("squat", 100.0),
        ("biceps-curl", 10.0),
        ("calf-raise", 70.0),
    ];
    let [taken, refused] = [const { Cell::new(0) }; 2];
    let mut runner = TestRunner::new(Config {
        cases: Config::default().cases.min(12),
        ..Config::default()
    });
    let cases = (known, 0..lifts.len());
    runner
        .run(&cases, |(times, lift)| {
            let (lift, usual_kg) = lifts[lift];
            let load = format!("{:.1} kg", times * usual_kg);
            let answer = call(&["max", lift, "--to-load", &load]);
            let Some((_, advice)) = answer.out.split_once("--set ") else {
                refused.set(refused.get() + 1);
                let summary = call(&["max", lift, "--to-load", &load, "--format", "json"]);
                if summary.status == 0 {
                    let scale = &summary.json()["summary"]["strength_scale"];
                    let set = format!(
                        "lifter.strength_scale={:.4}",
                        scale.as_f64().expect("a number")
                    );
                    let tried = call(&["max", lift, "--set", &set]);
                    assert_eq!(tried.status, 2, "{answer:?} {tried:?}");
                    assert!(answer.out.contains(" is refused."), "{answer:?}");
                }
                return Ok(());
            };
            taken.set(taken.get() + 1);
            let set = advice.lines().next().expect("a line");
            call(&["max", lift, "--set", set]).done();
            Ok(())
        })
        .expect("every advice can be followed");

    let [taken, refused] = [taken, refused].map(Cell::into_inner);
    assert!(taken > 0 && refused > 0, "{taken} taken, {refused} refused");
}

#[test]
fn fault_nobody_turns_a_joint_at_any_speed() {
    for speed in ["--speed=1501 deg/s", "--speed=-900 rad/s"] {
        let told = call(&["curve", "knee-extension", speed]);
        assert_eq!(told.status, 2, "{told:?}");
        assert!(
            told.complaint.contains("nobody turns a joint at"),
            "{told:?}"
        );
    }
    call(&["curve", "knee-extension", "--speed=300 deg/s"]).done();
}

#[test]
fn fault_a_team_of_more_plans_than_are_made_is_refused_before_any_is() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut team = "name,sex,mass (kg),height (cm),squat (kg),bench-press (kg),row (kg),deadlift (kg),leg-press (kg)\n".to_owned();
    for number in 0..401 {
        team += &format!("P{number},man,80,180,100,80,60,120,150\n");
    }
    std::fs::write(folder.path().join("team.csv"), team).expect("a file");
    let all = call_in(
        folder.path(),
        &["plan", "all", "--team", "team.csv", "-o", "sheets"],
    );
    assert_eq!(all.status, 2, "{all:?}");
    assert!(
        all.complaint.contains("2005 plans") && all.complaint.contains("at most 2000"),
        "{all:?}"
    );
    assert!(!folder.path().join("sheets").exists());
}

#[test]
fn fault_a_sheet_that_is_there_is_told_before_a_team_is_planned_for() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    let mut team = "name,sex,mass (kg),height (cm),squat (kg)\n".to_owned();
    for number in 0..300 {
        team += &format!("P{number},man,80,180,100\n");
    }
    std::fs::write(here.join("team.csv"), team).expect("a file");
    std::fs::create_dir(here.join("sheets")).expect("a folder");
    std::fs::write(here.join("sheets/p7.html"), "theirs").expect("a file");
    let asked = call_in(
        here,
        &["plan", "squat", "--team", "team.csv", "-o", "sheets"],
    );
    assert_eq!(asked.status, 2, "{asked:?}");
    assert!(asked.complaint.contains("p7.html"), "{asked:?}");
    let left = std::fs::read_dir(here.join("sheets"))
        .expect("a folder")
        .count();
    assert_eq!(left, 1);
}

#[test]
fn fault_a_file_may_not_ask_for_a_quarter_of_an_hour() {
    let folder = tempfile::tempdir().expect("a folder");
    let small = [
        "max",
        "biceps-curl",
        "--people",
        "3",
        "--format",
        "json",
        "--provenance",
    ];
    let said = call(&small).done().out;
    let grown = |people: &str| said.replace("\"3\"", &format!("\"{people}\""));
    for (people, status) in [("3", 0), ("5001", 2), ("100000", 2)] {
        std::fs::write(folder.path().join("a.json"), grown(people)).expect("a file");
        let again = call_in(folder.path(), &["again", "a.json"]);
        assert_eq!(again.status, status, "{again:?}");
        let is_told = again.complaint.contains("a file may ask for 5000");
        assert_eq!(is_told, status == 2, "{again:?}");
    }
}

#[test]
fn fault_of_a_log_of_many_lifts_a_dozen_are_named() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = "date,lift,load,repetitions\n".to_owned();
    for number in 0..3000 {
        log += &format!("2026-03-02,lift{number},100 kg,5\n");
    }
    std::fs::write(folder.path().join("log.csv"), log).expect("a file");
    let person = "fit --name A --sex woman --height 165cm --mass 60kg --log log.csv";
    let words: Vec<&str> = person.split(' ').collect();
    let asked = call_in(folder.path(), &words);
    assert_eq!((asked.status, asked.out.as_str()), (2, ""), "{asked:?}");
    let told = &asked.complaint;
    assert!(
        told.contains("no set of log.csv tells a maximum (lift0 (1 set), ")
            && told.contains(" and 2988 more)"),
        "{told}"
    );
    assert_eq!(told.matches(" (1 set)").count(), 12, "{told}");
}

#[test]
fn fault_a_block_of_too_many_weeks_is_refused_before_any_work() {
    // Neither the lift nor the gym is there: what is refused first was judged before they were looked for.
    for weeks in ["0", "13", "100000"] {
        let asked = call(&["plan", "nothing", "--gym", "nowhere", "--weeks", weeks]);
        assert_eq!((asked.status, asked.out.as_str()), (2, ""), "{asked:?}");
        let said = format!("a block of {weeks} weeks is not planned (1 to 12)");
        assert!(asked.complaint.contains(&said), "{asked:?}");
    }
}

#[test]
fn fault_a_unit_of_a_heading_that_is_none_is_named() {
    let folder = tempfile::tempdir().expect("a folder");
    for (heading, wrong, right) in [
        ("velocity (ms)", "`ms` in the heading", "`velocity (m/s)`"),
        ("velocity [mph]", "`mph` in the heading", "`velocity (m/s)`"),
        ("velocity", "neither has the heading", "`velocity (m/s)`"),
        ("velocity ()", "neither has the heading", "`velocity (m/s)`"),
    ] {
        let log = format!("date,lift,load,repetitions,{heading}\n2026-03-02,squat,100 kg,5,0.4\n");
        std::fs::write(folder.path().join("log.csv"), log).expect("a file");
        let asked = call_in(folder.path(), &["progress", "--log", "log.csv"]);
        assert_eq!((asked.status, asked.out.as_str()), (2, ""), "{asked:?}");
        assert!(
            asked.complaint.contains(wrong) && asked.complaint.contains(right),
            "{asked:?}"
        );
        assert!(asked.complaint.contains("log.csv:2:27"), "{asked:?}");
    }
}

/// The samples of a curve that hold less than nothing, as the first and the last of each stretch, and what the table says.
#[test]
fn fault_a_capacity_below_nothing_is_told_where_it_is() {
    let mut told_of = 0;
    for speed in ["0", "200", "500", "900", "1400"] {
        let speed = format!("--speed={speed} deg/s");
        let words = ["curve", "knee-extension", "--samples", "21", &speed];
        let table = call(&words).done().out;
        let json = call(&[&words[..], &["--format", "json"]].concat()).done();
        let samples = json.json()["samples"].clone();
        let samples = samples.as_array().expect("samples");
        let value = |index: usize, key: &str| samples[index][key].as_f64().expect("a number");
        let is_below = |index: usize| value(index, "capacity_nm") < 0.0;
        let mut expected = Vec::new();
        for first in
            (0..samples.len()).filter(|at| is_below(*at) && (*at == 0 || !is_below(at - 1)))
        {
            let last = (first..samples.len()).take_while(|at| is_below(*at)).last();
            let percent = |at: usize| format!("{:.0} %", 100.0 * value(at, "range"));
            let (from, to) = (percent(first), percent(last.expect("itself")));
            expected.push(match from == to {
                true => format!("warning: at {from} of the range the capacity is below nothing"),
                false => format!(
                    "warning: from {from} to {to} of the range the capacity is below nothing"
                ),
            });
        }
        for sentence in &expected {
            assert!(table.contains(sentence), "{speed}: {sentence}: {table}");
        }
        assert_eq!(
            table.matches("below nothing").count(),
            expected.len(),
            "{table}"
        );
        told_of += expected.len();
    }
    assert!(told_of >= 2, "{told_of} stretches");
}
