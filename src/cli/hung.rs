//! What hangs beside a plain load that the command itself sets: bands, chains, any other implement.

use super::complain::warn;
use crate::error::Result;
use crate::grammar::{HungTexts, Stock};
use crate::library::Library;
use crate::resistance::Setup;
use crate::setups::Gym;
use crate::units::System;
use clap::Args;

/// Bands, chains and other implements of one setup.
#[derive(Debug, Args)]
pub struct Hung {
    /// Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high
    #[arg(long, value_name = "BAND")]
    pub band: Vec<String>,
    /// Chain: NAME[:COUNT a side], such as chain-10mm:1
    #[arg(long, value_name = "CHAIN")]
    pub chain: Vec<String>,
    /// Any other implement: "cable 40 kg, from rack-high", "counterweight 20 kg", "sled 60 kg", "spotter 150 N"
    #[arg(long, value_name = "KIND ...")]
    pub item: Vec<String>,
}

impl Hung {
    /// What hangs, as texts.
    #[must_use]
    pub fn texts(&self) -> HungTexts {
        HungTexts {
            bands: self.band.clone(),
            chains: self.chain.clone(),
            items: self.item.clone(),
        }
    }
}

/// The bands, chains and implements as a setup without plain load; what is unlikely about own files of them is told.
///
/// **Fails** on an unknown piece or an unreadable text.
pub fn hung(options: &Hung, library: &Library) -> Result<Setup> {
    hung_in(options, library, None)
}

/// The same in a gym, whose anchors go before the general ones.
pub fn hung_in(options: &Hung, library: &Library, gym: Option<&Gym>) -> Result<Setup> {
    let pieces = library.pieces()?;
    let stock = pieces.stock();
    let setup = options.texts().setup(&Stock {
        anchors: gym.map_or(stock.anchors, |gym| &gym.anchors),
        ..stock
    })?;
    warn(&library.doubts_of_setup(&setup)?, System::Metric);
    Ok(setup)
}
