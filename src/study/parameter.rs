//! A parameter that is varied: its path, the values to try, and what a person calls it.
//!
//! In: a path as in `PATH=VALUE` and a text such as "-20%,0%,+20%", "high,low" or "50 cm..90 cm:5".
//! Out: [`Parameter`], every value as a text that can be set.

use crate::error::{Error, Result};
use crate::units::{parse_number_and_unit, rounded};

/// A parameter with the values to try.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parameter {
    /// Its path, such as "technique.grip_width".
    pub path: String,
    /// The values, each as `PATH=VALUE` takes it.
    pub values: Vec<String>,
}

/// Most values of one parameter: more curves cannot be told apart, and a map grows with the square.
pub const MOST_VALUES: usize = 41;
/// Values of a range without a number behind it.
const USUAL_COUNT: usize = 5;

impl Parameter {
    /// Reads the values of a parameter.
    ///
    /// **Fails** on an empty or doubled value, a range that is none, or a count outside 2 to 41.
    pub fn read(path: &str, text: &str) -> Result<Self> {
        let mut values = Vec::new();
        for part in text.split(',').map(str::trim) {
            match part.split_once("..") {
                Some((from, to)) => values.extend(range(part, from, to)?),
                None => values.push(single(part)?),
            }
        }
        if !(2..=MOST_VALUES).contains(&values.len()) {
            return Err(Error::bad(format!(
                "`{text}` gives {} value{} to {path}, and 2 to {MOST_VALUES} can be compared",
                values.len(),
                if values.len() == 1 { "" } else { "s" }
            ))
            .hint("for example -20%,0%,+20% or \"50 cm..80 cm:4\""));
        }
        for (index, value) in values.iter().enumerate() {
            if values[..index].contains(value) {
                return Err(Error::bad(format!("`{text}` names {value} twice")));
            }
        }
        Ok(Self {
            path: path.trim().to_owned(),
            values,
        })
    }

    /// The setting of one value.
    #[must_use]
    pub fn setting(&self, index: usize) -> String {
        format!("{}={}", self.path, self.values[index])
    }

    /// What a person calls the parameter.
    #[must_use]
    pub fn in_words(&self) -> String {
        parameter_in_words(&self.path)
    }
}

/// One value: a change needs its sign, no change is "+0%".
fn single(text: &str) -> Result<String> {
    if text.is_empty() {
        return Err(
            Error::bad("a value is empty").hint("separate values with one comma: -10%,0%,+10%")
        );
    }
    let Some(number) = text.strip_suffix('%') else {
        return Ok(text.to_owned());
    };
    let number = number.trim();
    if number.starts_with(['+', '-', '\u{2212}']) {
        return Ok(format!("{number}%"));
    }
    match number.parse::<f64>() {
        Ok(0.0) => Ok("+0%".to_owned()),
        _ => Err(Error::bad(format!("`{text}` is a change without a sign"))
            .hint(format!("write +{number}% or -{number}%"))),
    }
}

/// Evenly spaced values from one to another, both included.
fn range(part: &str, from: &str, to: &str) -> Result<Vec<String>> {
    let fault = |what: &str| {
        Error::bad(format!("`{part}` is no range: {what}"))
            .hint("write FROM..TO:COUNT, such as \"50 cm..90 cm:5\" or -20%..+20%:5")
    };
    let (to, count) = match to.rsplit_once(':') {
        None => (to, USUAL_COUNT),
        Some((to, count)) => {
            let count = count.trim().parse();
            (
                to,
                count.map_err(|_| fault("the count behind `:` is no whole number"))?,
            )
        }
    };
    if !(2..=MOST_VALUES).contains(&count) {
        return Err(fault(&format!("{count} values are not 2 to {MOST_VALUES}")));
    }
    let end = |text: &str| match parse_number_and_unit(text) {
        Some((number, unit, "")) if number.is_finite() => Ok((number, unit.to_owned())),
        _ => Err(fault(&format!(
            "`{}` is no number with a unit",
            text.trim()
        ))),
    };
    let ((low, low_unit), (high, unit)) = (end(from)?, end(to)?);
    if !low_unit.is_empty() && low_unit != unit {
        return Err(fault(&format!("its ends are in `{low_unit}` and `{unit}`")));
    }
    if low == high {
        return Err(fault("both ends are alike"));
    }
    let last = (count - 1) as f64;
    Ok((0..count)
        .map(|index| {
            let value = rounded(low + (high - low) * index as f64 / last, 6);
            match unit.as_str() {
                "" => value,
                "%" if value.starts_with('-') => format!("{value}%"),
                "%" => format!("+{value}%"),
                unit => format!("{value} {unit}"),
            }
        })
        .collect())
}

