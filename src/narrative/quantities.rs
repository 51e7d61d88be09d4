//! Quantities in words: numbers rounded to the digits that matter, in metric or US units.
//!
//! In: quantities and the [`System`] that was asked for. Out: texts such as "100 kg" and "5.6 in".

pub use crate::units::rounded;
use crate::units::{Force, Length, Mass, QuantityKind, System};

/// A mass in words: "100 kg", "220.5 lb".
#[must_use]
pub fn mass_in(units: System, mass: Mass) -> String {
    match units {
        System::Metric => format!("{} kg", rounded(mass.as_kg(), 1)),
        System::Us => format!("{} lb", rounded(mass.as_lb(), 1)),
    }
}

/// A mass to so many decimals: "82.25 kg".
#[must_use]
pub fn fine_mass_in(units: System, mass: Mass, decimals: usize) -> String {
    let number = mass_number_in(units, mass, decimals);
    match units {
        System::Metric => format!("{number} kg"),
        System::Us => format!("{number} lb"),
    }
}

/// The number of a mass alone, where its unit stands behind another.
#[must_use]
pub fn mass_number_in(units: System, mass: Mass, decimals: usize) -> String {
    match units {
        System::Metric => rounded(mass.as_kg(), decimals),
        System::Us => rounded(mass.as_lb(), decimals),
    }
}

/// A length in metres to so many decimals, or in inches to one: "0.605 m", "23.8 in".
#[must_use]
pub fn length_in(units: System, length: Length, decimals: usize) -> String {
    match units {
        System::Metric => format!("{} m", rounded(length.as_m(), decimals)),
        System::Us => format!("{} in", rounded(length.as_in(), 1)),
    }
}

/// A short length in words: "14.2 cm", "5.6 in".
#[must_use]
pub fn short_length_in(units: System, length: Length) -> String {
    match units {
        System::Metric => format!("{} cm", rounded(length.as_cm(), 1)),
        System::Us => format!("{} in", rounded(length.as_in(), 1)),
    }
}

/// A distance in a room, all its digits in metres: "2.5 m", "8.2 ft".
#[must_use]
pub fn far_length_in(units: System, length: Length) -> String {
    match units {
        System::Metric => format!("{} m", length.as_m()),
        System::Us => format!("{} ft", rounded(length.as_ft(), 2)),
    }
}

/// A force in words: "981 N", "220 lbf".
#[must_use]
pub fn force_in(units: System, force: Force) -> String {
    match units {
        System::Metric => format!("{} N", rounded(force.as_n(), 0)),
        System::Us => format!("{} lbf", rounded(force.as_lbf(), 0)),
    }
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
