//! Readings of a band: its length and what a scale shows.
//!
//! In: a model file's pair. Out: length and force in SI.

use crate::error::ImplementFault;
use crate::units::{Force, Length, Mass};
use serde::Deserialize;

/// One reading: the band's length, and what a scale showed.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(try_from = "(Length, String)")]
pub struct BandReading {
    /// Length from end to end.
    pub length: Length,
    /// Pull at that length.
    pub force: Force,
}

impl TryFrom<(Length, String)> for BandReading {
    type Error = ImplementFault;
    fn try_from((length, pull): (Length, String)) -> Result<Self, ImplementFault> {
        Ok(Self {
            length,
            force: pull_from_text(&pull)?,
        })
    }
}

/// Reads a pull: a force ("120 N", "25 lbf") or what a hanging scale shows ("12 kg", "25 lb").
pub fn pull_from_text(text: &str) -> Result<Force, ImplementFault> {
    Force::from_text(text)
        .or_else(|_| Mass::from_text(text).map(Mass::weight))
        .map_err(|_| ImplementFault::NoPull(text.to_owned()))
}
