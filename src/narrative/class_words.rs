//! The classes of strength curve in words, and what a plain weight does to each.
//!
//! In: lifts of a class, loaded or not. Out: the words around the lecture's figures of classes.

use super::figure_words::FigureWords;
use super::hardest_words::carried_past;
use super::limits_words::by_factor;
use super::prose::{capital, listed, part_of_range, percent};
use crate::capacity::CurveShape;
use crate::library::LiftErrors;
use crate::study::{HARD_EFFORT, LoadedExamples, Study};
use crate::units::System;

/// What a curve of this class does, after the name of the lift.
fn verb(shape: CurveShape) -> &'static str {
    match shape {
        CurveShape::Ascending => "rises",
        CurveShape::Descending => "falls",
        CurveShape::BellShaped => "peaks in between",
        CurveShape::UShaped => "sags in between",
        CurveShape::Level => "stays level",
    }
}

/// Whose curves, and how they were made.
fn held_still(lifter: &str) -> String {
    format!("{lifter}, held still at every place of the range")
}

/// The classes side by side.
#[must_use]
pub fn classes_words(lifter: &str, examples: &[&Study]) -> FigureWords {
    let doings: Vec<String> = examples
        .iter()
        .map(|study| {
            let name = study.movement_title.to_lowercase();
            format!("the {name} {}", verb(study.class.shape))
        })
        .collect();
    let told: Vec<String> = examples
        .iter()
        .map(|study| class_in_figures(study))
        .collect();
    FigureWords {
        title: format!("Strength has a shape: {}", listed(&doings)),
        subtitle: held_still(lifter),
        footnote: "A class follows from the curve's own figures: an end below 85 % of the peak is weak, and a fall to below \
                   85 % of the weaker end between them makes a u. \
                   Arrows: the curve goes on above the figure."
            .to_owned(),
        description: format!(
            "Strength curves of {} lifts side by side over the range of the lift. {}",
            examples.len(),
            told.join(" ")
        ),
        caption: "The same muscles do not make the same load at every place of a lift. Where strength grows towards the \
                  end the curve is ascending, where it falls it is descending; where it is greatest in between it is \
                  bell-shaped, and where it is least in between u-shaped. Every curve is drawn in percent of its own median, so that only the shape counts."
            .to_owned(),
    }
}

/// The class and the ends of one curve, below its panel's title.
#[must_use]
pub(crate) fn ends_of_peak(study: &Study) -> String {
    format!(
        "start {}, end {} of its peak",
        percent(study.class.start_ratio),
        percent(study.class.end_ratio)
    )
}

/// A curve's class with its figures as a sentence.
fn class_in_figures(study: &Study) -> String {
    let class = &study.class;
    let trough = match class.shape {
        CurveShape::UShaped => format!(
            ", and falls to {} of the weaker end at {} of the range",
            percent(class.trough_of_weaker_end()),
            percent(class.trough_range)
        ),
        _ => String::new(),
    };
    format!(
        "{}: {}, start {}, end {} of the peak, which lies at {} of the range{trough}.",
        study.movement_title,
        class.shape.word(),
        percent(class.start_ratio),
        percent(class.end_ratio),
        percent(class.peak_range)
    )
}

/// The lifts of one class.
#[must_use]
pub fn lifts_of_class_words(lifter: &str, shape: CurveShape, lifts: &[&Study]) -> FigureWords {
    let told: Vec<String> = lifts.iter().map(|study| class_in_figures(study)).collect();
    FigureWords {
        title: class_title(shape, lifts),
        subtitle: held_still(lifter),
        footnote:
            "Bar force for lifts of several joints, moment for lifts of one joint; every curve in \
                   percent of its own median."
                .to_owned(),
        description: told.join(" "),
        caption: class_caption(shape).to_owned(),
    }
}

/// Least and greatest of a ratio over lifts, as "21 to 65 %", or one figure.
fn span(ratios: impl Iterator<Item = f64> + Clone) -> String {
    let least = ratios.clone().fold(f64::INFINITY, f64::min);
    let most = ratios.fold(f64::NEG_INFINITY, f64::max);
    let [low, high] = [least, most].map(whole_percent);
    if low == high {
        return percent(least);
    }
    format!("{low} to {}", percent(most))
}

/// A share as a whole percentage without its sign, before one that has it.
fn whole_percent(share: f64) -> String {
    super::quantities::rounded(100.0 * share, 0)
}

fn class_title(shape: CurveShape, lifts: &[&Study]) -> String {
    let start = span(lifts.iter().map(|study| study.class.start_ratio));
    let end = span(lifts.iter().map(|study| study.class.end_ratio));
    let (count, begins, ends, hold) = match lifts {
        [only] => (
            format!("the {}", only.movement_title.to_lowercase()),
            "starts",
            "ends",
            "holds",
        ),
        several => (format!("{} lifts", several.len()), "start", "end", "hold"),
    };
    match shape {
        CurveShape::Ascending => {
            format!("Ascending: {count} {begins} weak, with {start} of peak strength")
        }
        CurveShape::Descending => {
            format!("Descending: {count} {ends} weak, with {end} of peak strength")
        }
        CurveShape::BellShaped => {
            format!("Bell-shaped: {count} {begins} with {start} and {ends} with {end} of the peak")
        }
        CurveShape::UShaped => {
            let trough = span(lifts.iter().map(|study| study.class.trough_of_weaker_end()));
            format!("U-shaped: in between {count} {hold} only {trough} of the weaker end")
        }
        CurveShape::Level => format!("Level: {count} keep at least 85 % of the peak at both ends"),
    }
}

fn class_caption(shape: CurveShape) -> &'static str {
    match shape {
        CurveShape::Ascending => {
            "Weaker at the start than at the end. In presses, squats and pulls from the floor the limbs straighten \
             towards the end: the load's moment arms at the joints shrink, and the same muscles hold more."
        }
        CurveShape::Descending => {
            "Stronger at the start than at the end. What the muscles lift is least where their fibres are short or the \
             load's moment arm is long."
        }
        CurveShape::BellShaped => {
            "Strongest in between. Up to the peak the muscles gain more by one of force and moment arm than they lose by \
             the other; behind it they lose more than they gain."
        }
        CurveShape::UShaped => {
            "Weakest in between. Up to the valley more of force or moment arm is lost than gained; behind it more is won \
             back than is lost."
        }
        CurveShape::Level => "Neither end of the range is weak.",
    }
}

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
        footnote: "Where the gap between the curves is wide the weight is light.".to_owned(),
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
            format!(
                " No {} lift is drawn: even without a weight the {} takes more than {} of what this lifter has.",
                study.class.shape.word(),
                study.movement_title.to_lowercase(),
                percent(HARD_EFFORT)
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
