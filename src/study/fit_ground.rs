//! What a fit stands on and how it is searched: the person's lifts, the measurements, the belief before them.
//!
//! In: a [`PersonAsked`], the library. Out: [`FitGround`], and [`Found`], the most probable strengths.

use super::person_asked::PersonAsked;
use super::person_data::PersonDatum;
use super::person_lifts::PersonLift;
use crate::anatomy::Sex;
use crate::error::{Error, FaultKind, PersonFault, Result};
use crate::library::Library;
use crate::numeric::{Belief, Observation};
use crate::person::{PersonFactors, PriorGrounds, StrengthFactor, prior};
use nalgebra::DVector;
use rayon::prelude::*;
use std::collections::BTreeMap;

/// Steps of the search at most.
const MOST_STEPS: usize = 8;
/// Halves of a step that are tried at most.
const MOST_HALVES: i32 = 4;
/// The search ends when nothing that was measured is reckoned differently by more than this logarithm.
const SETTLED: f64 = 5.0e-3;
/// A measurement farther from what people of that kind show is a slip, in standard deviations.
pub(super) const IMPOSSIBLE: f64 = 4.0;
/// Two measurements of one lift farther apart contradict each other, in standard deviations of their errors.
const CONTRADICTING: f64 = 4.0;
/// Standard deviations on either side that hold four in five.
pub const FOUR_IN_FIVE: f64 = 1.281_551_565_544_6;

/// Everything that a fit stands on before it begins.
pub(super) struct FitGround {
    pub lifts: Vec<PersonLift>,
    pub data: Vec<PersonDatum>,
    pub factors: PersonFactors,
    pub before: Belief,
}

/// The most probable strengths and what was reckoned there.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub belief: Belief,
    pub reckoned: Vec<f64>,
    pub slopes: Vec<DVector<f64>>,
    pub steps: usize,
}

impl FitGround {
    /// The person's lifts, the measurements, and what is believed before them.
    ///
    /// **Fails** where files, movements or measurements do not fit.
    pub fn of(asked: &PersonAsked, library: &Library) -> Result<Self> {
        let movements = library.movements();
        Self::of_lifts(asked, library, movements.iter().map(String::as_str))
    }

