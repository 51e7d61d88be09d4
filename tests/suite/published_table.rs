//! One way for every published check to assert and to be listed: each row is asserted and written to
//! `target/published/<test file>.csv`, from which `tests/evidence.md` is made.

use std::collections::BTreeMap;
use std::io::Write;
use std::panic::Location;
use std::path::{Path, PathBuf};
use std::sync::{LazyLock, Mutex};

/// How far the computed value may be from the published one.
#[derive(Debug, Clone, Copy)]
#[allow(dead_code)]
pub enum Tolerance {
    /// This much, in the unit of the quantity.
    Absolute(f64),
    /// This share of the published value.
    Relative(f64),
    /// Anywhere from the first to the second.
    Interval(f64, f64),
}

/// One published value beside ours.
#[derive(Debug, Clone)]
pub struct Row<'a> {
    /// What is compared, with its unit.
    pub quantity: &'a str,
    /// The published value; the middle of it where an interval is published.
    pub published: f64,
    /// How far off is accepted.
    pub tolerance: Tolerance,
    /// What torquill computes.
    pub computed: f64,
    /// Authors, year, place.
    pub source: &'a str,
    /// Why that tolerance.
    pub why: &'a str,
}

impl Row<'_> {
    fn is_met(&self) -> bool {
        let off = (self.computed - self.published).abs();
        match self.tolerance {
            Tolerance::Absolute(most) => off <= most,
            Tolerance::Relative(share) => off <= share * self.published.abs(),
            Tolerance::Interval(low, high) => (low..=high).contains(&self.computed),
        }
    }

    fn accepted(&self) -> String {
        match self.tolerance {
            Tolerance::Absolute(most) => format!("± {}", digits(most)),
            Tolerance::Relative(share) => format!("± {} %", digits(100.0 * share)),
            Tolerance::Interval(low, high) => format!("{} to {}", digits(low), digits(high)),
        }
    }
}

/// Four figures that matter, without trailing zeros.
fn digits(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return format!("{value}");
    }
    let magnitude = value.abs().log10().floor() as i32;
    let text = format!("{value:.*}", (3 - magnitude).max(0) as usize);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// Asserts that the computed value is within the tolerance, and lists the row.
#[track_caller]
pub fn check(row: Row) {
    let verdict = if row.is_met() { "met" } else { "FAILED" };
    list(&row, verdict, row.why, Location::caller().file());
    assert!(
        row.is_met(),
        "{}: computed {}, published {} ({}), from {}",
        row.quantity,
        row.computed,
        row.published,
        row.accepted(),
        row.source
    );
}

/// Lists an honest miss with the reason looked for, and asserts that it still is one: a miss that
/// has become right must be moved to [`check`].
#[track_caller]
#[allow(dead_code)]
pub fn miss(row: Row, reason: &str) {
    list(&row, "miss", reason, Location::caller().file());
    assert!(
        !row.is_met(),
        "{}: listed as a miss, but computed {} meets published {} ({}): list it as a check",
        row.quantity,
        row.computed,
        row.published,
        row.accepted()
    );
}

static ROWS: LazyLock<Mutex<BTreeMap<String, BTreeMap<String, String>>>> =
    LazyLock::new(|| Mutex::new(BTreeMap::new()));

fn list(row: &Row, verdict: &str, why: &str, test_file: &str) {
    let table = Path::new(test_file).file_stem().map_or_else(
        || "table".to_owned(),
        |stem| stem.to_string_lossy().into_owned(),
    );
    let fields = [
        row.quantity,
        &digits(row.published),
        &row.accepted(),
        &digits(row.computed),
        verdict,
        row.source,
        why,
    ];
    let line = fields.map(quoted).join(",");
    // Written past the test harness's capture, so that `cargo test published_` prints every value.
    let _ = writeln!(
        std::io::stdout(),
        "{verdict:>6}  {}: {} (published {}, {})",
        row.quantity,
        digits(row.computed),
        digits(row.published),
        row.source
    );
    let mut tables = ROWS
        .lock()
        .unwrap_or_else(std::sync::PoisonError::into_inner);
    let rows = tables.entry(table.clone()).or_default();
    let earlier = rows.insert(format!("{} | {}", row.source, row.quantity), line);
    assert!(
        earlier.is_none(),
        "two rows are called `{}`: {}",
        row.quantity,
        row.source
    );
    write_table(&table, rows);
}

