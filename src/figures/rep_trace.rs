//! A repetition in motion: velocity and force over the way of the load, or over time.
//!
//! In: a [`RepStudy`]. Out: charts with both sticking regions, the one in motion and the static one.

use super::body_lines::stick_figure;
use super::over_range::OverRange;
use crate::draw::Scene;
use crate::draw::scale::{decimals_of_step, number};
use crate::error::Result;
use crate::movement::Measure;
use crate::narrative::places::{position_in_words, velocity_in_words};
use crate::narrative::repetition::{rep_sentences, rep_title, subtitle};
use crate::plot::{
    Axis, Extent, Heading, LineChart, Look, Marker, Panel, Role, Series, Shade, Span, StripPose,
};
use crate::rep::{Outcome, RepSample};
use crate::study::RepStudy;
use crate::units::{Force, System, rounded};

/// Velocity and force of the lift over the way of the load.
///
/// **Fails** if the repetition has no lift (it was handed over or lost in lowering).
pub fn rep_over_way(rep: &RepStudy, units: System, look: Look) -> Result<Scene> {
    let lift = rep.trace.lifting();
    let way = |s: &RepSample| way(rep, units, s.position);
    let mut force = force_panel(rep, units, lift, &way);
    force.series.pop();
    force.series.push(load_at_rest(rep, units));
    force.series.push(held_still(rep, units));
    let mut panels = Vec::new();
    if rep.is_stuck_at_start() {
        // Nothing moves: what the load asks for above what full effort holds is all there is to see.
        force.series.remove(0);
        force.spans = still_span(rep, units);
        force.markers = stuck_marker(rep, units);
    } else {
        panels.push(with_span(
            velocity_panel(rep, lift, &way, markers(rep, units)),
            still_span(rep, units),
        ));
    }
    panels.push(force);
    LineChart {
        heading: heading(rep, units),
        x: OverRange::new(&rep.still, units)
            .axis()
            .reaching(Extent::Exactly(whole_way(rep, units))),
        panels,
        shades: motion_shade(rep, units),
        poses: poses(rep, units),
        ..LineChart::default()
    }
    .scene(look)
}

/// The panel with bars below its zero line.
fn with_span(mut panel: Panel, spans: Vec<Span>) -> Panel {
    /// Room below zero for one bar and its name, as a share of the axis.
    const ROOM: f64 = 0.24;
    if let (Extent::Exactly([low, high]), false) = (panel.axis.extent, spans.is_empty()) {
        panel.axis.extent = Extent::Exactly([low - ROOM * (high - low), high]);
        panel.spans = spans;
    }
    panel
}

/// Velocity and force of the whole repetition over time.
///
/// **Fails** if nothing moved.
pub fn rep_over_time(rep: &RepStudy, units: System, look: Look) -> Result<Scene> {
    let samples = &rep.trace.samples;
    let time = |s: &RepSample| s.time_s;
    let start_s = samples
        .get(rep.trace.lift_start)
        .map_or(0.0, |sample| sample.time_s);
    let mut shades = Vec::new();
    if let Some(sticking) = rep.trace.sticking {
        shades.push(Shade {
            from: start_s + sticking.first_peak.time_s,
            to: start_s + sticking.minimum.time_s,
            label: "Sticking region".to_owned(),
        });
    }
    LineChart {
        heading: heading(rep, units),
        x: Axis::new("Time since the repetition began", "s").reaching(Extent::Data),
        panels: vec![
            velocity_panel(rep, samples, &time, markers_in_time(rep, start_s)),
            force_panel(rep, units, samples, &time),
        ],
        shades,
        ..LineChart::default()
    }
    .scene(look)
}

pub(crate) fn way(rep: &RepStudy, units: System, position: f64) -> f64 {
    let value = rep.across(position);
    match (rep.trace.measure, units) {
        (Measure::Force, System::Us) => value / 2.54,
        _ => value,
    }
}

