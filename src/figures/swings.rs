//! What matters most: a two-sided bar for every value of the model.
//!
//! In: [`Ranks`]. Out: a chart of the strongest.

use super::sheet::heading;
use crate::narrative::prose::capital;
use crate::narrative::swing_words::{swing_name, swing_quantity, swing_sides, swing_words};
use crate::plot::{Axis, Swing, Tornado};
use crate::study::Ranks;
use crate::units::System;

/// Bars that are readable on a slide.
const MOST_BARS: usize = 9;

/// The strongest values.
#[must_use]
pub fn rank_chart(ranks: &Ranks, units: System) -> Tornado {
    let shown = &ranks.rows[..ranks.rows.len().min(MOST_BARS)];
    let [lowered, raised] = swing_sides();
    Tornado {
        heading: heading(&swing_words(ranks, shown, units)),
        axis: Axis::new(swing_quantity(ranks), "%"),
        lowered,
        raised,
        decimals: 1,
        factors: false,
        swings: shown
            .iter()
            .map(|row| Swing {
                name: capital(&swing_name(ranks, row, units)),
                lowered: row.lowered_percent.unwrap_or(0.0),
                raised: row.raised_percent.unwrap_or(0.0),
            })
            .collect(),
    }
}
