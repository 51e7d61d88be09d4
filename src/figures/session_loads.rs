//! A planned session's load and repetitions, set by set.
//!
//! In: a plan. Out: a scene of bars, warm-ups lighter, and the maximum as a line.

use super::data_table::{DataTable, figure};
use super::sheet::{Chart, Sheet, heading};
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::session_figure_words::{
    FELT, PYRAMID_CAPTION, SETS, felt_of, groups_in_bar, loads_words, one_rm_line,
};
use crate::narrative::shown_units::ShownUnits;
use crate::narrative::trend_words::invented;
use crate::plot::{Axis, Extent, Fill, LevelLine, LineChart, Look, Marker, Panel, Role, Series};
use crate::session::draft::{Draft, SessionPlan};
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
    load_bars(plan, units).scene(look)
}

/// The loads of the lecture's pyramid.
#[must_use]
pub fn pyramid_sheet(plan: &SessionPlan, units: System) -> Sheet {
    let mut chart = load_bars(plan, units);
    chart.heading.subtitle = invented(&chart.heading.subtitle);
    Sheet {
        data: sets_table(&plan.draft),
        ..Sheet::new(Chart::Lines(chart), PYRAMID_CAPTION)
    }
}

/// Warm-ups as w1, w2 and working sets by number, with the maximum, load and repetitions.
fn sets_table(draft: &Draft) -> DataTable {
    let (mut warm, mut work) = (0, 0);
    let one_rm = figure(draft.lift.one_rm.as_kg());
    let rows = draft.sets.iter().map(|set| {
        let name = match set.kind {
            SetKind::Work => {
                work += 1;
                work.to_string()
            }
            SetKind::WarmUp => {
                warm += 1;
                format!("w{warm}")
            }
        };
        let load = figure(set.load.total.as_kg());
        vec![name, one_rm.clone(), load, set.repetitions().to_string()]
    });
    DataTable {
        header: ["set", "one_rm_kg", "load_kg", "repetitions"]
            .map(str::to_owned)
            .to_vec(),
        rows: rows.collect(),
    }
}

fn load_bars(plan: &SessionPlan, units: System) -> LineChart {
    let draft = &plan.draft;
    let unit = units.mass_unit();
    let value = |set: &PlannedSet| unit.of(set.load.total.as_kg());
    let greatest = |set: &PlannedSet| {
        let felt = felt_of(set).map_or(0.0, |felt| unit.of(felt[2].as_kg().max(felt[0].as_kg())));
        value(set).max(felt)
    };
    let one_rm = unit.of(draft.lift.one_rm.as_kg());
    let top = draft.sets.iter().map(greatest).fold(one_rm, f64::max);
    let axis = Axis::new("Load", unit.symbol).reaching(Extent::FromZeroTo(ROOM_ABOVE * top));
    let mut panel = Panel {
        levels: vec![LevelLine::new(
            one_rm,
            one_rm_line(draft.lift.one_rm, units),
        )],
        ..Panel::new(axis, Vec::new())
    };
    for (index, set) in draft.sets.iter().enumerate() {
        bar(&mut panel, set, index as f64 + 1.0, value(set), units);
    }
    LineChart {
        heading: heading(&loads_words(plan, units)),
        ..LineChart::new(set_axis(&draft.sets), vec![panel])
    }
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

/// The upper edge of a set's bar, and its outline.
pub(crate) fn bar_of_set(at: f64, value: f64) -> [Vec<[f64; 2]>; 2] {
    let (left, right) = (at - HALF_BAR, at + HALF_BAR);
    [
        vec![[left, value], [right, value]],
        vec![[left, 0.0], [left, value], [right, value], [right, 0.0]],
    ]
}

fn bar(panel: &mut Panel, set: &PlannedSet, at: f64, value: f64, units: System) {
    let role = match set.kind {
        SetKind::Work => Role::CAPACITY,
        SetKind::WarmUp => Role::Muted,
    };
    let [upper, outline] = bar_of_set(at, value);
    panel.fills.push(Fill {
        lower: upper.iter().map(|point| [point[0], 0.0]).collect(),
        upper,
        role,
    });
    panel
        .bar_words
        .push(Marker::new([at, value], groups_in_bar(set), role));
    panel.series.push(Series::new("", outline, role));
    // What is on the bar is not what is felt: with bands from above less, with bands and chains below more.
    if let Some(felt) = felt_of(set) {
        let [low, high] = [felt[0], felt[2]].map(|mass| units.mass_unit().of(mass.as_kg()));
        let is_first = panel
            .series
            .iter()
            .all(|series| series.role != Role::DEMAND);
        let name = if is_first { FELT } else { "" };
        panel
            .series
            .push(Series::new(name, vec![[at, low], [at, high]], Role::DEMAND));
    }
}
