//! What the calibration found: value and standard deviation of every fitted number, by its path.
//!
//! In: `models/calibration/posterior.ron`, which the maintenance program `calibrate` writes. Out:
//! [`FittedValue`] of a path of the shipped muscle table, fibre curves and strength factors.

use serde::Deserialize;
use std::collections::BTreeMap;

/// One number that the calibration found, in SI, of the body that the muscle table was made for.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FittedValue {
    /// The most probable value, as it stands in the model file.
    pub value: f64,
    /// Its standard deviation after the fit.
    pub deviation: f64,
    /// The value before the fit.
    pub prior: f64,
    /// Its standard deviation before the fit.
    pub prior_deviation: f64,
}

impl FittedValue {
    /// Standard deviation over the value: holds for a body of any size.
    #[must_use]
    pub fn relative_deviation(&self) -> f64 {
        (self.deviation / self.value).abs()
    }
}

/// The part of the file that the program uses; the rest is for its readers.
#[derive(Debug, Clone, Default, Deserialize)]
pub(super) struct Posterior {
    pub(super) values: BTreeMap<String, FittedValue>,
}
