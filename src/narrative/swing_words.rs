//! What matters most in words: every value of the model by how much it moves a figure.
//!
//! In: [`Ranks`]. Out: the words around their figure and the names of its bars.

use super::comparison::compared_in_words;
use super::figure_words::FigureWords;
use super::parameters::{parameter_in_short, parameter_in_words};
use super::quantities::rounded;
use super::rank_words::step_in_words;
use crate::study::{Ranked, Ranks};

/// The words around the figure of the first rows.
#[must_use]
pub fn swing_words(ranks: &Ranks, shown: &[Ranked]) -> FigureWords {
    let by = rounded(ranks.by_percent, 1);
    let movement = &ranks.movement_title;
    let told: Vec<String> = shown.iter().map(swing_in_words).collect();
    FigureWords {
        title: match shown.first() {
            None => format!("{movement}: no value matters"),
            Some(first) => format!(
                "{movement}: what matters most is the {}, {} % for {}",
                parameter_in_words(&first.number.path),
                rounded(first.size_percent(), 1),
                step_in_words(first)
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

fn swing_in_words(row: &Ranked) -> String {
    format!(
        "{}: {} % lowered, {} % raised",
        parameter_in_words(&row.number.path),
        rounded(row.lowered_percent.unwrap_or(0.0), 1),
        rounded(row.raised_percent.unwrap_or(0.0), 1)
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
pub fn swing_name(ranks: &Ranks, row: &Ranked) -> String {
    let name = parameter_in_short(&row.number.path);
    let step = step_in_words(row);
    let share = format!("{} %", rounded(ranks.by_percent, 1));
    if step == share {
        name
    } else {
        format!("{name} (\u{b1}{step})")
    }
}
