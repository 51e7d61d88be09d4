//! `rep` and `max` as a user calls them: known maxima, absurd inputs, what stalls, bands beside plain weight,
//! groups of invented lifters, every movement with every lifter.

use crate::calling::{Answer, call, in_one_line, json};
use serde_json::Value;
use torquill::library::{Library, Shelf};
use torquill::movement::Carrier;
use torquill::numeric::quantile;
use torquill::person::Scatter;
use torquill::rep::RepOptions;
use torquill::resistance::Setup;
use torquill::setups::Watch;
use torquill::study::{Heaviness, PeopleAsked, Question, cohort, maximum, repetition};

fn number(value: &Value, keys: &[&str]) -> f64 {
    let found = keys.iter().fold(value, |at, key| &at[*key]);
    found
        .as_f64()
        .unwrap_or_else(|| panic!("{keys:?}: {found}"))
}

#[test]
fn law_every_lifter_lifts_every_movement_but_the_body_of_one() {
    let library = Library::built_in();
    for movement_name in library.names(Shelf::Movements) {
        let movement = library.movement(&movement_name).unwrap();
        for lifter_name in library.names(Shelf::Lifters) {
            let lifter = library.lifter(&lifter_name).unwrap();
            let question = Question::new(&movement_name, &movement, &lifter);
            let options = RepOptions::usual_for(&movement);
            let who = format!("{movement_name}, {lifter_name}");
            let found = maximum(&question, &Setup::default(), &options);
            // Who pulls less than the own body is told so, and with how much help it goes.
            if let (Carrier::Body, Err(fault)) = (movement.carrier().unwrap(), &found) {
                assert_eq!(fault.exit_status(), 1);
                assert!(
                    crate::calling::said(fault).contains("own weight"),
                    "{fault}"
                );
                continue;
            }
            let (one_rm, _) = found.unwrap_or_else(|e| panic!("{who}: {e}"));
            let over_body = one_rm.load.as_kg() / lifter.body_mass.as_kg();
            // From raising an arm with a dumb-bell to the leg press of a strong man.
            assert!((0.03..6.0).contains(&over_body), "{who}: {over_body}");
            // A share below that of the body alone is no load.
            let shares = [0.8, 1.0].into_iter();
            let own_kg = match movement.carrier().unwrap() {
                Carrier::Body => lifter.body_mass.as_kg(),
                _ => 0.0,
            };
            let whole_kg = one_rm.load.as_kg() + own_kg;
            for share in shares.filter(|share| share * whole_kg >= own_kg) {
                let rep = repetition(
                    &question,
                    &Setup::default(),
                    Heaviness::Share(share),
                    &options,
                )
                .unwrap_or_else(|e| panic!("{who}: {e}"));
                assert!(rep.trace.is_lifted(), "{who}, {share}");
                let lift = rep.trace.lift.expect("a lift");
                assert!(
                    (0.2..12.0).contains(&lift.time_s),
                    "{who}: {} s",
                    lift.time_s
                );
                assert!(rep.still.setups[0].sticking.is_some(), "{who}");
                let greatest = rep.trace.lifting().iter().map(|s| s.kinetic_j);
                let greatest = greatest.fold(0.0, f64::max);
                for sample in rep.trace.lifting() {
                    let off = (sample.kinetic_j - sample.work_j).abs();
                    let at = sample.range;
                    assert!(
                        off <= 1.0e-3 * greatest,
                        "{who}, {share}, {at}: {off} of {greatest} J"
                    );
                }
                for sample in &rep.trace.samples {
                    assert!(
                        sample.force.is_finite() && sample.velocity.is_finite(),
                        "{who}"
                    );
                }
            }
        }
    }
}

#[test]
fn law_a_known_maximum_makes_a_lifter_who_has_it() {
    for (movement, lifter, known) in [
        ("bench-press", "reference-man", 102.5),
        ("bench-press", "heavy-lifter", 140.0),
        ("squat", "reference-woman", 80.0),
        ("deadlift", "tall-novice", 120.0),
        ("biceps-curl", "club-lifter", 15.0),
        ("row", "reference-man", 60.0),
    ] {
        let load = format!("{known} kg");
        let max = ["max", movement, "--lifter", lifter];
        let implied = json(&[&max[..], &["--to-load", &load]].concat());
        let scale = number(&implied, &["summary", "strength_scale"]);
        let set = format!("lifter.strength_scale={scale}");
        let again = json(&[&max[..], &["--set", &set]].concat());
        let found = number(&again, &["summary", "one_rm_kg"]);
        assert!(
            (0.0..0.05).contains(&(found - known)),
            "{movement}, {lifter}: {known} kg gave {found} kg"
        );
    }
}

