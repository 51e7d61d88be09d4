//! A repetition with bands or chains beside one with plain weight of the same hardest effort.
//!
//! In: a [`VersusPlain`]. Out: velocity and load of both over the way, and what changed in sentences.

use super::over_range::OverRange;
use super::rep_trace::{force_axis, force_unit, velocity_axis, velocity_unit, way, whole_way};
use crate::draw::Scene;
use crate::error::Result;
use crate::movement::Measure;
use crate::narrative::name_of;
use crate::narrative::places::{place_in_words, velocity_in_words};
use crate::narrative::prose::percent;
use crate::plot::{Axis, Extent, Heading, LineChart, Look, Panel, Role, Series, Span};
use crate::rep::RepSample;
use crate::study::{LiftShape, RepStudy, VersusPlain};
use crate::units::{System, rounded};

/// Both lifts over the way of the load.
///
/// **Fails** if neither has a lift.
pub fn rep_versus_plain(both: &VersusPlain, units: System, look: Look) -> Result<Scene> {
    let lines = versus_sentences(both, units);
    let all = || {
        let with = both.with.trace.lifting().iter();
        with.chain(both.plain.trace.lifting())
    };
    let (_, factor) = velocity_unit(&both.with);
    let mut velocity = panel(both, units, velocity_axis(&both.with, all()), &|s| {
        factor * s.velocity
    });
    velocity.spans = spans(both, units);
    if let Extent::Exactly([low, high]) = velocity.axis.extent {
        let room = 0.22 * velocity.spans.len() as f64;
        velocity.axis.extent = Extent::Exactly([low - room * (high - low), high]);
    }
    let (_, _, factor) = force_unit(&both.with, units);
    let axis = force_axis(&both.with, units, all().map(|s| s.demand));
    let mut load = panel(both, units, axis, &|s| factor * s.demand);
    load.axis.quantity = match both.with.trace.measure {
        Measure::Force => "Load at rest".to_owned(),
        Measure::Torque => "Torque of the load".to_owned(),
    };
    for series in &mut load.series {
        series.name.clear();
    }
    LineChart {
        heading: Heading {
            title: title(both, units),
            subtitle: format!(
                "{}: {} against {}, both {} of what is held still at their hardest place",
                both.with.still.lifter_title,
                named(&both.with, units),
                named(&both.plain, units),
                percent(both.effort)
            ),
            footnote: "Full effort from the turn-round. Bars: sticking regions in motion."
                .to_owned(),
            description: lines.join(" "),
            ..super::sheet::phrases()
        },
        x: OverRange::new(&both.with.still, units)
            .axis()
            .reaching(Extent::Exactly(whole_way(&both.with, units))),
        panels: vec![velocity, load],
        ..LineChart::default()
    }
    .scene(look)
}

fn named(rep: &RepStudy, units: System) -> String {
    name_of(&rep.still, &rep.still.setups[0], units)
}

fn panel(
    both: &VersusPlain,
    units: System,
    axis: Axis,
    value: &dyn Fn(&RepSample) -> f64,
) -> Panel {
    let line = |rep: &RepStudy, role| Series {
        name: named(rep, units),
        points: rep
            .trace
            .lifting()
            .iter()
            .map(|s| [way(rep, units, s.position), value(s)])
            .collect(),
        role,
    };
    Panel {
        axis,
        series: vec![
            line(&both.with, Role::Series(0)),
            line(&both.plain, Role::Series(1)),
        ],
        ..Panel::default()
    }
}

fn spans(both: &VersusPlain, units: System) -> Vec<Span> {
    [
        (&both.with, Role::Series(0)),
        (&both.plain, Role::Series(1)),
    ]
    .into_iter()
    .filter_map(|(rep, role)| {
        let sticking = rep.trace.sticking?;
        let place = |at: crate::rep::Mark| way(rep, units, at.position);
        let (a, b) = (place(sticking.first_peak), place(sticking.minimum));
        Some(Span {
            from: a.min(b),
            to: a.max(b),
            label: format!("sticks {} s", rounded(sticking.duration_s(), 2)),
            role,
        })
    })
    .collect()
}

