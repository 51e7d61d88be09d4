//! What the model misses most of a lift along its range, beside a figure that is cut to that range.
//!
//! In: `models/calibration/worst_misses.ron`, which a test holds to the list of predictions. Out: [`WorstMiss`] by lift.

use super::records::Library;
use super::{built_in, read::read};
use crate::error::Result;
use crate::source::Source;
use serde::Deserialize;
use std::collections::BTreeMap;

/// What a lift holds with the hip at one angle over that at another.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WorstMiss {
    /// Where the expected ratio comes from.
    pub source: Source,
    /// The angles of the hip, the one over the other, deg.
    pub hip_deg: (u32, u32),
    /// Least and greatest ratio that is expected.
    pub expected: (f64, f64),
    /// The model's ratio for the reference man.
    pub computed: f64,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct MissesByLift {
    by_hip_angle: BTreeMap<String, WorstMiss>,
}

impl Library {
    /// The worst miss of a movement; none where none is recorded.
    ///
    /// **Fails** if the shipped file is not sound.
    pub fn worst_miss(&self, movement: &str) -> Result<Option<WorstMiss>> {
        let file = "calibration/worst_misses.ron";
        let all: MissesByLift = read(
            &format!("models/{file}"),
            built_in::text(file).unwrap_or_default(),
        )?;
        Ok(all.by_hip_angle.get(movement).cloned())
    }
}
