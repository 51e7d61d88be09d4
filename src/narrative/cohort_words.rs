//! The maxima of a group of invented lifters in words.
//!
//! In: a [`Cohort`]. Out: sentences, and the cells of its table of quantiles.

use super::people_words::{DRAWN_FROM, FEWEST_FOR_TAILS, invented_people};
use super::quantities::{QuantityWords, rounded};
use crate::numeric::mean_and_deviation;
use crate::study::Cohort;
use crate::units::{Mass, System};

/// Who was invented, and how their maxima scatter.
#[must_use]
pub fn cohort_head(cohort: &Cohort, units: System) -> Vec<String> {
    let mut lines = vec![format!(
        "{}: {} (seed {}).",
        cohort.movement_title,
        invented_people(&cohort.asked, &cohort.lifter_title),
        cohort.asked.seed
    )];
    lines.extend(cohort.asked.part.map(|part| {
        format!(
            "Part {} of {}: {} of them.",
            part.number,
            part.of,
            cohort.members.len()
        )
    }));
    let moments = mean_and_deviation(&cohort.maxima_kg());
    lines.extend(moments.map(|(mean, deviation)| {
        format!(
            "Maximum {} on average, standard deviation {} ({} %).",
            units.mass(Mass::from_kg(mean)),
            units.mass(Mass::from_kg(deviation)),
            rounded(100.0 * deviation / mean.max(1e-9), 0)
        )
    }));
    lines
}

/// The heads of the table of quantiles.
pub const QUANTILE_HEADS: [&str; 3] = ["below which %", "maximum", "over body mass"];

/// One quantile as a row of that table: share of the group, maximum, maximum over body mass.
#[must_use]
pub fn quantile_cells(share: f64, one_rm_kg: f64, over_body: f64, units: System) -> Vec<String> {
    vec![
        rounded(100.0 * share, 0),
        units.mass(Mass::from_kg(one_rm_kg)),
        rounded(over_body, 2),
    ]
}

/// That a group was stopped before everyone was reckoned.
#[must_use]
pub fn stopped_words(cohort: &Cohort) -> String {
    format!(
        "Stopped before everyone was reckoned: {} of {} were.",
        cohort.members.len(),
        cohort.asked.numbers().len()
    )
}

/// What must be known of the table, a paragraph each.
#[must_use]
pub fn cohort_remarks(cohort: &Cohort) -> Vec<String> {
    let without = cohort.members.len() - cohort.maxima_kg().len();
    let mut remarks = Vec::new();
    if without > 0 {
        remarks.push(format!(
            "{without} of them have no maximum: they lift nothing, or their limbs do not fit the movement."
        ));
    }
    if !cohort.is_complete {
        remarks.push(stopped_words(cohort));
    }
    let found = cohort.maxima_kg().len();
    if found < FEWEST_FOR_TAILS {
        remarks.push(format!(
            "{found} {} no group: of fewer than {FEWEST_FOR_TAILS} people there is no tenth, so the rows of the table lie at single people or between two.",
            if found == 1 { "maximum is" } else { "maxima are" }
        ));
    }
    remarks.push(DRAWN_FROM.to_owned());
    remarks
}
