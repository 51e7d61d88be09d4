//! The words under a ranking and its figure, read back and held against the rows of its JSON.

use crate::calling::{call_in, json};
use regex::Regex;
use serde_json::Value;

/// A step that the words name, in the SI unit of the value; a share is one of the value itself.
fn step_si(words: &str, row: &Value) -> f64 {
    let (number, unit) = words.split_once(' ').unwrap_or((words, ""));
    let number: f64 = number.parse().expect(words);
    match unit {
        "%" => 0.01 * number * row["value_si"].as_f64().expect("a value").abs(),
        "deg" => number.to_radians(),
        "cm" => 0.01 * number,
        "in" => 0.0254 * number,
        _ => number,
    }
}

/// What is told of one value: its name, and what less and more of it do.
fn holds(told: &str, row: &Value) {
    let name = row["in_words"].as_str().expect("a name");
    let effects = told.strip_prefix(&format!("{name}: ")).expect(told);
    let both: Vec<&str> = effects.split(", ").collect();
    assert_eq!(both.len(), 2, "{told}");
    for ((effect, way), key) in both
        .iter()
        .zip([" less ", " more "])
        .zip(["lowered_percent", "raised_percent"])
    {
        let (step, change) = effect.split_once(way).expect(told);
        let by_si = row["by_si"].as_f64().expect("a step");
        assert!(
            (step_si(step, row) / by_si - 1.0).abs() < 0.02,
            "{told}: {by_si}"
        );
        match row[key].as_f64() {
            None => assert_eq!(change, "cannot be done", "{told}"),
            Some(percent) => {
                let printed = change.trim_end_matches(" %").replace('\u{2212}', "-");
                let printed: f64 = printed.parse().expect(told);
                assert!((printed - percent).abs() < 0.0501, "{told}: {percent}");
            }
        }
    }
}

/// The larger effect of a row, %.
fn size(row: &Value) -> f64 {
    let both = ["lowered_percent", "raised_percent"];
    let both = both.iter().filter_map(|key| row[key].as_f64());
    both.fold(0.0, |most, percent| most.max(percent.abs()))
}

#[test]
fn law_the_words_of_a_ranking_are_those_of_its_rows() {
    let head = Regex::new(
        r"^Each value was lowered and raised alone, by 5 % or by the amount beside it\. What changes the (.+?) most is the (.+?)\.(?: Of the technique it is the (.+)\.)?$",
    )
    .expect("a pattern");
    let title =
        Regex::new(r"what matters most is the (.+), ([+\u{2212}][\d.]+) % for (.+) (less|more)<")
            .expect("a pattern");
    for (lift, units) in [
        ("biceps-curl", "metric"),
        ("bench-press", "us"),
        ("knee-extension", "metric"),
    ] {
        let folder = tempfile::tempdir().expect("a folder");
        let question = ["vary", lift, "--rank", "--samples", "21"];
        let data = json(&question);
        let rows = data["values"].as_array().expect("rows");
        let drawn = ["--units", units, "-o", "rank.svg"];
        let table = call_in(folder.path(), &[&question[..], &drawn].concat())
            .done()
            .out;
        let line = table.lines().find(|line| line.starts_with("Each value"));
        let told = head
            .captures(line.expect("a headline"))
            .expect("it reads so");
        assert_eq!(&told[1], data["measure"].as_str().expect("a measure"));
        let most = rows.iter().map(size).fold(0.0, f64::max);
        assert_eq!(size(&rows[0]), most, "{lift}: the first is the largest");
        holds(&told[2], &rows[0]);
        let is_set = |row: &&Value| {
            row["path"]
                .as_str()
                .is_some_and(|p| p.starts_with("technique."))
        };
        match (told.get(3), rows.iter().find(is_set)) {
            (Some(words), Some(row)) => holds(words.as_str(), row),
            (None, found) => assert!(found.is_none() || found == Some(&rows[0]), "{lift}"),
            (Some(words), None) => panic!("{lift}: {}", words.as_str()),
        }
        // The table has the steps in the units that were asked for.
        let other = if units == "us" { "cm" } else { "in" };
        let step = Regex::new(&format!(r"\d {other}  ")).expect("a pattern");
        assert!(!table.lines().any(|row| step.is_match(row)), "{table}");
        let svg = std::fs::read_to_string(folder.path().join("rank.svg")).expect("a picture");
        let told = title.captures(&svg).expect("a title");
        assert_eq!(&told[1], rows[0]["in_words"].as_str().expect("a name"));
        let key = if &told[4] == "less" {
            "lowered_percent"
        } else {
            "raised_percent"
        };
        let change = rows[0][key].as_f64().expect("it can be done");
        let printed: f64 = told[2].replace('\u{2212}', "-").parse().expect("a number");
        assert!(
            (printed - change).abs() < 0.0501 && change.abs() == most,
            "{lift}"
        );
        assert!(
            (step_si(&told[3], &rows[0]) / rows[0]["by_si"].as_f64().expect("a step") - 1.0).abs()
                < 0.02
        );
    }
}
