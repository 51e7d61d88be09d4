//! Where output goes: standard output, or files that are written beside and then renamed.
//!
//! In: text and bytes with the paths they go to. Out: all files of a set or none; nothing half-written.

use super::kept_output::{Stream, is_kept, keep};
use crate::error::{CommandFault, Error, Result};
use std::io::{IsTerminal, Write};
use std::path::{Path, PathBuf};
use tempfile::NamedTempFile;

/// Writes text to standard output; a closed pipe ends quietly.
pub fn print(text: &str) -> Result<()> {
    if keep(Stream::Output, text) {
        return Ok(());
    }
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(fault) if fault.kind() != std::io::ErrorKind::BrokenPipe => {
            Err(Error::bad(CommandFault::StandardOutput {
                cause: fault.to_string(),
            }))
        }
        _ => Ok(()),
    }
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

/// Checks that a file can be made, before anything is computed.
///
/// **Fails** if the path is a folder, its folder is missing, or the file exists and `replace` is false.
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
    } else if path.exists() && !replace {
        CommandFault::TargetExists { file: shown(path) }
    } else {
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
/// **Fails** when a folder cannot be written; no file of the set has changed then, and nothing is left behind.
pub fn write_files<B: AsRef<[u8]>>(files: &[(PathBuf, B)]) -> Result<()> {
    let staged = files
        .iter()
        .map(|(path, bytes)| staged(path, bytes.as_ref()).map_err(|fault| unwritable(path, &fault)))
        .collect::<Result<Vec<_>>>()?;
    for ((path, _), beside) in files.iter().zip(staged) {
        beside
            .persist(path)
            .map_err(|fault| unwritable(path, &fault.error))?;
    }
    Ok(())
}

/// The bytes in a file of a name of its own in the same folder, with the rights that the file is to have.
fn staged(path: &Path, bytes: &[u8]) -> std::io::Result<NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(".torquill-");
    let kept = std::fs::metadata(path)
        .ok()
        .map(|there| there.permissions());
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let mut beside = builder.tempfile_in(folder_of(path))?;
    beside.write_all(bytes)?;
    if let Some(rights) = kept {
        beside.as_file().set_permissions(rights)?;
    }
    Ok(beside)
}

fn unwritable(path: &Path, fault: &std::io::Error) -> Error {
    Error::bad(CommandFault::Unwritable {
        file: shown(path),
        cause: fault.to_string(),
    })
}

#[cfg(test)]
mod tests {
    use super::write_files;

    #[test]
    fn fault_a_set_that_cannot_be_written_changes_no_file() {
        let folder = tempfile::tempdir().expect("a folder");
        let (first, lost) = (
            folder.path().join("a.txt"),
            folder.path().join("gone/b.txt"),
        );
        std::fs::write(&first, "before").expect("a file");
        assert!(write_files(&[(first.clone(), "after"), (lost, "b")]).is_err());
        assert_eq!(
            std::fs::read_to_string(&first).expect("it is there"),
            "before"
        );
        assert_eq!(
            std::fs::read_dir(folder.path()).expect("a folder").count(),
            1
        );
    }

    #[cfg(unix)]
    #[test]
    fn law_rights_of_a_replaced_file_are_kept() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("a.txt");
        for mode in [0o600, 0o640, 0o644] {
            std::fs::write(&path, "before").expect("a file");
            std::fs::set_permissions(&path, PermissionsExt::from_mode(mode)).expect("rights");
            write_files(&[(path.clone(), "after")]).expect("it can be written");
            let rights = std::fs::metadata(&path).expect("it is there").permissions();
            assert_eq!(rights.mode() & 0o777, mode);
        }
    }
}
