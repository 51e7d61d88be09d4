//! A value outside what is taken for real, as numbers in the unit that people use for it.
//!
//! In: a value and the ends of its range. Out: [`OutOfBounds`], a part of many faults.

use serde::{Deserialize, Serialize};

/// What a bounded value is measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Measured {
    /// A plain number.
    Plain,
    /// Metres.
    Metre,
    /// Centimetres.
    Centimetre,
    /// Micrometres.
    Micrometre,
    /// Kilograms.
    Kilogram,
    /// Degrees.
    Degree,
    /// Newtons.
    Newton,
    /// Newton metres.
    NewtonMetre,
    /// Newton metres for each kilogram of body mass.
    NewtonMetrePerKilogram,
    /// Seconds.
    Second,
    /// Kilograms a metre.
    KilogramPerMetre,
    /// Milliseconds.
    Millisecond,
    /// Years.
    Year,
    /// Metres a second.
    MetrePerSecond,
    /// Degrees a second.
    DegreePerSecond,
    /// A rate.
    PerSecond,
    /// Percent.
    Percent,
    /// Percent of body mass.
    PercentOfBodyMass,
    /// Percent of a segment's length.
    PercentOfLength,
    /// A share of a segment's length.
    OfLength,
    /// A share of its own length.
    OfItsLength,
    /// A share of standing height.
    OfHeight,
    /// A share of the trunk.
    OfTrunk,
    /// A share of the foot.
    OfFoot,
    /// Optimal fibre lengths.
    OptimalLengths,
    /// Optimal fibre lengths a second.
    LengthsPerSecond,
    /// A share of 1RM.
    OfMaximum,
}

impl Measured {
    /// How much of SI one of it is; shares and plain numbers are themselves, percents their hundredth.
    #[must_use]
    pub const fn in_si(self) -> f64 {
        match self {
            Self::Centimetre | Self::Percent | Self::PercentOfBodyMass | Self::PercentOfLength => {
                0.01
            }
            Self::Millisecond => 0.001,
            Self::Micrometre => 1.0e-6,
            Self::Degree | Self::DegreePerSecond => std::f64::consts::PI / 180.0,
            _ => 1.0,
        }
    }
}

/// A value outside its range.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct OutOfBounds {
    /// The value.
    pub value: f64,
    /// The lower end of the range.
    pub least: f64,
    /// Whether the lower end itself is accepted.
    pub least_is_inside: bool,
    /// The largest accepted value.
    pub most: f64,
    /// What all are measured in.
    pub unit: Measured,
}
