//! What is believed of a person's strengths before anything is measured.
//!
//! In: the table of scatter, what the calibration left open, the model's own error. Out: a [`Belief`] over the factors.

use super::person_factors::{PersonFactors, StrengthFactor};
use super::person_table::PersonTable;
use crate::numeric::Belief;
use nalgebra::{DMatrix, DVector};
use std::collections::BTreeMap;

/// What a prior stands on beside the table.
#[derive(Debug, Clone, PartialEq)]
pub struct PriorGrounds {
    /// Months of steady training.
    pub months: f64,
    /// Relative standard deviation that the calibration left each strength group.
    pub calibrated: BTreeMap<String, f64>,
    /// Root mean square of the logarithm by which the model misses one lift beside another, over √2.
    pub miss_of_lift: f64,
    /// Root mean square of the logarithm by which the model misses the strength of whole groups of people.
    pub miss_of_strength: f64,
    /// What the logarithm of each lift's maximum gains by one of the logarithm of strength.
    pub gains: BTreeMap<String, f64>,
}

/// The belief before any measurement.
///
/// ```text
/// whole   ~ N(gain(months), ρ σ² + max(0, m_s² − m_l²))
/// group g ~ N(0, (1 − ρ) σ² + c_g²)
/// lift l  ~ N(0, (m_l/e_l)²)
/// ```
/// | symbol     | meaning                                                             |
/// | ---------- | ------------------------------------------------------------------- |
/// | `σ, ρ`     | scatter between people, correlation between two of their groups       |
/// | `c_g`      | what the calibration left open of the group's strength                |
/// | `m_l, m_s` | what the model misses one lift beside others by, and strength at all  |
/// | `e_l`      | gain of the lift's maximum by strength                                |
///
/// All are independent, so two groups correlate by what is common to them. **Source.** `models/published/person.ron`,
/// `models/calibration/posterior.ron` and `errors_of_lifts.ron`. **Fails.** Never.
#[must_use]
pub fn prior(table: &PersonTable, factors: &PersonFactors, grounds: &PriorGrounds) -> Belief {
    let between = table.between_people().powi(2);
    let shared = table.correlation.value * between;
    let missed = grounds.miss_of_strength.powi(2) - grounds.miss_of_lift.powi(2);
    let variance = |factor: &StrengthFactor| match factor {
        StrengthFactor::Whole => shared + missed.max(0.0),
        StrengthFactor::Group(group) => {
            let calibrated = grounds.calibrated.get(group).copied().unwrap_or(0.0);
            between - shared + calibrated.powi(2)
        }
        StrengthFactor::Lift(lift) => {
            let gain = grounds.gains.get(lift).copied().unwrap_or(1.0);
            (grounds.miss_of_lift / gain).powi(2)
        }
    };
    let variances: Vec<f64> = factors.all().iter().map(variance).collect();
    let mut mean = DVector::zeros(factors.count());
    mean[0] = table.gain(grounds.months);
    Belief {
        mean,
        covariance: DMatrix::from_diagonal(&DVector::from_vec(variances)),
    }
}
