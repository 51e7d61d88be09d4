//! What a changed value does to a strength curve: a family of curves.
//!
//! In: a workbench (lifter and movement), settings, a parameter with its values, a load. Out:
//! [`Family`], plain results that figures and reports show.

use super::cause::{Cause, Footing, Solved};
use super::compared::{Compared, Conditions, Figures};
use super::parameter::{NO_CHANGE, Parameter};
use super::question::Study;
use crate::bounds::bounds;
use crate::error::{ComparisonFault, Error, Fault, Result};
use crate::library::{Model, NumberAt, Workbench, get};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// A curve with one value of the parameter.
#[derive(Debug, Clone)]
pub struct Variant {
    /// The value as it was asked for.
    pub text: String,
    /// The value in SI, as the model holds it; `None` for a word.
    pub number: Option<NumberAt>,
    /// The curve.
    pub study: Study,
    /// Its figures.
    pub figures: Figures,
    /// Why it differs from the model as it is.
    pub causes: Vec<Cause>,
}

/// A value with which the movement cannot be done.
#[derive(Debug, Clone)]
pub struct Undone {
    /// The value as it was asked for.
    pub text: String,
    /// The reason.
    pub error: Error,
}

/// What a figure does when a parameter is a little more and a little less: another thing each way where the limit changes
/// hands at the present value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BothWays {
    /// Change with 1 % more.
    pub more: f64,
    /// Change with 1 % less.
    pub less: f64,
}

impl BothWays {
    /// Change per 1 % over both ways: the central difference.
    #[must_use]
    pub fn mean(self) -> f64 {
        0.5 * (self.more - self.less)
    }
}

/// Change of the figures per 1 % of the parameter, near its present value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sensitivity {
    /// Greatest capacity, %.
    pub peak_percent: BothWays,
    /// Capacity at the start, %.
    pub start_percent: BothWays,
    /// Capacity at the end, %.
    pub end_percent: BothWays,
    /// Heaviest weight (or what stands for it), %.
    pub held_percent: Option<BothWays>,
    /// Place of the peak, % of the range.
    pub peak_place_percent: BothWays,
    /// Sticking point, % of the range.
    pub sticking_place_percent: Option<BothWays>,
}

/// Curves with several values of one parameter.
#[derive(Debug, Clone)]
pub struct Family {
    /// The parameter.
    pub parameter: Parameter,
    /// Its value in the model as it is; `None` for a word or a value left free.
    pub present: Option<NumberAt>,
    /// The curve of the model as it is.
    pub base: Study,
    /// Its figures.
    pub base_figures: Figures,
    /// The curves that can be done, in the order asked.
    pub variants: Vec<Variant>,
    /// The values that cannot.
    pub undone: Vec<Undone>,
    /// Near the present value; `None` where that is no number or 0, or cannot be changed.
    pub sensitivity: Option<Sensitivity>,
}

/// Varies one parameter.
///
/// # Algorithm
/// 1. The model as it is gives the base.
/// 2. Every value gives a model and its study, side by side.
/// 3. Causes compare each with the base; one per cent up and down gives the sensitivity.
///
/// **Fails** on a path or value that does not fit (all are told), or when no value can be done.
pub fn family(
    bench: &Workbench,
    sets: &[String],
    parameter: &Parameter,
    asked: &Conditions,
) -> Result<Family> {
    check_work(parameter.values.len(), asked.samples)?;
    let base_model = bench.model(sets)?;
    let base = asked.of(&base_model)?;
    let base_figures = Figures::of(&base, asked);
    let present = get(&base_model, &parameter.path).ok();
    if present.is_some() {
        check_part(bench, &base_model, &parameter.path)?;
    }
    let footing = Footing::of(&Solved {
        model: &base_model,
        study: &base,
        pace: asked.pace,
    })?;
    let tried: Vec<Result<Variant>> = (0..parameter.values.len())
        .into_par_iter()
        .map(|index| variant(bench, sets, parameter, index, &footing, asked))
        .collect();
    let (mut variants, undone) = sorted_out(parameter, tried)?;
    let mut present = present;
    in_one_unit(&base_model, &mut present, &mut variants);
    let sensitivity = present
        .as_ref()
        .filter(|number| number.value != 0.0)
        .and_then(|_| sensitivity(bench, sets, &parameter.path, &base_figures, asked));
    Ok(Family {
        parameter: parameter.clone(),
        present,
        base,
        base_figures,
        variants,
        undone,
        sensitivity,
    })
}

