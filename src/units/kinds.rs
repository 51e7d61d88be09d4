//! Every kind of quantity by its name, and what somebody meant who wrote a unit that its kind does not have.
//!
//! In: a kind, a text. Out: its dimension; the text with the unit that was meant.

use super::quantity_fault::QuantityKind;
use super::quantity_types::{
    Angle, AngularSpeed, Duration, Force, Length, LinearDensity, Mass, Speed, Stress, Torque,
};
use super::text::{Dimension, parse_number_and_unit};

/// The dimension of every kind.
static DIMENSIONS: [Dimension; 10] = [
    Length::DIMENSION,
    Mass::DIMENSION,
    Force::DIMENSION,
    Torque::DIMENSION,
    Angle::DIMENSION,
    Speed::DIMENSION,
    AngularSpeed::DIMENSION,
    Duration::DIMENSION,
    Stress::DIMENSION,
    LinearDensity::DIMENSION,
];

/// The units and the sane range of a kind of quantity.
#[must_use]
pub fn dimension_of(kind: QuantityKind) -> &'static Dimension {
    let mut all = DIMENSIONS.iter();
    let found = all.find(|dimension| dimension.kind == kind);
    found.expect("every kind has its dimension")
}

/// The kind of quantity whose unit in SI is written so.
#[must_use]
pub fn dimension_in_si(unit: &str) -> Option<&'static Dimension> {
    let mut all = DIMENSIONS.iter();
    all.find(|dimension| dimension.units[0].names[0] == unit)
}

/// The text with the unit that was meant in the place of `unit`, which its kind does not have.
///
/// A mass in the place of a force is its weight; else one slip of the pen away from a single unit. Nothing where the unit
/// is one of another kind or has a prefix that its kind is not written with: the value would be another. What is
/// returned is read.
#[must_use]
pub fn meant_quantity(kind: QuantityKind, text: &str, unit: &str) -> Option<String> {
    let name = meant_unit(kind, unit)?;
    let place = place_of(text, unit)?;
    let meant = format!("{}{name}{}", &text[..place], &text[place + unit.len()..]);
    dimension_of(kind).read(&meant).is_ok().then_some(meant)
}

fn meant_unit(kind: QuantityKind, unit: &str) -> Option<&'static str> {
    let own = dimension_of(kind);
    let mut masses = Mass::DIMENSION.units.iter();
    let of_mass = masses.find(|mass| mass.names.contains(&unit));
    if let (QuantityKind::Force, Some(mass)) = (kind, of_mass) {
        let as_force = format!("{}f", mass.names[0]);
        return own
            .units
            .iter()
            .map(|u| u.names[0])
            .find(|name| *name == as_force);
    }
    let is_of_another = DIMENSIONS
        .iter()
        .flat_map(|dimension| dimension.units)
        .any(|known| known.names.contains(&unit));
    if is_of_another {
        return None;
    }
    let letters = unit.chars().count();
    let behind_first = unit.char_indices().nth(1).map(|(at, _)| &unit[at..]);
    let is_scaled = behind_first.is_some_and(|rest| own.units.iter().any(|u| u.names[0] == rest));
    let slips = |name: &str| match strsim::damerau_levenshtein(name, unit) {
        _ if name.eq_ignore_ascii_case(unit) => true,
        1 => !is_scaled && letters > 1 && name.chars().count() > 1,
        _ => false,
    };
    let mut near = own.units.iter().filter_map(|known| {
        let mut names = known.names.iter().copied();
        names.find(|name| slips(name))
    });
    match (near.next(), near.next()) {
        (Some(only), None) => Some(only),
        _ => None,
    }
}

/// Where a unit stands in a text of numbers and units.
fn place_of(text: &str, unit: &str) -> Option<usize> {
    let mut rest = text;
    while !rest.trim().is_empty() {
        let (_, found, behind) = parse_number_and_unit(rest)?;
        if found == unit {
            return Some(found.as_ptr() as usize - text.as_ptr() as usize);
        }
        rest = behind;
    }
    None
}
