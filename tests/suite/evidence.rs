//! Published values beside ours. They stand in `tests/reference/*.csv`, one file a paper; a test names paper and
//! quantity and gives what torquill computes, and the row says how far off is accepted and why, or that it is missed.
//! `tests/evidence.md` lists all of them; `UPDATE=1 cargo test --test suite published_` makes it anew.
//!
//! ```text
//! # source: authors, year, place
//! # tolerance: ± 0.005; why that much (for rows whose own cell is empty)
//! quantity,published,accepted,kind,why,place,missed,…
//! ```
//! `published` may be a quotient of printed numbers (`103.7/109.8`). `accepted` is `± 0.5`, `± 15 %` or `10 to 22`.
//! `kind` says what a row is worth: `input` (the number was put into the model), `identity` (it follows from a
//! definition or formula), `fitted` (the model was set by it), `predicted` (it was not used); empty where nobody looked.
//! `place` is appended to the source; `missed` is the reason looked for why the value is not met. All further columns
//! are the paper's own (angle, wire, load …), for tests that go through the rows.

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::fmt::Write as _;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::sync::{LazyLock, Mutex};

/// How far the computed value may be from the published one.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Accepted {
    /// This much, in the unit of the quantity.
    Absolute(f64),
    /// This share of the published value.
    Relative(f64),
    /// Anywhere from the first to the second.
    Interval(f64, f64),
}

impl Accepted {
    fn from_text(text: &str) -> Option<Self> {
        let number = |text: &str| quotient(text.trim());
        if let Some(most) = text.trim().strip_prefix('±') {
            return match most.strip_suffix('%') {
                Some(percent) => Some(Self::Relative(number(percent)? / 100.0)),
                None => Some(Self::Absolute(number(most)?)),
            };
        }
        let (low, high) = text.split_once(" to ")?;
        Some(Self::Interval(number(low)?, number(high)?))
    }

    fn holds(self, published: f64, computed: f64) -> bool {
        let off = (computed - published).abs();
        match self {
            Self::Absolute(most) => off <= most,
            Self::Relative(share) => off <= share * published.abs(),
            Self::Interval(low, high) => (low..=high).contains(&computed),
        }
    }

    fn as_text(self) -> String {
        match self {
            Self::Absolute(most) => format!("± {}", digits(most)),
            Self::Relative(share) => format!("± {} %", digits(100.0 * share)),
            Self::Interval(low, high) => format!("{} to {}", digits(low), digits(high)),
        }
    }
}

/// A number, or one printed number over another.
fn quotient(text: &str) -> Option<f64> {
    match text.split_once('/') {
        Some((over, under)) => Some(over.parse::<f64>().ok()? / under.parse::<f64>().ok()?),
        None => text.parse().ok(),
    }
}

/// What a paper says, from its file.
pub struct Paper {
    name: String,
    source: String,
    tolerance: Option<(Accepted, String)>,
    cells: Vec<HashMap<String, String>>,
}

/// The paper whose values stand in `tests/reference/NAME.csv`.
pub fn paper(name: &str) -> Paper {
    let place = folder().join(format!("{name}.csv"));
    let text = std::fs::read_to_string(&place).unwrap_or_else(|e| panic!("{name}.csv: {e}"));
    let head = |what: &str| {
        let start = format!("# {what}: ");
        let line = text.lines().find_map(|line| line.strip_prefix(&start));
        line.map(str::to_owned)
    };
    let tolerance = head("tolerance").map(|line| {
        let (accepted, why) = line.split_once("; ").expect("a tolerance has a reason");
        let accepted = Accepted::from_text(accepted).expect("a tolerance");
        (accepted, why.to_owned())
    });
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_reader(text.as_bytes());
    let cells: Result<_, csv::Error> = reader.deserialize().collect();
    Paper {
        name: name.to_owned(),
        source: head("source").unwrap_or_else(|| panic!("{name}.csv names no source")),
        tolerance,
        cells: cells.unwrap_or_else(|e| panic!("{name}.csv: {e}")),
    }
}

