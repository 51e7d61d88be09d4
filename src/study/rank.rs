//! What matters: every value of the model that a movement uses, changed by the same relative amount.
//!
//! In: a workbench, settings, an amount. Out: [`Ranks`], the strongest first, each with where it comes from;
//! those that change nothing or cannot be changed told apart.

use super::compared::{Compared, Conditions, Figures};
use crate::bounds::bounds;
use crate::error::{ComparisonFault, Error, Result};
use crate::library::{NumberAt, Provenance, Workbench, numeric_paths};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// A value of the model and what a change of it does.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranked {
    /// The value.
    pub number: NumberAt,
    /// How far it was changed.
    pub by: RankStep,
    /// Where it comes from.
    pub from: Provenance,
    /// Relative change of the measure when it is lowered, %; `None` where it cannot be lowered so far.
    pub lowered_percent: Option<f64>,
    /// Relative change of the measure when it is raised, %; `None` where it cannot be raised so far.
    pub raised_percent: Option<f64>,
}

impl Ranked {
    /// The larger one of both changes without its sign, %.
    #[must_use]
    pub fn size_percent(&self) -> f64 {
        let both = [self.lowered_percent, self.raised_percent];
        both.into_iter()
            .flatten()
            .fold(0.0, |most, percent| most.max(percent.abs()))
    }

    /// Whether a person sets it, by how the lift is done.
    #[must_use]
    pub fn is_technique(&self) -> bool {
        self.number.path.starts_with("technique.")
    }
}

/// By how much a value is lowered and raised.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RankStep {
    /// By a share of itself, %.
    Percent(f64),
    /// By an amount in its SI unit: a place or an angle is counted from a zero that means nothing, so a share of
    /// it would depend on where that zero lies.
    Amount(f64),
}

/// Angle and length whose share is the amount by which places are changed: 5 % of them are 5 deg and 1 cm.
/// Assumed: about what a technique varies by, and what a place on a bone is known to.
const WHOLE_ANGLE_RAD: f64 = 100.0 * std::f64::consts::PI / 180.0;
const WHOLE_LENGTH_M: f64 = 0.2;

impl RankStep {
    /// The step of a value.
    ///
    /// ```text
    /// share · value     sizes (masses, forces, lengths of fibres and segments, …)
    /// share · whole     where that is more: angles and places of technique, path and lines; anything that is 0
    /// ```
    /// `whole` 100 deg, 20 cm or 1. **Shape.** Never none. **Fails.** Never.
    #[must_use]
    pub fn of(number: &NumberAt, by_percent: f64) -> Self {
        let whole = match number.unit {
            "rad" => WHOLE_ANGLE_RAD,
            "m" => WHOLE_LENGTH_M,
            _ => 1.0,
        };
        let counted = is_place(&number.path) && matches!(number.unit, "rad" | "m");
        if number.value == 0.0 || counted && number.value.abs() < whole {
            Self::Amount(0.01 * by_percent * whole)
        } else {
            Self::Percent(by_percent)
        }
    }

    /// The setting that lowers (−1) or raises (1) a value.
    fn setting(self, number: &NumberAt, sense: f64) -> String {
        let path = &number.path;
        match self {
            Self::Percent(percent) => {
                let sign = if sense < 0.0 { "-" } else { "+" };
                format!("{path}={sign}{percent}%")
            }
            Self::Amount(amount) => {
                let value = number.value + sense * amount;
                format!("{path}={value} {}", number.unit)
                    .trim_end()
                    .to_owned()
            }
        }
    }
}

/// Whether a value is a place or an angle that is counted from a zero of our choice.
fn is_place(path: &str) -> bool {
    let mut parts = path.split('.');
    match parts.next() {
        Some("technique") => true,
        Some("movement") => parts.next() == Some("path"),
        Some("muscles") => parts.any(|part| part == "origin" || part == "insertion"),
        _ => false,
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
    /// Values that change nothing that can be seen (less than a millionth), in the order of the model.
    pub without_effect: Vec<NumberAt>,
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
    let tried: Vec<TriedValue> = numeric_paths(&model)
        .into_par_iter()
        .map(|number| {
            let by = RankStep::of(&number, by_percent);
            let changed = |sense: f64| -> Result<f64> {
                let value = changed(bench, sets, by.setting(&number, sense), measure, asked)?;
                Ok(100.0 * (value / base - 1.0))
            };
            let (lowered, raised) = (changed(-1.0), changed(1.0));
            let from = bench.provenance(&number.path)?;
            Ok((number, by, from, [lowered, raised]))
        })
        .collect::<Result<_>>()?;
    let ranks = Ranks {
        movement_title: study.movement_title,
        lifter_title: study.lifter_title,
        by_percent,
        measure,
        rows: Vec::new(),
        without_effect: Vec::new(),
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
    fn with_all(mut self, tried: Vec<TriedValue>) -> Self {
        for (number, by, from, both) in tried {
            match both {
                [Err(error), Err(_)] => self.undone.push((number, error)),
                [lowered, raised] => self.add(Ranked {
                    number,
                    by,
                    from,
                    lowered_percent: lowered.ok(),
                    raised_percent: raised.ok(),
                }),
            }
        }
        // A stable sort: equal ones stay in the order of the model.
        self.rows
            .sort_by(|a, b| b.size_percent().total_cmp(&a.size_percent()));
        self
    }

    fn add(&mut self, ranked: Ranked) {
        if ranked.size_percent() < NOTHING_PERCENT {
            self.without_effect.push(ranked.number);
        } else {
            self.rows.push(ranked);
        }
    }
}

/// A value, its step, where it comes from, and the change of the measure with it lowered and raised.
type TriedValue = (NumberAt, RankStep, Provenance, [Result<f64>; 2]);

/// The measure with one more setting.
fn changed(
    bench: &Workbench,
    sets: &[String],
    setting: String,
    measure: Compared,
    asked: &Conditions,
) -> Result<f64> {
    let mut all = sets.to_vec();
    all.push(setting);
    let study = asked.of(&bench.model_in_steps(&all)?)?;
    Figures::of(&study, asked)
        .value(measure)
        .ok_or_else(|| Error::no_answer(ComparisonFault::NoFigureWithIt { compared: measure }))
}
