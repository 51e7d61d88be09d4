//! Questions about a lift with answers to choose from: the right one as computed, wrong ones as people mistake it.
//!
//! In: facts of a study and of its changes. Out: [`Quizzed`] questions; every answer says what the model finds.

use super::changed_numbers::signed;
use super::muscle_names::head_name;
use super::prose::{capital, percent};
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::anatomy::Joint;
use crate::capacity::CurveShape;
use crate::movement::Measure;
use crate::study::Study;
use crate::units::{Mass, System};
use serde::Serialize;

/// A question with its answers.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Quizzed {
    /// The question.
    pub text: String,
    /// What there is to choose from.
    pub options: Vec<QuizOption>,
}

/// One answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct QuizOption {
    /// The answer.
    pub text: String,
    /// Whether it is what the model finds.
    pub is_right: bool,
    /// What the model finds.
    pub why: String,
}

/// Answers of which the one at an index is right.
fn options(texts: Vec<String>, right: usize, why: impl Fn(usize) -> String) -> Vec<QuizOption> {
    let numbered = texts.into_iter().enumerate();
    numbered
        .map(|(index, text)| QuizOption {
            text,
            is_right: index == right,
            why: why(index),
        })
        .collect()
}

/// How strength runs over the range.
#[must_use]
pub fn class_question(study: &Study, units: System) -> Quizzed {
    let class = &study.class;
    let mut shapes = vec![
        CurveShape::Ascending,
        CurveShape::Descending,
        CurveShape::BellShaped,
    ];
    if !shapes.contains(&class.shape) {
        shapes.push(class.shape);
    }
    let right = shapes.iter().position(|shape| *shape == class.shape);
    let why = format!(
        "The start holds {} of the greatest capacity, the end {}; the peak is {}, so the curve is {}.",
        percent(class.start_ratio),
        percent(class.end_ratio),
        study.told(units).at_place(class.peak_range),
        class.shape.word()
    );
    Quizzed {
        text: format!(
            "{}: how does the strength curve run from start to end?",
            study.movement_title
        ),
        options: options(
            shapes.iter().map(|shape| capital(shape.word())).collect(),
            right.unwrap_or(0),
            |_| why.clone(),
        ),
    }
}

/// What is lifted by whom: "Squat with 60 kg, reference man".
fn lift_in_words(study: &Study, units: System) -> String {
    let told = study.told(units);
    let load = study.setups.first().map(|setup| told.hung_in_full(setup));
    let load = load.map_or(String::new(), |load| format!(" with {load}"));
    format!("{}{load}, {}", study.movement_title, study.lifter_title)
}

/// Where the load of a study is hardest; `None` without a load.
#[must_use]
pub fn hardest_question(study: &Study, units: System) -> Option<Quizzed> {
    let sticking = study.setups.first()?.sticking?;
    let place = sticking.point_range;
    let right = match place {
        place if place < 0.15 => 0,
        place if place > 0.85 => 2,
        _ => 1,
    };
    let why = format!(
        "Effort is demand over capacity. It is greatest {}: {}. Neither a heavy load nor a weak place alone decides.",
        study.told(units).at_place(place),
        percent(sticking.max_effort)
    );
    let places = ["At the start", "In between", "At the end"];
    Some(Quizzed {
        text: format!("{}: where is it hardest?", lift_in_words(study, units)),
        options: options(places.map(str::to_owned).to_vec(), right, |_| why.clone()),
    })
}

/// A muscle's part at a joint, for a question.
#[derive(Debug, Clone, PartialEq)]
pub struct MuscleAtJoint {
    /// Its name in the model.
    pub name: String,
    /// Force, N.
    pub force_n: f64,
    /// Moment arm in the direction of the lift, m.
    pub arm_m: f64,
}

