//! How well the strengths of one person are known.
//!
//! In: what a fit to measurements wrote into the lifter's file. Out: names and covariance of the numbers that it moved.

use crate::source::Source;
use serde::{Deserialize, Serialize};

/// What a fit knows of the strengths of one person: their logarithms scatter normally about the values of the file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PersonScatter {
    /// The numbers, by their paths in the file: `strength_scale`, `strength.knee_extensors`, `lift_strength.squat`.
    pub of: Vec<String>,
    /// Covariance of their logarithms: the lower triangle, a row a number.
    pub covariance: Vec<Vec<f64>>,
    /// Plausible versions that count alike, a row a version: logarithms of the same numbers beside the file's. Where there
    /// are none, versions are drawn from the normal distribution of that covariance.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub versions: Vec<Vec<f64>>,
    /// Where it comes from.
    pub source: Source,
}
