//! Bands, chains and setups by name: what the command line hangs on the bar.
//!
//! In: names on the shelves of bands and chains, a setup file. Out: [`Pieces`], from which a
//! [`Stock`] is lent, and a checked [`Setup`].

use super::complaint::{Complaint, complaint, none_in_file};
use super::read::read;
use super::records::Library;
use crate::error::{BrokenRule, Error, Fault, GymFault, Result, Shelf};
use crate::grammar::{SetupFile, Stock};
use crate::resistance::{Anchor, Band, Chain, Setup};
use crate::setups::{Gym, GymFile, slips};
use serde::de::DeserializeOwned;
use std::collections::BTreeMap;

/// Every band and chain of the library, by name.
#[derive(Debug, Clone, Default)]
pub struct Pieces {
    bands: BTreeMap<String, Band>,
    chains: BTreeMap<String, Chain>,
    anchors: BTreeMap<String, Anchor>,
}

impl Pieces {
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

impl Library {
    /// A band by name or path.
    ///
    /// **Fails** with the nearest names, or with what is wrong in its file.
    pub fn band(&self, name: &str) -> Result<Band> {
        let (file, text) = self.text(Shelf::Bands, name)?;
        read(&file, &text)
    }

    /// A chain by name or path.
    ///
    /// **Fails** with the nearest names, or with what is wrong in its file.
    pub fn chain(&self, name: &str) -> Result<Chain> {
        let (file, text) = self.text(Shelf::Chains, name)?;
        read(&file, &text)
    }

    /// Every band and chain.
    ///
    /// **Fails** with the first file that is wrong.
    pub fn pieces(&self) -> Result<Pieces> {
        Ok(Pieces {
            bands: self.all(Shelf::Bands)?,
            chains: self.all(Shelf::Chains)?,
            anchors: BTreeMap::new(),
        })
    }

    /// A setup by name or path, its bands and chains looked up.
    ///
    /// **Fails** with what is wrong in the file, or a name that no piece has.
    pub fn setup(&self, name: &str) -> Result<Setup> {
        let (file, text) = self.text(Shelf::Setups, name)?;
        let record: SetupFile = read(&file, &text)?;
        none_in_file(self.setup_rules(&record), &file, &text)?;
        record.resolve(&self.pieces()?.stock())
    }

    /// What is wrong with the items of a setup, each told at its place.
    pub(super) fn setup_rules(&self, record: &SetupFile) -> Vec<Complaint> {
        let pieces = match self.pieces() {
            Ok(pieces) => pieces,
            Err(error) => return vec![said(String::new(), &error)],
        };
        let items = record.items.iter().enumerate();
        items
            .filter_map(|(index, item)| {
                let error = item.resolve(&pieces.stock()).err()?;
                Some(said(format!("items.{index}"), &error))
            })
            .collect()
    }

    /// A gym by name or path, its bands and chains looked up.
    ///
    /// **Fails** with everything that is wrong in the file.
    pub fn gym(&self, name: &str) -> Result<Gym> {
        let (file, text) = self.text(Shelf::Gyms, name)?;
        let record: GymFile = read(&file, &text)?;
        none_in_file(self.gym_rules(&record), &file, &text)?;
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
        slips.into_iter().map(reads_on).collect()
    }

    fn all<T: DeserializeOwned>(&self, shelf: Shelf) -> Result<BTreeMap<String, T>> {
        self.names(shelf)
            .into_iter()
            .map(|name| {
                let (file, text) = self.text(shelf, &name)?;
                Ok((name, read(&file, &text)?))
            })
            .collect()
    }
}

/// What the laws of a room say of the value of a path.
fn said(path: String, error: &Error) -> Complaint {
    complaint(path, BrokenRule::Said(error.faults().to_vec()))
}
