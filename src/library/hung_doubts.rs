//! What is accepted and yet unlikely about files of one's own that a load is built from: bands, chains, setups, gyms.
//!
//! In: a setup, or the name of a file. Out: the same doubts as the check of the file has, but those about its sources.

use super::folder_check::is_model_file;
use super::records::Library;
use crate::error::{BrokenRule, Doubt, Fault, ModelFault, Result, Shelf, What};
use crate::resistance::{Item, Setup};
use std::path::Path;

impl Library {
    /// Doubts about a file of one's own by name or path; a built-in one has none.
    ///
    /// **Fails** with what is wrong in the file.
    pub fn doubts_of(&self, shelf: Shelf, name: &str) -> Result<Vec<Fault>> {
        let inside = format!("{}/{name}.ron", shelf.folder());
        if !is_model_file(Path::new(name)) && self.own_file(&inside).is_none() {
            return Ok(Vec::new());
        }
        let (file, text) = self.text(shelf, name)?;
        let checked = self.check_text(Some(shelf), &file, &text)?;
        let doubts = checked.doubts.into_iter();
        Ok(doubts.filter(|doubt| !is_of_sources(doubt)).collect())
    }

    /// Doubts about the own bands and chains that hang in a setup.
    ///
    /// **Fails** with what is wrong in one of their files.
    pub fn doubts_of_setup(&self, setup: &Setup) -> Result<Vec<Fault>> {
        let pieces = self.pieces()?;
        let stock = pieces.stock();
        let mut doubts = Vec::new();
        let hangs = |is: &dyn Fn(&Item) -> bool| setup.items.iter().any(is);
        for (name, band) in stock.bands {
            if hangs(&|item| matches!(item, Item::Band(hung) if hung.band == *band)) {
                doubts.extend(self.doubts_of(Shelf::Bands, name)?);
            }
        }
        for (name, chain) in stock.chains {
            if hangs(&|item| matches!(item, Item::Chain(hung) if hung.chain == *chain)) {
                doubts.extend(self.doubts_of(Shelf::Chains, name)?);
            }
        }
        Ok(doubts)
    }
}

/// Whether a doubt is about where numbers come from, which changes nothing about a load.
fn is_of_sources(doubt: &Fault) -> bool {
    let What::Model(ModelFault::Rule(rule)) = &doubt.what else {
        return false;
    };
    matches!(rule.broken, BrokenRule::Doubt(Doubt::Unsourced { .. }))
}
