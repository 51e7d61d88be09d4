//! `torquill show [KIND [NAME]]`: what the program holds by name, and any file of it as a starting point.

use super::kind::Kind;
use super::output;
use super::whole_set;
use crate::error::{CommandFault, Error, FileForm, Result};
use crate::library::{Library, Shelf, records_of};
use crate::narrative::shown_files::{
    fields_in_words, kinds_in_words, list_in_words, logs_in_words, muscles_in_words,
};
use clap::Args;
use std::path::{Path, PathBuf};

/// ShowArguments of `show`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill show
  torquill show lifters
  torquill show movement biceps-curl
  torquill show lifter club-lifter -o mine.ron
  torquill show muscle brachialis")]
pub struct ShowArguments {
    /// Kind of file: lifters, movements, muscles, gyms, bands, chains, logs and the tables beside them
    #[arg(value_enum)]
    kind: Option<Kind>,
    /// Name of the file to print, or of a muscle
    name: Option<String>,
    /// Print the records of the kind with their fields instead, as models/README.md explains them
    #[arg(long, requires = "kind", conflicts_with = "name")]
    fields: bool,
    /// File to write it to
    #[arg(short, long, value_name = "FILE", requires = "name")]
    output: Option<PathBuf>,
    /// Replace that file if it is there
    #[arg(long, requires = "output")]
    force: bool,
}

/// Runs the command.
pub fn run(arguments: &ShowArguments, library: &Library) -> Result<()> {
    let Some(kind) = arguments.kind else {
        let counted = Kind::ALL.map(|kind| (kind.name(), count(kind, library)));
        return output::print(&kinds_in_words(&counted));
    };
    if let Some(shelf) = kind.shelf().filter(|_| arguments.fields) {
        return output::print(&fields_in_words(&records_of(shelf)));
    }
    let Some(name) = &arguments.name else {
        return output::print(&list(kind, library)?);
    };
    if let Some(path) = &arguments.output {
        output::check_target(path, arguments.force)?;
        check_ending(path, kind)?;
    }
    let text = match kind.shelf() {
        Some(shelf) => library.starting_text(shelf, name)?,
        None => library.log_text(name)?.1,
    };
    match &arguments.output {
        None => output::print(&text),
        Some(path) => whole_set::write_file(path, text.as_bytes()),
    }
}

/// Refuses a name under which nothing would read the file again.
fn check_ending(path: &Path, kind: Kind) -> Result<()> {
    if kind.shelf().is_some() {
        return output::check_model_file(path);
    }
    if path
        .extension()
        .is_some_and(|ending| ending.eq_ignore_ascii_case("csv"))
    {
        return Ok(());
    }
    Err(Error::bad(CommandFault::OtherEnding {
        file: path.display().to_string(),
        holds: FileForm::Csv,
    }))
}

/// How many files of a kind there are.
fn count(kind: Kind, library: &Library) -> usize {
    match kind.shelf() {
        Some(shelf) => library.names(shelf).len(),
        None => Library::logs().len(),
    }
}

/// The files of a kind, a line each.
fn list(kind: Kind, library: &Library) -> Result<String> {
    Ok(match kind.shelf() {
        None => {
            let logs = Library::logs().map(|name| (name, library.log_text(name)));
            let texts = logs.into_iter().map(|(name, text)| Ok((name, text?.1)));
            logs_in_words(&texts.collect::<Result<Vec<_>>>()?)
        }
        Some(Shelf::Muscles) => muscles_in_words(&library.listed_muscles()?),
        Some(shelf) => list_in_words(&library.listed(shelf)?),
    })
}
