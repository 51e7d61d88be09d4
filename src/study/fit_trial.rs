//! A fit tried on simulated people whose strengths are known: whether its intervals hold the truth as often as they say.
//!
//! In: a kind of person, how many lifts are measured, a seed. Out: [`FitTrial`], hit or miss of every number and lift.
//! For the maintenance program that counts them (`tests/coverage/`) and its test; no command uses it.
#![allow(dead_code)]

use super::fit_ground::{FOUR_IN_FIVE, FitGround};
use super::person_asked::PersonAsked;
use super::person_data::PersonDatum;
use crate::error::Result;
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
    /// Whether the interval of each lift that was not measured holds its true maximum.
    pub left_out: Vec<(String, bool)>,
    /// Whether those of the measured lifts do.
    pub measured: Vec<(String, bool)>,
    /// Logarithm of true over most probable maximum of the lifts left out, and the same from one factor for all.
    pub misses: Vec<(f64, f64)>,
}

impl FitTrials {
    /// The lifts of such a person and what is believed before anything is measured.
    ///
    /// **Fails** as reading files does.
    pub fn of(asked: &PersonAsked, library: &Library) -> Result<Self> {
        Ok(Self {
            ground: FitGround::of(asked, library)?,
        })
    }

    /// Draws a person from the belief, simulates so many maxima with errors of their own, fits, and compares.
    ///
    /// The model's own error is in the truth as strength of single lifts. **Fails** where a lift cannot be done.
    pub fn one(&self, lifts: usize, seed: u64, number: u64) -> Result<FitTrial> {
        let ground = &self.ground;
        let (factors, before) = (&ground.factors, &ground.before);
        let truth = before.draw(&before.root(), seed, TRUTHS + number);
        let mut errors = NormalStream::new(seed, ERRORS + number);
        let mut order: Vec<(f64, usize)> = (0..ground.lifts.len())
            .map(|lift| (errors.next(), lift))
            .collect();
        order.sort_by(|a, b| a.0.total_cmp(&b.0));
        let measured: Vec<usize> = order.iter().take(lifts).map(|(_, lift)| *lift).collect();
        let mut data = Vec::new();
        for index in &measured {
            let lift = &ground.lifts[*index];
            // From a tried maximum to a set of some ten repetitions.
            let deviation = 0.04 + 0.04 * errors.next().abs().min(1.5);
            let log = lift.log_maximum(&lift.lifter(factors, &truth))?;
            let measured = LogMeasured {
                log_value: log + deviation * errors.next(),
                variance: deviation * deviation,
            };
            data.push(PersonDatum::maximum_of(*index, &lift.movement, measured));
        }
        let trial = FitGround {
            lifts: ground.lifts.clone(),
            data,
            factors: factors.clone(),
            before: before.clone(),
        };
        let found = trial.fitted()?;
        let reach = |k: usize| found.belief.covariance[(k, k)].max(0.0).sqrt();
        let each = factors.all().iter().enumerate();
        let hits = each.map(|(k, factor)| {
            let held = (truth[k] - found.belief.mean[k]).abs() <= FOUR_IN_FIVE * reach(k);
            let is_reached = reach(k) < 0.98 * before.covariance[(k, k)].sqrt();
            (factor.path(), held, is_reached)
        });
        let mean = &found.belief.mean;
        let naive = trial.one_factor(&measured)?;
        let outcomes = (0..ground.lifts.len())
            .into_par_iter()
            .map(|index| {
                let lift = &ground.lifts[index];
                let told = measured.iter().position(|measured| *measured == index);
                let slopes = match told {
                    Some(datum) => found.slopes[datum].clone(),
                    None => lift
                        .maximum_slopes(factors, mean)?
                        .over(factors, Some(&lift.movement)),
                };
                let deviation = found.belief.along(&slopes).1.sqrt();
                let at = |values: &DVector<f64>| lift.log_maximum(&lift.lifter(factors, values));
                let real = at(&truth)?;
                let (miss, of_naive) = (real - at(mean)?, real - at(&naive)?);
                Ok((index, miss, deviation, of_naive))
            })
            .collect::<Result<Vec<_>>>()?;
        let name = |index: usize| ground.lifts[index].movement.clone();
        let held = |miss: f64, deviation: f64| miss.abs() <= FOUR_IN_FIVE * deviation;
        let is_left_out = |index: usize| !measured.contains(&index);
        Ok(FitTrial {
            factors: hits.collect(),
            left_out: outcomes
                .iter()
                .filter(|outcome| is_left_out(outcome.0))
                .map(|(index, miss, deviation, _)| (name(*index), held(*miss, *deviation)))
                .collect(),
            measured: outcomes
                .iter()
                .filter(|outcome| !is_left_out(outcome.0))
                .map(|(index, miss, deviation, _)| (name(*index), held(*miss, *deviation)))
                .collect(),
            misses: outcomes
                .iter()
                .filter(|outcome| is_left_out(outcome.0))
                .map(|(_, miss, _, naive)| (*miss, *naive))
                .collect(),
        })
    }
}

impl FitGround {
    /// The one factor on all strengths that fits the measurements best, with nothing else moved.
    fn one_factor(&self, measured: &[usize]) -> Result<DVector<f64>> {
        let mut values = self.before.mean.clone();
        for _ in 0..4 {
            let (mut pull, mut weight) = (0.0, 0.0);
            for (datum, index) in self.data.iter().zip(measured) {
                let lift = &self.lifts[*index];
                let gain = lift.still_gain(&self.factors, &values)?;
                let at = lift.log_maximum(&lift.lifter(&self.factors, &values))?;
                pull += gain * (datum.measured.log_value - at) / datum.measured.variance;
                weight += gain * gain / datum.measured.variance;
            }
            values[0] += pull / weight;
        }
        Ok(values)
    }
}
