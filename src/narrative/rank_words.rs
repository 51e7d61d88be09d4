//! Which values matter most, as a table and in sentences.
//!
//! In: [`Ranks`], units. Out: text for the report of a ranking.

use super::comparison::compared_in_words;
use super::faults::in_one_line;
use super::parameters::parameter_in_words;
use super::quantities::rounded;
use super::source_words::source_in_words;
use crate::library::Provenance;
use crate::source::Source;
use crate::study::{RankStep, Ranked, Ranks};
use crate::units::System;

/// The heads of the table.
pub const RANK_HEADS: [&str; 6] = [
    "value",
    "in words",
    "changed by",
    "lowered %",
    "raised %",
    "from",
];

/// A value as a row of that table.
#[must_use]
pub fn rank_cells(row: &Ranked) -> Vec<String> {
    vec![
        row.number.path.clone(),
        parameter_in_words(&row.number.path),
        step_in_words(row),
        change(row.lowered_percent),
        change(row.raised_percent),
        origin(&row.from),
    ]
}

/// A change of the measure; a dash where the value cannot go so far.
fn change(percent: Option<f64>) -> String {
    percent.map_or("-".to_owned(), |percent| rounded(percent, 2))
}

/// By how much a value was changed: "5 %", "5 deg", "1 cm".
#[must_use]
pub fn step_in_words(row: &Ranked) -> String {
    match (row.by, row.number.unit) {
        (RankStep::Percent(percent), _) => format!("{} %", rounded(percent, 2)),
        (RankStep::Amount(by), "rad") => format!("{} deg", rounded(by.to_degrees(), 2)),
        (RankStep::Amount(by), "m") => format!("{} cm", rounded(100.0 * by, 2)),
        (RankStep::Amount(by), unit) => format!("{} {unit}", rounded(by, 3)).trim_end().to_owned(),
    }
}

/// A value that the calibration did not move, in a record of which it moved others.
const KEPT: &str = "kept in the fit";

/// Where a value comes from, in a word or two: "published", "from memory", "fitted ± 4 %".
#[must_use]
pub fn origin(from: &Provenance) -> String {
    if let Some(fitted) = from.fitted {
        let percent = 100.0 * fitted.relative_deviation();
        return format!("fitted ± {} %", rounded(percent, 1));
    }
    let stands_in = |folder: &str| from.file.as_deref().is_some_and(|f| f.starts_with(folder));
    if matches!(from.source, Some(Source::Fitted(_))) && stands_in("models/muscles/") {
        // The record is fitted, this value of it was kept as it was recalled.
        return KEPT.to_owned();
    }
    let source = from.source.as_ref().map(source_in_words);
    let kind = source.as_deref().and_then(|words| words.split(':').next());
    kind.unwrap_or("no source").to_owned()
}

/// How many of the ten strongest values have a source or a fitted deviation.
fn first_ten(ranks: &Ranks) -> Option<String> {
    /// How many of the strongest are counted.
    const STRONGEST: usize = 10;
    let shown = &ranks.rows[..ranks.rows.len().min(STRONGEST)];
    if shown.is_empty() {
        return None;
    }
    let origins = shown.iter().map(|row| origin(&row.from));
    let bare = |from: &String| {
        from == "assumed" || from == "from memory" || from == "no source" || from == KEPT
    };
    let known = origins.filter(|from| !bare(from)).count();
    Some(format!(
        "Of the {} that matter most, {known} are published, common practice or fitted to measurements; the others are \
         assumed, from memory or kept in the fit.",
        shown.len()
    ))
}

/// What stands under a table of so many rows: the value that matters most, those that do less or nothing.
#[must_use]
pub fn rank_paragraphs(ranks: &Ranks, shown: usize, units: System) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(first) = ranks.rows.first() {
        lines.push(String::new());
        lines.push(most(ranks, first));
    }
    lines.extend(first_ten(ranks));
    let more = ranks.rows.len().saturating_sub(shown);
    if more > 0 {
        lines.push(format!(
            "{more} more change it less (--format csv lists all)."
        ));
    }
    if !ranks.without_effect.is_empty() {
        let paths = ranks
            .without_effect
            .iter()
            .map(|number| number.path.as_str());
        let paths: Vec<&str> = paths.collect();
        let count = paths.len();
        lines.push(format!(
            "{count} values change nothing: {}.",
            paths.join(", ")
        ));
    }
    let undone = ranks.undone.iter();
    lines.extend(undone.map(|(number, error)| {
        let reason = in_one_line(error, units);
        format!("{} could not be changed: {reason}", number.path)
    }));
    lines
}

fn most(ranks: &Ranks, first: &Ranked) -> String {
    format!(
        "Each value was lowered and raised by {} % alone (angles and places near 0 by the amount beside them). What matters most is the {}: {} % of the {}.",
        rounded(ranks.by_percent, 2),
        parameter_in_words(&first.number.path),
        rounded(first.size_percent(), 1),
        compared_in_words(ranks.measure)
    )
}
