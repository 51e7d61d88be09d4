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
