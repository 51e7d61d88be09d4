//! Publications in words: how their numbers are known, what is taken from them.
//!
//! In: a [`Publication`]. Out: text.

use crate::source::{Publication, Seen};

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
