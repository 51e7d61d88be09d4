//! What a coach finds wrong at the rack stays mended: felt loads, slack bands, light bars, assisted pull-ups, hints.

use crate::calling::{Answer, HEAVY_SQUAT, TRAINED_PRESS, call, call_in, in_one_line, json};
use regex::Regex;
use serde_json::Value;
use torquill::library::Library;
use torquill::session::repetitions::RepetitionChart;

/// A gym with one bar that is heavy for a novice, and with a rack.
const ONE_BAR: &str = r#"Gym(
    title: "One bar (invented)",
    invented: true,
    bars: [(name: "bar", mass: "20 kg")],
    plates: [(mass: "10 kg", count: 4), (mass: "2.5 kg", count: 4)],
    collars: "2.5 kg",
    source: Assumed("invented for a test"),
)"#;

/// A gym whose bands hang from above alone.
const HIGH_ANCHORS: &str = r#"Gym(
    title: "High anchors (invented)",
    invented: true,
    bars: [(name: "bar", mass: "20 kg")],
    plates: [(mass: "20 kg", count: 4), (mass: "10 kg", count: 4), (mass: "5 kg", count: 4)],
    collars: "0.2 kg",
    bands: [(name: "loop-14mm", count: 4)],
    anchors: {"beam": (height: "2.2 m")},
    safety_arms: Some((lowest: "30 cm", highest: "120 cm", step: "5 cm")),
    source: Assumed("invented for a test"),
)"#;

fn picked(movement: &str, lifter: &str, gym: &str) -> Value {
    json(&["pick", movement, "--lifter", lifter, "--gym", gym])
}

fn card(movement: &str, lifter: &str, gym: &str) -> Answer {
    call(&["pick", movement, "--lifter", lifter, "--gym", gym])
}

fn setups(answer: &Value) -> impl Iterator<Item = &Value> {
    ["answers", "ranked"]
        .into_iter()
        .flat_map(|list| answer[list].as_array().expect("a list"))
}

fn number(value: &Value, key: &str) -> f64 {
    value[key]
        .as_f64()
        .unwrap_or_else(|| panic!("{key}: {value}"))
}

/// Every share in brackets of a text: "(131 %)".
fn shares(text: &str) -> Vec<f64> {
    let share = Regex::new(r"\((\d+) %\)").expect("a pattern");
    let found = share.captures_iter(text);
    found.map(|one| one[1].parse().expect("a number")).collect()
}

#[test]
fn law_no_more_than_the_maximum_is_felt_where_nobody_can_take_the_bar() {
    for lifter in ["heavy-lifter", "club-lifter"] {
        for lift in ["overhead-press", "hip-thrust"] {
            let answer = picked(lift, lifter, "college-weight-room");
            let most = number(&answer["summary"], "one_rm_kg");
            for setup in setups(&answer) {
                for key in ["load_start_kg", "load_middle_kg", "load_end_kg"] {
                    assert!(number(setup, key) <= most + 1.0e-6, "{lift}: {setup}");
                }
            }
        }
        let plan = call(&[
            "plan",
            "overhead-press",
            "--lifter",
            lifter,
            "--method",
            "bands",
            "--gym",
            "college-weight-room",
        ]);
        assert!(plan.status <= 1, "{}", plan.complaint);
        assert!(
            shares(&plan.out).iter().all(|share| *share <= 100.0),
            "{}",
            plan.out
        );
    }
}

/// A novice feels no more than the maximum with bands or chains in any lift.
#[test]
fn law_a_novice_feels_no_more_than_the_maximum() {
    let answer = picked("squat", "reference-woman", "strength-lab");
    let most = number(&answer["summary"], "one_rm_kg");
    for setup in setups(&answer).filter(|setup| setup["hung_a_side"] != 0) {
        assert!(number(setup, "load_end_kg") <= most + 1.0e-6, "{setup}");
    }
}

