//! The classes of strength curve: side by side, each with its lifts, and under a plain weight.
//!
//! In: lifts by class. Out: figures in which curves of different size share one scale, the lift's own median.

use super::sheet::Sheet;
use crate::capacity::CurveShape;
use crate::library::{LiftErrors, PublishedClasses};
use crate::narrative::axis_words::{LOAD_OVER_MEDIAN, MEDIAN, WHOLE_RANGE, over_median};
use crate::narrative::class_load_words::load_over_class_words;
use crate::narrative::class_words::{
    BODY_WEIGHT, CurvesSeen, classes_words, ends_of_peak, lifts_of_class_words, panel_title,
};
use crate::narrative::hardest_words::{held_and_lifted, weight_line};
use crate::narrative::quantities::rounded;
use crate::plot::{
    Axis, Extent, Labels, LevelLine, LineChart, Panel, Role, Series, Shade, SmallMultiples,
    SmallPanel, Time,
};
use crate::study::{ClassLifts, LoadedExamples, Study, hollow_stretches, median_capacity};
use crate::units::System;

/// Where the shared upright axis ends at the latest, % of the median: nearly straight limbs climb out of any scale.
const CEILING_PERCENT: f64 = 220.0;

/// The axis of the range in percent, shared by lifts of different travel.
fn range_axis() -> Axis {
    let axis = Axis::new(WHOLE_RANGE, "%").reaching(Extent::Data);
    axis.timed(Time::Rising)
}

/// The axis of values over a lift's own median, which has a tick: as far as the greatest curve, or to the ceiling.
fn median_axis(quantity: &str, lifts: &[&Study]) -> Axis {
    /// Steps of the axis and of its end, %.
    const STEP: f64 = 50.0;
    let peaks = lifts
        .iter()
        .map(|study| percent_of_median(study, study.class.peak));
    let greatest = peaks.fold(100.0, f64::max);
    let (top, step) = match (greatest / STEP).ceil() * STEP {
        above if above > CEILING_PERCENT => (CEILING_PERCENT, 2.0 * STEP),
        top => (top, STEP),
    };
    let ticks = (0..=(top / step) as u32).map(|number| step * f64::from(number));
    Axis {
        ticks: ticks.map(|value| (value, rounded(value, 0))).collect(),
        ..Axis::new(over_median(quantity), "%").reaching(Extent::FromZeroTo(top))
    }
}

fn percent_of_median(study: &Study, value: f64) -> f64 {
    100.0 * value / median_capacity(study)
}

/// Whether a lift's curve leaves the axis.
fn leaves(study: &Study) -> bool {
    percent_of_median(study, study.class.peak) > CEILING_PERCENT
}

/// Values in percent of the median capacity over the range in percent.
fn over_range(study: &Study, values: &[f64]) -> Vec<[f64; 2]> {
    let places = study.range.poses.iter().map(|pose| pose.load.range);
    places
        .zip(values)
        .map(|(range, value)| [100.0 * range, percent_of_median(study, *value)])
        .collect()
}

fn capacity_curve(study: &Study, name: &str, role: Role) -> Series {
    let hollow = hollow_stretches(study);
    let hollow = hollow.into_iter().map(|ends| ends.map(|end| 100.0 * end));
    Series::new(name, over_range(study, &study.capacity.values()), role).doubted(hollow.collect())
}

