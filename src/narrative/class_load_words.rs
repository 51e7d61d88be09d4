//! Words of a figure: a plain weight over one lift of every class.
//!
//! In: the lifts with their weights, what published values miss. Out: [`FigureWords`].

use super::figure_words::FigureWords;
use super::hardest_words::carried_past;
use super::limits_words::by_factor;
use super::prose::{capital, either, listed, part_of_range, percent};
use crate::library::LiftErrors;
use crate::study::{HARD_EFFORT, LoadedExamples, Study};
use crate::units::System;

/// A plain weight over one lift of every class.
#[must_use]
pub fn load_over_class_words(
    lifter: &str,
    examples: &LoadedExamples,
    errors: &LiftErrors,
    units: System,
) -> FigureWords {
    let loaded = &examples.loaded;
    let told: Vec<String> = loaded
        .iter()
        .map(|study| load_in_figures(study, units))
        .collect();
    let words = FigureWords {
        title: hardest_title(loaded),
        subtitle: match loaded.len() {
            0..=MOST_NAMED => format!(
                "{lifter}; weights of about {} effort at their hardest place, the hardest part shaded",
                percent(HARD_EFFORT)
            ),
            _ => format!("{lifter}, hardest part shaded"),
        },
        // Three panels leave no room for one.
        footnote: String::new(),
        description: format!(
            "Capacity and the demand of a plain weight for {} lifts. {}",
            loaded.len(),
            told.join(" ")
        ),
        caption: format!(
            "The heaviest weight that can be held still all along is set by one place of the range. Everywhere else the same weight is \
             lighter than the lifter is strong: the gap between the curves is strength that a plain weight does not ask for.{}{}{}",
            carried_past(loaded, &examples.beside, units),
            left_out_of_classes(&examples.left_out),
            least_sure(loaded, errors)
        ),
    };
    with_doubt_below_title(words, loaded)
}

/// Lifts that the model knows least of; nothing where none is.
fn least_sure(loaded: &[Study], errors: &LiftErrors) -> String {
    let doubted = loaded
        .iter()
        .filter(|study| errors.is_doubted(&study.movement_name));
    let told = doubted.filter_map(|study| {
        let error = errors.of_movement(&study.movement_name)?;
        let name = study.movement_title.to_lowercase();
        Some(format!(
            " Trust the {name} least: its published values, of every kind, are missed {}.",
            by_factor(error)
        ))
    });
    told.collect()
}

/// Why a class has no panel, behind other sentences; nothing where every class has one.
fn left_out_of_classes(left_out: &[Study]) -> String {
    left_out
        .iter()
        .map(|study| {
            let sticking = study.setups.first().and_then(|setup| setup.sticking);
            let asked = sticking.map(|sticking| sticking.max_effort);
            let asked = asked.filter(|effort| effort.is_finite()).map_or_else(
                || format!("more than {}", percent(HARD_EFFORT)),
                percent,
            );
            format!(
                " No {} lift is drawn: even without a weight the {} takes {asked} of what this lifter has where it is hardest.",
                study.class.shape.word(),
                study.movement_title.to_lowercase(),
            )
        })
        .collect()
}

/// So many lifts a title names with their places; more stand in two rows, above which it has one line.
const MOST_NAMED: usize = 3;

/// Where the weight is hardest, lift by lift; of many lifts the places alone, each once.
fn hardest_title(loaded: &[Study]) -> String {
    let place = |study: &Study| Some(part_of_range(study.setups[0].sticking?.point_range));
    if loaded.len() <= MOST_NAMED {
        let named = loaded.iter().filter_map(|study| {
            let name = study.movement_title.to_lowercase();
            Some(format!("{} of the {name}", place(study)?))
        });
        let named: Vec<String> = named.collect();
        return format!("Held still, a plain weight is hardest {}", listed(&named));
    }
    let mut places = Vec::new();
    for place in loaded.iter().filter_map(place) {
        if !places.contains(&place) {
            places.push(place);
        }
    }
    format!(
        "By the lift a weight held still is hardest {}",
        either(&places)
    )
}

/// How hollow lines are read stands below the title of many panels, which leave no room at the foot.
fn with_doubt_below_title(mut words: FigureWords, loaded: &[Study]) -> FigureWords {
    let named: Vec<(&str, &Study)> = loaded
        .iter()
        .map(|study| (study.movement_title.as_str(), study))
        .collect();
    words = words.doubting(&named);
    if loaded.len() > MOST_NAMED && !words.footnote.is_empty() {
        words.subtitle = format!("{}. {}", words.subtitle, words.footnote);
        words.footnote.clear();
    }
    words
}

fn load_in_figures(study: &Study, units: System) -> String {
    let setup = &study.setups[0];
    let name = capital(&study.movement_title);
    match setup.sticking {
        None => format!("{name}: the weight asks for nothing."),
        Some(sticking) => format!(
            "{name} ({}), {}: greatest effort {} at {} of the range, hardest part {} to {}.",
            study.class.shape.word(),
            study.told(units).asked_name(setup),
            percent(sticking.max_effort),
            percent(sticking.point_range),
            percent(sticking.from_range),
            percent(sticking.to_range)
        ),
    }
}
