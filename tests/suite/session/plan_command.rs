//! `torquill plan` and `torquill progress` as a coach calls them: what is planned, what is refused, and that
//! cautions stand in every answer.

use crate::calling::{Answer, call, call_in, json};
use serde_json::Value;

fn plan(more: &[&str]) -> Answer {
    let mut arguments = vec!["plan", "bench-press", "--one-rm", "140 kg"];
    if !more.contains(&"--training-months") {
        arguments.extend(["--training-months", "48"]);
    }
    arguments.extend(more);
    call(&arguments)
}

/// A log of these lines in a folder of its own.
fn progress(lines: &[&str], more: &[&str]) -> Answer {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let text = format!("date,lift,load,repetitions\n{}\n", lines.join("\n"));
    std::fs::write(folder.path().join("log.csv"), text).expect("a log");
    call_in(
        folder.path(),
        &[&["progress", "--log", "log.csv"], more].concat(),
    )
}

fn work(session: &Value) -> Vec<&Value> {
    let sets = session["sets"].as_array().expect("sets");
    sets.iter().filter(|set| set["kind"] == "work").collect()
}

#[test]
fn regress_overloaded_lowering_of_140_kg_through_the_program() {
    let plan = json(&[
        "plan",
        "bench-press",
        "--training-months",
        "48",
        "--one-rm",
        "140 kg",
        "--method",
        "overloaded-lowering",
    ]);
    let session = &plan["sessions"][0];
    let work = work(session);
    assert!((3..=4).contains(&work.len()));
    for set in work {
        let kg = set["load_kg"].as_f64().expect("kg");
        // Above the 1RM, and below what this lifter is simulated to lower, with the reserve.
        assert!((140.1..=0.97 * 150.7).contains(&kg), "{kg}");
        assert!((1..=5).contains(&set["repetitions"].as_u64().expect("repetitions")));
    }
    assert_eq!(session["spotters"], 3);
    assert!(
        session["frequency"]
            .as_str()
            .expect("words")
            .contains("once a week")
    );
    let last = session["lowerings"]
        .as_array()
        .expect("lowerings")
        .last()
        .expect("one");
    assert!(last["reserve"].as_f64().expect("a share") > 0.0);
}

#[test]
fn regress_clusters_keep_what_a_straight_set_loses_through_the_program() {
    let plan = json(&[
        "plan",
        "bench-press",
        "--training-months",
        "48",
        "--one-rm",
        "140 kg",
        "--method",
        "clusters",
        "--load",
        "105 kg",
        "--total-reps",
        "12",
    ]);
    let session = &plan["sessions"][0];
    let set = work(session)[0];
    assert_eq!(set["load_kg"], 105.0);
    assert_eq!(set["repetitions"], 12);
    assert_eq!(set["rest_within_s"], 30.0);
    let mean = |index: usize| {
        let prediction = &session["predictions"][index];
        prediction["mean_velocity_m_s"].as_f64().expect("m/s")
    };
    assert_eq!(session["predictions"][0]["name"], "clusters");
    assert_eq!(session["predictions"][1]["name"], "straight");
    assert!(mean(0) > 1.05 * mean(1), "{} against {}", mean(0), mean(1));
    for joint in ["shoulder", "elbow"] {
        let left = |index: usize| {
            session["predictions"][index]["least_capacity_share"][joint]
                .as_f64()
                .expect("a share")
        };
        assert!(left(0) > left(1), "{joint}");
    }
}

#[test]
fn law_every_movement_and_method_is_planned_or_refused_with_the_reason() {
    for movement in crate::lift_by_another_name::LIFTS {
        // A stronger man: the reference man does not lift his own body in a pull-up.
        let strong = ["--set", "lifter.strength_scale=1.6"];
        let plan = json(
            &[
                &[
                    "plan",
                    movement,
                    "--method",
                    "all",
                    "--training-months",
                    "48",
                ],
                &strong[..],
            ]
            .concat(),
        );
        let sessions = plan["sessions"].as_array().expect("sessions");
        let refused = plan["refused"].as_array().expect("refused");
        assert_eq!(sessions.len() + refused.len(), 6, "{movement}");
        assert!(sessions.len() >= 3, "{movement}: {refused:?}");
        for session in sessions {
            assert!(!work(session).is_empty(), "{movement}");
            let cautions = session["cautions"].as_array().expect("cautions");
            assert!(
                cautions[0]
                    .as_str()
                    .expect("words")
                    .contains("no medical advice")
            );
        }
        for refusal in refused {
            assert!(
                refusal["reason"].as_str().expect("words").len() > 20,
                "{refusal}"
            );
        }
    }
    // In a pull-up the body alone is lowered, after stepping up: no overload for who pulls up more.
    let lowering = [
        "plan",
        "pull-up",
        "--training-months",
        "48",
        "--method",
        "overloaded-lowering",
        "--set",
        "lifter.strength_scale=1.6",
    ];
    let lifted = call(&lowering);
    assert_eq!(lifted.status, 1, "{}", lifted.out);
    assert!(
        lifted.complaint.contains("no overload"),
        "{}",
        lifted.complaint
    );
    let body_is_all = [&lowering[..6], &["--one-rm", "0 kg"]].concat();
    for set in work(&json(&body_is_all)["sessions"][0]) {
        assert_eq!(set["load_kg"], 0.0, "{set}");
        assert!(
            set["intent"]
                .as_str()
                .expect("words")
                .contains("step back up"),
            "{set}"
        );
    }
    let added = call(&[&lowering[..], &["--load", "20 kg"]].concat());
    assert_eq!(added.status, 1, "{}", added.out);
    assert!(
        added.complaint.contains("the body alone"),
        "{}",
        added.complaint
    );
    // No maximum, no plan: the own body is more than the reference man pulls up.
    let none = call(&["plan", "pull-up", "--method", "all"]);
    assert_eq!(none.status, 1, "{}", none.out);
    assert!(
        none.complaint.contains("cannot lift the body's own weight"),
        "{}",
        none.complaint
    );
}

