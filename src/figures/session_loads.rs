//! A planned session's load and repetitions, set by set.
//!
//! In: a plan. Out: a scene of bars, warm-ups lighter, and the maximum as a line.

use super::sheet::heading;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::session_figure_words::{SETS, groups_over_bar, loads_words, one_rm_line};
use crate::narrative::shown_units::ShownUnits;
use crate::plot::{Axis, Extent, Fill, LevelLine, LineChart, Look, Marker, Panel, Role, Series};
use crate::session::draft::SessionPlan;
use crate::session::planned_set::{PlannedSet, SetKind};
use crate::units::System;

/// Half the width of a set's bar on an axis that counts sets.
const HALF_BAR: f64 = 0.38;
/// Room above the heaviest load for its repetitions.
const ROOM_ABOVE: f64 = 1.16;

/// Load and repetitions of every set, warm-ups lighter.
///
/// **Fails** only where the canvas is too small.
pub fn loads_chart(plan: &SessionPlan, units: System, look: Look) -> Result<Scene> {
    let draft = &plan.draft;
    let unit = units.mass_unit();
    let value = |set: &PlannedSet| unit.of(set.load.total.as_kg());
    let one_rm = unit.of(draft.lift.one_rm.as_kg());
    let top = draft.sets.iter().map(value).fold(one_rm, f64::max);
    let axis = Axis::new("Load", unit.symbol).reaching(Extent::FromZeroTo(ROOM_ABOVE * top));
    let mut panel = Panel {
        levels: vec![LevelLine::new(
            one_rm,
            one_rm_line(draft.lift.one_rm, units),
        )],
        ..Panel::new(axis, Vec::new())
    };
    for (index, set) in draft.sets.iter().enumerate() {
        bar(&mut panel, set, index as f64 + 1.0, value(set));
    }
    LineChart {
        heading: heading(&loads_words(plan, units)),
        ..LineChart::new(set_axis(&draft.sets), vec![panel])
    }
    .scene(look)
}

/// Sets side by side, the working ones by number.
fn set_axis(sets: &[PlannedSet]) -> Axis {
    let mut x = Axis::new(SETS, "").reaching(Extent::Exactly([0.4, sets.len() as f64 + 0.6]));
    let mut number = 0;
    for (index, set) in sets.iter().enumerate() {
        let word = match set.kind {
            SetKind::Work => {
                number += 1;
                number.to_string()
            }
            SetKind::WarmUp => "w".to_owned(),
        };
        x.ticks.push((index as f64 + 1.0, word));
    }
    x
}

fn bar(panel: &mut Panel, set: &PlannedSet, at: f64, value: f64) {
    let role = match set.kind {
        SetKind::Work => Role::CAPACITY,
        SetKind::WarmUp => Role::Muted,
    };
    let (left, right) = (at - HALF_BAR, at + HALF_BAR);
    panel.fills.push(Fill {
        upper: vec![[left, value], [right, value]],
        lower: vec![[left, 0.0], [right, 0.0]],
        role,
    });
    let outline = vec![[left, 0.0], [left, value], [right, value], [right, 0.0]];
    panel.series.push(Series::new("", outline, role));
    let repetitions = groups_over_bar(set);
    panel
        .markers
        .push(Marker::new([at, value], repetitions, role));
}