/// Named bands that would bring more than the maximum over the head are refused with what would do.
#[test]
fn fault_named_bands_that_are_too_much_over_the_head() {
    let plan = call(&[
        "plan",
        "overhead-press",
        "--training-months",
        "48",
        "--one-rm",
        "60 kg",
        "--method",
        "bands",
        "--band",
        "loop-45mm:1@0 cm,single",
    ]);
    assert_eq!(plan.status, 1, "{}", plan.out);
    assert!(
        plan.complaint.contains("nobody can take the load"),
        "{}",
        plan.complaint
    );
}

/// Bands go on in the warm-up only where no more than the maximum is felt with them.
#[test]
fn law_no_warm_up_is_felt_as_more_than_the_maximum() {
    for lift in ["squat", "deadlift", "bench-press"] {
        let plan = call(&[
            "plan",
            lift,
            "--lifter",
            "heavy-lifter",
            "--method",
            "bands",
            "--gym",
            "college-weight-room",
        ]);
        let warm_ups = plan.out.split("easy and crisp").skip(1);
        for words in warm_ups {
            let words: String = words.chars().take(160).collect();
            let own = words.split("drive").next().unwrap_or_default();
            assert!(
                shares(own).iter().all(|share| *share <= 100.0),
                "{lift}: {own}"
            );
        }
    }
}

#[test]
fn law_no_band_goes_slack_on_a_bar() {
    let scale = Regex::new(r"drawn out: ([0-9.]+) kg|let back: ([0-9.]+) kg").expect("a pattern");
    for lift in ["squat", "bench-press", "overhead-press", "deadlift"] {
        let text = card(lift, "heavy-lifter", "college-weight-room").done().out;
        assert!(!text.contains("slack"), "{text}");
        for read in scale.captures_iter(&text) {
            let kg: f64 = read
                .get(1)
                .or(read.get(2))
                .map_or(0.0, |kg| kg.as_str().parse().expect("a number"));
            assert!(kg >= 0.4, "{text}");
        }
    }
    let all = call(&[
        "pick",
        "squat",
        "--lifter",
        "heavy-lifter",
        "--gym",
        "college-weight-room",
        "--all",
    ]);
    assert!(in_one_line(&all.out).contains("slides off"), "{}", all.out);
}