/// What a person calls a value of the model: "moment arm of biceps long at the elbow".
#[must_use]
pub fn parameter_in_words(path: &str) -> String {
    let path = path.strip_suffix(".scale").unwrap_or(path);
    let words = |text: &str| text.replace('_', " ");
    let parts: Vec<&str> = path.split('.').collect();
    match parts.as_slice() {
        ["technique" | "build", name] => words(name),
        ["segments", segment, field] => format!("{} of the {}", words(field), words(segment)),
        ["muscles", muscle, "moment_arm", dof, rest @ ..] => {
            let more = rest.iter().map(|part| format!(", {}", words(part)));
            let place = match words(dof).split_once(' ') {
                Some((joint, plane)) => format!("{joint} ({plane})"),
                None => words(dof),
            };
            format!(
                "moment arm of {} at the {place}{}",
                words(muscle),
                more.collect::<String>()
            )
        }
        ["muscles", muscle, "reference", number, field] => {
            let pose = if *number == "0" {
                String::new()
            } else {
                format!(" (pose {number})")
            };
            format!(
                "{} of {} in its reference pose{pose}",
                words(field),
                words(muscle)
            )
        }
        ["muscles", muscle, fields @ ..] => {
            format!("{} of {}", words(&fields.join(" ")), words(muscle))
        }
        ["lifter", "strength", group] => format!("strength of the {}", words(group)),
        ["lifter", "strength_scale"] => "strength of all muscles".to_owned(),
        ["lifter", field] => format!("{} of the lifter", words(field)),
        ["joints", dof, field] => {
            let what = match *field {
                "high" => "upper stop",
                "low" => "lower stop",
                "high_torque" => "passive torque at the upper stop",
                "low_torque" => "passive torque at the lower stop",
                "width" => "softness of the stops",
                other => return format!("{} of the {}", words(other), words(dof)),
            };
            format!("{what} of the {}", words(dof))
        }
        ["curves", curve, fields @ ..] => {
            format!("{} of the {} curve", words(&fields.join(" ")), words(curve))
        }
        ["movement", "path", .., "from"] | ["movement", "from"] => "start of the range".to_owned(),
        ["movement", "path", .., "to"] | ["movement", "to"] => "end of the range".to_owned(),
        ["movement", "path", end @ ("start" | "end"), way] => {
            format!("{} of the path, {}", words(end), words(way))
        }
        ["movement", "path", fields @ ..] | ["movement", fields @ ..] => {
            words(&fields.join(" ")) + " of the movement"
        }
        _ => words(&path.replace('.', " ")),
    }
}

/// A value for people: a true minus sign, a blank before the per cent sign.
#[must_use]
pub fn shown_value(text: &str) -> String {
    match text.strip_suffix('%') {
        Some("+0") => "as it is".to_owned(),
        Some(number) => format!("{} %", number.replace('-', "\u{2212}")),
        None => match text.strip_prefix('-') {
            Some(number) => format!("\u{2212}{number}"),
            None => text.to_owned(),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn law_lists_and_ranges_are_read() {
        let values = |text: &str| Parameter::read("technique.grip_width", text).map(|p| p.values);
        assert_eq!(
            values("-20%, 0%,+20%").expect("values"),
            ["-20%", "+0%", "+20%"]
        );
        assert_eq!(
            values("50 cm..90 cm:5").expect("values"),
            ["50 cm", "60 cm", "70 cm", "80 cm", "90 cm"]
        );
        assert_eq!(values("50..60 cm:2").expect("values"), ["50 cm", "60 cm"]);
        assert_eq!(
            values("-10%..+10%:3").expect("values"),
            ["-10%", "+0%", "+10%"]
        );
        assert_eq!(values("high,low").expect("values"), ["high", "low"]);
        assert_eq!(values("0.5..1").expect("values").len(), 5);
    }

    #[test]
    fn law_bad_values_are_refused() {
        for bad in [
            "10%,20%",
            "50 cm",
            "",
            "1,,2",
            "1 cm..2 in:3",
            "1..1",
            "1..2:x",
            "1..2:99",
            "5,5",
        ] {
            assert!(
                Parameter::read("technique.grip_width", bad).is_err(),
                "{bad}"
            );
        }
    }

    #[test]
    fn law_paths_have_words() {
        assert_eq!(
            parameter_in_words("muscles.biceps_long.moment_arm.elbow.scale"),
            "moment arm of biceps long at the elbow"
        );
        assert_eq!(parameter_in_words("technique.grip_width"), "grip width");
        assert_eq!(
            parameter_in_words("segments.upper_arm.length"),
            "length of the upper arm"
        );
    }
}
