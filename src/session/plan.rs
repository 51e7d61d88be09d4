//! A planned session as plain data: sets, rests, predictions, remarks, and the cautions that go with it.
//!
//! In: what a scheme computed. Out: a [`Plan`] for table, sheet, figure, CSV and JSON. Cautions are put in
//! by the only constructor and cannot be left out.

use super::cautions::{Caution, Circumstances, Spotting, spotting, that_apply};
use super::method::Method;
use super::prediction::{FatigueSample, SetPrediction};
use super::status::Level;
use super::warm_up::{WarmUpSet, ladder};
use crate::error::Result;
use crate::progress::origin::Origin;
use crate::setups::{Loading, Loadings};
use crate::units::{Duration, Mass};

/// What shares of 1RM are of: the load alone, or the load and the body that hangs or stands on it.
///
/// ```text
/// share = (load + body) / (1RM + body)
/// ```
/// **Shape.** Rises with the load; 1 at the 1RM. **Source.** A pull-up is planned by what hangs from the
/// hands, body included (common practice); everywhere else `body` is zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strength {
    /// The 1RM, body apart.
    pub one_rm: Mass,
    /// Body mass that is part of the load.
    pub body: Mass,
}

impl Strength {
    /// A 1RM of a load that holds no body mass.
    #[must_use]
    pub const fn of_load(one_rm: Mass) -> Self {
        Self {
            one_rm,
            body: Mass::ZERO,
        }
    }

    /// A load as a share of the 1RM.
    #[must_use]
    pub fn share_of(&self, load: Mass) -> f64 {
        (load + self.body).as_kg() / (self.one_rm + self.body).as_kg()
    }

    /// The load at a share of the 1RM; none at all where the body alone is more.
    #[must_use]
    pub fn load_at(&self, share: f64) -> Mass {
        let whole_kg = share * (self.one_rm + self.body).as_kg();
        Mass::from_kg((whole_kg - self.body.as_kg()).max(0.0))
    }
}

/// Whether a set prepares or trains.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SetKind {
    /// A lighter set that prepares.
    WarmUp,
    /// A set of the training itself.
    Work,
}

/// Who raises the load, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lifting {
    /// The lifter, as fast as the load allows.
    AsFastAsPossible,
    /// The lifter, in 1 to 2 s.
    Controlled,
    /// The spotters.
    BySpotters,
}

/// How a repetition is done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tempo {
    /// Time of the lowering.
    pub lowering: Duration,
    /// Pause between lowering and lifting.
    pub pause: Duration,
    /// The lifting.
    pub lifting: Lifting,
}

impl Tempo {
    /// Lowering in 2 s, lifting as fast as the load allows (ACSM 2009: 1 to 2 s each way).
    pub const STRENGTH: Self = Self {
        lowering: Duration::from_s(2.0),
        pause: Duration::ZERO,
        lifting: Lifting::AsFastAsPossible,
    };
    /// Lowering and lifting in 1 to 2 s, for learning.
    pub const CONTROLLED: Self = Self {
        lowering: Duration::from_s(2.0),
        pause: Duration::ZERO,
        lifting: Lifting::Controlled,
    };
}

/// Repetitions to failure that a set would allow, by two ways of knowing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Allowed {
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
    /// How hard: the load as a share of 1RM; with bands or chains, the largest effort of one repetition.
    pub share: f64,
    /// Repetitions of each group; one group for a set without rests inside.
    pub groups: Vec<u32>,
    /// Rest between groups.
    pub rest_within: Duration,
    /// Rest after the set.
    pub rest_after: Duration,
    /// How a repetition is done.
    pub tempo: Tempo,
    /// What the set is for, in a few words.
    pub intent: String,
    /// What would be possible, if compared.
    pub allowed: Option<Allowed>,
    /// What to know about it.
    pub notes: Vec<String>,
}

