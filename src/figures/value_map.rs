//! A map of one figure over two changed values.
//!
//! In: a [`PairGrid`] and the figure to show. Out: a chart.

use super::sheet::heading;
use crate::error::{Error, FigureFault, Result};
use crate::narrative::comparison::{compared_in_words, shown_figure};
use crate::narrative::map_words::{CANNOT_BE_DONE, MapReach, map_words};
use crate::narrative::parameters::{parameter_in_words, shown_value};
use crate::narrative::prose::capital;
use crate::plot::{Axis, Extent, HeatMap, Marker, Role};
use crate::study::{Compared, Conditions, PairGrid, Parameter};
use crate::units::System;

/// The map.
///
/// **Fails** if no pair of values has the figure.
pub fn value_map(
    grid: &PairGrid,
    measure: Compared,
    asked: &Conditions,
    units: System,
) -> Result<HeatMap> {
    let shown = |value: f64| shown_figure(measure, value, &grid.base, asked, units);
    let row = |cells: &Vec<_>| -> Vec<Option<f64>> {
        let figure = |cell: &Option<crate::study::Figures>| cell.as_ref()?.value(measure);
        cells
            .iter()
            .map(|cell| figure(cell).map(|value| shown(value).0))
            .collect()
    };
    let values: Vec<Vec<Option<f64>>> = grid.cells.iter().map(row).collect();
    let fault = || Error::no_answer(FigureFault::NoPair(measure));
    let reach = reach(&values).ok_or_else(fault)?;
    let unit = shown(1.0).1;
    let [x, y] = &grid.parameters;
    let [xs, ys] = grid.places.clone();
    let best = [xs[reach.column], ys[reach.row]];
    Ok(HeatMap {
        heading: heading(&map_words(grid, measure, asked, units, &reach)),
        x: axis(x, &xs),
        y: axis(y, &ys),
        xs,
        ys,
        values,
        colour: Axis::new(capital(compared_in_words(measure)), unit).reaching(Extent::Data),
        missing: CANNOT_BE_DONE.to_owned(),
        markers: vec![Marker::new(
            best,
            reach.best_in_words(unit),
            Role::Reference,
        )],
    })
}

/// The least and the best value; none where there is no value.
fn reach(values: &[Vec<Option<f64>>]) -> Option<MapReach> {
    let mut reach: Option<MapReach> = None;
    for (row, cells) in values.iter().enumerate() {
        for (column, value) in cells.iter().enumerate() {
            let Some(value) = *value else { continue };
            let known = reach.get_or_insert(MapReach {
                least: value,
                best: value,
                column,
                row,
            });
            known.least = known.least.min(value);
            if value > known.best {
                (known.best, known.column, known.row) = (value, column, row);
            }
        }
    }
    reach
}

/// An axis with the values as they were written.
fn axis(parameter: &Parameter, places: &[f64]) -> Axis {
    Axis {
        ticks: places
            .iter()
            .zip(&parameter.values)
            .map(|(place, value)| (*place, shown_value(value)))
            .collect(),
        ..Axis::new(capital(&parameter_in_words(&parameter.path)), "").reaching(Extent::Data)
    }
}
