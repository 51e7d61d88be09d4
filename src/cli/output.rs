//! Where output goes: standard output, or files that are written beside and then renamed.
//!
//! In: text and bytes with the paths they go to. Out: all files of a set or none; nothing half-written.

use super::kept_output::{Stream, is_kept, keep, taken};
use crate::error::{CommandFault, Error, Result};
use crate::library::was_read;
use std::collections::BTreeSet;
use std::io::{ErrorKind, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use tempfile::{Builder, NamedTempFile, TempDir};

/// Writes text to standard output; a closed pipe ends quietly.
pub fn print(text: &str) -> Result<()> {
    if keep(Stream::Output, text) {
        return Ok(());
    }
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(fault) if fault.kind() != ErrorKind::BrokenPipe => Err(unprinted(&fault)),
        _ => Ok(()),
    }
}

/// Standard output that takes no text.
pub(super) fn unprinted(fault: &std::io::Error) -> Error {
    Error::bad(CommandFault::StandardOutput {
        cause: fault.to_string(),
    })
}

/// Marks a line about what is dangerous today.
const HAZARD: &str = "! ";

/// Writes text to standard output, what is dangerous today in bold on a terminal.
pub fn print_marked(text: &str) -> Result<()> {
    let is_seen = std::io::stdout().is_terminal() && !is_kept();
    let is_plain = !is_seen || std::env::var_os("NO_COLOR").is_some();
    if is_plain {
        return print(text);
    }
    let mut marked = String::with_capacity(text.len());
    let mut is_bold = false;
    for line in text.split_inclusive('\n') {
        // A line that goes on stands under the words of the one before.
        is_bold = line.starts_with(HAZARD) || (is_bold && line.starts_with("  "));
        let words = line.trim_end_matches('\n');
        if is_bold {
            marked.push_str(&format!("\u{1b}[1m{words}\u{1b}[0m"));
        } else {
            marked.push_str(words);
        }
        marked.push_str(&line[words.len()..]);
    }
    print(&marked)
}

/// Writes a message to standard error.
pub fn note(text: &str) {
    if keep(Stream::Errors, &format!("{text}\n")) {
        return;
    }
    let mut errors = anstream::stderr().lock();
    // Nobody is left to tell of a standard error that is closed.
    let _ = writeln!(errors, "{text}");
}

/// Files that were not there when they were asked for and may not be replaced: what somebody else puts there while the
/// program computes stays as it is.
static FREE: Mutex<BTreeSet<PathBuf>> = Mutex::new(BTreeSet::new());

/// What lies beside its place until the whole of its set is written.
static BESIDE: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());

/// Remembers whether a file may be replaced when it is written.
pub fn promise(path: &Path, replace: bool) {
    let mut free = taken(&FREE);
    if replace {
        free.remove(path);
    } else {
        free.insert(path.to_owned());
    }
}

/// Checks that a file can be made, before anything is computed.
///
/// **Fails** if the path is a folder or a device, its folder is missing or takes no files, the file was read by this
/// call, or exists and `replace` is false.
pub fn check_target(path: &Path, replace: bool) -> Result<()> {
    let folder = folder_of(path);
    let fault = if path.is_dir() {
        CommandFault::TargetIsFolder {
            folder: shown(path),
            example: shown(&path.join("figure.png")),
        }
    } else if !folder.is_dir() {
        CommandFault::NoFolder {
            folder: shown(folder),
        }
    } else if path.exists() && !path.is_file() {
        CommandFault::TargetIsDevice { file: shown(path) }
    } else if was_read(path) {
        CommandFault::TargetIsRead { file: shown(path) }
    } else if path.exists() && !replace {
        CommandFault::TargetExists { file: shown(path) }
    } else if let Err(fault) = tempfile::tempfile_in(folder) {
        // A file without a name, so that nothing is left of the trial.
        return Err(unwritable(path, &fault));
    } else {
        promise(path, replace);
        return Ok(());
    };
    Err(Error::bad(fault))
}

fn shown(path: &Path) -> String {
    path.display().to_string()
}

/// The folder that a path leads into.
pub fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

/// Writes a file as a whole or not at all.
///
/// **Fails** as [`write_files`].
pub fn write_file(path: &Path, bytes: &[u8]) -> Result<()> {
    write_files(&[(path.to_owned(), bytes)])
}