impl PlannedSet {
    /// A working set without rests inside.
    #[must_use]
    pub fn work(
        load: Loading,
        strength: &Strength,
        repetitions: u32,
        rest_after: Duration,
        tempo: Tempo,
        intent: &str,
    ) -> Self {
        let share = strength.share_of(load.total);
        Self {
            kind: SetKind::Work,
            load,
            share,
            groups: vec![repetitions],
            rest_within: Duration::ZERO,
            rest_after,
            tempo,
            intent: intent.to_owned(),
            allowed: None,
            notes: Vec::new(),
        }
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

    /// "2 + 2 + 2", or "5".
    #[must_use]
    pub fn repetitions_in_words(&self) -> String {
        self.groups
            .iter()
            .map(u32::to_string)
            .collect::<Vec<_>>()
            .join(" + ")
    }

    fn warm_up(set: WarmUpSet, strength: &Strength) -> Self {
        let mut planned = Self::work(
            set.load,
            strength,
            set.repetitions,
            set.rest,
            Tempo::CONTROLLED,
            "warm up, easy and crisp",
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
    Ok(ladder(working, loading, strength.body)?
        .into_iter()
        .map(|set| PlannedSet::warm_up(set, strength))
        .collect())
}

/// Predicted sets under one name, with the joints' fatigue over the whole of it.
#[derive(Debug, Clone, PartialEq)]
pub struct NamedPrediction {
    /// What it is: "straight", "clusters", "pyramid".
    pub name: String,
    /// The sets in order.
    pub sets: Vec<SetPrediction>,
    /// The joints' shares over time.
    pub fatigue: Vec<FatigueSample>,
}

impl NamedPrediction {
    /// Repetitions that reach lockout, over all sets.
    #[must_use]
    pub fn completed(&self) -> u32 {
        self.sets.iter().map(SetPrediction::completed).sum()
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
    /// The same against what the simulation can lower under control, where that is known.
    pub simulated_effort: Option<f64>,
    /// Mean speed of the lowering, m/s, when the travel is known.
    pub speed_m_s: Option<f64>,
}

/// What a scheme hands over to make a plan of.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// Name of the movement.
    pub movement: String,
    /// The method that is planned.
    pub method: Method,
    /// The lifter's training status.
    pub level: Level,
    /// The 1RM that the loads are shares of.
    pub one_rm: Mass,
    /// Where the 1RM comes from, in words.
    pub one_rm_from: String,
    /// Body mass that is part of the load.
    pub body: Mass,
    /// Whether a bar is used.
    pub with_bar: bool,
    /// The sets in order, warm-ups first.
    pub sets: Vec<PlannedSet>,
    /// How often a week, in words.
    pub frequency: String,
    /// How to go on from session to session, in words.
    pub progression: String,
    /// The band or chain setup in words, one part a line.
    pub setup: Vec<String>,
    /// Predicted sets.
    pub predictions: Vec<NamedPrediction>,
    /// Simulated lowerings.
    pub lowerings: Vec<LoweringPrediction>,
    /// What the lifter or coach must know: reasons, disagreements, limits.
    pub remarks: Vec<String>,
    /// What the numbers rest on.
    pub sources: Vec<(String, Origin)>,
}

/// A planned session.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// What is planned.
    pub draft: Draft,
    cautions: Vec<&'static Caution>,
    spotting: Option<Spotting>,
}

impl Plan {
    /// Puts the cautions and the spotters to a draft; there is no other way to make a plan.
    #[must_use]
    pub fn new(draft: Draft) -> Self {
        let heaviest_share = draft.sets.iter().map(|set| set.share).fold(0.0, f64::max);
        let circumstances = Circumstances {
            movement: &draft.movement,
            method: draft.method,
            heaviest_share,
            with_bar: draft.with_bar,
        };
        let (cautions, spotting) = (that_apply(&circumstances), spotting(&circumstances));
        Self {
            draft,
            cautions,
            spotting,
        }
    }

    /// The cautions, the disclaimer first; never empty.
    #[must_use]
    pub fn cautions(&self) -> &[&'static Caution] {
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
            .map(|set| (set.load.total + self.draft.body).as_kg() * f64::from(set.repetitions()))
            .sum()
    }

    /// Time from the first repetition to the last, rests included; a repetition counts 4 s (assumed).
    #[must_use]
    pub fn time(&self) -> Duration {
        let set_s = |set: &PlannedSet| {
            let within = set.rest_within.as_s() * (set.groups.len().saturating_sub(1)) as f64;
            f64::from(set.repetitions()) * 4.0 + within + set.rest_after.as_s()
        };
        Duration::from_s(self.draft.sets.iter().map(set_s).sum())
    }
}
