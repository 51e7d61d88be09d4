//! One lift of many invented people: how far their strength curves differ in height and in shape.
//!
//! In: a question. Out: [`People`]: tenths of the capacities at every sample, as they are and in percent of each person's own
//! median. The same for any number of threads.

use super::cohort::{Scatter, invented};
use super::question::Question;
use super::solve::study;
use crate::error::{Error, MaximumFault, Result};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// How many people are invented, samples of each one's curve, and the seed of the invention.
const COUNT: usize = 80;
const SAMPLES: usize = 41;
const SEED: u64 = 1;

/// Curves between which eight in ten people lie, and the middle one.
#[derive(Debug, Clone, PartialEq)]
pub struct Tenths {
    /// One in ten is below it.
    pub low: Vec<f64>,
    /// Half of the people are below it.
    pub middle: Vec<f64>,
    /// One in ten is above it.
    pub high: Vec<f64>,
}

/// Strength curves of many people.
#[derive(Debug, Clone, PartialEq)]
pub struct People {
    /// How many can do the lift.
    pub count: usize,
    /// Places of the samples in the range.
    pub places: Vec<f64>,
    /// Capacities, N (or N·m).
    pub forces: Tenths,
    /// Capacities over each person's own median, %.
    pub shapes: Tenths,
}

impl People {
    /// People invented around the lifter of a question.
    ///
    /// **Fails** if none of them can do the lift.
    pub fn of(question: &Question<'_>) -> Result<Self> {
        let curves: Vec<Vec<f64>> = (0..COUNT)
            .into_par_iter()
            .filter_map(|number| {
                let (lifter, _) = invented(question.lifter, Scatter::default(), SEED, number);
                let own = Question {
                    lifter: &lifter,
                    samples: SAMPLES,
                    ..question.clone()
                };
                study(&own, &[]).ok().map(|study| study.capacity.values())
            })
            .collect();
        if curves.is_empty() {
            return Err(Error::no_answer(MaximumFault::NobodyInGroup));
        }
        let shapes: Vec<Vec<f64>> = curves
            .iter()
            .map(|curve| {
                let own = share_of(curve, 0.5);
                curve.iter().map(|value| 100.0 * value / own).collect()
            })
            .collect();
        Ok(Self {
            count: curves.len(),
            places: (0..SAMPLES)
                .map(|index| index as f64 / (SAMPLES - 1) as f64)
                .collect(),
            forces: Tenths::of(&curves),
            shapes: Tenths::of(&shapes),
        })
    }
}

impl Tenths {
    fn of(curves: &[Vec<f64>]) -> Self {
        let at = |share: f64| {
            (0..SAMPLES)
                .map(|index| {
                    let values: Vec<f64> = curves.iter().map(|curve| curve[index]).collect();
                    share_of(&values, share)
                })
                .collect()
        };
        Self {
            low: at(0.1),
            middle: at(0.5),
            high: at(0.9),
        }
    }
}

/// The value below which a share of all values lies, between neighbours in proportion.
fn share_of(values: &[f64], share: f64) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let at = share * (sorted.len() - 1) as f64;
    let (low, part) = (at.floor() as usize, at.fract());
    let high = (low + 1).min(sorted.len() - 1);
    sorted[low] + part * (sorted[high] - sorted[low])
}
