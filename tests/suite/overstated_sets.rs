//! Where the simulation goes far beyond the chart, or a stop never comes, a plan says so; a lowering below the lift is told as a fault.

use crate::calling::call;

/// The remarks of a plan's session, and what chart and simulation allow in each working set.
fn planned(arguments: &str) -> (Vec<String>, Vec<(f64, f64)>) {
    let words: Vec<&str> = arguments.split(' ').collect();
    let told = call(&[&words[..], &["--format", "json"]].concat())
        .done()
        .json();
    let session = &told["sessions"][0];
    let remarks = session["remarks"].as_array().expect("remarks");
    let remarks = remarks
        .iter()
        .map(|one| one.as_str().expect("a text").to_owned());
    let sets = session["sets"].as_array().expect("sets");
    let allowed = sets.iter().filter_map(|set| {
        let by_chart = set["to_failure_by_chart"].as_f64()?;
        Some((by_chart, set["to_failure_by_model"].as_f64()?))
    });
    (remarks.collect(), allowed.collect())
}

/// Said where, and only where, a set shows it: with both numbers, and of one joint only where one joint moves.
#[test]
fn law_a_plan_tells_where_the_simulation_is_far_above_the_chart() {
    let mut told = (0, 0);
    for (asked, is_one_joint) in [
        (
            "plan knee-extension --one-rm 50kg --training-months 12",
            true,
        ),
        (
            "plan biceps-curl --lifter reference-man --training-months 12",
            true,
        ),
        ("plan bench-press --one-rm 70kg --training-months 12", false),
        ("plan leg-press --one-rm 200kg --training-months 12", false),
    ] {
        let (remarks, allowed) = planned(asked);
        assert!(!allowed.is_empty(), "{asked}: nothing was predicted");
        let worst = allowed
            .iter()
            .filter(|(by_chart, by_model)| *by_chart >= 1.0 && *by_model >= 2.0 * by_chart)
            .max_by(|a, b| (a.1 / a.0).total_cmp(&(b.1 / b.0)));
        let said = remarks.iter().find(|one| one.contains("go by the chart"));
        match (worst, said) {
            (Some((_, by_model)), Some(said)) => {
                told.0 += 1;
                assert!(
                    said.contains(&format!("allows {by_model} repetitions")),
                    "{said}"
                );
                assert_eq!(said.contains("Sets of one joint"), is_one_joint, "{said}");
            }
            (None, None) => told.1 += 1,
            (worst, said) => panic!("{asked}: {worst:?}, {said:?}"),
        }
    }
    assert!(told.0 > 0 && told.1 > 0, "{told:?}");
}

/// A stop by lost velocity is told as no limit where the chart's repetitions do not lose it, never where they do.
#[test]
fn law_a_stop_that_never_comes_is_told() {
    let said = |percent: u32| {
        let asked = format!(
            "plan bench-press --one-rm 70kg --training-months 12 --velocity-loss {percent}%"
        );
        let (remarks, _) = planned(&asked);
        remarks.iter().any(|one| one.contains("sets no limit here"))
    };
    let all: Vec<bool> = [5, 20, 40, 80].into_iter().map(said).collect();
    // What is not lost at a small loss is not lost at a greater one.
    assert!(all.is_sorted(), "{all:?}");
    assert!(!all[0] && all[3], "{all:?}");
}

/// Less lowered than lifted is told as what the model gets wrong; more, as a result.
#[test]
fn law_a_lowering_below_the_lift_is_told_as_wrong() {
    let mut seen = (0, 0);
    for lift in ["row", "bench-press", "squat", "biceps-curl"] {
        let told = call(&["max", lift, "--eccentric", "3 s", "--format", "json"])
            .done()
            .json();
        let one_rm = told["summary"]["one_rm_kg"].as_f64().expect("a maximum");
        let lowered = told["summary"]["eccentric_one_rm_kg"]
            .as_f64()
            .expect("a lowered one");
        let words = call(&["max", lift, "--eccentric", "3 s"]).out;
        assert_eq!(
            words.contains("No weight to go by"),
            lowered < one_rm,
            "{words}"
        );
        assert_eq!(
            words.contains("Lowered under control"),
            lowered >= one_rm,
            "{words}"
        );
        if lowered < one_rm {
            seen.0 += 1;
        } else {
            seen.1 += 1;
        }
    }
    assert!(seen.1 > 0, "{seen:?}");
}
