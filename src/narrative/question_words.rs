//! Questions about a lift with answers to choose from: the right one as computed, wrong ones as people mistake it.
//!
//! In: facts of a study and of its changes. Out: [`Quizzed`] questions; every answer says what the model finds.

use super::muscle_names::head_name;
use super::prose::{capital, percent};
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::capacity::CurveShape;
use crate::movement::Measure;
use crate::study::Study;
use crate::units::System;
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
        "Effort is demand over capacity: greatest {}, at {}. Neither a heavy load nor a weak place alone decides.",
        study.told(units).at_place(place),
        percent(sticking.max_effort)
    );
    let places = ["At the start", "In between", "At the end"];
    Some(Quizzed {
        text: "Where is the load on the page hardest for this lifter?".to_owned(),
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
        text: format!("Which muscle makes the largest moment about the {joint} {place}?"),
        options: options(names.collect(), 0, |index| match index {
            0 => told(&muscles[0]),
            other => format!("{} {}", told(&muscles[other]), told(&muscles[0])),
        }),
    }
}

/// A tenth more moment arm: what becomes of the greatest capacity.
#[must_use]
pub fn arm_question(muscle: &str, joint: &str, gain: f64, why: &[String]) -> Quizzed {
    /// Changes below this share are none that is felt (assumed).
    const HARDLY: f64 = 0.003;
    /// From this share on a tenth more is as much (assumed).
    const AS_MUCH: f64 = 0.085;
    let right = match gain {
        gain if gain >= AS_MUCH => 0,
        gain if gain > HARDLY => 1,
        gain if gain >= -HARDLY => 2,
        _ => 3,
    };
    let texts = [
        "It grows by about a tenth too",
        "It grows by clearly less than a tenth",
        "It hardly changes",
        "It falls",
    ];
    let told = format!(
        "The model finds a change of {} %. {}",
        rounded(100.0 * gain, 1),
        why.join(" ")
    );
    Quizzed {
        text: format!(
            "The moment arm of {} at the {joint} becomes a tenth longer. What becomes of the greatest capacity?",
            head_name(muscle)
        ),
        options: options(texts.map(str::to_owned).to_vec(), right, |_| told.clone()),
    }
}

/// A fifth more load: where it is hardest then.
#[must_use]
pub fn heavier_question(study: &Study, before: f64, after: f64, units: System) -> Quizzed {
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
    let why = format!(
        "It is hardest {} now and {} then: a weight multiplies the demand everywhere alike, where nothing else hangs on it.",
        told.at_place(before),
        told.at_place(after)
    );
    Quizzed {
        text: "The weight becomes a fifth heavier. Where is it hardest then?".to_owned(),
        options: options(texts.map(str::to_owned).to_vec(), right, |_| why.clone()),
    }
}
