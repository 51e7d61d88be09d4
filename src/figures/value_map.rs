//! A map of one figure over two changed values.
//!
//! In: a [`PairGrid`] and the figure to show. Out: a chart.

use crate::error::{Error, Result};
use crate::narrative::comparison::{compared_in_words, shown_figure};
use crate::narrative::parameters::{parameter_in_words, shown_value};
use crate::narrative::prose::capital;
use crate::plot::{Axis, Extent, Heading, HeatMap, Marker, Role};
use crate::study::{Compared, Conditions, PairGrid};
use crate::units::{System, rounded};

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
    let values: Vec<Vec<Option<f64>>> = grid
        .cells
        .iter()
        .map(|row| {
            row.iter()
                .map(|cell| cell.as_ref()?.value(measure).map(|value| shown(value).0))
                .collect()
        })
        .collect();
    let mut cells = values.iter().enumerate().flat_map(|(row, cells)| {
        let known = cells.iter().enumerate();
        known.filter_map(move |(column, value)| Some((row, column, (*value)?)))
    });
    let first = cells.next().ok_or_else(|| {
        Error::no_answer(format!(
            "no pair of values has a {}",
            compared_in_words(measure)
        ))
    })?;
    let (mut best, mut least) = (first, first.2);
    for cell in cells {
        if cell.2 > best.2 {
            best = cell;
        }
        least = least.min(cell.2);
    }
    let unit = shown(1.0).1;
    let [x, y] = &grid.parameters;
    let decimals = usize::from(best.2 < 100.0);
    let figure = |value: f64| rounded(value, decimals);
    let title = format!(
        "{} and {}: {} {} to {} {unit}, best at {} and {}",
        capital(&parameter_in_words(&x.path)),
        parameter_in_words(&y.path),
        compared_in_words(measure),
        figure(least),
        figure(best.2),
        shown_value(&x.values[best.1]),
        shown_value(&y.values[best.0])
    );
    let [xs, ys] = grid.places.clone();
    let marker = Marker {
        at: [xs[best.1], ys[best.0]],
        text: format!("{} {unit}", figure(best.2)),
        detail: String::new(),
        role: Role::Reference,
    };
    Ok(HeatMap {
        heading: Heading {
            subtitle: format!(
                "{}: {}",
                grid.base.lifter_title,
                grid.base.movement_title.to_lowercase()
            ),
            footnote: format!(
                "As it is: {} {unit}.",
                grid.base_figures
                    .value(measure)
                    .map_or_else(String::new, |v| figure(shown(v).0))
            ),
            description: format!(
                "A map of the {} over {} and {}. {title}.",
                compared_in_words(measure),
                parameter_in_words(&x.path),
                parameter_in_words(&y.path)
            ),
            title,
            ..super::phrases()
        },
        x: axis(x, &xs),
        y: axis(y, &ys),
        xs,
        ys,
        values,
        colour: Axis::new(capital(compared_in_words(measure)), unit).reaching(Extent::Data),
        missing: "cannot be done".to_owned(),
        markers: vec![marker],
    })
}

/// An axis with the values as they were written.
fn axis(parameter: &crate::study::Parameter, places: &[f64]) -> Axis {
    Axis {
        ticks: places
            .iter()
            .zip(&parameter.values)
            .map(|(place, value)| (*place, shown_value(value)))
            .collect(),
        ..Axis::new(capital(&parameter_in_words(&parameter.path)), "").reaching(Extent::Data)
    }
}
