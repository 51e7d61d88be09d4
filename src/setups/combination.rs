//! What hangs on the bar in one setup, how it does, or what it misses.
//!
//! In: hangings by their number in the rack. Out: [`Combination`], ordered; [`Candidate`] and [`Miss`].

use super::limits::Gap;
use super::score::Judged;
use super::wish::MOST_HUNG;
use std::cmp::Ordering;

/// Hangings in rising order; one may stand several times.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Combination {
    hangings: [u16; MOST_HUNG as usize],
    length: u8,
}

impl Combination {
    /// The hangings.
    #[must_use]
    pub fn hangings(&self) -> &[u16] {
        &self.hangings[..usize::from(self.length)]
    }

    /// The same with one more, which stands last.
    pub(super) fn with(mut self, hanging: usize) -> Self {
        self.hangings[usize::from(self.length)] = hanging as u16;
        self.length += 1;
        self
    }
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