/// **Fails** if so many curves of so many samples do not fit in a gigabyte of memory.
fn check_work(curves: usize, samples: usize) -> Result<()> {
    let most = bounds().compared_poses.most_of_them();
    match curves.saturating_mul(samples) > most {
        true => Err(Error::bad(ComparisonFault::TooManyPoses {
            curves,
            samples,
            fitting: most / curves.max(1),
        })),
        false => Ok(()),
    }
}

/// What could be done and what not, in the order asked.
///
/// **Fails** with every fault of the input, or when no value can be done.
fn sorted_out(
    parameter: &Parameter,
    tried: Vec<Result<Variant>>,
) -> Result<(Vec<Variant>, Vec<Undone>)> {
    let (mut variants, mut undone) = (Vec::new(), Vec::new());
    let mut faults: Vec<Fault> = Vec::new();
    for (text, result) in parameter.values.iter().zip(tried) {
        match result {
            Ok(variant) => variants.push(variant),
            Err(error) if error.exit_status() == 1 => undone.push(Undone {
                text: text.clone(),
                error,
            }),
            // A wrong path fails for every value alike: it is told once.
            Err(error) => {
                let known = |fault: &&Fault| !faults.contains(fault);
                let new: Vec<Fault> = error.faults().iter().filter(known).cloned().collect();
                faults.extend(new);
            }
        }
    }
    if !faults.is_empty() {
        return Err(Error::bad_input(faults));
    }
    if variants.is_empty() {
        return Err(undone.swap_remove(0).error);
    }
    Ok((variants, undone))
}

/// **Fails** if a path leads to what has no part in the lift.
pub(super) fn check_part(bench: &Workbench, model: &Model, path: &str) -> Result<()> {
    match bench.absent(model, path) {
        Some(fault) => Err(Error::bad(fault)),
        None => Ok(()),
    }
}

/// Multiples of the breadth of the shoulders as lengths where others are given as lengths.
///
/// A multiple of the breadth of the shoulders is one of the model as it is: no value of such a parameter changes them.
fn in_one_unit(model: &Model, present: &mut Option<NumberAt>, variants: &mut [Variant]) {
    let of_variants = variants.iter_mut().map(|variant| &mut variant.number);
    let mut numbers: Vec<&mut NumberAt> = std::iter::once(present)
        .chain(of_variants)
        .flatten()
        .collect();
    let is_length = numbers.iter().any(|number| number.unit == "m");
    let breadth = get(model, "build.biacromial_breadth");
    let (true, Ok(breadth)) = (is_length, breadth) else {
        return;
    };
    for number in &mut numbers {
        if number.unit.ends_with("breadths") {
            number.value *= breadth.value;
            number.unit = "m";
        }
    }
}

/// Settings with one more.
pub(super) fn with(sets: &[String], more: String) -> Vec<String> {
    sets.iter().cloned().chain([more]).collect()
}

fn variant(
    bench: &Workbench,
    sets: &[String],
    parameter: &Parameter,
    index: usize,
    footing: &Footing,
    asked: &Conditions,
) -> Result<Variant> {
    let model = bench.model_in_steps(&with(sets, parameter.setting(index)))?;
    let study = asked.of(&model)?;
    Ok(Variant {
        text: parameter.values[index].clone(),
        number: get(&model, &parameter.path).ok(),
        figures: Figures::of(&study, asked),
        causes: footing.causes(&Solved {
            model: &model,
            study: &study,
            pace: asked.pace,
        })?,
        study,
    })
}

