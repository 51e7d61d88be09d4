//! Published values beside ours. They stand in `tests/reference/*.csv`, one file a paper; a test names paper and
//! quantity and gives what torquill computes, and the row says how far off is accepted and why, or that it is missed.
//! `tests/evidence.md` lists all of them; `UPDATE=1 cargo test --test suite published_` makes it anew.
//!
//! ```text
//! # source: authors, year, place
//! # key: its entry in models/sources.ron, or "none: why there is none"
//! # on: bench press                    the lift, joint or thing that the rows are about
//! # about: velocity                    the quantity that they are about
//! # scatter: 0.05                      (for rows whose own cell is empty; see below)
//! # tolerance: ± 0.005; why that much  (for rows whose own cell is empty)
//! quantity,published,accepted,scatter,kind,why,on,about,place,missed,…
//! ```
//! `published` may be a quotient of printed numbers (`103.7/109.8`). `accepted` is `± 0.5`, `± 15 %` or `10 to 22`.
//! `kind` says what a row is worth: `input` (the number was copied into the model), `identity` (a formula against
//! itself, arithmetic, or what cannot fail), `fitted` (a target of the calibration, or a parameter was chosen on it),
//! `predicted` (it could have failed). Inputs and identities are tests, no evidence: they are listed by number alone.
//!
//! No tolerance of a fitted or predicted row goes beyond twice the published `scatter` between people, or beyond a
//! quarter of the value where the cell is empty because none is published. `range`: the accepted interval is the
//! published one; `none`: as an empty cell, where the head says another; `order`: a direction was published, no size; `rounding`: the value is printed as "about", to half.
//!
//! What could not have failed is no evidence; `evidence/rules.rs` refuses it:
//! * a row that compares (`… over …`, `… less …`, a correlation) says in `null` what no effect would be: a number, `alike` (no
//!   difference was published), or `none` (two lifts, a ratio to body mass). What is accepted excludes no effect and leaves a
//!   tenth of the way to it; where no scatter is published, it reaches half of the way at most;
//! * a direction differs by 0.01 at least and reaches three times the published value at most; where a size is published, the
//!   size is compared;
//! * the absence of something (0 ± 0) counts only while the row that `needs` names, `file: quantity`, is met;
//! * nothing about the mass of a chain; no yes-or-no row of the woman beside the same of the man.
//!
//! `place` is appended to the source; `missed` is the reason looked for why the value is not met. All further columns
//! are the paper's own (angle, wire, load …), for tests that go through the rows, or say what a measure takes.

mod accepted;
mod listing;
mod rules;
mod tally;
mod weak_places;

pub use accepted::digits;
use accepted::{Accepted, quotient};
pub use listing::is_update;

use std::collections::HashMap;
use std::io::Write as _;
use std::path::{Path, PathBuf};

/// What a row is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    Predicted,
    Fitted,
    Input,
    Identity,
}

impl Kind {
    const ALL: [Self; 4] = [Self::Predicted, Self::Fitted, Self::Input, Self::Identity];

    fn word(self) -> &'static str {
        match self {
            Self::Predicted => "predicted",
            Self::Fitted => "fitted",
            Self::Input => "input",
            Self::Identity => "identity",
        }
    }

    /// Whether it says something about the model.
    fn is_evidence(self) -> bool {
        matches!(self, Self::Predicted | Self::Fitted)
    }
}

/// What a paper says, from its file.
pub struct Paper {
    name: String,
    heads: HashMap<String, String>,
    tolerance: Option<(Accepted, String)>,
    cells: Vec<HashMap<String, String>>,
}

/// The paper whose values stand in `tests/reference/NAME.csv`.
pub fn paper(name: &str) -> Paper {
    let place = folder().join(format!("{name}.csv"));
    let text = std::fs::read_to_string(&place).unwrap_or_else(|e| panic!("{name}.csv: {e}"));
    let heads: HashMap<String, String> = text
        .lines()
        .filter_map(|line| line.strip_prefix("# ")?.split_once(": "))
        .map(|(what, says)| (what.to_owned(), says.to_owned()))
        .collect();
    let tolerance = heads.get("tolerance").map(|line| {
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
        heads,
        tolerance,
        cells: cells.unwrap_or_else(|e| panic!("{name}.csv: {e}")),
    }
}

/// Every paper, by name.
pub fn papers() -> Vec<Paper> {
    let entries = std::fs::read_dir(folder()).expect("papers");
    let mut names: Vec<String> = entries
        .map(|entry| entry.expect("an entry").path())
        .map(|path| {
            path.file_stem()
                .expect("a name")
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    names.sort();
    names.iter().map(|name| paper(name)).collect()
}

impl Paper {
    /// What its head says; empty where it says nothing.
    fn head(&self, what: &str) -> &str {
        self.heads.get(what).map_or("", String::as_str)
    }

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

    /// The row's own cell, else what the paper's head says.
    fn own_or_head(&self, what: &str) -> &'a str {
        match self.text(what) {
            "" => self.paper.head(what),
            text => text,
        }
    }

    #[track_caller]
    fn kind(&self) -> Kind {
        let word = self.text("kind");
        let known = Kind::ALL.into_iter().find(|kind| kind.word() == word);
        let known =
            known.unwrap_or_else(|| panic!("{}: {} is {word:?}", self.paper.name, self.quantity()));
        let can_fail = match self.text("needs").split_once(": ") {
            Some((file, quantity)) => !paper(file).row(quantity).is_missed(),
            None => true,
        };
        if can_fail { known } else { Kind::Identity }
    }

    fn source(&self) -> String {
        let source = self.paper.head("source");
        match self.text("place") {
            "" => source.to_owned(),
            place => format!("{source}, {place}"),
        }
    }

    fn is_missed(&self) -> bool {
        !self.text("missed").is_empty()
    }

    /// Asserts that the computed value is within what is accepted, and that the list of evidence says so. A row that
    /// is missed must be missed still: one that has become right loses its reason. While the list is written, a row
    /// of evidence that is missed without a reason fails nothing: the list shows it.
    #[track_caller]
    pub fn check(&self, computed: f64) {
        let is_met = self.accepted().holds(self.published(), computed);
        let line = listing::line(self, computed, is_met);
        // Written past the test harness's capture, so that `cargo test published_` prints every value.
        let _ = writeln!(std::io::stdout(), "{line}");
        let verdict = if is_met {
            ": listed as missed, but it is met"
        } else {
            ""
        };
        let is_shown = is_update() && self.kind().is_evidence();
        assert!(
            is_met != self.is_missed() || is_shown,
            "{}: computed {computed}, published {} ({}), from {}{verdict}",
            self.quantity(),
            self.published(),
            self.accepted().as_text(),
            self.source(),
        );
        listing::compare(self, line, is_met);
    }
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference")
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
