//! One record read and checked by all that can be known of it: its rules and its sources.
//!
//! In: a text, the rules of its kind. Out: the record's facts, or every fault in the order of the text.

use super::complaint::{Complaint, none_in_file};
use super::file_facts::FileFacts;
use super::nearest::known;
use super::outline::RecordOutline;
use super::read::read;
use super::records::Library;
use crate::error::{Error, Fault, ModelFault, Result};
use serde::de::DeserializeOwned;

impl Library {
    /// Reads a record, collects the faults of rules and sources, and gives its facts.
    pub(super) fn checked<T: DeserializeOwned>(
        &self,
        file: &str,
        text: &str,
        rules: impl Fn(&T) -> Vec<Complaint>,
        facts: impl Fn(&T) -> FileFacts,
    ) -> Result<FileFacts> {
        let record: T = read(file, text)?;
        let mut faults = self.source_faults(file, text)?;
        if let Err(error) = none_in_file(rules(&record), file, text) {
            faults.extend(error.faults().iter().cloned());
        }
        if faults.is_empty() {
            Ok(facts(&record))
        } else {
            faults.sort_by_key(|fault| fault.place.as_ref().map(|place| place.start));
            Err(Error::bad_input(faults))
        }
    }

    /// A fault for every source that names a key of no publication.
    fn source_faults(&self, file: &str, text: &str) -> Result<Vec<Fault>> {
        let sources = self.sources()?;
        let keys: Vec<&str> = sources.keys().map(String::as_str).collect();
        let outline = RecordOutline::of(text);
        let mut faults = Vec::new();
        for (index, node) in outline.nodes.iter().enumerate() {
            if !matches!(node.tag, Some("Published" | "FromMemory" | "Derived")) {
                continue;
            }
            let Some(key) = outline.children(index).next() else {
                continue;
            };
            let stretch = &outline.nodes[key].value;
            let name = outline.slice(stretch).trim_matches('"');
            if !sources.contains_key(name) {
                let fault = Fault::new(ModelFault::NoSuchPublication {
                    key: name.to_owned(),
                    known: known(name, &keys),
                });
                faults.push(fault.at(outline.place(file, stretch)));
            }
        }
        Ok(faults)
    }
}