#[test]
fn fault_too_heavy_is_drawn_and_ends_with_status_1() {
    // Hardest above the start: a little too much starts and stops there, much too much does not start.
    for (load, words) in [("103%", "it stops"), ("125%", "does not leave the start")] {
        let folder = tempfile::tempdir().unwrap();
        let picture = folder.path().join("rep.png");
        let path = picture.to_str().unwrap();
        let Answer {
            status,
            out,
            complaint,
        } = call(&["rep", "overhead-press", "--load", load, "-o", path]);
        assert_eq!(status, 1, "{out}{complaint}");
        assert!(complaint.contains(words), "{complaint}");
        assert!(
            complaint.contains("the maximum with this setup is"),
            "{complaint}"
        );
        assert!(std::fs::metadata(&picture).unwrap().len() > 10_000);
    }
}

#[test]
fn fault_absurd_repetitions_end_in_an_answer_or_a_clear_error() {
    let upward = "loop-64mm:6@3.2 m";
    let cases: [(&[&str], &[i32]); 11] = [
        (&["--load", "0 kg"], &[0]),
        (&["--load", "0%"], &[0]),
        (&["--load", "2000 kg"], &[1]),
        (&["--load", "300%"], &[1]),
        (&["--load", "80%", "--lowering", "0 s"], &[0]),
        (&["--load", "80%", "--lowering", "1 min"], &[0]),
        (&["--load", "80%", "--lowering", "61 s"], &[2]),
        (&["--load", "20 kg", "--item", "counterweight 60 kg"], &[0]),
        (&["--load", "20 kg", "--item", "spotter 900 N"], &[0]),
        (&["--load", "-5 kg"], &[2]),
        (&["--load", "20 kg", "--band", upward], &[0]),
    ];
    for (options, statuses) in cases {
        let mut arguments = vec!["rep", "bench-press"];
        arguments.extend(options);
        let Answer {
            status,
            out,
            complaint,
        } = call(&arguments);
        assert!(
            statuses.contains(&status),
            "{options:?}: {status}, {complaint}"
        );
        assert!(
            !complaint.contains("panicked") && !out.contains("NaN"),
            "{options:?}"
        );
        assert!(status == 0 || !complaint.is_empty(), "{options:?}");
    }
}

#[test]
fn law_bands_leave_the_hardest_effort_quicken_the_start_and_load_the_end() {
    // A lift that slows down on its way: only there is a slowest place to move.
    let both = json(&[
        "rep",
        "overhead-press",
        "--load",
        "100%",
        "--band",
        "loop-22mm:1",
        "--versus-plain",
    ]);
    let effort = |part: &str| number(&both, &[part, "summary", "sticking_still", "max_effort"]);
    assert!((effort("with") - effort("plain")).abs() < 1.0e-3);
    // Equally heavy at the hardest place, bands are lighter below it and heavier above; and what they pull
    // need not be sped up. So up to there the bar with bands is faster at every place (how fast it is at the
    // end is open: more to bear, less to speed up).
    let hardest = number(
        &both,
        &["plain", "summary", "sticking_still", "sticking_point_range"],
    );
    let lifted = |part: &str, what: &str| -> Vec<(f64, f64)> {
        let samples = both[part]["samples"].as_array().expect("samples").iter();
        samples
            .filter(|sample| sample["phase"] == "lifting")
            .map(|sample| (number(sample, &["range"]), number(sample, &[what])))
            .collect()
    };
    let at = |course: &[(f64, f64)], range: f64| {
        let next = course.iter().position(|place| place.0 >= range);
        course[next.expect("it gets there")].1
    };
    let courses = |what: &str| [lifted("with", what), lifted("plain", what)];
    let ([fast, slow], [banded, plain]) = (courses("velocity_m_s"), courses("demand_n"));
    for share in [0.2, 0.4, 0.6, 0.8] {
        let range = share * hardest;
        assert!(
            at(&fast, range) > at(&slow, range),
            "bands are lighter below"
        );
        assert!(at(&banded, range) < at(&plain, range));
    }
    for range in [1.2 * hardest, 0.5, 0.9] {
        assert!(
            at(&banded, range) > at(&plain, range),
            "bands are heavier above"
        );
    }
    let Answer {
        status, complaint, ..
    } = call(&["rep", "bench-press", "--load", "80%", "--versus-plain"]);
    assert_eq!(status, 2);
    assert!(complaint.contains("--band"), "{complaint}");
}

