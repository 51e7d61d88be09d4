//! Quantities in words: numbers rounded to the digits that matter, in metric or US units.
//!
//! In: quantities and the [`System`] that was asked for. Out: texts such as "100 kg" and "5.6 in".

pub use crate::units::rounded;
use crate::units::{Force, Length, Mass, QuantityKind, System};

/// Quantities in words, as the units themselves write them.
pub trait QuantityWords {
    /// A mass in words: "100 kg", "220.5 lb".
    fn mass(self, mass: Mass) -> String;
    /// A mass to so many decimals: "82.25 kg".
    fn fine_mass(self, mass: Mass, decimals: usize) -> String;
    /// The number of a mass alone, where its unit stands behind another.
    fn mass_number(self, mass: Mass, decimals: usize) -> String;
    /// A length in metres to so many decimals, or in inches to one: "0.605 m", "23.8 in".
    fn length(self, length: Length, decimals: usize) -> String;
    /// A short length in words: "14.2 cm", "5.6 in".
    fn short_length(self, length: Length) -> String;
    /// A length as a tape in the gym is read: whole centimetres, tenths of an inch.
    fn tape(self, length: Length) -> String;
    /// A travel of so many centimetres, and its unit.
    fn travel_and_unit(self, cm: f64) -> (String, &'static str);
    /// A distance in a room, all its digits in metres: "2.5 m", "8.2 ft".
    fn far_length(self, length: Length) -> String;
    /// A force in words: "981 N", "220 lbf".
    fn force(self, force: Force) -> String;
}

impl QuantityWords for System {
    fn mass(self, mass: Mass) -> String {
        self.fine_mass(mass, 1)
    }

    fn fine_mass(self, mass: Mass, decimals: usize) -> String {
        let number = self.mass_number(mass, decimals);
        match self {
            Self::Metric => format!("{number} kg"),
            Self::Us => format!("{number} lb"),
        }
    }

    fn mass_number(self, mass: Mass, decimals: usize) -> String {
        match self {
            Self::Metric => not_nothing(mass.as_kg(), decimals),
            Self::Us => not_nothing(mass.as_lb(), decimals),
        }
    }

    fn length(self, length: Length, decimals: usize) -> String {
        match self {
            Self::Metric => format!("{} m", rounded(length.as_m(), decimals)),
            Self::Us => format!("{} in", rounded(length.as_in(), 1)),
        }
    }

    fn short_length(self, length: Length) -> String {
        match self {
            Self::Metric => format!("{} cm", rounded(length.as_cm(), 1)),
            Self::Us => format!("{} in", rounded(length.as_in(), 1)),
        }
    }

    fn tape(self, length: Length) -> String {
        match self {
            Self::Metric => format!("{} cm", rounded(length.as_cm(), 0)),
            Self::Us => format!("{} in", rounded(length.as_in(), 1)),
        }
    }

    fn travel_and_unit(self, cm: f64) -> (String, &'static str) {
        match self {
            Self::Metric => (rounded(cm, 0), "cm"),
            Self::Us => (rounded(Length::from_cm(cm).as_in(), 1), "in"),
        }
    }

    fn far_length(self, length: Length) -> String {
        match self {
            Self::Metric => format!("{} m", length.as_m()),
            Self::Us => format!("{} ft", rounded(length.as_ft(), 2)),
        }
    }

    fn force(self, force: Force) -> String {
        match self {
            Self::Metric => format!("{} N", rounded(force.as_n(), 0)),
            Self::Us => format!("{} lbf", rounded(force.as_lbf(), 0)),
        }
    }
}

/// Most decimals of a number that would be told as nothing: a tenth of a gram among kilograms.
const FINEST: usize = 4;

/// A number to so many decimals; to two digits where it would be told as nothing and is something: "0.008", "0.024".
pub(super) fn not_nothing(number: f64, decimals: usize) -> String {
    let told = rounded(number, decimals);
    if told != "0" {
        return told;
    }
    let mut finer = decimals + 1..=FINEST;
    let first = finer.find(|decimals| rounded(number, *decimals) != "0");
    first.map_or(told, |first| rounded(number, first + 1))
}

/// A number's text with a true minus sign.
#[must_use]
pub(crate) fn with_minus(number: &str) -> String {
    number.replace('-', "\u{2212}")
}

/// What a kind of quantity is called.
#[must_use]
pub fn kind_name(kind: QuantityKind) -> &'static str {
    match kind {
        QuantityKind::Length => "length",
        QuantityKind::Mass => "mass",
        QuantityKind::Force => "force",
        QuantityKind::Torque => "torque",
        QuantityKind::Angle => "angle",
        QuantityKind::Speed => "speed",
        QuantityKind::AngularSpeed => "angular speed",
        QuantityKind::Duration => "time",
        QuantityKind::Stress => "stress",
        QuantityKind::LinearDensity => "mass per length",
    }
}

/// A kind of quantity with its article: "a length", "an angle".
#[must_use]
pub fn with_article(kind: QuantityKind) -> String {
    let name = kind_name(kind);
    let vowel = name.starts_with(['a', 'e', 'i', 'o', 'u']);
    format!("{} {name}", if vowel { "an" } else { "a" })
}

/// What stands where a quantity of a kind is expected: "a length in quotes with its unit, such as …".
#[must_use]
pub fn expected_quantity(kind: QuantityKind) -> String {
    format!(
        "{} in quotes with its unit, such as \"{}\"",
        with_article(kind),
        example(kind)
    )
}

/// How a quantity of a kind is written, such as "26 cm".
#[must_use]
pub fn example(kind: QuantityKind) -> &'static str {
    match kind {
        QuantityKind::Length => "26 cm",
        QuantityKind::Mass => "100 kg",
        QuantityKind::Force => "980 N",
        QuantityKind::Torque => "60 N·m",
        QuantityKind::Angle => "60 deg",
        QuantityKind::Speed => "0.3 m/s",
        QuantityKind::AngularSpeed => "60 deg/s",
        QuantityKind::Duration => "3 s",
        QuantityKind::Stress => "0.4 MPa",
        QuantityKind::LinearDensity => "3.8 kg/m",
    }
}
