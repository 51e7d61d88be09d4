//! Where a function crosses zero, or an answer turns from yes to no.
//!
//! In: a function and an interval. Out: the crossing, or why there is none.

use crate::error::{Error, NumericFault, Result};

/// The two sides of a place where the answer changes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Boundary {
    /// Largest place known to answer like the lower end.
    pub below: f64,
    /// Smallest place known to answer like the upper end.
    pub above: f64,
}

impl Boundary {
    /// Halfway between the two sides.
    #[must_use]
    pub fn middle(self) -> f64 {
        self.below + (self.above - self.below) / 2.0
    }
}

/// The place where a yes-or-no answer changes, to within `tolerance`, by halving.
///
/// **Shape.** The question should change its answer once in the interval; if it changes more often,
/// one of the changes is found. A tolerance of 0 halves until the numbers are neighbours.
/// **Fails.** When both ends answer alike, or the interval is no interval.
///
/// ```
/// use torquill::numeric::bisect;
/// let edge = bisect(0.0, 2.0, 1e-12, |x| x * x <= 2.0)?;
/// assert!((edge.below - 2.0_f64.sqrt()).abs() < 1e-12);
/// assert!(edge.below * edge.below <= 2.0 && edge.above * edge.above > 2.0);
/// # Ok::<(), torquill::error::Error>(())
/// ```
///
/// # Errors
/// See **Fails**.
pub fn bisect(
    low: f64,
    high: f64,
    tolerance: f64,
    mut holds: impl FnMut(f64) -> bool,
) -> Result<Boundary> {
    check_interval(low, high)?;
    let at_low = holds(low);
    if holds(high) == at_low {
        return Err(Error::no_answer(NumericFault::NoChange {
            low,
            high,
            holds: at_low,
        }));
    }
    let mut edge = Boundary {
        below: low,
        above: high,
    };
    while edge.above - edge.below > tolerance {
        let middle = edge.middle();
        if middle <= edge.below || middle >= edge.above {
            break;
        }
        if holds(middle) == at_low {
            edge.below = middle;
        } else {
            edge.above = middle;
        }
    }
    Ok(edge)
}

/// The most halvings and interpolations of [`brent`]: more than twice what plain halving of any
/// interval of numbers needs.
const MOST_STEPS: usize = 5000;

/// A zero of a continuous function between two places where its signs differ.
///
/// **Shape.** Inverse quadratic or linear interpolation where they help, halving where they do not;
/// the answer is within `tolerance` (plus rounding) of a change of sign.
/// **Source.** Brent 1973, *Algorithms for Minimization without Derivatives*, ch. 4 (from memory).
/// **Fails.** When both ends have one sign, or the function gives no number.
///
/// ```
/// use torquill::numeric::brent;
/// let x = brent(0.0, 1.0, 1e-14, |x| x.cos() - x)?;
/// assert!((x - 0.739_085_133_215_160_6).abs() < 1e-14);
/// # Ok::<(), torquill::error::Error>(())
/// ```
///
/// # Errors
/// See **Fails**.
pub fn brent(
    low: f64,
    high: f64,
    tolerance: f64,
    mut function: impl FnMut(f64) -> f64,
) -> Result<f64> {
    check_interval(low, high)?;
    let mut chase = Chase::new(sampled(&mut function, low)?, sampled(&mut function, high)?)?;
    for _ in 0..MOST_STEPS {
        match chase.next_place(tolerance) {
            Some(place) => chase.take(sampled(&mut function, place)?),
            None => return Ok(chase.best.0),
        }
    }
    let steps = MOST_STEPS;
    Err(Error::no_answer(NumericFault::NoZeroFound {
        low,
        high,
        steps,
    }))
}

/// Refuses ends between which nothing can be searched.
pub(super) fn check_interval(low: f64, high: f64) -> Result<()> {
    if low < high && low.is_finite() && high.is_finite() {
        Ok(())
    } else {
        Err(Error::bad(NumericFault::NoInterval { low, high }))
    }
}

fn sampled(function: &mut impl FnMut(f64) -> f64, x: f64) -> Result<(f64, f64)> {
    let value = function(x);
    if value.is_nan() {
        return Err(Error::no_answer(NumericFault::NoZero { place: x }));
    }
    Ok((x, value))
}

/// The state of Brent's search: points are `(place, value)`.
struct Chase {
    best: (f64, f64),
    previous: (f64, f64),
    /// The point across the zero from `best`.
    across: (f64, f64),
    step: f64,
    step_before: f64,
}

impl Chase {
    fn new(a: (f64, f64), b: (f64, f64)) -> Result<Self> {
        if (a.1 > 0.0 && b.1 > 0.0) || (a.1 < 0.0 && b.1 < 0.0) {
            return Err(Error::no_answer(NumericFault::OneSign { ends: [a, b] }));
        }
        let step = b.0 - a.0;
        Ok(Self {
            best: b,
            previous: a,
            across: a,
            step,
            step_before: step,
        })
    }

    /// The next place to look at, or `None` when the zero is known well enough.
    fn next_place(&mut self, tolerance: f64) -> Option<f64> {
        if self.across.1.abs() < self.best.1.abs() {
            self.previous = self.best;
            self.best = self.across;
            self.across = self.previous;
        }
        let fine = 2.0 * f64::EPSILON * self.best.0.abs() + 0.5 * tolerance.max(0.0);
        let half = 0.5 * (self.across.0 - self.best.0);
        if half.abs() <= fine || self.best.1 == 0.0 {
            return None;
        }
        self.choose_step(half, fine);
        let moved = if self.step.abs() > fine {
            self.step
        } else {
            fine.copysign(half)
        };
        let place = self.best.0 + moved;
        (place != self.best.0).then_some(place)
    }

    fn choose_step(&mut self, half: f64, fine: f64) {
        let mut step = half;
        let mut before = half;
        if self.step_before.abs() >= fine && self.previous.1.abs() > self.best.1.abs() {
            let (p, q) = self.interpolation(half);
            let room = (3.0 * half * q - (fine * q).abs()).min((self.step_before * q).abs());
            if 2.0 * p < room {
                before = self.step;
                step = p / q;
            }
        }
        self.step = step;
        self.step_before = before;
    }

    /// Interpolated step as a fraction `p / q` with `p ≥ 0`.
    fn interpolation(&self, half: f64) -> (f64, f64) {
        let s = self.best.1 / self.previous.1;
        let (p, q) = if self.previous.0 == self.across.0 {
            (2.0 * half * s, 1.0 - s)
        } else {
            let q = self.previous.1 / self.across.1;
            let r = self.best.1 / self.across.1;
            let width = self.best.0 - self.previous.0;
            (
                s * (2.0 * half * q * (q - r) - width * (r - 1.0)),
                (q - 1.0) * (r - 1.0) * (s - 1.0),
            )
        };
        if p > 0.0 { (p, -q) } else { (-p, q) }
    }

    fn take(&mut self, point: (f64, f64)) {
        self.previous = self.best;
        self.best = point;
        if (self.best.1 > 0.0) == (self.across.1 > 0.0) {
            self.across = self.previous;
            self.step = self.best.0 - self.previous.0;
            self.step_before = self.step;
        }
    }
}
