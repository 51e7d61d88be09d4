//! Words for: a height that no adult has.

use super::Told;
use crate::narrative::quantities::rounded;
use crate::narrative::shown_units::ShownUnits;
use crate::units::{Length, System};

/// The tables are of adults.
pub(super) const ADULTS: &str = "the tables of bodies and loads are of adults: check the unit and the digits; children train \
                                 with their coach, not by this program";

/// Centimetres of a metre.
const CM: f64 = 100.0;

/// A height that is not between these two, with the unit that would make one of it.
pub(super) fn no_height(height: Length, (least, most): (Length, Length), units: System) -> Told {
    let unit = units.length_unit();
    let shown = |length: Length| format!("{} {}", rounded(unit.of(length.as_m()), 0), unit.symbol);
    let told = format!("of an adult ({} to {})", shown(least), shown(most));
    let is_height = |metres: f64| (least.as_m()..=most.as_m()).contains(&metres);
    let metres = height.as_m();
    // The digits are those of the unit that was written.
    let (written, meant) = if is_height(metres * CM) {
        let digits = rounded(metres * CM, 2);
        (format!("{digits} cm"), Some(format!("{digits} m")))
    } else if is_height(metres / CM) {
        let digits = rounded(metres, 1);
        (format!("{digits} m"), Some(format!("{digits} cm")))
    } else {
        (shown(height), None)
    };
    let told = Told::new(format!("{written} is no height {told}"));
    match meant {
        Some(meant) => told.hint(format!(
            "with the other unit it is one: did you mean {meant}?"
        )),
        None => told.hint(ADULTS),
    }
}
