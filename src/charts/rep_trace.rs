//! A repetition in motion: velocity and force over the way of the load, or over time.
//!
//! In: a [`RepStudy`]. Out: charts with both sticking regions, the one in motion and the static one.

use super::body::stick_figure;
use super::strength_curve::level_axis;
use super::{Axis, Extent, Heading, LineChart, Look, Marker, Panel, Pose, Role, Series, Shade};
use crate::draw::Scene;
use crate::error::Result;
use crate::movement::Measure;
use crate::rep::{Outcome, RepSample};
use crate::study::RepStudy;
use crate::units::{System, rounded};

/// Velocity and force of the lift over the way of the load.
///
/// **Fails** if the repetition has no lift (it was handed over or lost in lowering).
pub fn rep_over_way(rep: &RepStudy, units: System, look: Look) -> Result<Scene> {
    let lift = rep.trace.lifting();
    let way = |s: &RepSample| way(rep, units, s.position);
    LineChart {
        heading: heading(rep, units),
        x: level_axis(&rep.still, units).reaching(Extent::Data),
        panels: vec![
            velocity_panel(rep, lift, &way, markers(rep, units)),
            force_panel(rep, lift, &way),
        ],
        shades: shades(rep, units),
        poses: poses(rep, units),
        ..LineChart::default()
    }
    .scene(look)
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
        x: Axis::new("Time", "s").reaching(Extent::Data),
        panels: vec![
            velocity_panel(rep, samples, &time, Vec::new()),
            force_panel(rep, samples, &time),
        ],
        shades,
        ..LineChart::default()
    }
    .scene(look)
}

fn way(rep: &RepStudy, units: System, position: f64) -> f64 {
    let value = rep.across(position);
    match (rep.trace.measure, units) {
        (Measure::Force, System::Us) => value / 2.54,
        _ => value,
    }
}

