//! The publications behind the numbers as text, CSV and JSON.
//!
//! In: publications by key. Out: text.

use super::json::pretty_list;
use super::tidy_table::{Cells, TidyTable};
use crate::narrative::source_words::{publication_in_words, publications_counted};
use crate::source::Publication;
use serde::Serialize;
use std::collections::BTreeMap;

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

#[derive(Serialize)]
struct PublicationRow<'a> {
    key: &'a str,
    #[serde(flatten)]
    publication: &'a Publication,
}

/// The publications as a table: a row a publication.
#[must_use]
pub fn sources_data(sources: &BTreeMap<String, Publication>) -> TidyTable {
    TidyTable::of(
        sources
            .iter()
            .map(|(key, publication)| Cells::of(&PublicationRow { key, publication })),
    )
}

/// The publications as JSON.
#[must_use]
pub fn sources_json(sources: &BTreeMap<String, Publication>) -> String {
    pretty_list(sources)
}
