//! What a session is planned from, and the empty draft that every scheme fills.
//!
//! In: the lift with its 1RM, a gym, a method, what was asked for. Out: [`SessionRequest`].

use super::accommodating_setup::AccommodatingSetup;
use super::draft::Draft;
use super::method::Method;
use super::oracle::RepOracle;
use super::published::{Finding, LevelGuidance, Published};
use super::remark::{Frequency, PlanBasis, Progression};
use super::repetitions::RepetitionChart;
use super::rests::checked_between_sets;
use super::status::Level;
use super::strength::{PlannedLift, Strength};
use crate::error::{Error, Result, SessionFigureFault};
use crate::setups::{ArmsStand, Loading, Loadings};
use crate::source::Source;
use crate::units::{Duration, Mass};

/// Share of 1RM up to which the lightest load of a gym is planned where the usual one cannot be loaded (assumed: some
/// four repetitions by the chart).
const LIGHTEST_SHARE: f64 = 0.90;

/// Share of the 1RM by which a load may miss the one that is meant before its neighbour above is looked at, and by which
/// that one may be more (assumed: two repetitions of the chart).
pub(super) const NEAR_SHARE: f64 = 0.05;

/// Everything a session is planned from.
pub struct SessionRequest<'a> {
    /// The lift: movement, who trains, the 1RM.
    pub lift: PlannedLift,
    /// The tables that it is planned by.
    pub published: &'a Published,
    /// What can be loaded.
    pub loading: &'a Loadings,
    /// The method.
    pub method: Method,
    /// What was asked for in place of the usual.
    pub wishes: SessionWishes,
    /// The band or chain setup, for bands and chains.
    pub setup: Option<&'a AccommodatingSetup>,
    /// Factor on loads that nobody asked for: below 1 where the simulation asked for less, and in a lift that nobody saw tested.
    pub ease: f64,
    /// What a block asks of a day in place of the usual; wishes come first.
    pub aim: Option<DayAim>,
    /// Whether it is only asked if the sets hold: no further repetition is predicted than they ask for with their reserve.
    pub only_if_it_holds: bool,
    /// Whether the gym is known to have no safety arms that stand right below the lift.
    pub without_arms: bool,
    /// Where the gym's safety arms stand below the lift, where that is known.
    pub arms: Option<ArmsStand>,
    /// The repetition; without it nothing is predicted.
    pub oracle: Option<&'a RepOracle<'a>>,
    /// The repetition with the band or chain setup on.
    pub setup_oracle: Option<&'a RepOracle<'a>>,
}

/// What is asked for in place of the usual.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SessionWishes {
    /// Load.
    pub load: Option<Mass>,
    /// Repetitions of a set.
    pub repetitions: Option<u32>,
    /// Number of sets.
    pub sets: Option<u32>,
    /// All repetitions of the session together, for clusters.
    pub total_repetitions: Option<u32>,
    /// Repetitions of a group, for clusters.
    pub group: Option<u32>,
    /// Rest inside a cluster set.
    pub rest_within: Option<Duration>,
    /// Rest between sets.
    pub rest_between: Option<Duration>,
    /// Repetitions kept in reserve.
    pub reserve: Option<u32>,
    /// Share of the fastest repetition's velocity at whose loss a set ends.
    pub velocity_loss: Option<f64>,
    /// Most working sets of the lift in a week.
    pub sets_a_week: Option<u32>,
}

/// Repetitions that a novice keeps in reserve whatever is asked for: sets to failure are not for who is still learning a
/// lift (common practice).
pub const NOVICE_RESERVE: u32 = 2;

/// What a block asks of a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DayAim {
    /// Load, share of 1RM.
    pub share: f64,
    /// Repetitions of a set.
    pub repetitions: u32,
    /// Repetitions kept in reserve.
    pub reserve: u32,
    /// Number of sets.
    pub sets: u32,
}

impl<'a> SessionRequest<'a> {
    /// A request for the usual session of a method.
    #[must_use]
    pub fn usual(
        published: &'a Published,
        lift: PlannedLift,
        method: Method,
        loading: &'a Loadings,
    ) -> Self {
        let ease = first_time(published, &lift);
        Self {
            lift,
            published,
            loading,
            method,
            wishes: SessionWishes::default(),
            setup: None,
            ease,
            aim: None,
            only_if_it_holds: false,
            without_arms: false,
            arms: None,
            oracle: None,
            setup_oracle: None,
        }
    }

    /// The same request with another method and none of the figures asked for.
    #[must_use]
    pub fn with_method(&self, method: Method) -> Self {
        Self {
            method,
            lift: self.lift.clone(),
            wishes: SessionWishes::default(),
            ..*self
        }
    }

    /// The request of straight sets as a day of a block asks for them.
    #[must_use]
    pub(super) fn straight(&self, aim: DayAim) -> Self {
        let mut straight = self.with_method(Method::Straight);
        straight.wishes.rest_between = self.wishes.rest_between;
        straight.wishes.velocity_loss = self.wishes.velocity_loss;
        straight.wishes.sets_a_week = self.wishes.sets_a_week;
        straight.aim = Some(aim);
        straight
    }

    /// The same request, asked only if its sets hold.
    #[must_use]
    pub(super) fn only_if_it_holds(&self) -> Self {
        Self {
            only_if_it_holds: true,
            lift: self.lift.clone(),
            ..*self
        }
    }

    /// What shares of 1RM are of.
    #[must_use]
    pub const fn strength(&self) -> Strength {
        self.lift.strength()
    }

