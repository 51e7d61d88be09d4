//! What hangs beside a plain load, by name: bands, chains, any other implement.
//!
//! In: texts of options. Out: a setup without plain load.

use super::{Stock, item_from_text, setup_from_texts};
use crate::error::{Error, Result};
use crate::resistance::Setup;

/// Bands, chains and implements by name.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct HungTexts {
    /// Bands: "loop-29mm:1@rack-high".
    pub bands: Vec<String>,
    /// Chains: "chain-10mm:1".
    pub chains: Vec<String>,
    /// Any other implement: "counterweight 20 kg".
    pub items: Vec<String>,
}

impl HungTexts {
    /// All of it as a setup.
    ///
    /// **Fails** on an unknown piece or an unreadable text.
    pub fn setup(&self, stock: &Stock<'_>) -> Result<Setup> {
        let bands: Vec<&str> = self.bands.iter().map(String::as_str).collect();
        let chains: Vec<&str> = self.chains.iter().map(String::as_str).collect();
        let mut setup = if bands.is_empty() && chains.is_empty() {
            Setup::default()
        } else {
            setup_from_texts(&[], &bands, &chains, stock)?
        };
        for text in &self.items {
            setup.items.push(item_from_text(text, stock)?);
        }
        setup.accepted().map_err(Error::bad)
    }
}
