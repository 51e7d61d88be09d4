//! How far a computed value may be from a published one.

/// How far the computed value may be from the published one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Accepted {
    /// This much, in the unit of the quantity.
    Absolute(f64),
    /// This share of the published value.
    Relative(f64),
    /// Anywhere from the first to the second.
    Interval(f64, f64),
}

impl Accepted {
    pub fn from_text(text: &str) -> Option<Self> {
        let number = |text: &str| quotient(text.trim());
        if let Some(most) = text.trim().strip_prefix('±') {
            return match most.strip_suffix('%') {
                Some(percent) => Some(Self::Relative(number(percent)? / 100.0)),
                None => Some(Self::Absolute(number(most)?)),
            };
        }
        let (low, high) = text.split_once(" to ")?;
        Some(Self::Interval(number(low)?, number(high)?))
    }

    pub fn holds(self, published: f64, computed: f64) -> bool {
        let off = (computed - published).abs();
        match self {
            Self::Absolute(most) => off <= most,
            Self::Relative(share) => off <= share * published.abs(),
            Self::Interval(low, high) => (low..=high).contains(&computed),
        }
    }

    /// How far off is accepted at most, on the wider side.
    pub fn half_width(self, published: f64) -> f64 {
        match self {
            Self::Absolute(most) => most,
            Self::Relative(share) => share * published.abs(),
            Self::Interval(low, high) => (high - published).abs().max((published - low).abs()),
        }
    }

    pub fn as_text(self) -> String {
        match self {
            Self::Absolute(most) => format!("± {}", digits(most)),
            Self::Relative(share) => format!("± {} %", digits(100.0 * share)),
            Self::Interval(low, high) => format!("{} to {}", digits(low), digits(high)),
        }
    }
}

/// A number, or one printed number over another.
pub fn quotient(text: &str) -> Option<f64> {
    match text.split_once('/') {
        Some((over, under)) => Some(over.parse::<f64>().ok()? / under.parse::<f64>().ok()?),
        None => text.parse().ok(),
    }
}

/// Four figures that matter, without trailing zeros.
pub fn digits(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return format!("{value}");
    }
    let magnitude = value.abs().log10().floor() as i32;
    let text = format!("{value:.*}", (3 - magnitude).max(0) as usize);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}
