//! A parameter that is varied: its path and the values to try.
//!
//! In: a path as in `PATH=VALUE` and a text such as "-20%,0%,+20%", "high,low" or "50 cm..90 cm:5".
//! Out: [`Parameter`], every value as a text that can be set.

use crate::bounds::bounds;
use crate::error::{Error, Result, SpacingFault, ValuesFault};
use crate::units::{parse_number_and_unit, rounded};

/// A parameter with the values to try.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parameter {
    /// Its path, such as "technique.grip_width".
    pub path: String,
    /// The values, each as `PATH=VALUE` takes it.
    pub values: Vec<String>,
}

/// Values of a range without a number behind it.
const USUAL_COUNT: usize = 5;

impl Parameter {
    /// Reads the values of a parameter.
    ///
    /// **Fails** on an empty or doubled value, a range that is none, or a count outside 1 to 41; a range has two ends at least.
    pub fn read(path: &str, text: &str) -> Result<Self> {
        let mut values = Vec::new();
        for part in text.split(',').map(str::trim) {
            match part.split_once("..") {
                Some((from, to)) => values.extend(range(part, from, to)?),
                None => values.push(single(part)?),
            }
        }
        for (index, value) in values.iter().enumerate() {
            if values[..index].contains(value) {
                return Err(Error::bad(ValuesFault::Twice {
                    text: text.to_owned(),
                    value: value.clone(),
                }));
            }
        }
        let read = Self {
            path: path.trim().to_owned(),
            values,
        };
        read.check_at_least(1)?;
        Ok(read)
    }

    /// Whether there are values enough, and not more than can be told apart.
    ///
    /// **Fails** with fewer than `least`.
    pub(super) fn check_at_least(&self, least: usize) -> Result<()> {
        let (bound, count) = (&bounds().compared_values, self.values.len());
        if count >= least && bound.holds(count as f64) {
            return Ok(());
        }
        Err(Error::bad(ValuesFault::Count {
            text: self.values.join(","),
            path: self.path.clone(),
            count,
            least,
            most: bound.most_of_them(),
        }))
    }

    /// The setting of one value.
    #[must_use]
    pub fn setting(&self, index: usize) -> String {
        format!("{}={}", self.path, self.values[index])
    }
}

/// A change of nothing, as every one is written.
pub(super) const NO_CHANGE: &str = "+0%";

/// One value: a change needs its sign, no change is "+0%".
fn single(text: &str) -> Result<String> {
    if text.is_empty() {
        return Err(Error::bad(ValuesFault::Empty));
    }
    let Some(number) = text.strip_suffix('%') else {
        return Ok(text.to_owned());
    };
    let number = number.trim();
    if number.replace('\u{2212}', "-").parse() == Ok(0.0) {
        return Ok(NO_CHANGE.to_owned());
    }
    match number.starts_with(['+', '-', '\u{2212}']) {
        true => Ok(format!("{number}%")),
        false => Err(Error::bad(ValuesFault::ChangeWithoutSign {
            text: text.to_owned(),
            number: number.to_owned(),
        })),
    }
}

/// Evenly spaced values from one to another, both included.
fn range(part: &str, from: &str, to: &str) -> Result<Vec<String>> {
    spaced(from, to).map_err(|why| {
        Error::bad(ValuesFault::Spacing {
            text: part.to_owned(),
            why,
        })
    })
}

fn spaced(from: &str, to: &str) -> std::result::Result<Vec<String>, SpacingFault> {
    let (to, count) = match to.rsplit_once(':') {
        None => (to, USUAL_COUNT),
        Some((to, count)) => {
            let count = count.trim().parse::<usize>();
            (to, count.map_err(|_| SpacingFault::CountUnreadable)?)
        }
    };
    let bound = &bounds().compared_values;
    if count < 2 || !bound.holds(count as f64) {
        return Err(SpacingFault::Count {
            count,
            most: bound.most_of_them(),
        });
    }
    let end = |text: &str| match parse_number_and_unit(text) {
        // A unit of two words, such as "shoulder breadths", is one; two quantities are not.
        Some((number, unit, rest))
            if number.is_finite() && !rest.contains(|c: char| c.is_ascii_digit()) =>
        {
            Ok((number, format!("{unit} {rest}").trim().to_owned()))
        }
        _ => Err(SpacingFault::EndUnreadable {
            text: text.trim().to_owned(),
        }),
    };
    let ((low, low_unit), (high, unit)) = (end(from)?, end(to)?);
    if !low_unit.is_empty() && low_unit != unit {
        return Err(SpacingFault::Units {
            from: low_unit,
            to: unit,
        });
    }
    if low == high {
        return Err(SpacingFault::EndsAlike);
    }
    let at = |index: usize| setting_of(low, high, index, count, &unit);
    Ok((0..count).map(at).collect())
}

/// One of evenly spaced values, as `PATH=VALUE` takes it.
fn setting_of(low: f64, high: f64, index: usize, count: usize, unit: &str) -> String {
    let value = low + (high - low) * index as f64 / (count - 1) as f64;
    let value = rounded(value, 6);
    match unit {
        "" => value,
        "%" if value.starts_with('-') => format!("{value}%"),
        "%" => format!("+{value}%"),
        unit => format!("{value} {unit}"),
    }
}
