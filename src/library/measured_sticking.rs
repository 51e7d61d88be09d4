//! How many of measured lifters had a sticking region in motion at their maximum.
//!
//! In: `models/calibration/measured_sticking.ron`. Out: [`MeasuredSticking`] by lift.

use super::records::Library;
use super::{built_in, read::read};
use crate::error::Result;
use crate::source::Source;
use serde::Deserialize;
use std::collections::BTreeMap;

/// Lifters of one study at their maximum.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuredSticking {
    /// Where it comes from.
    pub source: Source,
    /// How many were measured.
    pub lifters: u32,
    /// How many of them had a sticking region.
    pub with_region: u32,
}

/// Studies by the name of their movement.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
struct StickingByLift {
    by_lift: BTreeMap<String, MeasuredSticking>,
}

impl Library {
    /// The measured lifters of a movement; none where no study was found.
    ///
    /// **Fails** if the shipped file is not sound.
    pub fn measured_sticking(&self, movement: &str) -> Result<Option<MeasuredSticking>> {
        let file = "calibration/measured_sticking.ron";
        let all: StickingByLift = read(
            &format!("models/{file}"),
            built_in::text(file).unwrap_or_default(),
        )?;
        Ok(all.by_lift.get(movement).cloned())
    }
}
