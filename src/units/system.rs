//! Metric or US units for output, and numbers rounded to the digits that matter.

use super::{Force, Length, Mass};

/// The units in which results are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum System {
    /// Kilograms, centimetres.
    #[default]
    Metric,
    /// Pounds, inches.
    Us,
}

impl System {
    /// A mass in words: "100 kg", "220.5 lb".
    #[must_use]
    pub fn mass(self, mass: Mass) -> String {
        match self {
            Self::Metric => format!("{} kg", rounded(mass.as_kg(), 1)),
            Self::Us => format!("{} lb", rounded(mass.as_lb(), 1)),
        }
    }

    /// A short length in words: "14.2 cm", "5.6 in".
    #[must_use]
    pub fn short_length(self, length: Length) -> String {
        match self {
            Self::Metric => format!("{} cm", rounded(length.as_cm(), 1)),
            Self::Us => format!("{} in", rounded(length.as_in(), 1)),
        }
    }

    /// A force in words: "981 N", "220 lbf".
    #[must_use]
    pub fn force(self, force: Force) -> String {
        match self {
            Self::Metric => format!("{} N", rounded(force.as_n(), 0)),
            Self::Us => format!("{} lbf", rounded(force.as_lbf(), 0)),
        }
    }
}

/// A number with at most `decimals` decimals and no trailing zeros; never "-0".
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
