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

#[cfg(test)]
mod tests {
    use super::{built_in, hash_of, model_hash};

    #[test]
    fn law_the_hash_of_abc_is_the_standards() {
        // FIPS 180-4, example of SHA-256: the message "abc".
        let expected = "sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(hash_of(b"abc"), expected);
    }

    #[test]
    fn law_the_hash_is_that_of_the_files_compiled_in() {
        let files = built_in::all();
        assert!(files.len() > 50, "{}", files.len());
        let of = |files: &[(String, &[u8])]| {
            let lines = files
                .iter()
                .map(|(path, bytes)| format!("{path} {}\n", hash_of(bytes)));
            let mut lines: Vec<String> = lines.collect();
            lines.sort();
            hash_of(lines.concat().as_bytes())
        };
        assert_eq!(of(&files), model_hash());
        let mut changed = files.clone();
        changed[0].1 = b"other";
        assert_ne!(of(&changed), model_hash());
        assert_ne!(of(&files[1..]), model_hash());
    }
}