#[test]
fn regress_bands_and_chains_come_from_the_gym() {
    for (method, piece) in [("bands", "loop-"), ("chains", "chain-")] {
        let plan = json(&[
            "plan",
            "squat",
            "--training-months",
            "48",
            "--one-rm",
            "180 kg",
            "--method",
            method,
            "--gym",
            "strength-lab",
        ]);
        let session = &plan["sessions"][0];
        let setup = session["setup"].to_string();
        assert!(setup.contains(piece), "{setup}");
        let set = work(session)[0];
        let effort = set["hardest_effort"].as_f64().expect("a share");
        assert!((0.7..=0.85 + 1e-6).contains(&effort), "{effort}");
        let share = set["share_of_one_rm"].as_f64().expect("a share");
        assert!((0.3..=1.0).contains(&share), "{share}");
        let notes = set["notes"].to_string();
        assert!(
            notes.contains("at the bottom") && notes.contains("at the top"),
            "{notes}"
        );
        let names = [0, 1].map(|index| session["predictions"][index]["name"].clone());
        assert_eq!(names, [method, "plain weight"]);
        assert!(
            session["predictions"][0]["completed"]
                .as_u64()
                .expect("a count")
                > 0
        );
    }
}

#[test]
fn law_nobody_changes_bars_between_sets() {
    let plan = json(&[
        "plan",
        "bench-press",
        "--one-rm",
        "140 kg",
        "--gym",
        "college-weight-room",
    ]);
    let sets = plan["sessions"][0]["sets"].as_array().expect("sets");
    for set in sets {
        let words = set["on_the_bar"].as_str().expect("words");
        assert!(words.starts_with("men's bar (20 kg)"), "{words}");
    }
}

#[test]
fn regress_a_novice_an_injured_and_an_unwell_lifter() {
    let novice = plan(&["--method", "clusters", "--training-months", "2"]);
    assert_eq!(novice.status, 0);
    assert!(
        novice.out.contains("planned instead of clusters"),
        "{}",
        novice.out
    );
    assert!(novice.out.contains("progressive overload"));
    let named = call(&[
        "plan",
        "squat",
        "--lifter",
        "tall-novice",
        "--method",
        "bands",
    ]);
    assert!(
        named.out.contains("planned instead of bands"),
        "{}",
        named.out
    );
    let injured = plan(&["--injured"]);
    assert_eq!((injured.status, injured.out.as_str()), (1, ""));
    assert!(injured.complaint.contains("clinician"));
    let all = plan(&["--injured", "--method", "all"]);
    assert_eq!((all.status, all.out.as_str()), (1, ""));
    let block = plan(&["--injured", "--weeks", "4"]);
    assert_eq!((block.status, block.out.as_str()), (1, ""));
    let unwell = plan(&["--unwell", "--method", "overloaded-lowering"]);
    assert_eq!(unwell.status, 1);
    let youth = plan(&["--age", "17", "--method", "overloaded-lowering"]);
    assert!(youth.complaint.contains("adults"), "{}", youth.complaint);
    let child = plan(&["--age", "15"]);
    assert!(child.complaint.contains("adults"), "{}", child.complaint);
    let again = plan(&["--last-overload", "3", "--method", "overloaded-lowering"]);
    assert!(
        again.complaint.contains("once a week"),
        "{}",
        again.complaint
    );
}

