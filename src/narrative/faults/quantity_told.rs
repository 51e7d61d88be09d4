//! Words for: why a text is no quantity.

use super::Told;
use crate::narrative::quantities::{example, kind_name, with_article};
use crate::units::{CommaMeanings, QuantityFault, comma_meanings, dimension_of, meant_quantity};

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
        QuantityFault::DecimalComma { kind, text } => {
            let meanings = comma_meanings(text, |text| dimension_of(*kind).read(text).is_ok());
            format!("`{text}` is no {}: {}", kind_name(*kind), comma(&meanings))
        }
        QuantityFault::UnknownUnit {
            kind,
            text,
            unit,
            known,
        } => {
            let meant = meant_quantity(*kind, text, unit);
            let meant = meant.map(|text| format!("; did you mean \"{text}\"?"));
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

/// How a number with commas is written, by what they may mean.
pub(super) fn comma(meanings: &CommaMeanings) -> String {
    match (&meanings.decimal, &meanings.thousands) {
        (Some(decimal), Some(thousands)) => {
            format!(
                "the comma may part decimals or thousands: write \"{decimal}\" or \"{thousands}\""
            )
        }
        (Some(decimal), None) => format!("decimals are written with a point, \"{decimal}\""),
        (None, Some(thousands)) => {
            format!("thousands are written without a mark, \"{thousands}\"")
        }
        (None, None) => "decimals are written with a point, thousands without a mark".to_owned(),
    }
}
