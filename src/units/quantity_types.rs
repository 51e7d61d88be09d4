//! The quantity types: private SI value, one constructor and one reader a unit, read from text.

use super::STANDARD_GRAVITY_M_S2;
use super::quantity_fault::{QuantityFault, QuantityKind};
use super::text::{Dimension, Unit};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use std::fmt;
use std::ops::{Add, Mul, Neg, Sub};

/// Declares one quantity: its dimension, its units with constructor and reader.
///
/// A macro because ten types share every line but their names; nothing else here is one.
macro_rules! quantity {
    (
        $(#[$doc:meta])* $name:ident, $least:expr, $most:expr,
        [ $( ($from:ident, $as:ident, [$($spelling:literal),+], $multiply:expr, $divide:expr) ),+ $(,)? ]
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// The dimension: its units and sane range.
            pub const DIMENSION: Dimension = Dimension {
                kind: QuantityKind::$name,
                units: &[$( Unit { names: &[$($spelling),+], multiply: $multiply, divide: $divide } ),+],
                least: $least,
                most: $most,
            };
            /// Nothing of it.
            #[allow(dead_code, reason = "every quantity has it")]
            pub const ZERO: Self = Self(0.0);
            $(
                #[doc = concat!("From a value in the unit of the name (", stringify!($from), ").")]
                #[must_use]
                #[allow(dead_code, reason = "every unit has both directions")]
                pub const fn $from(value: f64) -> Self { Self(value * $multiply / $divide) }
                #[doc = concat!("The value in the unit of the name (", stringify!($as), ").")]
                #[must_use]
                #[allow(dead_code, reason = "every unit has both directions")]
                pub const fn $as(self) -> f64 { self.0 * $divide / $multiply }
            )+
            /// The greater of two.
            #[must_use]
            #[allow(dead_code, reason = "every quantity has it")]
            pub const fn max(self, other: Self) -> Self { Self(self.0.max(other.0)) }
            /// Reads a number with one of the units, or several such parts ("5 ft 11 in").
            pub fn from_text(text: &str) -> Result<Self, QuantityFault> {
                Self::DIMENSION.read(text).map(Self)
            }
        }

        impl std::str::FromStr for $name {
            type Err = QuantityFault;
            fn from_str(text: &str) -> Result<Self, QuantityFault> { Self::from_text(text) }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{} {}", self.0, Self::DIMENSION.units[0].names[0])
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                struct QuantityVisitor;
                impl de::Visitor<'_> for QuantityVisitor {
                    type Value = $name;
                    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                        QuantityKind::$name.write_expectation(f)
                    }
                    fn visit_str<E: de::Error>(self, text: &str) -> Result<$name, E> {
                        $name::from_text(text).map_err(E::custom)
                    }
                }
                // Not `deserialize_str`: a bare number then meets what `expecting` tells.
                deserializer.deserialize_any(QuantityVisitor)
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self { Self(self.0 + other.0) }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self { Self(self.0 - other.0) }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self { Self(self.0 * factor) }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self { Self(-self.0) }
        }
    };
}