#[test]
fn law_what_is_told_of_a_lift_is_in_its_samples() {
    let (mut slight, mut begun, mut passed) = (0, 0, 0);
    for lift in [
        "squat",
        "leg-press",
        "bench-press",
        "hip-thrust",
        "overhead-press",
    ] {
        let asked = ["rep", lift, "--load", "100%"];
        let (told, samples) = (call(&asked).out, json(&asked));
        let samples = samples["samples"].as_array().expect("samples").iter();
        let lifting = samples.filter(|sample| sample["phase"] == "lifting");
        let velocity: Vec<f64> = lifting.map(|s| number(s, &["velocity_m_s"])).collect();
        let greatest = velocity.iter().copied().fold(0.0, f64::max);
        let fastest = velocity
            .iter()
            .position(|v| *v == greatest)
            .expect("a peak");
        // How far velocity falls before it has its greatest value, over the peak that it falls from.
        let mut peak = 0.0_f64;
        let falls = velocity[..=fastest].iter().map(|v| {
            peak = peak.max(*v);
            (peak - v) / peak.max(1e-9)
        });
        let deepest = falls.fold(0.0, f64::max);
        let is_dipless = told.contains("lifted without a sticking region")
            || told.contains("still grows faster");
        assert!(!is_dipless || deepest < 0.05, "{lift}: {deepest} of {told}");
        if told.contains("too slight to count") {
            assert!(deepest > 0.015, "{lift}: {deepest} of {told}");
            slight += 1;
        }
        assert!(
            !told.contains("passes the hardest place at 0 m/s"),
            "{told}"
        );
        begun += usize::from(told.contains("it begins at the hardest place"));
        passed += usize::from(told.contains("it passes the hardest place"));
        // Only where something is lowered is there anything left of it.
        assert!(
            lift != "hip-thrust" || !told.contains("from the lowering"),
            "{told}"
        );
    }
    assert!(
        slight > 0 && begun > 0 && passed > 0,
        "{slight} {begun} {passed}"
    );
}

#[test]
fn law_light_bands_start_although_rubber_pulls_harder_upward() {
    let lifted = json(&[
        "rep",
        "bench-press",
        "--load",
        "20 kg",
        "--band",
        "loop-22mm:1",
    ]);
    assert_eq!(lifted["summary"]["outcome"], "lockout");
}

#[test]
fn law_a_group_of_lifters_is_the_same_on_any_number_of_threads() {
    let library = Library::built_in();
    let (movement, lifter) = (
        library.movement("bench-press").unwrap(),
        library.lifter("reference-man").unwrap(),
    );
    let question = Question::new("bench-press", &movement, &lifter);
    let table = library.person_table().unwrap();
    let people = |count: usize, seed: u64| PeopleAsked {
        count,
        seed,
        part: None,
        kind: None,
        scatter: Scatter::between_people(&table, lifter.sex),
    };
    let on = |threads: usize, seed: u64| {
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .unwrap();
        let (setup, options) = (Setup::default(), RepOptions::default());
        let asked = people(24, seed);
        let group = pool.install(|| cohort(&question, &setup, &options, &asked, &Watch::default()));
        group.unwrap_or_else(|e| panic!("{e}"))
    };
    let one = on(1, 7);
    assert_eq!(one, on(3, 7));
    assert_ne!(one, on(3, 8));
    let maxima = one.maxima_kg();
    let (low, high) = (
        quantile(&maxima, 0.05).unwrap(),
        quantile(&maxima, 0.95).unwrap(),
    );
    assert!(one.is_complete && maxima.len() > 20 && low < 0.9 * high);
    let stopped = Watch::default();
    stopped
        .stop
        .store(true, std::sync::atomic::Ordering::Relaxed);
    let none = cohort(
        &question,
        &Setup::default(),
        &RepOptions::default(),
        &people(10, 1),
        &stopped,
    );
    assert!(!none.unwrap().is_complete);
}

