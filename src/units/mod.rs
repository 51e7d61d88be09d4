//! Quantities: a number with its unit, checked at every door.
//!
//! In: text such as "225 lb" from a file or the command line. Out: a typed quantity in SI. Zero
//! angle is the anatomical position; flexion, abduction and horizontal adduction are positive.

mod comma;
mod kinds;
mod quantity_fault;
mod quantity_types;
mod system;
mod text;

pub use comma::{CommaMeanings, comma_meanings};
pub use kinds::{dimension_in_si, dimension_of, meant_quantity};
pub use quantity_fault::{QuantityFault, QuantityKind};
pub use quantity_types::{
    Angle, AngularSpeed, Duration, Force, Length, LinearDensity, Mass, Speed, Stress, Torque,
};
pub use system::{System, rounded};
pub use text::{Dimension, Unit, parse_number_and_unit};

/// Standard gravity, CGPM 1901, exact, m/s².
pub const STANDARD_GRAVITY_M_S2: f64 = 9.80665;
