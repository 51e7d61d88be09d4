//! Bands, chains and setups by name: what the command line hangs on the bar.
//!
//! In: the shelves of bands and chains, a setup file, a gym file. Out: [`Pieces`], a checked [`Setup`], a
//! checked [`Gym`].

use super::changed::changed;
use super::complaint::{Complaint, complaint, said};
use super::piece_rules;
use super::pieces::Pieces;
use super::records::Library;
use crate::error::{BrokenRule, Fault, GymFault, Result, Shelf};
use crate::grammar::SetupFile;
use crate::resistance::Setup;
use crate::setups::{Gym, GymFile, slips};
use serde::de::DeserializeOwned;
use std::collections::BTreeMap;
use std::sync::Arc;

impl Library {
    /// Every band and chain, read when first asked for.
    ///
    /// **Fails** with the first file that is wrong.
    pub fn pieces(&self) -> Result<Arc<Pieces>> {
        if let Some(pieces) = self.pieces.get() {
            return Ok(pieces.clone());
        }
        let pieces = Pieces::of(self.all(Shelf::Bands)?, self.all(Shelf::Chains)?);
        Ok(self.pieces.get_or_init(|| Arc::new(pieces)).clone())
    }

    /// A setup by name or path, its bands and chains looked up.
    ///
    /// **Fails** with what is wrong in the file, or a name that no piece has.
    pub fn setup(&self, name: &str) -> Result<Setup> {
        let record: SetupFile = self.record(Shelf::Setups, name, |s| self.setup_rules(s))?;
        record.resolve(&self.pieces()?.stock())
    }

    /// What is wrong with the items of a setup, each told at its place.
    pub(super) fn setup_rules(&self, record: &SetupFile) -> Vec<Complaint> {
        let pieces = match self.pieces() {
            Ok(pieces) => pieces,
            Err(error) => return vec![said(String::new(), &error)],
        };
        let items = record.items.iter().enumerate();
        let mut broken: Vec<Complaint> = items
            .filter_map(|(index, item)| {
                let error = item.resolve(&pieces.stock()).err()?;
                Some(said(format!("items.{index}"), &error))
            })
            .collect();
        if broken.is_empty() {
            let whole = record.resolve(&pieces.stock()).err();
            broken.extend(whole.map(|error| said("items".to_owned(), &error)));
        }
        broken
    }

    /// A gym by name or path, its bands and chains looked up.
    ///
    /// **Fails** with everything that is wrong in the file.
    pub fn gym(&self, name: &str) -> Result<Gym> {
        let mut record: GymFile = self.record(Shelf::Gyms, name, |g| self.gym_rules(g))?;
        if self.replaces(Shelf::Gyms, name) {
            record.title = changed(&record.title);
        }
        record.resolve(&self.pieces()?.stock())
    }

    /// What is wrong in a gym, each told at its place.
    pub(super) fn gym_rules(&self, record: &GymFile) -> Vec<Complaint> {
        let pieces = match self.pieces() {
            Ok(pieces) => pieces,
            Err(error) => return vec![said(String::new(), &error)],
        };
        let reads_on = |(path, slip)| {
            let slip = Fault::new(GymFault::InFile {
                path: String::new(),
                slip,
            });
            complaint(path, BrokenRule::ReadsOn(Box::new(slip)))
        };
        let slips = slips(record, &pieces.stock());
        let broken = slips.into_iter().map(reads_on);
        broken.chain(piece_rules::gym(record)).collect()
    }

    fn all<T: DeserializeOwned>(&self, shelf: Shelf) -> Result<BTreeMap<String, T>> {
        self.names(shelf)
            .into_iter()
            .map(|name| {
                let text = self.layered(shelf, &name)?;
                let piece = text.read()?;
                self.known_sources(&text)?;
                Ok((name, piece))
            })
            .collect()
    }
}
