//! What the calibration found: value and standard deviation of every fitted number, by its path.
//!
//! In: `models/calibration/posterior.ron`, which the maintenance program `calibrate` writes. Out:
//! [`FittedValue`] of a path of the shipped muscle table, fibre curves and strength factors.

use super::built_in;
use super::read::read;
use super::records::Library;
use crate::anatomy::Sex;
use crate::error::Result;
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
    values: BTreeMap<String, FittedValue>,
}

impl Library {
    /// What the calibration found for a path such as `muscles.soleus.optimal_fibre_length` or
    /// `lifter.strength.knee_extensors` of a lifter of this sex; `None` where it left the number alone.
    ///
    /// **Fails** if the shipped file is not sound.
    // Sensitivity with provenance is about to read it.
    #[allow(dead_code)]
    pub fn fitted(&self, sex: Sex, path: &str) -> Result<Option<FittedValue>> {
        let posterior = match self.posterior.get() {
            Some(posterior) => posterior,
            None => {
                let file = "calibration/posterior.ron";
                let found = match built_in::text(file) {
                    Some(text) => read(&format!("models/{file}"), text)?,
                    None => Posterior::default(),
                };
                self.posterior.get_or_init(|| found)
            }
        };
        let who = match sex {
            Sex::Man => "man",
            Sex::Woman => "woman",
        };
        let values = &posterior.values;
        let own = values.get(&format!("{who}/{path}"));
        Ok(own.or_else(|| values.get(path)).copied())
    }
}
