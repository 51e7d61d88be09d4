//! A press with narrow and wide grips in words: where a wide one holds more, and that measured maxima say otherwise.
//!
//! In: a [`GripFamily`], measured maxima. Out: the words around the lecture's figure of grips.

use super::family_words::family_words;
use super::figure_words::FigureWords;
use super::prose::listed;
use super::quantities::{QuantityWords, rounded};
use crate::library::MeasuredGrips;
use crate::study::{Compared, Conditions, GripFamily, UNCHANGED};
use crate::units::{Mass, System};

/// What the hands' distance changes, whatever the lifter.
const LEVERS: &str = "The hands' distance changes the moment arm of the load at shoulder and elbow, and how far the bar has to travel: a \
     wide grip shortens the way.";

/// Why the model misses the measured order (tests/predictions.md).
const WHY_MISSED: &str =
    "The model keeps the elbow's place beside the hands, which people change with the grip.";

/// The words around the figure.
#[must_use]
pub(crate) fn grip_words(
    grips: &GripFamily,
    measured: &MeasuredGrips,
    units: System,
) -> FigureWords {
    let family = &grips.family;
    let words = family_words(family, &Conditions::default(), units);
    let title = grips.turning_cm.map_or(words.title, |cm| {
        let (place, unit) = units.travel_and_unit(cm);
        format!(
            "Held still, a wide grip holds less than a narrow one below {place} {unit}, and more above"
        )
    });
    FigureWords {
        title,
        caption: format!("{LEVERS} {}", measured_maxima(grips, measured, units)),
        ..words
    }
}

/// The usual grip's name: "77 cm (as it is)".
pub(crate) fn usual_grip(grips: &GripFamily, as_it_is: &str, units: System) -> String {
    format!("{} ({as_it_is})", units.tape(grips.usual))
}

/// What people lift with the grips, and whether the model's order is theirs.
fn measured_maxima(grips: &GripFamily, measured: &MeasuredGrips, units: System) -> String {
    let each = measured.grips.iter().map(|grip| {
        let maximum = units.mass(Mass::from_kg(grip.one_rm_kg));
        format!("{maximum} with a {} grip", grip.name)
    });
    let told = listed(&each.collect::<Vec<String>>());
    // Those that were measured, without the lifter's own grip, which may be held in the same unit.
    let tried: Vec<_> = grips
        .in_order()
        .into_iter()
        .filter(|variant| variant.text.trim_start_matches('+') != UNCHANGED)
        .collect();
    let held = |index: usize| tried.get(index)?.figures.value(Compared::Held);
    let last = tried.len().saturating_sub(1);
    let model = held(last).zip(held(0)).map(|(wide, narrow)| wide > narrow);
    let people = measured.grips.last().zip(measured.grips.first());
    let people = people.map(|(wide, narrow)| wide.one_rm_kg > narrow.one_rm_kg);
    let widths: Vec<String> = measured
        .grips
        .iter()
        .map(|grip| rounded(grip.breadths, 1))
        .collect();
    let widths = format!("{} breadths of the shoulders", listed(&widths));
    if model == people {
        format!(
            "At the same {widths} measured maxima are greater with the wide grip than with the narrow one, as the weight held still \
             here: {told}."
        )
    } else {
        format!(
            "At the same {widths} measured maxima go the other way from narrow to wide than the weight held still here: {told}. {WHY_MISSED}"
        )
    }
}
