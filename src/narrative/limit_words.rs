//! Where which joint's strength counts most, in words.
//!
//! In: a lift of several joints, the stretches in which one joint's strength counts most. Out: the words around its figure.

use super::figure_words::FigureWords;
use super::prose::{capital, listed, percent};
use super::telling::Telling;
use crate::study::{LimitedStretch, LimitedStretches, Study};
use crate::units::System;

/// The words around the figure of a lift's limits.
#[must_use]
pub fn limit_words(
    lifter: &str,
    study: &Study,
    stretches: &LimitedStretches,
    units: System,
) -> FigureWords {
    FigureWords {
        title: format!(
            "{}: {}",
            study.movement_title,
            stretches_in_words(study.told(units), &stretches.long)
        ),
        subtitle: format!(
            "{lifter}, held still: how much more could be held with 1 % more strength at one joint"
        ),
        // The poses below the axis need the room.
        footnote: String::new(),
        description: format!(
            "Gain of the heaviest load of the {} with 1 % more strength at each joint, over the {}. {}.{}",
            study.movement_title.to_lowercase(),
            study.axis,
            shares_in_words(study, &stretches.long),
            elsewhere_in_words(&stretches.elsewhere)
        ),
        caption: weakest_links(&stretches.long).to_owned(),
    }
}

/// Whether one joint is the weakest link, or several count alike.
fn weakest_links(stretches: &[LimitedStretch]) -> &'static str {
    let alike = stretches
        .iter()
        .filter(|stretch| stretch.joints.len() > 1)
        .count();
    if stretches.is_empty() {
        "Over this lift no single joint is the weakest link for long."
    } else if alike == 0 {
        "A chain is as strong as its weakest link: at every place of the range the strength of one joint counts most."
    } else if alike == stretches.len() {
        "Here no single joint is the weakest link: one percent more strength gains about as much at each of the joints that are named \
         together."
    } else {
        "In a part of the range one joint is the weakest link; where joints are named together, one percent more strength gains about \
         as much at each."
    }
}

/// "hip and knee strength count most up to 17 cm, back strength beyond".
fn stretches_in_words(told: Telling<'_>, stretches: &[LimitedStretch]) -> String {
    let last = (told.study.range.poses.len() - 1) as f64;
    let range = |sample: usize| sample as f64 / last;
    let place = |sample: usize| told.place_and_unit(range(sample));
    let rises = told.study.axis_value(1.0) >= told.study.axis_value(0.0);
    let to = if rises { "up to" } else { "down to" };
    let joints = |stretch: &LimitedStretch| format!("{} strength", listed(&stretch.joints));
    let count = |stretch: &LimitedStretch| {
        if stretch.joints.len() == 1 {
            "counts"
        } else {
            "count"
        }
    };
    match stretches {
        [] => "no joint's strength counts most for long".to_owned(),
        [only] => format!("{} {} most all the way", joints(only), count(only)),
        [first, between @ .., end] => {
            let ends = first.to;
            let (number, unit) = place(ends);
            let mut words = format!(
                "{} {} most {to} {number} {unit}",
                joints(first),
                count(first)
            );
            for stretch in between {
                let (number, unit) = place(stretch.to);
                words += &format!(", {} to {number} {unit}", joints(stretch));
            }
            words + &format!(", {} beyond", joints(end))
        }
    }
}

fn shares_in_words(study: &Study, stretches: &[LimitedStretch]) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    let told: Vec<String> = stretches
        .iter()
        .map(|stretch| {
            format!(
                "the strength of {} counts most from {} to {} of the range",
                listed(&stretch.joints),
                percent(stretch.from as f64 / last),
                percent(stretch.to as f64 / last)
            )
        })
        .collect();
    capital(&told.join("; "))
}

/// Joints whose stretches are too short for the title, behind other sentences.
fn elsewhere_in_words(joints: &[&str]) -> String {
    match joints {
        [] => String::new(),
        some => format!(
            " In stretches shorter than a twentieth of the range: {}.",
            listed(some)
        ),
    }
}
