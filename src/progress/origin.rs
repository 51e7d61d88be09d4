//! Where the numbers of this room come from, in a form that a constant table can hold.
//!
//! In: a key of the list of publications and a place in it, or the words "common practice" or
//! "assumed" with a reason. Out: an [`Origin`], which turns into a [`Source`] for `torquill sources`.

use crate::source::Source;

/// Where one number or one row of a table comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// Read in a publication: its key and the place.
    Read(&'static str, &'static str),
    /// Recalled from a publication and not re-read: its key and what was recalled.
    Recalled(&'static str, &'static str),
    /// Computed from published numbers: the key of the main one and how.
    Derived(&'static str, &'static str),
    /// A fact of the trade without a publication.
    Practice(&'static str),
    /// Chosen here, with the reason.
    Assumed(&'static str),
}

impl Origin {
    /// The same as a [`Source`], the form that all rooms share.
    #[must_use]
    pub fn source(self) -> Source {
        match self {
            Self::Read(key, place) => Source::Published(key.to_owned(), place.to_owned()),
            Self::Recalled(key, what) => Source::FromMemory(key.to_owned(), what.to_owned()),
            Self::Derived(key, how) => Source::Derived(key.to_owned(), how.to_owned()),
            Self::Practice(what) => Source::CommonPractice(what.to_owned()),
            Self::Assumed(why) => Source::Assumed(why.to_owned()),
        }
    }

    /// The key of the publication, if there is one.
    #[must_use]
    pub const fn key(self) -> Option<&'static str> {
        match self {
            Self::Read(key, _) | Self::Recalled(key, _) | Self::Derived(key, _) => Some(key),
            Self::Practice(_) | Self::Assumed(_) => None,
        }
    }
}
