//! Where the safety arms of a rack stand, in words.
//!
//! In: their height, how far the load is above them at its lowest, whether it lies on the body there. Out: text.

use super::prose::capital;
use super::quantities::QuantityWords;
use crate::setups::ArmsStand;
use crate::units::System;

/// "safety arms at 70 cm, 6 cm below the bar's lowest place: try it first".
#[must_use]
pub(super) fn arms_words(stand: &ArmsStand, units: System) -> String {
    let [height, below] = [stand.height, stand.below].map(|length| units.tape(length));
    match stand.on_body {
        true => format!(
            "at {height}, {below} below the bar on the chest: they hold it only when the chest sinks that far. Flat under the empty \
             bar, raise them until they keep it off chest and throat; arch to lift. Else spotters"
        ),
        false => {
            format!("safety arms at {height}, {below} below the bar's lowest place: try it first")
        }
    }
}

/// The same as a sentence.
#[must_use]
pub(super) fn arms_sentence(stand: &ArmsStand, units: System) -> String {
    let words = arms_words(stand, units);
    match stand.on_body {
        true => format!("Safety arms {words}."),
        false => format!("{}.", capital(&words)),
    }
}
