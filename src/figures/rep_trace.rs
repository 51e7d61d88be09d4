//! A repetition in motion: velocity and force over the way of the load, or over time.
//!
//! In: a [`RepStudy`]. Out: charts with both sticking regions, the one in motion and the static one.

use super::over_way::OverWay;
use super::sheet::heading;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::motion_words::{
    HARDEST_STILL, LOAD_AT_REST, MOST_HELD, MarkKind, NOT_REACHED, ON_LOAD, REGION,
    REGION_IN_MOTION, STAYS, TIME_SINCE_START, mark_in_time, mark_label, rep_figure_words,
    stuck_label,
};
use crate::plot::{
    Axis, Extent, LineChart, Look, Marker, Panel, Role, Series, Shade, Span, StripPose, Time,
};
use crate::rep::{Mark, RepEnd, RepSample};
use crate::study::RepStudy;
use crate::units::System;

/// Room below zero for one bar and its name, as a share of the axis.
const SPAN_ROOM: f64 = 0.24;

/// Velocity and force of the lift over the way of the load.
///
/// A repetition without a lift (handed over, or lost in lowering) is drawn over time. **Fails** if nothing moves.
pub fn rep_over_way(rep: &RepStudy, units: System, look: Look) -> Result<Scene> {
    // A load that is handed over or lost in lowering has no lift: all that moves is over time.
    if rep.trace.lifting().len() < 2 && !rep.is_stuck_at_start() {
        return rep_over_time(rep, units, look);
    }
    let over = OverWay::new(rep, units);
    let panels = if rep.is_stuck_at_start() {
        // Nothing moves: what the load asks for above what full effort holds is all there is to see.
        vec![stuck_panel(&over)]
    } else {
        vec![moving_panel(&over), force_panel(&over)]
    };
    let region = rep
        .trace
        .sticking
        .as_ref()
        .map(|sticking| over.region(sticking));
    let shade = region.map(|ends| Shade::between(ends, REGION_IN_MOTION));
    LineChart {
        heading: heading(&rep_figure_words(rep, units)),
        shades: shade.into_iter().collect(),
        poses: poses(&over),
        ..LineChart::new(over.axis(), panels)
    }
    .scene(look)
}

/// Velocity over the way, the static sticking region as a bar below its zero line.
fn moving_panel(over: &OverWay<'_>) -> Panel {
    let rep = over.rep;
    let unit = over.velocity();
    let points = over.lifting(&|sample| unit.of(sample.velocity));
    let mut panel = Panel {
        markers: markers(over),
        spans: still_span(over),
        ..Panel::new(
            over.velocity_axis(rep.trace.lifting()),
            vec![Series::new("velocity", points, Role::CAPACITY)],
        )
    };
    if let (Extent::Exactly([low, high]), false) = (panel.axis.extent, panel.spans.is_empty()) {
        panel.axis.extent = Extent::Exactly([low - SPAN_ROOM * (high - low), high]);
    }
    panel
}

/// Force on the load, what the load asks for, what full effort holds.
fn force_panel(over: &OverWay<'_>) -> Panel {
    let unit = over.load();
    let samples = over.rep.trace.lifting();
    let points = over.lifting(&|sample| unit.of(sample.force));
    let mut series = vec![Series::new(ON_LOAD, points, Role::CAPACITY)];
    series.extend(still_forces(over));
    let values = samples.iter().flat_map(|s| [s.force, s.demand]);
    Panel::new(over.load_axis(values), series)
}

fn stuck_panel(over: &OverWay<'_>) -> Panel {
    let samples = over.rep.trace.lifting();
    let values = samples.iter().flat_map(|s| [s.force, s.demand]);
    Panel {
        spans: still_span(over),
        markers: stuck_marker(over).into_iter().collect(),
        ..Panel::new(over.load_axis(values), still_forces(over).to_vec())
    }
}

/// What the load asks for over the whole way, moved or not, and what full effort holds still there.
fn still_forces(over: &OverWay<'_>) -> [Series; 2] {
    let rep = over.rep;
    let values = &rep.still.setups[0].values;
    let last = (values.len() - 1) as f64;
    let asked = over.over_poses(&|range| values[(range * last).round() as usize]);
    let held = over.over_poses(&|range| rep.held_at(range));
    [
        Series::new(LOAD_AT_REST, asked, Role::DEMAND),
        Series::new(MOST_HELD, held, Role::EFFORT),
    ]
}

/// Velocity and force of the whole repetition over time.
///
/// **Fails** if nothing moved.
pub fn rep_over_time(rep: &RepStudy, units: System, look: Look) -> Result<Scene> {
    let over = OverWay::new(rep, units);
    let samples = &rep.trace.samples;
    let start_s = samples
        .get(rep.trace.lift_start)
        .map_or(0.0, |sample| sample.time_s);
    let region = rep
        .trace
        .sticking
        .map(|sticking| [sticking.first_peak, sticking.minimum].map(|mark| start_s + mark.time_s));
    LineChart {
        heading: heading(&rep_figure_words(rep, units)),
        shades: region
            .map(|ends| Shade::between(ends, REGION))
            .into_iter()
            .collect(),
        ..LineChart::new(
            Axis::new(TIME_SINCE_START, "s")
                .reaching(Extent::Data)
                .timed(Time::Rising),
            timed_panels(&over, start_s),
        )
    }
    .scene(look)
}

