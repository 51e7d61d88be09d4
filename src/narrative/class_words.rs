//! The classes of strength curve in words, and what a plain weight does to each.
//!
//! In: lifts of a class, loaded or not. Out: the words around the lecture's figures of classes.

use super::doubt_words::{HOLLOW, LESS_SURE, doubt_sentence};
use super::fibre_words::is_doubted;
use super::figure_words::FigureWords;
use super::load_levers::{ShrinkingLever, body_beside, held_in_valley, shrinks_behind_valley};
use super::prose::{capital, either, listed, percent};
use super::quantities::rounded;
use super::straight_limbs::{ARROW, arrows, behind};
use crate::capacity::CurveShape;
use crate::library::PublishedClasses;
use crate::movement::Measure;
use crate::study::{ClassLifts, Study, median_capacity};
use crate::units::System;

/// Whose curves, and how they were made.
fn held_still(lifter: &str) -> String {
    format!("{lifter}, held still at every place of the range")
}

/// The load of a lift whose load is the body.
pub(crate) const BODY_WEIGHT: &str = "body weight";

/// What a curve of this class does, without the name of a lift.
fn doing(shape: CurveShape) -> &'static str {
    match shape {
        CurveShape::Ascending => "rises",
        CurveShape::Descending => "falls",
        CurveShape::BellShaped => "peaks",
        CurveShape::UShaped => "sags in between",
        CurveShape::Level => "stays level",
    }
}

/// A class above its panel; a lift that is published with another one says so, and so does the class that is in none of
/// the publications.
pub(crate) fn panel_title(study: &Study, classes: &PublishedClasses) -> String {
    let shape = study.class.shape;
    let behind = match published_otherwise(study, classes) {
        Some(published) => format!(" (published: {published})"),
        None if shape == CurveShape::UShaped => " (added here)".to_owned(),
        None => String::new(),
    };
    format!("{}{behind}", capital(shape.word()))
}

/// The class that a lift is published with, where its curve has another.
fn published_otherwise<'c>(study: &Study, classes: &'c PublishedClasses) -> Option<&'c str> {
    classes.otherwise(&study.movement_name, study.class.shape.word())
}

/// "pull-up: descending": lifts that are published with another class than their curves have.
fn published_in_words(lifts: &[&Study], classes: &PublishedClasses) -> Option<String> {
    let told: Vec<String> = lifts
        .iter()
        .filter_map(|study| {
            let published = published_otherwise(study, classes)?;
            Some(format!(
                "{}: {published}",
                study.movement_title.to_lowercase()
            ))
        })
        .collect();
    (!told.is_empty()).then(|| told.join("; "))
}

/// The same as a sentence behind others; nothing where every class is as published.
fn classes_missed(lifts: &[&Study], classes: &PublishedClasses) -> String {
    published_in_words(lifts, classes).map_or_else(String::new, |told| {
        format!(" The model misses a published class: {told}.")
    })
}

/// "2", "3" … in words, as far as there are classes.
fn count_in_words(count: usize) -> &'static str {
    ["no", "one", "two", "three", "four", "five"][count.min(5)]
}

/// How many shapes there are, and what each does; a shape that is drawn of a lift with another published class is the model's alone,
/// and told as such.
fn shapes_title(examples: &[&Study], classes: &PublishedClasses) -> String {
    let (missed, agreed): (Vec<&Study>, Vec<&Study>) = examples
        .iter()
        .partition(|study| published_otherwise(study, classes).is_some());
    let doings = |lifts: &[&Study]| -> Vec<&str> {
        lifts.iter().map(|study| doing(study.class.shape)).collect()
    };
    if missed.is_empty() {
        return format!(
            "Strength has {} {}: it {}",
            count_in_words(examples.len()),
            if examples.len() == 1 {
                "shape"
            } else {
                "shapes"
            },
            either(&doings(examples))
        );
    }
    let alone = doings(&missed).into_iter();
    let alone = listed(
        &alone
            .map(|doing| format!("one lift {doing}"))
            .collect::<Vec<_>>(),
    );
    match agreed.as_slice() {
        [] => format!("In this model, unlike published, {alone}"),
        agreed => format!(
            "Strength {}; in this model alone {alone}",
            either(&doings(agreed))
        ),
    }
}

