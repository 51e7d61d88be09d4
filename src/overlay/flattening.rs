//! Flattening: how much a setup evens out effort over the range against plain weight.

use crate::numeric::range_mean;

/// Spread of an effort curve at equal steps of the range: standard deviation over mean.
///
/// ```text
/// spread = √(mean((e − ē)²))/ē          means over the range, the ends standing for half a step
/// ```
/// **Fails.** `None` for a curve whose mean is not positive or that is not finite.
#[must_use]
pub fn spread(effort: &[f64]) -> Option<f64> {
    let mean = range_mean(effort);
    if mean.is_nan() || mean <= 0.0 || !mean.is_finite() {
        return None;
    }
    let squares: Vec<f64> = effort.iter().map(|e| (e - mean).powi(2)).collect();
    Some(range_mean(&squares).sqrt() / mean)
}

/// Flattening of a setup against plain weight, %.
///
/// ```text
/// 100·(1 − spread(setup)/spread(plain))
/// ```
/// Both curves scaled to one greatest effort have the same spread as unscaled ones, since the spread is
/// relative; the caller scales the *bar load*, which does change it. 0 = nothing gained, 100 = effort is
/// constant, negative = made worse. **Source.** Definition of the model.
/// **Fails.** `None` where a spread is undefined or plain weight is already even.
#[must_use]
pub fn flattening_percent(setup: &[f64], plain: &[f64]) -> Option<f64> {
    let plain = spread(plain)?;
    let setup = spread(setup)?;
    if plain <= 1.0e-12 {
        return (setup <= 1.0e-12).then_some(0.0);
    }
    Some(100.0 * (1.0 - setup / plain))
}
