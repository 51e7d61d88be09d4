//! Several planned sessions side by side: a block's days, or one session of every method.
//!
//! In: sessions. Out: small panels on shared axes, each with the load of every set and the maximum as a line.

use super::session_loads::bar_of_set;
use super::sheet::heading;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::prose::capital;
use crate::narrative::session_figure_words::felt_of;
use crate::narrative::session_panel_words::{LOAD_OF_SET, SET_NUMBER, sessions_words};
use crate::narrative::session_words::session_name;
use crate::narrative::shown_units::ShownUnits;
use crate::plot::{Axis, Extent, Fill, Look, Role, Series, SmallMultiples, SmallPanel};
use crate::session::planned_set::SetKind;
use crate::study::PlannedSession;
use crate::units::System;

/// Ticks of the level axis of a panel, about.
const TICKS: usize = 4;
/// Room above the heaviest load.
const ROOM_ABOVE: f64 = 1.08;

/// Loads of all sessions, a panel each.
///
/// **Fails** where there are more sessions than panels that can be told apart, or the canvas is too small.
pub fn sessions_chart(sessions: &[PlannedSession], units: System, look: Look) -> Result<Scene> {
    let unit = units.mass_unit();
    let one_rm = |session: &PlannedSession| unit.of(session.plan.draft.lift.one_rm.as_kg());
    let tops = sessions.iter().flat_map(|session| {
        let sets = session.plan.draft.sets.iter();
        let loads = sets.map(|set| felt_of(set).map_or(set.load.total, |felt| felt[2]));
        loads
            .map(|load| unit.of(load.as_kg()))
            .chain([one_rm(session)])
    });
    let top = tops.fold(0.0, f64::max);
    let most_sets = sessions
        .iter()
        .map(|session| session.plan.draft.sets.len())
        .max()
        .unwrap_or(1);
    let ends = [0.4, most_sets as f64 + 0.6];
    let x = Axis {
        ticks: (1..=most_sets)
            .step_by((most_sets / TICKS).max(1))
            .map(|number| (number as f64, number.to_string()))
            .collect(),
        ..Axis::new(SET_NUMBER, "").reaching(Extent::Exactly(ends))
    };
    SmallMultiples {
        heading: heading(&sessions_words(sessions, units)),
        x,
        y: Axis::new(LOAD_OF_SET, unit.symbol).reaching(Extent::FromZeroTo(ROOM_ABOVE * top)),
        panels: sessions
            .iter()
            .map(|session| panel(session, [ends[0], ends[1], one_rm(session)], units))
            .collect(),
        columns: None,
    }
    .scene(look)
}

/// The bars of one session and the line of its maximum.
fn panel(session: &PlannedSession, [from, to, one_rm]: [f64; 3], units: System) -> SmallPanel {
    let unit = units.mass_unit();
    let mut panel = SmallPanel {
        title: capital(&session_name(session.name)),
        ..SmallPanel::default()
    };
    for (index, set) in session.plan.draft.sets.iter().enumerate() {
        let role = match set.kind {
            SetKind::Work => Role::CAPACITY,
            SetKind::WarmUp => Role::Muted,
        };
        let at = index as f64 + 1.0;
        let value = unit.of(set.load.total.as_kg());
        let [fill, outline] = bar_of_set(at, value);
        panel.fills.push(Fill {
            role,
            ..fill_of(fill)
        });
        panel.series.push(Series::new("", outline, role));
        if let Some(felt) = felt_of(set) {
            let ends = [felt[0], felt[2]].map(|mass| [at, unit.of(mass.as_kg())]);
            panel
                .series
                .push(Series::new("", ends.to_vec(), Role::DEMAND));
        }
    }
    let line = vec![[from, one_rm], [to, one_rm]];
    panel.series.push(Series::new("1RM", line, Role::Reference));
    panel
}

/// An area between a bar's top and zero.
fn fill_of(upper: Vec<[f64; 2]>) -> Fill {
    Fill {
        lower: upper.iter().map(|point| [point[0], 0.0]).collect(),
        upper,
        role: Role::Muted,
    }
}
