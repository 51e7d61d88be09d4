//! What the printed sheet of a session says beside its sets: heads, blocks of lines, lines to fill in.
//!
//! In: a plan in words. Out: the same heads and blocks for the page and for the picture.

use super::plan_words::PlanWords;
use super::prose::counted_noun;

/// Heads of the table of sets; the last ones are of [`BLANKS`], to fill in by hand.
pub const COLUMN_HEADS: [&str; 9] = [
    "Set",
    "Load",
    "% 1RM",
    "Repetitions",
    "Rest",
    "How to load",
    BLANKS[0],
    BLANKS[1],
    BLANKS[2],
];

/// What is written down of every working set: repetitions done, repetitions in reserve, velocity of the fastest one.
/// They are columns of a training log.
pub const BLANKS: [&str; 3] = ["Done", "RIR", "m/s"];

/// Head of the cautions.
pub const CAUTIONS: &str = "Cautions";

/// Lines under a head.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetBlock {
    /// The head.
    pub title: &'static str,
    /// The lines, none of them empty.
    pub lines: Vec<String>,
}

/// The blocks at the left (how it is done) and at the right (who helps, what to expect); empty ones are left out.
#[must_use]
pub fn blocks(words: &PlanWords) -> [Vec<SheetBlock>; 2] {
    let block = |title, lines: Vec<String>| SheetBlock {
        title,
        lines: lines.into_iter().filter(|line| !line.is_empty()).collect(),
    };
    let sides = [
        vec![
            block("Setup", words.setup.clone()),
            block("Going on", vec![words.progression.clone()]),
            block("Good to know", words.notes.clone()),
        ],
        vec![
            block("Spotters and their words", spotters(words)),
            block("Predicted", words.predicted.clone()),
        ],
    ];
    sides.map(|side| side.into_iter().filter(|b| !b.lines.is_empty()).collect())
}

/// Who stands by, and the words they agree on.
fn spotters(words: &PlanWords) -> Vec<String> {
    let Some(spotters) = &words.spotters else {
        return Vec::new();
    };
    let calls = words.calls.iter();
    let calls = calls.map(|(word, meaning)| format!("\u{201c}{word}\u{201d}: {meaning}"));
    std::iter::once(spotters.clone()).chain(calls).collect()
}

/// The head of a session's sheet.
#[must_use]
pub fn sheet_heading(title: &str, words: &PlanWords) -> String {
    format!("{}: {}", words.movement, title.replace('-', " "))
}

/// Whose session it is, how long, how often.
#[must_use]
pub fn sheet_facts(words: &PlanWords) -> String {
    format!(
        "{}; {}; {}; {}",
        words.one_rm, words.level, words.amount, words.frequency
    )
}

/// The sheet in sentences, for those who cannot see it.
#[must_use]
pub fn sheet_description(words: &PlanWords) -> String {
    let sets: Vec<String> = words
        .rows
        .iter()
        .filter(|row| !row.is_warm_up)
        .map(|row| {
            format!(
                "set {}: {}, {}",
                row.name,
                row.load,
                counted_noun(&row.repetitions, "repetition")
            )
        })
        .collect();
    format!(
        "{}. {}. Cautions: {}",
        words.one_rm,
        sets.join("; "),
        words.cautions.join(" ")
    )
}
