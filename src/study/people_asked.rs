//! Which people are invented: how many, whose kind, which share of them.
//!
//! In: what the user asks for. Out: [`PeopleAsked`] with the numbers of the people, who depend on seed and number alone.

use crate::anatomy::{Sex, Training};
use crate::bounds::bounds;
use crate::error::{Error, MaximumFault, Result};
use crate::person::Scatter;

/// Which people are invented.
#[derive(Debug, Clone, PartialEq)]
pub struct PeopleAsked {
    /// How many there are in all.
    pub count: usize,
    /// Seed of the invention.
    pub seed: u64,
    /// Which share of them is reckoned; all of them without.
    pub part: Option<PeoplePart>,
    /// Women or men and of which training, where they are not invented around a lifter that was named.
    pub kind: Option<(Sex, Training)>,
    /// How strongly they differ.
    pub scatter: Scatter,
}

/// A share of people: the third of a hundred.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PeoplePart {
    /// Its number, from 1.
    pub number: usize,
    /// How many parts there are.
    pub of: usize,
}

impl PeopleAsked {
    /// The numbers of the people that are reckoned.
    #[must_use]
    pub fn numbers(&self) -> std::ops::Range<usize> {
        let border = |part: usize, of: usize| {
            // A product of two counts may be larger than a count.
            (self.count as u128 * part as u128 / of.max(1) as u128) as usize
        };
        match self.part {
            None => 0..self.count,
            Some(part) => border(part.number - 1, part.of)..border(part.number, part.of),
        }
    }

    /// How many are reckoned.
    ///
    /// **Fails** where it is nobody, or more than is possible at once.
    pub fn checked(&self) -> Result<usize> {
        let bound = &bounds().cohort_members;
        if let Some(part) = self.part.filter(|part| part.of > self.count) {
            return Err(Error::bad(MaximumFault::MorePartsThanPeople {
                parts: part.of,
                people: self.count,
            }));
        }
        let count = self.numbers().len();
        if !bound.holds(count as f64) {
            return Err(Error::bad(MaximumFault::GroupSize {
                count,
                most: bound.most_of_them(),
            }));
        }
        Ok(count)
    }
}
