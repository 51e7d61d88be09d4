//! Words of a figure: a plain weight over one lift of every class.
//!
//! In: the lifts with their weights, what published values miss. Out: [`FigureWords`].

use super::figure_words::FigureWords;
use super::hardest_words::carried_past;
use super::limits_words::by_factor;
use super::prose::{capital, listed, part_of_range, percent};
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
    let places: Vec<String> = loaded.iter().filter_map(hardest_part).collect();
    let told: Vec<String> = loaded
        .iter()
        .map(|study| load_in_figures(study, units))
        .collect();
    FigureWords {
        title: format!("Held still, a plain weight is hardest {}", listed(&places)),
        subtitle: format!(
            "{lifter}; weights of about {} effort at their hardest place, the hardest part shaded",
            percent(HARD_EFFORT)
        ),
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
    }
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

fn hardest_part(study: &Study) -> Option<String> {
    let sticking = study.setups[0].sticking?;
    let name = study.movement_title.to_lowercase();
    Some(format!(
        "{} of the {name}",
        part_of_range(sticking.point_range)
    ))
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
