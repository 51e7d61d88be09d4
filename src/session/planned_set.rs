//! One set of a session: load, groups of repetitions, rests, and what it is for.
//!
//! In: what a scheme computed. Out: [`PlannedSet`], plain data; the warm-up sets before a first working load.

use super::method::Method;
use super::strength::Strength;
use super::warm_up::{WarmUpSet, ladder};
use crate::error::Result;
use crate::movement::WayBack;
use crate::setups::{Loading, Loadings};
use crate::units::{Duration, Mass};

/// Time that a repetition counts in the length of a session, s (assumed: 2 s down, as long for the turn and the way up).
pub(super) const REPETITION_S: f64 = 4.0;

/// Whether a set prepares or trains.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SetKind {
    /// A lighter set that prepares.
    WarmUp,
    /// A set of the training itself.
    Work,
}

/// Time of a lowering that is lifted again (ACSM 2009: 1 to 2 s each way).
pub const LOWERING: Duration = Duration::from_s(2.0);

/// What a set is for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SetIntent {
    /// To warm up.
    WarmUp,
    /// To warm up on the way to a band or chain setup.
    EasyAndCrisp,
    /// To end with repetitions in reserve.
    InReserve,
    /// To build up to the top set, two in reserve.
    BuildUp,
    /// The top set, one in reserve.
    TopSet,
    /// To keep every repetition fast.
    EveryRepetitionFast,
    /// To drive through to lockout.
    DriveThrough,
    /// To lower slowly; the load comes back another way.
    LowerSlowly {
        /// Time of the lowering.
        time: Duration,
        /// How the load comes back up.
        back: WayBack,
    },
}

/// What to know about a set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SetNote {
    /// What is felt at the bottom, in the middle and at the top.
    Felt([Mass; 3]),
    /// A warm-up with the bands or chains on.
    PartsOn {
        /// Bands or chains.
        method: Method,
        /// What is felt at the bottom, in the middle and at the top.
        felt: [Mass; 3],
    },
    /// A warm-up without them.
    Without(Method),
    /// The set ends when a repetition loses this share of the fastest one's velocity.
    StopAtLoss(f64),
}

/// Repetitions to failure that a set would allow, by two ways of knowing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RepetitionsAllowed {
    /// By the published chart, for a rested lifter; `None` where the chart ends.
    pub by_chart: Option<f64>,
    /// By the fatigue model, tired by the sets before; `None` without a simulated repetition.
    pub by_model: Option<u32>,
}

/// One set.
#[derive(Debug, Clone, PartialEq)]
pub struct PlannedSet {
    /// Warm-up or work.
    pub kind: SetKind,
    /// The load, as it is set up.
    pub load: Loading,
    /// The plain load as a share of 1RM, whatever hangs beside it.
    pub share: f64,
    /// The largest effort of one repetition, where bands or chains make it another than the share.
    pub effort: Option<f64>,
    /// Repetitions that are kept in reserve.
    pub reserve: u32,
    /// Repetitions of each group; one group for a set without rests inside.
    pub groups: Vec<u32>,
    /// Rest between groups.
    pub rest_within: Duration,
    /// Rest after the set.
    pub rest_after: Duration,
    /// Time of the lowering of a repetition.
    pub lowering: Duration,
    /// What the set is for.
    pub intent: SetIntent,
    /// What would be possible, if compared.
    pub allowed: Option<RepetitionsAllowed>,
    /// What to know about it.
    pub notes: Vec<SetNote>,
}

impl PlannedSet {
    /// Whether the load stays on safety arms until plates are off.
    #[must_use]
    pub const fn comes_off_arms(&self) -> bool {
        matches!(
            self.intent,
            SetIntent::LowerSlowly {
                back: WayBack::OffArms,
                ..
            }
        )
    }

    /// A working set without rests inside.
    #[must_use]
    pub fn work(
        load: Loading,
        strength: &Strength,
        repetitions: u32,
        rest_after: Duration,
        intent: SetIntent,
    ) -> Self {
        let share = strength.share_of(load.total);
        Self {
            kind: SetKind::Work,
            load,
            share,
            effort: None,
            reserve: 0,
            groups: vec![repetitions],
            rest_within: Duration::ZERO,
            rest_after,
            lowering: LOWERING,
            intent,
            allowed: None,
            notes: Vec::new(),
        }
    }

    /// The same set with so many repetitions kept in reserve.
    #[must_use]
    pub const fn keeping(mut self, reserve: u32) -> Self {
        self.reserve = reserve;
        self
    }

    /// How hard one repetition is: the largest effort where that is known, else the share of 1RM.
    #[must_use]
    pub fn hardness(&self) -> f64 {
        self.effort.unwrap_or(self.share)
    }

    /// Whether no repetition is left at the end, by the chart or by the fatigue model.
    #[must_use]
    pub fn is_to_failure(&self) -> bool {
        let repetitions = f64::from(self.repetitions());
        let is_all = |allowed: RepetitionsAllowed| {
            let by_model = allowed.by_model.map(f64::from);
            let known = [by_model, allowed.by_chart].into_iter().flatten();
            known.map(f64::floor).any(|most| most <= repetitions)
        };
        let one_group = self.kind == SetKind::Work && self.groups.len() == 1;
        one_group && self.reserve == 0 && self.allowed.is_some_and(is_all)
    }

    /// The same set in groups with a rest between them.
    #[must_use]
    pub fn in_groups(mut self, groups: Vec<u32>, rest_within: Duration) -> Self {
        self.groups = groups;
        self.rest_within = rest_within;
        self
    }

    /// All repetitions of the set.
    #[must_use]
    pub fn repetitions(&self) -> u32 {
        self.groups.iter().sum()
    }

    fn warm_up(set: WarmUpSet, strength: &Strength) -> Self {
        let mut planned = Self::work(
            set.load,
            strength,
            set.repetitions,
            set.rest,
            SetIntent::WarmUp,
        );
        planned.kind = SetKind::WarmUp;
        planned
    }
}

/// The warm-up sets before a first working load, as planned sets.
///
/// **Fails** when the description of the gym makes no sense.
pub fn warm_up_sets(
    working: Mass,
    loading: &Loadings,
    strength: &Strength,
) -> Result<Vec<PlannedSet>> {
    Ok(ladder(working, loading, strength)?
        .into_iter()
        .map(|set| PlannedSet::warm_up(set, strength))
        .collect())
}
