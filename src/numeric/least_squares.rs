//! Curves fitted to data by least squares, with bounds on their parameters.
//!
//! In: a function from parameters to residuals, bounds, one or several starts. Out: the parameters
//! with the smallest sum of squares, and which of them lie at a bound.
//!
//! No command uses it yet: it stands here for the calibration of muscles, which comes next.
#![allow(dead_code)]

use crate::error::{Error, FitFault, Result};
use nalgebra::{DMatrix, DVector};

/// The most steps of one fit.
const MOST_STEPS: usize = 500;
/// A gradient below this share of what rounding and the residuals permit counts as zero. Assumed.
const FLAT: f64 = 1e-10;
/// A step below this share of a parameter's size ends the search. Assumed.
const SHORT: f64 = 1e-12;
/// Damping at the start, relative to the curvature of each parameter. Common practice.
const FIRST_DAMPING: f64 = 1e-3;
/// Damping at which a step is too short to mean anything. Assumed.
const LAST_DAMPING: f64 = 1e16;

/// The interval in which a parameter must stay; infinite where there is no bound.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Smallest permitted value.
    pub low: f64,
    /// Largest permitted value.
    pub high: f64,
}

impl Interval {
    /// No bound on either side.
    pub const FREE: Self = Self {
        low: f64::NEG_INFINITY,
        high: f64::INFINITY,
    };

    /// The interval between two values.
    #[must_use]
    pub const fn new(low: f64, high: f64) -> Self {
        Self { low, high }
    }

    fn clamp(self, x: f64) -> f64 {
        x.max(self.low).min(self.high)
    }

    /// The size at which a parameter's changes matter.
    fn size(self, x: f64) -> f64 {
        let width = self.high - self.low;
        if width.is_finite() {
            x.abs().max(0.01 * width)
        } else if x == 0.0 {
            1.0
        } else {
            x.abs()
        }
    }
}

/// The best parameters found.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// The parameters, within their intervals.
    pub parameters: Vec<f64>,
    /// What is left of the data at these parameters.
    pub residuals: Vec<f64>,
    /// Sum of the squared residuals.
    pub sum_of_squares: f64,
    /// Which parameters lie at a bound that keeps them from a better fit.
    pub at_bound: Vec<bool>,
    /// How many steps were taken.
    pub steps: usize,
    /// Whether the search ended because nothing better was near, not because it took too long.
    pub is_settled: bool,
}

/// The parameters with the least sum of squared residuals near a start.
///
/// ```text
/// minimise Σ r_i(p)²,   low ≤ p ≤ high
/// (JᵀJ + μ diag JᵀJ) δ = −Jᵀ r   over the parameters that no bound holds;   p ← p + δ, cut at the bounds
/// ```
/// | symbol | meaning                                                    | range |
/// | ------ | ---------------------------------------------------------- | ----- |
/// | `p`    | parameters                                                 | in their intervals |
/// | `r`    | residuals, in units that make them comparable              | finite at the start |
/// | `J`    | slopes ∂r/∂p, by finite differences                        | –     |
/// | `μ`    | damping: falls after good steps, rises after bad ones      | > 0   |
///
/// **Shape.** Finds a minimum near the start; there may be others, so use [`best_fit`] with several.
/// A parameter that does not matter stays where it is.
/// **Source.** Levenberg 1944, Q. Appl. Math. 2:164-168; Marquardt 1963, J. SIAM 11:431-441; rule for
/// the damping: Nielsen 1999, report IMM-REP-1999-05 (all from memory).
/// **Fails.** When the start lies outside its intervals, or a residual there is not finite. Places
/// where a residual is not finite are then avoided.
///
/// # Errors
/// See **Fails**.
pub fn fit(
    start: &[f64],
    intervals: &[Interval],
    mut residuals: impl FnMut(&[f64]) -> Vec<f64>,
) -> Result<Fit> {
    check_start(start, intervals)?;
    let mut state = State::new(start, intervals, &mut residuals)?;
    let mut steps = 0;
    let is_settled = loop {
        let slopes = state.slopes(&mut residuals);
        let gradient = slopes.tr_mul(&state.residuals);
        state.hold(&gradient);
        if state.is_flat(&slopes, &gradient) {
            break true;
        }
        if steps == MOST_STEPS {
            break false;
        }
        steps += 1;
        if !state.improve(&slopes, &gradient, &mut residuals) {
            break true;
        }
    };
    Ok(Fit {
        parameters: state.place,
        sum_of_squares: state.squares,
        residuals: state.residuals.iter().copied().collect(),
        at_bound: state.held,
        steps,
        is_settled,
    })
}

/// The best of the fits from several starts; the first one when two are equally good.
///
/// # Errors
/// When there is no start, or a start fails as in [`fit`].
pub fn best_fit(
    starts: &[Vec<f64>],
    intervals: &[Interval],
    mut residuals: impl FnMut(&[f64]) -> Vec<f64>,
) -> Result<Fit> {
    let mut best: Option<Fit> = None;
    for start in starts {
        let next = fit(start, intervals, &mut residuals)?;
        if best
            .as_ref()
            .is_none_or(|best| next.sum_of_squares < best.sum_of_squares)
        {
            best = Some(next);
        }
    }
    best.ok_or_else(|| Error::bad(FitFault::NoStart))
}

fn check_start(start: &[f64], intervals: &[Interval]) -> Result<()> {
    if start.is_empty() || start.len() != intervals.len() {
        return Err(Error::bad(FitFault::UnevenIntervals {
            intervals: intervals.len(),
            parameters: start.len(),
        }));
    }
    for (k, (&x, interval)) in start.iter().zip(intervals).enumerate() {
        let is_inside = interval.low <= x && x <= interval.high && x.is_finite();
        if !is_inside {
            return Err(Error::bad(FitFault::StartOutside {
                parameter: k,
                start: x,
                low: interval.low,
                high: interval.high,
            }));
        }
    }
    Ok(())
}

