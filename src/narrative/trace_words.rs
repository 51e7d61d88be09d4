//! A bar's trace in words: repetitions, velocities, the sticking region beside the simulated one.
//!
//! In: a [`TraceBeside`]. Out: a sentence for its head, heads and cells of its table, remarks.

use super::prose::counted_noun;
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::progress::traced_repetitions::TracedRepetition;
use crate::study::TraceBeside;
use crate::units::System;

/// Whose trace, and how much of it could be read.
#[must_use]
pub fn trace_head(beside: &TraceBeside, units: System) -> String {
    let traced = &beside.traced;
    let mut words = format!(
        "Trace {}: {}, {}, {}",
        traced.told.file,
        traced.told.movement,
        units.mass(traced.told.load),
        counted_noun(traced.repetitions.len(), "repetition")
    );
    if traced.left_out > 0 {
        let rows = counted_noun(traced.left_out, "row");
        words += &format!("; {rows} without two numbers left out");
    }
    words + "."
}

/// The heads of the table of repetitions.
#[must_use]
pub fn trace_heads(units: System) -> Vec<String> {
    let length = units.length_unit().symbol;
    vec![
        "repetition".to_owned(),
        format!("way {length}"),
        "mean m/s".to_owned(),
        "peak m/s".to_owned(),
        "sticking region, % of the way".to_owned(),
    ]
}

/// One repetition as a row of that table.
#[must_use]
pub fn trace_cells(number: usize, one: &TracedRepetition, units: System) -> Vec<String> {
    let region = one.sticking.map(|region| [region.from, region.to]);
    vec![
        number.to_string(),
        rounded(units.length_unit().of(one.way_m), 0),
        rounded(one.mean_velocity.as_m_s(), 2),
        rounded(one.peak_velocity.as_m_s(), 2),
        region_in_words(region),
    ]
}

/// "31 to 48", or that there is none.
fn region_in_words(region: Option<[f64; 2]>) -> String {
    region.map_or_else(
        || "none seen".to_owned(),
        |ends| {
            let [from, to] = ends.map(|end| rounded(100.0 * end, 0));
            format!("{from} to {to}")
        },
    )
}

/// What the fitted lifter does with the same load.
#[must_use]
pub fn trace_remark(beside: &TraceBeside) -> String {
    let Some(mean) = beside.mean_velocity_m_s else {
        return "The fitted lifter does not lift this load.".to_owned();
    };
    format!(
        "The fitted lifter lifts it at {} m/s on average, sticking region {} % of the way; of the trace only the mean velocity of the \
         fastest repetition is used, by a published equation.",
        rounded(mean, 2),
        region_in_words(beside.sticking)
    )
}
