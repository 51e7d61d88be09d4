//! Reads "225 lb", "5 ft 11 in", "-12.5 deg": number and unit to SI.
//!
//! In: a text from a file or the command line. Out: the SI value, or a [`QuantityFault`].

use super::quantity_fault::{QuantityFault, QuantityKind};

/// A unit of one dimension: its spellings and the exact conversion `value × multiply / divide`.
#[derive(Debug, Clone, Copy)]
pub struct Unit {
    /// Accepted spellings, the usual one first.
    pub names: &'static [&'static str],
    /// Numerator of the factor to SI.
    pub multiply: f64,
    /// Denominator of the factor to SI.
    pub divide: f64,
}

/// The units that a kind of quantity is written in, and the sane range of its values.
#[derive(Debug, Clone, Copy)]
pub struct Dimension {
    /// Which kind.
    pub kind: QuantityKind,
    /// Its units, SI first.
    pub units: &'static [Unit],
    /// Smallest accepted value in SI.
    pub least: f64,
    /// Largest accepted value in SI.
    pub most: f64,
}

impl Dimension {
    /// Reads a text of this dimension to SI.
    ///
    /// Several parts are one quantity where each has a smaller unit than the one before it and no sign: "5 ft 11 in".
    ///
    /// **Fails** if the unit is missing or unknown (the known ones are told), without a number, for
    /// several quantities, if not finite, or outside the sane range of the dimension.
    pub fn read(&self, text: &str) -> Result<f64, QuantityFault> {
        let mut total = 0.0;
        let mut rest = text.trim();
        if rest.is_empty() {
            return Err(QuantityFault::Nothing { kind: self.kind });
        }
        let mut negative = false;
        let mut last_scale = f64::INFINITY;
        while !rest.is_empty() {
            let (number, unit, behind) =
                parse_number_and_unit(rest).ok_or_else(|| QuantityFault::NoNumber {
                    kind: self.kind,
                    text: text.to_owned(),
                })?;
            let unit = self.unit(text, unit)?;
            let scale = unit.multiply / unit.divide;
            let is_first = last_scale.is_infinite();
            if !is_first && (rest.starts_with(['+', '-']) || scale >= last_scale) {
                return Err(QuantityFault::Several {
                    kind: self.kind,
                    text: text.to_owned(),
                });
            }
            let si = number * unit.multiply / unit.divide;
            negative |= is_first && number.is_sign_negative();
            total += if negative && !is_first { -si } else { si };
            last_scale = scale;
            rest = behind;
        }
        self.check(text, total)
    }

    /// A unit by its spelling.
    fn unit(&self, text: &str, unit: &str) -> Result<&'static Unit, QuantityFault> {
        if unit.is_empty() {
            return Err(QuantityFault::NoUnit {
                kind: self.kind,
                text: text.to_owned(),
            });
        }
        let found = self
            .units
            .iter()
            .find(|u| u.names.contains(&unit))
            .or_else(|| {
                let lower = unit.to_lowercase();
                self.units
                    .iter()
                    .find(|u| u.names.contains(&lower.as_str()))
            });
        match found {
            Some(found) => Ok(found),
            None => Err(self.unknown_unit(text, unit)),
        }
    }

    fn unknown_unit(&self, text: &str, unit: &str) -> QuantityFault {
        let (kind, text) = (self.kind, text.to_owned());
        if unit.starts_with(',') {
            return QuantityFault::DecimalComma { kind, text };
        }
        let usual = self.units.iter().map(|u| u.names[0].to_owned());
        QuantityFault::UnknownUnit {
            kind,
            text,
            unit: unit.to_owned(),
            known: usual.collect(),
        }
    }

    /// Accepts a finite SI value inside the dimension's sane range.
    fn check(&self, text: &str, si: f64) -> Result<f64, QuantityFault> {
        let (kind, text) = (self.kind, || text.to_owned());
        if !si.is_finite() {
            return Err(QuantityFault::NotFinite { kind, text: text() });
        }
        if si < self.least || si > self.most {
            return Err(QuantityFault::OutOfBounds {
                kind,
                text: text(),
                least: self.least,
                most: self.most,
                unit: self.units[0].names[0].to_owned(),
            });
        }
        // A nothing has no sign: "-0 kg" is 0 kg.
        Ok(si + 0.0)
    }
}

/// Splits "225 lb …" into the number, the unit as written and what stands behind it.
///
/// A unit runs to the next blank; it may be glued to its number ("34cm").
#[must_use]
pub fn parse_number_and_unit(text: &str) -> Option<(f64, &str, &str)> {
    let text = text.trim_start();
    let number_end = text
        .char_indices()
        .find(|(index, c)| !belongs_to_number(text, *index, *c))
        .map_or(text.len(), |(index, _)| index);
    let number: f64 = text[..number_end].replace('\u{2212}', "-").parse().ok()?;
    let rest = text[number_end..].trim_start();
    let unit_end = rest.find(char::is_whitespace).unwrap_or(rest.len());
    Some((number, &rest[..unit_end], rest[unit_end..].trim_start()))
}

fn belongs_to_number(text: &str, index: usize, c: char) -> bool {
    let previous = text[..index].chars().next_back();
    match c {
        '0'..='9' | '.' => true,
        '+' | '-' | '\u{2212}' => index == 0 || matches!(previous, Some('e' | 'E')),
        'e' | 'E' => {
            index > 0
                && text[index + 1..]
                    .chars()
                    .next()
                    .is_some_and(|n| n.is_ascii_digit() || n == '-' || n == '+')
        }
        _ => false,
    }
}
