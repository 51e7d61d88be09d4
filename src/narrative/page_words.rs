//! What the live page says: what a change did and why, what a place of the range asks for, what a drawn curve missed.
//!
//! In: studies before and after, their causes, a place. Out: sentences, in metric units as the page has them.

use super::axis_words::AxisWords;
use super::causes::cause_in_words;
use super::prose::{capital, percent};
use super::shown_units::ShownUnits;
use crate::capacity::CurveShape;
use crate::study::{Cause, Study};
use crate::units::System;

/// The curve before the last change.
pub(crate) const BEFORE: &str = "before";

/// Lengths at which no living fibre is known.
pub(crate) const NO_LIVING_FIBRE: &str = "no living fibre";

/// Muscle moments about a moving joint.
#[must_use]
pub(crate) fn moment_axis(study: &Study, joint: usize) -> AxisWords {
    let quantity = format!("Muscle moment, {}", study.joint(joint));
    (quantity, System::Metric.torque_unit().symbol)
}

/// That the page was written, and how it is handed on.
#[must_use]
pub fn page_written(file: &str) -> String {
    format!("{file}: opens in any browser, from a disk as well; hand it on as it is")
}

/// What a change did to a curve and to its load, a sentence each.
#[must_use]
pub fn change_in_words(before: &Study, after: &Study, causes: &[Cause]) -> Vec<String> {
    let units = System::Metric;
    let unit = units.load_unit(after.range.measure);
    let told = causes.iter();
    let mut lines: Vec<String> = told
        .map(|cause| capital(&cause_in_words(cause, unit, units)) + ".")
        .collect();
    lines.extend(hardest_in_words(before, after));
    lines
}

/// Where the load is hardest before and after, and how hard.
fn hardest_in_words(before: &Study, after: &Study) -> Option<String> {
    let sticking = |study: &Study| {
        let sticking = study.setups.first()?.sticking?;
        let told = study.told(System::Metric);
        Some((
            told.at_place(sticking.point_range),
            percent(sticking.max_effort),
        ))
    };
    let (was, is) = (sticking(before), sticking(after)?);
    Some(match was {
        Some(was) if was == is => {
            format!("The load stays hardest {}, at {} of strength.", is.0, is.1)
        }
        Some(was) if was.0 == is.0 => format!(
            "The load stays hardest {}, at {} of strength in place of {}.",
            is.0, is.1, was.1
        ),
        Some(was) => format!(
            "The load is hardest {} at {} of strength; before it was {} at {}.",
            is.0, is.1, was.0, was.1
        ),
        None => format!("The load is hardest {} at {} of strength.", is.0, is.1),
    })
}

/// What holds at a sample of the range.
#[must_use]
pub fn place_in_words(study: &Study, sample: usize) -> String {
    let units = System::Metric;
    let unit = units.load_unit(study.range.measure);
    let pose = &study.range.poses[sample];
    let held = &study.capacity.held[sample];
    let show = |value: f64| {
        format!(
            "{} {}",
            super::quantities::rounded(unit.of(value), 0),
            unit.symbol
        )
    };
    let place = capital(&study.told(units).at_place(pose.load.range));
    let joint = study.joint(held.limiting);
    let can = show(held.capacity);
    match study.setups.first() {
        None => format!("{place}: at most {can}; the {joint} gives way first."),
        Some(setup) => format!(
            "{place}: the load asks for {} of {can}, {} of strength; the {joint} gives way first.",
            show(setup.values[sample]),
            percent(setup.effort[sample])
        ),
    }
}

/// How near a drawn curve came.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnCurve {
    /// Class of what was drawn.
    pub drawn: CurveShape,
    /// Class of the curve.
    pub computed: CurveShape,
    /// Place of its greatest value.
    pub drawn_peak_range: f64,
    /// Mean distance, share of the greatest capacity.
    pub mean_distance: f64,
}

/// What a drawn curve met and what it missed.
#[must_use]
pub fn drawn_in_words(study: &Study, told: &DrawnCurve) -> Vec<String> {
    let met = match told.drawn == told.computed {
        true => format!(
            "Your curve is {}, and so is the model's.",
            told.computed.word()
        ),
        false => format!(
            "Your curve is {}; the model's is {}.",
            told.drawn.word(),
            told.computed.word()
        ),
    };
    let places = study.told(System::Metric);
    vec![
        met,
        format!(
            "You have the peak {}, the model {}.",
            places.at_place(told.drawn_peak_range),
            places.at_place(study.class.peak_range)
        ),
        format!(
            "On average you are {} of the greatest capacity away.",
            percent(told.mean_distance)
        ),
    ]
}
