//! A folder of model files of one's own: nothing in it is passed over.
//!
//! In: the folder of `--models`. Out: nothing, or the first folder or file that cannot be read.

use super::nearest::known;
use crate::error::{Error, FileFault, ModelFault, Result, Shelf};
use std::path::{Path, PathBuf};

/// Checks that every folder and model file that is there can be read.
///
/// **Fails** at the first one that cannot: a file that is passed over would leave the built-in one to answer in its
/// place.
pub(super) fn check(folder: &Path) -> Result<()> {
    for shelf in Shelf::ALL {
        check_shelf(&folder.join(shelf.folder()))?;
    }
    check_misspelt(folder)?;
    check_file(&folder.join("sources.ron"))
}

/// **Fails** if a folder that holds model files is called nearly as a kind of them is.
fn check_misspelt(folder: &Path) -> Result<()> {
    let names: Vec<&str> = Shelf::ALL.iter().map(|shelf| shelf.folder()).collect();
    let inside = std::fs::read_dir(folder).into_iter().flatten().flatten();
    for path in inside.map(|entry| entry.path()) {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        let known = known(&name, &names);
        if names.contains(&&*name) || known.near.is_empty() {
            continue;
        }
        let mut files = std::fs::read_dir(&path).into_iter().flatten().flatten();
        if files.any(|file| is_model_file(&file.path())) {
            return Err(Error::bad(ModelFault::MisspeltFolder {
                folder: path.display().to_string(),
                known,
            }));
        }
    }
    Ok(())
}

/// The model files of a folder and of the folders in it that are named after kinds, in the order of their names.
///
/// **Fails** if it cannot be listed or holds none.
pub(super) fn model_files(folder: &Path) -> Result<Vec<PathBuf>> {
    check_misspelt(folder)?;
    let shown = || folder.display().to_string();
    let listed = std::fs::read_dir(folder).map_err(|why| {
        Error::bad(ModelFault::UnreadableFolder {
            folder: shown(),
            why: why.to_string(),
        })
    })?;
    let here = listed.filter_map(|entry| Some(entry.ok()?.path()));
    let shelves = Shelf::ALL
        .into_iter()
        .map(|shelf| folder.join(shelf.folder()));
    let inside = shelves
        .filter_map(|shelf| std::fs::read_dir(shelf).ok())
        .flatten();
    let inside = inside.filter_map(|entry| Some(entry.ok()?.path()));
    let is_one = |path: &PathBuf| path.is_file() && is_model_file(path);
    let mut files: Vec<PathBuf> = here.chain(inside).filter(is_one).collect();
    files.sort();
    if files.is_empty() {
        return Err(Error::bad(ModelFault::NoModelFolder { folder: shown() }));
    }
    Ok(files)
}

/// **Fails** if there is a folder that cannot be listed, or a model file in it that cannot be read.
fn check_shelf(folder: &Path) -> Result<()> {
    let entries = match std::fs::read_dir(folder) {
        Ok(entries) => entries,
        Err(fault) if fault.kind() == std::io::ErrorKind::NotFound && !is_link(folder) => {
            return Ok(());
        }
        Err(fault) => {
            return Err(Error::bad(ModelFault::UnreadableFolder {
                folder: folder.display().to_string(),
                why: fault.to_string(),
            }));
        }
    };
    for entry in entries {
        let path = entry.map(|entry| entry.path()).map_err(|fault| {
            Error::bad(ModelFault::UnreadableFolder {
                folder: folder.display().to_string(),
                why: fault.to_string(),
            })
        })?;
        if is_model_file(&path) {
            check_file(&path)?;
        }
    }
    Ok(())
}

/// **Fails** if something of that name is there and is no file that can be opened.
fn check_file(path: &Path) -> Result<()> {
    let file = path.display().to_string();
    let fault = match std::fs::metadata(path) {
        Ok(known) if known.is_file() => match std::fs::File::open(path) {
            Ok(_) => return Ok(()),
            Err(fault) => FileFault::Unreadable {
                file,
                cause: fault.to_string(),
            },
        },
        Ok(known) if known.is_dir() => FileFault::Folder { file },
        Ok(_) => FileFault::Endless { file },
        Err(_) if !is_link(path) => return Ok(()),
        Err(fault) => FileFault::Unreadable {
            file,
            cause: fault.to_string(),
        },
    };
    Err(Error::bad(fault))
}

/// Whether a name is there as a link, wherever it leads.
fn is_link(path: &Path) -> bool {
    std::fs::symlink_metadata(path).is_ok_and(|known| known.is_symlink())
}

/// Whether a name is that of a model file rather than one in the library.
pub(super) fn is_model_file(path: &Path) -> bool {
    path.extension().is_some_and(|extension| extension == "ron")
}