    /// Training status.
    #[must_use]
    pub fn level(&self) -> Level {
        self.lift.level()
    }

    /// A draft without sets.
    #[must_use]
    pub fn draft(&self, method: Method, frequency: Frequency, progression: Progression) -> Draft {
        let table = &self.published.repetitions;
        let chart = (PlanBasis::RepetitionChart, table.chart.source.clone());
        let differences = table.differences_of(&self.lift.handling);
        let sources = [chart].into_iter().chain(differences.map(found)).collect();
        Draft {
            lift: self.lift.clone(),
            method,
            with_bar: self.loading.is_bar,
            sets: Vec::new(),
            frequency,
            progression,
            setup: None,
            predictions: Vec::new(),
            lowerings: Vec::new(),
            remarks: Vec::new(),
            sources,
        }
    }

    /// The load-repetition chart.
    ///
    /// **Fails** as [`RepetitionChart::through`] does.
    pub fn chart(&self) -> Result<RepetitionChart> {
        RepetitionChart::through(&self.published.repetitions.chart)
    }

    /// What guidance says for the training status.
    #[must_use]
    pub fn guidance(&self) -> &'a LevelGuidance {
        self.published
            .straight
            .guidance_for(self.level(), self.lift.one_joint)
    }

    /// Repetitions kept in reserve: as asked, as the block's day says, or as usual; a novice keeps at least
    /// [`NOVICE_RESERVE`].
    #[must_use]
    pub fn reserve(&self, usual: u32) -> u32 {
        let wished = self.wishes.reserve.unwrap_or(usual);
        let kept = self.aim.map_or(wished, |aim| aim.reserve);
        match self.level() {
            Level::Novice => kept.max(NOVICE_RESERVE),
            _ => kept,
        }
    }

    /// Sets: as asked, as the block's day says, or as usual; never more than a week allows.
    #[must_use]
    pub fn sets(&self, usual: u32) -> u32 {
        let aimed = self.aim.map_or(usual, |aim| aim.sets);
        let sets = self.wishes.sets.unwrap_or(aimed);
        sets.min(self.wishes.sets_a_week.unwrap_or(sets)).max(1)
    }

    /// The rest between sets at a share of 1RM: what was asked for, or the usual one.
    ///
    /// **Fails** on a rest that is none.
    pub fn rest_between(&self, share: f64) -> Result<Duration> {
        match self.wishes.rest_between {
            Some(rest) => checked_between_sets(rest),
            None if self.lift.one_joint => Ok(self.published.rests.of_one_joint(share)),
            None => Ok(self.published.rests.between_sets(self.level(), share)),
        }
    }

    /// The rest inside a cluster set: what was asked for, or the usual one.
    ///
    /// **Fails** on a rest that is none there.
    pub fn rest_within(&self) -> Result<Duration> {
        let usual = self.published.clusters.group.rest;
        self.published
            .rests
            .in_cluster(self.wishes.rest_within, usual)
    }

    /// What is loaded for a share of 1RM: the heaviest below it. Where nobody asked for a load and the steps are coarse,
    /// the next one above, if that is near and the one below is not; where nothing is that light, the lightest there is,
    /// if it leaves room for a few repetitions.
    ///
    /// **Fails** as [`Loadings::at_most`].
    pub fn loading_at(&self, share: f64) -> Result<Loading> {
        let lightest = self.loading.lightest();
        let is_light = self.strength().share_of(lightest) <= LIGHTEST_SHARE;
        let strength = self.strength();
        let (meant, near) = (
            strength.load_at(share),
            strength.load_at(share + NEAR_SHARE),
        );
        match self.loading.at_most(meant) {
            Ok(below)
                if self.wishes.load.is_none()
                    && strength.share_of(below.total) < share - NEAR_SHARE =>
            {
                Ok(self.loading.at_least(meant, near).unwrap_or(below))
            }
            Err(_) if self.wishes.load.is_none() && is_light && lightest.as_kg() > 0.0 => {
                self.loading.at_most(lightest)
            }
            found => found,
        }
    }

    /// The load asked for, as a share of 1RM; the usual one times what the simulation leaves of it.
    ///
    /// **Fails** above 1RM: that load cannot be lifted.
    pub fn liftable_share(&self, usual: f64) -> Result<f64> {
        let Some(load) = self.wishes.load else {
            return Ok(usual * self.ease);
        };
        let share = self.strength().share_of(load);
        if share > 1.0 {
            return Err(Error::no_answer(SessionFigureFault::AboveOneRm {
                load,
                share,
                one_rm: self.lift.one_rm,
            }));
        }
        if !(share.is_finite() && share > 0.0) {
            return Err(Error::bad(SessionFigureFault::NoLoad { load }));
        }
        Ok(share)
    }
}

/// What a trained lifter begins a lift with that nobody saw this lifter do: as a novice of it, the share of the usual load that makes it
/// a novice's share of the 1RM (common practice: a lift is learnt at loads of its own, whatever other lifts are trained with).
pub(super) fn first_time(published: &Published, lift: &PlannedLift) -> f64 {
    if lift.untested().is_none() {
        return 1.0;
    }
    let table = &published.straight;
    let share = |level: Level| table.guidance_for(level, lift.one_joint).share;
    (share(Level::Novice) / share(lift.level())).min(1.0)
}

/// A finding among what a plan rests on.
pub(super) fn found(finding: &Finding) -> (PlanBasis, Source) {
    let words = finding.finding.clone();
    (PlanBasis::Finding(words), finding.source.clone())
}
