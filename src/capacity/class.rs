//! The class of a strength curve: ascending, descending or bell-shaped, from its own figures.
//!
//! In: capacities over the range. Out: [`Class`] with the figures that decide it.

/// The shape of a strength curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CurveShape {
    /// Weak at the start, strongest at the end.
    Ascending,
    /// Strongest at the start, weak at the end.
    Descending,
    /// Strongest in between, weak at both ends.
    BellShaped,
    /// No end is weak.
    Level,
}

impl CurveShape {
    /// The trade's word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Ascending => "ascending",
            Self::Descending => "descending",
            Self::BellShaped => "bell-shaped",
            Self::Level => "level",
        }
    }
}

/// The class and the figures it follows from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Class {
    /// The label.
    pub shape: CurveShape,
    /// Place of the greatest capacity.
    pub peak_range: f64,
    /// Capacity at the start over the greatest.
    pub start_ratio: f64,
    /// Capacity at the end over the greatest.
    pub end_ratio: f64,
    /// The greatest capacity, N or N·m.
    pub peak: f64,
}

/// An end of the range is weak below this share of the peak: a fall that a chart shows at a glance
/// and that exceeds the repeatability of strength tests (assumed; the figures are printed with it).
pub const WEAK_END: f64 = 0.85;

/// Classes a curve given at evenly spaced samples of the range.
///
/// ```text
/// start weak, end strong  ascending        start strong, end weak   descending
/// both weak               bell-shaped      none weak                level
/// weak: capacity at that end < 0.85 · greatest capacity
/// ```
/// **Source.** The three classes: Kulig, Andrews & Hay 1984; the threshold is ours.
/// **Fails.** Never; a curve without a positive value is level.
#[must_use]
pub fn class_of(values: &[f64]) -> Class {
    let (mut place, mut peak) = (0, f64::NEG_INFINITY);
    for (index, value) in values.iter().enumerate() {
        if *value > peak {
            (place, peak) = (index, *value);
        }
    }
    let ratio = |value: Option<&f64>| {
        if peak > 0.0 {
            value.map_or(1.0, |v| v / peak)
        } else {
            1.0
        }
    };
    let (start_ratio, end_ratio) = (ratio(values.first()), ratio(values.last()));
    let shape = match (start_ratio < WEAK_END, end_ratio < WEAK_END) {
        (true, false) => CurveShape::Ascending,
        (false, true) => CurveShape::Descending,
        (true, true) => CurveShape::BellShaped,
        (false, false) => CurveShape::Level,
    };
    Class {
        shape,
        peak_range: place as f64 / (values.len().max(2) - 1) as f64,
        start_ratio,
        end_ratio,
        peak,
    }
}