/// The classes side by side; those whose curves leave the axis are `above`.
#[must_use]
pub fn classes_words(
    lifter: &str,
    examples: &[&Study],
    above: &[&Study],
    classes: &PublishedClasses,
) -> FigureWords {
    let told: Vec<String> = examples
        .iter()
        .map(|study| class_in_figures(study))
        .collect();
    let mut words = FigureWords {
        title: shapes_title(examples, classes),
        // Small panels leave no room for a footnote.
        subtitle: match doubt_sentence(&named(examples)) {
            Some(_) => format!("{lifter}, held still. {HOLLOW}"),
            None => held_still(lifter),
        },
        footnote: String::new(),
        description: format!(
            "Strength curves of {} lifts side by side over the range of the lift. {}",
            examples.len(),
            told.join(" ")
        ),
        caption: "The same muscles do not make the same load at every place of a lift. Published are three classes: where strength grows towards the \
                  end the curve is ascending, where it falls it is descending, and where it is greatest in between it is \
                  bell-shaped; the u-shape, where it is least in between, is added here. An end is weak below 85 % of the \
                  peak; a fall to below 85 % of the weaker end between them makes a u. \
                  Every curve is drawn in percent of its own median, so that only the shape counts."
            .to_owned()
            + &classes_missed(examples, classes)
            + &behind(&arrows(above)),
    };
    words = words.doubting(&named(examples));
    words.footnote.clear();
    words
}

/// The curves with the names of their lifts.
pub(crate) fn named<'a>(lifts: &'a [&'a Study]) -> Vec<(&'a str, &'a Study)> {
    let name = |study: &&'a Study| (study.movement_title.as_str(), *study);
    lifts.iter().map(name).collect()
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

/// What of the curves the axis has room for.
#[derive(Debug, Clone, Copy)]
pub struct CurvesSeen<'a> {
    /// The lifts whose curves leave it.
    pub above: &'a [&'a Study],
    /// Whether a hollow part is drawn.
    pub is_hollow: bool,
}

/// The lifts of one class.
#[must_use]
pub fn lifts_of_class_words(
    lifter: &str,
    shape: CurveShape,
    lifts: &ClassLifts<'_>,
    seen: CurvesSeen<'_>,
    classes: &PublishedClasses,
    units: System,
) -> FigureWords {
    let shown = &lifts.shown;
    let told: Vec<String> = shown.iter().map(|study| class_in_figures(study)).collect();
    let mut caption = class_caption(shape, shown, units);
    caption += &classes_missed(shown, classes);
    caption += &lifts
        .under_body
        .as_ref()
        .map_or_else(String::new, |study| body_beside(study, units));
    caption += &left_out_of_figure(&lifts.left_out);
    let rise = lifts.under_body.as_ref();
    let rise = rise.and_then(|study| shrinks_behind_valley(study, units));
    let footnote = match (arrows(seen.above), rise) {
        // A single curve needs why it rises more than why it leaves the figure.
        (leaves, Some(rise)) => match leaves.is_empty() {
            true => rise,
            false => format!("{rise} {ARROW}"),
        },
        (none, None) if none.is_empty() => {
            format!(
                "{}every curve in percent of its own median.",
                measures(shown)
            )
        }
        (arrows, None) => arrows,
    };
    let words = FigureWords {
        title: class_title(shape, shown, classes),
        subtitle: held_still(lifter)
            + &missed_below_title(shown, classes)
            + &lifts
                .under_body
                .as_ref()
                .map_or_else(String::new, |study| held_in_valley(study, units)),
        footnote,
        description: told.join(" "),
        caption,
    };
    let footnote = words.footnote.clone();
    match words.doubting(&named(shown)) {
        told if seen.is_hollow => told,
        told => FigureWords { footnote, ..told },
    }
}

/// What is shown of lifts of several joints and of one, if both are there.
fn measures(lifts: &[&Study]) -> &'static str {
    let forces = lifts
        .iter()
        .filter(|study| study.range.measure == Measure::Force)
        .count();
    match forces {
        0 => "Moment at the joint; ",
        all if all == lifts.len() => "Force at the bar; ",
        _ => "Bar force for lifts of several joints, moment for lifts of one joint; ",
    }
}

/// The lifts of the class that are not drawn, behind other sentences.
fn left_out_of_figure(left_out: &[&Study]) -> String {
    if left_out.is_empty() {
        return String::new();
    }
    let names: Vec<String> = left_out
        .iter()
        .map(|s| s.movement_title.to_lowercase())
        .collect();
    format!(
        " Of the same class and not drawn, because a curve turns back by more than a tenth or is less sure over more than a tenth \
         of the range: {}.",
        listed(&names)
    )
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
    rounded(100.0 * share, 0)
}

/// Lifts of several that are published with another class, below the title; a single one has it in the title.
fn missed_below_title(lifts: &[&Study], classes: &PublishedClasses) -> String {
    match published_in_words(lifts, classes) {
        Some(told) if lifts.len() > 1 => format!("; published otherwise: {told}"),
        _ => String::new(),
    }
}

