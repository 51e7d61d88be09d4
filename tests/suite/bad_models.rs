//! Broken model files and the message that each of them gets, word for word.
//!
//! `tests/bad_models/NAME.ron` is the file, `NAME.expected` the message; `UPDATE=1` rewrites them.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use torquill::cli::render;
use torquill::library::Library;

const FOLDER: &str = "tests/bad_models";

fn files(extension: &str) -> Vec<PathBuf> {
    let folder =
        std::fs::read_dir(FOLDER).expect("the folder of broken files is in the repository");
    let paths = folder.map(|file| file.expect("a file can be listed").path());
    let mut files: Vec<PathBuf> = paths
        .filter(|path| path.extension().is_some_and(|found| found == extension))
        .collect();
    files.sort();
    files
}

/// The message of a broken file; the file is named with `/` on every system.
fn message(path: &Path) -> String {
    let error = Library::built_in()
        .check_file(path)
        .expect_err(&format!("{} must be refused", path.display()));
    assert_eq!(error.exit_status(), 2, "{}", path.display());
    format!(
        "{}\n",
        render(&error, torquill::units::System::Metric, false)
    )
    .replace('\\', "/")
}

#[test]
fn regress_each_broken_file_gets_its_message() {
    let update = std::env::var_os("UPDATE").is_some();
    let mut wrong = Vec::new();
    for path in files("ron") {
        let expected = path.with_extension("expected");
        let message = message(&path);
        if update {
            std::fs::write(&expected, &message).expect("the message can be written");
        } else if std::fs::read_to_string(&expected).ok().as_ref() != Some(&message) {
            wrong.push(format!("{}:\n{message}", path.display()));
        }
    }
    assert!(
        wrong.is_empty(),
        "other messages than pinned (UPDATE=1 rewrites):\n{}",
        wrong.join("\n")
    );
}

#[test]
fn fault_every_broken_file_has_a_message_and_every_message_a_file() {
    let stems = |extension| -> BTreeSet<PathBuf> {
        files(extension)
            .iter()
            .map(|path| path.with_extension(""))
            .collect()
    };
    assert_eq!(stems("ron"), stems("expected"));
    assert!(stems("ron").len() >= 60);
}

#[test]
fn fault_messages_name_line_and_column_wherever_the_file_has_any() {
    for path in files("ron") {
        let message = message(&path);
        let whole_file = ["empty", "of_no_known_kind", "no_record", "only_a_comment"];
        let stem = path
            .file_stem()
            .and_then(|stem| stem.to_str())
            .expect("names are text");
        if whole_file.contains(&stem) {
            continue;
        }
        let place = message.lines().find_map(|line| {
            let (_, place) = line.split_once(&format!("{stem}.ron:"))?;
            let (line, column) = place.split_once(':')?;
            Some((line.parse::<usize>().ok()?, column.parse::<usize>().ok()?))
        });
        assert!(
            place.is_some_and(|(line, column)| line > 0 && column > 0),
            "{stem}:\n{message}"
        );
    }
}

#[test]
fn fault_a_file_that_is_no_text_or_not_there_is_told_so() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let path = folder.path().join("x.ron");
    std::fs::write(&path, [b'(', 0xff, 0xfe]).expect("a file can be written");
    let said = |path: &Path| {
        let error = Library::built_in()
            .check_file(path)
            .expect_err("it is no model file");
        assert_eq!(error.exit_status(), 2);
        crate::calling::said(&error)
    };
    assert!(said(&path).contains("byte 2 is not UTF-8"));
    assert!(said(&folder.path().join("absent.ron")).starts_with("cannot read"));
    assert!(said(folder.path()).starts_with("cannot read"));
}
