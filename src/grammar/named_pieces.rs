//! What there is to choose from by name: bands, chains, anchors.
//!
//! In: a name. Out: the piece, or a fault that offers the nearest names.

use crate::error::{Error, HungPiece, PieceTextFault, Result};
use crate::resistance::{Anchor, Band, Chain};
use crate::units::Length;
use std::collections::BTreeMap;

/// Most of the nearest names that are offered.
const MOST_OFFERED: usize = 3;

/// What there is to choose from by name.
#[derive(Debug, Clone, Copy)]
pub struct Stock<'a> {
    /// Bands by name.
    pub bands: &'a BTreeMap<String, Band>,
    /// Chains by name.
    pub chains: &'a BTreeMap<String, Chain>,
    /// Anchors by name, before the general ones.
    pub anchors: &'a BTreeMap<String, Anchor>,
}

impl<'a> Stock<'a> {
    /// The band of that name.
    pub(super) fn band(&self, name: &str) -> Result<&'a Band> {
        chosen(HungPiece::Band, name, self.bands)
    }

    /// The chain of that name.
    pub(super) fn chain(&self, name: &str) -> Result<&'a Chain> {
        chosen(HungPiece::Chain, name, self.chains)
    }

    /// Reads "rack-low", "10 cm" or "10 cm,-20 cm" (height, then offset).
    ///
    /// **Fails** for a name that neither the stock nor the general anchors have, and for a bad length.
    pub(super) fn anchor(&self, text: &str) -> Result<Anchor> {
        let text = text.trim();
        let own = self.anchors.get(text).copied();
        if let Some(anchor) = own.or_else(|| Anchor::named(text)) {
            return Ok(anchor);
        }
        if !text.starts_with(|c: char| c.is_ascii_digit() || "+-.−".contains(c)) {
            return Err(Error::bad(PieceTextFault::UnknownAnchor(text.to_owned())));
        }
        let mut lengths = text.splitn(2, ',');
        let read = |part: &str| Length::from_text(part).map_err(Error::bad);
        let height = read(lengths.next().unwrap_or_default())?;
        let offset = lengths.next().map_or(Ok(Length::ZERO), read)?;
        Anchor::at(height, offset).map_err(Error::bad)
    }
}

/// The piece of that name, or a fault that offers the nearest names.
fn chosen<'a, T>(piece: HungPiece, name: &str, known: &'a BTreeMap<String, T>) -> Result<&'a T> {
    known.get(name).ok_or_else(|| {
        let mut near: Vec<(usize, &String)> = known
            .keys()
            .map(|other| (strsim::damerau_levenshtein(name, other), other))
            .collect();
        near.sort_unstable();
        let close = near.iter().filter(|n| n.0 <= 1 + name.len() / 3);
        Error::bad(PieceTextFault::Unknown {
            piece,
            name: name.to_owned(),
            near: close.take(MOST_OFFERED).map(|n| n.1.clone()).collect(),
            known: known.keys().cloned().collect(),
        })
    })
}
