//! What hangs beside a plain load that the command itself sets: bands, chains, any other implement.

use crate::error::Result;
use crate::grammar::{item_from_text, setup_from_texts};
use crate::library::Library;
use crate::resistance::Setup;
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

/// The bands, chains and implements as a setup without plain load.
///
/// **Fails** on an unknown piece or an unreadable text.
pub fn hung(options: &Hung, library: &Library) -> Result<Setup> {
    let pieces = library.pieces()?;
    let bands: Vec<&str> = options.band.iter().map(String::as_str).collect();
    let chains: Vec<&str> = options.chain.iter().map(String::as_str).collect();
    let stock = pieces.stock();
    let mut setup = if bands.is_empty() && chains.is_empty() {
        Setup::default()
    } else {
        setup_from_texts(&[], &bands, &chains, &stock)?
    };
    for text in &options.item {
        setup.items.push(item_from_text(text, &stock)?);
    }
    Ok(setup)
}