/// Writes a set of files: all beside their places first, then all renamed.
///
/// **Fails** when a folder cannot be written, a file was read by this call, or has come into a place that was free; no
/// file of the set has changed then, and nothing is left behind.
pub fn write_files<B: AsRef<[u8]>>(files: &[(PathBuf, B)]) -> Result<()> {
    end_cleanly();
    if let Some((path, _)) = files.iter().find(|(path, _)| was_read(path)) {
        return Err(Error::bad(CommandFault::TargetIsRead { file: shown(path) }));
    }
    let staged = files
        .iter()
        .map(|(path, bytes)| staged(path, bytes.as_ref()).map_err(|fault| unwritable(path, &fault)))
        .collect::<Result<Vec<_>>>()?;
    // Who interrupts waits until the whole set is in its place.
    let mut known = taken(&BESIDE);
    let free = taken(&FREE);
    let occupied = files
        .iter()
        .find(|(path, _)| free.contains(path) && path.exists());
    if let Some((path, _)) = occupied {
        return Err(exists(path));
    }
    for ((path, _), file) in files.iter().zip(staged) {
        let kept = match free.contains(path) {
            true => file.persist_noclobber(path),
            false => file.persist(path),
        };
        kept.map_err(|fault| match fault.error.kind() {
            ErrorKind::AlreadyExists => exists(path),
            _ => unwritable(path, &fault.error),
        })?;
    }
    known.clear();
    drop(free);
    files.iter().for_each(|(path, _)| promise(path, true));
    Ok(())
}

/// Writes files into a folder that is not there yet: into one beside it, which is then renamed.
///
/// **Fails** where a folder cannot be made or written; nothing is left behind then.
pub fn write_folder(folder: &Path, files: &[(String, Vec<u8>)]) -> Result<()> {
    end_cleanly();
    let not_made = |fault: std::io::Error| {
        Error::bad(CommandFault::FolderNotMade {
            folder: shown(folder),
            cause: fault.to_string(),
        })
    };
    let parent = folder_of(folder);
    std::fs::create_dir_all(parent).map_err(not_made)?;
    let made = staged_folder(parent).map_err(not_made)?;
    for (name, bytes) in files {
        // Who interrupts takes the folder away between two files.
        let _known = taken(&BESIDE);
        std::fs::write(made.path().join(name), bytes)
            .map_err(|fault| unwritable(&folder.join(name), &fault))?;
    }
    let mut known = taken(&BESIDE);
    std::fs::rename(made.path(), folder).map_err(not_made)?;
    let _ = made.keep();
    known.clear();
    Ok(())
}

/// What makes a file or folder of a random name beside its place, with these rights less what the user's mask takes.
fn beside(mode: u32) -> Builder<'static, 'static> {
    let mut builder = Builder::new();
    builder.prefix(".torquill-");
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(mode));
    #[cfg(not(unix))]
    let _ = mode;
    builder
}

/// The bytes in a file of a name of its own in the same folder, with the rights that the file is to have.
fn staged(path: &Path, bytes: &[u8]) -> std::io::Result<NamedTempFile> {
    let kept = std::fs::metadata(path)
        .ok()
        .map(|there| there.permissions());
    let mut known = taken(&BESIDE);
    let mut file = beside(0o666).tempfile_in(folder_of(path))?;
    known.push(file.path().to_owned());
    drop(known);
    file.write_all(bytes)?;
    if let Some(rights) = kept {
        file.as_file().set_permissions(rights)?;
    }
    Ok(file)
}

/// A folder of a name of its own.
fn staged_folder(parent: &Path) -> std::io::Result<TempDir> {
    let mut known = taken(&BESIDE);
    let made = beside(0o777).tempdir_in(parent)?;
    known.push(made.path().to_owned());
    Ok(made)
}

/// Has an interruption take away what is half written, or wait until it is whole.
fn end_cleanly() {
    if is_kept() {
        return;
    }
    // Where a search has set its handler, that one lets the writing end: no harm.
    let _ = ctrlc::set_handler(|| {
        // Held to the end, so that nothing is written or renamed any more.
        let known = taken(&BESIDE);
        for path in known.iter() {
            // What is in its place already has another name.
            let _ = std::fs::remove_file(path).or_else(|_| std::fs::remove_dir_all(path));
        }
        std::process::exit(130);
    });
}

fn exists(path: &Path) -> Error {
    Error::bad(CommandFault::TargetExists { file: shown(path) })
}

fn unwritable(path: &Path, fault: &std::io::Error) -> Error {
    Error::bad(CommandFault::Unwritable {
        file: shown(path),
        cause: fault.to_string(),
    })
}
