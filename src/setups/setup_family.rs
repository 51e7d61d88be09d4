//! Kinds of setups that differ in what they do to a lift: a coach chooses between these, not between near copies.
//!
//! In: which pieces hang. Out: [`SetupFamily`].

use super::combination::Combination;
use super::kernel::Kernel;
use crate::resistance::Item;

/// A kind of setup.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SetupFamily {
    /// Plain weight.
    Plain,
    /// Bands that add load.
    BandsBelow,
    /// Bands that take load away.
    BandsAbove,
    /// Chains.
    Chains,
    /// Several of these together.
    Mixed,
}

/// Every family, in the order of their heaps.
pub(super) const FAMILIES: [SetupFamily; 5] = [
    SetupFamily::Plain,
    SetupFamily::BandsBelow,
    SetupFamily::BandsAbove,
    SetupFamily::Chains,
    SetupFamily::Mixed,
];

impl Kernel<'_> {
    /// The family of a combination.
    pub(super) fn family(&self, combination: &Combination) -> SetupFamily {
        let mut family = SetupFamily::Plain;
        for hanging in combination.hangings() {
            let hanging = &self.rack.hangings[usize::from(*hanging)];
            let own = match (&hanging.item, hanging.helps) {
                (Item::Chain(_), _) => SetupFamily::Chains,
                (_, true) => SetupFamily::BandsAbove,
                (_, false) => SetupFamily::BandsBelow,
            };
            family = match family {
                SetupFamily::Plain => own,
                known if known == own => own,
                _ => SetupFamily::Mixed,
            };
        }
        family
    }
}