/// The level axis from the start to the end of the lift, whether the load gets there or not.
pub(crate) fn whole_way(rep: &RepStudy, units: System) -> [f64; 2] {
    let end = |range: f64| OverRange::new(&rep.still, units).place(range);
    let (from, to) = (end(rep.options.from), end(rep.options.to));
    [from.min(to), from.max(to)]
}

pub(crate) fn velocity_panel(
    rep: &RepStudy,
    samples: &[RepSample],
    across: &dyn Fn(&RepSample) -> f64,
    markers: Vec<Marker>,
) -> Panel {
    let (_, factor) = velocity_unit(rep);
    Panel {
        axis: velocity_axis(rep, samples),
        series: vec![Series {
            name: "velocity".to_owned(),
            points: samples
                .iter()
                .map(|s| [across(s), factor * s.velocity])
                .collect(),
            role: Role::CAPACITY,
        }],
        markers,
        ..Panel::default()
    }
}

/// An axis that holds every velocity and carries three or four ticks.
pub(crate) fn velocity_axis<'a>(
    rep: &RepStudy,
    samples: impl IntoIterator<Item = &'a RepSample>,
) -> Axis {
    let (unit, factor) = velocity_unit(rep);
    let (least, most) = samples
        .into_iter()
        .map(|s| factor * s.velocity)
        .fold((0.0_f64, 0.0_f64), |(low, high), v| {
            (low.min(v), high.max(v))
        });
    // A load that does not move still gets an axis to stand on.
    let smallest = 0.1 * factor;
    let step = round_step((most.max(smallest) - least) / 3.0);
    let range = [
        step * (least / step + 1.0e-9).floor().min(0.0),
        step * (most.max(smallest) / step).ceil(),
    ];
    ticked(Axis::new("Velocity", unit), range, step)
}

/// The axis with its range and ticks fixed.
fn ticked(mut axis: Axis, range: [f64; 2], step: f64) -> Axis {
    let decimals = decimals_of_step(step);
    let (first, last) = (
        (range[0] / step).ceil() as i64,
        (range[1] / step + 1.0e-9) as i64,
    );
    axis.ticks = (first..=last)
        .map(|count| {
            let value = count as f64 * step;
            let decimals = if count == 0 { 0 } else { decimals };
            (value, number(value, decimals))
        })
        .collect();
    axis.reaching(Extent::Exactly(range))
}

/// The least of 1, 2, 5 times a power of ten that is not below a value.
fn round_step(value: f64) -> f64 {
    let power = 10_f64.powf(value.max(1.0e-9).log10().floor());
    let steps = [1.0, 2.0, 5.0, 10.0];
    let times = steps
        .into_iter()
        .find(|s| s * power >= value * (1.0 - 1.0e-9));
    times.unwrap_or(10.0) * power
}

pub(crate) fn velocity_unit(rep: &RepStudy) -> (&'static str, f64) {
    match rep.trace.measure {
        Measure::Force => ("m/s", 1.0),
        Measure::Torque => ("deg/s", 1.0_f64.to_degrees()),
    }
}

/// Name and unit of what the load is held with, and the factor on SI.
pub(crate) fn force_unit(rep: &RepStudy, units: System) -> (&'static str, &'static str, f64) {
    match (rep.trace.measure, units) {
        (Measure::Force, System::Metric) => ("Force", "N", 1.0),
        (Measure::Force, System::Us) => ("Force", "lbf", 1.0 / Force::from_lbf(1.0).as_n()),
        (Measure::Torque, _) => ("Torque", "N·m", 1.0),
    }
}

fn force_panel(
    rep: &RepStudy,
    units: System,
    samples: &[RepSample],
    across: &dyn Fn(&RepSample) -> f64,
) -> Panel {
    let (_, _, factor) = force_unit(rep, units);
    let line = |name: &str, role, value: &dyn Fn(&RepSample) -> f64| Series {
        name: name.to_owned(),
        points: samples
            .iter()
            .map(|s| [across(s), factor * value(s)])
            .collect(),
        role,
    };
    Panel {
        axis: force_axis(rep, units, samples.iter().flat_map(|s| [s.force, s.demand])),
        series: vec![
            line("on the load", Role::CAPACITY, &|s| s.force),
            line("load at rest", Role::DEMAND, &|s| s.demand),
        ],
        ..Panel::default()
    }
}

