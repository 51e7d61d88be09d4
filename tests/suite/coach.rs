//! What a coach is told must not hurt anyone: every setup and every plan over lifts, lifters, gyms and methods.
//!
//! A small sample stands in the ordinary suite; all of them are run by
//! `cargo test --test suite -- --ignored law_every_answer`.

use crate::calling::{HEAVY_SQUAT, call, json};
use crate::lift_by_another_name::LIFTS;
use std::collections::BTreeSet;
use torquill::anatomy::Training;
use torquill::library::{Library, assemble};
use torquill::narrative::pick_choice_words::answer_lines;
use torquill::report::{pick_card_text, plan_text};
use torquill::session::lowering_limits::LEAST_RESERVE;
use torquill::session::method::{METHODS, Method};
use torquill::session::status::Level;
use torquill::setups::{AllowedPieces, Choosing, SetupFamily, Watch, Wish};
use torquill::study::{
    MethodChoice, PersonTold, PickAnswer, Picked, PlanAnswer, PlanQuestion, Question, pick,
    pick_card, plan,
};
use torquill::units::System;

const LIFTERS: [&str; 5] = [
    "reference-man",
    "reference-woman",
    "tall-novice",
    "club-lifter",
    "heavy-lifter",
];
const GYMS: [&str; 3] = ["garage", "college-weight-room", "strength-lab"];

/// Columns of the widest line.
const WIDEST: usize = 120;

/// Every combination of lift, lifter and gym, one in so many.
fn combinations(one_in: usize) -> Vec<(&'static str, &'static str, &'static str)> {
    let mut all = Vec::new();
    for (lift_index, lift) in LIFTS.iter().enumerate() {
        for (lifter_index, lifter) in LIFTERS.iter().enumerate() {
            for (gym_index, gym) in GYMS.iter().enumerate() {
                let place = lift_index + 7 * lifter_index + 3 * gym_index;
                if place % one_in == 0 {
                    all.push((*lift, *lifter, *gym));
                }
            }
        }
    }
    all
}

fn checked_text(text: &str, at: &str) {
    let mut cautions = BTreeSet::new();
    for line in text.lines() {
        assert!(line.chars().count() <= WIDEST, "{at}: {line}");
        let is_caution = line.starts_with("caution: ") || line.starts_with("! ");
        assert!(
            !is_caution || cautions.insert(line.to_owned()),
            "{at}: twice: {line}"
        );
    }
}

/// The answers of `pick`: different, one of a kind, plain weight first for a novice, and safe when bands go.
fn check_pick(library: &Library, (lift, lifter, gym_name): (&str, &str, &str)) {
    let at = format!("pick {lift} {lifter} {gym_name}");
    let model = assemble(library, lifter, lift, &[]).expect("a built-in model");
    let question = Question::new(lift, &model.movement, &model.lifter);
    let gym = library.gym(gym_name).expect("a shipped gym");
    let choosing = Choosing {
        gym: &gym,
        allowed: AllowedPieces::default(),
        wish: Wish::default(),
        top: 10,
    };
    let published = library.published().expect("tables");
    let found = match pick(
        &question,
        &choosing,
        &published.eccentric,
        &Watch::default(),
    ) {
        Ok(found) => found,
        Err(fault) => {
            assert!(fault.exit_status() <= 2, "{at}: {fault}");
            return;
        }
    };
    assert!((1..=5).contains(&found.answers.len()), "{at}");
    check_answers(&found, model.lifter.training, &at);
    let card = pick_card(&question, published, &found, &found.answers[0]).expect("a card");
    let text = pick_card_text(&found, Some(&card), model.lifter.training, System::Metric);
    checked_text(&text, &at);
    assert!(
        text.lines().all(|line| line.chars().count() <= 80),
        "{at}:\n{text}"
    );
}

