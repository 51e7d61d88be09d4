//! A session that finds a maximum: a ramp of ever heavier sets, then attempts by feel.
//!
//! In: the lift with a maximum that a model expects, what can be loaded, how long somebody has trained. Out: a
//! [`MaximumTest`]: steps with loads where these are known beforehand, blanks where they are not, cautions, spotters.

use super::method::Method;
use super::planned_set::REPETITION_S;
use super::session_cautions::{Circumstances, that_apply};
use super::spotting::{Spotting, spotting};
use super::status::{AgeCare, Level, Trainee};
use super::strength::PlannedLift;
use crate::error::{Error, Result, SessionRefusal};
use crate::setups::{Caution, Loading, Loadings};
use crate::units::{Duration, Mass};

/// What is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TestedMaximum {
    /// The heaviest single.
    OneRm,
    /// The heaviest set of five that leaves one or two repetitions, from which equations give the 1RM.
    FiveInReserve,
}

impl TestedMaximum {
    /// What is found with this person: a single with who has learnt the lift and needs no clinician's yes for heavy sets.
    ///
    /// **Source.** No maximal singles for novices: common practice. The age is that of the caution.
    #[must_use]
    pub fn of(trainee: &Trainee) -> Self {
        if trainee.level() == Level::Novice || trainee.age_care() != AgeCare::None {
            Self::FiveInReserve
        } else {
            Self::OneRm
        }
    }
}

/// A set of the ramp.
#[derive(Debug, Clone, PartialEq)]
pub struct TestStep {
    /// The load; none where it follows from the set before.
    pub load: Option<Loading>,
    /// Its share of the maximum that is expected.
    pub share: Option<f64>,
    /// Repetitions.
    pub repetitions: u32,
    /// Rest behind it.
    pub rest: Duration,
}

/// Of whom the maximum is that the ramp is made for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Expected {
    /// Of somebody of this sex and size who has not trained.
    Untrained,
    /// Of somebody who has trained so long, with so many other lifts that are known.
    OfPerson {
        /// How many.
        lifts: usize,
        /// Lower end of the interval that holds four in five, as a share of what is expected.
        low: f64,
        /// Its upper end.
        high: f64,
    },
}

impl Expected {
    /// Share of what is expected that the ramp is made for: the lower end, where it is known.
    #[must_use]
    pub const fn ramp_share(self) -> f64 {
        match self {
            Self::Untrained => EXPECTED_SHARE,
            Self::OfPerson { low, .. } => low,
        }
    }

    /// Share of what is expected that the attempts reach: the upper end, where it is known, else as much above as the ramp is
    /// below.
    #[must_use]
    pub const fn reached_share(self) -> f64 {
        match self {
            Self::Untrained => 1.0 / EXPECTED_SHARE,
            Self::OfPerson { high, .. } => high,
        }
    }
}

/// A session that finds a maximum.
#[derive(Debug, Clone, PartialEq)]
pub struct MaximumTest {
    /// The lift; its 1RM is what the model expects.
    pub lift: PlannedLift,
    /// Of whom the maximum is that is expected.
    pub expected: Expected,
    /// What is found.
    pub finds: TestedMaximum,
    /// The load of the first attempt.
    pub first: Option<Loading>,
    /// Sets that warm up, in order.
    pub ramp: Vec<TestStep>,
    /// Attempts, at most.
    pub attempts: u32,
    /// Least and most by which the next attempt is heavier, as shares.
    pub step: (f64, f64),
    /// What the attempts reach by the largest steps, at least.
    pub reaches: Mass,
    /// Repetitions of an attempt.
    pub attempt_repetitions: u32,
    /// Rest between attempts.
    pub attempt_rest: Duration,
    /// The cautions, the disclaimer first.
    pub cautions: Vec<Caution>,
    /// Spotters, where they belong.
    pub spotting: Option<Spotting>,
}

impl MaximumTest {
    /// Time from the first repetition to the last, rests included.
    #[must_use]
    pub fn time(&self) -> Duration {
        let attempt_s =
            f64::from(self.attempt_repetitions) * REPETITION_S + self.attempt_rest.as_s();
        let ramp = self.ramp.iter();
        let ramp_s = ramp.map(|step| f64::from(step.repetitions) * REPETITION_S + step.rest.as_s());
        Duration::from_s(ramp_s.sum::<f64>() + f64::from(self.attempts) * attempt_s)
    }
}

/// Share of what the model expects that the ramp is of, where nothing is known of its interval: it may expect a quarter too
/// much (assumed).
pub const EXPECTED_SHARE: f64 = 0.8;

/// Share, repetitions and rest in minutes of each set before the attempts of a single.
///
/// **Source.** Common practice, as in Haff & Triplett 2016, Essentials of Strength Training and Conditioning, ch. 18
/// (from memory): light 5 to 10, then 3 to 5, then 2 to 3, each 5 to 20 % more, 1, 2 and 2 to 4 minutes of rest; the
/// single is found in three to five attempts.
const SINGLE: [(f64, u32, f64); 4] = [
    (0.45, 8, 1.0),
    (0.65, 5, 2.0),
    (0.80, 3, 3.0),
    (0.90, 1, 3.0),
];

/// The same before attempts of five.
const FIVE: [(f64, u32, f64); 3] = [(0.40, 8, 1.0), (0.55, 5, 2.0), (0.65, 5, 2.0)];

