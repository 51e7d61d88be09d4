//! The model's own error beside published values that nothing was set by.
//!
//! In: `models/calibration/errors_of_lifts.ron`, which the tests write from their table of evidence. Out: [`LiftErrors`].

use super::records::Library;
use super::{built_in, read::read};
use crate::error::Result;
use crate::movement::lift_name;
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
    by_quantity: BTreeMap<String, PublishedError>,
}

/// Fewest published values that say something of a lift or of a kind of question (assumed).
pub const FEWEST_ROWS: usize = 7;
/// A lift of which published values are missed by more than this factor is doubted (assumed).
const DOUBTED_FACTOR: f64 = 2.0;

impl LiftErrors {
    /// The error of one movement, by its name.
    #[must_use]
    pub fn of_movement(&self, movement: &str) -> Option<PublishedError> {
        let mut all = self.by_lift_or_thing.iter();
        all.find(|(name, _)| lift_name(name) == movement)
            .map(|(_, error)| *error)
    }

    /// Whether enough published values of a movement are missed by more than a factor of two.
    #[must_use]
    pub fn is_doubted(&self, movement: &str) -> bool {
        let known = self.of_movement(movement);
        known.is_some_and(|error| error.rows >= FEWEST_ROWS && error.factor() > DOUBTED_FACTOR)
    }

    /// The kinds of question for which there are enough values, the greatest error first.
    #[must_use]
    pub fn of_kinds(&self) -> Vec<(&str, PublishedError)> {
        let all = self.by_quantity.iter();
        let mut kinds: Vec<(&str, PublishedError)> = all
            .map(|(name, error)| (name.as_str(), *error))
            .filter(|(_, error)| error.rows >= FEWEST_ROWS)
            .collect();
        kinds.sort_by(|a, b| b.1.error.total_cmp(&a.1.error).then(a.0.cmp(b.0)));
        kinds
    }
}

impl PublishedError {
    /// The factor, up or down, that a difference of logarithms is.
    #[must_use]
    pub fn factor(self) -> f64 {
        self.error.exp()
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
