//! What a fitted person lifts in every movement, where each is hardest, and what to measure next.
//!
//! In: a fit. Out: [`LiftForecast`] a movement, [`NextTest`] a measurement that could be done.

use super::fit_draws::FitDraws;
use super::fit_ground::{FOUR_IN_FIVE, FitGround};
use super::person_lifts::PersonLift;
use super::person_spread::LiftSpread;
use crate::error::{FaultKind, Result};
use crate::library::Library;
use crate::movement::Measure;
use crate::numeric::{Belief, NormalDensity, NormalStream, quantile};
use crate::person::{measured_lift, narrowing};
use crate::units::Mass;
use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

/// People drawn from the belief before, whom the person is held beside.
const PEOPLE: u64 = 100;
/// The stream of numbers of these people begins here, apart from other draws of the same seed.
const FIRST_PERSON: u64 = 1 << 32;

/// What a person is expected to lift.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftForecast {
    /// Name of the movement.
    pub movement: String,
    /// What the movement is called.
    pub title: String,
    /// Whether one joint moves.
    pub one_joint: bool,
    /// The person's own mass where it is lifted with the load, kg.
    pub body_kg: f64,
    /// Maximum of the most probable lifter, the body with it, kg.
    pub total_kg: f64,
    /// What the middle of its plausible values lies above that, as a logarithm.
    pub above: f64,
    /// Deviation of its logarithm, the model's own error with it.
    pub deviation: f64,
    /// The maximum before anything was measured, and the deviation of its logarithm.
    pub before: (f64, f64),
    /// How many measurements of this lift there are.
    pub measured: usize,
    /// Where it is hardest.
    pub hardest: HardestPlace,
    /// What each version lifts beside the middle, as a logarithm; nothing of one that cannot keep a pose.
    pub(super) beside: Vec<f64>,
    /// Variance of the lift's own strength where nothing was measured of it.
    pub(super) own: f64,
}

/// Where a lift is hardest when it is held still.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HardestPlace {
    /// The place of the range, 0 to 1.
    pub range: f64,
    /// The interval that holds four in five, the model's own error with it.
    pub interval: (f64, f64),
    /// The whole way of the load, m, or of the joint, rad.
    pub way: f64,
    /// Force or torque: whether the way is of the load or of the joint.
    pub measure: Measure,
}

impl LiftForecast {
    /// The load of the maximum, the body apart, and the ends of the interval that holds four in five about it, kg.
    #[must_use]
    pub fn loads_kg(&self) -> [f64; 3] {
        let reach = FOUR_IN_FIVE * self.deviation;
        [
            self.total_kg * (self.above - reach).exp(),
            self.total_kg,
            self.total_kg * (self.above + reach).exp(),
        ]
        .map(|total| total - self.body_kg)
    }

    /// The ends of the interval before anything was measured, the body apart, kg.
    #[must_use]
    pub fn loads_before_kg(&self) -> [f64; 2] {
        let spread = (FOUR_IN_FIVE * self.before.1).exp();
        [self.before.0 / spread, self.before.0 * spread].map(|total| total - self.body_kg)
    }
}

/// A measurement that could be done.
#[derive(Debug, Clone, PartialEq)]
pub struct NextTest {
    /// Name of the movement in which a hard set would be done.
    pub movement: String,
    /// What the movement is called.
    pub title: String,
    /// Share by which the deviations of all maxima would shrink on average.
    pub narrowing: f64,
    /// Share by which that of the lift itself would.
    pub of_itself: f64,
}

/// Every lift of the library that the fitted person can do.
pub(super) fn forecasts(
    ground: &FitGround,
    mode: &DVector<f64>,
    draws: &FitDraws,
    seed: u64,
    library: &Library,
) -> Result<Vec<LiftForecast>> {
    let leading = ground.factors.shared();
    let of_people = NormalDensity::of(&ground.before.leading(leading));
    let people: Vec<DVector<f64>> = (0..PEOPLE)
        .map(|number| {
            let mut stream = NormalStream::new(seed, FIRST_PERSON + number);
            let noise = DVector::from_fn(leading, |_, _| stream.next());
            let mut values = ground.before.mean.clone();
            values.rows_mut(0, leading).copy_from(&of_people.at(&noise));
            values
        })
        .collect();
    let place_error = library.misses()?.of("sticking region");
    let of = |lift: &PersonLift| {
        let told = forecast(lift, ground, mode, (draws, &people), place_error);
        match told {
            Err(fault) if fault.kind() == FaultKind::NoAnswer => None,
            told => Some(told),
        }
    };
    ground.lifts.par_iter().filter_map(of).collect()
}

