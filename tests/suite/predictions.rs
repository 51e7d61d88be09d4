//! Predictions about whole lifts, written before the muscles were calibrated, beside what the model says.
//!
//! `tests/predictions.csv` holds what is accepted and why; `tests/predictions.md` shows value and verdict, and is made
//! by `UPDATE=1 cargo test --test suite predictions`. A value outside its interval fails nothing, but it has its cause
//! in the list: geometry, arm, length, strength, speed or method, and a sentence.

use crate::evidence::{digits, is_update};
use crate::measures::{Asked, value};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

const CAUSES: [&str; 6] = ["geometry", "arm", "length", "strength", "speed", "method"];

/// One row of the list.
#[derive(Debug, Clone, serde::Deserialize)]
struct Prediction {
    id: String,
    quantity: String,
    measure: String,
    lift: String,
    lifter: String,
    with: String,
    least: f64,
    most: f64,
    unit: String,
    source: String,
    reason: String,
    cause: String,
    told: String,
}

impl Prediction {
    fn value(&self) -> Option<f64> {
        value(&Asked::of(
            &self.measure,
            &self.lift,
            &self.lifter,
            &self.with,
        ))
    }

    fn holds(&self, value: Option<f64>) -> bool {
        value.is_some_and(|value| (self.least..=self.most).contains(&value))
    }
}

fn place(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests")
        .join(name)
}

fn predictions() -> Vec<Prediction> {
    let text = std::fs::read_to_string(place("predictions.csv")).expect("the list can be read");
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_reader(text.as_bytes());
    let rows: Result<_, csv::Error> = reader.deserialize().collect();
    rows.expect("the list is sound")
}

/// Keys of publications that rows name, for the test that each has its entry.
pub fn sources() -> Vec<String> {
    predictions().into_iter().map(|row| row.source).collect()
}

#[test]
fn law_every_prediction_has_an_interval_a_source_and_a_reason() {
    let all = predictions();
    let ids: std::collections::BTreeSet<&str> = all.iter().map(|row| row.id.as_str()).collect();
    assert_eq!(ids.len(), all.len(), "an id stands twice");
    for row in &all {
        assert!(row.least < row.most, "{}: an interval", row.id);
        assert!(
            !row.reason.is_empty() && !row.source.is_empty(),
            "{}",
            row.id
        );
        assert!(
            row.cause.is_empty() || CAUSES.contains(&row.cause.as_str()),
            "{}: {} is no cause",
            row.id,
            row.cause
        );
    }
}

#[test]
fn regress_predictions_are_listed_with_value_verdict_and_cause() {
    let all = predictions();
    let values: Vec<Option<f64>> = all.iter().map(Prediction::value).collect();
    let text = told(&all, &values);
    if is_update() {
        std::fs::write(place("predictions.md"), text).expect("the list can be written");
        return;
    }
    let listed = std::fs::read_to_string(place("predictions.md")).unwrap_or_default();
    assert!(
        listed == text,
        "tests/predictions.md is not current: UPDATE=1 cargo test --test suite predictions"
    );
    let wrong: Vec<String> = all
        .iter()
        .zip(&values)
        .filter(|(row, value)| {
            let is_told = row.holds(**value) == row.cause.is_empty();
            !(is_told && row.cause.is_empty() == row.told.is_empty())
        })
        .map(|(row, value)| format!("{}: {value:?}, cause {:?}", row.id, row.cause))
        .collect();
    assert!(
        wrong.is_empty(),
        "rows whose cause does not fit their verdict:\n{}",
        wrong.join("\n")
    );
}

fn told(all: &[Prediction], values: &[Option<f64>]) -> String {
    let mut by_measure: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    let mut by_lift: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    let mut by_cause: BTreeMap<&str, usize> = BTreeMap::new();
    let (mut table, mut misses, mut inside) = (String::new(), String::new(), 0);
    for (row, value) in all.iter().zip(values) {
        let holds = row.holds(*value);
        inside += usize::from(holds);
        for score in [
            by_measure.entry(&row.measure).or_default(),
            by_lift.entry(&row.lift).or_default(),
        ] {
            score.0 += usize::from(holds);
            score.1 += 1;
        }
        let shown = value.map_or("no answer".to_owned(), three_figures);
        let unit = if row.unit == "1" { "" } else { &row.unit };
        let _ = writeln!(
            table,
            "| {} | {} | {} | {} to {} | {shown} | {unit} | {} | {} |",
            row.quantity,
            row.lifter,
            row.with,
            digits(row.least),
            digits(row.most),
            if holds { "inside" } else { "outside" },
            row.source
        );
        if !holds {
            let cause = if row.cause.is_empty() {
                "not looked for"
            } else {
                &row.cause
            };
            *by_cause.entry(cause).or_default() += 1;
            let _ = writeln!(
                misses,
                "- {} ({}): {shown}, accepted {} to {}. **{cause}**: {}",
                row.quantity,
                row.lifter,
                digits(row.least),
                digits(row.most),
                row.told
            );
        }
    }
    let scores = |of: &BTreeMap<&str, (usize, usize)>| {
        let mut text = String::new();
        for (name, (inside, all)) in of {
            let _ = writeln!(text, "| {name} | {inside} | {all} |");
        }
        text
    };
    let mut causes = String::new();
    for (cause, count) in &by_cause {
        let _ = writeln!(causes, "| {cause} | {count} |");
    }
    format!(
        "# Predictions about whole lifts\n\
         Made by the tests: `UPDATE=1 cargo test --test suite predictions`. The intervals were written before the muscles \
         were calibrated\n(`tests/predictions.csv`, with the reason of each); no whole lift is a target. {inside} of {} lie \
         inside.\n\n\
         ## By measure\n| measure | inside | of |\n| --- | --- | --- |\n{}\n\
         ## By lift\n| lift | inside | of |\n| --- | --- | --- |\n{}\n\
         ## Causes of what lies outside\n| cause | rows |\n| --- | --- |\n{causes}\n\
         ## All\n| what | lifter | with | accepted | computed | unit | verdict | source |\n\
         | --- | --- | --- | --- | --- | --- | --- | --- |\n{table}\n\
         ## Outside, and why\n{misses}",
        all.len(),
        scores(&by_measure),
        scores(&by_lift),
    )
}

/// Three figures: what a search to 20 g and a step of 5 ms leave certain on any machine.
fn three_figures(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let places = (2 - value.abs().log10().floor() as i32).clamp(0, 6) as usize;
    format!("{value:.places$}")
}
