//! Where output goes: standard output, or a file that is written beside and then renamed.

use crate::error::{Error, Result};
use std::io::Write;
use std::path::Path;

/// Writes text to standard output; a closed pipe ends quietly.
pub fn print(text: &str) -> Result<()> {
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(fault) if fault.kind() != std::io::ErrorKind::BrokenPipe => Err(Error::bad(format!(
            "standard output cannot be written: {fault}"
        ))),
        _ => Ok(()),
    }
}

/// Checks that a file can be made, before anything is computed.
///
/// **Fails** if the path is a folder, its folder is missing, or the file exists and `replace` is false.
pub fn check_target(path: &Path, replace: bool) -> Result<()> {
    let shown = path.display();
    if path.is_dir() {
        return Err(
            Error::bad(format!("`{shown}` is a folder, not a file")).hint(format!(
                "name a file in it, such as {}",
                path.join("figure.png").display()
            )),
        );
    }
    let folder = folder_of(path);
    if !folder.is_dir() {
        return Err(
            Error::bad(format!("the folder `{}` does not exist", folder.display()))
                .hint("make it first, or write elsewhere"),
        );
    }
    if path.exists() && !replace {
        return Err(Error::bad(format!("`{shown}` exists already"))
            .hint("add --force to replace it, or name another file"));
    }
    Ok(())
}

fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if folder.as_os_str().is_empty() => Path::new("."),
        Some(folder) => folder,
        None => Path::new("."),
    }
}

/// Writes a file as a whole or not at all: beside it first, then renamed.
///
/// **Fails** when the folder cannot be written; nothing is left behind then.
pub fn write_file(path: &Path, bytes: &[u8]) -> Result<()> {
    let name = path
        .file_name()
        .map(|name| name.to_string_lossy().into_owned())
        .unwrap_or_default();
    let beside = folder_of(path).join(format!(".{name}.{}.part", std::process::id()));
    let written = std::fs::write(&beside, bytes).and_then(|()| std::fs::rename(&beside, path));
    written.map_err(|fault| {
        // The rest of a failed write is of no use to anybody.
        let _ = std::fs::remove_file(&beside);
        Error::bad(format!("`{}` cannot be written: {fault}", path.display()))
            .hint("check the folder's permissions and free space, or write elsewhere")
    })
}
