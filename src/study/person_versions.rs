//! Plausible versions of a fitted lifter, and what follows from them for a curve, a maximum, a choice of setups.
//!
//! In: a model whose lifter's file says how well its strengths are known. Out: [`PersonVersions`], bands and counts.

use super::picking::pick;
use super::question::{Question, Study};
use super::rep_study::maximum;
use super::solve::SolvedLift;
use crate::anatomy::Lifter;
use crate::error::{Error, PersonFault, Result};
use crate::library::Model;
use crate::numeric::{Belief, quantile};
use crate::person::PersonFactors;
use crate::rep::RepOptions;
use crate::resistance::Setup;
use crate::session::published::EccentricTable;
use crate::setups::{Choosing, Watch};
use crate::units::Mass;
use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

/// Versions that a curve's band is drawn from.
const OF_CURVE: u64 = 100;
/// Versions that the interval of a maximum is taken from.
const OF_MAXIMUM: u64 = 60;
/// Versions for which the setups of a gym are searched.
const OF_PICK: u64 = 10;
/// The interval that holds four in five.
const ENDS: [f64; 2] = [0.1, 0.9];
/// Seed of the versions: the same file has the same versions in every command.
const SEED: u64 = 1;

/// Versions of one lifter, as plausible as the fit says.
#[derive(Debug, Clone)]
pub struct PersonVersions<'a> {
    model: &'a Model,
    factors: PersonFactors,
    belief: Belief,
    root: DMatrix<f64>,
    /// Versions as the file has them; none where they are drawn.
    kept: Vec<DVector<f64>>,
}

/// What capacity may be over a range: the ends of the interval that holds four in five, one a sample.
#[derive(Debug, Clone, PartialEq)]
pub struct CapacityBand {
    /// Lower ends.
    pub low: Vec<f64>,
    /// Upper ends.
    pub high: Vec<f64>,
    /// From how many versions.
    pub versions: usize,
}

/// The interval of a maximum that holds four in five.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MaximumInterval {
    /// Lower end.
    pub low: Mass,
    /// Upper end.
    pub high: Mass,
    /// From how many versions.
    pub versions: usize,
}

/// In how many versions of a lifter the first answer stays first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StaysFirst {
    /// Versions in which it is first.
    pub first: usize,
    /// Versions that were searched.
    pub versions: usize,
}

impl<'a> PersonVersions<'a> {
    /// The versions of a lifter.
    ///
    /// **Fails** where the lifter's file says nothing of how well its strengths are known.
    pub fn of(model: &'a Model) -> Result<Self> {
        let scatter = model.record.scatter.as_ref();
        let known = scatter.and_then(|scatter| {
            let factors = PersonFactors::of_paths(&scatter.of)?;
            let rows = &scatter.covariance;
            let covariance = DMatrix::from_fn(rows.len(), rows.len(), |a, b| {
                rows[a.max(b)].get(a.min(b)).copied().unwrap_or(0.0)
            });
            let mean = DVector::zeros(rows.len());
            let kept = scatter.versions.iter().cloned().map(DVector::from_vec);
            Some((factors, Belief { mean, covariance }, kept.collect()))
        });
        let Some((factors, belief, kept)) = known else {
            return Err(Error::bad(PersonFault::NoScatter {
                lifter: model.lifter.title.clone(),
            }));
        };
        Ok(Self {
            model,
            factors,
            root: belief.root(),
            belief,
            kept,
        })
    }

    /// How many versions there are of so many that are wished for.
    fn of_wished(&self, wished: u64) -> u64 {
        match self.kept.len() as u64 {
            0 => wished,
            kept => wished.min(kept),
        }
    }

    /// The numbered version in the model's movement: the file's, or a draw where the file has none.
    #[must_use]
    pub fn lifter(&self, number: u64) -> Lifter {
        let values = match self.kept.get(number as usize) {
            Some(version) => version.clone(),
            None => self.belief.draw(&self.root, SEED, number),
        };
        let own = self.factors.lift(&self.model.movement_name);
        let own = own.map_or(0.0, |place| values[place]);
        let mut lifter = self.model.lifter.clone();
        for muscle in lifter.muscles.values_mut() {
            let group = self.factors.group(&muscle.group);
            let group = group.map_or(0.0, |place| values[place]);
            muscle.peak_force = muscle.peak_force * (values[0] + group + own).exp();
        }
        lifter
    }

    /// What capacity may be; a version that cannot keep a pose is left out.
    ///
    /// **Fails** where none can.
    pub fn band(&self, question: &Question<'_>) -> Result<CapacityBand> {
        let curves: Vec<Vec<f64>> = (0..self.of_wished(OF_CURVE))
            .into_par_iter()
            .filter_map(|number| {
                let lifter = self.lifter(number);
                let own = Question {
                    lifter: &lifter,
                    ..question.clone()
                };
                Some(SolvedLift::of(&own).ok()?.capacity.values())
            })
            .collect();
        let samples = curves.first().map_or(0, Vec::len);
        let end = |share: f64| -> Vec<f64> {
            let at = |sample: usize| {
                let values: Vec<f64> = curves.iter().map(|curve| curve[sample]).collect();
                quantile(&values, share).unwrap_or(f64::NAN)
            };
            (0..samples).map(at).collect()
        };
        Ok(CapacityBand {
            low: end(ENDS[0]),
            high: end(ENDS[1]),
            versions: curves.len(),
        })
    }

    /// The interval of the maximum; a version that lifts nothing counts as nothing.
    #[must_use]
    pub fn maximum(
        &self,
        question: &Question<'_>,
        template: &Setup,
        options: &RepOptions,
    ) -> MaximumInterval {
        let maxima: Vec<f64> = (0..self.of_wished(OF_MAXIMUM))
            .into_par_iter()
            .map(|number| {
                let lifter = self.lifter(number);
                let own = Question {
                    lifter: &lifter,
                    ..question.clone()
                };
                maximum(&own, template, options).map_or(0.0, |(found, _)| found.load.as_kg())
            })
            .collect();
        let end = |share: f64| Mass::from_kg(quantile(&maxima, share).unwrap_or(0.0));
        MaximumInterval {
            low: end(ENDS[0]),
            high: end(ENDS[1]),
            versions: maxima.len(),
        }
    }

    /// In how many versions a setup hangs the same pieces in first place; one for whom nothing fits has another first.
    #[must_use]
    pub fn stays_first(
        &self,
        question: &Question<'_>,
        choosing: &Choosing<'_>,
        table: &EccentricTable,
        first: &Setup,
    ) -> StaysFirst {
        let hung = hung_in(first);
        let versions = self.of_wished(OF_PICK);
        let same = (0..versions).into_par_iter().filter(|number| {
            let lifter = self.lifter(*number);
            let own = Question {
                lifter: &lifter,
                ..question.clone()
            };
            let picked = pick(&own, choosing, table, &Watch::default());
            let found = picked
                .ok()
                .and_then(|picked| picked.answers.into_iter().next());
            found.is_some_and(|found| hung_in(&found.loaded.setup) == hung)
        });
        StaysFirst {
            first: same.count(),
            versions: versions as usize,
        }
    }
}

/// What hangs in a setup beside its weight.
fn hung_in(setup: &Setup) -> Setup {
    let items = setup.items.iter();
    let hung = items.filter(|item| !matches!(item, crate::resistance::Item::Weight(_)));
    Setup::new("", hung.cloned().collect())
}

impl Study {
    /// The study with what its capacity may be.
    #[must_use]
    pub fn with_band(mut self, band: CapacityBand) -> Self {
        self.band = Some([band.low, band.high]);
        self
    }
}
