//! What a fitted person lifts in every movement, where each is hardest, and what to measure next.
//!
//! In: a fit. Out: [`LiftForecast`] a movement, [`NextTest`] a measurement that could be done.

use super::fit_ground::{FOUR_IN_FIVE, FitGround, Found};
use super::person_lifts::PersonLift;
use crate::error::{FaultKind, Result};
use crate::library::Library;
use crate::movement::Measure;
use crate::numeric::{Belief, quantile};
use crate::person::narrowing;
use nalgebra::DVector;
use rayon::prelude::*;

/// Plausible versions of the lifter whose hardest places are looked at.
const VERSIONS: u64 = 40;
/// The stream of numbers of the versions begins here, apart from other draws of the same seed.
const FIRST_VERSION: u64 = 1 << 32;

/// What a person is expected to lift.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftForecast {
    /// Name of the movement.
    pub movement: String,
    /// What the movement is called.
    pub title: String,
    /// The person's own mass where it is lifted with the load, kg.
    pub body_kg: f64,
    /// Most probable maximum, the body with it, kg.
    pub total_kg: f64,
    /// Deviation of its logarithm, the model's own error with it.
    pub deviation: f64,
    /// The maximum before anything was measured, and the deviation of its logarithm.
    pub before: (f64, f64),
    /// How many measurements of this lift there are.
    pub measured: usize,
    /// Where it is hardest.
    pub hardest: HardestPlace,
    /// How the logarithm of the maximum follows the factors.
    pub(super) slopes: DVector<f64>,
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
    /// The load of the maximum, the body apart, and the ends of the interval that holds four in five, kg.
    #[must_use]
    pub fn loads_kg(&self) -> [f64; 3] {
        let spread = (FOUR_IN_FIVE * self.deviation).exp();
        [
            self.total_kg / spread,
            self.total_kg,
            self.total_kg * spread,
        ]
        .map(|total| total - self.body_kg)
    }
}

impl LiftForecast {
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
    /// Name of the movement whose maximum would be tried.
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
    found: &Found,
    seed: u64,
    library: &Library,
) -> Result<Vec<LiftForecast>> {
    let root = found.belief.root();
    let versions: Vec<DVector<f64>> = (0..VERSIONS)
        .map(|number| found.belief.draw(&root, seed, FIRST_VERSION + number))
        .collect();
    let place_error = library.misses()?.of("sticking region");
    let of = |lift: &PersonLift| {
        let told = forecast(lift, ground, found, (&versions, place_error));
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
    found: &Found,
    (versions, place_error): (&[DVector<f64>], f64),
) -> Result<LiftForecast> {
    let (factors, mean) = (&ground.factors, &found.belief.mean);
    // A lift that was measured follows the factors as the measurement does.
    let told = ground
        .data
        .iter()
        .position(|datum| datum.movement() == lift.movement && datum.is_lift());
    let slopes = match told {
        Some(index) => found.slopes[index].clone(),
        None => lift
            .maximum_slopes(factors, mean)?
            .over(factors, Some(&lift.movement)),
    };
    let fitted = lift.lifter(factors, mean);
    let total_kg = lift.log_maximum(&fitted)?.exp();
    let before = lift.log_maximum(&lift.lifter(factors, &ground.before.mean))?;
    let measured = ground.data.iter();
    let measured = measured.filter(|datum| datum.movement() == lift.movement && datum.is_lift());
    Ok(LiftForecast {
        movement: lift.movement.clone(),
        title: lift.model.movement.title.clone(),
        body_kg: lift.body.as_kg(),
        total_kg,
        deviation: found.belief.along(&slopes).1.sqrt(),
        before: (before.exp(), ground.before.along(&slopes).1.sqrt()),
        measured: measured.count(),
        hardest: hardest(lift, ground, found, (versions, place_error))?,
        slopes,
    })
}

/// Where it is hardest, over the versions; the model's own error widens the interval by its factor.
fn hardest(
    lift: &PersonLift,
    ground: &FitGround,
    found: &Found,
    (versions, place_error): (&[DVector<f64>], f64),
) -> Result<HardestPlace> {
    let at = |values: &DVector<f64>| -> Result<f64> {
        Ok(lift.log_held(&lift.lifter(&ground.factors, values))?.1)
    };
    let range = at(&found.belief.mean)?;
    // A version that cannot keep a pose has no hardest place.
    let places: Vec<f64> = versions.iter().filter_map(|one| at(one).ok()).collect();
    let end = |share: f64| quantile(&places, share).unwrap_or(range);
    let wider = (FOUR_IN_FIVE * place_error).exp();
    let (way, measure) = lift.way()?;
    Ok(HardestPlace {
        range,
        interval: (end(0.1) / wider, (end(0.9) * wider).min(1.0)),
        way,
        measure,
    })
}

/// The maxima that could be tried, the most telling first.
pub(super) fn next_tests(
    lifts: &[LiftForecast],
    belief: &Belief,
    library: &Library,
) -> Result<Vec<NextTest>> {
    let error = library.person_table()?.one_rm.deviation.powi(2);
    let wanted: Vec<DVector<f64>> = lifts.iter().map(|lift| lift.slopes.clone()).collect();
    let mut tests: Vec<NextTest> = lifts
        .iter()
        .map(|lift| NextTest {
            movement: lift.movement.clone(),
            title: lift.title.clone(),
            narrowing: narrowing(belief, &wanted, &lift.slopes, error),
            of_itself: narrowing(
                belief,
                std::slice::from_ref(&lift.slopes),
                &lift.slopes,
                error,
            ),
        })
        .collect();
    tests.sort_by(|a, b| b.narrowing.total_cmp(&a.narrowing));
    Ok(tests)
}
