//! What matters most in words: every value of the model by how much it moves a figure.
//!
//! In: [`Ranks`]. Out: the words around their figure and the names of its bars.

use super::changed_numbers::signed;
use super::comparison::compared_in_words;
use super::figure_words::FigureWords;
use super::parameters::{parameter_in_short, parameter_in_words};
use super::quantities::rounded;
use super::rank_words::{effect_in_words, step_in_words};
use crate::study::{Ranked, Ranks};
use crate::units::System;

/// The words around the figure of the first rows.
#[must_use]
pub fn swing_words(ranks: &Ranks, shown: &[Ranked], units: System) -> FigureWords {
    let by = rounded(ranks.by_percent, 1);
    let movement = &ranks.movement_title;
    let told = shown.iter().map(|row| effect_in_words(row, units));
    let told: Vec<String> = told.collect();
    FigureWords {
        title: match shown.first() {
            None => format!("{movement}: no value matters"),
            Some(first) => format!(
                "{movement}: what matters most is the {}, {}",
                parameter_in_words(&first.number.path),
                greater_effect(first, units)
            ),
        },
        subtitle: format!(
            "{}, one value lowered or raised by {by} %; places and angles by the step beside them",
            ranks.lifter_title
        ),
        footnote: format!(
            "One value at a time, {} of {} that change anything; everything else as it is.",
            shown.len(),
            ranks.rows.len()
        ),
        description: told.join("; "),
        caption: String::new(),
    }
}

/// The larger effect of the two: "−12.9 % for 1 cm less".
fn greater_effect(row: &Ranked, units: System) -> String {
    let both = [("less", row.lowered_percent), ("more", row.raised_percent)];
    let done = both
        .into_iter()
        .filter_map(|(way, change)| Some((way, change?)));
    let greater = done.max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()).then(b.0.cmp(a.0)));
    let (way, change) = greater.unwrap_or(("more", 0.0));
    format!(
        "{} % for {} {way}",
        signed(change, 1),
        step_in_words(row, units)
    )
}

/// What the bars measure.
#[must_use]
pub fn swing_quantity(ranks: &Ranks) -> String {
    format!("Change of the {}", compared_in_words(ranks.measure))
}

/// What the two sides of the bars mean.
#[must_use]
pub fn swing_sides() -> [String; 2] {
    ["lowered".to_owned(), "raised".to_owned()]
}

/// The name of a bar: the value, with its step where that is no share of it.
#[must_use]
pub fn swing_name(ranks: &Ranks, row: &Ranked, units: System) -> String {
    let name = parameter_in_short(&row.number.path);
    let step = step_in_words(row, units);
    let share = format!("{} %", rounded(ranks.by_percent, 1));
    if step == share {
        name
    } else {
        format!("{name} (\u{b1}{step})")
    }
}
