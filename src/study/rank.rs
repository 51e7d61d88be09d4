//! What matters: every value of the model that a movement uses, changed by the same relative amount.
//!
//! In: a workbench, settings, an amount. Out: [`Ranks`], the strongest first, those that change nothing
//! or cannot be changed told apart.

use super::compared::{Compared, Conditions, Figures};
use crate::bounds::bounds;
use crate::error::{ComparisonFault, Error, Result};
use crate::library::{NumberAt, Workbench, numeric_paths};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// A value of the model and what a change of it does.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranked {
    /// The value.
    pub number: NumberAt,
    /// Relative change of the measure when it is lowered, %.
    pub lowered_percent: f64,
    /// Relative change of the measure when it is raised, %.
    pub raised_percent: f64,
}

impl Ranked {
    /// The larger one of both changes without its sign, %.
    #[must_use]
    pub fn size_percent(&self) -> f64 {
        self.lowered_percent.abs().max(self.raised_percent.abs())
    }
}

/// Every value of a movement, ranked.
#[derive(Debug, Clone)]
pub struct Ranks {
    /// What the movement is called.
    pub movement_title: String,
    /// What the lifter is called.
    pub lifter_title: String,
    /// By how much every value was changed, %.
    pub by_percent: f64,
    /// What was measured.
    pub measure: Compared,
    /// The values that matter, the strongest first.
    pub rows: Vec<Ranked>,
    /// How many values change nothing that can be seen (less than a millionth).
    pub without_effect: usize,
    /// Values with which the movement cannot be done, or that may not be changed so far, and why.
    pub undone: Vec<(NumberAt, Error)>,
}

/// A change smaller than this is none, %.
const NOTHING_PERCENT: f64 = 1.0e-4;

/// Changes every value of the movement up and down by `by_percent` and ranks them.
///
/// **Shape.** For small amounts lowering and raising change the measure by opposite amounts.
/// **Fails** if the amount is outside 0.1 to 50 %, or the movement as it is has no measure.
pub fn rank(
    bench: &Workbench,
    sets: &[String],
    by_percent: f64,
    measure: Compared,
    asked: &Conditions,
) -> Result<Ranks> {
    check_amount(by_percent)?;
    let model = bench.model(sets)?;
    let study = asked.of(&model)?;
    let base = Figures::of(&study, asked)
        .value(measure)
        .filter(|value| *value != 0.0);
    let nothing = ComparisonFault::NothingToRank { compared: measure };
    let base = base.ok_or_else(|| Error::no_answer(nothing))?;
    let numbers: Vec<NumberAt> = numeric_paths(&model)
        .into_iter()
        .filter(|number| number.value != 0.0)
        .collect();
    let tried: Vec<(NumberAt, Result<[f64; 2]>)> = numbers
        .into_par_iter()
        .map(|number| {
            let both = changes(bench, sets, &number.path, by_percent, measure, asked);
            let percent = |value| 100.0 * (value / base - 1.0);
            (number, both.map(|both| both.map(percent)))
        })
        .collect();
    let ranks = Ranks {
        movement_title: study.movement_title,
        lifter_title: study.lifter_title,
        by_percent,
        measure,
        rows: Vec::new(),
        without_effect: 0,
        undone: Vec::new(),
    };
    Ok(ranks.with_all(tried))
}

fn check_amount(by_percent: f64) -> Result<()> {
    let bound = &bounds().ranked_change;
    if bound.holds(by_percent) {
        return Ok(());
    }
    Err(Error::bad(ComparisonFault::RankAmount {
        percent: by_percent,
        least_percent: bound.least(),
        most_percent: bound.most(),
    }))
}

impl Ranks {
    /// The same with what was tried, the strongest first.
    fn with_all(mut self, tried: Vec<(NumberAt, Result<[f64; 2]>)>) -> Self {
        for (number, result) in tried {
            match result {
                Ok([lowered_percent, raised_percent]) => {
                    self.add(number, lowered_percent, raised_percent)
                }
                Err(error) => self.undone.push((number, error)),
            }
        }
        // A stable sort: equal ones stay in the order of the model.
        self.rows
            .sort_by(|a, b| b.size_percent().total_cmp(&a.size_percent()));
        self
    }

    fn add(&mut self, number: NumberAt, lowered_percent: f64, raised_percent: f64) {
        let ranked = Ranked {
            number,
            lowered_percent,
            raised_percent,
        };
        if ranked.size_percent() < NOTHING_PERCENT {
            self.without_effect += 1;
        } else {
            self.rows.push(ranked);
        }
    }
}

/// The measure with the value lowered and raised.
fn changes(
    bench: &Workbench,
    sets: &[String],
    path: &str,
    by_percent: f64,
    measure: Compared,
    asked: &Conditions,
) -> Result<[f64; 2]> {
    let changed = |sign: &str| -> Result<f64> {
        let mut all = sets.to_vec();
        all.push(format!("{path}={sign}{by_percent}%"));
        let study = asked.of(&bench.model(&all)?)?;
        Figures::of(&study, asked)
            .value(measure)
            .ok_or_else(|| Error::no_answer(ComparisonFault::NoFigureWithIt { compared: measure }))
    };
    Ok([changed("-")?, changed("+")?])
}