fn check_answers(found: &PickAnswer, training: Training, at: &str) {
    let mut kinds = BTreeSet::new();
    for answer in &found.answers {
        assert!(kinds.insert(answer.loaded.family), "{at}: a kind twice");
    }
    for (index, one) in found.answers.iter().enumerate() {
        for other in &found.answers[index + 1..] {
            assert!(
                one.loaded.setup != other.loaded.setup,
                "{at}: one loading twice"
            );
        }
    }
    if found.plain.is_some() {
        assert!(
            kinds.contains(&SetupFamily::Plain),
            "{at}: plain weight is always there"
        );
    }
    check_first(found, at);
    let novice = training == Training::Novice;
    if novice && found.plain.is_some() {
        assert_eq!(found.answers[0].loaded.family, SetupFamily::Plain, "{at}");
    }
    for one in found.answers.iter().chain(&found.ranked) {
        let Some(failure) = one.loaded.failure.filter(|failure| failure.grows) else {
            continue;
        };
        let safety = &found.safety;
        if !safety.above_one_rm {
            let most = (safety.one_rm + safety.body)
                .as_kg()
                .max(safety.body.as_kg());
            assert!(failure.after_all.as_kg() <= most + 1.0e-6, "{at}");
        } else if safety.arms.is_none() {
            let most = (safety.lowered + safety.body)
                .as_kg()
                .max(safety.body.as_kg());
            assert!(failure.after_all.as_kg() <= most + 1.0e-6, "{at}");
        }
    }
}

/// What is asked for a lift, a lifter and a gym, with this training.
fn question(lift: &str, lifter: Option<&str>, gym: &str, months: Option<f64>) -> PlanQuestion {
    PlanQuestion {
        lifter: lifter.map(str::to_owned),
        methods: MethodChoice::All,
        person: PersonTold {
            training_months: months,
            ..PersonTold::default()
        },
        gym: Some(gym.to_owned()),
        ..PlanQuestion::usual(lift)
    }
}

/// What leaves more than 90 % of the 1RM when bands go stands behind all that leaves less, arms or not, and is told to.
fn check_first(found: &PickAnswer, at: &str) {
    let body = found.safety.body.as_kg();
    let is_near = |one: &Picked| {
        let failure = one.loaded.failure.filter(|failure| failure.grows);
        failure.is_some_and(|failure| {
            let share = found.safety.share_of(failure.after_all);
            share > 1.0 + 1.0e-6
                || share > 0.9 + 1.0e-6 && failure.after_all.as_kg() > body + 1.0e-6
        })
    };
    let near: Vec<bool> = found.answers.iter().map(is_near).collect();
    assert!(near.is_sorted(), "{at}: {near:?}");
    for (place, one) in found.answers.iter().enumerate() {
        let lines = answer_lines(found, one, System::Metric).concat();
        let told = lines.split_once(" in what is advised first)");
        assert_eq!(told.is_some(), near[place] && !near[0], "{at}: {lines}");
        if let Some((before, _)) = told {
            let failure = found.answers[0].loaded.failure;
            let share = failure.filter(|failure| failure.grows);
            let share = share.map(|failure| 100.0 * found.safety.share_of(failure.after_all));
            let words = share.map_or("(no band helps".to_owned(), |share| {
                format!("({share:.0} %")
            });
            assert!(before.ends_with(&words), "{at}: {words}: {lines}");
        }
    }
}

/// The plans of every method: simulated to the end with their reserve, nothing above the 1RM that may not be.
fn check_plan(library: &Library, asked: &PlanQuestion, at: &str) {
    match plan(asked, library, &Watch::default()) {
        Ok(answer) => check_sessions(&answer, at),
        Err(fault) => assert_eq!(fault.exit_status(), 1, "{at}: {fault}"),
    }
}

fn check_sessions(answer: &PlanAnswer, at: &str) {
    for session in &answer.sessions {
        let draft = &session.plan.draft;
        let at = format!("{at} {}", draft.method.name());
        let novice = draft.lift.level() == Level::Novice;
        for set in session.plan.working_sets() {
            let overload = draft.method == Method::OverloadedLowering;
            let bands = draft.method == Method::Bands && draft.lift.level() == Level::Advanced;
            let may = (overload && !novice) || bands;
            assert!(set.share <= 1.0 + 1.0e-9 || may, "{at}: {}", set.share);
            let needed = set.repetitions() + set.reserve;
            let possible = set.allowed.and_then(|allowed| allowed.by_model);
            if let (Some(possible), 1) = (possible, set.groups.len()) {
                assert!(possible >= needed, "{at}: {possible} of {needed}");
            }
        }
        if let Some(prediction) = draft.predictions.first() {
            assert_eq!(prediction.stall(), None, "{at}");
        }
        for lowering in &draft.lowerings {
            assert!(
                lowering.reserve >= LEAST_RESERVE,
                "{at}: {}",
                lowering.reserve
            );
        }
    }
    checked_text(&plan_text(answer, System::Metric), at);
}

