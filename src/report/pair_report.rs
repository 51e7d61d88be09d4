//! Figures over two changed values as text, CSV and JSON.
//!
//! In: a [`PairGrid`] and the figure to tell. Out: text; numbers of CSV and JSON in SI.

use super::family_data::{FigureCells, figure_cell};
use super::json::pretty;
use super::table::table;
use super::tidy_table::{Cells, TidyTable};
use crate::narrative::comparison::compared_in_words;
use crate::narrative::variation_words::{pair_head, pair_heads, pair_rows};
use crate::study::{Compared, Conditions, PairGrid};
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

/// A grid as a table: a row a pair.
#[must_use]
pub fn grid_data(grid: &PairGrid, measure: Compared) -> TidyTable {
    let [across, upwards] = &grid.parameters;
    let named = Cells::of(&PairNamed {
        across: &across.path,
        upwards: &upwards.path,
    });
    TidyTable::of(pairs(grid, measure).map(|pair| named.clone().and(&pair)))
}

/// Every pair of values with its figure: the first parameter across, the second upwards.
fn pairs(grid: &PairGrid, measure: Compared) -> impl Iterator<Item = PairRow<'_>> {
    let [across, upwards] = &grid.parameters;
    let [across_si, upwards_si] = &grid.places;
    let base = (&grid.base_figures, grid.base.range.measure);
    let rows = upwards.values.iter().zip(upwards_si).zip(&grid.cells);
    rows.flat_map(move |((above, above_si), row)| {
        let cells = across.values.iter().zip(across_si).zip(row);
        cells.map(move |((aside, aside_si), cell)| PairRow {
            across_value: aside,
            across_value_si: *aside_si,
            upwards_value: above,
            upwards_value_si: *above_si,
            figure: figure_cell(cell.as_ref(), measure, base),
        })
    })
}

#[derive(Serialize)]
struct PairNamed<'a> {
    across: &'a str,
    upwards: &'a str,
}

#[derive(Serialize)]
struct PairRow<'a> {
    across_value: &'a str,
    across_value_si: f64,
    upwards_value: &'a str,
    upwards_value_si: f64,
    #[serde(flatten)]
    figure: FigureCells,
}

#[derive(Serialize)]
struct PairJson<'a> {
    across: &'a str,
    upwards: &'a str,
    measure: &'static str,
    baseline: FigureCells,
    cells: Vec<PairRow<'a>>,
}

/// A grid as JSON.
#[must_use]
pub fn grid_json(grid: &PairGrid, measure: Compared) -> String {
    let [across, upwards] = &grid.parameters;
    let base = (&grid.base_figures, grid.base.range.measure);
    pretty(&PairJson {
        across: &across.path,
        upwards: &upwards.path,
        measure: compared_in_words(measure),
        baseline: figure_cell(Some(&grid.base_figures), measure, base),
        cells: pairs(grid, measure).collect(),
    })
}