fn timed_panels(over: &OverWay<'_>, start_s: f64) -> Vec<Panel> {
    let samples = &over.rep.trace.samples;
    let (velocity, load) = (over.velocity(), over.load());
    let curve = |name: &str, role, value: &dyn Fn(&RepSample) -> f64| {
        let points = samples.iter().map(|sample| [sample.time_s, value(sample)]);
        Series::new(name, points.collect(), role)
    };
    let moving = curve("velocity", Role::CAPACITY, &|s| velocity.of(s.velocity));
    let forces = vec![
        curve(ON_LOAD, Role::CAPACITY, &|s| load.of(s.force)),
        curve(LOAD_AT_REST, Role::DEMAND, &|s| load.of(s.demand)),
    ];
    let values = samples.iter().flat_map(|s| [s.force, s.demand]);
    vec![
        Panel {
            markers: markers_in_time(over, start_s),
            ..Panel::new(over.velocity_axis(samples), vec![moving])
        },
        Panel::new(over.load_axis(values), forces),
    ]
}

fn markers(over: &OverWay<'_>) -> Vec<Marker> {
    let Some(sticking) = over.rep.trace.sticking else {
        return Vec::new();
    };
    let marker = |kind: MarkKind, mark: Mark| {
        let (text, detail) = mark_label(over.rep, kind, mark, over.units);
        let at = [over.way(mark.position), over.velocity().of(mark.velocity)];
        Marker::new(at, text, Role::CAPACITY).detailed(detail)
    };
    let second = sticking.second_peak;
    [
        Some(marker(MarkKind::FirstPeak, sticking.first_peak)),
        Some(marker(MarkKind::Slowest, sticking.minimum)),
        second.map(|peak| marker(MarkKind::SecondPeak, peak)),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn markers_in_time(over: &OverWay<'_>, start_s: f64) -> Vec<Marker> {
    let Some(sticking) = over.rep.trace.sticking else {
        return Vec::new();
    };
    let marker = |kind: MarkKind, mark: Mark| {
        let (text, detail) = mark_in_time(over.rep, kind, mark);
        let at = [start_s + mark.time_s, over.velocity().of(mark.velocity)];
        Marker::new(at, text, Role::CAPACITY).detailed(detail)
    };
    vec![
        marker(MarkKind::FirstPeak, sticking.first_peak),
        marker(MarkKind::Slowest, sticking.minimum),
    ]
}

/// What holds against a load that does not leave its place.
fn stuck_marker(over: &OverWay<'_>) -> Option<Marker> {
    let rep = over.rep;
    let RepEnd::Stalled { position, .. } = rep.trace.outcome else {
        return None;
    };
    let left = rep.trace.lifting().first().map_or(0.0, |s| s.enhancement);
    let held = rep.held_at(rep.options.from) * (1.0 + left);
    let (text, detail) = stuck_label(rep, held, over.units);
    let at = [over.way(position), over.load().of(held)];
    Some(Marker::new(at, text, Role::CAPACITY).detailed(detail))
}

/// The static sticking region, as far as the lift covers it.
fn still_span(over: &OverWay<'_>) -> Vec<Span> {
    let still = over.rep.still.setups.first().and_then(|s| s.sticking);
    let ends = still.map(|sticking| over.still_region(&sticking));
    ends.filter(|[from, to]| (from - to).abs() >= 1.0e-6)
        .map(|ends| Span::between(ends, HARDEST_STILL, Role::EFFORT))
        .into_iter()
        .collect()
}

/// Start, slowest or last place, end.
fn poses(over: &OverWay<'_>) -> Vec<StripPose> {
    let rep = over.rep;
    let pose = |range: f64, caption: &str| over.still().pose(range, caption);
    let (from, to) = (rep.options.from, rep.options.to);
    let is_stuck = rep.is_stuck_at_start();
    let middle = match (rep.trace.outcome, rep.trace.sticking) {
        (RepEnd::Stalled { .. }, _) if is_stuck => None,
        (RepEnd::Stalled { range, .. }, _) => Some(pose(range, "stops")),
        (_, Some(sticking)) => Some(pose(sticking.minimum.range, "slowest")),
        _ => Some(pose(f64::midpoint(from, to), "middle")),
    };
    let start = pose(from, if is_stuck { STAYS } else { "start" });
    let reached = rep.trace.is_lifted();
    let end = pose(to, if reached { "end" } else { NOT_REACHED });
    [Some(start), middle, Some(end)]
        .into_iter()
        .flatten()
        .collect()
}
