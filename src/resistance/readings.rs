//! Readings of a band: its length and what a scale shows.
//!
//! In: a model file's pair. Out: length and force in SI.

use crate::units::{Force, Length, Mass};
use serde::Deserialize;

/// One reading: the band's length, and what a scale showed.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(try_from = "(Length, String)")]
pub struct Reading {
    /// Length from end to end.
    pub length: Length,
    /// Pull at that length.
    pub force: Force,
}

impl TryFrom<(Length, String)> for Reading {
    type Error = String;
    fn try_from((length, pull): (Length, String)) -> std::result::Result<Self, String> {
        Ok(Self {
            length,
            force: pull_from_text(&pull)?,
        })
    }
}

/// Reads a pull: a force ("120 N", "25 lbf") or what a hanging scale shows ("12 kg", "25 lb").
pub fn pull_from_text(text: &str) -> std::result::Result<Force, String> {
    Force::from_text(text)
        .or_else(|_| Mass::from_text(text).map(Mass::weight))
        .map_err(|_| {
            format!("`{text}` is no pull: write a force such as \"120 N\", or what a scale shows, such as \"12 kg\"")
        })
}
