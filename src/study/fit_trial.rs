//! A fit tried on simulated people whose strengths are known: whether its intervals hold the truth as often as they say.
//!
//! In: a kind of person, how many lifts are measured, a seed. Out: [`FitTrial`], hit or miss of every number and lift.
//! For the maintenance program that counts them (`tests/coverage/`) and its test; no command uses it.
#![allow(dead_code)]

use super::fit_draws::{FitDraws, fit_draws};
use super::fit_ground::{FOUR_IN_FIVE, FitGround, Found};
use super::person_asked::PersonAsked;
use super::person_data::PersonDatum;
use super::person_spread::LiftSpread;
use crate::error::{FaultKind, Result};
use crate::library::Library;
use crate::numeric::NormalStream;
use crate::person::LogMeasured;
use nalgebra::DVector;
use rayon::prelude::*;

/// Draws of the truth begin at this number of the seed, those of errors at the next.
const TRUTHS: u64 = 1 << 40;
const ERRORS: u64 = 1 << 41;

/// A kind of person on whom fits are tried.
pub struct FitTrials {
    ground: FitGround,
}

/// What one fit of a simulated person held.
#[derive(Debug, Clone, PartialEq)]
pub struct FitTrial {
    /// Whether the interval of each number holds its truth, by its path, and whether a measurement reached it.
    pub factors: Vec<(String, bool, bool)>,
    /// Whether the interval of each lift that was looked at and not measured holds its true maximum.
    pub left_out: Vec<(String, bool)>,
    /// Whether those of the measured lifts do.
    pub measured: Vec<(String, bool)>,
    /// Logarithm of true over expected maximum of the lifts left out, and the same from one factor for all.
    pub misses: Vec<(f64, f64)>,
    /// Lifts that the fitted lifter cannot do and the simulated person can, so that there is no interval.
    pub without: usize,
    /// How many independent draws the intervals stand on.
    pub effective: f64,
}

/// A lift that a simulated person can do, and the logarithm of the true maximum.
type TrueLift = (usize, f64);

impl FitTrials {
    /// The lifts of such a person and what is believed before anything is measured.
    ///
    /// **Fails** as reading files does.
    pub fn of(asked: &PersonAsked, library: &Library) -> Result<Self> {
        Ok(Self {
            ground: FitGround::of(asked, library)?,
        })
    }

    /// Draws a person from the belief, simulates so many maxima with errors of their own, fits, and compares with the truth
    /// in as many lifts that were not measured.
    ///
    /// The model's own error is in the truth as strength of single lifts. A lift that the person cannot do is neither
    /// measured nor looked at. **Fails** where the person cannot do so many.
    pub fn one(
        &self,
        (lifts, looked_at): (usize, usize),
        seed: u64,
        number: u64,
    ) -> Result<FitTrial> {
        let ground = &self.ground;
        let before = &ground.before;
        let truth = before.draw(&before.root(), seed, TRUTHS + number);
        let mut errors = NormalStream::new(seed, ERRORS + number);
        let able = self.able(&truth, &mut errors, lifts + looked_at)?;
        let (measured, left_out) = able.split_at(lifts.min(able.len()));
        let trial = FitGround {
            lifts: ground.lifts.clone(),
            data: self.measured(measured, &mut errors),
            factors: ground.factors.clone(),
            before: before.clone(),
        };
        let found = trial.fitted()?;
        let draws = fit_draws(&trial, &found, seed.wrapping_add(number))?;
        let naive = trial.one_factor(measured)?;
        let told = |lifts: &[TrueLift]| -> Result<Vec<Option<TriedLift>>> {
            let each = lifts.par_iter();
            each.map(|lift| told(&trial, &found, &draws, (&naive, *lift)))
                .collect()
        };
        let (of_measured, of_left_out) = (told(measured)?, told(left_out)?);
        let held = |lifts: &[Option<TriedLift>]| -> Vec<(String, bool)> {
            let each = lifts.iter().flatten();
            each.map(|told| (told.movement.clone(), told.held))
                .collect()
        };
        let misses = of_left_out.iter().flatten();
        Ok(FitTrial {
            factors: hits(&trial, &draws, &truth),
            measured: held(&of_measured),
            left_out: held(&of_left_out),
            misses: misses.map(|told| (told.miss, told.naive)).collect(),
            without: of_left_out.iter().filter(|told| told.is_none()).count(),
            effective: draws.effective,
        })
    }