/// An axis around the load: what moves it is a tenth of what holds it, which an axis from zero hides.
pub(crate) fn force_axis(
    rep: &RepStudy,
    units: System,
    values: impl IntoIterator<Item = f64>,
) -> Axis {
    let (quantity, unit, factor) = force_unit(rep, units);
    let (least, most) = values
        .into_iter()
        .map(|value| factor * value)
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
            (low.min(value), high.max(value))
        });
    let most = if most.is_finite() { most.max(1.0) } else { 1.0 };
    let least = if least.is_finite() { least } else { 0.0 };
    let step = round_step((1.15 * most - least.min(0.8 * most)) / 3.0);
    let low = step * (least.min(0.8 * most) / step + 1.0e-9).floor();
    let high = step * (1.15 * most / step).ceil();
    ticked(Axis::new(quantity, unit), [low, high], step)
}

/// What the load asks for over the whole way, moved or not.
fn load_at_rest(rep: &RepStudy, units: System) -> Series {
    let values = &rep.still.setups[0].values;
    let last = (values.len() - 1) as f64;
    over_the_way(rep, units, "load at rest", Role::DEMAND, &|range| {
        values[(range * last).round() as usize]
    })
}

/// What full effort holds still at every place of the lift.
fn held_still(rep: &RepStudy, units: System) -> Series {
    let name = "most that is held still";
    over_the_way(rep, units, name, Role::EFFORT, &|range| rep.held_at(range))
}

/// A force at every pose of the lift, from its start to its end.
fn over_the_way(
    rep: &RepStudy,
    units: System,
    name: &str,
    role: Role,
    value: &dyn Fn(f64) -> f64,
) -> Series {
    let (_, _, factor) = force_unit(rep, units);
    let inside = |range: f64| range >= rep.options.from - 1e-9 && range <= rep.options.to + 1e-9;
    let poses = &rep.still.range.poses;
    let ranges = poses.iter().map(|pose| pose.load.range);
    Series {
        name: name.to_owned(),
        points: ranges
            .filter(|range| inside(*range))
            .map(|range| {
                let at = OverRange::new(&rep.still, units).place(range);
                [at, factor * value(range)]
            })
            .collect(),
        role,
    }
}

fn markers(rep: &RepStudy, units: System) -> Vec<Marker> {
    let (_, factor) = velocity_unit(rep);
    let Some(sticking) = rep.trace.sticking else {
        return Vec::new();
    };
    let mark = |at: crate::rep::Mark, text: &str| Marker {
        at: [way(rep, units, at.position), factor * at.velocity],
        text: text.to_owned(),
        detail: velocity_in_words(rep.trace.measure, at.velocity),
        role: Role::CAPACITY,
    };
    let mut markers = vec![mark(sticking.first_peak, "first peak")];
    markers.push(if rep.trace.is_lifted() {
        mark(sticking.minimum, "slowest")
    } else {
        Marker {
            detail: position_in_words(rep, sticking.minimum.position, units),
            ..mark(sticking.minimum, "stops")
        }
    });
    markers.extend(sticking.second_peak.map(|peak| mark(peak, "second peak")));
    markers
}

/// What holds against a load that does not leave its place.
fn stuck_marker(rep: &RepStudy, units: System) -> Vec<Marker> {
    let Outcome::Stalled { position, .. } = rep.trace.outcome else {
        return Vec::new();
    };
    let (_, _, factor) = force_unit(rep, units);
    let left = rep.trace.lifting().first().map_or(0.0, |s| s.enhancement);
    let held = rep.held_at(rep.options.from) * (1.0 + left);
    let (_, unit, _) = force_unit(rep, units);
    vec![Marker {
        at: [way(rep, units, position), factor * held],
        text: "all there is at the start".to_owned(),
        detail: format!(
            "{} {unit} with what lowering left",
            rounded(factor * held, 0)
        ),
        role: Role::CAPACITY,
    }]
}