/// The whole table each time, sorted, so that the file does not depend on the order of the tests.
fn write_table(table: &str, rows: &BTreeMap<String, String>) {
    let folder = published_folder();
    std::fs::create_dir_all(&folder).expect("target/published can be made");
    let head = "quantity,published,accepted,computed,verdict,source,why";
    let body: Vec<&str> = rows.values().map(String::as_str).collect();
    let text = format!("{head}\n{}\n", body.join("\n"));
    std::fs::write(folder.join(format!("{table}.csv")), text).expect("the table can be written");
}

/// `target/published`, beside the folder that cargo gives to integration tests.
fn published_folder() -> PathBuf {
    let given = Path::new(env!("CARGO_TARGET_TMPDIR"));
    given.parent().unwrap_or(given).join("published")
}

fn quoted(field: &str) -> String {
    format!("\"{}\"", field.replace('"', "\"\""))
}

/// Makes the list of evidence anew from the rows that the last whole run of the tests wrote.
#[test]
#[ignore = "writes tests/evidence.md"]
fn renew_the_evidence() {
    let mut files: Vec<PathBuf> = std::fs::read_dir(published_folder())
        .expect("run the whole suite first")
        .map(|entry| entry.expect("an entry").path())
        .collect();
    files.sort();
    let (mut lines, mut reasons, mut met, mut sources) =
        (Vec::new(), Vec::new(), 0, std::collections::BTreeSet::new());
    for file in &files {
        let name = file.file_stem().expect("a name").to_string_lossy();
        let mut rows = csv::Reader::from_path(file).expect("a table");
        for row in rows.records() {
            let row = row.expect("a row");
            let cell = |index: usize| row[index].replace('|', "/").replace('\n', " ");
            let shown: Vec<String> = (0..6).map(cell).collect();
            lines.push(format!("| {name} | {} |", shown.join(" | ")));
            sources.insert(cell(5));
            match &row[4] {
                "met" => met += 1,
                _ => reasons.push(format!("- {}: {}", cell(0), cell(6))),
            }
        }
    }
    let made = format!(
        "# Published values beside ours\n\
         Made by the tests: `cargo test --test suite published_`, then\n\
         `cargo test --test suite renew_the_evidence -- --ignored`. {} rows from {} sources, {met} met, {} honest misses\n\
         (a miss that becomes right fails its test, so that it is moved).\n\n\
         | file | what | published | accepted | computed | verdict | source |\n\
         | --- | --- | --- | --- | --- | --- | --- |\n\
         {}\n\n## Misses and why\n{}\n",
        lines.len(),
        sources.len(),
        reasons.len(),
        lines.join("\n"),
        reasons.join("\n")
    );
    let place = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/evidence.md");
    std::fs::write(place, made).expect("the list can be written");
}

#[test]
fn law_a_miss_is_not_a_hit() {
    let row = |computed, tolerance| Row {
        quantity: "x",
        published: 10.0,
        tolerance,
        computed,
        source: "",
        why: "",
    };
    assert!(row(10.4, Tolerance::Absolute(0.5)).is_met());
    assert!(!row(10.6, Tolerance::Absolute(0.5)).is_met());
    assert!(row(10.4, Tolerance::Relative(0.05)).is_met());
    assert!(!row(9.4, Tolerance::Relative(0.05)).is_met());
    assert!(row(11.0, Tolerance::Interval(9.0, 12.0)).is_met());
    assert!(!row(f64::NAN, Tolerance::Interval(9.0, 12.0)).is_met());
    assert_eq!(
        (digits(0.012_346), digits(1234.5)),
        ("0.01235".to_owned(), "1234".to_owned())
    );
}
