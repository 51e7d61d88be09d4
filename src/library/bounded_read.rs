//! The one way in for files of the user's: whole files only, and never more than a bound.
//!
//! In: a path. Out: bytes or text; a folder, a device, a pipe and a file that is too large are refused before
//! anything is kept of them. Every file that was read is known, so that no output takes its place.

use crate::error::{Error, FileFault, Result};
use std::collections::BTreeSet;
use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

/// The largest file that is read, MB (assumed: a log of 300,000 sets is no larger).
pub const MOST_MB: u64 = 16;

/// Every file that was read, as the system knows it.
static READ: Mutex<BTreeSet<PathBuf>> = Mutex::new(BTreeSet::new());

fn read_files() -> MutexGuard<'static, BTreeSet<PathBuf>> {
    READ.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Whether a file was read, however its path is written.
#[must_use]
pub fn was_read(path: &Path) -> bool {
    let place = path.canonicalize();
    place.is_ok_and(|place| read_files().contains(&place))
}

/// Forgets which files were read, for another call in the same process.
pub fn forget_read() {
    read_files().clear();
}

/// The bytes of a file.
///
/// **Fails** for what is no file (a folder; a device or pipe, which may never end), for more than [`MOST_MB`],
/// and where the system does not give it.
pub fn bytes_of_file(path: &Path) -> Result<Vec<u8>> {
    let bytes = unlisted_bytes(path)?;
    if let Ok(place) = path.canonicalize() {
        read_files().insert(place);
    }
    Ok(bytes)
}

/// The bytes of a file of which nothing but its hash goes into the answer: it may be replaced.
///
/// **Fails** as [`bytes_of_file`].
fn unlisted_bytes(path: &Path) -> Result<Vec<u8>> {
    let file = || path.display().to_string();
    let unreadable = |fault: std::io::Error| {
        Error::bad(FileFault::Unreadable {
            file: file(),
            cause: fault.to_string(),
        })
    };
    // Asked before it is opened: to open a pipe nobody writes to takes for ever.
    let about = std::fs::metadata(path).map_err(unreadable)?;
    if about.is_dir() {
        return Err(Error::bad(FileFault::Folder { file: file() }));
    }
    if !about.is_file() {
        return Err(Error::bad(FileFault::Endless { file: file() }));
    }
    let most = MOST_MB * 1_000_000;
    let mut bytes = Vec::new();
    let opened = File::open(path).map_err(unreadable)?;
    // A file may grow while it is read, so its size alone is no bound.
    let mut bounded = opened.take(most + 1);
    if about.len() <= most {
        bounded.read_to_end(&mut bytes).map_err(unreadable)?;
    }
    if about.len() > most || bytes.len() as u64 > most {
        return Err(Error::bad(FileFault::TooLarge {
            file: file(),
            most_mb: MOST_MB,
        }));
    }
    Ok(bytes)
}

/// Which of two bytes comes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum ByteOrder {
    /// The low one.
    Little,
    /// The high one.
    Big,
}

/// In which order the bytes of a UTF-16 text stand, by its mark or, without one, by its first two letters being plain ones; none of
/// any other text.
pub(super) fn utf16_order(bytes: &[u8]) -> Option<ByteOrder> {
    match bytes {
        [0xff, 0xfe, ..] => Some(ByteOrder::Little),
        [0xfe, 0xff, ..] => Some(ByteOrder::Big),
        [first, 0, second, 0, ..] if *first != 0 && *second != 0 => Some(ByteOrder::Little),
        [0, first, 0, second, ..] if *first != 0 && *second != 0 => Some(ByteOrder::Big),
        _ => None,
    }
}

/// The text of a file.
///
/// **Fails** as [`bytes_of_file`], on UTF-16, and with the first byte that is no UTF-8.
pub fn text_of_file(path: &Path) -> Result<String> {
    text(path, bytes_of_file(path)?)
}

/// The text of a file that may be replaced, as [`unlisted_bytes`].
///
/// **Fails** as [`text_of_file`].
pub(super) fn unlisted_text(path: &Path) -> Result<String> {
    text(path, unlisted_bytes(path)?)
}

fn text(path: &Path, bytes: Vec<u8>) -> Result<String> {
    if utf16_order(&bytes).is_some() {
        let file = path.display().to_string();
        return Err(Error::bad(FileFault::Utf16 { file }));
    }
    String::from_utf8(bytes).map_err(|fault| {
        Error::bad(FileFault::NotUtf8 {
            file: path.display().to_string(),
            byte: fault.utf8_error().valid_up_to() + 1,
        })
    })
}
