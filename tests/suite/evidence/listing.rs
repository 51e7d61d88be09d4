//! `tests/evidence.md`: all rows beside ours, with the scores.

use super::tally::{Tally, errors_as_ron, lines_about, misses, scores};
use super::{Kind, Row, digits, papers};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::sync::{LazyLock, Mutex, PoisonError};

/// Whether the run writes what it would else compare.
pub fn is_update() -> bool {
    std::env::var_os("UPDATE").is_some()
}

fn list() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/evidence.md")
}

/// Where the model's own error stands, beside the posterior.
fn errors() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("models/calibration/errors_of_lifts.ron")
}

/// The lines of the list as it stands.
pub static LISTED: LazyLock<BTreeSet<String>> = LazyLock::new(|| {
    let text = std::fs::read_to_string(list()).unwrap_or_default();
    text.lines().map(str::to_owned).collect()
});

/// One row as this run has compared it.
#[derive(Debug, Clone)]
pub struct Compared {
    pub line: String,
    pub kind: Kind,
    pub on: String,
    pub about: String,
    pub key: String,
    pub is_met: bool,
    pub reason: String,
}

/// What this run has compared, by paper and quantity.
static COMPARED: Mutex<BTreeMap<(String, String), Compared>> = Mutex::new(BTreeMap::new());

/// The row of the list of evidence.
pub fn line(row: &Row<'_>, computed: f64, is_met: bool) -> String {
    let cells = [
        row.paper.name.clone(),
        row.quantity().to_owned(),
        row.kind().word().to_owned(),
        digits(row.published()),
        row.accepted().as_text(),
        shown(row.kind(), computed),
        if is_met { "met" } else { "miss" }.to_owned(),
        row.own_or_head("on").to_owned(),
        row.own_or_head("about").to_owned(),
        row.source(),
    ];
    let cells = cells.map(|cell| cell.replace('|', "/"));
    format!("| {} |", cells.join(" | "))
}

/// Three figures of what comes out of searches and steps of time, four of what is calculated straight.
fn shown(kind: Kind, computed: f64) -> String {
    if !computed.is_finite() {
        return "no answer".to_owned();
    }
    if !kind.is_evidence() || computed == 0.0 {
        return digits(computed);
    }
    let places = (2 - computed.abs().log10().floor() as i32).clamp(0, 8) as usize;
    format!("{computed:.places$}")
}

/// Holds the list to what was computed, or writes it.
#[track_caller]
pub fn compare(row: &Row<'_>, line: String, is_met: bool) {
    if !is_update() {
        assert!(
            LISTED.contains(&line),
            "tests/evidence.md is not current (UPDATE=1 cargo test --test suite published_): {line}"
        );
        return;
    }
    let mut all = COMPARED.lock().unwrap_or_else(PoisonError::into_inner);
    let key = (row.paper.name.clone(), row.quantity().to_owned());
    let compared = Compared {
        line,
        kind: row.kind(),
        on: row.own_or_head("on").to_owned(),
        about: row.own_or_head("about").to_owned(),
        key: row.paper.head("key").to_owned(),
        is_met,
        reason: row.text("missed").to_owned(),
    };
    all.insert(key, compared);
    std::fs::write(list(), written(&all)).expect("the list can be written");
    let lines = all.values().map(|row| row.line.clone()).collect();
    std::fs::write(errors(), errors_as_ron(&lines)).expect("the errors can be written");
}