fn velocity_panel(
    rep: &RepStudy,
    samples: &[RepSample],
    across: &dyn Fn(&RepSample) -> f64,
    markers: Vec<Marker>,
) -> Panel {
    let (unit, factor) = velocity_unit(rep);
    let lowers = samples.iter().any(|s| s.velocity < -1e-9);
    let axis = Axis::new("Velocity", unit);
    Panel {
        axis: if lowers {
            axis.reaching(Extent::Data)
        } else {
            axis
        },
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

fn velocity_unit(rep: &RepStudy) -> (&'static str, f64) {
    match rep.trace.measure {
        Measure::Force => ("m/s", 1.0),
        Measure::Torque => ("deg/s", 1.0_f64.to_degrees()),
    }
}

fn force_panel(rep: &RepStudy, samples: &[RepSample], across: &dyn Fn(&RepSample) -> f64) -> Panel {
    let (quantity, unit) = match rep.trace.measure {
        Measure::Force => ("Force", "N"),
        Measure::Torque => ("Torque", "N·m"),
    };
    let line = |name: &str, role, value: &dyn Fn(&RepSample) -> f64| Series {
        name: name.to_owned(),
        points: samples.iter().map(|s| [across(s), value(s)]).collect(),
        role,
    };
    let top = samples
        .iter()
        .map(|s| s.force.max(s.demand))
        .fold(0.0, f64::max);
    Panel {
        axis: Axis::new(quantity, unit).reaching(Extent::FromZeroTo(1.25 * top.max(1.0))),
        series: vec![
            line("on the load", Role::CAPACITY, &|s| s.force),
            line("load at rest", Role::DEMAND, &|s| s.demand),
        ],
        ..Panel::default()
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
        detail: rep.velocity_in_words(at.velocity),
        role: Role::CAPACITY,
    };
    let lowest = if rep.trace.is_lifted() {
        "slowest"
    } else {
        "stops"
    };
    let mut markers = vec![
        mark(sticking.first_peak, "first peak"),
        mark(sticking.minimum, lowest),
    ];
    markers.extend(sticking.second_peak.map(|peak| mark(peak, "second peak")));
    markers
}

fn shades(rep: &RepStudy, units: System) -> Vec<Shade> {
    let mut shades = Vec::new();
    if let Some(sticking) = rep.trace.sticking {
        shades.push(shade(
            way(rep, units, sticking.first_peak.position),
            way(rep, units, sticking.minimum.position),
            "Sticks in motion",
        ));
    }
    if let Some(still) = rep.still.setups.first().and_then(|s| s.sticking) {
        let place = |range: f64| super::strength_curve::across(&rep.still, units, range);
        shades.push(shade(
            place(still.from_range),
            place(still.to_range),
            "Hardest held still",
        ));
    }
    shades
}

fn shade(a: f64, b: f64, label: &str) -> Shade {
    Shade {
        from: a.min(b),
        to: a.max(b),
        label: label.to_owned(),
    }
}

fn poses(rep: &RepStudy, units: System) -> Vec<Pose> {
    let last = rep.still.range.poses.len() - 1;
    let pose = |range: f64, caption: &str| {
        let index = (range.clamp(0.0, 1.0) * last as f64).round() as usize;
        Pose {
            at: super::strength_curve::across(&rep.still, units, range),
            caption: caption.to_owned(),
            figure: stick_figure(&rep.still.range.poses[index], rep.still.range.carrier),
        }
    };
    let mut poses = vec![pose(rep.options.from, "start")];
    match (rep.trace.outcome, rep.trace.sticking) {
        (Outcome::Stalled { range, .. }, _) => poses.push(pose(range, "stops")),
        (_, Some(sticking)) => poses.push(pose(sticking.minimum.range, "slowest")),
        _ => poses.push(pose(
            f64::midpoint(rep.options.from, rep.options.to),
            "middle",
        )),
    }
    if rep.trace.is_lifted() {
        poses.push(pose(rep.options.to, "end"));
    }
    poses
}

fn heading(rep: &RepStudy, units: System) -> Heading {
    Heading {
        title: rep_title(rep, units),
        subtitle: subtitle(rep, units),
        footnote: "Lifted with everything from the turn-round. Sticks in motion: from the first peak of velocity to the slowest place after it.".to_owned(),
        description: rep_sentences(rep, units).join(" "),
    }
}

/// The finding in one sentence.
#[must_use]
pub fn rep_title(rep: &RepStudy, units: System) -> String {
    let name = &rep.still.movement_title;
    match (rep.trace.outcome, rep.trace.sticking) {
        (Outcome::Stalled { position, .. }, _) => {
            format!(
                "{name}: the load stops {}",
                rep.place_in_words(position, units)
            )
        }
        (Outcome::LostInLowering { position, .. }, _) => format!(
            "{name}: the load gets away in lowering, {}",
            rep.place_in_words(position, units)
        ),
        (Outcome::HandedOver, _) => format!("{name}: lowered under control and handed over"),
        (Outcome::Lockout, Some(sticking)) => format!(
            "{name}: slowest {}",
            rep.place_in_words(sticking.minimum.position, units)
        ),
        (Outcome::Lockout, None) => format!("{name}: the load never slows on the way"),
    }
}

fn subtitle(rep: &RepStudy, units: System) -> String {
    let mut words = format!("{}, {}", rep.still.lifter_title, units.mass(rep.load));
    if let Some(share) = rep.share() {
        words += &format!(" ({} % of the maximum)", rounded(100.0 * share, 0));
    }
    if let Some(lift) = rep.trace.lift.filter(|_| rep.trace.is_lifted()) {
        words += &format!(
            ", {} s, mean velocity {}",
            rounded(lift.time_s, 1),
            rep.velocity_in_words(lift.mean_velocity)
        );
    }
    words
}

/// What happened, in sentences, the static region beside the one in motion.
#[must_use]
pub fn rep_sentences(rep: &RepStudy, units: System) -> Vec<String> {
    let mut lines = vec![rep_title(rep, units) + "."];
    let still = rep.still.setups.first().and_then(|s| s.sticking);
    if let Some(sticking) = rep.trace.sticking {
        lines.push(format!(
            "In motion it slows from {} ({} after {} s) to {} ({} after {} s).",
            rep.place_in_words(sticking.first_peak.position, units),
            rep.velocity_in_words(sticking.first_peak.velocity),
            rounded(sticking.first_peak.time_s, 2),
            rep.place_in_words(sticking.minimum.position, units),
            rep.velocity_in_words(sticking.minimum.velocity),
            rounded(sticking.minimum.time_s, 2),
        ));
        if let Some(still) = still {
            lines.push(difference(
                rep,
                units,
                sticking.minimum.range,
                still.point_range,
            ));
        }
    } else if let Some(still) = still.filter(|_| rep.trace.is_lifted()) {
        lines.push(format!(
            "Held still it is hardest {}; in motion the load is light enough that its velocity has no dip.",
            rep.still.place_in_words(still.point_range, units)
        ));
    }
    lines
}

/// Why the place of least velocity is not the place of greatest effort.
fn difference(rep: &RepStudy, units: System, moving: f64, still: f64) -> String {
    let place = rep.still.place_in_words(still, units);
    if (moving - still).abs() < 0.03 {
        return format!("Held still it is hardest at the same place, {place}.");
    }
    if moving > still {
        format!(
            "Held still it is hardest {place}: in motion the load goes on slowing for as long as the \
             lifter's force at that speed, with what lowering left behind fading, is below the load, so \
             it is slowest later."
        )
    } else {
        format!(
            "Held still it is hardest {place}: in motion the load is slowest earlier, where it has not \
             yet gained speed."
        )
    }
}
