//! A fitted lifter's lift that nobody tested: planned and picked from the lower end of what it may be.

use crate::calling::{call_in, in_one_line};
use proptest::prelude::*;
use serde_json::Value;
use std::path::Path;
use tempfile::TempDir;
use torquill::library::{Library, assemble};
use torquill::narrative::pick_card_words::card_lines;
use torquill::narrative::quantities::QuantityWords;
use torquill::session::maximum_test::TestedMaximum;
use torquill::session::status::{INTERMEDIATE_MONTHS, MIDDLE_YEARS, Trainee};
use torquill::setups::{AllowedPieces, Choosing, Goal, Watch, Wish};
use torquill::study::{Question, pick, pick_card};
use torquill::units::{Length, System};

/// A folder with the file of a lifter who was measured in the squat alone.
fn squatter() -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let words =
        "fit --name ann --sex woman --mass 61kg --height 168cm --training-months 14 -o a.ron";
    let mut words: Vec<&str> = words.split(' ').collect();
    words.extend(["--lift", "squat=110 kg x 5 @ rir 2"]);
    call_in(folder.path(), &words).done();
    folder
}

fn json_of(folder: &Path, asked: &str) -> Value {
    let words: Vec<&str> = asked
        .split(' ')
        .chain(["--lifter", "a.ron", "--format", "json"])
        .collect();
    call_in(folder, &words).done().json()
}

fn kg(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("no number: {value}"))
}

#[test]
fn law_a_lift_that_nobody_tested_is_planned_from_the_lower_end() {
    let folder = squatter();
    let folder = folder.path();
    let known = &json_of(folder, "max bench-press --scatter")["summary"];
    let (low, mean) = (kg(&known["one_rm_low_kg"]), kg(&known["one_rm_kg"]));
    assert!(low < mean, "{low} {mean}");
    let session = &json_of(folder, "plan bench-press")["sessions"][0];
    assert!((kg(&session["one_rm_kg"]) - low).abs() < 1e-9, "{session}");
    let from = session["one_rm_from"].to_string();
    assert!(from.contains(&format!("simulated {mean:.1} kg")), "{from}");
    assert!(
        from.contains(&format!("planned from {low:.1} kg until")),
        "{from}"
    );
    for set in session["sets"].as_array().expect("sets") {
        let share = kg(&set["load_kg"]) / low;
        assert!((kg(&set["share_of_one_rm"]) - share).abs() < 1e-9, "{set}");
        assert!(share < 1.0, "{set}");
    }
    assert!(
        session["remarks"]
            .to_string()
            .contains("A test of the 1RM on a day of its own comes before")
    );
    let page = [
        "plan",
        "bench-press",
        "--lifter",
        "a.ron",
        "--sheet",
        "s.html",
    ];
    let told = call_in(folder, &page).done().out;
    let sheet = std::fs::read_to_string(folder.join("s.html")).expect("a sheet");
    for text in [&told, &sheet] {
        assert!(
            in_one_line(text).contains("hold four in five; planned from"),
            "{text}"
        );
    }
}

/// Whoever trained other lifts for years begins this one as a novice does, at no more than a novice's share and repetitions.
#[test]
fn law_a_lift_that_nobody_did_begins_as_a_novices() {
    let folder = squatter();
    let folder = folder.path();
    for lift in ["hip-thrust", "bench-press", "biceps-curl"] {
        let session = &json_of(folder, &format!("plan {lift}"))["sessions"][0];
        let told = session["remarks"].to_string();
        assert!(
            told.contains("begins as for a novice of this lift"),
            "{told}"
        );
        let sets = session["sets"].as_array().expect("sets").iter();
        for set in sets.filter(|set| set["kind"] == "work") {
            assert!(kg(&set["share_of_one_rm"]) <= 0.65 + 0.05 + 1e-9, "{set}");
            assert!(kg(&set["repetitions"]) <= 8.0, "{set}");
        }
        let block = json_of(folder, &format!("plan {lift} --weeks 4"));
        let one_rm = kg(&session["one_rm_kg"]);
        let told = json_of(
            folder,
            &format!("plan {lift} --weeks 4 --one-rm {one_rm}kg"),
        );
        let most = |answer: &Value| {
            let sessions = answer["sessions"].as_array().expect("sessions").iter();
            let sets = sessions.flat_map(|session| session["sets"].as_array().expect("sets"));
            sets.map(|set| kg(&set["share_of_one_rm"]))
                .fold(0.0, f64::max)
        };
        assert!(most(&block) < most(&told), "{lift}");
    }
}

#[test]
fn law_a_lift_that_was_tested_or_told_is_planned_as_it_is() {
    let folder = squatter();
    let folder = folder.path();
    let squat = kg(&json_of(folder, "max squat")["summary"]["one_rm_kg"]);
    for (asked, one_rm) in [
        ("plan squat", squat),
        ("plan bench-press --one-rm 50kg", 50.0),
    ] {
        let session = &json_of(folder, asked)["sessions"][0];
        assert!((kg(&session["one_rm_kg"]) - one_rm).abs() < 1e-9, "{asked}");
        let told = session.to_string();
        assert!(
            !told.contains("four in five") && !told.contains("tested"),
            "{asked}: {told}"
        );
    }
}

