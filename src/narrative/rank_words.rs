//! Which values matter most, as a table and in sentences.
//!
//! In: [`Ranks`], units. Out: text for the report of a ranking.

use super::changed_numbers::signed;
use super::comparison::compared_in_words;
use super::faults::in_one_line;
use super::parameters::parameter_in_words;
use super::prose::{counted_noun, of_count};
use super::quantities::rounded;
use super::shown_units::ShownUnits;
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
pub fn rank_cells(row: &Ranked, units: System) -> Vec<String> {
    vec![
        row.number.path.clone(),
        parameter_in_words(&row.number.path),
        step_in_words(row, units),
        change(row.lowered_percent),
        change(row.raised_percent),
        origin(&row.from),
    ]
}

/// A change of the measure; a dash where the value cannot go so far.
fn change(percent: Option<f64>) -> String {
    percent.map_or("-".to_owned(), |percent| signed(percent, 2))
}

/// By how much a value was changed: "5 %", "5 deg", "1 cm" or "0.39 in".
#[must_use]
pub fn step_in_words(row: &Ranked, units: System) -> String {
    let length = units.length_unit();
    match (row.by, row.number.unit) {
        (RankStep::Percent(percent), _) => format!("{} %", rounded(percent, 2)),
        (RankStep::Amount(by), "rad") => format!("{} deg", rounded(by.to_degrees(), 2)),
        (RankStep::Amount(by), "m") => format!("{} {}", rounded(length.of(by), 2), length.symbol),
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
        lines.push(most(ranks, first, units));
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
            "{} {} nothing: {}.",
            counted_noun(count, "value"),
            of_count(count, "changes", "change"),
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

/// What matters most of all, and of what a person sets: a place on a bone is nobody's to change.
fn most(ranks: &Ranks, first: &Ranked, units: System) -> String {
    let measure = compared_in_words(ranks.measure);
    let mut words = format!(
        "Each value was lowered and raised alone, by {} % or by the amount beside it. What changes the {measure} most is the {}.",
        rounded(ranks.by_percent, 2),
        effect_in_words(first, units)
    );
    let mut set = ranks.rows.iter().filter(|row| row.is_technique());
    if let Some(row) = set.next().filter(|row| *row != first) {
        words += &format!(
            " Of the technique it is the {}.",
            effect_in_words(row, units)
        );
    }
    words
}

/// A value with what both changes of it do: "grip width: 5 % less +2.4 %, 5 % more −2.4 %".
#[must_use]
pub(crate) fn effect_in_words(row: &Ranked, units: System) -> String {
    let step = step_in_words(row, units);
    let told = [("less", row.lowered_percent), ("more", row.raised_percent)];
    let told = told.map(|(way, change)| match change {
        Some(percent) => format!("{step} {way} {} %", signed(percent, 1)),
        None => format!("{step} {way} cannot be done"),
    });
    format!(
        "{}: {}",
        parameter_in_words(&row.number.path),
        told.join(", ")
    )
}