fn forecast(
    lift: &PersonLift,
    ground: &FitGround,
    mode: &DVector<f64>,
    (draws, people): (&FitDraws, &[DVector<f64>]),
    place_error: f64,
) -> Result<LiftForecast> {
    let spread = LiftSpread::of(lift, ground, mode, draws)?;
    let (middle, scatter) = spread.of_people(lift, ground, people);
    let measured = ground.data.iter();
    let measured = measured.filter(|datum| datum.movement() == lift.movement && datum.is_lift());
    let total = spread.log_total.exp();
    Ok(LiftForecast {
        movement: lift.movement.clone(),
        title: lift.model.movement.title.clone(),
        one_joint: lift.model.movement.moves_one_joint(),
        body_kg: lift.body.as_kg(),
        total_kg: total,
        above: spread.above,
        deviation: spread.deviation,
        before: (total * middle.exp(), scatter),
        measured: measured.count(),
        hardest: hardest(lift, &spread, place_error)?,
        own: spread.own,
        beside: spread.beside,
    })
}

/// Where it is hardest, over the versions; the model's own error widens the interval by its factor.
fn hardest(lift: &PersonLift, spread: &LiftSpread, place_error: f64) -> Result<HardestPlace> {
    let end = |share: f64| quantile(&spread.places, share).unwrap_or(spread.range);
    let wider = (FOUR_IN_FIVE * place_error).exp();
    let (way, measure) = lift.way()?;
    Ok(HardestPlace {
        range: spread.range,
        interval: (end(0.1) / wider, (end(0.9) * wider).min(1.0)),
        way,
        measure,
    })
}

/// Repetitions of the hard set that is offered as the next measurement: 5 to 8 are done anyway, a maximum is not.
const TEST_SET: u32 = 6;

/// Hard sets that could be done, the most telling first, in lifts of several joints: in those of one nobody is tested.
pub(super) fn next_tests(lifts: &[LiftForecast], library: &Library) -> Result<Vec<NextTest>> {
    let table = library.person_table()?;
    let equations = &library.published()?.estimates.repetitions;
    let error = |lift: &LiftForecast| {
        let set = (TEST_SET, None);
        let measured = measured_lift(&table, equations, Mass::from_kg(lift.total_kg), set);
        measured.map_or(table.one_rm.deviation.powi(2), |measured| measured.variance)
    };
    let belief = of_maxima(lifts);
    let unit = |place: usize| DVector::from_fn(lifts.len(), |k, _| f64::from(u8::from(k == place)));
    let wanted: Vec<DVector<f64>> = (0..lifts.len()).map(unit).collect();
    let each = lifts.iter().zip(&wanted);
    let mut tests: Vec<NextTest> = each
        .filter(|(lift, _)| !lift.one_joint)
        .map(|(lift, alone)| NextTest {
            movement: lift.movement.clone(),
            title: lift.title.clone(),
            narrowing: narrowing(&belief, &wanted, alone, error(lift)),
            of_itself: narrowing(&belief, std::slice::from_ref(alone), alone, error(lift)),
        })
        .collect();
    tests.sort_by(|a, b| b.narrowing.total_cmp(&a.narrowing));
    Ok(tests)
}

/// How the logarithms of all maxima scatter together over the versions.
fn of_maxima(lifts: &[LiftForecast]) -> Belief {
    let covariance = DMatrix::from_fn(lifts.len(), lifts.len(), |a, b| {
        let pairs = lifts[a].beside.iter().zip(&lifts[b].beside);
        let sum: f64 = pairs.map(|(a, b)| a * b).sum();
        let shared = sum / (lifts[a].beside.len().max(2) - 1) as f64;
        if a == b {
            shared + lifts[a].own
        } else {
            shared
        }
    });
    Belief {
        mean: DVector::zeros(lifts.len()),
        covariance,
    }
}