fn title(both: &VersusPlain, units: System) -> String {
    let name = &both.with.still.movement_title;
    let (Some(with), Some(plain)) = (LiftShape::of(&both.with), LiftShape::of(&both.plain)) else {
        return format!("{name}: one of the two setups is not lifted");
    };
    let region = match (with.region, plain.region) {
        (Some((_, a)), Some((_, b))) => Some(shift(both, units, a, b)),
        (None, Some(_)) => Some("no sticking region any more".to_owned()),
        (Some(_), None) => Some("a sticking region appears".to_owned()),
        (None, None) => None,
    };
    let change = with.end_velocity / plain.end_velocity.max(1.0e-9) - 1.0;
    let end = if change < -0.02 {
        format!("ends {} slower", percent(-change))
    } else if change > 0.02 {
        format!("ends {} faster", percent(change))
    } else {
        "ends as fast".to_owned()
    };
    let parts: Vec<String> = region.into_iter().chain([end]).collect();
    format!("{name} at equal effort: {}", parts.join(", "))
}

/// How the slowest place moves along the way.
fn shift(both: &VersusPlain, units: System, with: f64, plain: f64) -> String {
    let still = &both.with.still;
    let apart = (still.axis_value(with) - still.axis_value(plain)).abs();
    let unit = match (both.with.trace.measure, units) {
        (Measure::Torque, _) => "deg",
        (Measure::Force, System::Metric) => "cm",
        (Measure::Force, System::Us) => "in",
    };
    let apart = if unit == "in" { apart / 2.54 } else { apart };
    match apart.round() as i64 {
        0 => "slowest at the same place".to_owned(),
        _ if with > plain => format!("slowest {} {unit} later", rounded(apart, 0)),
        _ => format!("slowest {} {unit} earlier", rounded(apart, 0)),
    }
}

/// What bands and chains do to the lift, in sentences.
#[must_use]
pub fn versus_sentences(both: &VersusPlain, units: System) -> Vec<String> {
    let (with, plain) = (&both.with, &both.plain);
    let mut lines = vec![format!(
        "At the same hardest effort ({} of what is held still): {} against {}.",
        percent(both.effort),
        named(with, units),
        named(plain, units)
    )];
    let (Some(a), Some(b)) = (LiftShape::of(with), LiftShape::of(plain)) else {
        for rep in [with, plain] {
            lines.push(format!("{}.", crate::narrative::rep_title(rep, units)));
        }
        return lines;
    };
    let velocity = |v: f64| velocity_in_words(with.trace.measure, v);
    let place = |range: f64| place_in_words(&with.still, range, units);
    lines.push(format!(
        "Peak velocity: {} {} against {} {}.",
        velocity(a.peak_velocity),
        place(a.peak_range),
        velocity(b.peak_velocity),
        place(b.peak_range)
    ));
    let region = |shape: &LiftShape| match shape.region {
        Some((from, to)) => format!(
            "{} s, from {} to {}",
            rounded(shape.region_s, 2),
            rounded(with.still.axis_value(from), 0),
            place(to)
        ),
        None => "none".to_owned(),
    };
    lines.push(format!(
        "Sticking region in motion: {}, against {} with plain weight.",
        region(&a),
        region(&b)
    ));
    lines.push(format!(
        "End of the lift (last fifth of the way): {} against {}; the load there asks for {} % of plain weight's.",
        velocity(a.end_velocity),
        velocity(b.end_velocity),
        rounded(100.0 * a.end_demand / b.end_demand.max(1.0e-9), 0)
    ));
    lines.push(format!(
        "Whole lift: {} s at {} on average, against {} s at {}.",
        rounded(a.time_s, 2),
        velocity(a.mean_velocity),
        rounded(b.time_s, 2),
        velocity(b.mean_velocity)
    ));
    lines
}
