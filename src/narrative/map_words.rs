//! A map of one figure over two changed values, in words.
//!
//! In: a [`PairGrid`], the figure, where it is best and how far it reaches. Out: the words around the map.

use super::comparison::{compared_of, shown_figure};
use super::figure_words::FigureWords;
use super::parameters::{parameter_in_words, shown_value};
use super::prose::capital;
use super::quantities::rounded;
use crate::study::{Compared, Conditions, PairGrid, Parameter};
use crate::units::System;

/// What the colour of a missing value means.
pub(crate) const CANNOT_BE_DONE: &str = "cannot be done";

/// The least and the best value of a map, in the unit shown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MapReach {
    /// The least value.
    pub least: f64,
    /// The best value.
    pub best: f64,
    /// Number of the best value's place across.
    pub column: usize,
    /// Number of the best value's place upwards.
    pub row: usize,
}

impl MapReach {
    fn figure(&self, value: f64) -> String {
        rounded(value, usize::from(self.best < 100.0))
    }

    /// The best value with its unit.
    #[must_use]
    pub(crate) fn best_in_words(&self, unit: &str) -> String {
        format!("{} {unit}", self.figure(self.best))
    }
}

/// The words around the map.
#[must_use]
pub fn map_words(
    grid: &PairGrid,
    measure: Compared,
    asked: &Conditions,
    units: System,
    reach: &MapReach,
) -> FigureWords {
    let shown = |value: f64| shown_figure(measure, value, &grid.base, asked, units);
    let unit = shown(1.0).1;
    let present = grid.base_figures.value(measure);
    let [x, y] = grid
        .parameters
        .each_ref()
        .map(|parameter| parameter_in_words(&parameter.path));
    let title = title(grid, measure, reach, unit);
    FigureWords {
        subtitle: format!(
            "{}: {}",
            grid.base.lifter_title,
            grid.base.movement_title.to_lowercase()
        ),
        footnote: format!(
            "As it is: {} {unit}.",
            present.map_or_else(String::new, |value| reach.figure(shown(value).0))
        ),
        description: format!(
            "A map of the {} over {x} and {y}. {title}.",
            compared_of(measure, &grid.base)
        ),
        title,
        caption: String::new(),
    }
}

fn title(grid: &PairGrid, measure: Compared, reach: &MapReach, unit: &str) -> String {
    let [x, y] = &grid.parameters;
    let on_border = |at: usize, parameter: &Parameter| at == 0 || at + 1 == parameter.values.len();
    let border = if on_border(reach.column, x) || on_border(reach.row, y) {
        ", on the border of what was tried"
    } else {
        ""
    };
    format!(
        "{} and {}: {} {} to {} {unit}, best at {} and {}{border}",
        capital(&parameter_in_words(&x.path)),
        parameter_in_words(&y.path),
        compared_of(measure, &grid.base),
        reach.figure(reach.least),
        reach.figure(reach.best),
        shown_value(&x.values[reach.column]),
        shown_value(&y.values[reach.row])
    )
}
