//! A combination with its figures, or with the limit that it misses.
//!
//! In: judgements of the search. Out: [`Candidate`], ordered, and [`Miss`].

use super::combination::Combination;
use std::cmp::Ordering;

/// A combination judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judged {
    /// Smaller is better.
    pub score: f64,
    /// Standard deviation of effort over its mean at the exact load.
    pub spread: f64,
    /// Place of its load in the list of loads.
    pub loading: u32,
    /// Plates, bands and chains a side.
    pub pieces: u32,
    /// Mean load over the range as loaded, kg.
    pub mean_kg: f64,
}

/// Why a combination is not possible, and how far it is from being so.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// Which limit it misses most.
    pub limit: SetupLimit,
    /// By how much, as a share of the limit; for ordering.
    pub size: f64,
    /// What it has, kg or a share.
    pub has: f64,
    /// What the limit asks for, in the same unit.
    pub needs: f64,
    /// Place of its load in the list of loads; of the lightest one where none fits.
    pub loading: u32,
    /// Whether even the lightest load is too heavy, so that no further load can be added.
    pub too_heavy: bool,
    /// Whether it misses other limits besides.
    pub and_others: bool,
}

/// A limit that can be missed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SetupLimit {
    /// Even the lightest load is too heavy beside these pieces.
    LightestLoad,
    /// Help from above carries all of the load at the start or the end, so that nothing is left to lift.
    AllCarried,
    /// More is left than may be when every band that helps is gone.
    LeftWhenBandsGo,
    /// More is felt somewhere than may be.
    FeltAboveOneRm,
    /// Pieces that help and pieces that add load hang at once.
    BothWays,
    /// Too small a share of bands and chains.
    LeastShare,
    /// Too large a share of bands and chains.
    MostShare,
    /// Too little load at the place of this limit.
    LeastLoad(usize),
    /// Too much load at the place of this limit.
    MostLoad(usize),
}

/// A combination with its figures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Candidate {
    /// What is hung.
    pub combination: Combination,
    /// How it does.
    pub judged: Judged,
}

impl Eq for Candidate {}

impl Ord for Candidate {
    fn cmp(&self, other: &Self) -> Ordering {
        let score = self.judged.score.total_cmp(&other.judged.score);
        let pieces = || self.judged.pieces.cmp(&other.judged.pieces);
        score
            .then_with(pieces)
            .then_with(|| self.combination.cmp(&other.combination))
    }
}

impl PartialOrd for Candidate {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// The combination that came nearest to the limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Miss {
    /// What is hung.
    pub combination: Combination,
    /// What it misses.
    pub gap: Gap,
}
