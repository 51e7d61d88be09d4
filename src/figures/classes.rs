//! The classes of strength curve: side by side, each with its lifts, and under a plain weight.
//!
//! In: lifts by class. Out: figures in which curves of different size share one scale, the lift's own median.

use super::sheet::Sheet;
use crate::capacity::CurveShape;
use crate::library::LiftErrors;
use crate::narrative::axis_words::{LOAD_OVER_MEDIAN, MEDIAN, WHOLE_RANGE, over_median};
use crate::narrative::class_words::{
    classes_words, ends_of_peak, lifts_of_class_words, load_over_class_words,
};
use crate::narrative::hardest_words::held_and_lifted;
use crate::narrative::prose::capital;
use crate::plot::{
    Axis, Extent, Labels, LevelLine, LineChart, Panel, Role, Series, Shade, SmallMultiples,
    SmallPanel, Time,
};
use crate::study::{LoadedExamples, Study};
use crate::units::System;

/// Where the shared upright axis ends, % of the median: nearly straight limbs climb out of any scale.
const CEILING_PERCENT: f64 = 220.0;

/// The axis of the range in percent, shared by lifts of different travel.
fn range_axis() -> Axis {
    let axis = Axis::new(WHOLE_RANGE, "%").reaching(Extent::Data);
    axis.timed(Time::Rising)
}

/// The axis of values over a lift's own median, which has a tick.
fn median_axis(quantity: &str) -> Axis {
    let ticks = [0, 100, 200].map(|percent| (f64::from(percent), percent.to_string()));
    Axis {
        ticks: ticks.into(),
        ..Axis::new(over_median(quantity), "%").reaching(Extent::FromZeroTo(CEILING_PERCENT))
    }
}

/// The middle one of the capacities: half of the range holds more, half less.
fn median(values: &[f64]) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted[sorted.len() / 2]
}

/// Values in percent of the median capacity over the range in percent.
fn over_range(study: &Study, values: &[f64]) -> Vec<[f64; 2]> {
    let unit = median(&study.capacity.values());
    let places = study.range.poses.iter().map(|pose| pose.load.range);
    places
        .zip(values)
        .map(|(range, value)| [100.0 * range, 100.0 * value / unit])
        .collect()
}

fn capacity_curve(study: &Study, name: &str, role: Role) -> Series {
    Series::new(name, over_range(study, &study.capacity.values()), role)
}

/// The same with the peak, where that lies between two samples.
fn capacity_with_peak(study: &Study, name: &str, role: Role) -> Series {
    let mut curve = capacity_curve(study, name, role);
    if let Some((behind, range, peak)) = study.crest() {
        let unit = median(&study.capacity.values());
        curve
            .points
            .insert(behind, [100.0 * range, 100.0 * peak / unit]);
    }
    curve
}

/// Panels side by side: up to three in a row, more of them in rows as even as can be.
fn columns(panels: usize) -> usize {
    match panels {
        0..=3 => panels,
        4 => 2,
        _ => 3,
    }
}

/// One example of every class side by side.
#[must_use]
pub fn three_classes(lifter: &str, examples: &[&Study]) -> Sheet {
    let chart = SmallMultiples {
        x: range_axis(),
        y: median_axis("Strength"),
        panels: examples.iter().map(|study| class_panel(study)).collect(),
        columns: Some(columns(examples.len())),
        ..SmallMultiples::default()
    };
    Sheet::panels(&classes_words(lifter, examples), chart)
}

fn class_panel(study: &Study) -> SmallPanel {
    SmallPanel {
        title: capital(study.class.shape.word()),
        note: ends_of_peak(study),
        series: vec![capacity_with_peak(
            study,
            &study.movement_title,
            Role::CAPACITY,
        )],
        ..SmallPanel::default()
    }
}

/// The lifts of one class; the first lies on top and takes the strongest colour.
#[must_use]
pub fn class_lifts(lifter: &str, shape: CurveShape, lifts: &[&Study]) -> Sheet {
    let curves = lifts.iter().enumerate();
    let curves = curves.map(|(index, study)| {
        capacity_with_peak(study, &study.movement_title, Role::Series(index))
    });
    let panel = Panel {
        levels: vec![LevelLine::new(100.0, MEDIAN)],
        ..Panel::new(median_axis("Strength"), curves.collect())
    };
    let labels = match lifts.len() {
        0..=3 => Labels::Auto,
        _ => Labels::Column,
    };
    let chart = LineChart {
        labels,
        ..LineChart::new(range_axis(), vec![panel])
    };
    Sheet::lines(&lifts_of_class_words(lifter, shape, lifts), chart)
}

/// Capacity and the demand of a plain weight for one lift of every class.
#[must_use]
pub fn load_over_class(
    lifter: &str,
    examples: &LoadedExamples,
    errors: &LiftErrors,
    units: System,
) -> Sheet {
    let loaded = &examples.loaded;
    let beside = examples.beside.iter();
    let beside = beside.map(|beside| held_and_lifted(beside, units));
    let panels = loaded.iter().zip(beside);
    let panels = panels.map(|(study, note)| loaded_panel(study, note));
    let chart = SmallMultiples {
        x: range_axis(),
        y: Axis::new(LOAD_OVER_MEDIAN, "%").reaching(Extent::FromZeroTo(CEILING_PERCENT)),
        panels: panels.collect(),
        columns: Some(columns(loaded.len())),
        ..SmallMultiples::default()
    };
    Sheet::panels(
        &load_over_class_words(lifter, examples, errors, units),
        chart,
    )
}

fn loaded_panel(study: &Study, note: String) -> SmallPanel {
    let setup = &study.setups[0];
    let demand = over_range(study, &setup.values);
    let shade = setup.sticking.map(|sticking| {
        let ends = [sticking.from_range, sticking.to_range];
        Shade::between(ends.map(|range| 100.0 * range), "")
    });
    SmallPanel {
        title: study.movement_title.clone(),
        note,
        series: vec![
            capacity_curve(study, "capacity", Role::CAPACITY),
            Series::new("weight", demand, Role::DEMAND),
        ],
        shades: shade.into_iter().collect(),
        ..SmallPanel::default()
    }
}
