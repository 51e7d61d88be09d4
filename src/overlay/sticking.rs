//! The static sticking region: the connected stretch around the greatest effort.

use crate::numeric::vertex_between;

/// Share of the greatest effort from which a place belongs to the sticking region.
pub const REGION_SHARE: f64 = 0.95;

/// An effort up to this is a rounding error of a load that asks for nothing.
const NO_EFFORT: f64 = 1.0e-12;

/// Where a lift is hardest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sticking {
    /// Place of the greatest effort in the range.
    pub point_range: f64,
    /// First place of the region.
    pub from_range: f64,
    /// Last place of the region.
    pub to_range: f64,
    /// The greatest effort.
    pub max_effort: f64,
}

/// Finds the sticking point and region of an effort curve on evenly spaced samples.
///
/// ```text
/// point = argmax e,   region = connected stretch around it where e ≥ share·max e
/// ```
/// The point is refined by the parabola through the greatest sample and its neighbours, the ends of the
/// region by straight lines between samples. **Source.** Definition of the model.
/// **Fails.** `None` when no effort is positive and finite.
#[must_use]
pub fn sticking(effort: &[f64], share: f64) -> Option<Sticking> {
    sticking_with(effort, share, None)
}

/// The same where the greatest effort and its place lie between two samples and are known.
#[must_use]
pub fn sticking_with(effort: &[f64], share: f64, crest: Option<(f64, f64)>) -> Option<Sticking> {
    let last = effort.len().checked_sub(1).filter(|last| *last > 0)?;
    let top = (0..=last)
        .filter(|i| effort[*i].is_finite())
        .max_by(|a, b| effort[*a].total_cmp(&effort[*b]).then(b.cmp(a)))?;
    if effort[top] <= NO_EFFORT {
        return None;
    }
    let place = |index: f64| index / last as f64;
    let (shift, height) = refined(effort, top, last);
    let (point_range, max_effort) = crest.unwrap_or((place(top as f64 + shift), height));
    let level = share * max_effort;
    let top = (point_range * last as f64).round() as usize;
    let mut from = top;
    while from > 0 && effort[from - 1] >= level {
        from -= 1;
    }
    let mut to = top;
    while to < last && effort[to + 1] >= level {
        to += 1;
    }
    let cross = |outside: usize, inside: usize| crossing(effort, level, outside, inside);
    Some(Sticking {
        point_range,
        from_range: place(if from == 0 {
            0.0
        } else {
            cross(from - 1, from)
        }),
        to_range: place(if to == last {
            to as f64
        } else {
            cross(to + 1, to)
        }),
        max_effort,
    })
}

/// Where effort crosses a level between two neighbouring samples, counted in samples.
fn crossing(effort: &[f64], level: f64, outside: usize, inside: usize) -> f64 {
    let part = (level - effort[outside]) / (effort[inside] - effort[outside]);
    let part = if part.is_finite() {
        part.clamp(0.0, 1.0)
    } else {
        1.0
    };
    outside as f64 + part * (inside as f64 - outside as f64)
}

/// Shift of the vertex from the greatest sample, in samples, and its height.
fn refined(effort: &[f64], top: usize, last: usize) -> (f64, f64) {
    if top == 0 || top == last || !effort[top - 1].is_finite() || !effort[top + 1].is_finite() {
        return (0.0, effort[top]);
    }
    vertex_between(effort[top - 1], effort[top], effort[top + 1])
}