/// Bands from below reach a squat: choked round the rack's foot they are taut at the bottom and safe at the top.
#[test]
fn law_bands_from_below_are_found_for_a_squat_and_stay_taut() {
    let answer = picked("squat", "heavy-lifter", "college-weight-room");
    let below = setups(&answer).find(|setup| setup["kind"] == "bands from below");
    let below = below.unwrap_or_else(|| panic!("{answer}"));
    assert!(
        below["bands_and_chains"]
            .as_str()
            .is_some_and(|hung| hung.contains("choked"))
    );
    let text = card("squat", "heavy-lifter", "college-weight-room")
        .done()
        .out;
    let band = Regex::new(r#"--band "([^"]+,choked)""#).expect("a pattern");
    for named in band.captures_iter(&text) {
        let load = call(&[
            "curve",
            "squat",
            "--lifter",
            "heavy-lifter",
            "--band",
            &named[1],
        ]);
        assert_eq!(load.status, 0, "{}", load.complaint);
    }
}

/// A bar over the hips lies under no rack: nothing hangs there from above.
#[test]
fn law_nothing_hangs_from_above_over_the_hips() {
    for lifter in ["heavy-lifter", "club-lifter"] {
        let answer = picked("hip-thrust", lifter, "strength-lab");
        for setup in setups(&answer) {
            assert!(setup["when_bands_go"]["grows"] != true, "{setup}");
        }
    }
}

/// Nobody hangs a calf raise from a rack: where the body alone is too much that is said.
#[test]
fn law_no_body_hangs_from_bands_above() {
    let text = card("calf-raise", "reference-woman", "garage");
    assert!(!text.out.contains("rack top"), "{}", text.out);
}

/// With bands from above the bar holds more than the maximum: nobody warms up with that without them, and the last
/// warm-ups carry them.
#[test]
fn law_no_warm_up_without_bands_is_as_hard_as_the_work() {
    for gym in ["college-weight-room", "strength-lab"] {
        for (lift, one_rm) in [("squat", 180.0), ("bench-press", 130.0)] {
            let told = format!("{one_rm} kg");
            let plan = json(&[
                "plan",
                lift,
                "--training-months",
                "48",
                "--one-rm",
                &told,
                "--method",
                "bands",
                "--gym",
                gym,
            ]);
            let sets = plan["sessions"][0]["sets"].as_array().expect("sets");
            let warm_ups: Vec<&Value> =
                sets.iter().filter(|set| set["kind"] == "warm_up").collect();
            assert!(!warm_ups.is_empty());
            for set in warm_ups {
                let bare = set["notes"].to_string().contains("without bands");
                assert!(
                    !bare || number(set, "share_of_one_rm") < 0.85,
                    "{lift} {gym}: {set}"
                );
            }
        }
    }
}

/// Tables end where a terminal does.
#[test]
fn law_no_line_is_wider_than_a_terminal() {
    let clusters = [&TRAINED_PRESS[..], &["--method", "clusters"]].concat();
    let everything = [&HEAVY_SQUAT[..], &["--weeks", "4"]].concat();
    let ranked = [
        "pick",
        "squat",
        "--lifter",
        "heavy-lifter",
        "--gym",
        "strength-lab",
        "--all",
        "--top",
        "12",
    ];
    for arguments in [
        &clusters[..],
        &everything[..],
        &ranked[..],
        &["progress", "--log", "stalled"],
    ] {
        for units in ["metric", "us"] {
            let text = call(&[arguments, &["--units", units]].concat()).done().out;
            for line in text.lines() {
                assert!(line.chars().count() <= 80, "{arguments:?}: {line}");
            }
        }
    }
}

/// Cards fit a screen, those of whoever has most to choose from too; the setup comes before the choice.
#[test]
fn law_a_card_fits_one_screen() {
    for lift in ["bench-press", "squat", "overhead-press"] {
        let text = card(lift, "heavy-lifter", "strength-lab").done().out;
        assert!(text.lines().count() <= 52, "{text}");
    }
    let text = card("bench-press", "reference-man", "college-weight-room")
        .done()
        .out;
    assert!(text.lines().count() <= 50, "{text}");
    let place = |words: &str| {
        text.find(words)
            .unwrap_or_else(|| panic!("{words}: {text}"))
    };
    assert!(place("load ") < place("The choice"), "{text}");
}

/// What a hand scale reads on the bands is what the felt load is more than the bar, or less with bands from above.
#[test]
fn law_the_hand_scale_agrees_with_the_felt_load() {
    let folder = tempfile::tempdir().expect("a folder");
    let arms = ["--safety-arms", "30 cm..120 cm by 5 cm"];
    call_in(
        folder.path(),
        &[&["gym", "-o", "home.ron"][..], &arms].concat(),
    )
    .done();
    std::fs::write(folder.path().join("high.ron"), HIGH_ANCHORS).expect("a gym");
    let scale = Regex::new(r"one \S+ (drawn out|let back): ([0-9.]+) kg").expect("a pattern");
    let hung = Regex::new(r"hang (\d+) × (\S+) a side").expect("a pattern");
    let mut ways = std::collections::BTreeSet::new();
    for (lift, gym, effort) in [
        ("bench-press", "college-weight-room", "0.8"),
        ("bench-press", "strength-lab", "0.8"),
        ("bench-press", "home.ron", "0.8"),
        // Bands from above that leave a load which is still finished.
        ("bench-press", "high.ron", "0.65"),
        // Bands from below.
        ("bench-press", "garage", "0.8"),
        ("overhead-press", "college-weight-room", "0.8"),
        ("squat", "home.ron", "0.8"),
    ] {
        let ask = [
            "pick",
            lift,
            "--lifter",
            "heavy-lifter",
            "--gym",
            gym,
            "--only",
            "bands",
            "--effort",
            effort,
        ];
        let answer = call_in(folder.path(), &[&ask[..], &["--format", "json"]].concat());
        let answer = answer.done().json();
        let words = in_one_line(&call_in(folder.path(), &ask).done().out);
        let first = &answer["answers"][0];
        let counts: Vec<f64> = hung
            .captures_iter(&words)
            .map(|h| h[1].parse().expect("a count"))
            .collect();
        let pulls: Vec<f64> = scale
            .captures_iter(&words)
            .map(|h| {
                ways.insert(h[1].to_owned());
                let kg: f64 = h[2].parse().expect("kg");
                if &h[1] == "let back" { -kg } else { kg }
            })
            .collect();
        assert_eq!(counts.len(), pulls.len(), "{words}");
        let added: f64 = counts
            .iter()
            .zip(&pulls)
            .map(|(count, kg)| 2.0 * count * kg)
            .sum();
        let expected = number(first, "plain_mass_kg") + added;
        // Each pull is rounded to 0.1 kg and hangs twice.
        let rounding = 0.1 + counts.iter().sum::<f64>() * 0.1;
        assert!(
            (number(first, "load_start_kg") - expected).abs() <= rounding,
            "{lift} {gym}: {words}"
        );
    }
    assert_eq!(ways.len(), 2, "{ways:?}");
}

/// What is left when one band goes is told of one place of the range.
#[test]
fn law_one_band_that_goes_is_told_of_one_place() {
    let answer = picked("bench-press", "heavy-lifter", "college-weight-room");
    let mut seen = 0;
    for setup in setups(&answer) {
        let gone = &setup["when_bands_go"];
        if gone.is_null() || gone["grows"] != true || gone["worst_at_range"] != 0.0 {
            continue;
        }
        seen += 1;
        let there = number(setup, "load_start_kg") + number(gone, "one_side_kg");
        assert!(
            (number(gone, "after_one_kg") - there).abs() < 1.0e-6,
            "{setup}"
        );
    }
    assert!(seen > 0);
}

/// A light lifter presses an empty bar without collars; a bar that is too heavy is never answered with more effort.
#[test]
fn law_an_empty_bar_has_no_collars_and_a_novice_no_more_effort() {
    let text = card("overhead-press", "reference-woman", "college-weight-room")
        .done()
        .out;
    assert!(text.contains("women's bar (15 kg), no plates"), "{text}");
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("own.ron"), ONE_BAR).expect("written");
    let heavy = call_in(
        folder.path(),
        &[
            "pick",
            "overhead-press",
            "--lifter",
            "reference-woman",
            "--gym",
            "own.ron",
        ],
    );
    assert_eq!(heavy.status, 1, "{}", heavy.out);
    assert!(
        heavy.complaint.contains("too heavy for a novice"),
        "{}",
        heavy.complaint
    );
    assert!(!heavy.complaint.contains("--effort"), "{}", heavy.complaint);
}

