//! Figures over two changed values, as table, CSV and JSON.
//!
//! In: a [`PairGrid`] and the figure to tell. Out: text.

use super::csv::rows_to_csv;
use super::json::pretty;
use super::table::table;
use crate::error::Result;
use crate::narrative::comparison::{compared_in_words, shown_figure};
use crate::narrative::parameters::shown_value;
use crate::narrative::quantities::rounded;
use crate::study::{Compared, Conditions, PairGrid};
use crate::units::System;
use serde_json::json;

/// A grid as rows of text: the second parameter downwards, the first across.
fn grid_rows(
    grid: &PairGrid,
    shown: impl Fn(f64) -> String,
    measure: Compared,
) -> Vec<Vec<String>> {
    grid.parameters[1]
        .values
        .iter()
        .zip(&grid.cells)
        .map(|(name, row)| {
            let cells = row.iter().map(|cell| {
                let value = cell.as_ref().and_then(|figures| figures.value(measure));
                value.map_or_else(|| "-".to_owned(), &shown)
            });
            std::iter::once(shown_value(name)).chain(cells).collect()
        })
        .collect()
}

/// A grid as text.
#[must_use]
pub fn grid_table(grid: &PairGrid, measure: Compared, asked: &Conditions, units: System) -> String {
    let [x, y] = &grid.parameters;
    let corner = format!("{} \\ {}", y.path, x.path);
    let names: Vec<String> = x.values.iter().map(|value| shown_value(value)).collect();
    let mut header = vec![corner.as_str()];
    header.extend(names.iter().map(String::as_str));
    let decimals = if asked.load.is_some() { 2 } else { 1 };
    let shown = |value: f64| {
        rounded(
            shown_figure(measure, value, &grid.base, asked, units).0,
            decimals,
        )
    };
    format!(
        "{} in {}; as it is {}\n\n{}",
        compared_in_words(measure),
        shown_figure(measure, 0.0, &grid.base, asked, units).1,
        grid.base_figures
            .value(measure)
            .map_or_else(|| "none".to_owned(), shown),
        table(&header, grid_rows(grid, shown, measure), 1)
    )
}

/// A grid as CSV: a row a pair, SI units.
pub fn grid_csv(grid: &PairGrid, measure: Compared) -> Result<String> {
    let [x, y] = &grid.parameters;
    let header = [x.path.as_str(), y.path.as_str(), "value"];
    let rows = y.values.iter().zip(&grid.cells).flat_map(|(b, row)| {
        x.values.iter().zip(row).map(move |(a, cell)| {
            let value = cell.as_ref().and_then(|figures| figures.value(measure));
            vec![
                a.clone(),
                b.clone(),
                value.map_or_else(String::new, |v| v.to_string()),
            ]
        })
    });
    rows_to_csv(&header, rows)
}

/// A grid as JSON.
pub fn grid_json(grid: &PairGrid, measure: Compared) -> Result<String> {
    let parameter = |index: usize| {
        let parameter = &grid.parameters[index];
        json!({
            "parameter": parameter.path,
            "values": parameter.values,
            "values_si": grid.places[index],
        })
    };
    let cells: Vec<Vec<Option<f64>>> = grid
        .cells
        .iter()
        .map(|row| {
            row.iter()
                .map(|cell| cell.as_ref()?.value(measure))
                .collect()
        })
        .collect();
    pretty(&json!({
        "across": parameter(0),
        "upwards": parameter(1),
        "measure": compared_in_words(measure),
        "present": grid.base_figures.value(measure),
        "values": cells,
    }))
}
