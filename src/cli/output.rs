//! Where output goes: standard output, standard error, and files that may be written.
//!
//! In: texts, and paths that files are to go to. Out: what was said, and whether a file can be made there.

use super::kept_output::{Stream, is_kept, keep, taken};
use crate::error::{CommandFault, Error, Result};
use crate::library::was_read;
use std::collections::BTreeSet;
use std::io::{ErrorKind, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard};

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

/// Remembers whether a file may be replaced when it is written.
pub fn promise(path: &Path, replace: bool) {
    let mut free = free();
    if replace {
        free.remove(path);
    } else {
        free.insert(path.to_owned());
    }
}

/// The files that were free when they were asked for.
pub(super) fn free() -> MutexGuard<'static, BTreeSet<PathBuf>> {
    taken(&FREE)
}

/// Refuses a name under which nothing reads a model file again.
pub fn check_model_file(path: &Path) -> Result<()> {
    if path.extension().is_some_and(|ending| ending == "ron") {
        return Ok(());
    }
    let file = path.display().to_string();
    Err(Error::bad(CommandFault::NoModelFile { file }))
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
    } else if path.symlink_metadata().is_ok() && !replace {
        // A link that leads nowhere holds the place too.
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

pub(super) fn shown(path: &Path) -> String {
    path.display().to_string()
}

/// The folder that a path leads into.
pub fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

pub(super) fn exists(path: &Path) -> Error {
    Error::bad(CommandFault::TargetExists { file: shown(path) })
}

pub(super) fn unwritable(path: &Path, fault: &std::io::Error) -> Error {
    Error::bad(CommandFault::Unwritable {
        file: shown(path),
        cause: fault.to_string(),
    })
}
