//! What is told of own files where it stands: in the file itself, not in one that names it; folders and lifts that would be passed over.

use super::folder;
use crate::calling::{call, call_in};

const NO_CHAIN: &str = r#"Chain(
    name: "short",
    links: PerMetre("4 oz"),
    source: Assumed("invented for a test"),
    length: "1.8 m",
    length_source: Assumed("invented for a test"),
)"#;

#[test]
fn fault_a_file_that_another_one_names_is_told_where_it_is_wrong() {
    let gym = call(&["show", "gyms", "garage"]).done().out;
    let chains = "    anchors: {";
    assert!(gym.contains(chains));
    let gym = gym.replace(
        chains,
        &format!("    chains: [(name: \"short\", count: 2)],\n{chains}"),
    );
    let folder = folder(&[("chains/short.ron", NO_CHAIN), ("gyms/own.ron", &gym)]);
    let answer = call_in(folder.path(), &["check", "gyms/own.ron", "--models", "."]);
    assert_eq!(answer.status, 2, "{}", answer.out);
    assert!(
        answer.complaint.contains("chains/short.ron:"),
        "{}",
        answer.complaint
    );
}

#[test]
fn fault_a_folder_called_nearly_as_a_kind_is_not_passed_over() {
    let folder = folder(&[
        ("bands/own.ron", "(extends: \"loop-14mm\", title: \"Own\")"),
        ("gym/own.ron", "(extends: \"garage\", title: \"Own\")"),
    ]);
    for words in [&["check", "."][..], &["curve", "squat", "--models", "."]] {
        let answer = call_in(folder.path(), words);
        assert_eq!(answer.status, 2, "{words:?}");
        assert!(
            answer.complaint.contains("did you mean `gyms`?"),
            "{}",
            answer.complaint
        );
    }
}

#[test]
fn fault_nothing_is_planned_for_a_lift_that_weight_helps() {
    let text = r#"(
    extends: "triceps-extension",
    title: "Push-down",
    handling: (called: ["push-down"], catch: Nothing, spotter: Nobody),
    path: (from: "120 deg", to: "5 deg", body: Upright, source: CommonPractice("from the chest to straight arms")),
    technique: {"shoulder_angle": (value: Angle("15 deg"), source: Assumed("elbows at the side"))},
)"#;
    let folder = folder(&[("movements/push-down.ron", text)]);
    for words in [
        &["pick", "push-down", "--gym", "garage"][..],
        &["plan", "push-down", "--one-rm", "20 kg"],
    ] {
        let words = [words, &["--models", "."]].concat();
        let answer = call_in(folder.path(), &words);
        assert_eq!(answer.status, 2, "{words:?}: {}", answer.out);
        let told = crate::calling::in_one_line(&answer.complaint);
        assert!(told.contains("its weight helps"), "{told}");
    }
}

#[test]
fn law_an_own_length_has_the_source_of_its_own_file() {
    let text = r#"(
    extends: "reference-man",
    title: "Long arms",
    lengths: {upper_arm: "33.5 cm"},
    source: Assumed("invented for a test"),
)"#;
    let folder = folder(&[("long.ron", text)]);
    let words = [
        "parameters",
        "bench-press",
        "--lifter",
        "long.ron",
        "--find",
        "length",
        "--format",
        "json",
    ];
    let answer = call_in(folder.path(), &words).done().json();
    let rows = answer["values"].as_array().expect("a list");
    let row = |path: &str| {
        rows.iter()
            .find(|row| row["path"] == path)
            .expect("it is there")
            .to_string()
    };
    let own = row("segments.upper_arm.length");
    assert!(
        own.contains("invented for a test") && own.contains("long.ron"),
        "{own}"
    );
    assert!(!row("segments.forearm.length").contains("invented for a test"));
}

/// A comma before decimals is told as one, and what is wrong behind it is told in the same round.
#[test]
fn fault_a_comma_before_decimals_is_told_with_the_number_that_is_meant() {
    let lifter = call(&["show", "lifters", "reference-woman"]).done().out;
    let slips = [
        ("strength_scale: 1.0,", "strength_scale: 1,05,", "1.05"),
        ("\"cuff\": 0.4927,", "\"cuff\": 0,4927,", "0.4927"),
    ];
    for (right, wrong, meant) in slips {
        assert!(lifter.contains(right));
        let own = lifter.replace(right, wrong);
        let own = own.replace("\"hip_extensors\": 0.6946", "\"hip_extensors\": \"much\"");
        let folder = folder(&[("lifters/own.ron", &own)]);
        let answer = call_in(
            folder.path(),
            &["check", "lifters/own.ron", "--models", "."],
        );
        assert_eq!(answer.status, 2);
        let told = &answer.complaint;
        let line = 1 + own
            .lines()
            .position(|line| line.contains(&wrong[..wrong.len() - 1]))
            .expect("its line");
        assert!(told.contains(&format!("own.ron:{line}:")), "{told}");
        assert!(told.contains(&format!("behind a point: {meant}")), "{told}");
        assert!(told.contains("hip_extensors"), "told at once: {told}");
        assert!(!told.contains("expected a name"), "{told}");
    }
}
