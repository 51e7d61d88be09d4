//! Bounded values in words: number, unit, range.
//!
//! In: [`OutOfBounds`]. Out: "is 16.8 m; it must lie between 1.2 and 2.3 m".

use super::quantities::rounded;
use crate::error::{Measured, OutOfBounds};

/// Why a value is outside its range, reading on from its name.
#[must_use]
pub fn outside(range: &OutOfBounds) -> String {
    let unit = unit(range.unit);
    let gap = if unit.is_empty() { "" } else { " " };
    let (value, most) = (figures(range.value), range.most);
    let least = range.least;
    if range.least_is_inside {
        format!("is {value}{gap}{unit}; it must lie between {least} and {most}{gap}{unit}")
    } else {
        format!("is {value}{gap}{unit}; it must be above {least} and at most {most}{gap}{unit}")
    }
}

/// Why an accepted value is unlikely, reading on from its name.
#[must_use]
pub fn unlikely(range: &OutOfBounds) -> String {
    let unit = unit(range.unit);
    let gap = if unit.is_empty() { "" } else { " " };
    let (value, most) = (figures(range.value), range.most);
    format!(
        "is {value}{gap}{unit}; {} to {most}{gap}{unit} is usual",
        range.least
    )
}

/// A number with the digits that matter in a message.
fn figures(value: f64) -> String {
    if value != 0.0 && value.abs() < 0.001 || value.abs() >= 1.0e7 {
        format!("{value:e}")
    } else {
        rounded(value, 4)
    }
}

/// What stands behind a number.
const fn unit(unit: Measured) -> &'static str {
    match unit {
        Measured::Plain => "",
        Measured::Metre => "m",
        Measured::Centimetre => "cm",
        Measured::Micrometre => "µm",
        Measured::Kilogram => "kg",
        Measured::Degree => "deg",
        Measured::Newton => "N",
        Measured::NewtonMetre => "N·m",
        Measured::NewtonMetrePerKilogram => "N·m for each kilogram of body mass",
        Measured::Second => "s",
        Measured::KilogramPerMetre => "kg/m",
        Measured::Millisecond => "ms",
        Measured::Year => "years",
        Measured::MetrePerSecond => "m/s",
        Measured::DegreePerSecond => "deg/s",
        Measured::PerSecond => "per second",
        Measured::Percent => "%",
        Measured::PercentOfBodyMass => "% of body mass",
        Measured::PercentOfLength => "% of the length",
        Measured::OfLength => "of the length",
        Measured::OfItsLength => "of its length",
        Measured::OfHeight => "of standing height",
        Measured::OfTrunk => "of the trunk",
        Measured::OfFoot => "of the foot",
        Measured::OptimalLengths => "optimal lengths",
        Measured::LengthsPerSecond => "lengths per second",
        Measured::OfMaximum => "of 1RM",
    }
}
