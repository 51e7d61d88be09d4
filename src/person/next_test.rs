//! What another measurement would be worth.
//!
//! In: what is believed, what is to be known, a measurement that could be done. Out: how much narrower it would become.

use crate::numeric::{Belief, Observation};
use nalgebra::DVector;

/// The share by which the deviations of what is to be known would shrink, on average, were a measurement done.
///
/// ```text
/// 1 − Σ_l √(w_lᵀ C′ w_l)/Σ_l √(w_lᵀ C w_l),      C′ = C − C h hᵀC/(hᵀC h + r)
/// ```
/// | symbol | meaning                                               |
/// | ------ | ----------------------------------------------------- |
/// | `w_l`  | weights of one of the values that are to be known      |
/// | `h, r` | slopes of the measurement, variance of its error       |
///
/// **Shape.** 0 to 1; what is measured does not matter, only that it is, since the belief is normal.
/// **Source.** Design of experiments for a linear normal model (textbook). **Fails.** Never.
#[must_use]
pub fn narrowing(
    belief: &Belief,
    wanted: &[DVector<f64>],
    slopes: &DVector<f64>,
    variance: f64,
) -> f64 {
    let seen = Observation {
        slopes: slopes.clone(),
        value: slopes.dot(&belief.mean),
        variance,
    };
    let after = belief.given(std::slice::from_ref(&seen));
    let sum = |belief: &Belief| -> f64 {
        let deviations = wanted.iter().map(|weights| belief.along(weights).1.sqrt());
        deviations.sum()
    };
    1.0 - sum(&after) / sum(belief)
}