#[test]
fn regress_a_group_prints_quantiles_or_everyone() {
    let group = json(&["max", "squat", "--cohort", "12", "--seed", "3"]);
    assert_eq!(group["lifters"].as_array().unwrap().len(), 12);
    let quantiles = group["summary"]["quantiles"].as_array().unwrap();
    let of = |k: usize| quantiles[k]["one_rm_kg"].as_f64().unwrap();
    assert!(of(0) < of(2) && of(2) < of(4));
    let Answer { status, out, .. } = call(&["max", "squat", "--cohort", "12", "--format", "csv"]);
    assert_eq!((status, out.lines().count()), (0, 13));
    let Answer {
        status, complaint, ..
    } = call(&["max", "squat", "--cohort", "0"]);
    assert_eq!(status, 2, "{complaint}");
}

#[test]
fn law_every_command_and_the_library_tell_one_maximum() {
    for (movement, lifter) in [
        ("deadlift", "club-lifter"),
        ("bench-press", "reference-man"),
        ("leg-press", "reference-woman"),
        ("squat", "tall-novice"),
    ] {
        let who = [movement, "--lifter", lifter];
        let asked = |command: &str, more: &[&str]| json(&[&[command][..], &who, more].concat());
        let max = number(&asked("max", &[]), &["summary", "one_rm_kg"]);
        let rep = number(
            &asked("rep", &["--load", "100%"]),
            &["summary", "one_rm_kg"],
        );
        let plan = asked("plan", &["--method", "straight"]);
        let planned = number(&plan["sessions"][0], &["one_rm_kg"]);
        let lift = torquill::Lift::of(movement, lifter).unwrap();
        let library = lift.one_rep_max_kg().unwrap();
        for told in [rep, planned, library] {
            assert!(
                (told - max).abs() < 1.0e-9,
                "{movement}, {lifter}: {max} {rep} {planned} {library}"
            );
        }
    }
}

/// What `max` says of the load of a test is what the repetition with that load does, and the sentence has the same numbers.
#[test]
fn law_the_velocity_of_a_tested_maximum_is_that_of_its_repetition() {
    for (movement, lifter, step) in [
        ("deadlift", "club-lifter", "2.5 kg"),
        ("bench-press", "reference-man", "5 kg"),
        ("pull-up", "heavy-lifter", "1 kg"),
        ("squat", "tall-novice", "1.25 kg"),
    ] {
        let who = ["max", movement, "--lifter", lifter, "--step", step];
        let answer = json(&who);
        let told = |name: &str| number(&answer, &["summary", name]);
        let load = format!("{} kg", told("loadable_kg"));
        let rep = json(&["rep", movement, "--lifter", lifter, "--load", &load]);
        let moved = number(&rep, &["summary", "lift", "mean_velocity_m_s"]);
        let tested = told("loadable_velocity_m_s");
        assert!(
            (tested - moved).abs() < 1.0e-9,
            "{movement}: {tested} {moved}"
        );
        assert!(tested >= told("exact_one_rm_velocity_m_s"), "{movement}");
        let text = in_one_line(&call(&who).done().out);
        let says = format!("{load} goes up at {tested:.2} m/s on average");
        assert!(text.contains(&says), "{says}: {text}");
    }
}

/// What a setup leaves room for does not follow from the load that was asked about.
#[test]
fn law_a_setup_has_one_maximum_whichever_load_is_asked_about() {
    for (lift, help, loads) in [
        (
            "bench-press",
            "counterweight 100 kg",
            ["30 kg", "99 kg", "120 kg"],
        ),
        ("squat", "counterweight 80 kg", ["70 kg", "82 kg", "100 kg"]),
    ] {
        let asked = |command: &[&str]| {
            let words = [command, &["--item", help, "--format", "json"]].concat();
            let answer = call(&words);
            assert!(answer.status < 2, "{words:?}: {}", answer.complaint);
            answer.json()["summary"]["one_rm_kg"].as_f64()
        };
        let most = asked(&["max", lift]);
        assert!(most.is_some(), "{lift}");
        for load in loads {
            assert_eq!(asked(&["rep", lift, "--load", load]), most, "{lift} {load}");
        }
    }
}
