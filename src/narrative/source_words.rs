//! Where numbers come from, in words: a source in one line; a publication, and how its numbers are known.
//!
//! In: a [`Source`] or a [`Publication`]. Out: text.

use crate::source::{Publication, Seen, Source};

/// One line for a table: "from memory: holzbaur_2005, muscle table".
#[must_use]
pub fn source_in_words(source: &Source) -> String {
    match source {
        Source::Published(key, place) => format!("published: {key}, {place}"),
        Source::FromMemory(key, what) => format!("from memory: {key}, {what}"),
        Source::Derived(key, how) => format!("derived: {key}, {how}"),
        Source::Assumed(why) => format!("assumed: {why}"),
        Source::Fitted(to) => format!("fitted: {to}"),
        Source::CommonPractice(what) => format!("common practice: {what}"),
        Source::Invented(what) => format!("invented: {what}"),
    }
}

/// How the numbers of a publication are known.
#[must_use]
pub const fn how_known(seen: Seen) -> &'static str {
    match seen {
        Seen::Read => "read",
        Seen::Partly => "partly read, partly from memory",
        Seen::Recalled => "from memory",
    }
}

/// A publication, a line for its key, for itself, and for its use.
#[must_use]
pub fn publication_in_words(key: &str, publication: &Publication) -> String {
    format!(
        "{key} ({})\n  {}\n  used for: {}",
        how_known(publication.seen),
        publication.citation,
        publication.used_for
    )
}

/// How many publications there are, and what of the numbers without one.
#[must_use]
pub fn publications_counted(count: usize) -> String {
    format!(
        "{count} publications. Numbers without one are marked in the model files as assumed,\ncommon practice or invented."
    )
}
