//! A press with narrow and wide grips in words: where a wide one holds more, and that measured maxima say otherwise.
//!
//! In: a [`GripFamily`], measured maxima. Out: the words around the lecture's figure of grips.

use super::family_words::family_words;
use super::figure_words::FigureWords;
use super::parameters::shown_value;
use super::prose::listed;
use super::quantities::{QuantityWords, rounded};
use crate::library::MeasuredGrips;
use crate::study::{Compared, Conditions, GripFamily, UNCHANGED, Variant};
use crate::units::{Mass, System};
use std::cmp::Ordering;

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
    let title = grips.turning_cm.map_or_else(
        || best_of_grips(grips, units).unwrap_or(words.title),
        |cm| {
            let (place, unit) = units.travel_and_unit(cm);
            format!(
                "Held still, a wide grip holds less than a narrow one below {place} {unit}, and more above"
            )
        },
    );
    FigureWords {
        title,
        subtitle: format!(
            "{}, {}; hands apart {} breadths of the shoulders",
            family.base.lifter_title,
            family.base.movement_title.to_lowercase(),
            breadths_of(grips)
        ),
        caption: format!("{LEVERS} {}", measured_maxima(grips, measured, units)),
        ..words
    }
}

/// "1, 1.4, 1.7 and as it is 1.9".
fn breadths_of(grips: &GripFamily) -> String {
    let tried = grips.breadths.iter().map(|breadths| rounded(*breadths, 1));
    let tried: Vec<String> = tried.collect();
    let usual = rounded(grips.usual_breadths, 1);
    format!("{} and, as it is, {usual}", tried.join(", "))
}

/// The grip that holds the heaviest weight; none where a weight is unknown.
fn best_of_grips(grips: &GripFamily, units: System) -> Option<String> {
    let all = &grips.family.variants;
    let held = |variant: &&Variant| variant.figures.value(Compared::Held);
    let best = all
        .iter()
        .filter(|variant| held(variant).is_some())
        .max_by(|a, b| held(a).partial_cmp(&held(b)).unwrap_or(Ordering::Equal))?;
    let name = if is_present(best) {
        units.tape(grips.usual)
    } else {
        shown_value(&best.text)
    };
    Some(format!(
        "Of {} grips the one of {name} holds most: {}",
        all.len(),
        held_mass(best, units)?
    ))
}

/// The heaviest weight held with a grip.
fn held_mass(variant: &Variant, units: System) -> Option<String> {
    let kg = variant.figures.value(Compared::Held)?;
    Some(units.mass(Mass::from_kg(kg)))
}

fn is_present(variant: &Variant) -> bool {
    variant.text.trim_start_matches('+') == UNCHANGED
}

/// The usual grip's name: "77 cm (as it is)".
pub(crate) fn usual_grip(grips: &GripFamily, as_it_is: &str, units: System) -> String {
    format!("{} ({as_it_is})", units.tape(grips.usual))
}

/// What people lift with the grips, what the model holds with them, and whether both are greatest with the same.
fn measured_maxima(grips: &GripFamily, measured: &MeasuredGrips, units: System) -> String {
    let each = measured.grips.iter().map(|grip| {
        let maximum = units.mass(Mass::from_kg(grip.one_rm_kg));
        format!("{maximum} with a {} grip", grip.name)
    });
    let told = listed(&each.collect::<Vec<String>>());
    // Those that were measured, without the lifter's own grip, which may be held in the same unit.
    let tried: Vec<&Variant> = grips
        .in_order()
        .into_iter()
        .filter(|variant| !is_present(variant))
        .collect();
    let ours: Vec<String> = tried
        .iter()
        .filter_map(|variant| held_mass(variant, units))
        .collect();
    let best = |values: Vec<f64>| {
        let each = values.iter().enumerate();
        each.max_by(|a, b| a.1.total_cmp(b.1))
            .map(|(index, _)| index)
    };
    let people = best(measured.grips.iter().map(|grip| grip.one_rm_kg).collect());
    let held = |variant: &&Variant| variant.figures.value(Compared::Held);
    let model = best(tried.iter().filter_map(held).collect());
    let name = |index: Option<usize>| {
        let grip = index.and_then(|index| measured.grips.get(index));
        grip.map_or("", |grip| grip.name.as_str())
    };
    let widths: Vec<String> = measured
        .grips
        .iter()
        .map(|grip| rounded(grip.breadths, 1))
        .collect();
    let measured_told = format!(
        "Measured at {} breadths of the shoulders people lift {told}, most with the {} grip; held still, the model has {}",
        listed(&widths),
        name(people),
        listed(&ours)
    );
    if ours.len() == measured.grips.len() && model == people {
        format!("{measured_told}, most with the same.")
    } else {
        format!(
            "{measured_told}, most with the {} one. {WHY_MISSED}",
            name(model)
        )
    }
}