/// Share of the ramp's maximum at which the first attempt of five is made (common practice: the next step of the ramp).
const FIRST_OF_FIVE: f64 = 0.75;

/// Fewest attempts that are kept for a maximum that is near (as in [`SINGLE`]'s source: three to five).
const ATTEMPTS: u32 = 5;
const ATTEMPTS_OF_FIVE: u32 = 3;

/// Steps from attempt to attempt, least and most: the least while it is slow, up to the most while it goes as fast as a
/// warm-up (common practice: 5 to 10 % for the upper and 10 to 20 % for the lower body, as in [`SINGLE`]'s source).
const USUAL_STEP: (f64, f64) = (0.05, 0.10);
/// The most where the usual one does not reach what may be (the same, of the lower body).
const LARGEST_STEP: f64 = 0.20;

/// Share of the 1RM of a set of five that leaves two (by the chart: seven repetitions to failure).
const FIVE_WITH_TWO_LEFT: f64 = 0.83;

/// Largest step and number of attempts that lead from the first to the last by such steps: the usual ones where these do.
fn attempts_for(ratio: f64, usual: u32) -> (f64, u32) {
    let needed = ratio.max(1.0).powf(1.0 / f64::from(usual - 1)) - 1.0;
    let most = needed.clamp(USUAL_STEP.1, LARGEST_STEP);
    let steps = (ratio.max(1.0).ln() / most.ln_1p() - 1.0e-9).ceil() as u32;
    (most, usual.max(steps + 1))
}

/// The test of a lift for whoever has trained so long: a single or a set of five, by [`TestedMaximum::of`].
///
/// **Fails** for whoever is injured, ill, unusually sore or just back from a break, and where the lightest load is heavier
/// than the first attempt.
pub fn maximum_test(
    lift: &PlannedLift,
    loading: &Loadings,
    expected: Expected,
) -> Result<MaximumTest> {
    if lift.trainee.injured {
        return Err(Error::no_answer(SessionRefusal::Injured));
    }
    if lift.trainee.unwell_or_sore {
        return Err(Error::no_answer(SessionRefusal::UnwellTest));
    }
    let finds = TestedMaximum::of(&lift.trainee);
    let circumstances = Circumstances {
        handling: &lift.handling,
        method: Method::Straight,
        heaviest_share: 1.0,
        heaviest: lift.one_rm,
        felt_share: 0.0,
        with_bar: loading.is_bar,
        off_arms: false,
    };
    let (ramp, usual, attempt_repetitions): (&[_], _, _) = match finds {
        TestedMaximum::OneRm => (&SINGLE, ATTEMPTS, 1),
        TestedMaximum::FiveInReserve => (&FIVE, ATTEMPTS_OF_FIVE, 5),
    };
    let mut steps: Vec<TestStep> = ramp
        .iter()
        .map(|&(share, repetitions, rest_min)| {
            let share = expected.ramp_share() * share;
            let wanted = lift.strength().load_at(share);
            let load = load_at(loading, wanted);
            TestStep {
                share: load
                    .as_ref()
                    .map(|load| lift.strength().share_of(load.total)),
                load,
                repetitions,
                rest: Duration::from_min(rest_min),
            }
        })
        .collect();
    let (first_share, last_share) = match finds {
        TestedMaximum::OneRm => (1.0, 1.0),
        TestedMaximum::FiveInReserve => (FIRST_OF_FIVE, FIVE_WITH_TWO_LEFT),
    };
    let reaches = lift
        .strength()
        .load_at(expected.reached_share() * last_share);
    let first = lift.strength().load_at(expected.ramp_share() * first_share);
    let lightest = loading.lightest();
    if lightest > first {
        return Err(Error::no_answer(SessionRefusal::TestTooHeavy {
            lightest,
            first,
        }));
    }
    let first = load_at(loading, first);
    let begun = first.as_ref().map_or(Mass::ZERO, |load| load.total) + lift.body;
    let ratio = (reaches + lift.body).as_kg() / begun.as_kg().max(f64::MIN_POSITIVE);
    let (most, attempts) = attempts_for(ratio, usual);
    steps.splice(..0, empty_bar(lift, loading, &steps));
    // Where the lightest load is heavy already, sets that would repeat it are left out.
    steps.dedup_by(|next, before| next.load == before.load);
    Ok(MaximumTest {
        lift: lift.clone(),
        expected,
        first,
        finds,
        ramp: steps,
        attempts,
        step: (USUAL_STEP.0, most),
        reaches,
        attempt_repetitions,
        attempt_rest: Duration::from_min(3.0),
        cautions: that_apply(&circumstances, lift, false),
        spotting: spotting(&circumstances),
    })
}

/// The empty bar as the first set, where the ramp begins with more (common practice); its rest is that of a light set.
fn empty_bar(lift: &PlannedLift, loading: &Loadings, steps: &[TestStep]) -> Option<TestStep> {
    let empty = loading.all().first().filter(|_| loading.is_bar)?;
    let next = steps.first()?;
    let is_lighter = next.load.as_ref()?.total > empty.total;
    is_lighter.then(|| TestStep {
        load: Some(empty.clone()),
        share: Some(lift.strength().share_of(empty.total)),
        ..next.clone()
    })
}

/// The heaviest load that is no heavier, else the lightest there is.
fn load_at(loading: &Loadings, wanted: Mass) -> Option<Loading> {
    let below = loading.at_most(wanted).ok();
    below.or_else(|| loading.all().first().cloned())
}
