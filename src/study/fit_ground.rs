//! What a fit stands on and how it is searched: the person's lifts, the measurements, the belief before them.
//!
//! In: a [`PersonAsked`], the library. Out: [`FitGround`], and [`Found`], the most probable strengths.

use super::person_asked::PersonAsked;
use super::person_data::PersonDatum;
use super::person_lifts::PersonLift;
use crate::error::{Error, PersonFault, Result};
use crate::library::Library;
use crate::numeric::{Belief, Observation};
use crate::person::{PersonFactors, PriorGrounds, StrengthFactor, prior};
use nalgebra::DVector;
use rayon::prelude::*;
use std::collections::BTreeMap;

/// Steps of the search at most.
const MOST_STEPS: usize = 8;
/// The search ends when nothing that was measured is reckoned differently by more than this logarithm.
const SETTLED: f64 = 5.0e-3;
/// A measurement farther from what people of that kind show is a slip, in standard deviations.
const IMPOSSIBLE: f64 = 4.0;
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
        let files = asked.files(library)?;
        let lifts = library
            .movements()
            .par_iter()
            .map(|movement| PersonLift::open(library, &files, movement))
            .collect::<Result<Vec<_>>>()?;
        let data = PersonDatum::all(asked, library, &lifts)?;
        let names: Vec<String> = lifts.iter().map(|lift| lift.movement.clone()).collect();
        let groups = lifts.first().map_or_else(Vec::new, PersonLift::groups);
        let factors = PersonFactors::of(&groups, &names);
        let before = prior_of(asked, library, &factors, &lifts)?;
        Ok(Self {
            lifts,
            data,
            factors,
            before,
        })
    }

    /// The most probable strengths.
    pub fn fitted(&self) -> Result<Found> {
        let mut values = self.before.mean.clone();
        let mut slopes = self.slopes(&values)?;
        let mut steps = 0;
        let (mut belief, reckoned) = loop {
            let reckoned = self.reckoned(&values)?;
            if steps == 0 {
                self.check_possible(&reckoned, &slopes)?;
            }
            let seen = self.observations(&reckoned, &slopes, &values);
            let belief = self.before.given(&seen);
            let step = &belief.mean - &values;
            let change = slopes.iter().map(|slopes| slopes.dot(&step).abs());
            let change = change.fold(0.0, f64::max);
            steps += 1;
            if change < SETTLED || steps == MOST_STEPS {
                break (belief, reckoned);
            }
            // Where another joint gives way first, whole steps go to and fro.
            let part = if steps <= 2 { 1.0 } else { 0.5 };
            values += part * step;
            // Slopes change little; those at the end are the ones that count.
            if steps <= 2 {
                slopes = self.slopes(&values)?;
            }
        };
        belief.mean = values;
        Ok(Found {
            belief,
            reckoned,
            slopes,
            steps,
        })
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
    fn check_possible(&self, reckoned: &[f64], slopes: &[DVector<f64>]) -> Result<()> {
        for ((datum, reckoned), slopes) in self.data.iter().zip(reckoned).zip(slopes) {
            let (_, variance) = self.before.along(slopes);
            let miss = datum.measured.log_value - reckoned;
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

/// What is believed of the person before anything is measured.
fn prior_of(
    asked: &PersonAsked,
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
            if let Some(fitted) = library.fitted(asked.sex, &path)? {
                calibrated.insert(group.clone(), fitted.relative_deviation());
            }
        }
    }
    let mut expected = DVector::zeros(factors.count());
    expected[0] = table.gain(asked.months);
    // A lift that such a person cannot do at all has no gain; nothing is measured of it either.
    let gains = lifts
        .par_iter()
        .filter_map(|lift| {
            let gain = lift.still_gain(factors, &expected).ok()?;
            Some((lift.movement.clone(), gain))
        })
        .collect::<BTreeMap<String, f64>>();
    let grounds = PriorGrounds {
        months: asked.months,
        calibrated,
        miss_of_lift: misses.of("ratio of lifts") / std::f64::consts::SQRT_2,
        miss_of_strength: misses.of("strength"),
        gains,
    };
    Ok(prior(&table, factors, &grounds))
}
