//! What two changed values do together: a grid of figures for a map.
//!
//! In: a workbench, settings, two parameters with their values, a load. Out: [`PairGrid`].

use super::compared::{Conditions, Figures};
use super::family::{check_part, with};
use super::parameter::Parameter;
use super::question::Study;
use crate::error::{ComparisonFault, Error, Result};
use crate::library::{Workbench, get};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// Figures over two parameters.
#[derive(Debug, Clone)]
pub struct PairGrid {
    /// The parameters: across, then upwards.
    pub parameters: [Parameter; 2],
    /// Their values in SI, rising; by number for words.
    pub places: [Vec<f64>; 2],
    /// The model as it is.
    pub base: Study,
    /// Its figures.
    pub base_figures: Figures,
    /// Figures by value of the second, then of the first parameter; `None` where it cannot be done.
    pub cells: Vec<Vec<Option<Figures>>>,
}

/// Varies two parameters together.
///
/// **Fails** on a path or value that does not fit, a parameter of one value, or when no pair can be done.
pub fn pair_grid(
    bench: &Workbench,
    sets: &[String],
    parameters: [Parameter; 2],
    asked: &Conditions,
) -> Result<PairGrid> {
    if parameters[0].path == parameters[1].path {
        return Err(Error::bad(ComparisonFault::VariedAgainstItself {
            path: parameters[0].path.clone(),
        }));
    }
    for parameter in &parameters {
        parameter.check_at_least(2)?;
    }
    let base_model = bench.model(sets)?;
    for parameter in &parameters {
        if get(&base_model, &parameter.path).is_ok() {
            check_part(bench, &base_model, &parameter.path)?;
        }
    }
    let base = asked.of(&base_model)?;
    let base_figures = Figures::of(&base, asked);
    let [across, upwards] = [&parameters[0], &parameters[1]].map(|p| ordered(bench, sets, p));
    let ((x, xs), (y, ys)) = (across?, upwards?);
    let tried: Vec<Result<Option<Figures>>> = (0..x.values.len() * y.values.len())
        .into_par_iter()
        .map(|cell| {
            let (column, row) = (cell % x.values.len(), cell / x.values.len());
            let both = with(&with(sets, x.setting(column)), y.setting(row));
            let study = bench
                .model_in_steps(&both)
                .and_then(|model| asked.of(&model));
            match study {
                Ok(study) => Ok(Some(Figures::of(&study, asked))),
                Err(error) if error.exit_status() == 1 => Ok(None),
                Err(error) => Err(error),
            }
        })
        .collect();
    let cells: Vec<Option<Figures>> = tried.into_iter().collect::<Result<_>>()?;
    if cells.iter().all(Option::is_none) {
        return Err(Error::no_answer(ComparisonFault::NoPair));
    }
    Ok(PairGrid {
        cells: cells.chunks(x.values.len()).map(<[_]>::to_vec).collect(),
        parameters: [x, y],
        places: [xs, ys],
        base,
        base_figures,
    })
}

/// The parameter with its values in rising order, and the values in SI (numbered where they are words).
fn ordered(
    bench: &Workbench,
    sets: &[String],
    parameter: &Parameter,
) -> Result<(Parameter, Vec<f64>)> {
    let mut pairs = Vec::new();
    for (index, text) in parameter.values.iter().enumerate() {
        let model = bench.model_in_steps(&with(sets, parameter.setting(index)))?;
        let value = get(&model, &parameter.path).map_or(index as f64, |number| number.value);
        pairs.push((value, text.clone()));
    }
    pairs.sort_by(|a, b| a.0.total_cmp(&b.0));
    if let Some(pair) = pairs.windows(2).find(|pair| pair[0].0 == pair[1].0) {
        return Err(Error::bad(ComparisonFault::SameValue {
            first: pair[0].1.clone(),
            other: pair[1].1.clone(),
            path: parameter.path.clone(),
        }));
    }
    let (places, values) = pairs.into_iter().unzip();
    Ok((
        Parameter {
            path: parameter.path.clone(),
            values,
        },
        places,
    ))
}
