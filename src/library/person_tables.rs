//! What a person is fitted with: the table of scatter, the model's own misses.
//!
//! In: `models/published/person.ron`, `models/calibration/errors_of_lifts.ron`. Out: records;
//! a workbench of files that were changed in memory.

use super::published_rules;
use super::read::read;
use super::records::{Library, LifterFiles, stem};
use super::{assemble::Workbench, built_in};
use crate::error::{Result, Shelf};
use crate::person::PersonTable;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// What published values that nothing was set by are off by: the part of the file that the program uses.
#[derive(Debug, Clone, PartialEq, Default, Deserialize)]
pub struct ModelMisses {
    by_quantity: BTreeMap<String, ModelMiss>,
    #[serde(default)]
    one_joint_repetitions: Option<MeanFactor>,
}

#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
struct MeanFactor {
    factor: f64,
}

#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
struct ModelMiss {
    error: f64,
}

impl ModelMisses {
    /// How many times the published repetitions to failure the model gives lifts of one joint; none where none are published.
    #[must_use]
    pub fn one_joint_repetitions(&self) -> Option<f64> {
        self.one_joint_repetitions.map(|mean| mean.factor)
    }

    /// Root mean square of the logarithm of computed over published for a kind of quantity; 0 for one that is not there.
    #[must_use]
    pub fn of(&self, quantity: &str) -> f64 {
        self.by_quantity
            .get(quantity)
            .map_or(0.0, |miss| miss.error)
    }
}

impl Library {
    /// The table that a person is fitted with.
    ///
    /// **Fails** with what is wrong in it.
    pub fn person_table(&self) -> Result<PersonTable> {
        self.record(Shelf::Published, "person", published_rules::person)
    }

    /// The model's own misses.
    ///
    /// **Fails** if the shipped file is not sound.
    pub fn misses(&self) -> Result<ModelMisses> {
        let file = "calibration/errors_of_lifts.ron";
        match built_in::text(file) {
            Some(text) => read(&format!("models/{file}"), text),
            None => Ok(ModelMisses::default()),
        }
    }
}

impl Workbench {
    /// A lifter's files and a movement of the library.
    ///
    /// **Fails** with what is wrong in the movement's file.
    pub fn of_files(library: &Library, files: LifterFiles, movement: &str) -> Result<Self> {
        let (record, text) = library.movement_with_text(movement)?;
        Ok(Self {
            models: library.clone(),
            files,
            movement: record,
            movement_text: text,
            movement_name: stem(movement).to_owned(),
            of_record: OnceLock::new(),
        })
    }
}
