//! Which limit a combination misses, and by how much.
//!
//! In: a combination's sums, its exact load and the one that can be loaded. Out: nothing, or the [`Gap`] that
//! is widest, for the nearest miss.

use super::combination::Combination;
use super::judged::{Gap, SetupLimit};
use super::kernel::Kernel;
use super::sums::{END, START, Sums};
use super::wish::Goal;
use crate::units::Mass;

/// A rounding error is no excess.
const SLACK: f64 = 1.0e-9;

/// What a combination that misses two limits at once stands behind those that miss one.
const BEHIND: f64 = 1.0e3;

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
    /// between them keeps too: each limit is a bound of something that only rises or falls with the load. Safety is judged
    /// by what is loaded alone: nobody lifts the exact load.
    pub(super) fn gap(&self, exact_kg: f64, index: usize, sums: &Sums) -> Option<Gap> {
        let kg = self.loadings.all()[index].total.as_kg();
        let loaded = self.gap_at(kg, index, sums);
        let exact = match self.wish.goal {
            Goal::Profile(_) => None,
            _ => {
                let mut missed = Missing::default();
                self.missed_by_wish(exact_kg, sums, &mut missed);
                missed.gap(index)
            }
        };
        loaded
            .into_iter()
            .chain(exact)
            .max_by(|a, b| a.size.total_cmp(&b.size))
    }

    /// The gap of a combination beside which even the lightest load is too heavy; it lies behind all others
    /// where that load misses another limit too.
    pub(super) fn too_heavy(&self, most_kg: f64, sums: &Sums, hung: u32) -> Gap {
        let (lightest, lightest_kg) = self.loadings.lightest_beside(hung);
        let other = self.gap_at(lightest_kg, lightest, sums);
        let size = (lightest_kg - most_kg) / lightest_kg.max(1.0);
        Gap {
            limit: SetupLimit::LightestLoad,
            size: other.map_or(size, |other| BEHIND + size + other.size),
            has: lightest_kg,
            needs: most_kg,
            loading: lightest as u32,
            too_heavy: true,
            and_others: other.is_some(),
        }
    }

    /// The limit that is missed most with this much plain load.
    fn gap_at(&self, kg: f64, index: usize, sums: &Sums) -> Option<Gap> {
        let mut missed = Missing::default();
        self.missed_by_wish(kg, sums, &mut missed);
        self.missed_by_failure(kg, sums, &mut missed);
        self.missed_by_feeling(kg, sums, &mut missed);
        missed.gap(index)
    }

    /// What is asked for, and a load that is one at all.
    fn missed_by_wish(&self, kg: f64, sums: &Sums, missed: &mut Missing) {
        self.missed_by_help(kg, sums, missed);
        let share = self.share(kg, sums);
        let [least, most] = self.wish.share;
        if let Some(least) = least {
            missed.add(SetupLimit::LeastShare, least - share, share, least);
        }
        if let Some(most) = most {
            missed.add(SetupLimit::MostShare, share - most, share, most);
        }
        for (place, limit) in self.wish.loads.iter().enumerate() {
            let has = kg + sums.limits_kg[place];
            if let Some(least) = limit.least.map(Mass::as_kg) {
                let size = (least - has) / least.max(1.0);
                missed.add(SetupLimit::LeastLoad(place), size, has, least);
            }
            if let Some(most) = limit.most.map(Mass::as_kg) {
                let size = (has - most) / most.max(1.0);
                missed.add(SetupLimit::MostLoad(place), size, has, most);
            }
        }
    }

    /// Whether help carries all of the load at the start or the end.
    fn missed_by_help(&self, kg: f64, sums: &Sums, missed: &mut Missing) {
        for place in [START, END] {
            let weight = kg + self.body_kg + sums.added_kg[place];
            let taken = sums.taken_kg[place];
            if taken > 0.0 && taken >= weight * (1.0 - SLACK) {
                let over = (taken - weight).max(0.0) / weight.max(1.0);
                missed.add(SetupLimit::AllCarried, over + 2.0 * SLACK, weight, taken);
            }
        }
    }
}

/// Load of pieces that is none, kg: bands that are just taut.
const NO_LOAD_KG: f64 = 0.01;

impl Kernel<'_> {
    /// More than may be felt at the start or the end.
    fn missed_by_feeling(&self, kg: f64, sums: &Sums, missed: &mut Missing) {
        let Some(most_kg) = self.most_felt_kg else {
            return;
        };
        for place in [START, END] {
            let added = sums.added_kg[place];
            if added > NO_LOAD_KG {
                let felt_kg = kg + self.body_kg + added - sums.taken_kg[place];
                let size = (felt_kg - most_kg) / most_kg.max(1.0);
                missed.add(SetupLimit::FeltAboveOneRm, size, felt_kg, most_kg);
            }
        }
    }

    /// What is left when every band that helps is gone; pieces that help and pieces that add load at once.
    fn missed_by_failure(&self, kg: f64, sums: &Sums, missed: &mut Missing) {
        let most = |list: &[f64; 3]| list[START].max(list[END]);
        let (taken, added) = (most(&sums.taken_kg), most(&sums.added_kg));
        if taken <= NO_LOAD_KG {
            return;
        }
        if let Some(most_kg) = self.most_left_kg {
            let left_kg = kg + self.body_kg + added;
            let size = (left_kg - most_kg) / most_kg.max(1.0);
            missed.add(SetupLimit::LeftWhenBandsGo, size, left_kg, most_kg);
        }
        if !self.both_ways && added > NO_LOAD_KG {
            missed.add(SetupLimit::BothWays, BEHIND, added, taken);
        }
    }
}

/// Limits that are missed: how many, and the one that is missed most.
#[derive(Default)]
struct Missing {
    count: usize,
    worst: Option<Gap>,
}

impl Missing {
    /// The limit that is missed most, with the load that misses it.
    fn gap(self, index: usize) -> Option<Gap> {
        self.worst.map(|gap| Gap {
            loading: index as u32,
            and_others: self.count > 1,
            ..gap
        })
    }

    fn add(&mut self, limit: SetupLimit, size: f64, has: f64, needs: f64) {
        if size <= SLACK {
            return;
        }
        self.count += 1;
        if self.worst.is_none_or(|known| size > known.size) {
            self.worst = Some(Gap {
                limit,
                size,
                has,
                needs,
                loading: 0,
                too_heavy: false,
                and_others: false,
            });
        }
    }
}
