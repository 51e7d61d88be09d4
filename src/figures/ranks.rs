//! What matters most: a two-sided bar for every value of the model.
//!
//! In: [`Ranks`]. Out: a chart of the strongest.

use crate::narrative::prose::capital;
use crate::plot::{Axis, Heading, Swing, Tornado};
use crate::study::{Ranked, Ranks};
use crate::units::rounded;

/// Bars that are readable on a slide.
const MOST_BARS: usize = 9;

/// A name that fits beside a bar.
fn short(name: &str) -> String {
    let name = name.replace("moment arm of", "arm of");
    let name = name.replace(" in its reference pose", "");
    let name = name.replace("at the shoulder (", "(");
    capital(&name)
}

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
                first.name,
                rounded(first.size_percent(), 1)
            )
        },
    );
    let told: Vec<String> = top
        .iter()
        .map(|row| {
            format!(
                "{}: {} % lowered, {} % raised",
                row.name,
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
        },
        axis: Axis::new(format!("Change of the {}", ranks.measure.in_words()), "%"),
        lowered: format!("lowered by {by} %"),
        raised: format!("raised by {by} %"),
        decimals: 1,
        swings: top
            .iter()
            .map(|row| Swing {
                name: short(&row.name),
                lowered: row.lowered_percent,
                raised: row.raised_percent,
            })
            .collect(),
    }
}
