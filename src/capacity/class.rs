//! The class of a strength curve: ascending, descending, bell-shaped or u-shaped, from its own figures.
//!
//! In: capacities over the range. Out: [`Class`] with the figures that decide it.

use crate::numeric::vertex_between;
use std::ops::Range;

/// The shape of a strength curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CurveShape {
    /// Weak at the start, strongest at the end.
    Ascending,
    /// Strongest at the start, weak at the end.
    Descending,
    /// Strongest in between, weak at both ends.
    BellShaped,
    /// Weakest in between: falls, then rises.
    UShaped,
    /// No end is weak.
    Level,
}

impl CurveShape {
    /// Every shape.
    pub const ALL: [Self; 5] = [
        Self::Ascending,
        Self::Descending,
        Self::BellShaped,
        Self::UShaped,
        Self::Level,
    ];

    /// The trade's word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Ascending => "ascending",
            Self::Descending => "descending",
            Self::BellShaped => "bell-shaped",
            Self::UShaped => "u-shaped",
            Self::Level => "level",
        }
    }
}

/// The class and the figures it follows from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Class {
    /// The label.
    pub shape: CurveShape,
    /// Place of the greatest capacity: of a smooth top interpolated between samples by a parabola; 0 or 1 on the border.
    pub peak_range: f64,
    /// Capacity at the start over the greatest.
    pub start_ratio: f64,
    /// Capacity at the end over the greatest.
    pub end_ratio: f64,
    /// Place of the least capacity between the ends: of a smooth trough interpolated between samples by a parabola.
    pub trough_range: f64,
    /// That capacity over the level of the weaker end; above 1 where the curve has no trough.
    pub trough_ratio: f64,
    /// That capacity over the greatest.
    pub trough_of_peak: f64,
    /// The greatest capacity, N or N·m.
    pub peak: f64,
}

/// An end of the range is weak below this share of the peak: a fall that a chart shows at a glance
/// and that exceeds the repeatability of strength tests (assumed; the figures are printed with it).
pub const WEAK_END: f64 = 0.85;

/// Part of the range at each end over whose middle value the level of that end is told: a spike that is
/// narrower does not count as a strong end (assumed: a twentieth is what a lockout takes).
const END_PART: f64 = 0.1;

/// Classes a curve given at evenly spaced samples of the range.
///
/// ```text
/// trough < 0.85 · weaker end's level     u-shaped          level: median over the first or last tenth
/// else  start weak, end strong           ascending
///       start strong, end weak           descending
///       both weak                        bell-shaped
///       none weak                        level
/// weak: capacity at that end < 0.85 · greatest capacity;   trough: least capacity between the two tenths
/// ```
/// **Shape.** The u asks for a fall and a rise, each by as much as makes an end weak, and compares with the
/// weaker end: how far a nearly straight limb climbs at the other does not matter, and neither does one
/// high sample at an end.
/// **Source.** Ascending, descending, bell-shaped: Kulig, Andrews & Hay 1984; the u, thresholds and widths
/// are ours.
/// **Fails.** Never; a curve without a positive value is level.
#[must_use]
pub fn class_of(values: &[f64]) -> Class {
    class_with(values, None, None)
}

/// The same where place and size of the greatest capacity, or of the least between the ends, lie between two samples and
/// are known.
#[must_use]
pub fn class_with(values: &[f64], crest: Option<(f64, f64)>, trough: Option<(f64, f64)>) -> Class {
    let (mut place, mut peak) = (0, f64::NEG_INFINITY);
    for (index, value) in values.iter().enumerate() {
        if *value > peak {
            (place, peak) = (index, *value);
        }
    }
    peak = crest.map_or(peak, |(_, crest)| crest);
    let ratio = |value: Option<&f64>| {
        if peak > 0.0 {
            value.map_or(1.0, |v| v / peak)
        } else {
            1.0
        }
    };
    let (start_ratio, end_ratio) = (ratio(values.first()), ratio(values.last()));
    let (trough_range, least) = trough.unwrap_or_else(|| sampled_trough(values));
    let trough_ratio = weaker_level(values).map_or(1.0, |weaker| least / weaker);
    let shape = match (start_ratio < WEAK_END, end_ratio < WEAK_END) {
        _ if trough_ratio < WEAK_END => CurveShape::UShaped,
        (true, false) => CurveShape::Ascending,
        (false, true) => CurveShape::Descending,
        (true, true) => CurveShape::BellShaped,
        (false, false) => CurveShape::Level,
    };
    let last = (values.len().max(2) - 1) as f64;
    let shift = match values.get(place.wrapping_sub(1)..place + 2) {
        Some(&[left, middle, right]) => vertex_between(left, middle, right).0,
        _ => 0.0,
    };
    Class {
        shape,
        peak_range: crest.map_or((place as f64 + shift) / last, |(range, _)| range),
        start_ratio,
        end_ratio,
        trough_range,
        trough_ratio,
        trough_of_peak: ratio(Some(&least)),
        peak,
    }
}

impl Class {
    /// The least capacity between the ends over the weaker end as a curve shows it, its spike included.
    #[must_use]
    pub fn trough_of_weaker_end(&self) -> f64 {
        self.trough_of_peak / self.start_ratio.min(self.end_ratio)
    }
}

/// How many samples of so many make an end.
fn end_of(count: usize) -> usize {
    ((count as f64 * END_PART).round() as usize).max(1)
}

/// The samples of so many between the two ends, where the trough is looked for; `None` where there are too few for ends.
#[must_use]
pub fn between_the_ends(count: usize) -> Option<Range<usize>> {
    let wide = end_of(count);
    (count > 2 * wide).then(|| wide..count - wide)
}

/// The level of the weaker end; `None` where there is no end, or nothing is held there.
fn weaker_level(values: &[f64]) -> Option<f64> {
    let between = between_the_ends(values.len())?;
    let level = |part: &[f64]| {
        let mut sorted = part.to_vec();
        sorted.sort_by(f64::total_cmp);
        sorted[sorted.len() / 2]
    };
    let weaker = level(&values[..between.start]).min(level(&values[between.end..]));
    (weaker > 0.0).then_some(weaker)
}

/// Place of the least capacity between the two ends, of a smooth trough interpolated by a parabola, and its least sample.
fn sampled_trough(values: &[f64]) -> (f64, f64) {
    let between = between_the_ends(values.len());
    let least = between.and_then(|all| all.min_by(|a, b| values[*a].total_cmp(&values[*b])));
    let Some(index) = least else {
        return (0.0, values.first().copied().unwrap_or(0.0));
    };
    let [left, middle, right] = [index - 1, index, index + 1].map(|at| -values[at]);
    let shift = match left.max(right) <= middle {
        true => vertex_between(left, middle, right).0,
        false => 0.0,
    };
    (
        (index as f64 + shift) / (values.len() - 1) as f64,
        values[index],
    )
}
