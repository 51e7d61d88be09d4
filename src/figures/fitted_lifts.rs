//! What a fitted person is expected to lift: every lift with its interval, before the measurements and after.
//!
//! In: a [`PersonFit`], units. Out: a scene.

use super::sheet::heading;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::fit_words::{INTERVAL_KEY, MAXIMUM_AXIS, fit_figure_words};
use crate::narrative::shown_units::ShownUnits;
use crate::plot::{Axis, IntervalChart, IntervalRow, Look};
use crate::study::PersonFit;
use crate::units::System;

/// The chart of a fit, the heaviest lift on top.
///
/// **Fails** if the canvas is too small for it.
pub fn fitted_lifts(fit: &PersonFit, units: System, look: Look) -> Result<Scene> {
    let unit = units.mass_unit();
    let mut rows: Vec<IntervalRow> = fit
        .lifts
        .iter()
        .map(|lift| IntervalRow {
            name: lift.title.clone(),
            before: lift.loads_before_kg().map(|kg| unit.of(kg)),
            now: lift.loads_kg().map(|kg| unit.of(kg)),
            is_measured: lift.measured > 0,
        })
        .collect();
    rows.sort_by(|a, b| b.now[1].total_cmp(&a.now[1]));
    IntervalChart {
        heading: heading(&fit_figure_words(fit, units)),
        axis: Axis::new(MAXIMUM_AXIS, unit.symbol),
        key: INTERVAL_KEY.map(str::to_owned),
        decimals: 0,
        rows,
    }
    .scene(look)
}
