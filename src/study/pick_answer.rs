//! Setups of a gym with everything that a coach loads the bar from, and what was searched for them.
//!
//! In: what was chosen, laid over the lift. Out: [`PickAnswer`], [`Picked`]: plain data.

use super::question::{SetupStudy, Study};
use crate::error::Advice;
use crate::movement::Handling;
use crate::resistance::Anchor;
use crate::session::strength::SimulatedRange;
use crate::setups::{Counts, LeftOut, LoadedSetup, SafetyLimits, Wish};
use crate::units::Mass;
use std::collections::BTreeMap;

/// The answer.
#[derive(Debug, Clone, PartialEq)]
pub struct PickAnswer {
    /// Movement, lifter, capacity; its setups are plain weight and then the ranked ones.
    pub study: Study,
    /// What was wished.
    pub wish: Wish,
    /// The effort that was wished for, where the body alone is more and nothing takes weight off it.
    pub raised_from: Option<f64>,
    /// Name of the gym.
    pub gym_title: String,
    /// Whether the gym is made up.
    pub gym_is_invented: bool,
    /// Plain weight at the same hardest effort, if the gym can load it.
    pub plain: Option<Picked>,
    /// The best, in order.
    pub ranked: Vec<Picked>,
    /// One of each family that differs, the one that is advised first: plain weight for a novice.
    pub answers: Vec<Picked>,
    /// What effort is counted in: 1, all that can be held; more where motion carries the 1RM over its hardest place.
    pub effort_unit: f64,
    /// By what the failure of bands is judged.
    pub safety: SafetyLimits,
    /// How far off the 1RM may be that shares are of, where nobody tested it: they are of its lower end then.
    pub untested: Option<SimulatedRange>,
    /// Age of the lifter, where it is known.
    pub age_years: Option<f64>,
    /// The non-dominated ones: none else is as even, as heavy and as simple.
    pub front: Vec<Picked>,
    /// How many non-dominated ones there are.
    pub front_size: usize,
    /// How much was searched.
    pub counts: Counts,
    /// How the lift is handled: what catches the load, who spots it.
    pub handling: Handling,
    /// What the gym calls its anchors.
    pub anchors: BTreeMap<String, Anchor>,
    /// Pieces that were left out and why.
    pub left_out: Vec<LeftOut>,
    /// What bands do to this lift, and what would help where they do not.
    pub advice: Advice,
}

/// A setup that the gym can build, with its figures.
#[derive(Debug, Clone, PartialEq)]
pub struct Picked {
    /// What to load and hang.
    pub loaded: LoadedSetup,
    /// Demand, effort, sticking region, flattening as loaded.
    pub study: SetupStudy,
}

impl Picked {
    /// What is left when every band that helps is gone, as a share of the 1RM; 0 where the load does not grow.
    #[must_use]
    pub fn share_left(&self, safety: &SafetyLimits) -> f64 {
        let left = self.loaded.failure.filter(|failure| failure.grows);
        left.map_or(0.0, |failure| safety.share_of(failure.after_all))
    }
}

impl PickAnswer {
    /// How hard the hardest place of a setup is, by what the wish counts in.
    #[must_use]
    pub fn hardest(&self, picked: &Picked) -> f64 {
        let held = picked.study.sticking.map_or(0.0, |s| s.max_effort);
        held / self.effort_unit
    }

    /// The greatest of effort, load on the bar, what is felt, and load that is left when bands go, as a share of what the
    /// lifter has.
    #[must_use]
    pub fn heaviest_share(&self, picked: &Picked) -> f64 {
        let felt = picked.loaded.loads.map(|load| self.safety.share_of(load));
        let hardest = self.hardest(picked).max(self.share_that_may_lie(picked));
        felt.into_iter().fold(hardest, f64::max)
    }

    /// The most that may come to lie on the lifter, as a share of the 1RM: the load on the bar, or what is left of it when
    /// bands from above go.
    #[must_use]
    pub fn share_that_may_lie(&self, picked: &Picked) -> f64 {
        let total = picked.loaded.loading.total + self.safety.body;
        picked
            .share_left(&self.safety)
            .max(self.safety.share_of(total))
    }

    /// Mass of plain weight at the same hardest effort.
    #[must_use]
    pub fn plain_mass(&self) -> Option<Mass> {
        self.plain.as_ref().map(|plain| plain.loaded.loading.total)
    }
}