/// What is advised first evens the lift out by more than bands of one label differ, or is plain weight.
#[test]
fn law_bands_are_advised_first_only_where_they_are_worth_it() {
    for lift in ["deadlift", "bench-press", "squat", "overhead-press"] {
        for gym in ["garage", "college-weight-room"] {
            let answer = picked(lift, "club-lifter", gym);
            let first = &answer["answers"][0];
            let is_plain = first["hung_a_side"] == 0;
            assert!(
                is_plain || number(first, "flattening_percent") > 5.0,
                "{lift} {gym}: {first}"
            );
            let is_under = lift != "deadlift";
            let text = card(lift, "club-lifter", gym).out;
            assert!(
                !is_under || !text.contains("hinged"),
                "{lift} {gym}: {text}"
            );
        }
    }
}

/// A lifter who cannot do a pull-up finds how much help to take, and every command takes it.
#[test]
fn law_a_pull_up_is_helped_until_it_is_done() {
    let text = card("pull-up", "reference-woman", "college-weight-room")
        .done()
        .out;
    assert!(text.contains("Assisted"), "{text}");
    assert!(!text.contains("not lifted in the simulation"), "{text}");
    let help = Regex::new(r#"--item "(counterweight [0-9.]+ kg)""#).expect("a pattern");
    let item = help.captures(&text).unwrap_or_else(|| panic!("{text}"))[1].to_owned();
    let rep = call(&[
        "rep",
        "pull-up",
        "--lifter",
        "reference-woman",
        "--item",
        &item,
    ]);
    assert_eq!(rep.status, 0, "{}", rep.complaint);
    let garage = card("pull-up", "reference-woman", "garage");
    assert_eq!(garage.status, 1, "{}", garage.out);
    assert!(
        garage.complaint.contains("assisting machine"),
        "{}",
        garage.complaint
    );
}

/// The help that a refusal names is enough.
#[test]
fn fault_the_help_that_a_refusal_names_is_enough() {
    let max = |item: &str| {
        call(&[
            "max",
            "pull-up",
            "--lifter",
            "reference-woman",
            "--item",
            item,
        ])
    };
    let refused = max("counterweight 12.5 kg");
    assert_eq!(refused.status, 1, "{}", refused.out);
    let help = Regex::new(r#"--item "(counterweight [0-9.]+ kg)""#).expect("a pattern");
    let item = help.captures(&refused.complaint).expect("a hint")[1].to_owned();
    assert_eq!(max(&item).status, 0, "{item}");
}

/// Plain weight has the repetitions of the plans: by its share of the 1RM.
#[test]
fn law_plain_weight_has_the_same_chart_as_plans() {
    let library = Library::built_in();
    let table = &library
        .published()
        .expect("the tables are sound")
        .repetitions;
    let chart = RepetitionChart::through(&table.chart).expect("a chart");
    for effort in ["90%", "93%", "96%"] {
        let ask = [
            "pick",
            "pull-up",
            "--lifter",
            "heavy-lifter",
            "--gym",
            "garage",
            "--effort",
        ];
        let ask = [&ask[..], &[effort]].concat();
        let answer = json(&ask);
        let first = &answer["answers"][0];
        let felt = number(first, "load_start_kg");
        let body = felt - number(first, "plain_mass_kg");
        let share = felt / (body + number(&answer["summary"], "one_rm_kg"));
        let allowed = chart.allowed_at(share).expect("a number of repetitions");
        let text = call(&ask).done().out;
        let said = format!("{allowed} by the chart");
        assert!(text.contains(&said), "{share} {said}: {text}");
    }
}

/// A light load still tells what to do.
#[test]
fn law_a_load_off_the_chart_has_repetitions() {
    let repetitions = Regex::new(r"do \d+").expect("a pattern");
    for lifter in ["reference-woman", "club-lifter"] {
        let text = card("biceps-curl", lifter, "college-weight-room")
            .done()
            .out;
        assert!(repetitions.is_match(&text), "{text}");
        assert!(!text.contains("59 simulated"), "{text}");
    }
}

/// Fibres beyond living lengths are one short note at the end of a card.
#[test]
fn law_a_card_has_one_note_on_fibres_at_its_end() {
    let text = card("overhead-press", "heavy-lifter", "college-weight-room")
        .done()
        .out;
    assert!(!text.contains("warning:"), "{text}");
    let note = text.find("note: the model is less sure").expect("a note");
    assert!(note > text.find("Cautions").expect("cautions"), "{text}");
    assert!(text[note..].lines().count() <= 4, "{text}");
}

/// Where arms belong and none stand, a plan leaves no more on the lifter when bands fail than a pick does.
#[test]
fn law_a_plan_without_arms_leaves_no_more_than_a_pick() {
    let left = Regex::new(r"are left, (\d+) % of").expect("a pattern");
    let arguments = ["--lifter", "heavy-lifter", "--gym", "garage"];
    for lift in ["squat", "bench-press"] {
        let plan = call(&[&["plan", lift, "--method", "bands"][..], &arguments].concat());
        assert!(plan.status <= 1, "{}", plan.complaint);
        for share in left.captures_iter(&in_one_line(&plan.out)) {
            let percent: f64 = share[1].parse().expect("a number");
            assert!(percent <= 90.0, "{lift}: {}", plan.out);
        }
    }
}

/// Motion carries the maximum of a row over a place where it could not be held: a pick is as heavy as a plan then.
#[test]
fn law_a_row_is_picked_as_heavy_as_its_effort_says() {
    let answer = picked("row", "heavy-lifter", "college-weight-room");
    let plain = &answer["plain"];
    let share = number(plain, "plain_mass_kg") / number(&answer["summary"], "one_rm_kg");
    assert!((0.75..=0.80).contains(&share), "{share}: {plain}");
    let text = card("row", "heavy-lifter", "college-weight-room")
        .done()
        .out;
    assert!(!text.contains("too light to count on"), "{text}");
    assert!(
        in_one_line(&text).contains("80 % of what the 1RM asks for"),
        "{text}"
    );
    card("row", "reference-woman", "college-weight-room").done();
}

/// Where plates run out, what comes nearest to the wished effort stands before what is more even.
#[test]
fn law_where_plates_run_out_the_load_comes_before_evenness() {
    let answer = picked("squat", "heavy-lifter", "garage");
    let first = &answer["answers"][0];
    let most = setups(&answer).map(|setup| number(setup, "max_effort_percent"));
    let most = most.fold(0.0, f64::max);
    assert!(number(first, "max_effort_percent") > most - 5.0, "{first}");
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("own.ron"), ONE_BAR).expect("written");
    let light = call_in(
        folder.path(),
        &[
            "pick",
            "deadlift",
            "--lifter",
            "heavy-lifter",
            "--gym",
            "own.ron",
        ],
    );
    let text = in_one_line(&light.done().out);
    assert!(
        text.contains("This gym cannot load this setup exactly"),
        "{text}"
    );
    assert!(text.contains("set it on blocks"), "{text}");
}

/// What a plan warns of stands on the card of a pick too.
#[test]
fn law_a_card_warns_of_what_a_plan_warns_of() {
    for (lift, words) in [
        ("deadlift", "Keep the back's shape"),
        ("leg-press", "sled's stops"),
        ("hip-thrust", "Start lighter than computed"),
    ] {
        let text = card(lift, "reference-woman", "college-weight-room")
            .done()
            .out;
        assert!(in_one_line(&text).contains(words), "{lift}: {text}");
    }
}

/// The body alone is the least there is without help: a trained lifter gets it, as a plan does, and nothing added is a
/// maximum.
#[test]
fn law_the_body_alone_is_an_answer() {
    let text = in_one_line(&card("pull-up", "heavy-lifter", "garage").done().out);
    let answer = picked("pull-up", "heavy-lifter", "garage");
    let body = number(&answer["answers"][0], "load_start_kg");
    let share = 100.0 * body / (body + number(&answer["summary"], "one_rm_kg"));
    let said = format!("nothing beside the body, {share:.0} % of 1RM");
    assert!(text.contains(&said), "{said}: {text}");
    assert!(text.contains("again the body alone"), "{text}");
    assert!(text.contains("the body alone is more than 80 %"), "{text}");
    let plan = |lift: &str| call(&["plan", lift, "--one-rm", "0 kg", "--training-months", "24"]);
    // One pull-up is a maximum, and leaves no set with a reserve.
    assert!(plan("pull-up").complaint.contains("a machine that helps"));
    assert!(plan("squat").complaint.contains("a 1RM of 0 kg"));
    let folder = tempfile::tempdir().expect("a folder");
    let team = "name,sex,mass (kg),height (cm),training_months,pull-up (kg)\n\
                Fay (invented),woman,62,170,24,0\n";
    std::fs::write(folder.path().join("team.csv"), team).expect("written");
    let arguments = ["plan", "pull-up", "--team", "team.csv", "-o", "sheets"];
    let answer = call_in(folder.path(), &arguments);
    // She has a sheet that says why, and no session.
    assert_eq!(answer.status, 1, "{}{}", answer.out, answer.complaint);
}

/// A load depends on what a gym can load, not on a lighter bar beside the same one.
#[test]
fn law_a_lighter_bar_in_the_gym_makes_no_lighter_work() {
    let load = |gym: &str| {
        let plan = json(&["plan", "bench-press", "--one-rm", "31.7 kg", "--gym", gym]);
        let sets = plan["sessions"][0]["sets"]
            .as_array()
            .expect("sets")
            .clone();
        let work = sets.into_iter().find(|set| set["kind"] == "work");
        number(&work.expect("a set"), "load_kg")
    };
    assert_eq!(load("garage"), load("college-weight-room"));
}
