//! What hangs beside a plain load that the command itself sets: bands and chains.

use crate::error::Result;
use crate::library::Library;
use crate::resistance::{Setup, setup_from_texts};
use clap::Args;

/// Bands and chains of one setup.
#[derive(Debug, Args)]
pub struct Hung {
    /// Band: NAME[:COUNT a side[@ANCHOR]], such as loop-29mm:1 or loop-29mm:1@rack-high
    #[arg(long, value_name = "BAND")]
    pub band: Vec<String>,
    /// Chain: NAME[:COUNT a side], such as chain-10mm:1
    #[arg(long, value_name = "CHAIN")]
    pub chain: Vec<String>,
}

/// The bands and chains as a setup without plain load.
///
/// **Fails** on an unknown piece or an unreadable text.
pub fn hung(options: &Hung, library: &Library) -> Result<Setup> {
    let pieces = library.pieces()?;
    let bands: Vec<&str> = options.band.iter().map(String::as_str).collect();
    let chains: Vec<&str> = options.chain.iter().map(String::as_str).collect();
    if bands.is_empty() && chains.is_empty() {
        return Ok(Setup::default());
    }
    setup_from_texts(&[], &bands, &chains, &pieces.stock())
}
