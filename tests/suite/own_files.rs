//! Own model files: the guide in models/README.md, files that extend others, what is absurd and what is unlikely,
//! the lists of files and of values.

mod absurd;
mod alike;
mod extending;
mod guide;
mod listed;
mod plausible;
mod told_where;

use std::path::{Path, PathBuf};
use tempfile::TempDir;
use torquill::error::{Error, Fault};
use torquill::library::{CheckedFile, Library, Shelf};
use torquill::units::System;

/// A folder of model files with these texts.
pub fn folder(files: &[(&str, &str)]) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder can be made");
    for (name, text) in files {
        let path = folder.path().join(name);
        std::fs::create_dir_all(path.parent().expect("it stands in a folder")).expect("a folder");
        std::fs::write(path, text).expect("a file can be written");
    }
    folder
}

/// The library with a folder over it.
pub fn library(folder: &TempDir) -> Library {
    Library::with_dir(folder.path()).expect("a folder of models")
}

/// The check of a text of a kind with the built-in files.
pub fn check(shelf: Shelf, text: &str) -> Result<CheckedFile, Error> {
    Library::built_in().check_text(Some(shelf), "mine.ron", text)
}

/// Message and next moves of one fault.
pub fn words(fault: &Fault) -> String {
    let told = torquill::narrative::faults::told(fault, System::Metric);
    [vec![told.message], told.hints].concat().join("; ")
}

/// All that is wrong, a line a fault: line number and message.
pub fn wrong(shelf: Shelf, text: &str) -> Vec<String> {
    let error = check(shelf, text).expect_err("it must be refused");
    assert_eq!(error.exit_status(), 2);
    let line = |fault: &Fault| fault.place.as_ref().map_or(0, |place| place.start.0);
    let faults = error.faults().iter();
    faults
        .map(|fault| format!("{}: {}", line(fault), words(fault)))
        .collect()
}

/// A path in the repository.
pub fn repository(inside: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(inside)
}