/// What ±1 % do; `None` if either side cannot be done.
fn sensitivity(
    bench: &Workbench,
    sets: &[String],
    path: &str,
    base: &Figures,
    asked: &Conditions,
) -> Option<Sensitivity> {
    let figures = |change: &str| {
        let sets = with(sets, format!("{path}={change}"));
        let model = bench.model_in_steps(&sets).ok()?;
        Some(Figures::of(&asked.of(&model).ok()?, asked))
    };
    let (low, high) = (figures("-1%")?, figures("+1%")?);
    let by = |(low, now, high): (f64, f64, f64), whole: f64| BothWays {
        more: 100.0 * (high - now) / whole,
        less: 100.0 * (low - now) / whole,
    };
    let percent = |measure: Compared| {
        let values = (
            low.value(measure)?,
            base.value(measure)?,
            high.value(measure)?,
        );
        (values.1 != 0.0).then(|| by(values, values.1))
    };
    let sticking = |figures: &Figures| figures.sticking.map(|sticking| sticking.point_range);
    let sticking = sticking(&low).zip(sticking(base)).zip(sticking(&high));
    Some(Sensitivity {
        peak_percent: percent(Compared::Peak)?,
        start_percent: percent(Compared::Start)?,
        end_percent: percent(Compared::End)?,
        held_percent: percent(Compared::Held),
        peak_place_percent: by((low.peak_range, base.peak_range, high.peak_range), 1.0),
        sticking_place_percent: sticking.map(|((low, now), high)| by((low, now, high), 1.0)),
    })
}

impl Family {
    /// How far a variant lies from the present value, in its unit; `None` for words and for values of another unit.
    fn distance(&self, variant: &Variant) -> Option<f64> {
        let (present, number) = (self.present.as_ref()?, variant.number.as_ref()?);
        (present.unit == number.unit).then(|| (number.value - present.value).abs())
    }

    /// The variants but for one that is the model as it is by its own words, a change of nothing.
    pub fn changed(&self) -> impl Iterator<Item = &Variant> {
        let variants = self.variants.iter();
        variants.filter(|variant| variant.text != NO_CHANGE)
    }

    /// Whether one of the variants is the model as it is.
    #[must_use]
    pub fn has_present(&self) -> bool {
        self.variants
            .iter()
            .any(|variant| variant.figures == self.base_figures)
    }

    /// Whether other values than the present one were tried and none changes the capacity anywhere.
    #[must_use]
    pub fn is_without_effect(&self) -> bool {
        let base = self.base.capacity.values();
        let is_other = |variant: &Variant| self.distance(variant) != Some(0.0);
        let mut variants = self.variants.iter();
        self.variants.iter().any(is_other)
            && variants.all(|variant| variant.study.capacity.values() == base)
    }

    /// The farthest value, and the place where it changes the capacity most.
    #[must_use]
    pub fn foremost_cause(&self) -> Option<(&Variant, &Cause)> {
        let variant = self.farthest();
        let size = |cause: &&Cause| cause.account.change().abs();
        let causes = variant.causes.iter();
        let cause = causes.max_by(|a, b| size(a).total_cmp(&size(b)))?;
        Some((variant, cause))
    }

    /// The variant that differs most from the model as it is: the farthest value, else the one whose figures
    /// differ most; of two alike the later one, which usually is the greater.
    #[must_use]
    pub fn farthest(&self) -> &Variant {
        let held = |figures: &Figures| figures.value(Compared::Held).unwrap_or(figures.peak);
        let by_figures = self.variants.iter().any(|v| self.distance(v).is_none());
        let away = |variant: &Variant| match self.distance(variant) {
            Some(distance) if !by_figures => distance,
            _ => (held(&variant.figures) / held(&self.base_figures))
                .ln()
                .abs(),
        };
        let mut best = &self.variants[0];
        for variant in &self.variants[1..] {
            if away(variant) >= away(best) * (1.0 - 1.0e-9) {
                best = variant;
            }
        }
        best
    }
}
