//! No two outputs of one command in one file, and none in a file that it reads.
//!
//! In: a command's options as typed. Out: nothing, or the fault that names both options.

use super::canonical::{OUTPUTS, is_typed, paths};
use super::output::folder_of;
use crate::error::{CommandFault, Error, Result};
use clap::ArgMatches;
use std::path::{Path, PathBuf};

/// Checks that every output of a command has a file of its own, before anything is computed.
///
/// **Fails** with the first two options that name one file, however its path is written, and with one that names a file
/// to read. What else is read, such as a file that another one extends, is known when it is written.
pub fn check(program: &clap::Command, command: &str, matches: &ArgMatches) -> Result<()> {
    let mut taken: Vec<(PathBuf, String)> = Vec::new();
    let read = paths(matches).into_iter();
    let read: Vec<PathBuf> = read
        .filter(|path| Path::new(path).is_file())
        .map(|path| place(Path::new(&path)))
        .collect();
    for id in OUTPUTS.into_iter().chain(["data"]) {
        if !is_typed(matches, id) {
            continue;
        }
        let typed = matches.try_get_raw(id).ok().flatten();
        for path in typed.into_iter().flatten() {
            let (path, option) = (Path::new(path), option_name(program, command, id));
            let place = place(path);
            if read.contains(&place) {
                return Err(Error::bad(CommandFault::TargetIsRead {
                    file: path.display().to_string(),
                }));
            }
            if let Some((_, other)) = taken.iter().find(|(there, _)| *there == place) {
                return Err(Error::bad(CommandFault::SameTarget {
                    file: path.display().to_string(),
                    options: [other.clone(), option],
                }));
            }
            taken.push((place, option));
        }
    }
    Ok(())
}

/// The long name of an option.
fn option_name(program: &clap::Command, command: &str, id: &str) -> String {
    let own = program.find_subcommand(command);
    let mut arguments = own.into_iter().flat_map(clap::Command::get_arguments);
    let argument = arguments.find(|argument| argument.get_id() == id);
    let long = argument.and_then(|argument| argument.get_long());
    long.unwrap_or(id).to_owned()
}

/// A path in one form: that of its folder as the system knows it, and its name.
fn place(path: &Path) -> PathBuf {
    let folder = folder_of(path);
    let folder = folder
        .canonicalize()
        .unwrap_or_else(|_| folder.to_path_buf());
    folder.join(path.file_name().unwrap_or_default())
}
