//! What is asked of a gym, and the answer: setups with everything that a coach loads the bar from.
//!
//! In: a question, a gym, a wish. Out: [`PickQuestion`]; [`PickAnswer`], [`Picked`], [`Counts`]: plain data.

use super::advice::Advice;
use super::question::{Question, SetupStudy, Study};
use crate::movement::Catch;
use crate::resistance::{Anchor, Setup};
use crate::setups::{Allowed, Gym, Loading, Wish};
use crate::units::Mass;
use std::collections::BTreeMap;

/// What is asked.
#[derive(Debug)]
pub struct PickQuestion<'a> {
    /// Movement and lifter.
    pub question: &'a Question<'a>,
    /// What there is.
    pub gym: &'a Gym,
    /// What is wished.
    pub wish: Wish,
    /// What may be used.
    pub allowed: Allowed,
    /// How many setups to list.
    pub top: usize,
}

/// How much was searched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counts {
    /// Combinations of bands and chains.
    pub combinations: u64,
    /// Plain loads that the gym makes.
    pub loads: u64,
    /// Combinations that were judged one by one; the rest was ruled out with what they begin with.
    pub judged: u64,
    /// Combinations that fit.
    pub fitting: u64,
}

impl Counts {
    /// Setups that the gym can build: every combination with every load.
    #[must_use]
    pub fn buildable(&self) -> u64 {
        self.combinations.saturating_mul(self.loads)
    }
}

/// The answer.
#[derive(Debug, Clone, PartialEq)]
pub struct PickAnswer {
    /// Movement, lifter, capacity; its setups are plain weight and then the ranked ones.
    pub study: Study,
    /// What was wished.
    pub wish: Wish,
    /// Name of the gym.
    pub gym_title: String,
    /// Whether the gym is made up.
    pub gym_is_invented: bool,
    /// Plain weight at the same hardest effort, if the gym can load it.
    pub plain: Option<Picked>,
    /// The best, in order.
    pub ranked: Vec<Picked>,
    /// The non-dominated ones: none else is as even, as heavy and as simple.
    pub front: Vec<Picked>,
    /// How many non-dominated ones there are.
    pub front_size: usize,
    /// How much was searched.
    pub counts: Counts,
    /// What catches the load when it is lost.
    pub catch: Catch,
    /// What the gym calls its anchors.
    pub anchors: BTreeMap<String, Anchor>,
    /// Pieces that were left out and why.
    pub left_out: Vec<String>,
    /// What bands do to this lift, and what would help where they do not.
    pub advice: Advice,
}

/// A setup that the gym can build, with its figures.
#[derive(Debug, Clone, PartialEq)]
pub struct Picked {
    /// The setup as it is loaded.
    pub setup: Setup,
    /// The plain load: bar, collars, plates.
    pub loading: Loading,
    /// The plain load that would make the hardest place exactly the wished effort.
    pub exact_mass: Mass,
    /// Flattening against plain weight with that exact load, %: what setups are compared by.
    pub flattening_percent: f64,
    /// Load at start, middle and end of the range.
    pub loads: [Mass; 3],
    /// Lowest and highest load at the end when bands of one label differ as measured.
    pub end_range: [Mass; 2],
    /// Mean load over the range.
    pub mean_load: Mass,
    /// Share of bands and chains at start or end: of the load what they add, of the weight what they take.
    pub share: f64,
    /// Plates, bands and chains a side.
    pub pieces: u32,
    /// Bands and chains a side.
    pub hung: u32,
    /// What it is ranked by; smaller is better.
    pub score: f64,
    /// Demand, effort, sticking region, flattening as loaded.
    pub study: SetupStudy,
}

impl PickAnswer {
    /// The study with plain weight and the first `many` ranked setups, for a figure.
    #[must_use]
    pub fn of_first(&self, many: usize) -> Study {
        let mut study = self.study.clone();
        study
            .setups
            .truncate(usize::from(self.plain.is_some()) + many);
        study
    }

    /// Mass of plain weight at the same hardest effort.
    #[must_use]
    pub fn plain_mass(&self) -> Option<Mass> {
        self.plain.as_ref().map(|plain| plain.loading.total)
    }
}
