//! A set of files that go into one folder: checked before anything is computed, written as a whole.
//!
//! In: a folder, names and bytes. Out: all files of the set or none.

use super::output;
use super::whole_set;
use crate::error::{CommandFault, Error, Result};
use crate::library::was_read;
use std::path::{Path, PathBuf};

/// Checks that a folder can take files.
///
/// **Fails** if a file has its name, and if neither it nor the first folder above that is there can be written.
pub fn check_folder(folder: &Path) -> Result<()> {
    if folder.exists() && !folder.is_dir() {
        return Err(Error::bad(CommandFault::TargetIsFile {
            file: folder.display().to_string(),
        }));
    }
    let mut above = folder.ancestors();
    let there = above.find(|folder| folder.is_dir() || folder.as_os_str().is_empty());
    let there = there.filter(|folder| !folder.as_os_str().is_empty());
    // A file without a name, so that nothing is left of the trial.
    match tempfile::tempfile_in(there.unwrap_or(Path::new("."))) {
        Ok(_) => Ok(()),
        Err(fault) => Err(Error::bad(CommandFault::FolderNotMade {
            folder: folder.display().to_string(),
            cause: fault.to_string(),
        })),
    }
}

/// Checks that no file of these names is replaced unasked.
///
/// **Fails** if one was read by this call, or is there and `replace` is false.
pub fn check_names(folder: &Path, names: &[String], replace: bool) -> Result<()> {
    let places: Vec<PathBuf> = names.iter().map(|name| folder.join(name)).collect();
    for place in &places {
        output::promise(place, replace);
    }
    if let Some(place) = places.iter().find(|place| was_read(place)) {
        return Err(Error::bad(CommandFault::TargetIsRead {
            file: place.display().to_string(),
        }));
    }
    if replace {
        return Ok(());
    }
    let there: Vec<PathBuf> = places.into_iter().filter(|file| file.exists()).collect();
    match there.as_slice() {
        [] => Ok(()),
        [first, others @ ..] => Err(Error::bad(CommandFault::SetExists {
            file: first.display().to_string(),
            others: others.len(),
        })),
    }
}

/// Writes files into a folder, which is made if it is not there.
///
/// **Fails** if the folder cannot be made or written to; no file of the set has changed then.
pub fn write_into(folder: &Path, files: &[(String, Vec<u8>)]) -> Result<()> {
    if !folder.exists() {
        return whole_set::write_folder(folder, files);
    }
    let placed: Vec<(PathBuf, &[u8])> = files
        .iter()
        .map(|(name, bytes)| (folder.join(name), bytes.as_slice()))
        .collect();
    whole_set::write_files(&placed)
}
