//! Warnings about a curve, as every JSON object tells them.
//!
//! In: a [`Study`]. Out: [`WarningRow`]s.

use crate::narrative::fibre_words::fibre_warning;
use crate::study::{FibreWarning, Study, fibre_warnings};
use serde::Serialize;

/// Fibres of a length that no living one is known at.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WarningRow {
    /// The muscle.
    pub muscle: String,
    /// First and last place of the stretch of the range.
    pub range: [f64; 2],
    /// The length farthest out, optimal lengths.
    pub fibre_length_norm: f64,
    /// The muscle's greatest share of the pull in the stretch.
    pub share: f64,
    /// The same in a sentence.
    pub in_words: String,
}

/// The warnings of a study; none is an empty list.
#[must_use]
pub(super) fn warnings(study: &Study) -> Vec<WarningRow> {
    fibre_warnings(study).iter().map(row).collect()
}

fn row(warning: &FibreWarning) -> WarningRow {
    WarningRow {
        muscle: warning.muscle.clone(),
        range: [warning.range.0, warning.range.1],
        fibre_length_norm: warning.length_norm,
        share: warning.share,
        in_words: fibre_warning(warning),
    }
}
