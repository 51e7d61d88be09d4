//! Where which joint's strength counts most, in words.
//!
//! In: a lift of several joints, the stretches in which one joint's strength counts most. Out: the words around its figure.

use super::figure_words::FigureWords;
use super::prose::{capital, listed, percent};
use super::quantities::rounded;
use super::telling::Telling;
use crate::study::{LimitedStretch, LimitedStretches, Study, limited_stretches, limiting_joints};
use crate::units::System;

/// The words around the figure of a lift's limits.
#[must_use]
pub fn limit_words(
    lifter: &str,
    study: &Study,
    stretches: &LimitedStretches,
    seen: LimitsSeen,
    units: System,
) -> FigureWords {
    let words = FigureWords {
        title: format!(
            "{}: {}",
            study.movement_title,
            stretches_in_words(study.told(units), &stretches.long)
        ),
        subtitle: format!(
            "{lifter}, held still, in this model: how much more could be held with 1 % more strength at one joint"
        ),
        footnote: notes_in_words(study.told(units), seen, &stretches.elsewhere),
        description: format!(
            "Gain of the heaviest load of the {} with 1 % more strength at each joint, over the {}. {}.{}",
            study.movement_title.to_lowercase(),
            study.axis,
            shares_in_words(study, &stretches.long),
            elsewhere_in_words(&stretches.elsewhere)
        ),
        caption: format!("{}{}", weakest_links(&stretches.long), beyond_one(seen)),
    };
    words.doubting(&[(study.movement_title.as_str(), study)])
}

/// "the hip gives way first" at a sample, or of several joints whose strengths all count there "shoulder and elbow share the limit".
pub(crate) fn gives_way(study: &Study, sample: usize) -> String {
    match limiting_joints(study, sample).as_slice() {
        [] => "the limb gives way first".to_owned(),
        [only] => format!("the {only} gives way first"),
        several => format!("{} share the limit", listed(several)),
    }
}

/// The same at a place of the range.
pub(crate) fn gives_way_at(study: &Study, range: f64) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    gives_way(study, (range * last).round() as usize)
}

/// What a figure of limits shows beside its lines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LimitsSeen {
    /// The greatest gain of all, %.
    pub greatest_percent: f64,
    /// Whether a line steps between neighbouring places.
    pub has_steps: bool,
}

impl LimitsSeen {
    /// Whether a gain is above one per cent, by more than rounding.
    fn is_beyond_one(self) -> bool {
        self.greatest_percent > 1.005
    }
}

/// Why a gain is above one per cent; nothing where none is.
fn beyond_one(seen: LimitsSeen) -> &'static str {
    if seen.is_beyond_one() {
        " A gain of more than 1 % is no mistake: the joint holds the body as well as the load, so the load alone gains more."
    } else {
        ""
    }
}

/// How steps and lines that are not drawn are read.
fn notes_in_words(told: Telling<'_>, seen: LimitsSeen, elsewhere: &[&str]) -> String {
    let mut notes: Vec<String> = Vec::new();
    if seen.is_beyond_one() {
        notes.push("Above 1: the joint holds the body too.".to_owned());
    }
    if seen.has_steps {
        notes.push("A step: from there on another muscle or support is at its limit.".to_owned());
    }
    let study = told.study;
    let held = &study.capacity.held;
    let at_end = study.joint(held[held.len() - 1].limiting);
    let limits = held
        .iter()
        .rev()
        .take_while(|held| study.joint(held.limiting) == at_end);
    let from = (held.len() - limits.count()) as f64 / (held.len() - 1) as f64;
    let (ends, others): (Vec<&str>, Vec<&str>) =
        elsewhere.iter().partition(|joint| **joint == at_end);
    if !ends.is_empty() {
        let (number, unit) = told.place_and_unit(from);
        notes.push(format!("From {number} {unit} on the {at_end} limits."));
    }
    if !others.is_empty() {
        notes.push(format!(
            "Nowhere counts most for long: {}.",
            listed(&others)
        ));
    }
    notes.join(" ")
}