/// Which muscle makes the largest moment; the first is it.
#[must_use]
pub fn moment_question(
    joint: &str,
    place: &str,
    muscles: &[MuscleAtJoint],
    units: System,
) -> Quizzed {
    let force = units.load_unit(Measure::Force);
    let (arm, torque) = (units.length_unit(), units.torque_unit());
    let told = |muscle: &MuscleAtJoint| {
        format!(
            "{}: {} {} at an arm of {} {} make {} {}.",
            capital(&head_name(&muscle.name)),
            rounded(force.of(muscle.force_n), 0),
            force.symbol,
            rounded(arm.of(muscle.arm_m), 1),
            arm.symbol,
            rounded(torque.of(muscle.force_n * muscle.arm_m), 1),
            torque.symbol
        )
    };
    let names = muscles.iter().map(|m| capital(&head_name(&m.name)));
    Quizzed {
        text: format!("Which muscle makes the largest moment at the {joint}, {place}?"),
        options: options(names.collect(), 0, |index| match index {
            0 => told(&muscles[0]),
            other => format!("{} {}", told(&muscles[other]), told(&muscles[0])),
        }),
    }
}

/// The heaviest weight that can be held in every place, before and after an arm became a tenth longer, kg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeaviestWeights {
    /// Before.
    pub before: Mass,
    /// After.
    pub after: Mass,
}

/// A tenth more moment arm: what becomes of the heaviest weight.
#[must_use]
pub fn arm_question(
    study: &Study,
    (muscle, joint): (&str, Joint),
    heaviest: HeaviestWeights,
    why: &[String],
    units: System,
) -> Quizzed {
    /// Changes below this share are none that is felt (assumed).
    const HARDLY: f64 = 0.003;
    /// Between these shares a tenth more is as much (assumed).
    const AS_MUCH: [f64; 2] = [0.085, 0.115];
    let gain = heaviest.after.as_kg() / heaviest.before.as_kg() - 1.0;
    let right = match gain {
        gain if gain > AS_MUCH[1] => 4,
        gain if gain >= AS_MUCH[0] => 0,
        gain if gain > HARDLY => 1,
        gain if gain >= -HARDLY => 2,
        _ => 3,
    };
    let texts = [
        "It grows by about a tenth too",
        "It grows by clearly less than a tenth",
        "It hardly changes",
        "It falls",
        "It grows by clearly more than a tenth",
    ];
    // The line of a muscle across the shoulder has one scale for all its planes.
    let planes = if joint == Joint::Shoulder {
        " (in every plane)"
    } else {
        ""
    };
    let told = format!(
        "It goes from {} to {}, {} %. {}",
        units.mass(heaviest.before),
        units.mass(heaviest.after),
        signed(100.0 * gain, 1),
        why.join(" ")
    );
    Quizzed {
        text: format!(
            "{}, {}: the moment arm of {} at the {}{planes} becomes a tenth longer. What becomes of the heaviest weight that can be held in every place?",
            study.movement_title,
            study.lifter_title,
            head_name(muscle),
            joint.name()
        ),
        options: options(texts.map(str::to_owned).to_vec(), right, |_| {
            told.trim_end().to_owned()
        }),
    }
}

/// What a fifth more weight does to a load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeavierWeight {
    /// The weight before.
    pub weight: Mass,
    /// Hardest place before and after.
    pub hardest: [f64; 2],
    /// Growth of the demand at the start, at the hardest place before, and at the end, share.
    pub growth: [f64; 3],
    /// Whether the demand grows by a fifth in every place.
    pub is_even: bool,
}

/// A fifth more weight: where it is hardest then.
#[must_use]
pub fn heavier_question(study: &Study, heavier: &HeavierWeight, units: System) -> Quizzed {
    let [before, after] = heavier.hardest;
    let right = match after - before {
        moved if moved < -0.03 => 1,
        moved if moved > 0.03 => 2,
        _ => 0,
    };
    let texts = [
        "At the same place",
        "Clearly earlier in the range",
        "Clearly later in the range",
    ];
    let told = study.told(units);
    let [now, then] = heavier.hardest.map(|range| told.at_place(range));
    let reason = match heavier.is_even {
        true => "a fifth more weight asks for a fifth more in every place".to_owned(),
        false => {
            let [start, hardest, end] = heavier.growth.map(|share| signed(100.0 * share, 1));
            format!(
                "only the weight grows by a fifth, the whole load by {start} % at the start, {hardest} % where it was hardest, {end} % at the end"
            )
        }
    };
    let why = format!("It is hardest {now} now and {then} then: {reason}.");
    Quizzed {
        text: format!(
            "{}: {} of it become a fifth heavier, all else stays. Where is it hardest then?",
            lift_in_words(study, units),
            units.mass(heavier.weight)
        ),
        options: options(texts.map(str::to_owned).to_vec(), right, |_| why.clone()),
    }
}