#[test]
fn fault_loads_beyond_the_limit_and_rests_that_cannot_be() {
    let heavy = plan(&["--method", "overloaded-lowering", "--load", "180 kg"]);
    assert_eq!(heavy.status, 1);
    assert!(
        heavy.complaint.contains("lower under control"),
        "{}",
        heavy.complaint
    );
    let straight = plan(&["--load", "150 kg"]);
    assert_eq!(straight.status, 1);
    assert!(straight.complaint.contains("overloaded-lowering"));
    let rest = plan(&["--rest", "-30 s"]);
    assert_eq!(rest.status, 2);
    assert!(rest.complaint.contains("-30"), "{}", rest.complaint);
    let within = plan(&["--method", "clusters", "--rest-within", "-5 s"]);
    assert_eq!(within.status, 2);
    let deadlift = call(&[
        "plan",
        "deadlift",
        "--training-months",
        "48",
        "--method",
        "overloaded-lowering",
    ]);
    assert_eq!(deadlift.status, 1);
    assert!(
        deadlift.complaint.contains("back"),
        "{}",
        deadlift.complaint
    );
    let pieces = plan(&["--method", "straight", "--band", "loop-29mm:1"]);
    assert_eq!(pieces.status, 2);
}

#[test]
fn law_cautions_stand_in_every_form_and_have_no_switch() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let usual = ["plan", "bench-press", "--one-rm", "140 kg"];
    let words = "no medical advice";
    let text = call_in(
        folder.path(),
        &[&usual[..], &["--sheet", "sheet.html"]].concat(),
    );
    assert!(text.out.contains(words));
    let page = std::fs::read_to_string(folder.path().join("sheet.html")).expect("a sheet");
    assert!(page.contains(words));
    let picture = call_in(
        folder.path(),
        &[&usual[..], &["--sheet", "sheet.svg"]].concat(),
    );
    assert_eq!(picture.status, 0, "{}", picture.complaint);
    let picture = std::fs::read_to_string(folder.path().join("sheet.svg")).expect("a sheet");
    assert!(
        picture.contains(words),
        "the description holds the cautions"
    );
    let csv = call(&[&usual[..], &["--format", "csv"]].concat());
    assert!(csv.complaint.contains(words));
    let json = json(&usual);
    assert!(json["sessions"][0]["cautions"].to_string().contains(words));
    for switch in ["--no-cautions", "--quiet", "--without-cautions"] {
        assert_eq!(
            call(&[&usual[..], &[switch]].concat()).status,
            2,
            "{switch}"
        );
    }
}

#[test]
fn law_the_same_call_gives_the_same_bytes() {
    for format in ["json", "csv", "table"] {
        let arguments = ["--method", "clusters", "--format", format];
        assert_eq!(plan(&arguments).out, plan(&arguments).out, "{format}");
    }
    let csv = plan(&["--format", "csv"]).out;
    let header = "session,date,movement,method,set,kind,load_kg,share_of_one_rm,hardest_effort,reserve,on_the_bar,groups,repetitions,rest_within_s,\
         rest_after_s,lowering_s,to_failure_by_chart,to_failure_by_model,intent,notes";
    assert_eq!(csv.lines().next(), Some(header));
    assert!(csv.contains("warm_up") && csv.contains("work"));
}

/// Of whom nothing is known is a novice: nobody prescribes such a lifter more than can be lifted, in a session or a block.
#[test]
fn law_an_unknown_lifter_is_planned_as_a_novice() {
    let unknown = ["plan", "bench-press", "--one-rm", "50 kg"];
    for more in [
        &["--weeks", "2"][..],
        &["--method", "all"],
        &["--method", "overloaded-lowering"],
        &["--method", "overloaded-lowering", "--training-months", "20"],
    ] {
        let answer = call(&[&unknown[..], more, &["--format", "json"]].concat());
        if answer.status == 1 {
            assert!(
                answer.complaint.contains("24 months"),
                "{}",
                answer.complaint
            );
            continue;
        }
        for session in answer.done().json()["sessions"]
            .as_array()
            .expect("sessions")
        {
            for set in session["sets"].as_array().expect("sets") {
                let share = set["share_of_one_rm"].as_f64().expect("a share");
                assert!(share <= 1.0, "{more:?}: {share}");
            }
        }
    }
    let told = call(&[&unknown[..], &["--method", "clusters"]].concat()).done();
    assert!(
        told.out.contains("straight in place of clusters: "),
        "{}",
        told.out
    );
    let words: Vec<&str> = told.out.split_whitespace().collect();
    let words = words.join(" ");
    assert!(words.contains("planned as for a novice"), "{words}");
}

/// Bands and chains are judged by the strength of whoever lifts; a 1RM that nobody has is refused before.
#[test]
fn fault_bands_for_a_maximum_that_nobody_has() {
    let arguments = [
        "plan",
        "squat",
        "--one-rm",
        "60 lb",
        "--training-months",
        "48",
        "--method",
        "bands",
        "--gym",
        "garage",
    ];
    let answer = call(&arguments);
    assert_eq!(answer.status, 2, "{}", answer.out);
    assert!(
        answer
            .complaint
            .contains("a 1RM of 27.2 kg in the squat is 0.18 times what people"),
        "{}",
        answer.complaint
    );
}

