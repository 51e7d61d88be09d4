//! Where numbers come from, in words.
//!
//! In: a [`Source`]. Out: one line for a table.

use crate::source::Source;

/// One line for a table: "from memory: holzbaur_2005, muscle table".
#[must_use]
pub fn source_in_words(source: &Source) -> String {
    match source {
        Source::Published(key, place) => format!("published: {key}, {place}"),
        Source::FromMemory(key, what) => format!("from memory: {key}, {what}"),
        Source::Derived(key, how) => format!("derived: {key}, {how}"),
        Source::Assumed(why) => format!("assumed: {why}"),
        Source::CommonPractice(what) => format!("common practice: {what}"),
        Source::Invented(what) => format!("invented: {what}"),
    }
}
