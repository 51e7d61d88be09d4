//! The model's own error beside published values that nothing was set by.
//!
//! In: `models/calibration/errors_of_lifts.ron`, which the tests write from their table of evidence. Out: [`LiftErrors`].

use super::records::Library;
use super::{built_in, read::read};
use crate::error::Result;
use serde::Deserialize;
use std::collections::BTreeMap;

/// The error of one lift or thing.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PublishedError {
    /// Published values.
    pub rows: usize,
    /// Root mean square of the logarithm of computed over published.
    pub error: f64,
}

/// Errors by lift.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct LiftErrors {
    by_lift_or_thing: BTreeMap<String, PublishedError>,
}

impl LiftErrors {
    /// The lifts of a library for which there are at least so many values, the greatest error first.
    #[must_use]
    pub fn of_lifts(&self, least_rows: usize) -> Vec<(&str, PublishedError)> {
        /// Things in the table that are no lifts.
        const NO_LIFTS: [&str; 3] = ["bands", "chains", "sets"];
        let all = self.by_lift_or_thing.iter();
        let mut lifts: Vec<(&str, PublishedError)> = all
            .map(|(name, error)| (name.as_str(), *error))
            .filter(|(name, error)| error.rows >= least_rows && !NO_LIFTS.contains(name))
            .collect();
        lifts.sort_by(|a, b| b.1.error.total_cmp(&a.1.error).then(a.0.cmp(b.0)));
        lifts
    }
}

impl Library {
    /// The model's own error by lift.
    ///
    /// **Fails** if the shipped file is not sound.
    pub fn lift_errors(&self) -> Result<LiftErrors> {
        let file = "calibration/errors_of_lifts.ron";
        read(
            &format!("models/{file}"),
            built_in::text(file).unwrap_or_default(),
        )
    }
}
