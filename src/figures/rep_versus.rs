//! A repetition with bands or chains beside one with plain weight of the same hardest effort.
//!
//! In: a [`VersusPlain`]. Out: velocity of both over the way, with their sticking regions.

use super::over_range::hung_role;
use super::over_way::OverWay;
use super::sheet::Sheet;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::versus_plain_words::{
    HARDEST_STILL, setup_name, stuck_for, versus_figure_words,
};
use crate::plot::{Extent, LineChart, Look, Panel, Role, Series, Shade, Span};
use crate::rep::RepSample;
use crate::study::{RepStudy, VersusPlain};
use crate::units::System;

/// Room below the curves for the bar of one sticking region, as a share of the axis.
const SPAN_ROOM: f64 = 0.14;

/// Both lifts over the way of the load.
///
/// **Fails** if neither has a lift.
pub fn rep_versus_plain(both: &VersusPlain, units: System, look: Look) -> Result<Scene> {
    versus_sheet(both, units).chart.scene(look)
}

/// The same with its words, for a set of figures.
#[must_use]
pub fn versus_sheet(both: &VersusPlain, units: System) -> Sheet {
    let over = OverWay::new(&both.with, units);
    let words = versus_figure_words(both, units);
    let hardest = both.plain.still.setups[0].sticking;
    let shade = hardest.map(|still| Shade::between(over.still_region(&still), HARDEST_STILL));
    let chart = LineChart {
        shades: shade.into_iter().collect(),
        ..LineChart::new(over.axis(), vec![velocity_panel(both, &over)])
    };
    Sheet::lines(&words, chart).under(&both.with.still)
}

/// Velocity of both, their sticking regions as bars below.
fn velocity_panel(both: &VersusPlain, over: &OverWay<'_>) -> Panel {
    let unit = over.velocity();
    let mut axis = over.velocity_axis(all(both));
    let spans = spans(both, over.units);
    if let Extent::Exactly([low, high]) = axis.extent {
        let room = SPAN_ROOM * spans.len() as f64;
        axis.extent = Extent::Exactly([low - room * (high - low), high]);
    }
    Panel {
        spans,
        ..Panel::new(axis, curves(both, over.units, &|s| unit.of(s.velocity)))
    }
}

/// Samples of both lifts.
fn all(both: &VersusPlain) -> impl Iterator<Item = &RepSample> {
    let with = both.with.trace.lifting().iter();
    with.chain(both.plain.trace.lifting())
}

fn lifts(both: &VersusPlain) -> [(&RepStudy, Role); 2] {
    [&both.with, &both.plain].map(|rep| (rep, hung_role(&rep.still.setups[0].demand.setup)))
}

fn curves(both: &VersusPlain, units: System, value: &dyn Fn(&RepSample) -> f64) -> Vec<Series> {
    let curve = |(rep, role): (&RepStudy, Role)| {
        let points = OverWay::new(rep, units).lifting(value);
        Series::new(setup_name(rep, units), points, role)
    };
    lifts(both).map(curve).to_vec()
}

fn spans(both: &VersusPlain, units: System) -> Vec<Span> {
    let span = |(rep, role): (&RepStudy, Role)| {
        let sticking = rep.trace.sticking?;
        let ends = OverWay::new(rep, units).region(&sticking);
        Some(Span::between(ends, stuck_for(&sticking), role))
    };
    lifts(both).into_iter().filter_map(span).collect()
}