/// Whether one joint is the weakest link, or several share the limit.
fn weakest_links(stretches: &[LimitedStretch]) -> &'static str {
    let alone = stretches.iter().filter(|stretch| stretch.is_alone).count();
    if stretches.is_empty() {
        "Over this lift no single joint is the weakest link for long."
    } else if alone == stretches.len() {
        "A chain is as strong as its weakest link: at every place of the range more strength of one joint alone helps."
    } else if alone == 0 {
        "Here no single joint is the weakest link: the joints share the limit, and more strength of each of them helps by as much as \
         its line says."
    } else {
        "In a part of the range one joint alone is the weakest link; elsewhere joints share the limit, and more strength of each of \
         them helps by as much as its line says."
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
    match stretches {
        [] => "no joint's strength counts most for long".to_owned(),
        [only] if only.from == 0 && only.to as f64 >= last => {
            format!("{} {} most all the way", joints(only), counts(only))
        }
        [only] => {
            let (from, unit) = place(only.from);
            let (number, _) = place(only.to);
            let way = if only.to as f64 >= last {
                format!("from {from} {unit} on")
            } else if only.from == 0 {
                format!("{to} {number} {unit}")
            } else {
                format!("from {from} to {number} {unit}")
            };
            format!("{} {} most {way}", joints(only), counts(only))
        }
        [first, between @ .., end] => {
            let ends = first.to;
            let (number, unit) = place(ends);
            let to_first = match first.from {
                0 => to.to_owned(),
                from => format!("from {} to", place(from).0),
            };
            let mut words = format!(
                "{} {} most {to_first} {number} {unit}",
                joints(first),
                counts(first)
            );
            for stretch in between {
                let (number, unit) = place(stretch.to);
                words += &format!(", {} to {number} {unit}", joints(stretch));
            }
            // Behind its last stretch a joint limits that counts most for too short a way to have a stretch.
            match told.study.capacity.held.len() - 1 {
                last if last > end.to => {
                    let (number, unit) = place(end.to);
                    words + &format!(", {} {to} {number} {unit}", joints(end))
                }
                _ => words + &format!(", {} beyond", joints(end)),
            }
        }
    }
}

/// The verb of a stretch's joints.
fn counts(stretch: &LimitedStretch) -> &'static str {
    if stretch.joints.len() == 1 {
        "counts"
    } else {
        "count"
    }
}

/// Where other joints begin to count most, if once: the sample, the place, and for the foot the joints before and beyond it.
pub(crate) fn corner_words(study: &Study, units: System) -> Option<(usize, String, String)> {
    let stretches = limited_stretches(study).long;
    let [before, beyond] = stretches.as_slice() else {
        return None;
    };
    let last = study.range.poses.len() - 1;
    let place = |sample: usize| {
        let (number, unit) = study
            .told(units)
            .place_and_unit(sample as f64 / last as f64);
        format!("{number} {unit}")
    };
    // Behind its last stretch another joint may limit for too short a way to be told.
    let until = match beyond.to == last {
        true => String::new(),
        false => format!(" up to {}", place(beyond.to)),
    };
    let corner = place(before.to);
    let told = format!(
        "Corner at {corner}: {} {} most before it, {} beyond{until}.",
        listed(&before.joints),
        counts(before),
        listed(&beyond.joints)
    );
    (before.from == 0).then_some((before.to, corner, told))
}

fn shares_in_words(study: &Study, stretches: &[LimitedStretch]) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    let told: Vec<String> = stretches
        .iter()
        .map(|stretch| {
            let gains = stretch.gains.iter().map(|gain| rounded(*gain, 2));
            let gains: Vec<String> = gains.collect();
            format!(
                "the strength of {} counts most, with {} % in the mean, from {} to {} of the range",
                listed(&stretch.joints),
                listed(&gains),
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