fn check_all(one_in: usize) {
    let library = Library::built_in();
    for (lift, lifter, gym) in combinations(one_in) {
        check_pick(&library, (lift, lifter, gym));
        let at = format!("plan {lift} {lifter} {gym}");
        check_plan(&library, &question(lift, Some(lifter), gym, None), &at);
        let trained = question(lift, Some(lifter), gym, Some(48.0));
        check_plan(&library, &trained, &format!("{at}, four years"));
    }
}

#[test]
fn law_a_sample_of_all_answers_is_safe_and_readable() {
    check_all(37);
}

#[test]
#[ignore = "some 210 picks and 2500 plans: for the nightly run"]
fn law_every_answer_is_safe_and_readable() {
    check_all(1);
    assert_eq!(METHODS.len(), 6);
}

/// The trial's own case: a novice in the squat gets plain weight first, and nothing pulls up and down at once.
#[test]
fn law_a_novice_is_given_plain_weight_first_and_nothing_both_ways() {
    let arguments = [
        "pick",
        "squat",
        "--lifter",
        "reference-woman",
        "--gym",
        "college-weight-room",
    ];
    let answer = json(&arguments);
    assert_eq!(answer["answers"][0]["kind"], "plain weight");
    for list in ["answers", "ranked"] {
        for setup in answer[list].as_array().expect("setups") {
            let pieces = setup["bands_and_chains"].as_str().expect("words");
            let above = pieces.contains("rack top");
            let below =
                pieces.contains("floor") || pieces.contains("foot") || pieces.contains("chain");
            assert!(!(above && below), "{pieces}");
            if setup["when_bands_go"]["grows"] == true {
                let percent = setup["when_bands_go"]["after_all_percent"]
                    .as_f64()
                    .expect("%");
                assert!(percent <= 100.0 + 1.0e-9, "{pieces}: {percent}");
            }
        }
    }
    let both = call(&[&arguments[..], &["--both-ways"]].concat());
    assert_eq!(both.status, 0, "{}", both.complaint);
}

/// An experienced lifter gets reverse bands with more than the 1RM on the bar only where arms catch it; without them
/// nothing near a maximum is left when bands fail, and such bands are not the first answer.
#[test]
fn law_more_than_can_be_lowered_is_offered_only_over_safety_arms() {
    for gym in ["garage", "college-weight-room"] {
        let answer = json(&[
            "pick",
            "bench-press",
            "--lifter",
            "heavy-lifter",
            "--gym",
            gym,
        ]);
        let lowered = answer["summary"]["lowered_kg"].as_f64().expect("kg");
        let arms = &answer["summary"]["safety_arms_m"];
        assert_eq!(arms.is_null(), gym == "garage", "{gym}");
        let first = &answer["answers"][0];
        assert!(
            !arms.is_null() || first["when_bands_go"]["grows"] != true,
            "{first}"
        );
        for setup in answer["ranked"].as_array().expect("setups") {
            if setup["when_bands_go"]["grows"] == true && arms.is_null() {
                let share = setup["when_bands_go"]["after_all_percent"].as_f64();
                assert!(share.is_some_and(|share| share <= 90.0 + 1.0e-6), "{setup}");
                let left = setup["when_bands_go"]["after_all_kg"].as_f64().expect("kg");
                assert!(
                    left <= lowered + 1.0e-6,
                    "{gym}: {left} kg over {lowered} kg"
                );
            }
        }
    }
}

#[test]
fn fault_more_than_the_maximum_where_helpers_cannot_take_it() {
    for lift in ["overhead-press", "hip-thrust", "row", "deadlift"] {
        let answer = call(&[
            "plan",
            lift,
            "--training-months",
            "60",
            "--one-rm",
            "100 kg",
            "--method",
            "overloaded-lowering",
        ]);
        assert_eq!(answer.status, 1, "{lift}: {}", answer.out);
        assert!(
            answer.complaint.contains("helpers cannot"),
            "{lift}: {}",
            answer.complaint
        );
        assert!(
            answer.complaint.contains("leg press"),
            "{lift}: {}",
            answer.complaint
        );
    }
}

