//! The kinds of model file, and the folder that holds each.
//!
//! In: a folder's name or a file's path. Out: [`Shelf`].

use std::path::Path;

/// A kind of model file; each has a folder of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shelf {
    /// Lifters: height, mass, strength, which tables.
    Lifters,
    /// Tables of body segments.
    Segments,
    /// Tables of muscles.
    Muscles,
    /// Curves of the muscle fibre.
    Curves,
    /// Filament lengths of a sarcomere.
    Sarcomeres,
    /// Movements.
    Movements,
    /// Elastic bands.
    Bands,
    /// Chains.
    Chains,
    /// Setups: what hangs on the bar.
    Setups,
    /// Gyms: what there is to hang.
    Gyms,
    /// Published tables that estimates and plans are made with.
    Published,
}

impl Shelf {
    /// Every kind.
    pub const ALL: [Self; 11] = [
        Self::Lifters,
        Self::Segments,
        Self::Muscles,
        Self::Curves,
        Self::Sarcomeres,
        Self::Movements,
        Self::Bands,
        Self::Chains,
        Self::Setups,
        Self::Gyms,
        Self::Published,
    ];

    /// The folder in `models/`.
    #[must_use]
    pub fn folder(self) -> &'static str {
        match self {
            Self::Lifters => "lifters",
            Self::Segments => "segments",
            Self::Muscles => "muscles",
            Self::Curves => "curves",
            Self::Sarcomeres => "sarcomeres",
            Self::Movements => "movements",
            Self::Bands => "bands",
            Self::Chains => "chains",
            Self::Setups => "setups",
            Self::Gyms => "gyms",
            Self::Published => "published",
        }
    }

    /// The kind that a file's folder says, if it says one.
    #[must_use]
    pub fn of_path(path: &Path) -> Option<Self> {
        let folder = path.parent()?.file_name()?.to_str()?;
        Self::ALL.into_iter().find(|shelf| shelf.folder() == folder)
    }
}
