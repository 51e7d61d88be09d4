//! Summaries of samples and straight lines through noisy points.
//!
//! In: numbers or `(x, y)` points. Out: quantiles, and lines with their uncertainty.

use super::crossing::bisect;
use super::kendall::kendall_spread;
use crate::error::{Error, FitFault, Result};

/// The value below which a share of the numbers lies, by straight lines between the ranks.
///
/// ```text
/// h = (n − 1) p,   q = x_⌊h⌋ + (h − ⌊h⌋)(x_⌊h⌋₊₁ − x_⌊h⌋),   x sorted, counted from 0
/// ```
/// **Shape.** `p = 0` gives the smallest, ½ the median, 1 the largest.
/// **Source.** Hyndman & Fan 1996, Am. Stat. 50:361-365, definition 7 (from memory).
/// **Fails.** `None` of no numbers, a NaN among them, or a share outside 0 to 1.
#[must_use]
pub fn quantile(numbers: &[f64], share: f64) -> Option<f64> {
    if numbers.is_empty() || numbers.iter().any(|x| x.is_nan()) || !(0.0..=1.0).contains(&share) {
        return None;
    }
    let mut sorted = numbers.to_vec();
    sorted.sort_by(f64::total_cmp);
    Some(at_rank(&sorted, (sorted.len() - 1) as f64 * share))
}

/// The median: half of the numbers lie on either side; `None` of no numbers or with a NaN.
#[must_use]
pub fn median(numbers: &[f64]) -> Option<f64> {
    quantile(numbers, 0.5)
}

/// Mean and standard deviation (n − 1) of a list.
///
/// **Fails.** `None` with fewer than two entries.
#[must_use]
pub fn mean_and_deviation(values: &[f64]) -> Option<(f64, f64)> {
    if values.len() < 2 {
        return None;
    }
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let squares: f64 = values.iter().map(|v| (v - mean).powi(2)).sum();
    Some((mean, (squares / (values.len() - 1) as f64).sqrt()))
}

/// Mean of values at equal steps of a range: those at its ends stand for half a step each.
///
/// ```text
/// mean = (½·x₀ + x₁ + … + x_n₋₁ + ½·x_n)/n          the trapezoid rule
/// ```
/// **Shape.** Exact for a straight line; halves of a range have the whole one's mean between theirs.
/// **Fails.** NaN of no values.
#[must_use]
pub fn range_mean(values: &[f64]) -> f64 {
    let [first, .., last] = values else {
        return values.first().copied().unwrap_or(f64::NAN);
    };
    (values.iter().sum::<f64>() - 0.5 * (first + last)) / (values.len() - 1) as f64
}

/// The value at a fractional rank of sorted numbers, counted from 0.
fn at_rank(sorted: &[f64], rank: f64) -> f64 {
    let below = rank.floor() as usize;
    let above = (below + 1).min(sorted.len() - 1);
    let share = rank - rank.floor();
    if share == 0.0 {
        sorted[below]
    } else {
        sorted[below] + share * (sorted[above] - sorted[below])
    }
}

/// A straight line by least squares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RegressionLine {
    /// Rise of `y` per unit of `x`.
    pub slope: f64,
    /// `y` at `x = 0`.
    pub intercept: f64,
    /// Share of the variance of `y` that the line explains, 0 to 1; 1 when `y` never changes.
    pub r_squared: f64,
    /// Standard error of the slope; `None` with two points, which leave nothing over to judge by.
    pub slope_error: Option<f64>,
}

/// The straight line with the least sum of squared vertical distances.
///
/// ```text
/// slope = Σ(x − x̄)(y − ȳ) / Σ(x − x̄)²,   R² = 1 − Σ(y − ŷ)² / Σ(y − ȳ)²
/// error = √( Σ(y − ŷ)² / (n − 2) / Σ(x − x̄)² )
/// ```
/// **Source.** Ordinary least squares (textbook).
/// **Fails.** With fewer than two different `x`, or a number that is not finite.
///
/// # Errors
/// See **Fails**.
pub fn linear_regression(points: &[(f64, f64)]) -> Result<RegressionLine> {
    check_points(points)?;
    let n = points.len() as f64;
    let x_mean = points.iter().map(|p| p.0).sum::<f64>() / n;
    let y_mean = points.iter().map(|p| p.1).sum::<f64>() / n;
    let sum = |term: &dyn Fn(f64, f64) -> f64| -> f64 {
        points
            .iter()
            .map(|p| term(p.0 - x_mean, p.1 - y_mean))
            .sum()
    };
    let (xx, xy, yy) = (sum(&|x, _| x * x), sum(&|x, y| x * y), sum(&|_, y| y * y));
    let slope = xy / xx;
    let left = sum(&|x, y| (y - slope * x) * (y - slope * x));
    Ok(RegressionLine {
        slope,
        intercept: y_mean - slope * x_mean,
        r_squared: if yy > 0.0 {
            (1.0 - left / yy).max(0.0)
        } else {
            1.0
        },
        slope_error: (points.len() > 2).then(|| (left / (n - 2.0) / xx).sqrt()),
    })
}

/// A straight line that a few wild points do not sway.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RobustLine {
    /// Median rise of `y` per unit of `x` over all pairs of points.
    pub slope: f64,
    /// Median of `y − slope · x`.
    pub intercept: f64,
    /// Lowest and highest slope compatible with the points at the confidence asked for; `None` when
    /// there are too few points for that confidence.
    pub slope_range: Option<(f64, f64)>,
}

