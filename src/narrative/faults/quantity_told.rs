//! Words for: why a text is no quantity.

use super::Told;
use crate::narrative::quantities::{example, kind_name, with_article};
use crate::units::QuantityFault;

/// The fault in words.
pub(super) fn told(fault: &QuantityFault) -> Told {
    Told::new(message(fault))
}

fn message(fault: &QuantityFault) -> String {
    match fault {
        QuantityFault::Nothing { kind } => format!(
            "expected {} such as \"{}\", found nothing",
            with_article(*kind),
            example(*kind)
        ),
        QuantityFault::NoNumber { kind, text } => format!(
            "`{text}` is no {}: expected a number and a unit, such as \"{}\"",
            kind_name(*kind),
            example(*kind)
        ),
        QuantityFault::NoUnit { kind, text } => format!(
            "`{text}` has no unit; write {} with its unit, such as \"{}\"",
            with_article(*kind),
            example(*kind)
        ),
        QuantityFault::DecimalComma { kind, text } => format!(
            "`{text}` is no {}: decimals are written with a point, \"{}\"",
            kind_name(*kind),
            text.replacen(',', ".", 1)
        ),
        QuantityFault::UnknownUnit {
            kind,
            text,
            unit,
            known,
            nearest,
        } => {
            // A thousandth of a known unit is no slip of the pen: another unit would be another value.
            let is_scaled = known
                .iter()
                .any(|name| unit.get(1..) == Some(name.as_str()));
            let meant = nearest
                .as_ref()
                .filter(|_| !is_scaled)
                .map(|name| format!("; did you mean \"{}\"?", text.replacen(unit, name, 1)));
            format!(
                "`{text}` is no {name}: units of {name} are {}{}",
                known.join(", "),
                meant.unwrap_or_default(),
                name = kind_name(*kind)
            )
        }
        QuantityFault::Several { kind, text } => format!(
            "`{text}` is more than one {}; expected one, such as \"{}\"",
            kind_name(*kind),
            example(*kind)
        ),
        QuantityFault::NotFinite { kind, text } => {
            format!("`{text}` is not a finite {}", kind_name(*kind))
        }
        QuantityFault::OutOfBounds {
            kind,
            text,
            least,
            most,
            unit,
        } => format!(
            "`{text}` is outside what {} can be here ({least} {unit} to {most} {unit})",
            with_article(*kind)
        ),
    }
}
