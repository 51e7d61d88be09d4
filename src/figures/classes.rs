//! The three classes of strength curve: side by side, and each with the lifts that belong to it.
//!
//! In: every movement of a [`Desk`]. Out: figures in which curves of different size share one scale,
//! the lift's own median. Which lift belongs to which class comes from the model.

use super::desk::{Desk, Lift};
use super::sheet::{Chart, Sheet};
use crate::capacity::Shape;
use crate::error::{Error, Result};
use crate::narrative::prose::{capital, listed, percent};
use crate::plot::{
    Axis, Extent, Heading, Labels, LevelLine, LineChart, Panel, Role, Series, SmallMultiples,
    SmallPanel,
};
use crate::study::Study;

/// The classes in teaching order.
pub const CLASSES: [Shape; 4] = [
    Shape::Ascending,
    Shape::Descending,
    Shape::BellShaped,
    Shape::Level,
];

/// Lifts that stand for their class if they belong to it: well known, with free weight.
const EXAMPLES: [&str; 5] = [
    "squat",
    "row",
    "biceps-curl",
    "bench-press",
    "lateral-raise",
];

/// Where the shared upright axis ends, % of the median: nearly straight limbs climb out of any scale.
const CEILING_PERCENT: f64 = 220.0;

/// The lift that stands for a class: the first well-known one, else the first by name.
#[must_use]
pub fn example<'a>(desk: &'a Desk<'_>, shape: Shape) -> Option<&'a Lift> {
    let of_class = |lift: &&Lift| lift.study.class.shape == shape;
    EXAMPLES
        .iter()
        .filter_map(|name| desk.lift(name).ok())
        .find(of_class)
        .or_else(|| desk.lifts().iter().find(of_class))
}

/// One example of every class that this lifter's curves have, in teaching order.
#[must_use]
pub fn examples<'a>(desk: &'a Desk<'_>) -> Vec<&'a Lift> {
    CLASSES
        .iter()
        .filter_map(|shape| example(desk, *shape))
        .collect()
}

/// The axis of the range in percent, shared by lifts of different travel.
#[must_use]
pub fn range_axis() -> Axis {
    Axis::new("Range of the lift, from start to end", "%").reaching(Extent::Data)
}

/// The axis of values over a lift's own median.
#[must_use]
pub fn median_axis(quantity: &str) -> Axis {
    Axis::new(format!("{quantity}, median of the lift = 100"), "%")
        .reaching(Extent::FromZeroTo(CEILING_PERCENT))
}

/// The middle one of the capacities: half of the range holds more, half less.
#[must_use]
pub fn median(values: &[f64]) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted[sorted.len() / 2]
}

/// Values in percent of `unit` over the range in percent.
#[must_use]
pub fn over_range(study: &Study, values: &[f64], unit: f64) -> Vec<[f64; 2]> {
    let places = study.range.poses.iter().map(|pose| pose.load.range);
    places
        .zip(values)
        .map(|(range, value)| [100.0 * range, 100.0 * value / unit])
        .collect()
}

/// What a curve of this class does, after the name of the lift.
fn verb(shape: Shape) -> &'static str {
    match shape {
        Shape::Ascending => "rises",
        Shape::Descending => "falls",
        Shape::BellShaped => "peaks in between",
        Shape::Level => "stays level",
    }
}

/// The classes side by side.
///
/// **Fails** never for a desk with at least one lift.
pub fn three_classes(desk: &Desk<'_>) -> Result<Sheet> {
    let examples = examples(desk);
    let panels = examples.iter().map(|lift| class_panel(lift)).collect();
    let doings: Vec<String> = examples
        .iter()
        .map(|lift| {
            let name = lift.study.movement_title.to_lowercase();
            format!("the {name} {}", verb(lift.study.class.shape))
        })
        .collect();
    let description: Vec<String> = examples
        .iter()
        .map(|lift| in_figures(&lift.study))
        .collect();
    let chart = SmallMultiples {
        heading: Heading {
            title: format!("Strength has a shape: {}", listed(&doings)),
            subtitle: format!("{}, held still at every place of the range", desk.who()),
            footnote: "A class follows from the ends of the curve: an end below 85 % of the peak is weak. \
                       Arrows: the curve goes on above the figure."
                .to_owned(),
            description: format!(
                "{} strength curves side by side over the range of the lift. {}",
                examples.len(),
                description.join(" ")
            ),
..super::phrases()
},
        x: range_axis(),
        y: median_axis("Strength"),
        panels,
        columns: Some(examples.len()),
    };
    Ok(Sheet::new(
        Chart::Panels(chart),
        "The same muscles do not make the same load at every place of a lift. Where strength grows towards the \
         end the curve is ascending, where it falls it is descending, and where it is greatest in between it \
         is bell-shaped. Every curve is drawn in percent of its own median, so that only the shape counts.",
    ))
}

fn class_panel(lift: &Lift) -> SmallPanel {
    let study = &lift.study;
    let values = study.capacity.values();
    SmallPanel {
        title: capital(study.class.shape.word()),
        note: format!(
            "start {}, end {} of its peak",
            percent(study.class.start_ratio),
            percent(study.class.end_ratio)
        ),
        series: vec![Series {
            name: study.movement_title.clone(),
            points: over_range(study, &values, median(&values)),
            role: Role::CAPACITY,
        }],
        ..SmallPanel::default()
    }
}

