//! What a changed value does to a strength curve: families, sensitivities, and what matters most.
//!
//! In: a [`Workbench`] and settings. Out: [`Variant`]s with the study of each, a sentence of why, and
//! [`Leverage`]s of every value of the movement, in parallel.

use super::study::{Question, Study, study};
use crate::error::{Error, Result};
use crate::library::{Model, Workbench, get, numeric_paths};
use crate::movement::Measure;
use crate::resistance::Setup;
use crate::units::rounded;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};

/// One value of the parameter and what follows.
#[derive(Debug, Clone, PartialEq)]
pub struct Variant {
    /// The value as it was written.
    pub value: String,
    /// The same as a number in the unit of the model, where it is one.
    pub number: Option<f64>,
    /// The results.
    pub study: Study,
}

impl Variant {
    /// The figure that is compared: least capacity of a lift measured in force, peak of one in torque.
    #[must_use]
    pub fn strength(&self) -> f64 {
        strength(&self.study)
    }
}

/// Least capacity of a lift measured in force (what limits it), peak of one measured in torque.
#[must_use]
pub fn strength(study: &Study) -> f64 {
    match study.range.measure {
        Measure::Force => study.weakest().1,
        Measure::Torque => study.class.peak,
    }
}

/// Splits "-20%,0%,+20%", or "50 cm..90 cm:5" into so many even steps.
///
/// **Fails** on an empty list, a range without a count, or ends in different units.
pub fn values(text: &str) -> Result<Vec<String>> {
    let Some((from, rest)) = text.split_once("..") else {
        let list: Vec<String> = text
            .split(',')
            .map(|value| signed_percent(value.trim()))
            .filter(|value| !value.is_empty())
            .collect();
        return if list.is_empty() {
            Err(Error::bad("--values names no value")
                .hint("--values -20%,0%,+20% or \"50 cm..90 cm:5\""))
        } else {
            Ok(list)
        };
    };
    let bad = || {
        Error::bad(format!("`{text}` is no range of values")).hint("write it as \"50 cm..90 cm:5\"")
    };
    let (to, count) = rest.rsplit_once(':').ok_or_else(bad)?;
    let count: usize = count.trim().parse().map_err(|_| bad())?;
    let split = |end: &str| -> Result<(f64, String)> {
        let end = end.trim();
        let at = end
            .find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '-' | '+')))
            .unwrap_or(end.len());
        let number = end[..at].parse().map_err(|_| bad())?;
        Ok((number, end[at..].trim().to_owned()))
    };
    let ((low, unit), (high, other)) = (split(from)?, split(to)?);
    if unit != other || !(2..=50).contains(&count) {
        return Err(bad().hint("both ends carry the same unit, and there are 2 to 50 values"));
    }
    Ok((0..count)
        .map(|i| {
            let value = low + (high - low) * i as f64 / (count - 1) as f64;
            let gap = if unit.is_empty() || unit == "%" {
                ""
            } else {
                " "
            };
            let sign = if unit == "%" && value >= 0.0 { "+" } else { "" };
            format!("{sign}{}{gap}{unit}", rounded(value, 4))
        })
        .collect())
}

/// A share without a sign is a rise: "0%" is "+0%".
fn signed_percent(value: &str) -> String {
    if value.ends_with('%') && !value.starts_with(['+', '-']) {
        format!("+{value}")
    } else {
        value.to_owned()
    }
}

/// The number that a variant stands for: the value itself, or the factor of a relative one.
fn number_of(model: &Model, parameter: &str, value: &str) -> Option<f64> {
    match value.strip_suffix('%') {
        Some(percent) => percent.trim().parse::<f64>().ok().map(|p| 1.0 + p / 100.0),
        None => get(model, parameter).ok().map(|at| at.value),
    }
}

/// Studies a movement with every value of a parameter, the other settings as they are.
///
/// **Fails** if a value does not fit, naming it, or makes a pose that no limb can close.
pub fn family(
    bench: &Workbench,
    movement: &str,
    sets: &[String],
    parameter: &str,
    values: &[String],
    setups: &[Setup],
    samples: usize,
) -> Result<Vec<Variant>> {
    values
        .par_iter()
        .map(|value| {
            let mut all = sets.to_vec();
            all.push(format!("{parameter}={value}"));
            let model = bench.model(&all)?;
            Ok(Variant {
                value: value.clone(),
                number: number_of(&model, parameter, value),
                study: studied(movement, &model, setups, samples)?,
            })
        })
        .collect()
}