fn class_title(shape: CurveShape, lifts: &[&Study], classes: &PublishedClasses) -> String {
    let published = match lifts {
        [only] => published_otherwise(only, classes),
        _ => None,
    };
    let class = published.map_or_else(
        || capital(shape.word()),
        |published| {
            format!(
                "{} in this model (published: {published})",
                capital(shape.word())
            )
        },
    );
    let values = |study: &&Study| study.capacity.values();
    let start = span(lifts.iter().map(|s| values(s)[0] / median_capacity(s)));
    let end = span(
        lifts
            .iter()
            .map(|s| values(s)[values(s).len() - 1] / median_capacity(s)),
    );
    let (count, begins, ends, valley, hold, their) = match lifts {
        [only] => (
            format!("the {}", only.movement_title.to_lowercase()),
            "starts",
            "ends",
            "its valley",
            "holds",
            "its",
        ),
        several => (
            format!("{} lifts", several.len()),
            "start",
            "end",
            "their valleys",
            "hold",
            "their",
        ),
    };
    match shape {
        CurveShape::Ascending => {
            format!("{class}: {count} {begins} weak, with {start} of {their} median strength")
        }
        CurveShape::Descending => {
            format!("{class}: {count} {ends} weak, with {end} of {their} median strength")
        }
        CurveShape::BellShaped => format!("{class}: {}", peaks_in_words(lifts)),
        CurveShape::UShaped => {
            let trough = span(lifts.iter().map(|study| study.class.trough_of_weaker_end()));
            // What is published otherwise is the model's alone, and the foot tells where it is less sure.
            if let Some(published) = published {
                return format!(
                    "In this model {count} sags to {trough} of its weaker end; published, it is {published}"
                );
            }
            if lifts
                .iter()
                .all(|study| published_otherwise(study, classes).is_some())
            {
                return format!("In this model {count} sag to {trough} of their weaker end");
            }
            let doubt = match lifts.iter().any(|s| is_doubted(s, s.class.trough_range)) {
                true => format!("{LESS_SURE},"),
                false => String::new(),
            };
            format!("{class}: in {valley}{doubt} {count} {hold} {trough} of {their} weaker end")
        }
        CurveShape::Level => {
            format!("{class}: {count} keep at least 85 % of the peak at both ends")
        }
    }
}

/// "the biceps curl peaks at 62 %, the triceps extension at 73 % of the range"; of many lifts the first and the last place.
fn peaks_in_words(lifts: &[&Study]) -> String {
    let place = |study: &Study| percent(study.class.peak_range);
    match lifts {
        [] => String::new(),
        [first, others @ ..] if others.len() < 2 => {
            let mut words = format!(
                "the {} peaks at {}",
                first.movement_title.to_lowercase(),
                place(first)
            );
            for other in others {
                words += &format!(
                    ", the {} at {}",
                    other.movement_title.to_lowercase(),
                    place(other)
                );
            }
            words + " of the range"
        }
        many => format!(
            "{} lifts peak at {} of the range",
            many.len(),
            span(many.iter().map(|study| study.class.peak_range))
        ),
    }
}

fn class_caption(shape: CurveShape, lifts: &[&Study], units: System) -> String {
    match shape {
        CurveShape::Ascending => {
            let names: Vec<String> = lifts
                .iter()
                .filter_map(|study| {
                    let lever = ShrinkingLever::of(study)?;
                    let name = study.movement_title.to_lowercase();
                    Some(format!("{name}, {}, {}", lever.joint, lever.in_words(units)))
                })
                .collect();
            let cause = match names.is_empty() {
                true => String::new(),
                false => format!(
                    " Over the longest stretch that one joint limits, what is held grows mostly because the load's moment arm about \
                     that joint shrinks: {} of the range.",
                    names.join("; ")
                ),
            };
            format!("The start is weak, below 85 % of the peak, and weaker than the end.{cause}")
        }
        CurveShape::Descending => "The end is weak, below 85 % of the peak, and weaker than the start; on the way there a curve may rise \
                                   before it falls. What the muscles lift is least where their fibres are short or the load's moment arm is long."
            .to_owned(),
        CurveShape::BellShaped => "Strongest in between, with both ends below 85 % of the peak. Before the peak the muscles mostly gain more by \
                                   one of force and moment arm than they lose by the other; behind it they lose more than they gain."
            .to_owned(),
        CurveShape::UShaped => "Weakest in between: a fall and a rise, each by more than 15 %. A curve falls where muscles lose force or moment arm, \
                                or where the load's own moment arm grows, and rises where it is the other way round."
            .to_owned(),
        CurveShape::Level => "Neither end of the range is weak.".to_owned(),
    }
}