/// The same with the peak, where that lies between two samples.
fn capacity_with_peak(study: &Study, name: &str, role: Role) -> Series {
    let mut curve = capacity_curve(study, name, role);
    if let Some((behind, range, peak)) = study.crest() {
        let crest = [100.0 * range, percent_of_median(study, peak)];
        curve.points.insert(behind, crest);
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
pub fn classes(lifter: &str, examples: &[&Study], published: &PublishedClasses) -> Sheet {
    let chart = SmallMultiples {
        x: range_axis(),
        y: median_axis("Strength", examples),
        panels: examples
            .iter()
            .map(|study| class_panel(study, published))
            .collect(),
        columns: Some(columns(examples.len())),
        ..SmallMultiples::default()
    };
    let above: Vec<&Study> = examples.iter().copied().filter(|s| leaves(s)).collect();
    Sheet::panels(&classes_words(lifter, examples, &above, published), chart)
}

fn class_panel(study: &Study, published: &PublishedClasses) -> SmallPanel {
    SmallPanel {
        title: panel_title(study, published),
        note: ends_of_peak(study),
        series: vec![capacity_with_peak(
            study,
            &study.movement_title,
            Role::CAPACITY,
        )],
        ..SmallPanel::default()
    }
}

/// The lifts of one class; the first lies on top and takes the strongest colour. A single one that the body is the load of has
/// the body's weight beside it.
#[must_use]
pub fn class_lifts(
    lifter: &str,
    shape: CurveShape,
    lifts: &ClassLifts<'_>,
    published: &PublishedClasses,
    units: System,
) -> Sheet {
    let curves = lifts.shown.iter().enumerate();
    let mut curves: Vec<Series> = curves
        .map(|(index, study)| capacity_with_peak(study, &study.movement_title, Role::Series(index)))
        .collect();
    if let Some(study) = &lifts.under_body {
        let demand = over_range(study, &study.setups[0].values);
        curves.push(Series::new(BODY_WEIGHT, demand, Role::DEMAND));
    }
    let panel = Panel {
        levels: vec![LevelLine::new(100.0, MEDIAN)],
        ..Panel::new(median_axis("Strength", &lifts.shown), curves)
    };
    let labels = match lifts.shown.len() {
        0..=4 => Labels::Auto,
        _ => Labels::Column,
    };
    let chart = LineChart {
        labels,
        ..LineChart::new(range_axis(), vec![panel])
    };
    let above: Vec<&Study> = lifts.shown.iter().copied().filter(|s| leaves(s)).collect();
    let is_hollow = lifts.shown.iter().any(|study| is_hollow_in_view(study));
    Sheet::lines(
        &lifts_of_class_words(
            lifter,
            shape,
            lifts,
            CurvesSeen {
                above: &above,
                is_hollow,
            },
            published,
            units,
        ),
        chart,
    )
}

/// Whether a hollow part of a curve lies below the axis's end.
fn is_hollow_in_view(study: &Study) -> bool {
    let curve = over_range(study, &study.capacity.values());
    let ceiling = if leaves(study) {
        CEILING_PERCENT
    } else {
        f64::INFINITY
    };
    hollow_stretches(study).iter().any(|ends| {
        let [from, to] = ends.map(|end| 100.0 * end);
        let mut inside = curve.iter().filter(|[x, _]| (from..=to).contains(x));
        inside.any(|[_, y]| *y <= ceiling)
    })
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
    let panels = panels.map(|(study, note)| loaded_panel(study, note, units));
    let chart = SmallMultiples {
        x: range_axis(),
        y: Axis::new(LOAD_OVER_MEDIAN, "%").reaching(Extent::FromZeroTo(CEILING_PERCENT)),
        panels: panels.collect(),
        columns: Some(columns(loaded.len())),
        ..SmallMultiples::default()
    };
    let words = load_over_class_words(lifter, examples, errors, units);
    Sheet::panels(&words, chart)
}

fn loaded_panel(study: &Study, note: String, units: System) -> SmallPanel {
    let setup = &study.setups[0];
    let mut demand = over_range(study, &setup.values);
    if let Some((behind, range, _)) = study.crest() {
        // As many points as the capacity has.
        let ends = [demand[behind - 1], demand[behind]];
        let along = (100.0 * range - ends[0][0]) / (ends[1][0] - ends[0][0]);
        let asked = ends[0][1] + along * (ends[1][1] - ends[0][1]);
        demand.insert(behind, [100.0 * range, asked]);
    }
    let shade = setup.sticking.map(|sticking| {
        let ends = [sticking.from_range, sticking.to_range];
        Shade::between(ends.map(|range| 100.0 * range), "")
    });
    SmallPanel {
        title: study.movement_title.clone(),
        note,
        series: vec![
            capacity_with_peak(study, "capacity", Role::CAPACITY),
            Series::new(weight_line(study, units), demand, Role::DEMAND),
        ],
        shades: shade.into_iter().collect(),
        ..SmallPanel::default()
    }
}
