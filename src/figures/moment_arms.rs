//! Moment arms and fibre lengths over the joint angle, muscle by muscle.
//!
//! In: a lift of one joint. Out: figures of the two things that make torque out of fibres.

use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::axis_words::{FIBRE_LENGTH, MOMENT_ARM};
use crate::narrative::lever_words::{
    ALIKE_LENGTHS, LengthNotes, OPTIMAL_LENGTH, fibre_length_words, moment_arm_words,
};
use crate::narrative::muscle_names::{muscle_label, muscle_name};
use crate::narrative::shown_units::ShownUnits;
use crate::plot::{Axis, Extent, Labels, LevelLine, LineChart, Panel, Role, Series};
use crate::study::{MusclePart, Study, as_drawn, beyond_living, muscle_heads, strongest_muscles};
use crate::units::System;

/// Moment arms over the joint angle.
#[must_use]
pub fn moment_arms(lifter: &str, study: &Study, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let parts = strongest_muscles(study);
    let unit = units.length_unit();
    let series = curves(&over, &parts, &|part| {
        part.arm_m.iter().map(|arm| unit.of(*arm)).collect()
    });
    let axis = Axis::new(MOMENT_ARM, unit.symbol);
    let chart = LineChart {
        labels: Labels::Column,
        ..LineChart::new(over.axis(), vec![Panel::new(axis, series)])
    };
    let words = moment_arm_words(lifter, study, &parts, units);
    Sheet::lines(&words, chart)
}

/// Fibre lengths over the joint angle.
#[must_use]
pub fn fibre_lengths(lifter: &str, study: &Study, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let (parts, on_others) = apart(strongest_muscles(study));
    let notes = LengthNotes {
        on_others,
        farthest_head: farthest_head(study, &parts),
    };
    let mut series = curves(&over, &parts, &|part| {
        part.fibre_norm
            .iter()
            .map(|length| 100.0 * length)
            .collect()
    });
    for (line, part) in series.iter_mut().zip(&parts) {
        let stretches = as_drawn(&beyond_living(&part.fibre_norm), part.fibre_norm.len());
        let places = stretches
            .into_iter()
            .map(|ends| ends.map(|range| over.place(range)));
        line.doubted = places.collect();
    }
    let axis = Axis::new(FIBRE_LENGTH, "%").reaching(Extent::FromZero);
    let panel = Panel {
        levels: vec![LevelLine::new(100.0, OPTIMAL_LENGTH)],
        ..Panel::new(axis, series)
    };
    let chart = LineChart {
        labels: Labels::Column,
        ..LineChart::new(over.axis(), vec![panel])
    };
    Sheet::lines(&fibre_length_words(lifter, study, &parts, &notes), chart)
}

/// The muscles whose lines of fibre length are told apart, and those whose lines lie on a drawn one, each with that one.
fn apart(parts: Vec<MusclePart>) -> (Vec<MusclePart>, Vec<[String; 2]>) {
    let is_on = |a: &MusclePart, b: &MusclePart| {
        let mut both = a.fibre_norm.iter().zip(&b.fibre_norm);
        both.all(|(a, b)| (*a - *b).abs() < ALIKE_LENGTHS)
    };
    let (mut drawn, mut on_others): (Vec<MusclePart>, _) = (Vec::new(), Vec::new());
    for part in parts {
        match drawn.iter().find(|known| is_on(known, &part)) {
            Some(known) => on_others.push([muscle_name(&part), muscle_name(known)]),
            None => drawn.push(part),
        }
    }
    (drawn, on_others)
}

/// The head whose fibres run shorter than anything that is drawn, by a hundredth of the optimal length or more.
fn farthest_head(study: &Study, parts: &[MusclePart]) -> Option<(String, f64)> {
    let least = |part: &MusclePart| {
        part.fibre_norm
            .iter()
            .copied()
            .fold(f64::INFINITY, f64::min)
    };
    let drawn = parts.iter().map(least).fold(f64::INFINITY, f64::min);
    let several = |head: &MusclePart| {
        let words = head.name.replace('_', " ");
        parts
            .iter()
            .any(|part| part.heads > 1 && words.starts_with(&part.name))
    };
    let heads = muscle_heads(study, 0);
    let farthest = heads.iter().filter(|head| several(head));
    let farthest = farthest.min_by(|a, b| least(a).total_cmp(&least(b)))?;
    (least(farthest) < drawn - 0.01).then(|| (farthest.name.clone(), least(farthest)))
}

fn curves(
    over: &OverRange<'_>,
    parts: &[MusclePart],
    values: &dyn Fn(&MusclePart) -> Vec<f64>,
) -> Vec<Series> {
    let curve = |(index, part): (usize, &MusclePart)| {
        Series::new(
            muscle_label(part),
            over.points(&values(part)),
            Role::Series(index),
        )
    };
    parts.iter().enumerate().map(curve).collect()
}
