//! More than the 1RM for a fitted lifter: the limit of the lowering is that of the low end of what the 1RM may be.

use crate::calling::{call_in, in_one_line};
use serde_json::Value;
use std::path::Path;

fn json_of(folder: &Path, asked: &str) -> Value {
    let words: Vec<&str> = asked.split(' ').chain(["--format", "json"]).collect();
    call_in(folder, &words).done().json()
}

fn kg(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("no number: {value}"))
}

/// The limit of the lowering that a plan tells, and its heaviest load, kg.
fn limit_and_load(answer: &Value) -> (f64, f64) {
    let session = &answer["sessions"][0];
    let told = session["remarks"].to_string();
    let limit = regex::Regex::new(r"Limit of the lowering: ([0-9.]+) kg").expect("a pattern");
    let limit = limit.captures(&told).unwrap_or_else(|| panic!("{told}"));
    let sets = session["sets"].as_array().expect("sets").iter();
    let loads = sets
        .filter(|set| set["kind"] == "work")
        .map(|set| kg(&set["load_kg"]));
    let heaviest = loads.fold(0.0, f64::max);
    (limit[1].parse().expect("a number"), heaviest)
}

#[test]
fn law_an_overload_holds_at_the_low_end_of_the_maximum() {
    let folder = tempfile::tempdir().expect("a folder");
    let folder = folder.path();
    let mut planned = Vec::new();
    for told in ["180 kg", "140 kg x 8 @ rir 3"] {
        let fit = "fit --name ann --sex man --mass 82kg --height 181cm --training-months 40 --force -o a.ron";
        let mut fit: Vec<&str> = fit.split(' ').collect();
        let told = format!("squat={told}");
        fit.extend(["--lift", &told]);
        call_in(folder, &fit).done();
        let known = &json_of(folder, "max squat --lifter a.ron --scatter")["summary"];
        let (low, mean) = (kg(&known["one_rm_low_kg"]), kg(&known["one_rm_kg"]));
        assert!(low < mean, "{low} {mean}");
        let asked = "plan squat --lifter a.ron --method overloaded-lowering";
        // The plan of somebody who surely has the low end.
        let (of_low, _) = limit_and_load(&json_of(folder, &format!("{asked} --one-rm {low}kg")));
        let words: Vec<&str> = asked.split(' ').collect();
        let answer = call_in(folder, &words);
        let shown = format!("{} kg", (10.0 * low).round() / 10.0);
        planned.push(answer.status == 0);
        if answer.status == 0 {
            let (limit, load) = limit_and_load(&json_of(folder, asked));
            assert!(load > mean, "{load} is no overload of {mean}");
            assert!((limit / of_low - 1.0).abs() < 0.01, "{limit} {of_low}");
            assert!(load <= 0.97 * of_low + 0.1, "{load} of {of_low}");
            let text = in_one_line(&answer.out);
            let says = format!("hold four in five: the limit of the lowering is that of {shown}");
            assert!(text.contains(&says), "{says}: {text}");
        } else {
            assert_eq!(answer.status, 1, "{}", answer.complaint);
            assert!(0.97 * of_low < mean + 2.5, "{of_low} holds above {mean}");
            let text = in_one_line(&answer.complaint);
            let says = format!("at {shown}, the low end of what the 1RM may be");
            assert!(text.contains(&says), "{says}: {text}");
        }
    }
    assert_eq!(
        planned,
        [true, false],
        "a single, and a set far from failure"
    );
}
