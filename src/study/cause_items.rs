//! The parts of a change in the order of their size, those of one factor together where they go one way.
//!
//! In: a [`Cause`]. Out: [`CauseItem`]s that add up to the change.

use super::cause::Cause;
use crate::capacity::{ForceFactor, Lever};

/// What a part of a change belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ItemOf {
    /// One factor of one muscle, by its number in the account.
    Muscle(usize, ForceFactor),
    /// One factor of so many muscles that go one way, none of which makes most of it.
    Factor(ForceFactor, usize),
    /// The load's lever.
    Lever,
    /// Floor, seat, bench, the other hand.
    Supports,
    /// The limbs' own weight.
    Limbs,
    /// Passive torque of the joints.
    PassiveJoints,
    /// What is not explained.
    Rest,
}

/// A part of a change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CauseItem {
    /// What it belongs to.
    pub of: ItemOf,
    /// N or N·m.
    pub part: f64,
}

/// From this share of a factor's parts on, one muscle stands for it alone (assumed).
const MOST_OF_IT: f64 = 0.6;
/// Parts of a factor go one way from this share of their sizes on (assumed).
const ONE_WAY: f64 = 0.9;
/// A muscle counts among those that make a factor's part from this share of the part on (assumed).
const COUNTS: f64 = 0.02;

impl Cause {
    /// The parts of the change, the largest first.
    ///
    /// **Shape.** They add up to the change. A factor's muscles stand together only where they go one way, so no
    /// part hides another one.
    #[must_use]
    pub fn items(&self) -> Vec<CauseItem> {
        let factors = ForceFactor::ALL.into_iter();
        let mut items: Vec<CauseItem> = factors.flat_map(|f| self.of_factor(f)).collect();
        items.extend(self.outside());
        in_order(items)
    }

    /// The parts of the change with every muscle and factor alone, the largest first.
    #[must_use]
    pub fn single_items(&self) -> Vec<CauseItem> {
        let muscles = self.account.muscles.iter().enumerate();
        let single = muscles.flat_map(|(index, muscle)| {
            let factors = ForceFactor::ALL.into_iter();
            factors.map(move |f| item(ItemOf::Muscle(index, f), muscle.part(f)))
        });
        let mut items: Vec<CauseItem> = single.collect();
        items.extend(self.outside());
        in_order(items)
    }

    fn outside(&self) -> [CauseItem; 5] {
        let account = &self.account;
        [
            item(ItemOf::Lever, account.lever()),
            item(ItemOf::Supports, account.supports),
            item(ItemOf::Limbs, account.limbs),
            item(ItemOf::PassiveJoints, account.passive_joints),
            item(ItemOf::Rest, account.rest),
        ]
    }

    fn of_factor(&self, factor: ForceFactor) -> Vec<CauseItem> {
        let parts: Vec<f64> = self
            .account
            .muscles
            .iter()
            .map(|muscle| muscle.part(factor))
            .collect();
        let whole: f64 = parts.iter().sum();
        let sizes: f64 = parts.iter().map(|part| part.abs()).sum();
        let largest = parts
            .iter()
            .fold(0.0, |most: f64, part| most.max(part.abs()));
        let counting = parts.iter();
        let count = counting.filter(|part| *part / whole >= COUNTS).count();
        if whole.abs() >= ONE_WAY * sizes && largest < MOST_OF_IT * sizes && count > 1 {
            return vec![item(ItemOf::Factor(factor, count), whole)];
        }
        let single = parts.iter().enumerate();
        single
            .map(|(index, part)| item(ItemOf::Muscle(index, factor), *part))
            .collect()
    }

    /// The muscle with the largest part of a factor in the direction of the factor's whole.
    #[must_use]
    pub fn foremost(&self, factor: ForceFactor) -> usize {
        let muscles = &self.account.muscles;
        let whole: f64 = muscles.iter().map(|muscle| muscle.part(factor)).sum();
        let part = |index: &usize| muscles[*index].part(factor) * whole.signum();
        (0..muscles.len())
            .max_by(|a, b| part(a).total_cmp(&part(b)).then(b.cmp(a)))
            .unwrap_or(0)
    }
}

/// Those that are something, the largest first.
fn in_order(mut items: Vec<CauseItem>) -> Vec<CauseItem> {
    items.retain(|item| item.part != 0.0);
    items.sort_by(|a, b| b.part.abs().total_cmp(&a.part.abs()));
    items
}

fn item(of: ItemOf, part: f64) -> CauseItem {
    CauseItem { of, part }
}

/// The lengths whose change goes the way of their sum and is seen in the length itself, the largest part first.
///
/// `way` is 1 where a longer one adds to the capacity (arms), −1 where it takes from it (levers of the load).
#[must_use]
pub fn telling_levers(levers: &[Lever], way: f64) -> Vec<&Lever> {
    let whole: f64 = levers.iter().map(|lever| lever.part).sum();
    let is_seen = |lever: &&Lever| {
        let [before, after] = lever.length_m;
        lever.part * whole > 0.0 && (after - before) * way * lever.part > 0.0
    };
    let mut told: Vec<&Lever> = levers.iter().filter(is_seen).collect();
    told.sort_by(|a, b| b.part.abs().total_cmp(&a.part.abs()));
    told
}