quantity!(
    /// A length or a distance; may be negative where it is a coordinate.
    Length, -1000.0, 1000.0,
    [
        (from_m, as_m, ["m", "metre", "metres", "meter", "meters"], 1.0, 1.0),
        (from_cm, as_cm, ["cm", "centimetre", "centimetres", "centimeter", "centimeters"], 1.0, 100.0),
        (from_mm, as_mm, ["mm", "millimetre", "millimetres", "millimeter", "millimeters"], 1.0, 1000.0),
        (from_in, as_in, ["in", "inch", "inches", "\""], 254.0, 10_000.0),
        (from_ft, as_ft, ["ft", "foot", "feet", "'"], 3048.0, 10_000.0),
    ]
);
quantity!(
    /// A mass; never negative.
    Mass, 0.0, 100_000.0,
    [
        (from_kg, as_kg, ["kg", "kgs", "kilogram", "kilograms"], 1.0, 1.0),
        (from_g, as_g, ["g", "gram", "grams"], 1.0, 1000.0),
        (from_lb, as_lb, ["lb", "lbs", "pound", "pounds"], 0.453_592_37, 1.0),
    ]
);
quantity!(
    /// A force.
    Force, -1.0e7, 1.0e7,
    [
        (from_n, as_n, ["N", "newton", "newtons"], 1.0, 1.0),
        (from_kn, as_kn, ["kN"], 1000.0, 1.0),
        (from_lbf, as_lbf, ["lbf"], 0.453_592_37 * STANDARD_GRAVITY_M_S2, 1.0),
        (from_kgf, as_kgf, ["kgf"], STANDARD_GRAVITY_M_S2, 1.0),
    ]
);
quantity!(
    /// A torque about a joint axis.
    Torque, -1.0e6, 1.0e6,
    [
        (from_nm, as_nm, ["N·m", "Nm", "N.m", "N*m"], 1.0, 1.0),
        (from_lbf_ft, as_lbf_ft, ["lbf·ft", "lbf.ft", "lbf*ft"], 0.453_592_37 * STANDARD_GRAVITY_M_S2 * 3048.0, 10_000.0),
    ]
);
quantity!(
    /// An angle; zero is the anatomical position.
    Angle, -100.0, 100.0,
    [
        (from_rad, as_rad, ["rad", "radian", "radians"], 1.0, 1.0),
        (from_deg, as_deg, ["deg", "°", "degree", "degrees"], std::f64::consts::PI, 180.0),
    ]
);
quantity!(
    /// A speed along the path; positive lifts.
    Speed, -100.0, 100.0,
    [
        (from_m_s, as_m_s, ["m/s"], 1.0, 1.0),
        (from_cm_s, as_cm_s, ["cm/s"], 1.0, 100.0),
        (from_ft_s, as_ft_s, ["ft/s"], 3048.0, 10_000.0),
    ]
);
quantity!(
    /// A joint's speed; positive lifts.
    AngularSpeed, -1000.0, 1000.0,
    [
        (from_rad_s, as_rad_s, ["rad/s"], 1.0, 1.0),
        (from_deg_s, as_deg_s, ["deg/s", "°/s"], std::f64::consts::PI, 180.0),
    ]
);
quantity!(
    /// A stretch of time; never negative.
    Duration, 0.0, 1.0e7,
    [
        (from_s, as_s, ["s", "sec", "second", "seconds"], 1.0, 1.0),
        (from_ms, as_ms, ["ms"], 1.0, 1000.0),
        (from_min, as_min, ["min", "minute", "minutes"], 60.0, 1.0),
    ]
);
quantity!(
    /// A force per area, as of rubber or muscle; never negative.
    Stress, 0.0, 1.0e12,
    [
        (from_pa, as_pa, ["Pa"], 1.0, 1.0),
        (from_kpa, as_kpa, ["kPa"], 1000.0, 1.0),
        (from_mpa, as_mpa, ["MPa"], 1.0e6, 1.0),
        (from_n_cm2, as_n_cm2, ["N/cm2", "N/cm²"], 1.0e4, 1.0),
    ]
);
quantity!(
    /// Mass per length, as of a chain; never negative.
    LinearDensity, 0.0, 1000.0,
    [
        (from_kg_m, as_kg_m, ["kg/m"], 1.0, 1.0),
        (from_lb_ft, as_lb_ft, ["lb/ft"], 0.453_592_37 * 10_000.0, 3048.0),
    ]
);

impl Mass {
    /// The weight of this mass at standard gravity.
    #[must_use]
    pub const fn weight(self) -> Force {
        Force(self.0 * STANDARD_GRAVITY_M_S2)
    }
}

impl Force {
    /// The mass whose weight this force is, at standard gravity.
    #[must_use]
    pub fn as_mass(self) -> Mass {
        Mass(self.0 / STANDARD_GRAVITY_M_S2)
    }
}

impl Mul<Length> for Force {
    type Output = Torque;
    fn mul(self, lever: Length) -> Torque {
        Torque(self.0 * lever.0)
    }
}

impl Mul<Length> for LinearDensity {
    type Output = Mass;
    fn mul(self, length: Length) -> Mass {
        Mass(self.0 * length.0)
    }
}

impl Angle {
    /// Sine of the angle.
    #[must_use]
    pub fn sin(self) -> f64 {
        self.0.sin()
    }

    /// Cosine of the angle.
    #[must_use]
    pub fn cos(self) -> f64 {
        self.0.cos()
    }
}
