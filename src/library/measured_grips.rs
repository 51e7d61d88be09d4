//! Maxima of the bench press that were measured with several grips.
//!
//! In: `models/calibration/measured_grips.ron`. Out: [`MeasuredGrips`].

use super::records::Library;
use super::{built_in, read::read};
use crate::error::Result;
use crate::source::Source;
use serde::Deserialize;

/// The maximum of a group of people with one grip.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuredGrip {
    /// What the study calls it.
    pub name: String,
    /// Distance of the hands over the breadth of the shoulders.
    pub breadths: f64,
    /// Mean of the maxima, kg.
    pub one_rm_kg: f64,
}

/// Maxima by grip.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuredGrips {
    /// Where they come from.
    pub source: Source,
    /// From the narrowest to the widest.
    pub grips: Vec<MeasuredGrip>,
}

impl Library {
    /// Maxima of the bench press that were measured with several grips.
    ///
    /// **Fails** if the shipped file is not sound.
    pub fn measured_grips(&self) -> Result<MeasuredGrips> {
        let file = "calibration/measured_grips.ron";
        read(
            &format!("models/{file}"),
            built_in::text(file).unwrap_or_default(),
        )
    }
}