/// The whole list, sorted, so that it does not depend on the order of the tests.
fn written(all: &BTreeMap<(String, String), Compared>) -> String {
    const COLUMNS: &str = "| file | what | kind | published | accepted | computed | verdict | on | about | source |\n\
        | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
    let rows: Vec<&Compared> = all.values().collect();
    let mut text = String::from(
        "# Published values beside ours\n\
         Made by the tests: `UPDATE=1 cargo test --test suite published_`. `predicted` rows could have failed; `fitted` ones \
         are targets\nof the calibration or a parameter was chosen on them; `input` and `identity` rows are tests, no \
         evidence. `off by`: root mean\nsquare of the logarithm of computed over published, where a size is published.\n\n\
         ## Score by kind\n",
    );
    text.push_str(&scores(&rows, "kind", |row| row.kind.word().to_owned()));
    let predicted: Vec<&Compared> = rows
        .iter()
        .copied()
        .filter(|row| row.kind == Kind::Predicted)
        .collect();
    text.push_str("\n## Predicted rows by lift, joint or thing\n");
    text.push_str(&scores(&predicted, "on", |row| row.on.clone()));
    text.push_str("\n## Predicted rows by quantity\n");
    text.push_str(&scores(&predicted, "about", |row| row.about.clone()));
    for (kind, title) in [
        (Kind::Predicted, "Predicted"),
        (Kind::Fitted, "Fitted"),
        (Kind::Input, "Inputs"),
        (Kind::Identity, "Identities"),
    ] {
        let _ = write!(text, "\n## {title}\n{COLUMNS}");
        for row in rows.iter().filter(|row| row.kind == kind) {
            let _ = writeln!(text, "{}", row.line);
        }
    }
    text.push_str("\n## Misses and why\n");
    text.push_str(&misses(all));
    text
}

/// Every row of every file is compared by some test, and nothing else is listed.
#[test]
fn law_the_list_of_evidence_holds_every_row_of_every_paper_and_no_other() {
    if is_update() {
        return;
    }
    let listed = |line: &String| {
        let cells: Vec<&str> = line.split(" | ").collect();
        (cells.len() == 10 && cells[6] != "verdict" && cells[6] != "---")
            .then(|| format!("{} | {}", cells[0].trim_start_matches("| "), cells[1]))
    };
    let listed: BTreeSet<String> = LISTED.iter().filter_map(listed).collect();
    let mut rows = BTreeSet::new();
    for paper in papers() {
        for row in paper.rows() {
            let quantity = row.quantity().replace('|', "/");
            let is_new = rows.insert(format!("{} | {quantity}", paper.name));
            assert!(is_new, "twice: {}, {quantity}", paper.name);
        }
    }
    let unseen: Vec<_> = rows.difference(&listed).collect();
    let unknown: Vec<_> = listed.difference(&rows).collect();
    assert!(
        unseen.is_empty() && unknown.is_empty(),
        "{unseen:#?} {unknown:#?}"
    );
}

/// What stands beside the posterior is the error of the list.
#[test]
fn law_the_models_own_error_is_that_of_the_list() {
    if !is_update() {
        let stands = std::fs::read_to_string(errors()).expect("the errors can be read");
        assert_eq!(
            stands,
            errors_as_ron(&LISTED),
            "UPDATE=1 cargo test --test suite published_"
        );
    }
}

/// Three lines of the front page and of the guide: how many could have failed, how many are met, what that means.
#[test]
fn law_front_page_and_guide_tell_the_score() {
    let tally = Tally::of_the_files();
    assert!(
        tally.predicted >= 150,
        "only {} predicted rows",
        tally.predicted
    );
    assert!(
        tally.publications >= 45,
        "from {} publications",
        tally.publications
    );
    for page in ["README.md", "DEVELOPERS.md"] {
        let place = Path::new(env!("CARGO_MANIFEST_DIR")).join(page);
        let text = std::fs::read_to_string(&place).expect("the page can be read");
        let (before, rest) = text
            .split_once("<!-- evidence -->\n")
            .unwrap_or_else(|| panic!("{page} has a place for the score"));
        let (now, after) = rest
            .split_once("<!-- end of evidence -->")
            .expect("an end of it");
        let wanted = lines_about(&tally);
        if is_update() {
            let new = format!("{before}<!-- evidence -->\n{wanted}<!-- end of evidence -->{after}");
            std::fs::write(&place, new).expect("the page can be written");
        } else {
            assert_eq!(
                now, wanted,
                "{page} (UPDATE=1 cargo test --test suite front_page)"
            );
        }
    }
}
