//! The smallest value of a function on an interval.
//!
//! In: a function and an interval. Out: where it is smallest, and how small.

use super::crossing::check_interval;
use crate::error::{Error, NumericFault, Result};

/// The place of the smallest value found, and that value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Least {
    /// Where.
    pub place: f64,
    /// The function there.
    pub value: f64,
}

/// Golden section, 2 − φ: (3 − √5) / 2.
const GOLDEN: f64 = 0.381_966_011_250_105_1;

/// The minimum of a function with one valley in the interval, by golden sections.
///
/// **Shape.** Each call shrinks the interval by 0.618 until it is narrower than `tolerance` (or than
/// rounding permits). With several valleys it finds one of them. The ends count too. A minimum
/// is flat, so its place is known to about half the digits of its value.
/// **Source.** Kiefer 1953, Proc. Am. Math. Soc. 4:502-506 (from memory).
/// **Fails.** When the interval is none or the function gives no number.
///
/// ```
/// use torquill::numeric::golden_section;
/// let least = golden_section(0.0, 3.0, 1e-9, |x| (x - 1.0) * (x - 1.0) + 2.0)?;
/// assert!((least.place - 1.0).abs() < 1e-7 && least.value == 2.0);
/// # Ok::<(), torquill::error::Error>(())
/// ```
///
/// # Errors
/// See **Fails**.
pub fn golden_section(
    low: f64,
    high: f64,
    tolerance: f64,
    mut function: impl FnMut(f64) -> f64,
) -> Result<Least> {
    check_interval(low, high)?;
    let ends = [sample(&mut function, low)?, sample(&mut function, high)?];
    let (mut low, mut high) = (low, high);
    let mut left = sample(&mut function, low + GOLDEN * (high - low))?;
    let mut right = sample(&mut function, high - GOLDEN * (high - low))?;
    while high - low > tolerance
        && low < left.place
        && left.place < right.place
        && right.place < high
    {
        if left.value <= right.value {
            high = right.place;
            right = left;
            left = sample(&mut function, low + GOLDEN * (high - low))?;
        } else {
            low = left.place;
            left = right;
            right = sample(&mut function, high - GOLDEN * (high - low))?;
        }
    }
    let candidates = [left, right, ends[0], ends[1]];
    Ok(smallest(candidates.into_iter()))
}

/// The minimum of a function with several valleys: evenly spaced looks, then golden sections around
/// the lowest of them. A valley narrower than a piece can be missed.
///
/// # Errors
/// When the interval is none, there is no piece, or the function gives no number.
pub fn lowest_valley(
    low: f64,
    high: f64,
    pieces: usize,
    tolerance: f64,
    mut function: impl FnMut(f64) -> f64,
) -> Result<Least> {
    check_interval(low, high)?;
    if pieces == 0 {
        return Err(Error::bad(NumericFault::NoPiece));
    }
    let place = |k: usize| low + (high - low) * k as f64 / pieces as f64;
    let looks: Vec<Least> = (0..=pieces)
        .map(|k| sample(&mut function, place(k)))
        .collect::<Result<_>>()?;
    let best = (1..looks.len()).fold(0, |best, k| {
        if looks[k].value < looks[best].value {
            k
        } else {
            best
        }
    });
    let (from, to) = (best.saturating_sub(1), (best + 1).min(pieces));
    let refined = golden_section(place(from), place(to), tolerance, function)?;
    Ok(smallest([looks[best], refined].into_iter()))
}

/// The first of the smallest.
fn smallest(candidates: impl Iterator<Item = Least>) -> Least {
    let start = Least {
        place: f64::NAN,
        value: f64::INFINITY,
    };
    candidates.fold(start, |best, next| {
        if best.place.is_nan() || next.value < best.value {
            next
        } else {
            best
        }
    })
}

fn sample(function: &mut impl FnMut(f64) -> f64, place: f64) -> Result<Least> {
    let value = function(place);
    if value.is_nan() {
        return Err(Error::no_answer(NumericFault::NoMinimum { place }));
    }
    Ok(Least { place, value })
}