    /// The same with these lifts of the person only, all that were measured among them. What is believed of the others is
    /// independent of them.
    ///
    /// **Fails** as [`Self::of`] does.
    pub fn of_lifts<'a>(
        asked: &PersonAsked,
        library: &Library,
        movements: impl Iterator<Item = &'a str>,
    ) -> Result<Self> {
        let files = asked.files(library)?;
        let movements: Vec<&str> = movements.collect();
        let lifts = movements
            .par_iter()
            .map(|movement| PersonLift::open(library, &files, movement))
            .collect::<Result<Vec<_>>>()?;
        Self::on(asked, library, lifts)
    }

    /// The same with lifts that are there already.
    ///
    /// **Fails** as [`Self::of`] does.
    pub fn on(asked: &PersonAsked, library: &Library, lifts: Vec<PersonLift>) -> Result<Self> {
        let data = PersonDatum::all(asked, library, &lifts)?;
        let names: Vec<String> = lifts.iter().map(|lift| lift.movement.clone()).collect();
        let groups = lifts.first().map_or_else(Vec::new, PersonLift::groups);
        let factors = PersonFactors::of(&groups, &names);
        let before = prior_of((asked.sex, asked.months), library, &factors, &lifts)?;
        Ok(Self {
            lifts,
            data,
            factors,
            before,
        })
    }

    /// The most probable strengths.
    ///
    /// **Fails** where a measurement is none that such a person shows, and where no plausible strength keeps its poses.
    pub fn fitted(&self) -> Result<Found> {
        let (mut values, mut reckoned) = self.start()?;
        let mut slopes = self.slopes(&values)?;
        self.check_possible(&reckoned, &slopes, &values)?;
        let mut steps = 0;
        loop {
            let seen = self.observations(&reckoned, &slopes, &values);
            let mut belief = self.before.given(&seen);
            let step = &belief.mean - &values;
            let change = slopes.iter().map(|slopes| slopes.dot(&step).abs());
            let change = change.fold(0.0, f64::max);
            steps += 1;
            let next = match change < SETTLED || steps == MOST_STEPS {
                true => None,
                false => self.better(&values, &reckoned, &step)?,
            };
            let Some(next) = next else {
                belief.mean = values;
                return Ok(Found {
                    belief,
                    reckoned,
                    slopes,
                    steps,
                });
            };
            (values, reckoned) = next;
            slopes = self.slopes(&values)?;
        }
    }

    /// Where the search begins: what is expected, or as much stronger as it takes to keep the poses of what was measured.
    fn start(&self) -> Result<(DVector<f64>, Vec<f64>)> {
        let deviation = self.before.covariance[(0, 0)].sqrt();
        let mut values = self.before.mean.clone();
        for _ in 0..=(2.0 * IMPOSSIBLE) as usize {
            match self.reckoned(&values) {
                Err(fault) if fault.kind() == FaultKind::NoAnswer => values[0] += 0.5 * deviation,
                reckoned => return Ok((values, reckoned?)),
            }
        }
        let is_not_kept = |datum: &&PersonDatum| {
            let reckoned = datum.reckoned(&self.lifts, &self.factors, &values);
            reckoned.is_err()
        };
        let movement = self.data.iter().find(is_not_kept);
        let movement = movement.map_or_else(String::new, |datum| datum.movement().to_owned());
        Err(Error::bad(PersonFault::NotKept { movement }))
    }

    /// Strengths on the way of a step that are more probable, and what is reckoned there: the whole step, or as many halves
    /// of it as it takes, since a lift bends where another joint gives way first. None where no part of it is better.
    fn better(
        &self,
        values: &DVector<f64>,
        reckoned: &[f64],
        step: &DVector<f64>,
    ) -> Result<Option<(DVector<f64>, Vec<f64>)>> {
        let now = self.improbability(values, reckoned);
        for halves in 0..MOST_HALVES {
            let next = values + step * 0.5_f64.powi(halves);
            match self.reckoned(&next) {
                Ok(there) if self.improbability(&next, &there) < now => {
                    return Ok(Some((next, there)));
                }
                Err(fault) if fault.kind() != FaultKind::NoAnswer => return Err(fault),
                _ => {}
            }
        }
        Ok(None)
    }

    /// Twice the negative logarithm of how probable strengths are, but for a constant.
    fn improbability(&self, values: &DVector<f64>, reckoned: &[f64]) -> f64 {
        let from = values - &self.before.mean;
        let variances = self.before.covariance.diagonal();
        let of_factors = from.iter().zip(variances.iter());
        let of_factors = of_factors.filter(|(_, variance)| **variance > 0.0);
        let of_factors: f64 = of_factors
            .map(|(from, variance)| from * from / variance)
            .sum();
        let misses = self.data.iter().zip(reckoned).map(|(datum, reckoned)| {
            (datum.measured.log_value - reckoned).powi(2) / datum.measured.variance
        });
        of_factors + misses.sum::<f64>()
    }

    fn reckoned(&self, values: &DVector<f64>) -> Result<Vec<f64>> {
        let of = |datum: &PersonDatum| datum.reckoned(&self.lifts, &self.factors, values);
        self.data.par_iter().map(of).collect()
    }

    fn slopes(&self, values: &DVector<f64>) -> Result<Vec<DVector<f64>>> {
        let of = |datum: &PersonDatum| datum.slopes(&self.lifts, &self.factors, values);
        self.data.par_iter().map(of).collect()
    }

    pub fn observations(
        &self,
        reckoned: &[f64],
        slopes: &[DVector<f64>],
        values: &DVector<f64>,
    ) -> Vec<Observation> {
        let with = self.data.iter().zip(reckoned).zip(slopes);
        with.map(|((datum, reckoned), slopes)| datum.observation(*reckoned, slopes, values))
            .collect()
    }

    /// Refuses what no person of that kind shows.
    fn check_possible(
        &self,
        reckoned: &[f64],
        slopes: &[DVector<f64>],
        values: &DVector<f64>,
    ) -> Result<()> {
        let raised = values - &self.before.mean;
        for ((datum, reckoned), slopes) in self.data.iter().zip(reckoned).zip(slopes) {
            let (_, variance) = self.before.along(slopes);
            let miss = datum.measured.log_value - (reckoned - slopes.dot(&raised));
            let deviations = miss / (variance + datum.measured.variance).sqrt();
            if deviations.abs() > IMPOSSIBLE {
                return Err(Error::bad(PersonFault::Impossible {
                    written: datum.told.written.clone(),
                    over_expected: miss.exp(),
                    deviations,
                }));
            }
        }
        Ok(())
    }

    /// Refuses two measurements of one lift that cannot both be right.
    pub fn check_contradictions(&self) -> Result<()> {
        for (index, one) in self.data.iter().enumerate() {
            for other in &self.data[index + 1..] {
                if !one.is_of_the_same(other) {
                    continue;
                }
                let miss = one.measured.log_value - other.measured.log_value;
                let error = (one.measured.variance + other.measured.variance).sqrt();
                if miss.abs() > CONTRADICTING * error {
                    return Err(Error::bad(PersonFault::Contradict {
                        written: [one.told.written.clone(), other.told.written.clone()],
                        ratio: miss.abs().exp(),
                    }));
                }
            }
        }
        Ok(())
    }
}

/// The published values by which it is known how far the model misses one lift beside another.
pub(super) const RATIO: &str = "ratio of lifts";

/// What is believed before anything is measured of a person of a sex and so many months of training.
///
/// **Fails** with what is wrong in the tables.
pub(super) fn prior_of(
    (sex, months): (Sex, f64),
    library: &Library,
    factors: &PersonFactors,
    lifts: &[PersonLift],
) -> Result<Belief> {
    let table = library.person_table()?;
    let misses = library.misses()?;
    let mut calibrated = BTreeMap::new();
    for factor in factors.all() {
        if let StrengthFactor::Group(group) = factor {
            let path = format!("lifter.strength.{group}");
            if let Some(fitted) = library.fitted(sex, &path)? {
                calibrated.insert(group.clone(), fitted.relative_deviation());
            }
        }
    }
    let mut expected = DVector::zeros(factors.count());
    expected[0] = table.gain(months);
    // A lift that such a person cannot do at all has no gain; nothing is measured of it either.
    let gains = lifts
        .par_iter()
        .filter_map(|lift| {
            let gain = lift.still_gain(factors, &expected).ok()?;
            Some((lift.movement.clone(), gain))
        })
        .collect::<BTreeMap<String, f64>>();
    let grounds = PriorGrounds {
        months,
        calibrated,
        miss_of_lift: misses.of(RATIO) / std::f64::consts::SQRT_2,
        miss_of_strength: misses.of("strength"),
        gains,
    };
    Ok(prior(&table, factors, &grounds))
}
