//! Which limit a combination misses, and by how much.
//!
//! In: a combination's sums, its exact load and the one that can be loaded. Out: nothing, or the [`Gap`] that
//! is widest, for the nearest miss.

use super::combination::Combination;
use super::kernel::Kernel;
use super::sums::{END, START, Sums};
use super::wish::Goal;
use crate::units::Mass;

/// A rounding error is no excess.
const SLACK: f64 = 1.0e-9;

/// What a combination that misses two limits at once stands behind those that miss one.
const BEHIND: f64 = 1.0e3;

/// Why a combination is not possible, and how far it is from being so.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// Which limit it misses most.
    pub limit: Limit,
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
pub enum Limit {
    /// Even the lightest load is too heavy beside these pieces.
    LightestLoad,
    /// Help from above carries all of the load at the start or the end, so that nothing is left to lift.
    AllCarried,
    /// Too small a share of bands and chains.
    LeastShare,
    /// Too large a share of bands and chains.
    MostShare,
    /// Too little load at the place of this limit.
    LeastLoad(usize),
    /// Too much load at the place of this limit.
    MostLoad(usize),
}

impl Kernel<'_> {
    /// The limit that a combination misses most, at its exact load or as loaded, if any.
    pub(super) fn gap_of(
        &self,
        combination: &Combination,
        exact_kg: f64,
        loading: usize,
    ) -> Option<Gap> {
        self.gap(exact_kg, loading, &self.sums_of(combination))
    }

    /// The limit that is missed most, at the exact load or as loaded, if any. What both keep, every load
    /// between them keeps too: each limit is a bound of something that only rises or falls with the load.
    pub(super) fn gap(&self, exact_kg: f64, index: usize, sums: &Sums) -> Option<Gap> {
        let kg = self.loadings.all()[index].total.as_kg();
        let loaded = self.gap_at(kg, index, sums);
        let exact = match self.wish.goal {
            Goal::Profile(_) => None,
            _ => self.gap_at(exact_kg, index, sums),
        };
        loaded
            .into_iter()
            .chain(exact)
            .max_by(|a, b| a.size.total_cmp(&b.size))
    }

    /// The gap of a combination beside which even the lightest load is too heavy; it lies behind all others
    /// where that load misses another limit too.
    pub(super) fn too_heavy(&self, most_kg: f64, sums: &Sums) -> Gap {
        let lightest_kg = self.loadings.lightest_kg();
        let other = self.gap_at(lightest_kg, 0, sums);
        let size = (lightest_kg - most_kg) / lightest_kg.max(1.0);
        Gap {
            limit: Limit::LightestLoad,
            size: other.map_or(size, |other| BEHIND + size + other.size),
            has: lightest_kg,
            needs: most_kg,
            loading: 0,
            too_heavy: true,
            and_others: other.is_some(),
        }
    }

    fn gap_at(&self, kg: f64, index: usize, sums: &Sums) -> Option<Gap> {
        let share = self.share(kg, sums);
        let mut worst: Option<Gap> = None;
        let mut missed = 0;
        let mut miss = |limit: Limit, size: f64, has: f64, needs: f64| {
            missed += usize::from(size > SLACK);
            if size > SLACK && worst.is_none_or(|known| size > known.size) {
                worst = Some(Gap {
                    limit,
                    size,
                    has,
                    needs,
                    loading: index as u32,
                    too_heavy: false,
                    and_others: false,
                });
            }
        };
        for place in [START, END] {
            let weight = kg + self.body_kg + sums.added_kg[place];
            let taken = sums.taken_kg[place];
            if taken > 0.0 && taken >= weight * (1.0 - SLACK) {
                let over = (taken - weight).max(0.0) / weight.max(1.0);
                miss(Limit::AllCarried, over + 2.0 * SLACK, weight, taken);
            }
        }
        let [least, most] = self.wish.share;
        if let Some(least) = least {
            miss(Limit::LeastShare, least - share, share, least);
        }
        if let Some(most) = most {
            miss(Limit::MostShare, share - most, share, most);
        }
        for (place, limit) in self.wish.loads.iter().enumerate() {
            let has = kg + sums.limits_kg[place];
            if let Some(least) = limit.least.map(Mass::as_kg) {
                miss(
                    Limit::LeastLoad(place),
                    (least - has) / least.max(1.0),
                    has,
                    least,
                );
            }
            if let Some(most) = limit.most.map(Mass::as_kg) {
                miss(
                    Limit::MostLoad(place),
                    (has - most) / most.max(1.0),
                    has,
                    most,
                );
            }
        }
        worst.map(|gap| Gap {
            and_others: missed > 1,
            ..gap
        })
    }
}
