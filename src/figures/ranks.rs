//! What matters most: a two-sided bar for every value of the model.
//!
//! In: [`Ranks`]. Out: a chart of the strongest.

use crate::narrative::comparison::compared_in_words;
use crate::narrative::parameters::{parameter_in_short, parameter_in_words};
use crate::narrative::prose::capital;
use crate::plot::{Axis, Heading, Swing, Tornado};
use crate::study::{Ranked, Ranks};
use crate::units::rounded;

/// Bars that are readable on a slide.
const MOST_BARS: usize = 9;

/// The strongest values.
#[must_use]
pub fn rank_chart(ranks: &Ranks) -> Tornado {
    let top: Vec<&Ranked> = ranks.rows.iter().take(MOST_BARS).collect();
    let by = rounded(ranks.by_percent, 1);
    let title = top.first().map_or_else(
        || format!("{}: no value matters", ranks.movement_title),
        |first| {
            format!(
                "{}: the {} matters most, {} % for {by} %",
                ranks.movement_title,
                parameter_in_words(&first.number.path),
                rounded(first.size_percent(), 1)
            )
        },
    );
    let told: Vec<String> = top
        .iter()
        .map(|row| {
            format!(
                "{}: {} % lowered, {} % raised",
                parameter_in_words(&row.number.path),
                rounded(row.lowered_percent, 1),
                rounded(row.raised_percent, 1)
            )
        })
        .collect();
    Tornado {
        heading: Heading {
            title,
            subtitle: format!(
                "{}, one value lowered or raised by {by} %",
                ranks.lifter_title
            ),
            footnote: format!(
                "One value at a time, {} of {} that change anything; everything else as it is.",
                top.len(),
                ranks.rows.len()
            ),
            description: told.join("; "),
            ..super::phrases()
        },
        axis: Axis::new(
            format!("Change of the {}", compared_in_words(ranks.measure)),
            "%",
        ),
        lowered: format!("lowered by {by} %"),
        raised: format!("raised by {by} %"),
        decimals: 1,
        swings: top
            .iter()
            .map(|row| Swing {
                name: capital(&parameter_in_short(&row.number.path)),
                lowered: row.lowered_percent,
                raised: row.raised_percent,
            })
            .collect(),
    }
}