impl Paper {
    /// All rows.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        let rows = self.cells.iter();
        rows.map(|cells| Row { paper: self, cells })
    }

    /// The rows that have something in a column.
    pub fn rows_with<'a>(&'a self, column: &'a str) -> impl Iterator<Item = Row<'a>> {
        self.rows().filter(move |row| !row.text(column).is_empty())
    }

    /// The row of a quantity.
    #[track_caller]
    pub fn row(&self, quantity: &str) -> Row<'_> {
        let mut rows = self.rows().filter(|row| row.quantity() == quantity);
        let row = rows.next();
        assert!(
            rows.next().is_none(),
            "{}.csv has {quantity:?} twice",
            self.name
        );
        row.unwrap_or_else(|| panic!("{}.csv has no row for {quantity:?}", self.name))
    }

    /// Compares what was computed with the row of a quantity.
    #[track_caller]
    pub fn check(&self, quantity: &str, computed: f64) {
        self.row(quantity).check(computed);
    }

    /// Compares a statement with a row that is 1 where it holds.
    #[track_caller]
    pub fn check_holds(&self, quantity: &str, computed: bool) {
        self.row(&format!("{quantity} (1 = yes)"))
            .check(f64::from(computed));
    }
}

/// One published value.
#[derive(Clone, Copy)]
pub struct Row<'a> {
    paper: &'a Paper,
    cells: &'a HashMap<String, String>,
}

impl<'a> Row<'a> {
    /// What stands in a column; nothing if there is no such column.
    pub fn text(&self, column: &str) -> &'a str {
        self.cells.get(column).map_or("", String::as_str)
    }

    /// The number in a column.
    #[track_caller]
    pub fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        quotient(text).unwrap_or_else(|| {
            panic!(
                "{}.csv: {column} of {:?} is {text:?}",
                self.paper.name,
                self.quantity()
            )
        })
    }

    /// What is compared, with its unit.
    pub fn quantity(&self) -> &'a str {
        self.text("quantity")
    }

    /// The published value; the middle of it where an interval is published.
    pub fn published(&self) -> f64 {
        self.number("published")
    }

    fn accepted(&self) -> Accepted {
        match (self.text("accepted"), &self.paper.tolerance) {
            ("", Some((accepted, _))) => *accepted,
            (text, _) => Accepted::from_text(text).unwrap_or_else(|| {
                panic!(
                    "{}.csv: {:?} accepts {text:?}",
                    self.paper.name,
                    self.quantity()
                )
            }),
        }
    }

    fn source(&self) -> String {
        match self.text("place") {
            "" => self.paper.source.clone(),
            place => format!("{}, {place}", self.paper.source),
        }
    }

    fn is_missed(&self) -> bool {
        !self.text("missed").is_empty()
    }

    /// Asserts that the computed value is within what is accepted, and that the list of evidence says so. A row that
    /// is missed must be missed still: one that has become right loses its reason.
    #[track_caller]
    pub fn check(&self, computed: f64) {
        let line = self.line(computed);
        // Written past the test harness's capture, so that `cargo test published_` prints every value.
        let _ = writeln!(std::io::stdout(), "{line}");
        let is_met = self.accepted().holds(self.published(), computed);
        assert!(
            is_met != self.is_missed(),
            "{}: computed {computed}, published {} ({}), from {}{}",
            self.quantity(),
            self.published(),
            self.accepted().as_text(),
            self.source(),
            if is_met {
                ": listed as missed, but it is met"
            } else {
                ""
            },
        );
        if std::env::var_os("UPDATE").is_some() {
            renew(self, line);
        } else {
            assert!(
                LISTED.contains(&line),
                "tests/evidence.md is not current (UPDATE=1 cargo test --test suite published_): {line}"
            );
        }
    }

    /// The row of the list of evidence.
    fn line(&self, computed: f64) -> String {
        let verdict = if self.is_missed() { "miss" } else { "met" };
        let cells = [
            self.paper.name.clone(),
            self.quantity().to_owned(),
            digits(self.published()),
            self.accepted().as_text(),
            digits(computed),
            verdict.to_owned(),
            self.source(),
        ];
        let cells: Vec<String> = cells.iter().map(|cell| cell.replace('|', "/")).collect();
        format!("| {} |", cells.join(" | "))
    }
}

/// Whether the run writes what it would else compare.
pub fn is_update() -> bool {
    std::env::var_os("UPDATE").is_some()
}

/// Four figures that matter, without trailing zeros.
pub fn digits(value: f64) -> String {
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

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference")
}

fn list() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/evidence.md")
}

/// The lines of the list as it stands.
static LISTED: LazyLock<BTreeSet<String>> = LazyLock::new(|| {
    let text = std::fs::read_to_string(list()).unwrap_or_default();
    text.lines().map(str::to_owned).collect()
});

