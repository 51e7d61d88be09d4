//! The published table that a person is fitted with.
//!
//! In: `models/published/person.ron`. Out: [`PersonTable`], numbers with the source of each.

use crate::anatomy::{Sex, Training};
use crate::source::Source;
use serde::Deserialize;

/// Scatter between people and errors of measurements.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PersonTable {
    /// Maxima in groups alike in sex and training.
    pub between_people: Vec<GroupOfPeople>,
    /// Correlation between the strengths of two muscle groups.
    pub correlation: TabledValue,
    /// Height and mass of women and of men.
    pub bodies: Vec<BodiesOfSex>,
    /// Scatter of the length of a segment at one height.
    pub segment: TabledDeviation,
    /// Months that a training status stands for.
    pub statuses: Vec<StatusMonths>,
    /// Strength by months of training.
    pub training: Vec<TrainingGain>,
    /// Error of a one-repetition maximum.
    pub one_rm: TabledDeviation,
    /// How people differ in repetitions.
    pub repetitions: TabledDeviation,
    /// Error of repetitions in reserve.
    pub reserve: TabledDeviation,
    /// Error of a held force.
    pub hold: TabledDeviation,
    /// Error of a held torque.
    pub dynamometer: TabledDeviation,
    /// Error of the length of a limb.
    pub limb: TabledDeviation,
    /// Error of a mean velocity, m/s.
    pub velocity: TabledDeviation,
    /// Error of a load-velocity equation that prints none, share of the maximum.
    pub velocity_equation: TabledDeviation,
}

/// The maxima of a group of people.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GroupOfPeople {
    /// Who, in which lift and unit.
    pub who: String,
    /// Their mean.
    pub mean: f64,
    /// Standard deviation between them.
    pub deviation: f64,
    /// Whether they are of maxima over body mass, which bodies alone do not scatter.
    #[serde(default)]
    pub over_body_mass: bool,
    /// Where both come from.
    pub source: Source,
}

/// How the bodies of one sex scatter.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BodiesOfSex {
    /// Whose.
    pub sex: Sex,
    /// Mean height, cm.
    pub height_cm: f64,
    /// Standard deviation of it, cm.
    pub height_deviation_cm: f64,
    /// Mean mass, kg.
    pub mass_kg: f64,
    /// Standard deviation of it, kg.
    pub mass_deviation_kg: f64,
    /// Correlation between both.
    pub correlation: f64,
    /// Where all come from.
    pub source: Source,
}

/// Months of steady training that a status stands for.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StatusMonths {
    /// The status.
    pub training: Training,
    /// The months.
    pub months: f64,
    /// Where the number comes from.
    pub source: Source,
}

/// A number with its source.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TabledValue {
    /// The number.
    pub value: f64,
    /// Where it comes from.
    pub source: Source,
}

/// A standard deviation with its source.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TabledDeviation {
    /// The standard deviation.
    pub deviation: f64,
    /// Where it comes from.
    pub source: Source,
}

/// Strength after months of training.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TrainingGain {
    /// Months of steady training.
    pub months: f64,
    /// Logarithm of strength over that of the untrained.
    pub gain: f64,
    /// Where it comes from.
    pub source: Source,
}

impl PersonTable {
    /// Standard deviation of the logarithm of strength between people alike in sex and training.
    ///
    /// ```text
    /// σ² = ln(1 + mean of (deviation/mean)²)
    /// ```
    /// **Shape.** Nearly the root mean square of the coefficients of variation. **Source.** The lognormal distribution
    /// with that coefficient of variation (textbook). **Fails.** Never.
    #[must_use]
    pub fn between_people(&self) -> f64 {
        let squares = self
            .between_people
            .iter()
            .map(|group| (group.deviation / group.mean).powi(2));
        let mean = squares.sum::<f64>() / self.between_people.len() as f64;
        (1.0 + mean).ln().sqrt()
    }

    /// The part of that scatter which people of one body mass still have.
    ///
    /// ```text
    /// σ_b² = ln(1 + mean of ((deviation/mean)² − m²)),   m = 0 for maxima over body mass
    /// ```
    /// `m` is the deviation of body mass over its mean, of both sexes: strength goes with mass, so groups told in
    /// kilograms scatter by their bodies too. **Shape.** Less than [`PersonTable::between_people`]; 0 where bodies alone
    /// explain the groups. **Source.** Variances of independent factors add (textbook). **Fails.** Never.
    #[must_use]
    pub fn beyond_bodies(&self) -> f64 {
        let bodies = self.bodies.iter();
        let by_mass = bodies
            .map(|body| (body.mass_deviation_kg / body.mass_kg).powi(2))
            .sum::<f64>()
            / (self.bodies.len() as f64).max(1.0);
        let squares = self.between_people.iter().map(|group| {
            let explained = if group.over_body_mass { 0.0 } else { by_mass };
            (group.deviation / group.mean).powi(2) - explained
        });
        let mean = squares.sum::<f64>() / self.between_people.len() as f64;
        (1.0 + mean.max(0.0)).ln().sqrt()
    }

    /// The bodies of a sex; none where the table has no row of it.
    #[must_use]
    pub fn bodies_of(&self, sex: Sex) -> Option<&BodiesOfSex> {
        self.bodies.iter().find(|bodies| bodies.sex == sex)
    }

    /// Logarithm of the strength that people of a training status have over the untrained.
    #[must_use]
    pub fn gain_of(&self, training: Training) -> f64 {
        let mut rows = self.statuses.iter();
        let row = rows.find(|row| row.training == training);
        row.map_or(0.0, |row| self.gain(row.months))
    }

    /// Logarithm of the strength that so many months of training give over none, straight between the rows.
    #[must_use]
    pub fn gain(&self, months: f64) -> f64 {
        let rows = &self.training;
        let above = rows.partition_point(|row| row.months <= months);
        match (above.checked_sub(1).map(|k| &rows[k]), rows.get(above)) {
            (Some(low), Some(high)) => {
                let part = (months - low.months) / (high.months - low.months);
                low.gain + part * (high.gain - low.gain)
            }
            (Some(last), None) => last.gain,
            (None, first) => first.map_or(0.0, |first| first.gain),
        }
    }
}
