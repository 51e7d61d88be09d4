//! Levers and muscles of one joint in words: moment arms, fibre lengths, torques that add up.
//!
//! In: a lift of one joint, its muscles. Out: the words around the lecture's figures of muscles.

use super::figure_words::FigureWords;
use super::muscle_names::{head_name, muscle_label, muscle_name};
use super::places::sides_in_words;
use super::prose::{listed, percent};
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::anatomy::Dof;
use crate::study::{ForceAndArm, MuscleExtreme, MusclePart, Study, lifting_sign};
use crate::units::System;

/// The length at which a fibre makes its greatest active force.
pub(crate) const OPTIMAL_LENGTH: &str = "optimal length";
/// Force of all muscles together.
pub(crate) const MUSCLE_FORCE: &str = "muscle force";
/// The arm at which it makes their torque.
pub(crate) const SUMMED_ARM: &str = "moment arm";
/// What all muscles leave for the load.
pub(crate) const LEFT_FOR_LOAD: &str = "left for the load";

/// Place of a sample over the range.
fn place_of(study: &Study, sample: usize, units: System) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    study.told(units).place(sample as f64 / last)
}

/// The muscles that lift at the first joint by what they do to it: "the muscles that extend the knee".
fn lifting_muscles(study: &Study) -> String {
    let turns_up = lifting_sign(study, 0) > 0.0;
    let (up, down) = match study.range.poses[0].coordinates[0].dof {
        Dof::Elbow | Dof::ShoulderFlexion | Dof::Lumbar | Dof::Hip | Dof::Knee => {
            ("flex", "extend")
        }
        Dof::ShoulderAbduction => ("abduct", "adduct"),
        Dof::ShoulderHorizontal => ("adduct horizontally", "abduct horizontally"),
        Dof::Ankle => ("dorsiflex", "plantar-flex"),
    };
    let verb = if turns_up { up } else { down };
    format!("the muscles that {verb} the {}", study.joint(0))
}

/// Moment arms over the joint angle.
#[must_use]
pub fn moment_arm_words(
    lifter: &str,
    study: &Study,
    parts: &[MusclePart],
    units: System,
) -> FigureWords {
    let unit = units.length_unit();
    let longest = MuscleExtreme::greatest(parts, |part| &part.arm_m);
    let told: Vec<String> = parts
        .iter()
        .map(|part| {
            let least = part.arm_m.iter().copied().fold(f64::INFINITY, f64::min);
            let most = part.arm_m.iter().copied().fold(0.0, f64::max);
            format!(
                "{} {} to {} {}",
                muscle_name(part),
                rounded(unit.of(least), 1),
                rounded(unit.of(most), 1),
                unit.symbol
            )
        })
        .collect();
    FigureWords {
        title: format!(
            "Moment arms change with the angle: the {} reaches {} {} at {}",
            muscle_name(longest.part),
            rounded(unit.of(longest.value), 1),
            unit.symbol,
            place_of(study, longest.sample, units)
        ),
        subtitle: format!(
            "{lifter}, moment arms of {}",
            lifting_muscles(study)
        ),
        footnote: "Moment arm: distance of a muscle's line of pull from the joint's axis. Heads of one muscle \
                   are shown together."
            .to_owned(),
        description: format!(
            "Moment arms over {}, least to greatest: {}.",
            study.axis,
            told.join("; ")
        ),
        caption: "The same muscle force makes a greater moment where its line of pull runs farther from the joint. A moment arm also \
                  says how fast fibres shorten: a long one uses up their length sooner."
            .to_owned(),
    }
}

/// Fibre lengths over the joint angle.
#[must_use]
pub fn fibre_length_words(
    lifter: &str,
    study: &Study,
    parts: &[MusclePart],
    notes: &LengthNotes,
) -> FigureWords {
    let shortest = MuscleExtreme::least(parts, |part| &part.fibre_norm);
    let told: Vec<String> = parts
        .iter()
        .map(|part| {
            let last = part.fibre_norm.len() - 1;
            format!(
                "{} {} to {} %",
                muscle_name(part),
                rounded(100.0 * part.fibre_norm[0], 0),
                rounded(100.0 * part.fibre_norm[last], 0)
            )
        })
        .collect();
    let words = FigureWords {
        title: format!(
            "Fibres run short: the {} goes down to {} % of its optimal length",
            muscle_name(shortest.part),
            rounded(100.0 * shortest.value, 0)
        ),
        subtitle: format!(
            "{lifter}, fibre lengths in the {}",
            study.movement_title.to_lowercase()
        ),
        footnote: notes.in_words(),
        description: format!(
            "Fibre lengths in percent of the optimal length over {}, start to end: {}.",
            study.axis,
            told.join("; ")
        ),
        caption: "A turn of one radian, 57 degrees, costs each muscle and its tendon together as much length as its moment arm is long. A fibre that ends \
                  short pulls less: it stands on the left, weak side of the length-tension curve."
            .to_owned(),
    };
    let lines = parts.iter();
    words.doubting_lengths(lines.map(|part| (muscle_label(part), part.fibre_norm.as_slice())))
}

