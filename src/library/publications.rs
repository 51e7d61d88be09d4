//! The list of publications, and whether the sources of a file stand in it: one judge for a check and for a call.
//!
//! In: the built-in list and that of the user's folder; the text of a model file. Out: publications by key; a fault for
//! every key that is none of theirs.

use super::bounded_read::text_of_file;
use super::built_in;
use super::checked::in_order;
use super::file_check::sources_rules;
use super::layered_text::LayeredText;
use super::nearest::known;
use super::outline::RecordOutline;
use super::read::read;
use super::records::Library;
use crate::error::{Error, Fault, ModelFault, Result};
use crate::source::Publication;
use std::collections::BTreeMap;

impl Library {
    /// Every publication by its key; those of the user's folder come on top.
    pub fn sources(&self) -> Result<BTreeMap<String, Publication>> {
        let mut sources = match built_in::text("sources.ron") {
            Some(text) => read("models/sources.ron", text)?,
            None => BTreeMap::new(),
        };
        let own = self
            .folder
            .as_ref()
            .map(|folder| folder.join("sources.ron"));
        if let Some(path) = own.filter(|path| path.is_file()) {
            let text = LayeredText::of(&path.display().to_string(), &text_of_file(&path)?);
            let own: BTreeMap<String, Publication> = text.read()?;
            text.none(sources_rules(&own))?;
            sources.extend(own);
        }
        Ok(sources)
    }

    /// What a check tells of sources, for a file that is about to be used; the program's own are tested.
    ///
    /// **Fails** with every source that names a key of no publication.
    pub(super) fn known_sources(&self, text: &LayeredText) -> Result<()> {
        if text.is_shipped() {
            return Ok(());
        }
        let faults = self.source_faults(text)?;
        match faults.is_empty() {
            true => Ok(()),
            false => Err(Error::bad_input(in_order(faults, text.file()))),
        }
    }

    /// A fault for every source that names a key of no publication.
    pub(super) fn source_faults(&self, text: &LayeredText) -> Result<Vec<Fault>> {
        let sources = self.sources()?;
        let keys: Vec<&str> = sources.keys().map(String::as_str).collect();
        let outline = RecordOutline::of(text.text());
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
                faults.push(text.located(fault.at(outline.place(text.file(), stretch))));
            }
        }
        Ok(faults)
    }
}
