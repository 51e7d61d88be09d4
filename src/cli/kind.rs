//! The kinds of file that `show` lists and prints.

use crate::library::Shelf;
use clap::ValueEnum;

/// A kind of file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Kind {
    /// Lifters
    #[value(alias = "lifter")]
    Lifters,
    /// Movements
    #[value(alias = "movement")]
    Movements,
    /// Muscles, and the tables they stand in
    #[value(alias = "muscle")]
    Muscles,
    /// Gyms
    #[value(alias = "gym")]
    Gyms,
    /// Elastic bands
    #[value(alias = "band")]
    Bands,
    /// Chains
    #[value(alias = "chain")]
    Chains,
    /// Invented training logs
    #[value(alias = "log")]
    Logs,
    /// Setups
    #[value(alias = "setup")]
    Setups,
    /// Tables of body segments
    #[value(alias = "segment")]
    Segments,
    /// Curves of the muscle fibre
    #[value(alias = "curve")]
    Curves,
    /// Filament lengths of a sarcomere
    #[value(alias = "sarcomere")]
    Sarcomeres,
    /// Published tables that estimates and plans are made with
    Published,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 12] = [
        Self::Lifters,
        Self::Movements,
        Self::Muscles,
        Self::Gyms,
        Self::Bands,
        Self::Chains,
        Self::Logs,
        Self::Setups,
        Self::Segments,
        Self::Curves,
        Self::Sarcomeres,
        Self::Published,
    ];

    /// Where files of the kind stand; logs stand by themselves.
    pub const fn shelf(self) -> Option<Shelf> {
        Some(match self {
            Self::Lifters => Shelf::Lifters,
            Self::Movements => Shelf::Movements,
            Self::Muscles => Shelf::Muscles,
            Self::Gyms => Shelf::Gyms,
            Self::Bands => Shelf::Bands,
            Self::Chains => Shelf::Chains,
            Self::Setups => Shelf::Setups,
            Self::Segments => Shelf::Segments,
            Self::Curves => Shelf::Curves,
            Self::Sarcomeres => Shelf::Sarcomeres,
            Self::Published => Shelf::Published,
            Self::Logs => return None,
        })
    }

    /// Its name.
    pub fn name(self) -> &'static str {
        self.shelf().map_or("logs", Shelf::folder)
    }
}