/// Lines of muscles whose fibre lengths differ nowhere by as much lie on each other, optimal lengths (a drawing's measure).
pub(crate) const ALIKE_LENGTHS: f64 = 0.015;

/// What a figure of fibre lengths leaves out.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LengthNotes {
    /// Muscles whose lines lie on drawn ones, each with the drawn one.
    pub on_others: Vec<[String; 2]>,
    /// A head that goes farther down than the mean of its muscle's heads, and how far.
    pub farthest_head: Option<(String, f64)>,
}

impl LengthNotes {
    fn in_words(&self) -> String {
        let mut notes = vec!["Optimal length: where active force is greatest.".to_owned()];
        notes.extend(self.farthest_head.as_ref().map(|(name, least)| {
            format!(
                "Of several heads the mean: the {} goes down to {}.",
                head_name(name),
                percent(*least)
            )
        }));
        let same = self.on_others.iter();
        notes.extend(same.map(|[own, drawn]| {
            let within = rounded(100.0 * ALIKE_LENGTHS, 1);
            format!("As the {drawn}, within {within} % of the optimal length: {own}.")
        }));
        notes.join(" ")
    }
}

/// The torques of all muscles stacked upon each other; shares are those at the sample of the greatest sum.
#[must_use]
pub fn stack_words(
    lifter: &str,
    study: &Study,
    layers: &[MusclePart],
    total_nm: &[f64],
    peak: usize,
    units: System,
) -> FigureWords {
    let share = |layer: &MusclePart| layer.torque_nm[peak] / total_nm[peak];
    let strongest = &layers[..layers.len().min(2)];
    let two: Vec<String> = strongest.iter().map(muscle_name).collect();
    let both = strongest
        .iter()
        .map(|layer| layer.torque_nm[peak])
        .sum::<f64>()
        / total_nm[peak];
    let told: Vec<String> = layers
        .iter()
        .map(|layer| format!("{} {}", muscle_name(layer), percent(share(layer))))
        .collect();
    let words = FigureWords {
        title: format!(
            "Muscles add up: {} {} {} of the muscles' moment at its peak",
            listed(&two),
            if two.len() == 1 { "makes" } else { "make" },
            percent(both)
        ),
        subtitle: format!(
            "{lifter}, {}: force × moment arm of every muscle at the {}",
            study.movement_title.to_lowercase(),
            study.joint(0)
        ),
        footnote: format!(
            "Left for the load: less what limb and tissue take, or more by what they add. {}",
            sides_in_words(study)
        ),
        description: format!(
            "Stacked moments over {}. At the peak, {}, the shares are: {}. The lowest layer is the {}.",
            study.axis,
            place_of(study, peak, units),
            told.join(", "),
            muscle_name(&layers[0])
        ),
        caption: "Each muscle gives its force times its moment arm at every angle; the strength curve is their sum, with what \
                  limb and tissue take from it or add to it."
            .to_owned(),
    };
    words.doubting(&[(study.movement_title.as_str(), study)])
}

/// Force, moment arm and torque, each in percent of its own greatest value.
#[must_use]
pub fn force_times_arm_words(lifter: &str, study: &Study, product: &ForceAndArm) -> FigureWords {
    let last = (study.range.poses.len() - 1) as f64;
    let peaks = product.peaks();
    // As in the other figures of the lift: whole degrees.
    let number = |sample: usize| {
        let told = study.told(System::Metric);
        let (angle, unit) = told.place_and_unit(sample as f64 / last);
        format!("at {angle} {unit}")
    };
    let words = FigureWords {
        title: format!(
            "Force peaks {}, moment arm {}, their product {} {}",
            number(peaks[0]),
            number(peaks[1]),
            number(peaks[2]),
            study.away_from
        ),
        subtitle: format!(
            "{lifter}, {}: all {} together",
            study.movement_title.to_lowercase(),
            lifting_muscles(study).trim_start_matches("the ")
        ),
        footnote: "Each curve in percent of its own greatest value. Moment arm: the one at which the summed force \
                   makes the summed moment."
            .to_owned(),
        description: format!(
            "Three curves over {}: summed muscle force is greatest {}, the mean moment arm {}, their product, \
             the moment, {}.",
            study.axis,
            number(peaks[0]),
            number(peaks[1]),
            number(peaks[2])
        ),
        caption: product_caption(peaks).to_owned(),
    };
    words.doubting(&[(study.movement_title.as_str(), study)])
}

/// Where the product of force and lever peaks, beside where each of them does.
fn product_caption([force, lever, torque]: [usize; 3]) -> &'static str {
    let between = force.min(lever)..=force.max(lever);
    if between.contains(&torque) {
        "Moment is force times moment arm, so it peaks between the places where each of them does, where one gains as much as \
         the other loses."
    } else {
        "Moment is force times moment arm: its peak is where one gains as much as the other loses."
    }
}
