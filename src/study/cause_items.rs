//! The parts of a change in the order of their size, those of one factor together where they go one way.
//!
//! In: a [`Cause`]. Out: [`CauseItem`]s that add up to the change.

use super::cause::Cause;
use crate::capacity::ForceFactor;

/// What a part of a change belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ItemOf {
    /// One factor of one muscle, by its number in the account.
    Muscle(usize, ForceFactor),
    /// One factor of so many muscles, all that have a part in it: together more than any of them alone.
    Factor(ForceFactor, usize),
    /// One factor of so many muscles that are not told alone.
    Others(ForceFactor, usize),
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
/// Less than this share of a factor's parts is rounding: the muscle has none.
const ROUNDING: f64 = 1.0e-9;

impl Cause {
    /// The parts of the change, the largest first.
    ///
    /// **Shape.** They add up to the change. A factor's muscles stand together only where they do more together than
    /// any of them alone, and none makes most of it; so the largest part is named whether one muscle makes it or many.
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
        if whole.abs() > largest && largest < MOST_OF_IT * sizes {
            return vec![item(ItemOf::Factor(factor, self.having(factor)), whole)];
        }
        let single = parts.iter().enumerate();
        single
            .map(|(index, part)| item(ItemOf::Muscle(index, factor), *part))
            .collect()
    }

    /// How many muscles have a part in a factor's.
    #[must_use]
    pub fn having(&self, factor: ForceFactor) -> usize {
        let least = self.least_part(factor);
        let parts = self.account.muscles.iter().map(|m| m.part(factor).abs());
        parts.filter(|part| *part > least).count()
    }

    /// What a muscle's part of a factor must exceed to be more than rounding, N or N·m: the same whichever of them are counted.
    fn least_part(&self, factor: ForceFactor) -> f64 {
        let parts = self.account.muscles.iter().map(|m| m.part(factor).abs());
        ROUNDING * parts.sum::<f64>()
    }

    /// Some of the items with the muscles of a factor taken together that stand alone in them, the largest first.
    #[must_use]
    pub fn gathered(&self, items: &[CauseItem]) -> Vec<CauseItem> {
        let single = |item: &&CauseItem| matches!(item.of, ItemOf::Muscle(..));
        let mut together: Vec<CauseItem> = items.iter().filter(|i| !single(i)).copied().collect();
        for factor in ForceFactor::ALL {
            let least = self.least_part(factor);
            let is_of_it = |item: &&CauseItem| matches!(item.of, ItemOf::Muscle(_, f) if f == factor && item.part.abs() > least);
            let found: Vec<CauseItem> = items.iter().filter(is_of_it).copied().collect();
            match found.as_slice() {
                [] => {}
                [only] => together.push(*only),
                several => together.push(item(
                    ItemOf::Others(factor, several.len()),
                    several.iter().map(|item| item.part).sum(),
                )),
            }
        }
        in_order(together)
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
