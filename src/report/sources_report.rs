//! The publications behind the numbers as text, CSV and JSON.
//!
//! In: publications by key. Out: text.

use super::csv::rows_to_csv;
use super::json::pretty_list;
use crate::narrative::source_words::{how_known, publication_in_words, publications_counted};
use crate::source::Publication;
use std::collections::BTreeMap;

const COLUMNS: [&str; 4] = ["key", "how known", "used for", "publication"];

/// The publications as text.
#[must_use]
pub fn sources_text(sources: &BTreeMap<String, Publication>) -> String {
    let mut text = String::new();
    for (key, publication) in sources {
        text += &publication_in_words(key, publication);
        text += "\n\n";
    }
    text + &publications_counted(sources.len()) + "\n"
}

/// The publications as CSV.
#[must_use]
pub fn sources_csv(sources: &BTreeMap<String, Publication>) -> String {
    let row = |(key, publication): (&String, &Publication)| {
        vec![
            key.clone(),
            how_known(publication.seen).to_owned(),
            publication.used_for.clone(),
            publication.citation.clone(),
        ]
    };
    rows_to_csv(&COLUMNS, sources.iter().map(row))
}

/// The publications as JSON.
#[must_use]
pub fn sources_json(sources: &BTreeMap<String, Publication>) -> String {
    pretty_list(sources)
}