/// What a refusal proposes is itself planned: between the loads that it names every lowering keeps its reserve.
#[test]
fn fault_the_hint_of_a_refused_lowering_names_loads_that_are_planned() {
    let ask = |load: &str| {
        call(&[
            "plan",
            "bench-press",
            "--training-months",
            "60",
            "--one-rm",
            "140 kg",
            "--method",
            "overloaded-lowering",
            "--load",
            load,
        ])
    };
    let refused = ask("250 kg");
    assert_eq!(refused.status, 1, "{}", refused.out);
    let told = regex::Regex::new(r#"(?:between |--load ")([0-9.]+ kg)"#).expect("a pattern");
    if let Some(loads) = told.captures(&refused.complaint) {
        let planned = ask(&loads[1]);
        assert_eq!(planned.status, 0, "{}", planned.complaint);
    } else {
        assert!(
            refused.complaint.contains("straight sets"),
            "{}",
            refused.complaint
        );
    }
}

/// Sets that the simulation or the chart fails are not printed: both figures asked for, a refusal; one, the other is found.
#[test]
fn fault_sets_that_the_simulation_fails_are_refused_or_made_lighter() {
    let plan = [
        "plan",
        "bench-press",
        "--training-months",
        "48",
        "--one-rm",
        "140 kg",
    ];
    let both = call(
        &[
            &plan[..],
            &["--sets", "10", "--reps", "10", "--load", "132.5 kg"],
        ]
        .concat(),
    );
    assert_eq!(both.status, 1, "{}", both.out);
    assert!(both.complaint.contains("in reserve"), "{}", both.complaint);
    let lighter = json(&[&plan[..], &["--sets", "10", "--reps", "10"]].concat());
    let set = lighter["sessions"][0]["sets"]
        .as_array()
        .expect("sets")
        .last()
        .expect("one")
        .clone();
    assert_eq!(set["repetitions"], 10);
    assert!(
        set["share_of_one_rm"].as_f64().expect("a share") < 0.72,
        "{set}"
    );
    assert_eq!(lighter["sessions"][0]["predictions"][0]["completed"], 100);
    let hard = call(
        &[
            &plan[..],
            &[
                "--method",
                "bands",
                "--effort",
                "0.99",
                "--gym",
                "college-weight-room",
            ],
        ]
        .concat(),
    );
    assert!(
        hard.status == 1 || !hard.out.contains("stalls"),
        "{}",
        hard.out
    );
}

/// A very old lifter is planned as a novice: no method but straight sets, no more than the 1RM.
#[test]
fn law_a_very_old_lifter_is_planned_as_a_novice() {
    for age in ["74", "80"] {
        let answer = call(&[
            "plan",
            "bench-press",
            "--one-rm",
            "60 kg",
            "--training-months",
            "60",
            "--age",
            age,
            "--method",
            "bands",
        ]);
        assert_eq!(answer.status, 0, "{}", answer.complaint);
        assert!(
            answer.out.contains("straight in place of bands"),
            "{}",
            answer.out
        );
        assert!(
            answer.out.contains(&format!("At {age} years")),
            "{}",
            answer.out
        );
    }
}

/// Where less is lowered evenly than is lifted with speed, nobody is told of lowering more than can be lifted.
#[test]
fn fault_a_caution_about_more_than_the_maximum_where_less_is_lowered() {
    let row = call(&["max", "row", "--eccentric", "3 s"]);
    assert!(
        !row.out.contains("lowering more than one can lift"),
        "{}",
        row.out
    );
    assert!(row.out.contains("No weight to go by"), "{}", row.out);
}

/// Light lifters are planned with a lighter bar.
#[test]
fn law_a_light_lifter_finds_a_bar() {
    let raise = json(&[
        "plan",
        "lateral-raise",
        "--lifter",
        "reference-woman",
        "--gym",
        "college-weight-room",
    ]);
    assert!(
        !raise["sessions"][0]["sets"]
            .as_array()
            .expect("sets")
            .is_empty()
    );
    let row = json(&["plan", "row", "--lifter", "reference-woman"]);
    let set = row["sessions"][0]["sets"]
        .as_array()
        .expect("sets")
        .last()
        .expect("one")
        .clone();
    assert!(
        set["on_the_bar"]
            .as_str()
            .expect("words")
            .contains("(10 kg)"),
        "{set}"
    );
}

#[test]
fn law_the_card_comes_first_and_fits_a_screen() {
    let answer = call(&[
        "pick",
        "bench-press",
        "--lifter",
        "reference-man",
        "--gym",
        "college-weight-room",
    ]);
    let lines: Vec<&str> = answer.out.lines().collect();
    assert!(lines.len() <= 50, "{} lines:\n{}", lines.len(), answer.out);
    assert!(
        lines.iter().all(|line| line.chars().count() <= 80),
        "{}",
        answer.out
    );
    let card = lines
        .iter()
        .position(|line| line.starts_with("load  "))
        .expect("a card");
    let choice = lines
        .iter()
        .position(|line| *line == "The choice")
        .expect("a choice");
    assert!(card < choice && card < 10, "{}", answer.out);
}

/// The options that the card prints give the same setup in another command.
#[test]
fn law_what_the_card_names_is_taken_back_word_for_word() {
    let picked = call(&[
        "pick",
        "bench-press",
        "--lifter",
        "club-lifter",
        "--gym",
        "garage",
    ]);
    let options = regex::Regex::new(r#"(--[a-z]+) "([^"]+)""#).expect("a pattern");
    let start = picked.out.find("again ").expect("options");
    let end = picked.out[start..].find("\n\n").expect("an end") + start;
    let text = picked.out[start..end]
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    let mut arguments = vec![
        "rep".to_owned(),
        "bench-press".to_owned(),
        "--lifter".to_owned(),
        "club-lifter".to_owned(),
    ];
    for option in options.captures_iter(&text) {
        arguments.extend([option[1].to_owned(), option[2].to_owned()]);
    }
    assert!(arguments.len() > 4, "{}", picked.out);
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let rep = call(&arguments);
    assert_eq!(rep.status, 0, "{arguments:?}: {}", rep.complaint);
}

/// Weeks of a novice go on without an easier one; those of an advanced lifter rise, rest and come back heavier.
#[test]
fn law_weeks_go_on_by_their_rule() {
    let top = |plan: &serde_json::Value, week: usize| -> (f64, u64) {
        // One session may stand for several weeks, which the log decides: "Weeks 6 to 8, day 1".
        let is_of_week = |title: &str| {
            let Some((weeks, day)) = title.split_once(", day ") else {
                return false;
            };
            let mut ends = weeks
                .split(' ')
                .filter_map(|word| word.parse::<usize>().ok());
            let first = ends.next().unwrap_or(0);
            let last = ends.next().unwrap_or(first);
            day.starts_with('1') && (first..=last).contains(&week)
        };
        let sessions = plan["sessions"].as_array().expect("sessions");
        let session = sessions
            .iter()
            .find(|s| s["session"].as_str().is_some_and(is_of_week))
            .expect("a day");
        let set = session["sets"]
            .as_array()
            .expect("sets")
            .last()
            .expect("one");
        (
            set["load_kg"].as_f64().expect("kg"),
            set["repetitions"].as_u64().expect("a count"),
        )
    };
    let advanced = json(&[&HEAVY_SQUAT[..], &["--weeks", "12"]].concat());
    let weeks: Vec<(f64, u64)> = (1..=12).map(|week| top(&advanced, week)).collect();
    for round in [0, 4, 8] {
        assert!(
            weeks[round].0 <= weeks[round + 1].0 && weeks[round + 1].0 <= weeks[round + 2].0,
            "{weeks:?}"
        );
        assert!(weeks[round].0 < weeks[round + 2].0, "{weeks:?}");
        assert!(weeks[round + 3].0 < weeks[round + 2].0, "{weeks:?}");
    }
    assert!(
        weeks[2].0 < weeks[6].0 && weeks[6].0 < weeks[10].0,
        "{weeks:?}"
    );
    assert!(
        weeks[0].1 > weeks[4].1 && weeks[4].1 > weeks[8].1,
        "{weeks:?}"
    );
    let novice = json(&["plan", "squat", "--one-rm", "80 kg", "--weeks", "8"]);
    let weeks: Vec<(f64, u64)> = (1..=8).map(|week| top(&novice, week)).collect();
    // More repetitions or the next load in every week: they begin light enough that today's strength holds the last.
    let rises = |pair: &[(f64, u64)]| pair[1].0 > pair[0].0 || pair[1].1 > pair[0].1;
    assert!(weeks.windows(2).all(rises), "{weeks:?}");
    let titles = novice["sessions"].to_string();
    assert!(!titles.contains("deload"), "{weeks:?}");
}
