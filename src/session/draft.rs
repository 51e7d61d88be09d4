//! A planned session as plain data: sets, rests, predictions, remarks, and the cautions that go with it.
//!
//! In: what a scheme computed. Out: a [`SessionPlan`] for table, sheet, figure, CSV and JSON. Cautions are put
//! in by the only constructor and cannot be left out.

use super::accommodating_setup::AccommodatingSetup;
use super::method::Method;
use super::planned_set::{PlannedSet, REPETITION_S, SetKind};
use super::prediction::{FatigueSample, SetPrediction};
use super::remark::{Frequency, PlanBasis, Progression, Remark};
use super::session_cautions::{Circumstances, that_apply};
use super::spotting::{Spotting, spotting};
use super::strength::PlannedLift;
use crate::setups::Caution;
use crate::source::Source;
use crate::units::{Duration, Mass};

/// What a prediction is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Predicted {
    /// The sets as a method does them.
    By(Method),
    /// The same sets with plain weight of the same hardest effort.
    PlainWeight,
}

/// Predicted sets, with the joints' fatigue over the whole of it.
#[derive(Debug, Clone, PartialEq)]
pub struct SessionPrediction {
    /// What it is of.
    pub of: Predicted,
    /// The sets in order.
    pub sets: Vec<SetPrediction>,
    /// The joints' shares over time.
    pub fatigue: Vec<FatigueSample>,
}

impl SessionPrediction {
    /// Repetitions that reach lockout, over all sets.
    #[must_use]
    pub fn completed(&self) -> u32 {
        self.sets.iter().map(SetPrediction::completed).sum()
    }

    /// Repetitions that were asked for, over all sets.
    #[must_use]
    pub fn asked(&self) -> u32 {
        self.sets.iter().flat_map(|set| &set.groups).sum()
    }

    /// The first repetition that stalls, counted through the session.
    #[must_use]
    pub fn stall(&self) -> Option<u32> {
        let mut before = 0;
        for set in &self.sets {
            if let Some(number) = set.stalls_at() {
                return Some(before + number);
            }
            before += set.groups.iter().sum::<u32>();
        }
        None
    }

    /// Share of the fastest repetition's velocity that the slowest keeps.
    #[must_use]
    pub fn kept_share(&self) -> f64 {
        let repetitions = self.sets.iter().flat_map(|set| &set.repetitions);
        let velocities = repetitions.map(|rep| rep.mean_velocity.as_m_s());
        let fastest = velocities.clone().fold(0.0, f64::max);
        velocities.fold(fastest, f64::min) / fastest.max(1e-9)
    }

    /// Mean velocity over all repetitions that were asked for, m/s; undone ones count as 0.
    #[must_use]
    pub fn mean_velocity_m_s(&self) -> f64 {
        let asked = |set: &SetPrediction| f64::from(set.groups.iter().sum::<u32>());
        let total: f64 = self.sets.iter().map(asked).sum();
        let sum: f64 = self
            .sets
            .iter()
            .map(|set| set.mean_velocity().as_m_s() * asked(set))
            .sum();
        if total > 0.0 { sum / total } else { 0.0 }
    }
}

/// One lowering of more than 1RM, as simulated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoweringPrediction {
    /// Number of the set, from 1.
    pub set: u32,
    /// Number of the repetition in it, from 1.
    pub number: u32,
    /// Load over what could still be lowered under control at its end; below 1 it is controlled.
    pub effort: f64,
    /// `1 − effort`.
    pub reserve: f64,
    /// Mean speed of the lowering, m/s, when the travel is known.
    pub speed_m_s: Option<f64>,
}

/// What a scheme hands over to make a plan of.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// The lift: movement, who trains, the 1RM that loads are shares of.
    pub lift: PlannedLift,
    /// The method that is planned.
    pub method: Method,
    /// Whether a bar is used.
    pub with_bar: bool,
    /// The sets in order, warm-ups first.
    pub sets: Vec<PlannedSet>,
    /// How often a week.
    pub frequency: Frequency,
    /// How to go on from session to session.
    pub progression: Progression,
    /// The band or chain setup of the working sets.
    pub setup: Option<AccommodatingSetup>,
    /// Predicted sets.
    pub predictions: Vec<SessionPrediction>,
    /// Simulated lowerings.
    pub lowerings: Vec<LoweringPrediction>,
    /// What the lifter or coach must know: reasons, disagreements, limits.
    pub remarks: Vec<Remark>,
    /// What the numbers rest on.
    pub sources: Vec<(PlanBasis, Source)>,
}

