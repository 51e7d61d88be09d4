//! Metric or US units for output.

/// The units in which results are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum System {
    /// Kilograms, centimetres.
    #[default]
    Metric,
    /// Pounds, inches.
    Us,
}

/// A number with at most `decimals` decimals and no trailing zeros. (Passing: it stands in `narrative` now, and goes
/// from here with the last room above that still makes words.)
#[must_use]
pub fn rounded(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}
