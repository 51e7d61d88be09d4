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

/// A number with at most `decimals` decimals and no trailing zeros, as a setting is written; words take it from
/// `narrative`.
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
