//! Whether a normal distribution is right for what a fit found: held to draws weighed by the model itself.
//!
//! In: a fit. Out: [`FitCheck`].

use super::fit_ground::{FitGround, Found};
use super::person_forecast::LiftForecast;
use crate::error::Result;
use nalgebra::DVector;
use rayon::prelude::*;

/// How many draws.
const DRAWS: u64 = 160;

/// What the draws show.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FitCheck {
    /// How many were drawn.
    pub draws: usize,
    /// How many independent draws they are worth once each is weighed by the model.
    pub effective: f64,
    /// The largest shift of a maximum's mean by the weights, in its own standard deviations.
    pub largest_shift: f64,
}

/// Draws strengths from the normal distribution of the fit and weighs each by what the model makes of it.
///
/// ```text
/// w ∝ exp(−½ Σ_i [(y_i − f_i(x))² − (y_i − f_i(x̂) − J_i(x − x̂))²]/v_i),      n = (Σw)²/Σw²
/// ```
/// | symbol     | meaning                                                        |
/// | ---------- | -------------------------------------------------------------- |
/// | `x̂, x`     | most probable strengths, a draw                                |
/// | `f, J`     | what the model says, and its slopes; lifts bend as when held still |
/// | `y, v`     | measurements and variances of their errors                     |
///
/// **Shape.** All weights are alike, `n` is the number of draws, where the model is straight over what is plausible.
/// **Source.** Importance sampling; effective size: Kish 1965 (from memory). **Fails** where the measurements cannot be reckoned at the fit.
pub(super) fn fit_check(
    ground: &FitGround,
    found: &Found,
    lifts: &[LiftForecast],
    seed: u64,
) -> Result<FitCheck> {
    let mean = &found.belief.mean;
    let root = found.belief.root();
    let still = |values: &DVector<f64>| -> Result<Vec<f64>> {
        let of = ground.data.iter();
        of.map(|datum| datum.reckoned_still(&ground.lifts, &ground.factors, values))
            .collect()
    };
    let at_mean = still(mean)?;
    // How much more the lift in motion gains by strength than the one held still.
    let gains = ground
        .data
        .iter()
        .zip(&found.slopes)
        .zip(&at_mean)
        .map(|((datum, slopes), at)| {
            let step = 0.05;
            let mut moved = mean.clone();
            moved[0] += step;
            let beside = datum.reckoned_still(&ground.lifts, &ground.factors, &moved)?;
            Ok(slopes[0] * step / (beside - at))
        })
        .collect::<Result<Vec<f64>>>()?;
    let draws: Vec<DVector<f64>> = (0..DRAWS)
        .map(|number| found.belief.draw(&root, seed, number))
        .collect();
    let logs: Vec<f64> = draws
        .par_iter()
        .map(|draw| {
            // A draw that cannot keep a pose cannot have shown what was measured.
            let Ok(bent) = still(draw) else {
                return f64::NEG_INFINITY;
            };
            let each = ground.data.iter().enumerate();
            each.map(|(k, datum)| {
                let miss = datum.measured.log_value - found.reckoned[k];
                let straight = found.slopes[k].dot(&(draw - mean));
                let bent = gains[k] * (bent[k] - at_mean[k]);
                let squares = (miss - bent).powi(2) - (miss - straight).powi(2);
                -0.5 * squares / datum.measured.variance
            })
            .sum()
        })
        .collect();
    let largest = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = logs.iter().map(|log| (log - largest).exp()).collect();
    let sum: f64 = weights.iter().sum();
    let squares: f64 = weights.iter().map(|weight| weight * weight).sum();
    let shift = |lift: &LiftForecast| {
        let moved = draws.iter().map(|draw| lift.slopes.dot(&(draw - mean)));
        let moved: Vec<f64> = moved.collect();
        let plain: f64 = moved.iter().sum::<f64>() / moved.len() as f64;
        let weighed = moved.iter().zip(&weights).map(|(m, w)| m * w);
        let weighed: f64 = weighed.sum::<f64>() / sum;
        ((weighed - plain) / lift.deviation.max(1.0e-9)).abs()
    };
    Ok(FitCheck {
        draws: draws.len(),
        effective: sum * sum / squares,
        largest_shift: lifts.iter().map(shift).fold(0.0, f64::max),
    })
}
