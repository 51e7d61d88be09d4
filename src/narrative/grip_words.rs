//! A press with narrow and wide grips in words: where a wide one holds more, and that measured maxima say otherwise.
//!
//! In: a [`GripFamily`], measured maxima. Out: the words around the lecture's figure of grips.

use super::family_words::{family_words, why_there};
use super::figure_words::FigureWords;
use super::parameters::shown_value;
use super::prose::listed;
use super::quantities::{QuantityWords, rounded};
use crate::library::{MeasuredGrip, MeasuredGrips};
use crate::study::{Compared, Conditions, GripFamily, UNCHANGED, Variant};
use crate::units::{Mass, System};
use std::cmp::Ordering;

/// What the hands' distance changes, whatever the lifter.
const LEVERS: &str = "The hands' distance changes the moment arm of the load at shoulder and elbow, and how far the bar has to travel: a \
     wide grip shortens the way.";

/// Why the model misses the measured order (tests/predictions.md).
const WHY_MISSED: &str =
    "The model keeps the elbow's place beside the hands, which people change with the grip.";

/// The words around the figure; `study` is the publication of the measured maxima.
#[must_use]
pub(crate) fn grip_words(
    grips: &GripFamily,
    measured: &MeasuredGrips,
    study: &str,
    units: System,
) -> FigureWords {
    let family = &grips.family;
    let words = family_words(family, &Conditions::default(), units);
    let usual_title = || best_of_grips(grips, units).unwrap_or(words.title.clone());
    let title = grips.turning_cm.map_or_else(
        || wrong_best(grips, measured).unwrap_or_else(usual_title),
        |cm| {
            let (place, unit) = units.travel_and_unit(cm);
            format!(
                "Held still, a wide grip holds less than a narrow one below {place} {unit}, and more above"
            )
        },
    );
    // The footnote explains the grip of the title.
    let told = best_grip(grips).filter(|_| grips.turning_cm.is_none());
    let footnote = told.and_then(|best| why_there(family, best, units));
    let footnote = footnote.unwrap_or_else(|| words.footnote.clone());
    FigureWords {
        subtitle: format!(
            "{}, {}; hands apart {} breadths of the shoulders{}",
            family.base.lifter_title,
            family.base.movement_title.to_lowercase(),
            breadths_of(grips),
            measured_best(grips, measured, study, units)
        ),
        footnote,
        caption: format!("{LEVERS} {}", measured_maxima(grips, measured, units)),
        title,
        ..words
    }
}

/// That the model holds most with another grip than people do; nothing where both agree or it has not tried them all.
fn wrong_best(grips: &GripFamily, measured: &MeasuredGrips) -> Option<String> {
    let [people, model] = both_best(grips, measured);
    let is_wrong = people != model && tried(grips).len() == measured.grips.len();
    let best = best_grip(grips).filter(|best| is_wrong && !is_present(best))?;
    Some(format!(
        "People lift most with the {} grip; this model holds most with the {} one, {}",
        people?.name,
        model?.name,
        shown_value(&best.text)
    ))
}

/// "1, 1.4, 1.7 and as it is 1.9".
fn breadths_of(grips: &GripFamily) -> String {
    let tried = grips.breadths.iter().map(|breadths| rounded(*breadths, 1));
    let tried: Vec<String> = tried.collect();
    let usual = rounded(grips.usual_breadths, 1);
    format!("{} and, as it is, {usual}", tried.join(", "))
}

/// The grip that holds the heaviest weight; none where a weight is unknown.
fn best_grip(grips: &GripFamily) -> Option<&Variant> {
    let held = |variant: &&Variant| variant.figures.value(Compared::Held);
    let known = grips.family.variants.iter().filter(|v| held(v).is_some());
    known.max_by(|a, b| held(a).partial_cmp(&held(b)).unwrap_or(Ordering::Equal))
}

/// That grip and what is held with it.
fn best_of_grips(grips: &GripFamily, units: System) -> Option<String> {
    let all = &grips.family.variants;
    let best = best_grip(grips)?;
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

/// The grips that were measured, without the lifter's own one, which may be held in the same unit.
fn tried(grips: &GripFamily) -> Vec<&Variant> {
    let all = grips.in_order().into_iter();
    all.filter(|variant| !is_present(variant)).collect()
}

/// With which of the measured grips people lift most, and with which the model holds most.
fn both_best<'a>(grips: &GripFamily, measured: &'a MeasuredGrips) -> [Option<&'a MeasuredGrip>; 2] {
    let people = measured.grips.iter().map(|grip| grip.one_rm_kg).collect();
    let held = |variant: &Variant| variant.figures.value(Compared::Held);
    let model = tried(grips).into_iter().filter_map(held).collect();
    [people, model].map(|values: Vec<f64>| {
        let most = values.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1));
        most.and_then(|(index, _)| measured.grips.get(index))
    })
}

/// With which grip people lifted most, behind a subtitle, and whether the model says so; nothing where it has not tried them all.
fn measured_best(
    grips: &GripFamily,
    measured: &MeasuredGrips,
    study: &str,
    units: System,
) -> String {
    let are_all = tried(grips).len() == measured.grips.len();
    let ([Some(people), Some(model)], true) = (both_best(grips, measured), are_all) else {
        return String::new();
    };
    let maximum = units.mass(Mass::from_kg(people.one_rm_kg));
    let study = study.replace(" et al.", "");
    if people == model {
        return format!(
            ". People ({study}) lift most with the {} grip, {maximum}; so does the model",
            people.name
        );
    }
    let most = best_grip(grips).and_then(|best| held_mass(best, units));
    let held = most.map_or_else(String::new, |kg| format!(", held in the model {kg}"));
    format!(". Most lifted by people ({study}) {maximum}{held}")
}

/// What people lift with the grips, what the model holds with them, and whether both are greatest with the same.
fn measured_maxima(grips: &GripFamily, measured: &MeasuredGrips, units: System) -> String {
    let each = measured.grips.iter().map(|grip| {
        let maximum = units.mass(Mass::from_kg(grip.one_rm_kg));
        format!("{maximum} with a {} grip", grip.name)
    });
    let told = listed(&each.collect::<Vec<String>>());
    let ours: Vec<String> = tried(grips)
        .into_iter()
        .filter_map(|variant| held_mass(variant, units))
        .collect();
    let [people, model] = both_best(grips, measured);
    let widths: Vec<String> = measured
        .grips
        .iter()
        .map(|grip| rounded(grip.breadths, 1))
        .collect();
    let measured_told = format!(
        "Measured at {} breadths of the shoulders people lift {told}, most with the {} grip; held still, the model has {}",
        listed(&widths),
        people.map_or("", |grip| grip.name.as_str()),
        listed(&ours)
    );
    if ours.len() == measured.grips.len() && model == people {
        format!("{measured_told}, most with the same.")
    } else {
        format!(
            "{measured_told}, most with the {} one. {WHY_MISSED}",
            model.map_or("", |grip| grip.name.as_str())
        )
    }
}