#[test]
fn law_a_block_has_one_overload_day_a_week() {
    let plan = json(&[
        "plan",
        "bench-press",
        "--one-rm",
        "140 kg",
        "--training-months",
        "48",
        "--method",
        "overloaded-lowering",
        "--weeks",
        "4",
    ]);
    let titles: Vec<&str> = plan["sessions"]
        .as_array()
        .expect("sessions")
        .iter()
        .map(|session| session["session"].as_str().expect("words"))
        .collect();
    assert_eq!(titles.len(), 8);
    for week in 1..=4 {
        let of_week = titles
            .iter()
            .filter(|title| title.starts_with(&format!("Week {week},")));
        let overload = of_week
            .filter(|title| title.ends_with("overload day"))
            .count();
        assert_eq!(overload, usize::from(week < 4), "week {week}");
    }
    assert!(titles[7].contains("deload"));
}

#[test]
fn regress_the_three_logs_say_what_they_hold() {
    for (log, verdict) in [("rising", "rising"), ("stalled", "flat"), ("gappy", "flat")] {
        let progress = json(&["progress", "--log", log]);
        let summary = &progress["summary"];
        assert_eq!(summary["verdict"], verdict, "{log}");
        let interval = &summary["slope_interval_kg_per_week"];
        let (low, high) = (
            interval[0].as_f64().expect("kg"),
            interval[1].as_f64().expect("kg"),
        );
        assert!(low < high, "{log}");
        let sure = if log == "gappy" { "weak" } else { "clear" };
        assert_eq!(summary["sureness"], sure, "{log}");
    }
    let gappy = call(&["progress", "--log", "gappy"]).out;
    assert!(gappy.contains("no session for 24 days"), "{gappy}");
    assert!(gappy.contains("valid repetitions") && gappy.contains("they spread from"));
}

#[test]
fn fault_bad_logs_are_answered_like_a_colleague_would() {
    let good = [
        "2024-01-01,squat,100 kg,5",
        "2024-01-04,squat,102.5 kg,5",
        "2024-01-08,squat,105 kg,5",
    ];
    let mixed = progress(
        &[&good[..], &["2024-01-09,bench-press,80 kg,5"]].concat(),
        &[],
    );
    assert_eq!(mixed.status, 2);
    assert!(
        mixed.complaint.contains("bench-press") && mixed.complaint.contains("squat"),
        "{}",
        mixed.complaint
    );
    let one = progress(
        &[&good[..], &["2024-01-09,bench-press,80 kg,5"]].concat(),
        &["--lift", "squat"],
    );
    assert_eq!(one.status, 0, "{}", one.complaint);
    let backwards = progress(&[good[2], good[0], good[1]], &[]);
    let said = format!("{}{}", backwards.out, backwards.complaint);
    assert!(said.contains("order"), "{said}");
    let bad = progress(&[&good[..], &["2024-01-10,squat,heavy,5"]].concat(), &[]);
    assert_eq!(bad.status, 2);
    assert!(
        bad.complaint.contains('5') && bad.complaint.contains("heavy"),
        "{}",
        bad.complaint
    );
    let without = progress(
        &[&good[..], &["2024-01-10,squat,heavy,5"]].concat(),
        &["--skip-bad-rows"],
    );
    assert_eq!(without.status, 0, "{}", without.complaint);
    assert!(without.out.contains("left out: line 5"), "{}", without.out);
}

#[test]
fn law_the_sheet_of_every_method_is_one_page_of_type_that_can_be_read() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    for method in [
        "straight",
        "pyramid",
        "clusters",
        "overloaded-lowering",
        "bands",
        "chains",
    ] {
        for (paper, size) in [
            ("a4", "width=\"794\" height=\"1123\""),
            ("letter", "width=\"816\" height=\"1056\""),
        ] {
            let arguments = [
                "plan",
                "bench-press",
                "--training-months",
                "48",
                "--one-rm",
                "140 kg",
                "--method",
                method,
                "--sheet",
                "sheet.svg",
                "--paper",
                paper,
                "--force",
            ];
            let answer = call_in(folder.path(), &arguments);
            assert_eq!(answer.status, 0, "{method}: {}", answer.complaint);
            let sheet = std::fs::read_to_string(folder.path().join("sheet.svg")).expect("a sheet");
            assert!(sheet.contains(size), "{method} on {paper}");
        }
    }
    let several = call_in(
        folder.path(),
        &["plan", "squat", "--weeks", "2", "--sheet", "two.svg"],
    );
    assert_eq!(several.status, 2);
    assert!(several.complaint.contains(".html"), "{}", several.complaint);
}
