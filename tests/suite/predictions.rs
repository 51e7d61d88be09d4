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
    /// The row that must lie inside before this one says anything.
    needs: String,
}

/// A row as the list shows it.
pub struct Listed {
    pub lift: String,
    pub measure: String,
    pub quantity: String,
    pub between: (f64, f64),
    pub computed: String,
    pub is_inside: bool,
}

/// The counted rows of the list, from the list.
pub fn listed() -> Vec<Listed> {
    let text = std::fs::read_to_string(place("predictions.md")).unwrap_or_default();
    let lines: BTreeMap<String, Vec<String>> = text
        .lines()
        .map(|line| {
            line.split(" | ")
                .map(str::to_owned)
                .collect::<Vec<String>>()
        })
        .filter(|cells| cells.len() == 8)
        .map(|cells| {
            (
                named(cells[0].trim_start_matches("| "), &cells[1], &cells[2]),
                cells,
            )
        })
        .collect();
    let all = predictions();
    let known = all.iter().filter_map(|row| {
        Some((
            row,
            lines.get(&named(&row.quantity, &row.lifter, &row.with))?,
        ))
    });
    known
        .filter(|(_, cells)| cells[6] != WAITS)
        .map(|(row, cells)| Listed {
            lift: row.lift.clone(),
            measure: row.measure.clone(),
            quantity: row.quantity.clone(),
            between: (row.least, row.most),
            computed: cells[4].clone(),
            is_inside: cells[6] == "inside",
        })
        .collect()
}

/// Verdict of a row that waits for another one.
const WAITS: &str = "not counted";

/// How a row is told from all others.
fn named(quantity: &str, lifter: &str, with: &str) -> String {
    format!("{quantity}, {lifter}, {with}")
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
    let names: std::collections::BTreeSet<String> = all
        .iter()
        .map(|row| named(&row.quantity, &row.lifter, &row.with))
        .collect();
    assert_eq!(names.len(), all.len(), "two rows have one name");
    for row in all.iter().filter(|row| row.measure == "repetitions") {
        assert!(
            row.least > 0.0 || ids.contains(row.needs.as_str()),
            "{}: none at all lies inside, whatever the maximum",
            row.id
        );
    }
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
    let waiting = waiting(&all, &values);
    let wrong: Vec<String> = all
        .iter()
        .zip(&values)
        .filter(|(row, _)| !waiting.contains(&row.id.as_str()))
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

/// Rows whose needed row lies outside.
fn waiting<'a>(all: &'a [Prediction], values: &[Option<f64>]) -> Vec<&'a str> {
    let is_inside: BTreeMap<&str, bool> = all
        .iter()
        .zip(values)
        .map(|(row, value)| (row.id.as_str(), row.holds(*value)))
        .collect();
    all.iter()
        .filter(|row| is_inside.get(row.needs.as_str()) == Some(&false))
        .map(|row| row.id.as_str())
        .collect()
}

fn told(all: &[Prediction], values: &[Option<f64>]) -> String {
    let waiting = waiting(all, values);
    let mut fibres = (0, 0);
    let mut by_measure: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    let mut by_lift: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    let mut by_cause: BTreeMap<&str, usize> = BTreeMap::new();
    let (mut table, mut misses) = (String::new(), String::new());
    let (mut inside, mut counted) = (0, 0);
    for (row, value) in all.iter().zip(values) {
        let holds = row.holds(*value);
        let waits = waiting.contains(&row.id.as_str());
        let verdict = match (waits, holds) {
            (true, _) => WAITS,
            (false, true) => "inside",
            (false, false) => "outside",
        };
        if row.measure.starts_with("fibre_") {
            fibres.0 += usize::from(holds);
            fibres.1 += 1;
        } else if !waits {
            inside += usize::from(holds);
            counted += 1;
        }
        for score in [
            by_measure.entry(&row.measure).or_default(),
            by_lift.entry(&row.lift).or_default(),
        ]
        .into_iter()
        .filter(|_| !waits)
        {
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
            verdict,
            row.source
        );
        if !holds && !waits {
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
         were calibrated\n(`tests/predictions.csv`, with the reason of each); no whole lift is a target. {inside} of {counted} lie \
         inside; of {} lengths of fibres, counted apart, {}. What is not counted waits for the maximum it needs.\n\n\
         ## By measure\n| measure | inside | of |\n| --- | --- | --- |\n{}\n\
         ## By lift\n| lift | inside | of |\n| --- | --- | --- |\n{}\n\
         ## Causes of what lies outside\n| cause | rows |\n| --- | --- |\n{causes}\n\
         ## All\n| what | lifter | with | accepted | computed | unit | verdict | source |\n\
         | --- | --- | --- | --- | --- | --- | --- | --- |\n{table}\n\
         ## Outside, and why\n{misses}",
        fibres.1,
        fibres.0,
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
