//! Straight pieces between given points, with the corners rounded off if wished.
//!
//! In: points in order and how far from a corner the rounding may reach. Out: value and slope.

use super::spline::{Beyond, check_points};
use crate::error::{Error, Result};

/// A line with corners, or C¹ with rounded ones.
///
/// ```text
/// between corners   f(x) = y + δ (x − x_corner)
/// |x − x_corner| < w   f(x) = y − w δ₋ + δ₋ t + (δ₊ − δ₋) t² / 4w,   t = x − x_corner + w
/// ```
/// | symbol     | meaning                                                            | range |
/// | ---------- | ------------------------------------------------------------------ | ----- |
/// | `δ₋`, `δ₊` | slopes left and right of the corner                                | finite |
/// | `w`        | reach of the rounding; at most half of the shorter neighbouring piece | ≥ 0 |
///
/// **Shape.** `w = 0`: continuous, slopes jump at the corners (the slope to the right counts there).
/// `w > 0`: C¹, each corner is cut by a parabola that misses it by `|δ₊ − δ₋| w / 4`; the end points
/// are corners too where the line goes on level. Beyond the ends it goes on straight or level;
/// [`Beyond::Level`] means the same as [`Beyond::ConstantValue`] here.
/// **Source.** Parabola between two tangents (elementary).
/// **Fails.** [`Piecewise::through`] refuses what [`super::Spline::through`] refuses, and a reach
/// that is negative or no number.
///
/// ```
/// use torquill::numeric::{Beyond, Piecewise};
/// let ramp = [(0.0, 0.0), (1.0, 1.0)];
/// let sharp = Piecewise::through(&ramp, Beyond::ConstantValue, 0.0)?;
/// assert_eq!((sharp.value(0.5), sharp.value(2.0), sharp.derivative(0.5)), (0.5, 1.0, 1.0));
/// let round = Piecewise::through(&ramp, Beyond::ConstantValue, 0.2)?;
/// assert!((round.value(1.0) - 0.95).abs() < 1e-15); // misses the corner by 1 · 0.2 / 4
/// # Ok::<(), torquill::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Piecewise {
    corners: Vec<Corner>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Corner {
    x: f64,
    y: f64,
    slope_before: f64,
    slope_after: f64,
    reach: f64,
}

impl Corner {
    fn value(&self, x: f64) -> f64 {
        let offset = x - self.x;
        if offset.abs() < self.reach {
            let t = offset + self.reach;
            let bend = (self.slope_after - self.slope_before) * t * t / (4.0 * self.reach);
            self.y + self.slope_before * offset + bend
        } else if offset < 0.0 {
            self.y + self.slope_before * offset
        } else {
            self.y + self.slope_after * offset
        }
    }

    fn derivative(&self, x: f64) -> f64 {
        let offset = x - self.x;
        if offset.abs() < self.reach {
            let share = (offset + self.reach) / (2.0 * self.reach);
            self.slope_before + (self.slope_after - self.slope_before) * share
        } else if offset < 0.0 {
            self.slope_before
        } else {
            self.slope_after
        }
    }
}

impl Piecewise {
    /// The line through these `(x, y)` points, in rising order of `x`, corners rounded within `reach`.
    ///
    /// # Errors
    /// Fewer than two points, a number that is not finite, points out of order, a negative reach.
    pub fn through(points: &[(f64, f64)], beyond: Beyond, reach: f64) -> Result<Self> {
        check_points("a piecewise line", points)?;
        if !(reach >= 0.0 && reach.is_finite()) {
            return Err(Error::bad(format!(
                "corners cannot be rounded within {reach}"
            )));
        }
        let rise = |k: usize| (points[k + 1].1 - points[k].1) / (points[k + 1].0 - points[k].0);
        let width = |k: usize| points[k + 1].0 - points[k].0;
        let last = points.len() - 1;
        let outside = |end_rise: f64| match beyond {
            Beyond::ConstantSlope => end_rise,
            Beyond::ConstantValue | Beyond::Level => 0.0,
        };
        let corner = |k: usize| {
            let before = if k == 0 { f64::INFINITY } else { width(k - 1) };
            let after = if k == last { f64::INFINITY } else { width(k) };
            Corner {
                x: points[k].0,
                y: points[k].1,
                slope_before: if k == 0 {
                    outside(rise(0))
                } else {
                    rise(k - 1)
                },
                slope_after: if k == last {
                    outside(rise(last - 1))
                } else {
                    rise(k)
                },
                reach: reach.min(before.min(after) / 2.0),
            }
        };
        Ok(Self {
            corners: (0..points.len()).map(corner).collect(),
        })
    }

    /// The line's value.
    #[must_use]
    pub fn value(&self, x: f64) -> f64 {
        self.nearest(x).value(x)
    }

    /// The line's slope.
    #[must_use]
    pub fn derivative(&self, x: f64) -> f64 {
        self.nearest(x).derivative(x)
    }

    /// The corner that rules at `x`: the nearer one of its piece.
    fn nearest(&self, x: f64) -> &Corner {
        let right = self.corners.partition_point(|corner| corner.x <= x);
        if right == 0 {
            return &self.corners[0];
        }
        let left = right - 1;
        if right == self.corners.len() || x - self.corners[left].x <= self.corners[right].x - x {
            &self.corners[left]
        } else {
            &self.corners[right]
        }
    }
}
