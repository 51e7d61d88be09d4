//! A copied lift is the same lift: what a movement's file says decides, never what the file is called.

use crate::calling::{Answer, call_in};
use std::path::Path;

/// Every built-in lift, the gear of the strength lab for all of them.
pub const LIFTS: [&str; 14] = [
    "bench-press",
    "overhead-press",
    "squat",
    "deadlift",
    "leg-press",
    "hip-thrust",
    "row",
    "pull-up",
    "leg-curl",
    "knee-extension",
    "calf-raise",
    "lateral-raise",
    "biceps-curl",
    "triceps-extension",
];

/// What is asked of a lift, its name left out.
const QUESTIONS: [(&str, &[&str]); 5] = [
    ("curve", &["--samples", "11"]),
    ("rep", &["--load", "60%"]),
    ("pick", &["--gym", "strength-lab", "--samples", "21"]),
    ("plan", &["--gym", "strength-lab"]),
    (
        "plan",
        &["--gym", "strength-lab", "--method", "overloaded-lowering"],
    ),
];

/// The file of a lift as the shipped folder holds it.
fn file_of(lift: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("models/movements");
    std::fs::read_to_string(folder.join(format!("{lift}.ron"))).expect("a shipped file")
}

/// A folder that holds copies of these lifts under other names.
fn folder_of_copies(copies: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let movements = folder.path().join("lifts/movements");
    std::fs::create_dir_all(&movements).expect("a folder can be made");
    for (lift, copy) in copies {
        std::fs::write(movements.join(format!("{copy}.ron")), file_of(lift)).expect("a copy");
    }
    folder
}

fn ask(folder: &Path, command: &str, lift: &str, more: &[&str]) -> Answer {
    let call = [&[command, lift, "--models", "lifts"], more].concat();
    call_in(folder, &call)
}

/// A name as long as the lift's own, so that columns and line breaks stay where they are.
fn copied_name(lift: &str) -> String {
    format!("{}q", &lift[..lift.len() - 1])
}

/// The name as a file is called, as a sentence holds it, and as one begins with it.
fn forms(lift: &str) -> [String; 3] {
    let words = lift.replace('-', " ");
    let first = words[..1].to_uppercase() + &words[1..];
    [lift.to_owned(), words, first]
}

/// The text with the copy's name put back to the lift's.
fn renamed(text: &str, copy: &str, lift: &str) -> String {
    let pairs = forms(copy).into_iter().zip(forms(lift));
    pairs.fold(text.to_owned(), |text, (copy, lift)| {
        text.replace(&copy, &lift)
    })
}

/// Asks lifts and their copies the questions that are chosen by the places of lift and question in their lists.
fn copies_answer_alike(is_asked: impl Fn(usize, usize) -> bool) {
    let copies: Vec<(&str, String)> = LIFTS.map(|lift| (lift, copied_name(lift))).to_vec();
    let pairs: Vec<(&str, &str)> = copies.iter().map(|(l, c)| (*l, c.as_str())).collect();
    let folder = folder_of_copies(&pairs);
    for (place, (lift, copy)) in pairs.into_iter().enumerate() {
        let asked = QUESTIONS.iter().enumerate();
        for (_, (command, more)) in asked.filter(|(question, _)| is_asked(place, *question)) {
            let own = ask(folder.path(), command, lift, more);
            let copied = ask(folder.path(), command, copy, more);
            let told = format!("{command} {lift} {more:?}");
            assert_eq!(copied.status, own.status, "{told}: {}", copied.complaint);
            assert_eq!(renamed(&copied.out, copy, lift), own.out, "{told}");
            let complaint = renamed(&copied.complaint, copy, lift);
            assert_eq!(complaint, own.complaint, "{told}");
        }
    }
}

/// Every lift is asked one question, every question is asked of two lifts or more.
#[test]
fn law_a_copied_lift_answers_like_the_lift_itself() {
    copies_answer_alike(|lift, question| lift % QUESTIONS.len() == question);
}

#[test]
#[ignore = "140 answers: nightly"]
fn law_a_copied_lift_answers_every_question_like_the_lift_itself() {
    copies_answer_alike(|_, _| true);
}

#[test]
fn law_a_deadlift_called_rack_pull_is_refused_the_overloaded_lowering_too() {
    let folder = folder_of_copies(&[("deadlift", "rack-pull")]);
    let refused = ask(
        folder.path(),
        "plan",
        "rack-pull",
        &[
            "--one-rm",
            "200 kg",
            "--training-months",
            "48",
            "--method",
            "overloaded-lowering",
        ],
    );
    assert_eq!(refused.status, 1, "{}", refused.out);
    let reason = "no more than the 1RM is lowered in the deadlift: helpers cannot hold the bar";
    assert!(refused.complaint.contains(reason), "{}", refused.complaint);
    let straight = ask(folder.path(), "plan", "rack-pull", &["--one-rm", "200 kg"]).done();
    let words: Vec<&str> = straight.out.split_whitespace().collect();
    assert!(words.join(" ").contains("end the set when it rounds"));
}

#[test]
fn law_a_log_may_call_a_lift_by_any_of_its_names() {
    let folder = folder_of_copies(&[("squat", "box-squat")]);
    let log = "date,lift,load,repetitions\n\
               2024-01-01,Back Squat,100 kg,5\n2024-01-08,back_squat,102.5 kg,5\n2024-01-15,back squat,105 kg,5\n";
    std::fs::write(folder.path().join("log.csv"), log).expect("a log");
    for lift in ["squat", "box-squat"] {
        let planned = ask(folder.path(), "plan", lift, &["--log", "log.csv"]).done();
        assert!(planned.out.contains("from the log"), "{}", planned.out);
    }
}