struct State<'a> {
    intervals: &'a [Interval],
    place: Vec<f64>,
    residuals: DVector<f64>,
    squares: f64,
    /// Parameters at a bound towards which the sum of squares falls.
    held: Vec<bool>,
    damping: f64,
    growth: f64,
}

impl<'a> State<'a> {
    fn new(
        start: &[f64],
        intervals: &'a [Interval],
        residuals: &mut impl FnMut(&[f64]) -> Vec<f64>,
    ) -> Result<Self> {
        let first = DVector::from_vec(residuals(start));
        let squares = first.norm_squared();
        if first.is_empty() || !squares.is_finite() {
            return Err(Error::no_answer(FitFault::StartNotFinite {
                residuals: first.len(),
            }));
        }
        Ok(Self {
            intervals,
            place: start.to_vec(),
            residuals: first,
            squares,
            held: vec![false; start.len()],
            damping: FIRST_DAMPING,
            growth: 2.0,
        })
    }

    /// `∂r/∂p` by central differences, one-sided at a bound.
    fn slopes(&self, residuals: &mut impl FnMut(&[f64]) -> Vec<f64>) -> DMatrix<f64> {
        let step = f64::EPSILON.cbrt();
        let mut slopes = DMatrix::zeros(self.residuals.len(), self.place.len());
        let mut place = self.place.clone();
        for (j, interval) in self.intervals.iter().enumerate() {
            let reach = step * interval.size(self.place[j]);
            let (above, below) = (
                interval.clamp(self.place[j] + reach),
                interval.clamp(self.place[j] - reach),
            );
            place[j] = above;
            let high = residuals(&place);
            place[j] = below;
            let low = residuals(&place);
            place[j] = self.place[j];
            let width = above - below;
            for (slope, (high, low)) in slopes.column_mut(j).iter_mut().zip(high.iter().zip(&low)) {
                let rise = (high - low) / width;
                *slope = if rise.is_finite() { rise } else { 0.0 };
            }
        }
        slopes
    }

    /// Marks the parameters that a bound keeps from going downhill.
    fn hold(&mut self, gradient: &DVector<f64>) {
        for (j, interval) in self.intervals.iter().enumerate() {
            let x = self.place[j];
            self.held[j] = (x <= interval.low && gradient[j] >= 0.0)
                || (x >= interval.high && gradient[j] <= 0.0);
        }
    }

    fn is_flat(&self, slopes: &DMatrix<f64>, gradient: &DVector<f64>) -> bool {
        let length = self.squares.sqrt();
        (0..self.place.len())
            .all(|j| self.held[j] || gradient[j].abs() <= FLAT * slopes.column(j).norm() * length)
    }

    /// Raises the damping until a step helps; `false` when none does.
    fn improve(
        &mut self,
        slopes: &DMatrix<f64>,
        gradient: &DVector<f64>,
        residuals: &mut impl FnMut(&[f64]) -> Vec<f64>,
    ) -> bool {
        let curvature = slopes.tr_mul(slopes);
        while self.damping < LAST_DAMPING {
            let Some(trial) = self.trial(&curvature, gradient) else {
                self.raise_damping();
                continue;
            };
            let step = DVector::from_fn(trial.len(), |j, _| trial[j] - self.place[j]);
            if self.is_short(&step) {
                return false;
            }
            let next = DVector::from_vec(residuals(&trial));
            let squares = next.norm_squared();
            let predicted = -2.0 * step.dot(gradient) - (slopes * &step).norm_squared();
            if squares < self.squares {
                self.lower_damping((self.squares - squares) / predicted);
                self.place = trial;
                self.residuals = next;
                self.squares = squares;
                return true;
            }
            self.raise_damping();
        }
        false
    }

    /// The damped step over the parameters that are not held, cut at the bounds.
    fn trial(&self, curvature: &DMatrix<f64>, gradient: &DVector<f64>) -> Option<Vec<f64>> {
        let free: Vec<usize> = (0..self.place.len())
            .filter(|&j| !self.held[j] && curvature[(j, j)] > 0.0)
            .collect();
        let matrix = DMatrix::from_fn(free.len(), free.len(), |a, b| {
            let entry = curvature[(free[a], free[b])];
            if a == b {
                entry * (1.0 + self.damping)
            } else {
                entry
            }
        });
        let downhill = DVector::from_fn(free.len(), |a, _| -gradient[free[a]]);
        let step = matrix.cholesky()?.solve(&downhill);
        let mut trial = self.place.clone();
        for (&j, change) in free.iter().zip(step.iter()) {
            trial[j] = self.intervals[j].clamp(trial[j] + change);
        }
        trial.iter().all(|x| x.is_finite()).then_some(trial)
    }

    fn is_short(&self, step: &DVector<f64>) -> bool {
        (0..self.place.len())
            .all(|j| step[j].abs() <= SHORT * self.intervals[j].size(self.place[j]))
    }

    fn raise_damping(&mut self) {
        self.damping *= self.growth;
        self.growth *= 2.0;
    }

    fn lower_damping(&mut self, gain: f64) {
        let gain = if gain.is_finite() {
            gain.clamp(0.0, 1.0)
        } else {
            0.0
        };
        self.damping *= (1.0 - (2.0 * gain - 1.0).powi(3)).max(1.0 / 3.0);
        self.growth = 2.0;
    }
}