#[test]
fn law_scatter_of_a_pick_tells_the_interval_of_a_measured_lift() {
    let folder = squatter();
    let known = &json_of(folder.path(), "max squat --scatter")["summary"];
    let (low, high) = (kg(&known["one_rm_low_kg"]), kg(&known["one_rm_high_kg"]));
    let pick = [
        "pick",
        "squat",
        "--gym",
        "garage",
        "--lifter",
        "a.ron",
        "--scatter",
    ];
    let told = in_one_line(&call_in(folder.path(), &pick).done().complaint);
    let shown = |kg: f64| (10.0 * kg).round() / 10.0;
    let words = format!("the 1RM is {} kg to {} kg", shown(low), shown(high));
    assert!(told.contains(&words), "{words}: {told}");
}

#[test]
fn law_an_ill_lifter_is_sent_to_no_test() {
    let folder = squatter();
    let remarks = &json_of(folder.path(), "plan bench-press --unwell")["sessions"][0]["remarks"];
    let remarks = remarks.to_string();
    assert!(
        remarks.contains("test it once this lifter is well"),
        "{remarks}"
    );
    assert!(!remarks.contains("comes before this session"), "{remarks}");
}

#[test]
fn law_setups_of_an_untested_lift_are_picked_for_the_lower_end() {
    let folder = squatter();
    let folder = folder.path();
    let low = kg(&json_of(folder, "max bench-press --scatter")["summary"]["one_rm_low_kg"]);
    let pick = [
        "pick",
        "bench-press",
        "--gym",
        "garage",
        "--lifter",
        "a.ron",
    ];
    let picked = json_of(folder, "pick bench-press --gym garage");
    let one_rm = kg(&picked["summary"]["one_rm_kg"]);
    // The strength of that 1RM is found to half a hundredth of it.
    assert!((one_rm / low - 1.0).abs() < 0.005, "{one_rm} {low}");
    for more in [&[][..], &["--all"]] {
        let told = in_one_line(&call_in(folder, &[&pick[..], more].concat()).done().out);
        let words = format!("hold four in five; planned from {low:.1} kg until it is tested");
        assert!(told.contains(&words), "{told}");
    }
}

#[test]
fn fault_arms_at_the_lowest_place_are_not_said_to_catch_at_the_end() {
    let library = Library::built_in();
    let gym = library.gym("strength-lab").expect("a gym");
    let published = library.published().expect("tables");
    let model = assemble(&library, "heavy-lifter", "squat", &[]).expect("a model");
    let question = Question::new("squat", &model.movement, &model.lifter);
    let choosing = Choosing {
        gym: &gym,
        wish: Wish {
            goal: Goal::MostLoad {
                at: 1.0,
                limit_at: Some(0.2),
            },
            share: [None, None],
            ..Wish::default()
        },
        allowed: AllowedPieces::default(),
        top: 10,
    };
    let found = pick(
        &question,
        &choosing,
        &published.eccentric,
        &Watch::default(),
    )
    .expect("setups");
    let arms = found.safety.arms.expect("arms");
    let end = found.study.range.poses.last().expect("poses").load.z_m;
    let below = System::Metric.tape(Length::from_m(end) - arms);
    let heavy = found.ranked.iter().filter(|setup| {
        let most = setup.loaded.loads.map(|load| found.safety.share_of(load));
        setup.loaded.hung > 0 && most[2] > 1.01
    });
    let mut seen = 0;
    for setup in heavy {
        let card = pick_card(&question, published, &found, setup).expect("a card");
        let lines = card_lines(&found, setup, &card, System::Metric);
        let told: Vec<&String> = lines
            .iter()
            .map(|line| &line.1)
            .filter(|words| words.contains("near the end"))
            .collect();
        assert_eq!(told.len(), 1, "{lines:?}");
        let start = System::Metric.mass(setup.loaded.loads[0]);
        assert!(
            told[0].contains(&format!(
                "the safety arms stand {below} lower and hold nothing"
            )),
            "{told:?}"
        );
        assert!(told[0].contains(&format!("to {start} felt")), "{told:?}");
        seen += 1;
    }
    assert!(seen > 0, "no setup is felt as more than the 1RM");
}

proptest! {
    #[test]
    fn law_a_true_maximum_is_tested_only_in_who_may_lift_one(
        months in 0.0..120.0_f64,
        age in prop::option::of(18.0..95.0_f64),
    ) {
        let trainee = Trainee { age_years: age, ..Trainee::with_training_months(months) };
        let may = months >= INTERMEDIATE_MONTHS && age.is_none_or(|age| age < MIDDLE_YEARS);
        prop_assert_eq!(TestedMaximum::of(&trainee) == TestedMaximum::OneRm, may);
    }
}
