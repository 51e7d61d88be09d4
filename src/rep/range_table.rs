//! Several smooth functions of the range at once, on evenly spaced places.
//!
//! In: values at places 0, h, 2h, … 1. Out: all values and slopes at any place, C¹. One look-up serves
//! every function, because the equation of motion asks for all of them at each step.

/// Values of `K` functions and their slopes at evenly spaced places of the range.
///
/// ```text
/// f(s) = y₀·H₀₀ + h·m₀·H₁₀ + y₁·H₀₁ + h·m₁·H₁₁          m_k = (y_{k+1} − y_{k−1})/2h
/// ```
/// `H` Hermite's cubics on the cell, `h` its width; at the ends `m` is that of the parabola through the
/// three nearest places. **Shape.** C¹, exact for parabolas; error of order h³ where `f` is smooth; may
/// pass a kink by a share of the step there. **Source.** Cubic Hermite interpolation (textbook).
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Table<const K: usize> {
    width: f64,
    values: Vec<[f64; K]>,
    slopes: Vec<[f64; K]>,
}

impl<const K: usize> Table<K> {
    /// Through at least three rows, the first at 0 and the last at 1.
    pub(super) fn through(values: Vec<[f64; K]>) -> Self {
        let last = values.len() - 1;
        let width = 1.0 / last as f64;
        let slope = |row: usize, k: usize| {
            let y = |r: usize| values[r][k];
            if row == 0 {
                (4.0 * y(1) - 3.0 * y(0) - y(2)) / (2.0 * width)
            } else if row == last {
                (3.0 * y(last) - 4.0 * y(last - 1) + y(last - 2)) / (2.0 * width)
            } else {
                (y(row + 1) - y(row - 1)) / (2.0 * width)
            }
        };
        let slopes = (0..=last)
            .map(|row| std::array::from_fn(|k| slope(row, k)))
            .collect();
        Self {
            width,
            values,
            slopes,
        }
    }

    /// Through at least five rows of functions without kinks, the first at 0 and the last at 1.
    ///
    /// ```text
    /// m_k = (y_{k−2} − 8y_{k−1} + 8y_{k+1} − y_{k+2})/12h
    /// ```
    /// At the two places next to an end `m` is that of the quartic through the five nearest places.
    /// **Shape.** As [`Table::through`], but the slope's error is of order h³, not h²: it does not swing from place to
    /// place where a function climbs ever more steeply, as inertia does towards a straight limb.
    /// **Source.** Five-point differences (textbook).
    pub(super) fn through_smooth(values: Vec<[f64; K]>) -> Self {
        /// Weights of five neighbours, times 12, for the slope at the first, second and middle one.
        const WEIGHTS: [[f64; 5]; 3] = [
            [-25.0, 48.0, -36.0, 16.0, -3.0],
            [-3.0, -10.0, 18.0, -6.0, 1.0],
            [1.0, -8.0, 0.0, 8.0, -1.0],
        ];
        let last = values.len() - 1;
        let width = 1.0 / last as f64;
        let slope = |row: usize, k: usize| {
            let from_end = last - row;
            let sum: f64 = if from_end < 2 {
                let at = |i: usize| values[last - i][k];
                let weights = WEIGHTS[from_end].iter().enumerate();
                -weights.map(|(i, w)| w * at(i)).sum::<f64>()
            } else {
                let first = row.saturating_sub(2);
                let weights = WEIGHTS[row - first].iter().enumerate();
                weights.map(|(i, w)| w * values[first + i][k]).sum()
            };
            sum / (12.0 * width)
        };
        let slopes = (0..=last)
            .map(|row| std::array::from_fn(|k| slope(row, k)))
            .collect();
        Self {
            width,
            values,
            slopes,
        }
    }

    /// Values and slopes at a place; beyond the ends the last cell's cubic goes on.
    #[inline]
    pub(super) fn at(&self, s: f64) -> ([f64; K], [f64; K]) {
        let last = self.values.len() - 2;
        let cell = ((s / self.width) as usize).min(last);
        let t = s / self.width - cell as f64;
        let h = hermite(t);
        let d = hermite_slopes(t);
        let (y0, y1) = (&self.values[cell], &self.values[cell + 1]);
        let (m0, m1) = (&self.slopes[cell], &self.slopes[cell + 1]);
        let w = self.width;
        let value = |k: usize| y0[k] * h[0] + y1[k] * h[1] + w * (m0[k] * h[2] + m1[k] * h[3]);
        let slope = |k: usize| (y0[k] * d[0] + y1[k] * d[1]) / w + m0[k] * d[2] + m1[k] * d[3];
        (std::array::from_fn(value), std::array::from_fn(slope))
    }
}

/// Hermite's cubics at `t`: of the values left and right, of the slopes left and right.
#[inline]
pub(super) fn hermite(t: f64) -> [f64; 4] {
    let u = 1.0 - t;
    [
        u * u * (1.0 + 2.0 * t),
        t * t * (3.0 - 2.0 * t),
        t * u * u,
        -t * t * u,
    ]
}

/// Their derivatives.
#[inline]
fn hermite_slopes(t: f64) -> [f64; 4] {
    let u = 1.0 - t;
    [
        -6.0 * t * u,
        6.0 * t * u,
        u * (1.0 - 3.0 * t),
        t * (3.0 * t - 2.0),
    ]
}
