//! Figures over two changed values as text, CSV and JSON.
//!
//! In: a [`PairGrid`] and the figure to tell. Out: text; numbers of CSV and JSON in SI.

use super::csv::{maybe, rows_to_csv};
use super::json::pretty;
use super::table::table;
use crate::narrative::comparison::compared_in_words;
use crate::narrative::variation_words::{pair_head, pair_heads, pair_rows};
use crate::study::{Compared, Conditions, Figures, PairGrid};
use crate::units::System;
use serde::Serialize;

/// A grid as text.
#[must_use]
pub fn grid_table(grid: &PairGrid, measure: Compared, asked: &Conditions, units: System) -> String {
    let heads = pair_heads(grid);
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    let rows = pair_rows(grid, measure, asked, units);
    format!(
        "{}\n\n{}",
        pair_head(grid, measure, asked, units),
        table(&heads, rows, 1)
    )
}

/// A grid as CSV: a row a pair.
#[must_use]
pub fn grid_csv(grid: &PairGrid, measure: Compared) -> String {
    let [x, y] = &grid.parameters;
    let header = [x.path.as_str(), y.path.as_str(), "value"];
    let rows = y.values.iter().zip(&grid.cells).flat_map(|(b, row)| {
        let pairs = x.values.iter().zip(row);
        pairs.map(move |(a, cell)| vec![a.clone(), b.clone(), maybe(value(cell, measure))])
    });
    rows_to_csv(&header, rows)
}

fn value(cell: &Option<Figures>, measure: Compared) -> Option<f64> {
    cell.as_ref()?.value(measure)
}

#[derive(Serialize)]
struct PairJson<'a> {
    across: PairedRow<'a>,
    upwards: PairedRow<'a>,
    measure: &'static str,
    present: Option<f64>,
    values: Vec<Vec<Option<f64>>>,
}

#[derive(Serialize)]
struct PairedRow<'a> {
    parameter: &'a str,
    values: &'a [String],
    values_si: &'a [f64],
}

/// A grid as JSON.
#[must_use]
pub fn grid_json(grid: &PairGrid, measure: Compared) -> String {
    let paired = |index: usize| PairedRow {
        parameter: &grid.parameters[index].path,
        values: &grid.parameters[index].values,
        values_si: &grid.places[index],
    };
    let row = |row: &Vec<Option<Figures>>| row.iter().map(|cell| value(cell, measure)).collect();
    pretty(&PairJson {
        across: paired(0),
        upwards: paired(1),
        measure: compared_in_words(measure),
        present: grid.base_figures.value(measure),
        values: grid.cells.iter().map(row).collect(),
    })
}
