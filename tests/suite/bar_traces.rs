//! Traces of a bar and velocities: repetitions found, regions seen, what a fit makes of them, what is refused.

use super::calling::call_in;
use torquill::progress::bar_trace::BarTrace;
use torquill::progress::traced_repetitions::traced_repetitions;

/// Three lifts of 0.5 m at known mean velocities, with waits, noise, an empty cell and a gap; velocity dips in the middle.
fn written(unit: &str, of_metre: f64) -> (String, [f64; 3]) {
    let times = [0.8, 1.0, 1.25];
    let mut text = format!("time,position_{unit},other\n");
    let (mut now, mut noise) = (0.0_f64, 7_u32);
    let mut row = |now: f64, height: f64| {
        noise = noise.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let shaken = height + 0.002 * (f64::from(noise >> 8) / f64::from(1_u32 << 24) - 0.5);
        text += &format!("{now:.4},{:.4},x\n", shaken / of_metre);
    };
    for lasts in times {
        let course = |part: f64| {
            let turn = std::f64::consts::TAU;
            // Velocity 1 - cos(2πx) with a dip of its own in the middle, none at the ends.
            part - (turn * part).sin() / turn * 0.4 - (2.0 * turn * part).sin() / (2.0 * turn) * 0.6
        };
        for (seconds, from, to) in [
            (1.0, 0.5, 0.5),
            (1.2, 0.5, 0.0),
            (0.6, 0.0, 0.0),
            (lasts, 0.0, 0.5),
            (0.6, 0.5, 0.5),
        ] {
            let steps = (seconds / 0.02_f64).round() as usize;
            for step in 0..steps {
                let part = course(step as f64 / steps as f64);
                row(now, from + (to - from) * part);
                now += seconds / steps as f64;
            }
        }
        now += 0.7;
    }
    (text, times.map(|lasts| 0.5 / lasts))
}

#[test]
fn law_repetitions_of_a_trace_are_found_with_their_velocities() {
    for (unit, of_metre) in [("m", 1.0), ("mm", 0.001)] {
        let (mut text, velocities) = written(unit, of_metre);
        text = text.replacen("\n0.1000,", "\n0.1000,,\n0.1000,", 1);
        let trace = BarTrace::read("bar.csv", &text, "time,position").unwrap();
        assert!(trace.left_out >= 1);
        let found = traced_repetitions(&trace);
        assert_eq!(found.len(), 3);
        for (one, velocity) in found.iter().zip(velocities) {
            let told = one.mean_velocity.as_m_s();
            assert!(
                (told / velocity - 1.0).abs() < 0.12,
                "{told} for {velocity}"
            );
            assert!((one.way_m - 0.5).abs() < 0.02);
            let region = one.sticking.expect("the dip is seen");
            assert!(
                region.from < 0.45 && (region.to - 0.5).abs() < 0.08,
                "{region:?}"
            );
        }
    }
}

#[test]
fn law_a_fit_uses_the_trace_that_ships_and_holds_it_beside_the_simulated_lift() {
    let folder = tempfile::tempdir().unwrap();
    let asked = "fit --name a --sex woman --mass 68kg --height 167cm --training-months 24 --trace squat=75kg@invented-squat --format json";
    let told = call_in(folder.path(), &asked.split(' ').collect::<Vec<_>>())
        .done()
        .json();
    let trace = &told["traces"][0];
    assert_eq!(trace["traced_repetitions"].as_array().unwrap().len(), 3);
    assert!(trace["traced_repetitions"][0]["sticking_to_range"].is_number());
    assert!(trace["simulated_mean_velocity_m_s"].as_f64().unwrap() > 0.1);
    let datum = &told["measurements"][0];
    let (measured, error) = (
        datum["measured_si"].as_f64().unwrap(),
        datum["log_error"].as_f64().unwrap(),
    );
    assert!(
        (80.0..105.0).contains(&measured) && (0.05..0.15).contains(&error),
        "{datum}"
    );
}

#[test]
fn fault_traces_that_say_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let (text, _) = written("m", 1.0);
    let write = |name: &str, text: &str| std::fs::write(folder.path().join(name), text).unwrap();
    write("bar.csv", &text);
    write("km.csv", &written("m", 0.001).0);
    write("back.csv", &text.replacen("\n0.2000,", "\n0.0500,", 1));
    write("short.csv", "time,position\n0,0\n1,1\n");
    write(
        "log.csv",
        "date,lift,load,repetitions\n2026-01-02,squat,80 kg,3\n",
    );
    for (asked, said) in [
        (
            "--trace squat=80kg@bar.csv --columns t,z",
            "has no columns t,z",
        ),
        (
            "--trace squat=80kg@bar.csv --columns time",
            "does not name two columns",
        ),
        ("--trace squat=80kg@km.csv", "which no lift does"),
        ("--trace squat=80kg@back.csv", "time runs backward"),
        ("--trace squat=80kg@short.csv", "too few"),
        ("--trace deadlift=80kg@bar.csv", "no equation was published"),
        ("--trace squat=bar.csv", "does not tell"),
        ("--velocities log.csv", "no velocity"),
        ("--lift squat=80kg --columns time,height", "--trace"),
    ] {
        let words = format!("fit --name a --sex man --mass 80kg --height 180cm {asked}");
        let answer = call_in(folder.path(), &words.split(' ').collect::<Vec<_>>());
        assert_eq!(answer.status, 2, "{asked}: {}", answer.complaint);
        assert!(
            answer.complaint.contains(said),
            "{asked}: {}",
            answer.complaint
        );
    }
}
