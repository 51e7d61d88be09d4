//! Slopes by finite differences: for checks of exact derivatives, and where there is none.
//!
//! In: a function and a place. Out: its slope or its table of slopes, good to about ten digits.

/// Cube root of the machine's rounding: the step, relative to the size of a variable, at which
/// rounding and curvature errors of a central difference balance.
const STEP: f64 = 6.055_454_452_393_343e-6;

/// Slope of a function of one variable.
///
/// ```text
/// f′(x) ≈ (f(x + h) − f(x − h)) / 2h,   h = ∛ε · size
/// ```
/// | symbol | meaning                                               | range |
/// | ------ | ----------------------------------------------------- | ----- |
/// | `size` | over which distance `f` changes noticeably            | > 0   |
/// | `ε`    | rounding of the machine, 2⁻⁵²                         | –     |
///
/// **Shape.** Exact for parabolas but for rounding; error about 10⁻¹⁰ of `f / size`.
/// **Source.** Central difference with the usual choice of step (textbook).
/// **Fails.** Never; where `f` is no number, neither is the slope.
#[must_use]
pub fn slope_at(x: f64, size: f64, mut function: impl FnMut(f64) -> f64) -> f64 {
    let h = STEP * size;
    let (above, below) = (x + h, x - h);
    (function(above) - function(below)) / (above - below)
}

/// Slopes of several functions of several variables: one list a function, one number a variable.
///
/// `size[j]` says over which distance variable `j` matters; see [`slope_at`].
#[must_use]
pub fn jacobian_at(
    x: &[f64],
    size: &[f64],
    mut functions: impl FnMut(&[f64]) -> Vec<f64>,
) -> Vec<Vec<f64>> {
    let mut place = x.to_vec();
    let mut rows: Vec<Vec<f64>> = Vec::new();
    for (j, &reach) in size.iter().enumerate().take(x.len()) {
        let (above, below) = (x[j] + STEP * reach, x[j] - STEP * reach);
        place[j] = above;
        let high = functions(&place);
        place[j] = below;
        let low = functions(&place);
        place[j] = x[j];
        rows.resize(high.len().max(rows.len()), Vec::new());
        for (row, (high, low)) in rows.iter_mut().zip(high.iter().zip(&low)) {
            row.push((high - low) / (above - below));
        }
    }
    rows
}