/// The median of the slopes between all pairs of points, with its confidence interval.
///
/// ```text
/// slope = median of (y_j − y_i) / (x_j − x_i) over the N pairs with x_i ≠ x_j
/// C = z √( [n(n−1)(2n+5) − Σ u(u−1)(2u+5)] / 18 )
/// range = the slopes of rank M and N + 1 − M, counted from 1,   M = ⌊(N − C)/2⌋
/// ```
/// | symbol | meaning                                              | range     |
/// | ------ | ---------------------------------------------------- | --------- |
/// | `n`    | number of points                                     | ≥ 2       |
/// | `u`    | size of each group of points with one `x`            | ≥ 1       |
/// | `z`    | normal quantile of (1 + confidence)/2                | > 0       |
///
/// **Shape.** Up to 29 % of the points may be wild. A rank between two slopes is rounded outwards. With six points or
/// fewer, no two of one `x`, `C` is exact ([`kendall_spread`]); the worked example of Sen's paper, seven points at 93 %,
/// has the wider interval of the normal law.
/// **Source.** Theil 1950, Proc. K. Ned. Akad. Wet. 53:386-392; Sen 1968, J. Am. Stat. Assoc.
/// 63:1379-1389, with Kendall's variance (from memory).
/// **Fails.** With fewer than two different `x`, a number that is not finite, or a confidence outside
/// 0 to 1.
///
/// # Errors
/// See **Fails**.
pub fn theil_sen(points: &[(f64, f64)], confidence: f64) -> Result<RobustLine> {
    check_points(points)?;
    if !(confidence > 0.0 && confidence < 1.0) {
        return Err(Error::bad(FitFault::ConfidenceOutside { confidence }));
    }
    let mut slopes = Vec::new();
    for (k, a) in points.iter().enumerate() {
        let others = points[k + 1..].iter().filter(|b| b.0 != a.0);
        slopes.extend(others.map(|b| (b.1 - a.1) / (b.0 - a.0)));
    }
    slopes.sort_by(f64::total_cmp);
    let count = slopes.len() as f64;
    let slope = at_rank(&slopes, (count - 1.0) / 2.0);
    let mut heights: Vec<f64> = points.iter().map(|p| p.1 - slope * p.0).collect();
    heights.sort_by(f64::total_cmp);
    let is_counted =
        points.len() <= COUNTED_UP_TO && slopes.len() == points.len() * (points.len() - 1) / 2;
    let spread = match kendall_spread(points.len(), confidence).filter(|_| is_counted) {
        Some(exact) => exact,
        None => normal_quantile((1.0 + confidence) / 2.0)? * kendall_variance(points).sqrt(),
    };
    let rank = ((count - spread) / 2.0).floor();
    Ok(RobustLine {
        slope,
        intercept: at_rank(&heights, (heights.len() - 1) as f64 / 2.0),
        slope_range: (rank >= 1.0).then(|| {
            let index = rank as usize - 1;
            (slopes[index], slopes[slopes.len() - 1 - index])
        }),
    })
}

/// Most points for which the score is counted out: below the seven of the worked example.
const COUNTED_UP_TO: usize = 6;

/// Variance of Kendall's score for points some of which share their `x`.
fn kendall_variance(points: &[(f64, f64)]) -> f64 {
    let term = |u: usize| (u * (u - 1) * (2 * u + 5)) as f64;
    let mut places: Vec<f64> = points.iter().map(|p| p.0).collect();
    places.sort_by(f64::total_cmp);
    let groups = places.chunk_by(|a, b| a == b);
    let tied: f64 = groups.map(|group| term(group.len())).sum();
    (term(points.len()) - tied) / 18.0
}

/// The place below which this share of a normal distribution lies.
///
/// ```text
/// Φ(x) = ½ + φ(x) (x + x³/3 + x⁵/(3·5) + x⁷/(3·5·7) + …)
/// ```
/// **Shape.** −∞ at 0 and +∞ at 1 are not reached; odd about ½.
/// **Source.** Series for Φ: Marsaglia 2004, J. Stat. Softw. 11(4) (from memory); inverted by halving.
/// **Fails.** For a share that is not between 0 and 1, or nearer to them than 1e-15.
///
/// # Errors
/// See **Fails**.
pub fn normal_quantile(share: f64) -> Result<f64> {
    const FARTHEST: f64 = 8.0;
    if !(1e-15..=1.0 - 1e-15).contains(&share) {
        return Err(Error::bad(FitFault::ShareOutside { share }));
    }
    // The series keeps its digits in the upper half only, so the lower half is mirrored.
    if share < 0.5 {
        return Ok(-normal_quantile(1.0 - share)?);
    }
    Ok(bisect(-1.0, FARTHEST, 0.0, |x| normal_share(x) <= share)?.below)
}

fn normal_share(x: f64) -> f64 {
    let (mut sum, mut term, mut odd) = (x, x, 1.0);
    while (sum + term) != sum || odd < 3.0 {
        odd += 2.0;
        term *= x * x / odd;
        sum += term;
    }
    0.5 + sum * (-x * x / 2.0).exp() / (2.0 * std::f64::consts::PI).sqrt()
}

fn check_points(points: &[(f64, f64)]) -> Result<()> {
    if let Some(k) = points
        .iter()
        .position(|p| !p.0.is_finite() || !p.1.is_finite())
    {
        let (x, y) = points[k];
        return Err(Error::bad(FitFault::LinePointNotFinite {
            point: k + 1,
            x,
            y,
        }));
    }
    if points.iter().all(|p| p.0 == points[0].0) {
        let points = points.len();
        return Err(Error::bad(FitFault::LineOfOnePlace { points }));
    }
    Ok(())
}
