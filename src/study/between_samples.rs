//! The greatest value of a curve between its samples, where other conditions begin to bind there.
//!
//! In: values on evenly spaced samples, between which of them the lift turns, and the curve itself at any place. Out:
//! [`Crest`], worked out on the poses themselves and not on the values beside them.

use crate::capacity::Held;
use crate::numeric::golden_section;

/// The greatest value of a curve and its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crest {
    /// Place in the range.
    pub range: f64,
    /// The curve there.
    pub value: f64,
}

/// A piece of the range whose lines promise less than this share more than the greatest sample is not searched.
const WORTH: f64 = 1.0e-4;
/// How closely a crest is placed, share of the distance of two samples: a curve that falls by a tenth from one sample to the next is
/// met to 1e-5 of itself.
const FINE: f64 = 1.0e-4;

/// The crest of a curve that is not smooth where it may be greatest; `None` where the samples and a parabola tell it.
///
/// ```text
/// searched    pieces [i, i + 1] that turn, where  max over x of min(left line, right line) > (1 + w)·greatest sample
///             both pieces beside the greatest sample, if one of them turns
/// lines       through the samples i − 1, i and i + 1, i + 2, continued into the piece
/// ```
/// `w` is [`WORTH`]. **In.** `turns(i)`: whether other conditions bind at sample i + 1 than at sample i. `at`: the curve at a place,
/// `None` where it has no value. **Shape.** Never below the greatest sample. A spike whose both flanks lie between two
/// samples is missed. **Source.** Definition of the model. **Fails.** Never.
pub fn crest(
    values: &[f64],
    turns: impl Fn(usize) -> bool,
    at: impl Fn(f64) -> Option<f64>,
) -> Option<Crest> {
    let last = values.len().checked_sub(1).filter(|last| *last > 0)?;
    let finite = (0..=last).filter(|index| values[*index].is_finite());
    let top = finite.max_by(|a, b| values[*a].total_cmp(&values[*b]).then(b.cmp(a)))?;
    let beside = |piece: usize| piece + 1 == top || piece == top;
    let turns_beside = (0..last).any(|piece| beside(piece) && turns(piece));
    let promises = |piece: usize| promised(values, piece) > values[top] + WORTH * values[top].abs();
    let searched = (0..last)
        .filter(|piece| beside(*piece) && turns_beside || turns(*piece) && promises(*piece));
    let place = |index: f64| index / last as f64;
    let mut best = None;
    for piece in searched {
        let (low, high) = (place(piece as f64), place((piece + 1) as f64));
        let least = values[piece].min(values[piece + 1]);
        let found = golden_section(low, high, FINE * (high - low), |range| {
            -at(range).unwrap_or(least)
        });
        let sample = Crest {
            range: place(top as f64),
            value: values[top],
        };
        let so_far = best.unwrap_or(sample);
        best = Some(match found {
            Ok(found) if -found.value > so_far.value => Crest {
                range: found.place,
                value: -found.value,
            },
            _ => so_far,
        });
    }
    best
}

/// How high a curve can be in a piece if it follows the lines on both sides of it as far as they meet; never below its ends.
pub fn promised(values: &[f64], piece: usize) -> f64 {
    let (left, right) = (values[piece], values[piece + 1]);
    let rise = piece.checked_sub(1).map(|before| left - values[before]);
    let fall = values.get(piece + 2).map(|after| right - after);
    match (rise, fall) {
        // The left line in samples from the piece's start, the right one likewise: they meet at one of them.
        (Some(rise), Some(fall)) => {
            let meet = (right + fall - left) / (rise + fall);
            let inside = if meet.is_finite() {
                meet.clamp(0.0, 1.0)
            } else {
                0.0
            };
            let lower = |x: f64| (left + rise * x).min(right + fall * (1.0 - x));
            lower(inside).max(left).max(right)
        }
        (Some(rise), None) => left.max(left + rise),
        (None, Some(fall)) => right.max(right + fall),
        (None, None) => f64::INFINITY,
    }
}

/// Whether two poses are held by different means: another joint gives way first, or other muscles are full, free or silent.
pub(super) fn is_held_otherwise(one: &Held, other: &Held) -> bool {
    /// An activation this near to an end is at it.
    const AT_ITS_END: f64 = 1.0e-9;
    let state = |activation: f64| (activation > AT_ITS_END, activation < 1.0 - AT_ITS_END);
    let states = |held: &Held| {
        held.activations
            .iter()
            .map(|a| state(*a))
            .collect::<Vec<_>>()
    };
    one.limiting != other.limiting || states(one) != states(other)
}
