//! What a search keeps: the best, the non-dominated, the nearest miss.
//!
//! In: judged combinations in any order. Out: finalists in order, the front of flattening against pieces
//! against load, the miss. What is kept does not depend on the order in which it came.

use super::judged::{Candidate, Miss};
use super::setup_family::{FAMILIES, SetupFamily};
use std::collections::BinaryHeap;

/// What a search found.
#[derive(Debug, Clone, Default)]
pub struct FoundSetups {
    best: BinaryHeap<Candidate>,
    of_family: [BinaryHeap<Candidate>; FAMILIES.len()],
    front: Front,
    /// The nearest miss among those that do not fit.
    pub miss: Option<Miss>,
    /// Combinations that were judged one by one.
    pub judged: u64,
    /// Combinations that fit.
    pub fitting: u64,
}

impl FoundSetups {
    /// The best, in order.
    #[must_use]
    pub fn finalists(&self) -> Vec<Candidate> {
        self.best.clone().into_sorted_vec()
    }

    /// The best of one family, in order.
    #[must_use]
    pub fn of_family(&self, family: SetupFamily) -> Vec<Candidate> {
        self.of_family[family as usize].clone().into_sorted_vec()
    }

    /// The non-dominated ones, simplest first.
    #[must_use]
    pub fn front(&self, plain_spread: f64) -> Vec<Candidate> {
        self.front.skyline(plain_spread)
    }

    pub(super) fn add(&mut self, candidate: Candidate, family: SetupFamily, keep: usize) {
        self.fitting += 1;
        self.front.add(candidate);
        kept(&mut self.best, candidate, keep);
        kept(&mut self.of_family[family as usize], candidate, OF_FAMILY);
    }

    pub(super) fn miss(&mut self, miss: Miss) {
        let key = |miss: &Miss| (miss.gap.size, miss.combination);
        let is_nearer = self.miss.as_ref().is_none_or(|known| {
            let (new, old) = (key(&miss), key(known));
            new.0.total_cmp(&old.0).then(new.1.cmp(&old.1)).is_lt()
        });
        if is_nearer {
            self.miss = Some(miss);
        }
    }

    pub(super) fn joined(mut self, other: Self, keep: usize) -> Self {
        for candidate in other.best {
            kept(&mut self.best, candidate, keep);
        }
        for (own, others) in self.of_family.iter_mut().zip(other.of_family) {
            for candidate in others {
                kept(own, candidate, OF_FAMILY);
            }
        }
        self.front.join(other.front);
        if let Some(miss) = other.miss {
            self.miss(miss);
        }
        self.judged += other.judged;
        self.fitting += other.fitting;
        self
    }
}

/// Finalists of each family.
const OF_FAMILY: usize = 24;

/// Keeps a candidate if it is among so many best.
fn kept(best: &mut BinaryHeap<Candidate>, candidate: Candidate, keep: usize) {
    if best.len() < keep {
        best.push(candidate);
    } else if let Some(mut worst) = best.peek_mut()
        && candidate < *worst
    {
        *worst = candidate;
    }
}

/// The evenest combination for each number of pieces and each kilogram of mean load.
#[derive(Debug, Clone, Default)]
struct Front {
    by_pieces: Vec<Vec<Option<Candidate>>>,
}

/// Kilograms of mean load in one cell of the front: finer differences are no reason to choose.
const CELL_KG: f64 = 1.0;

impl Front {
    fn add(&mut self, candidate: Candidate) {
        let row = candidate.judged.pieces as usize;
        let cell = (candidate.judged.mean_kg / CELL_KG).max(0.0) as usize;
        if self.by_pieces.len() <= row {
            self.by_pieces.resize(row + 1, Vec::new());
        }
        let cells = &mut self.by_pieces[row];
        if cells.len() <= cell {
            cells.resize(cell + 1, None);
        }
        let key = |c: &Candidate| (c.judged.spread, c.combination);
        let is_evener = cells[cell].as_ref().is_none_or(|known| {
            let (new, old) = (key(&candidate), key(known));
            new.0.total_cmp(&old.0).then(new.1.cmp(&old.1)).is_lt()
        });
        if is_evener {
            cells[cell] = Some(candidate);
        }
    }

    fn join(&mut self, other: Self) {
        for candidate in other.by_pieces.into_iter().flatten().flatten() {
            self.add(candidate);
        }
    }

    fn skyline(&self, plain_spread: f64) -> Vec<Candidate> {
        let all = self.by_pieces.iter().flatten().flatten();
        let mut best: Vec<(Merit, Candidate)> = Vec::new();
        for candidate in all {
            let judged = &candidate.judged;
            let flattening = 100.0 * (1.0 - judged.spread / plain_spread);
            let merit = Merit::of(flattening, judged.mean_kg, judged.pieces);
            if merit.is_uneven() {
                continue;
            }
            if best.iter().all(|(other, _)| !other.dominates(&merit)) {
                best.retain(|(other, _)| !merit.dominates(other));
                best.push((merit, *candidate));
            }
        }
        best.into_iter().map(|(_, candidate)| candidate).collect()
    }
}

/// What setups are weighed by, in steps that matter: whole percent, whole kilograms, pieces.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Merit {
    flattening: i64,
    kg: i64,
    pieces: u32,
}

impl Merit {
    /// The merit of a setup: flattening in %, mean load over the range in kg, pieces a side.
    #[must_use]
    pub fn of(flattening_percent: f64, mean_kg: f64, pieces: u32) -> Self {
        Self {
            flattening: flattening_percent.clamp(-1.0e6, 1.0e6).round() as i64,
            kg: (mean_kg / CELL_KG).max(0.0) as i64,
            pieces,
        }
    }

    /// Whether it is less even than plain weight: no reason to choose it.
    #[must_use]
    pub fn is_uneven(&self) -> bool {
        self.flattening < 0
    }

    /// Whether this one is at least as even, as heavy and as simple as the other; of two alike the first
    /// one stays.
    #[must_use]
    pub fn dominates(&self, other: &Self) -> bool {
        self.flattening >= other.flattening && self.kg >= other.kg && self.pieces <= other.pieces
    }
}
