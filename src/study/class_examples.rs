//! Which lifts stand for a class of strength curve.
//!
//! In: a [`Desk`]. Out: its lifts by class; which lift belongs to which class comes from the model.

use super::desk::{Desk, LiftStudy};
use super::held_and_lifted::HeldAndLifted;
use crate::capacity::CurveShape;
use crate::error::{Error, LiftFault, Result, StudyFault, What};
use crate::movement::Carrier;
use crate::numeric::median;
use crate::resistance::Setup;
use crate::study::{Study, doubted_stretches};

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

/// The lifts of a class that may stand for it: the well-known ones first, then all by name.
fn candidates<'a>(desk: &'a Desk<'_>, shape: CurveShape) -> impl Iterator<Item = &'a LiftStudy> {
    let known = EXAMPLES.iter().filter_map(|name| desk.lift(name).ok());
    known
        .chain(desk.lifts())
        .filter(move |lift| lift.study.class.shape == shape)
}

/// The lift that stands for a class: the first of its candidates.
fn example<'a>(desk: &'a Desk<'_>, shape: CurveShape) -> Option<&'a LiftStudy> {
    candidates(desk, shape).next()
}

/// One example of every class that this lifter's curves have, in teaching order.
#[must_use]
pub fn class_examples<'a>(desk: &'a Desk<'_>) -> Vec<&'a Study> {
    CLASSES
        .iter()
        .filter_map(|shape| example(desk, *shape))
        .map(|lift| &lift.study)
        .collect()
}

/// One lift of every class under a plain weight.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadedExamples {
    /// The lifts under their weights, in teaching order.
    pub loaded: Vec<Study>,
    /// The most that each holds still all along, and the most that it lifts.
    pub beside: Vec<HeldAndLifted>,
    /// Lifts of classes none of which this lifter can load, without any weight: they are too hard already.
    pub left_out: Vec<Study>,
}

/// For every class the first lift that this lifter can load, under a plain weight that makes its hardest
/// place hard; lifts of which published values are missed the most come behind the others of their class.
pub fn loaded_examples(desk: &Desk<'_>) -> Result<LoadedExamples> {
    let (mut loaded, mut left_out) = (Vec::new(), Vec::new());
    let errors = desk.models.lift_errors()?;
    let is_doubted = |lift: &&LiftStudy| errors.is_doubted(&lift.model.movement_name);
    for shape in CLASSES {
        let (last, first): (Vec<_>, Vec<_>) = candidates(desk, shape).partition(is_doubted);
        let mut of_class = first.into_iter().chain(last);
        match of_class.find_map(|lift| under_hard_weight(desk, lift).transpose()) {
            Some(study) => loaded.push(study?),
            None => {
                if let Some(lift) = example(desk, shape) {
                    let bare = Setup::new("", Vec::new());
                    left_out.push(desk.under(&lift.model.movement_name, &[bare])?);
                }
            }
        }
    }
    let beside = loaded.iter();
    let beside =
        beside.map(|study: &Study| HeldAndLifted::of(&desk.question(&study.movement_name)?));
    Ok(LoadedExamples {
        beside: beside.collect::<Result<_>>()?,
        loaded,
        left_out,
    })
}

/// A lift under the weight that makes it hard; none where it is harder without any.
fn under_hard_weight(desk: &Desk<'_>, lift: &LiftStudy) -> Result<Option<Study>> {
    let movement = lift.model.movement_name.as_str();
    match desk.hard(movement, Vec::new()) {
        Ok(setup) => desk.under(movement, &[setup]).map(Some),
        Err(error) if is_hard_without_weight(&error) => Ok(None),
        Err(error) => Err(error),
    }
}

fn is_hard_without_weight(error: &Error) -> bool {
    let too_hard = |what: &What| {
        matches!(
            what,
            What::Study(StudyFault::Lift(LiftFault::HardWithoutWeight { .. }))
        )
    };
    error.faults().iter().all(|fault| too_hard(&fault.what))
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

/// A lift stands for its class where its curve turns back on the way by no more than this share, and is doubted over no more
/// than this share of the range (assumed: less is not seen at a glance).
const CLEAR: f64 = 0.1;

/// The lifts of a class for a figure.
#[derive(Debug, Clone)]
pub struct ClassLifts<'a> {
    /// Those that show the class plainly, the steepest curve first; all where none does.
    pub shown: Vec<&'a Study>,
    /// The others of the class.
    pub left_out: Vec<&'a Study>,
    /// The only lift shown with the body as its load, where it has no other.
    pub under_body: Option<Study>,
}

impl<'a> ClassLifts<'a> {
    /// The lifts of a class, told apart.
    ///
    /// **Fails** if the only lift cannot be computed with its body as the load.
    pub fn of(desk: &'a Desk<'_>, shape: CurveShape) -> Result<Self> {
        let all = lifts_of_class(desk, shape);
        let (mut shown, mut left_out): (Vec<&Study>, Vec<&Study>) =
            all.into_iter().partition(|study| is_clear(study));
        if shown.is_empty() {
            std::mem::swap(&mut shown, &mut left_out);
        }
        let under_body = match shown[..] {
            [only] if only.range.carrier == Carrier::Body => {
                Some(desk.under(&only.movement_name, &[Setup::new("", Vec::new())])?)
            }
            _ => None,
        };
        Ok(Self {
            shown,
            left_out,
            under_body,
        })
    }
}

/// Whether a curve shows its class at a glance, over a range that is sure.
fn is_clear(study: &Study) -> bool {
    let doubted: f64 = doubted_stretches(study).iter().map(|[a, b]| b - a).sum();
    let values = study.capacity.values();
    let turned = match study.class.shape {
        CurveShape::Ascending => greatest_fall(values.iter()),
        CurveShape::Descending => greatest_fall(values.iter().rev()),
        CurveShape::BellShaped | CurveShape::UShaped | CurveShape::Level => 0.0,
    };
    doubted <= CLEAR && turned <= CLEAR
}

/// The greatest fall below a value passed before, share of that value.
fn greatest_fall<'v>(values: impl Iterator<Item = &'v f64>) -> f64 {
    let (mut most, mut fall) = (0.0_f64, 0.0_f64);
    for value in values {
        most = most.max(*value);
        fall = fall.max(1.0 - value / most);
    }
    fall
}

/// The capacity of which half of the samples hold more and half less: N or N·m.
#[must_use]
pub fn median_capacity(study: &Study) -> f64 {
    median(&study.capacity.values()).unwrap_or(0.0)
}