fn markers_in_time(rep: &RepStudy, start_s: f64) -> Vec<Marker> {
    let (_, factor) = velocity_unit(rep);
    let Some(sticking) = rep.trace.sticking else {
        return Vec::new();
    };
    let mark = |at: crate::rep::Mark, text: &str| Marker {
        at: [start_s + at.time_s, factor * at.velocity],
        text: text.to_owned(),
        detail: velocity_in_words(rep.trace.measure, at.velocity),
        role: Role::CAPACITY,
    };
    let lowest = if rep.trace.is_lifted() {
        "slowest"
    } else {
        "stops"
    };
    vec![
        mark(sticking.first_peak, "first peak"),
        mark(sticking.minimum, lowest),
    ]
}

/// The sticking region in motion.
fn motion_shade(rep: &RepStudy, units: System) -> Vec<Shade> {
    let Some(sticking) = rep.trace.sticking else {
        return Vec::new();
    };
    let (a, b) = (
        way(rep, units, sticking.first_peak.position),
        way(rep, units, sticking.minimum.position),
    );
    vec![Shade {
        from: a.min(b),
        to: a.max(b),
        label: "Sticking region in motion".to_owned(),
    }]
}

/// The static sticking region, as far as the lift covers it.
fn still_span(rep: &RepStudy, units: System) -> Vec<Span> {
    let Some(still) = rep.still.setups.first().and_then(|s| s.sticking) else {
        return Vec::new();
    };
    let place = |range: f64| {
        let inside = range.clamp(rep.options.from, rep.options.to);
        OverRange::new(&rep.still, units).place(inside)
    };
    let (a, b) = (place(still.from_range), place(still.to_range));
    if (a - b).abs() < 1.0e-6 {
        return Vec::new();
    }
    vec![Span {
        from: a.min(b),
        to: a.max(b),
        label: "hardest held still".to_owned(),
        role: Role::EFFORT,
    }]
}

fn poses(rep: &RepStudy, units: System) -> Vec<StripPose> {
    let last = rep.still.range.poses.len() - 1;
    let pose = |range: f64, caption: &str| {
        let index = (range.clamp(0.0, 1.0) * last as f64).round() as usize;
        StripPose {
            at: OverRange::new(&rep.still, units).place(range),
            caption: caption.to_owned(),
            figure: stick_figure(&rep.still.range.poses[index], rep.still.range.carrier),
        }
    };
    let (from, to) = (rep.options.from, rep.options.to);
    let middle = match (rep.trace.outcome, rep.trace.sticking) {
        (Outcome::Stalled { .. }, _) if rep.is_stuck_at_start() => None,
        (Outcome::Stalled { range, .. }, _) => Some(pose(range, "stops")),
        (_, Some(sticking)) => Some(pose(sticking.minimum.range, "slowest")),
        _ => Some(pose(f64::midpoint(from, to), "middle")),
    };
    let start = match rep.is_stuck_at_start() {
        true => pose(from, "stays here"),
        false => pose(from, "start"),
    };
    let end = match rep.trace.is_lifted() {
        true => pose(to, "end"),
        false => pose(to, "end, not reached"),
    };
    [Some(start), middle, Some(end)]
        .into_iter()
        .flatten()
        .collect()
}

fn heading(rep: &RepStudy, units: System) -> Heading {
    Heading {
        title: rep_title(rep, units),
        subtitle: subtitle(rep, units),
        footnote: "In motion: first peak of velocity to the slowest place behind it. Held still: effort within 5 % of its greatest.".to_owned(),
        description: rep_sentences(rep, units).join(" "),
..super::sheet::phrases()
}
}
