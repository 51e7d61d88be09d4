//! What a run's numbers come from: the built-in model files as one hash, the files of the user's folder one by one.
//!
//! In: a [`Library`]. Out: hashes; whether a built-in name stands for something else.

use super::bounded_read::unlisted_text;
use super::built_in;
use super::content_hash::hash_of;
use super::folder_check::is_model_file;
use super::records::Library;
use crate::error::{Result, Shelf};
use std::path::Path;

/// A model file of the user's folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OwnFile {
    /// Its path inside the folder, such as `lifters/reference-man.ron`.
    pub name: String,
    /// Hash of its content.
    pub hash: String,
    /// Whether it stands in the place of a built-in file; else it is added.
    pub replaces: bool,
}

/// The hash of all built-in model files.
#[must_use]
pub const fn model_hash() -> &'static str {
    env!("TORQUILL_MODEL_HASH")
}

impl Library {
    /// Every model file of the user's folder, in the order of their names.
    ///
    /// **Fails** if one cannot be read.
    pub fn own_files(&self) -> Result<Vec<OwnFile>> {
        let Some(folder) = &self.folder else {
            return Ok(Vec::new());
        };
        let shelves = Shelf::ALL.iter().flat_map(|shelf| {
            let names = self.names(*shelf).into_iter();
            names.map(|name| format!("{}/{name}.ron", shelf.folder()))
        });
        let mut inside: Vec<String> = shelves.chain(["sources.ron".to_owned()]).collect();
        inside.sort();
        let own = inside
            .into_iter()
            .filter(|inside| folder.join(inside).is_file());
        own.map(|inside| own_file(folder, inside)).collect()
    }

    /// Whether the user's folder holds another file of a built-in name.
    #[must_use]
    pub fn replaces(&self, shelf: Shelf, name: &str) -> bool {
        let inside = format!("{}/{name}.ron", shelf.folder());
        let folder = self
            .folder
            .as_ref()
            .filter(|_| !is_model_file(Path::new(name)));
        folder.is_some_and(|folder| {
            folder.join(&inside).is_file() && built_in::text(&inside).is_some()
        })
    }
}

fn own_file(folder: &Path, inside: String) -> Result<OwnFile> {
    let text = unlisted_text(&folder.join(&inside))?;
    Ok(OwnFile {
        hash: hash_of(text.as_bytes()),
        replaces: built_in::text(&inside).is_some(),
        name: inside,
    })
}
