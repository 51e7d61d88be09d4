//! A smooth curve through given points that never overshoots them.
//!
//! In: points in order. Out: value and exact integral anywhere, C¹ between the ends.

use crate::error::{Error, Fault, NumericFault, Result};

/// How a curve goes on beyond its first and last point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Beyond {
    /// Straight on with the end slope: C¹ everywhere.
    ConstantSlope,
    /// Holds the end value; the slope jumps to zero at the end point.
    ConstantValue,
    /// Holds the end value, and the curve arrives there level: C¹ everywhere, at the price of a
    /// flatter first and last piece.
    Level,
}

/// One cubic piece, in powers of the distance from its left end.
#[derive(Debug, Clone, Copy, PartialEq)]
struct CubicPiece {
    powers: [f64; 4],
    /// Integral from the first point of the curve to the left end of this piece.
    area: f64,
}

impl CubicPiece {
    fn value(&self, t: f64) -> f64 {
        let [a, b, c, d] = self.powers;
        a + t * (b + t * (c + t * d))
    }

    fn area_to(&self, t: f64) -> f64 {
        let [a, b, c, d] = self.powers;
        self.area + t * (a + t * (b / 2.0 + t * (c / 3.0 + t * d / 4.0)))
    }
}

/// Monotone cubic curve through points.
///
/// ```text
/// f(x) = y + m t + (3δ − 2m − m′) t²/h + (m + m′ − 2δ) t³/h²,   t = x − x_left
/// m = (w₁ + w₂) / (w₁/δ₋ + w₂/δ₊)  where δ₋ δ₊ > 0, else 0;   w₁ = 2h₊ + h₋,  w₂ = h₊ + 2h₋
/// ```
/// | symbol     | meaning                                       | range      |
/// | ---------- | --------------------------------------------- | ---------- |
/// | `h`        | width of the piece                            | h > 0      |
/// | `δ`        | rise over width of the piece                  | finite     |
/// | `m`, `m′`  | slopes at its left and right end              | finite     |
/// | `δ₋`, `δ₊` | δ of the pieces left and right of the point   | finite     |
///
/// **Shape.** C¹; rises where the points rise, falls where they fall, flat at their peaks; a straight
/// row of points gives the straight line. Error of order h² next to a peak, h³ elsewhere.
/// **Source.** Fritsch & Butland 1984, SIAM J. Sci. Stat. Comput. 5:300-304 (weighted harmonic mean),
/// within the limits of Fritsch & Carlson 1980, SIAM J. Numer. Anal. 17:238-246; end slopes by the
/// three-point formula, limited to keep the shape (both from memory).
/// **Fails.** [`Spline::through`] refuses fewer than two points, and points that are not finite or
/// not in rising order.
///
/// ```
/// use torquill::numeric::{Beyond, Spline};
/// let curve = Spline::through(&[(0.0, 0.0), (1.0, 1.0), (2.0, 4.0)], Beyond::ConstantSlope)?;
/// assert_eq!(curve.value(1.0), 1.0);
/// let slope = (curve.integral(0.0, 1.5 + 1e-6) - curve.integral(0.0, 1.5 - 1e-6)) / 2e-6;
/// assert!((slope - curve.value(1.5)).abs() < 1e-8);
/// # Ok::<(), torquill::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Spline {
    knots: Vec<f64>,
    pieces: Vec<CubicPiece>,
    first: CurveEnd,
    last: CurveEnd,
}

/// Value and outward slope at one end, and the integral from the first point to there.
#[derive(Debug, Clone, Copy, PartialEq)]
struct CurveEnd {
    x: f64,
    value: f64,
    slope: f64,
    area: f64,
}

impl CurveEnd {
    fn value(&self, x: f64) -> f64 {
        self.value + self.slope * (x - self.x)
    }

    fn area_to(&self, x: f64) -> f64 {
        let t = x - self.x;
        self.area + t * (self.value + t * self.slope / 2.0)
    }
}

impl Spline {
    /// The curve through these `(x, y)` points, which must be in rising order of `x`.
    ///
    /// # Errors
    /// Fewer than two points; a number that is not finite; two points with one `x`, or out of order.
    pub fn through(points: &[(f64, f64)], beyond: Beyond) -> Result<Self> {
        check_points(points)?;
        let slopes = slopes(points, beyond);
        let mut pieces = Vec::with_capacity(points.len() - 1);
        let mut area = 0.0;
        for (pair, slope) in points.windows(2).zip(slopes.windows(2)) {
            let piece = piece(pair[0], pair[1], slope[0], slope[1], area);
            area = piece.area_to(pair[1].0 - pair[0].0);
            pieces.push(piece);
        }
        let end = |index: usize, area: f64| CurveEnd {
            x: points[index].0,
            value: points[index].1,
            slope: match beyond {
                Beyond::ConstantSlope => slopes[index],
                Beyond::ConstantValue | Beyond::Level => 0.0,
            },
            area,
        };
        Ok(Self {
            knots: points.iter().map(|point| point.0).collect(),
            pieces,
            first: end(0, 0.0),
            last: end(points.len() - 1, area),
        })
    }