    /// So many lifts, drawn, that such strengths can do.
    fn able(
        &self,
        truth: &DVector<f64>,
        errors: &mut NormalStream,
        count: usize,
    ) -> Result<Vec<TrueLift>> {
        let ground = &self.ground;
        let mut order: Vec<(f64, usize)> = (0..ground.lifts.len())
            .map(|lift| (errors.next(), lift))
            .collect();
        order.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut able = Vec::new();
        for (_, index) in order {
            if able.len() == count {
                break;
            }
            let lift = &ground.lifts[index];
            match lift.log_maximum(&lift.strength(&ground.factors, truth)) {
                Ok(log) => able.push((index, log)),
                Err(fault) if fault.kind() == FaultKind::NoAnswer => {}
                Err(fault) => return Err(fault),
            }
        }
        Ok(able)
    }

    /// Measurements of these maxima, from a tried one to a set of some ten repetitions.
    fn measured(&self, lifts: &[TrueLift], errors: &mut NormalStream) -> Vec<PersonDatum> {
        let each = lifts.iter();
        each.map(|(index, log)| {
            let deviation = 0.04 + 0.04 * errors.next().abs().min(1.5);
            let measured = LogMeasured {
                log_value: log + deviation * errors.next(),
                variance: deviation * deviation,
            };
            PersonDatum::maximum_of(*index, &self.ground.lifts[*index].movement, measured)
        })
        .collect()
    }
}

/// What a fit says of a lift beside its truth.
struct TriedLift {
    movement: String,
    held: bool,
    miss: f64,
    naive: f64,
}

/// None where the fitted lifter cannot do the lift.
fn told(
    trial: &FitGround,
    found: &Found,
    draws: &FitDraws,
    (naive, (index, real)): (&DVector<f64>, TrueLift),
) -> Result<Option<TriedLift>> {
    let lift = &trial.lifts[index];
    let spread = match LiftSpread::of(lift, trial, &found.belief.mean, draws) {
        Err(fault) if fault.kind() == FaultKind::NoAnswer => return Ok(None),
        spread => spread?,
    };
    let miss = real - spread.log_total - spread.above;
    let of_naive = lift.log_maximum(&lift.strength(&trial.factors, naive));
    Ok(Some(TriedLift {
        movement: lift.movement.clone(),
        held: miss.abs() <= FOUR_IN_FIVE * spread.deviation,
        miss,
        naive: of_naive.map_or(f64::NAN, |naive| real - naive),
    }))
}

/// Whether the interval of each number holds its truth, and whether a measurement reached it.
fn hits(trial: &FitGround, draws: &FitDraws, truth: &DVector<f64>) -> Vec<(String, bool, bool)> {
    let each = trial.factors.all().iter().enumerate();
    each.map(|(k, factor)| {
        let reach = draws.belief.covariance[(k, k)].max(0.0).sqrt();
        let held = (truth[k] - draws.belief.mean[k]).abs() <= FOUR_IN_FIVE * reach;
        (factor.path(), held, draws.told_of[k])
    })
    .collect()
}

impl FitGround {
    /// The one factor on all strengths that fits the measurements best, with nothing else moved.
    fn one_factor(&self, measured: &[TrueLift]) -> Result<DVector<f64>> {
        let mut values = self.before.mean.clone();
        for _ in 0..3 {
            let (mut pull, mut weight) = (0.0, 0.0);
            for (datum, (index, _)) in self.data.iter().zip(measured) {
                let lift = &self.lifts[*index];
                let at = lift.log_maximum(&lift.strength(&self.factors, &values));
                let (Ok(at), Ok(gain)) = (at, lift.still_gain(&self.factors, &values)) else {
                    // Too weak for the pose: anyone who did it is stronger.
                    values[0] += 0.25;
                    continue;
                };
                pull += gain * (datum.measured.log_value - at) / datum.measured.variance;
                weight += gain * gain / datum.measured.variance;
            }
            if weight > 0.0 {
                values[0] += pull / weight;
            }
        }
        Ok(values)
    }
}