/// A curve's class with its figures as a sentence.
fn in_figures(study: &Study) -> String {
    format!(
        "{}: {}, start {}, end {} of the peak, which lies at {} of the range.",
        study.movement_title,
        study.class.shape.word(),
        percent(study.class.start_ratio),
        percent(study.class.end_ratio),
        percent(study.class.peak_range)
    )
}

/// The lifts whose strength rises towards the end.
pub fn ascending_lifts(desk: &Desk<'_>) -> Result<Sheet> {
    lifts_of(desk, Shape::Ascending)
}

/// The lifts whose strength falls towards the end.
pub fn descending_lifts(desk: &Desk<'_>) -> Result<Sheet> {
    lifts_of(desk, Shape::Descending)
}

/// The lifts whose strength is greatest in between.
pub fn bell_shaped_lifts(desk: &Desk<'_>) -> Result<Sheet> {
    lifts_of(desk, Shape::BellShaped)
}

/// Whether this lifter has lifts of a class.
#[must_use]
pub fn has_lifts_of(desk: &Desk<'_>, shape: Shape) -> bool {
    example(desk, shape).is_some()
}

fn lifts_of(desk: &Desk<'_>, shape: Shape) -> Result<Sheet> {
    let mut lifts: Vec<&Lift> = desk
        .lifts()
        .iter()
        .filter(|lift| lift.study.class.shape == shape)
        .collect();
    if lifts.is_empty() {
        return Err(Error::no_answer(format!(
            "no lift of {} is {}",
            desk.who(),
            shape.word()
        )));
    }
    // The steepest first, so that it lies on top and takes the strongest colour.
    let steepness = |lift: &Lift| {
        (lift.study.class.end_ratio / lift.study.class.start_ratio)
            .ln()
            .abs()
    };
    lifts.sort_by(|a, b| steepness(b).total_cmp(&steepness(a)));
    let figures: Vec<String> = lifts.iter().map(|lift| in_figures(&lift.study)).collect();
    let chart = LineChart {
        heading: Heading {
            title: class_title(shape, &lifts),
            subtitle: format!("{}, held still at every place of the range", desk.who()),
            footnote: "Bar force for lifts of several joints, torque for lifts of one joint; every curve in \
                       percent of its own median."
                .to_owned(),
            description: figures.join(" "),
..super::phrases()
},
        x: range_axis(),
        panels: vec![Panel {
            axis: median_axis("Strength"),
            series: lifts.iter().enumerate().map(|(i, lift)| curve(i, lift)).collect(),
            levels: vec![LevelLine {
                at: 100.0,
                label: String::new(),
            }],
            ..Panel::default()
        }],
        labels: if lifts.len() > 3 {
            Labels::Column
        } else {
            Labels::Auto
        },
        ..LineChart::default()
    };
    Ok(Sheet::new(Chart::Lines(chart), class_caption(shape)))
}

fn curve(index: usize, lift: &Lift) -> Series {
    let values = lift.study.capacity.values();
    Series {
        name: lift.study.movement_title.clone(),
        points: over_range(&lift.study, &values, median(&values)),
        role: Role::Series(index),
    }
}

/// Least and greatest of a ratio over lifts, as "21 to 65 %", or one figure.
fn span(ratios: impl Iterator<Item = f64> + Clone) -> String {
    let least = ratios.clone().fold(f64::INFINITY, f64::min);
    let most = ratios.fold(f64::NEG_INFINITY, f64::max);
    let [low, high] = [least, most].map(percent);
    if low == high {
        return low;
    }
    format!("{} to {high}", low.trim_end_matches(" %"))
}

fn class_title(shape: Shape, lifts: &[&Lift]) -> String {
    let start = span(lifts.iter().map(|lift| lift.study.class.start_ratio));
    let end = span(lifts.iter().map(|lift| lift.study.class.end_ratio));
    let count = match lifts {
        [only] => format!("the {}", only.study.movement_title.to_lowercase()),
        several => format!("{} lifts", several.len()),
    };
    let (begins, ends) = match lifts {
        [_] => ("starts", "ends"),
        _ => ("start", "end"),
    };
    match shape {
        Shape::Ascending => {
            format!("Ascending: {count} {begins} with only {start} of peak strength")
        }
        Shape::Descending => format!("Descending: {count} {ends} with only {end} of peak strength"),
        Shape::BellShaped => {
            format!("Bell-shaped: {count} {begins} with {start} and {ends} with {end} of the peak")
        }
        Shape::Level => format!("Level: {count} keep at least 85 % of the peak at both ends"),
    }
}

fn class_caption(shape: Shape) -> &'static str {
    match shape {
        Shape::Ascending => {
            "Weak at the start, strong at the end. In lifts of several joints the limbs straighten towards the end: \
             the load's lever at the joints shrinks, and the same muscles hold more and more."
        }
        Shape::Descending => {
            "Strong at the start, weak at the end: towards the end the fibres are short, or the load's lever is \
             long, and less and less is held."
        }
        Shape::BellShaped => {
            "Strongest in between: there the fibres are near their best length while the moment arm is already long."
        }
        Shape::Level => "Neither end of the range is weak.",
    }
}