    /// The `x` of the first and of the last point.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        (self.first.x, self.last.x)
    }

    /// The curve's value.
    #[must_use]
    pub fn value(&self, x: f64) -> f64 {
        match self.place(x) {
            CurvePlace::Beyond(end) => end.value(x),
            CurvePlace::Within(piece, t) => piece.value(t),
        }
    }

    /// The exact integral of the curve from `reference` to `x`.
    #[must_use]
    pub fn integral(&self, reference: f64, x: f64) -> f64 {
        self.area_to(x) - self.area_to(reference)
    }

    fn area_to(&self, x: f64) -> f64 {
        match self.place(x) {
            CurvePlace::Beyond(end) => end.area_to(x),
            CurvePlace::Within(piece, t) => piece.area_to(t),
        }
    }

    fn place(&self, x: f64) -> CurvePlace<'_> {
        if x <= self.first.x {
            return CurvePlace::Beyond(&self.first);
        }
        if x >= self.last.x {
            return CurvePlace::Beyond(&self.last);
        }
        let right = self.knots.partition_point(|&knot| knot <= x).max(1);
        CurvePlace::Within(&self.pieces[right - 1], x - self.knots[right - 1])
    }
}

/// Where on the curve an `x` lies.
enum CurvePlace<'a> {
    Beyond(&'a CurveEnd),
    Within(&'a CubicPiece, f64),
}

/// Refuses points through which no curve can go.
fn check_points(points: &[(f64, f64)]) -> Result<()> {
    if points.len() < 2 {
        let points = points.len();
        return Err(Error::bad(NumericFault::TooFewPoints { points }));
    }
    let mut faults = Vec::new();
    for (index, &(x, y)) in points.iter().enumerate() {
        if !x.is_finite() || !y.is_finite() {
            let point = index + 1;
            faults.push(Fault::new(NumericFault::PointNotFinite { point, x, y }));
        }
    }
    for (index, pair) in points.windows(2).enumerate() {
        let (left, right) = (pair[0].0, pair[1].0);
        if left >= right {
            let first = index + 1;
            faults.push(Fault::new(NumericFault::PointsNotRising {
                first,
                left,
                right,
            }));
        }
    }
    if faults.is_empty() {
        Ok(())
    } else {
        Err(Error::bad_input(faults))
    }
}

fn piece(left: (f64, f64), right: (f64, f64), slope: f64, next: f64, area: f64) -> CubicPiece {
    let width = right.0 - left.0;
    let rise = (right.1 - left.1) / width;
    CubicPiece {
        powers: [
            left.1,
            slope,
            (3.0 * rise - 2.0 * slope - next) / width,
            (slope + next - 2.0 * rise) / (width * width),
        ],
        area,
    }
}

/// The slope at each point; see [`Spline`].
fn slopes(points: &[(f64, f64)], beyond: Beyond) -> Vec<f64> {
    let count = points.len();
    let width: Vec<f64> = points.windows(2).map(|p| p[1].0 - p[0].0).collect();
    let rise: Vec<f64> = points
        .windows(2)
        .map(|p| (p[1].1 - p[0].1) / (p[1].0 - p[0].0))
        .collect();
    let mut slopes = vec![0.0; count];
    for i in 1..count - 1 {
        if rise[i - 1] * rise[i] > 0.0 {
            let left = 2.0 * width[i] + width[i - 1];
            let right = width[i] + 2.0 * width[i - 1];
            slopes[i] = (left + right) / (left / rise[i - 1] + right / rise[i]);
        }
    }
    if beyond == Beyond::Level {
        return slopes;
    }
    if count == 2 {
        return vec![rise[0]; 2];
    }
    let (n, m) = (count - 2, count - 3);
    slopes[0] = end_slope(width[0], width[1], rise[0], rise[1]);
    slopes[count - 1] = end_slope(width[n], width[m], rise[n], rise[m]);
    slopes
}

/// Slope at an end from the two nearest pieces: that of the parabola through three points, limited
/// so that the end piece keeps its sense and does not overshoot.
fn end_slope(width: f64, next_width: f64, rise: f64, next_rise: f64) -> f64 {
    let total = width + next_width;
    let parabola = ((width + total) * rise - width * next_rise) / total;
    if parabola * rise <= 0.0 {
        0.0
    } else if rise * next_rise <= 0.0 && parabola.abs() > 3.0 * rise.abs() {
        3.0 * rise
    } else {
        parabola
    }
}
