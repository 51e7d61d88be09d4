//! Which lifts stand for a class of strength curve.
//!
//! In: a [`Desk`]. Out: its lifts by class; which lift belongs to which class comes from the model.

use super::desk::{Desk, LiftStudy};
use crate::capacity::CurveShape;
use crate::error::Result;
use crate::study::Study;

/// The classes in teaching order.
const CLASSES: [CurveShape; 5] = [
    CurveShape::Ascending,
    CurveShape::Descending,
    CurveShape::BellShaped,
    CurveShape::UShaped,
    CurveShape::Level,
];

/// Lifts that stand for their class if they belong to it: well known, with free weight.
const EXAMPLES: [&str; 5] = [
    "squat",
    "row",
    "biceps-curl",
    "bench-press",
    "lateral-raise",
];

/// Whether this lifter has lifts of a class.
#[must_use]
pub fn has_class(desk: &Desk<'_>, shape: CurveShape) -> bool {
    example(desk, shape).is_some()
}

/// The lift that stands for a class: the first well-known one, else the first by name.
fn example<'a>(desk: &'a Desk<'_>, shape: CurveShape) -> Option<&'a LiftStudy> {
    let of_class = |lift: &&LiftStudy| lift.study.class.shape == shape;
    EXAMPLES
        .iter()
        .filter_map(|name| desk.lift(name).ok())
        .find(of_class)
        .or_else(|| desk.lifts().iter().find(of_class))
}

fn examples<'a>(desk: &'a Desk<'_>) -> impl Iterator<Item = &'a LiftStudy> {
    CLASSES.iter().filter_map(|shape| example(desk, *shape))
}

/// One example of every class that this lifter's curves have, in teaching order.
#[must_use]
pub fn class_examples<'a>(desk: &'a Desk<'_>) -> Vec<&'a Study> {
    examples(desk).map(|lift| &lift.study).collect()
}

/// The same lifts, each under a plain weight that makes its hardest place hard.
pub fn loaded_examples(desk: &Desk<'_>) -> Result<Vec<Study>> {
    examples(desk)
        .map(|lift| {
            let movement = lift.model.movement_name.as_str();
            let setup = desk.hard(movement, Vec::new())?;
            desk.under(movement, &[setup])
        })
        .collect()
}

/// The lifts of a class, the steepest curve first.
#[must_use]
pub fn lifts_of_class<'a>(desk: &'a Desk<'_>, shape: CurveShape) -> Vec<&'a Study> {
    let all = desk.lifts().iter().map(|lift| &lift.study);
    let mut lifts: Vec<&Study> = all.filter(|study| study.class.shape == shape).collect();
    let steepness = |study: &Study| (study.class.end_ratio / study.class.start_ratio).ln().abs();
    lifts.sort_by(|a, b| steepness(b).total_cmp(&steepness(a)));
    lifts
}