/// The hardest that a draft may become: by load, by effort, by what is left when bands go.
pub(super) fn heaviest_share(draft: &Draft) -> f64 {
    let sets = draft.sets.iter();
    let sets = sets
        .map(|set| set.share.max(set.hardness()))
        .fold(0.0, f64::max);
    let failure = draft.setup.as_ref().and_then(|setup| setup.failure);
    let left = failure.filter(|failure| failure.grows);
    let whole = draft.lift.one_rm + draft.lift.body;
    let left = left.map_or(0.0, |left| {
        left.after_all.as_kg() / whole.as_kg().max(1.0e-9)
    });
    sets.max(left)
}

/// The most that spotters may have to take, as a share of the 1RM: the hardest, the heaviest that is felt on the way, and
/// all that the lifter has where a set goes to failure.
fn share_for_spotters(draft: &Draft) -> f64 {
    let fails = draft.sets.iter().any(PlannedSet::is_to_failure);
    let all = if fails { 1.0 } else { 0.0 };
    heaviest_share(draft).max(felt_share(draft)).max(all)
}

/// The most that a setup makes of the load on the way, as a share of the 1RM; 0 without one.
fn felt_share(draft: &Draft) -> f64 {
    draft.setup.as_ref().map_or(0.0, |setup| {
        let felt = [setup.bottom, setup.middle, setup.top];
        let whole = draft.lift.one_rm + draft.lift.body;
        felt.map(|felt| felt.as_kg() / whole.as_kg().max(1.0e-9))
            .into_iter()
            .fold(0.0, f64::max)
    })
}

/// The heaviest load of all sets, what a setup makes of it on the way and what is left when bands go.
fn heaviest_load(draft: &Draft) -> Mass {
    let loads = draft.sets.iter().map(|set| set.load.total);
    let setup = draft.setup.iter();
    let felt = setup.flat_map(|setup| {
        let left = setup
            .failure
            .map_or(Mass::ZERO, |failure| failure.after_all);
        [setup.bottom, setup.middle, setup.top, left]
    });
    loads.chain(felt).fold(Mass::ZERO, Mass::max)
}

/// A planned session.
#[derive(Debug, Clone, PartialEq)]
pub struct SessionPlan {
    /// What is planned.
    pub draft: Draft,
    cautions: Vec<Caution>,
    spotting: Option<Spotting>,
}

impl SessionPlan {
    /// Puts the cautions and the spotters to a draft; there is no other way to make a plan.
    #[must_use]
    pub fn new(draft: Draft) -> Self {
        let circumstances = Circumstances {
            handling: &draft.lift.handling,
            method: draft.method,
            heaviest_share: share_for_spotters(&draft),
            heaviest: heaviest_load(&draft),
            felt_share: felt_share(&draft),
            with_bar: draft.with_bar,
            off_arms: draft.sets.iter().any(PlannedSet::comes_off_arms),
        };
        Self {
            cautions: that_apply(&circumstances, &draft.lift, heaviest_share(&draft) > 1.0),
            spotting: spotting(&circumstances),
            draft,
        }
    }

    /// The cautions, the disclaimer first; never empty.
    #[must_use]
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }

    /// Spotters and their words, where spotters belong.
    #[must_use]
    pub fn spotting(&self) -> Option<&Spotting> {
        self.spotting.as_ref()
    }

    /// The sets that train.
    pub fn working_sets(&self) -> impl Iterator<Item = &PlannedSet> {
        self.draft
            .sets
            .iter()
            .filter(|set| set.kind == SetKind::Work)
    }

    /// Load times repetitions of the working sets, kg; body mass that is lifted counts.
    #[must_use]
    pub fn volume_kg(&self) -> f64 {
        self.working_sets()
            .map(|set| {
                (set.load.total + self.draft.lift.body).as_kg() * f64::from(set.repetitions())
            })
            .sum()
    }

    /// Time from the first repetition to the last, rests included.
    #[must_use]
    pub fn time(&self) -> Duration {
        let set_s = |set: &PlannedSet| {
            let within = set.rest_within.as_s() * (set.groups.len().saturating_sub(1)) as f64;
            f64::from(set.repetitions()) * REPETITION_S + within + set.rest_after.as_s()
        };
        Duration::from_s(self.draft.sets.iter().map(set_s).sum())
    }
}
