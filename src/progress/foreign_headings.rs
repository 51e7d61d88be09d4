//! Headings of training logs in other languages.
//!
//! In: the table `models/headings.csv`. Out: the column that a heading names.

use crate::error::LogColumn;
use std::collections::BTreeMap;
use std::sync::LazyLock;

pub const TEXT: &str = include_str!("../../models/headings.csv");

/// The column that a heading names in another language: its words in small letters with one blank between them.
pub fn foreign(words: &str) -> Option<LogColumn> {
    static TABLE: LazyLock<BTreeMap<&str, LogColumn>> = LazyLock::new(|| {
        let known = rows().filter_map(|[_, name, heading]| {
            let column = LogColumn::ALL.into_iter().find(|c| c.name() == name)?;
            Some((heading, column))
        });
        known.collect()
    });
    TABLE.get(words).copied()
}

/// Language, column and heading of each row below the head; no heading holds a comma.
pub fn rows() -> impl Iterator<Item = [&'static str; 3]> {
    let lines = TEXT.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines.filter_map(|line| line.split(',').collect::<Vec<_>>().try_into().ok())
}