/// What this run has compared: line and reason by paper and quantity.
static COMPARED: Mutex<BTreeMap<(String, String), (String, String)>> = Mutex::new(BTreeMap::new());

/// Writes the whole list each time, sorted, so that it does not depend on the order of the tests.
fn renew(row: &Row<'_>, line: String) {
    let mut compared = COMPARED
        .lock()
        .unwrap_or_else(std::sync::PoisonError::into_inner);
    let key = (row.paper.name.clone(), row.quantity().to_owned());
    compared.insert(key, (line, row.text("missed").to_owned()));
    let missed: Vec<String> = compared
        .iter()
        .filter(|(_, (_, reason))| !reason.is_empty())
        .map(|((_, quantity), (_, reason))| format!("- {quantity}: {reason}"))
        .collect();
    let sources: BTreeSet<&str> = compared.keys().map(|(paper, _)| paper.as_str()).collect();
    let lines: Vec<&str> = compared.values().map(|(line, _)| line.as_str()).collect();
    let mut text = String::from("# Published values beside ours\n");
    let _ = write!(
        text,
        "Made by the tests: `UPDATE=1 cargo test --test suite published_`. {} rows from {} sources, {} met, {} honest\n\
         misses (a miss that becomes right fails its test, so that it is moved).\n\n\
         | file | what | published | accepted | computed | verdict | source |\n\
         | --- | --- | --- | --- | --- | --- | --- |\n{}\n\n## Misses and why\n{}\n",
        lines.len(),
        sources.len(),
        lines.len() - missed.len(),
        missed.len(),
        lines.join("\n"),
        missed.join("\n"),
    );
    let mut file = std::fs::File::create(list()).expect("the list can be written");
    file.write_all(text.as_bytes())
        .expect("the list can be written");
}

/// Every row of every file is compared by some test, and nothing else is listed.
#[test]
fn law_the_list_of_evidence_holds_every_row_of_every_paper_and_no_other() {
    if std::env::var_os("UPDATE").is_some() {
        return;
    }
    let listed = |line: &String| {
        let cells: Vec<&str> = line.split(" | ").collect();
        (cells.len() == 7 && cells[5] != "verdict" && cells[5] != "---")
            .then(|| format!("{} | {}", cells[0].trim_start_matches("| "), cells[1]))
    };
    let listed: BTreeSet<String> = LISTED.iter().filter_map(listed).collect();
    let mut rows = BTreeSet::new();
    for entry in std::fs::read_dir(folder()).expect("papers") {
        let path = entry.expect("an entry").path();
        let name = path
            .file_stem()
            .expect("a name")
            .to_string_lossy()
            .into_owned();
        for row in paper(&name).rows() {
            const KINDS: [&str; 5] = ["", "input", "identity", "fitted", "predicted"];
            assert!(
                KINDS.contains(&row.text("kind")),
                "{name}: {}",
                row.text("kind")
            );
            let (_, _) = (row.published(), row.accepted());
            let quantity = row.quantity().replace('|', "/");
            assert!(
                rows.insert(format!("{name} | {quantity}")),
                "twice: {name}, {quantity}"
            );
        }
    }
    let unseen: Vec<_> = rows.difference(&listed).collect();
    let unknown: Vec<_> = listed.difference(&rows).collect();
    assert!(
        unseen.is_empty() && unknown.is_empty(),
        "{unseen:#?} {unknown:#?}"
    );
}

#[test]
fn law_a_miss_is_not_a_hit() {
    let accepted = |text: &str| Accepted::from_text(text).expect("a tolerance");
    assert!(accepted("± 0.5").holds(10.0, 10.4));
    assert!(!accepted("± 0.5").holds(10.0, 10.6));
    assert!(accepted("± 5 %").holds(10.0, 10.4));
    assert!(!accepted("± 5 %").holds(10.0, 9.4));
    assert!(accepted("9 to 12").holds(10.0, 11.0));
    assert!(!accepted("9 to 12").holds(10.0, f64::NAN));
    assert_eq!(Accepted::from_text("about 3"), None);
    assert_eq!(quotient("1/8"), Some(0.125));
    assert_eq!(
        (digits(0.012_346), digits(1234.5)),
        ("0.01235".to_owned(), "1234".to_owned())
    );
}
