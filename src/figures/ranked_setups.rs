//! The first three setups of a ranking against plain weight: effort over the range.
//!
//! In: a [`PickAnswer`]. Out: a scene whose title says what the first one gains, and where it was hardest.

use super::over_range::OverRange;
use super::sheet::heading;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::ranking_words::{
    REGION_OF_FIRST, REGION_OF_PLAIN, numbered_setup, plain_setup, ranking_words,
};
use crate::plot::{Axis, Extent, Labels, LineChart, Look, Panel, Role, Series, Span};
use crate::study::{PickAnswer, Picked};
use crate::units::System;

/// Setups that are drawn beside plain weight.
const SHOWN: usize = 3;

/// The figure of a ranking.
///
/// **Fails** never for a pick that has an answer.
pub fn setup_ranking(pick: &PickAnswer, units: System, look: Look) -> Result<Scene> {
    let shown = &pick.ranked[..pick.ranked.len().min(SHOWN)];
    let over = OverRange::new(&pick.study, units);
    let panel = Panel {
        spans: spans(pick, &over),
        ..Panel::new(
            Axis::new("Effort", "%").reaching(Extent::FromZero),
            series(pick, shown, &over),
        )
    };
    LineChart {
        heading: heading(&ranking_words(pick, shown, units)),
        labels: Labels::Column,
        ..LineChart::new(over.axis(), vec![panel])
    }
    .scene(look)
}

fn series(pick: &PickAnswer, shown: &[Picked], over: &OverRange<'_>) -> Vec<Series> {
    let curve = |picked: &Picked, name: String, role: Role| {
        Series::new(name, over.effort_points(&picked.study.effort), role)
    };
    let setups = shown.iter().enumerate().map(|(index, picked)| {
        let name = numbered_setup(index, pick, picked, over.told.units);
        curve(picked, name, Role::Series(index + 1))
    });
    let plain = compared(pick)
        .map(|plain| curve(plain, plain_setup(plain, over.told.units), Role::Reference));
    setups.chain(plain).collect()
}

/// Plain weight, unless that is number 1 itself.
fn compared(pick: &PickAnswer) -> Option<&Picked> {
    pick.plain
        .as_ref()
        .filter(|_| pick.ranked[0].loaded.hung > 0)
}

/// The sticking regions before and after: of plain weight and of the first setup.
fn spans(pick: &PickAnswer, over: &OverRange<'_>) -> Vec<Span> {
    let span = |picked: &Picked, label: &str, role: Role| {
        let sticking = picked.study.sticking?;
        Some(Span::between(over.region(&sticking), label, role))
    };
    let plain = compared(pick).and_then(|plain| span(plain, REGION_OF_PLAIN, Role::Reference));
    let first = pick.ranked.first();
    let first = first.and_then(|first| span(first, REGION_OF_FIRST, Role::Series(1)));
    plain.into_iter().chain(first).collect()
}