/// A study of a model.
pub fn studied(movement: &str, model: &Model, setups: &[Setup], samples: usize) -> Result<Study> {
    let mut question = Question::new(movement, &model.movement, &model.lifter);
    question.samples = samples;
    study(&question, setups)
}

/// Relative change of a figure per 1 % change of the parameter, from the first to the last variant.
///
/// ```text
/// S = ln(y_last/y_first)/ln(x_last/x_first)
/// ```
/// `x` parameter, `y` figure. **Fails.** `None` where either is not positive or x does not change.
#[must_use]
pub fn sensitivity(variants: &[Variant], figure: impl Fn(&Variant) -> f64) -> Option<f64> {
    let (first, last) = (variants.first()?, variants.last()?);
    let x = last.number? / first.number?;
    let y = figure(last) / figure(first);
    let value = y.ln() / x.ln();
    (x > 0.0 && y > 0.0 && value.is_finite()).then_some(value)
}

/// What happened from the first variant to the last, and why, in plain sentences.
#[must_use]
pub fn reasons(parameter: &str, variants: &[Variant]) -> Vec<String> {
    let (Some(first), Some(last)) = (variants.first(), variants.last()) else {
        return Vec::new();
    };
    let change = |place: usize| {
        let (a, b) = (
            &first.study.capacity.held[place],
            &last.study.capacity.held[place],
        );
        100.0 * (b.capacity / a.capacity - 1.0)
    };
    let end = first.study.capacity.held.len() - 1;
    let mut lines = vec![format!(
        "{parameter} from {} to {}: capacity changes by {} % at the start, {} % in the middle, {} % at the end.",
        first.value,
        last.value,
        signed(change(0)),
        signed(change(end / 2)),
        signed(change(end)),
    )];
    lines.extend(muscle_reason(first, last));
    if first.study.class.shape != last.study.class.shape {
        lines.push(format!(
            "The class changes from {} to {}.",
            first.study.class.shape.word(),
            last.study.class.shape.word()
        ));
    }
    let place = |v: &Variant| {
        v.study
            .setups
            .first()
            .and_then(|s| s.sticking)
            .map(|s| s.point_range)
    };
    if let (Some(a), Some(b)) = (place(first), place(last)) {
        lines.push(format!(
            "The sticking point moves from {} to {} of the range.",
            rounded(a, 2),
            rounded(b, 2)
        ));
    }
    lines
}

/// The muscle whose torque changes most, told as lever, fibre length and force; or the load's own lever.
fn muscle_reason(first: &Variant, last: &Variant) -> Option<String> {
    let places = [
        0,
        first.study.capacity.held.len() / 2,
        first.study.capacity.held.len() - 1,
    ];
    let words = ["at the start", "in the middle", "at the end"];
    let mut best: Option<(f64, String)> = None;
    for (place, word) in places.iter().zip(words) {
        let (a, b) = (
            &first.study.capacity.held[*place],
            &last.study.capacity.held[*place],
        );
        for (index, name) in first.study.capacity.muscles.iter().enumerate() {
            let (Some(m), Some(n)) = (a.muscles.get(index), b.muscles.get(index)) else {
                continue;
            };
            let arm = |m: &crate::capacity::MuscleAtPose| {
                m.arms_m.iter().fold(
                    0.0_f64,
                    |most, r| if r.abs() > most.abs() { *r } else { most },
                )
            };
            let torque =
                |m: &crate::capacity::MuscleAtPose| arm(m).abs() * (m.active_n + m.passive_n);
            let size = (torque(n) - torque(m)).abs();
            if size > 0.1 && best.as_ref().is_none_or(|b| size > b.0) {
                let text = format!(
                    "Most of it is {name} {word}: lever {} to {} mm, fibres {} to {} of optimal length, force {} to {} N.",
                    rounded(1000.0 * arm(m).abs(), 1),
                    rounded(1000.0 * arm(n).abs(), 1),
                    rounded(m.state.length_norm, 2),
                    rounded(n.state.length_norm, 2),
                    rounded(m.active_n + m.passive_n, 0),
                    rounded(n.active_n + n.passive_n, 0),
                );
                best = Some((size, text));
            }
        }
    }
    best.map(|b| b.1).or_else(|| lever_reason(first, last))
}

