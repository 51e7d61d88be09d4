//! A repetition with bands or chains beside one with plain weight of the same hardest effort.
//!
//! In: a [`VersusPlain`]. Out: velocity and load of both over the way.

use super::over_range::OverRange;
use super::rep_trace::{force_axis, force_unit, velocity_axis, velocity_unit, way, whole_way};
use crate::draw::Scene;
use crate::error::Result;
use crate::movement::Measure;
use crate::narrative::prose::percent;
use crate::narrative::versus_plain_words::{setup_name, versus_sentences, versus_title};
use crate::plot::{Axis, Extent, Heading, LineChart, Look, Panel, Role, Series, Span};
use crate::rep::RepSample;
use crate::study::{RepStudy, VersusPlain};
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
            title: versus_title(both, units),
            subtitle: format!(
                "{}: {} against {}, both {} of what is held still at their hardest place",
                both.with.still.lifter_title,
                setup_name(&both.with, units),
                setup_name(&both.plain, units),
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

fn panel(
    both: &VersusPlain,
    units: System,
    axis: Axis,
    value: &dyn Fn(&RepSample) -> f64,
) -> Panel {
    let line = |rep: &RepStudy, role| Series {
        name: setup_name(rep, units),
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
