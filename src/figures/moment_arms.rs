//! Moment arms and fibre lengths over the joint angle, muscle by muscle.
//!
//! In: a lift of one joint. Out: figures of the two things that make torque out of fibres.

use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::axis_words::{FIBRE_LENGTH, MOMENT_ARM};
use crate::narrative::lever_words::{OPTIMAL_LENGTH, fibre_length_words, moment_arm_words};
use crate::narrative::muscle_names::muscle_label;
use crate::narrative::shown_units::ShownUnits;
use crate::plot::{Axis, Extent, Labels, LevelLine, LineChart, Panel, Role, Series};
use crate::study::{MusclePart, Study, strongest_muscles};
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
    let parts = strongest_muscles(study);
    let series = curves(&over, &parts, &|part| {
        part.fibre_norm
            .iter()
            .map(|length| 100.0 * length)
            .collect()
    });
    let axis = Axis::new(FIBRE_LENGTH, "%").reaching(Extent::FromZero);
    let panel = Panel {
        levels: vec![LevelLine::new(100.0, OPTIMAL_LENGTH)],
        ..Panel::new(axis, series)
    };
    let chart = LineChart {
        labels: Labels::Column,
        ..LineChart::new(over.axis(), vec![panel])
    };
    Sheet::lines(&fibre_length_words(lifter, study, &parts), chart)
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
