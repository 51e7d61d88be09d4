//! Every band and chain of the library, by name.
//!
//! In: checked bands and chains. Out: [`Pieces`], from which a [`Stock`] is lent.

use crate::grammar::Stock;
use crate::resistance::{Anchor, Band, Chain};
use std::collections::BTreeMap;

/// Every band and chain of the library, by name.
#[derive(Debug, Clone)]
pub struct Pieces {
    bands: BTreeMap<String, Band>,
    chains: BTreeMap<String, Chain>,
    anchors: BTreeMap<String, Anchor>,
}

impl Pieces {
    /// These bands and chains, without anchors of a gym's own.
    pub(super) const fn of(bands: BTreeMap<String, Band>, chains: BTreeMap<String, Chain>) -> Self {
        Self {
            bands,
            chains,
            anchors: BTreeMap::new(),
        }
    }

    /// The pieces as the readers of command lines and setup files want them.
    #[must_use]
    pub fn stock(&self) -> Stock<'_> {
        Stock {
            bands: &self.bands,
            chains: &self.chains,
            anchors: &self.anchors,
        }
    }
}
