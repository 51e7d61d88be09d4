//! A smooth course and its slope through noisy points that need not be evenly spaced.
//!
//! In: points of rising level place. Out: value and slope at each of them.

/// Value and slope at every point of the parabola that fits its neighbours best.
///
/// ```text
/// minimise Σ_j (y_j − a − b (t_j − t) − c (t_j − t)²)²   over |t_j − t| ≤ h;      value a, slope b
/// ```
/// | symbol | meaning                   | range |
/// | ------ | ------------------------- | ----- |
/// | `t, y` | place and height of points | rising |
/// | `h`    | half of the window         | > 0   |
///
/// **Shape.** A parabola comes out as it went in, slope with it; noise shrinks with the number of neighbours. Where fewer
/// than three places are in reach, the nearest points are taken beside.
/// **Source.** Savitzky & Golay 1964, Anal. Chem. 36:1627-1639 (from memory): local least squares, here for any spacing.
/// **Fails.** Never; of fewer than three points the slope is 0.
#[must_use]
pub fn smoothed(points: &[(f64, f64)], half_width: f64) -> Vec<(f64, f64)> {
    let (mut first, mut behind) = (0, 0);
    let each = points.iter().map(|(at, height)| {
        while points[first].0 < at - half_width {
            first += 1;
        }
        while behind < points.len() && points[behind].0 <= at + half_width {
            behind += 1;
        }
        let (mut low, mut high) = (first, behind);
        while high - low < FEWEST && high - low < points.len() {
            low = low.saturating_sub(1);
            high = (high + 1).min(points.len());
        }
        local(&points[low..high], *at).unwrap_or((*height, 0.0))
    });
    each.collect()
}

/// Points that a parabola is fitted to at least.
const FEWEST: usize = 3;

/// Value and slope at a place of the parabola through some points; none where they lie at fewer than three places.
fn local(points: &[(f64, f64)], at: f64) -> Option<(f64, f64)> {
    let reach = points.iter().map(|(place, _)| (place - at).abs());
    let reach = reach.fold(0.0, f64::max);
    if points.len() < FEWEST || reach <= 0.0 {
        return None;
    }
    // Sums over powers of the distance, in units of the reach so that they are of one size.
    let mut powers = [0.0; 5];
    let mut moments = [0.0; 3];
    for (place, height) in points {
        let x = (place - at) / reach;
        let mut power = 1.0;
        for (k, sum) in powers.iter_mut().enumerate() {
            *sum += power;
            if k < moments.len() {
                moments[k] += power * height;
            }
            power *= x;
        }
    }
    let matrix = nalgebra::Matrix3::from_fn(|i, j| powers[i + j]);
    let right = nalgebra::Vector3::from(moments);
    let found = matrix.cholesky()?.solve(&right);
    Some((found[0], found[1] / reach))
}