/// When no muscle changes, the geometry does: how far the load's lever about each joint changes.
fn lever_reason(first: &Variant, last: &Variant) -> Option<String> {
    let middle = first.study.range.poses.len() / 2;
    let (a, b) = (
        &first.study.range.poses[middle],
        &last.study.range.poses[middle],
    );
    let levers: Vec<String> = a
        .coordinates
        .iter()
        .zip(a.load_jacobian.iter().zip(&b.load_jacobian))
        .map(|(c, (m, n))| {
            format!(
                "{} {} to {} cm",
                c.dof.joint(),
                rounded(100.0 * m.z.abs(), 1),
                rounded(100.0 * n.z.abs(), 1)
            )
        })
        .collect();
    (!levers.is_empty()).then(|| {
        format!(
            "No muscle changes; the load's lever does, in the middle of the range: {}.",
            levers.join(", ")
        )
    })
}

fn signed(value: f64) -> String {
    let text = rounded(value.abs(), 1);
    if text == "0" {
        text
    } else if value < 0.0 {
        format!("\u{2212}{text}")
    } else {
        format!("+{text}")
    }
}

/// How much one value matters.
#[derive(Debug, Clone, PartialEq)]
pub struct Leverage {
    /// Its path.
    pub path: String,
    /// Change of the strength figure when the value is lowered, %.
    pub lowered_percent: f64,
    /// The same when it is raised, %.
    pub raised_percent: f64,
}

impl Leverage {
    /// The larger of both changes.
    #[must_use]
    pub fn size(&self) -> f64 {
        self.lowered_percent.abs().max(self.raised_percent.abs())
    }
}

/// Raises and lowers every value that the movement uses by the same share, in parallel, and ranks them.
///
/// Values that only the figure's words use, and those that a change makes impossible, are left out; equal
/// sizes stand in the order of their paths.
///
/// **Fails** if the movement has no answer as it is.
pub fn rank(
    bench: &Workbench,
    movement: &str,
    sets: &[String],
    percent: f64,
    samples: usize,
) -> Result<Vec<Leverage>> {
    let model = bench.model(sets)?;
    let base = studied(movement, &model, &[], samples)?;
    let before = strength(&base);
    let acting: Vec<String> = base.capacity.muscles.clone();
    let paths: Vec<String> = numeric_paths(&model)
        .into_iter()
        .filter(|at| at.value != 0.0 && matters(&at.path, &acting))
        .map(|at| at.path)
        .collect();
    let changed = |path: &str, by: f64| -> Option<f64> {
        let mut all = sets.to_vec();
        let sign = if by < 0.0 { "-" } else { "+" };
        all.push(format!("{path}={sign}{}%", by.abs()));
        let model = bench.model(&all).ok()?;
        let study = studied(movement, &model, &[], samples).ok()?;
        let after = strength(&study);
        (before > 0.0 && after.is_finite()).then(|| 100.0 * (after / before - 1.0))
    };
    let mut found: Vec<Leverage> = paths
        .par_iter()
        .filter_map(|path| {
            Some(Leverage {
                path: path.clone(),
                lowered_percent: changed(path, -percent)?,
                raised_percent: changed(path, percent)?,
            })
        })
        .collect();
    found.sort_by(|a, b| b.size().total_cmp(&a.size()).then(a.path.cmp(&b.path)));
    Ok(found)
}

/// Whether a value can matter to a movement in which these muscles act.
fn matters(path: &str, acting: &[String]) -> bool {
    match path.split('.').collect::<Vec<_>>().as_slice() {
        ["muscles", name, ..] => acting.iter().any(|known| known == name),
        ["lifter", ..] => false,
        _ => true,
    }
}
