//! The answer in the model files: values changed in place, every comment kept.

use crate::calibration::answer::Answer;
use crate::calibration::problem::{Problem, in_si};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use torquill::library::written_at;

/// A number with so many significant digits.
pub fn rounded(value: f64, digits: usize) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0.0".to_owned();
    }
    let before = value.abs().log10().floor() as i32 + 1;
    let decimals = usize::try_from(digits as i32 - before).unwrap_or(0).max(1);
    let text = format!("{value:.decimals$}");
    let trimmed = text.trim_end_matches('0');
    if trimmed.ends_with('.') {
        format!("{trimmed}0")
    } else {
        trimmed.to_owned()
    }
}

/// A text in the unit that it has now, with another value.
fn in_its_unit(old: &str, si: f64, digits: usize) -> Option<String> {
    let unit = old.trim_start_matches(|c: char| !c.is_alphabetic());
    let of_one = if unit.is_empty() {
        1.0
    } else {
        in_si(&format!("1 {unit}"))?
    };
    let number = rounded(si / of_one, digits);
    Some(if unit.is_empty() {
        number
    } else {
        format!("{number} {unit}")
    })
}

/// Every model file that the answer changes, with its new text.
pub fn changed_files(
    root: &Path,
    problem: &Problem,
    answer: &Answer,
) -> Result<Vec<(PathBuf, String)>, String> {
    let models = root.join("models");
    let mut changes: BTreeMap<PathBuf, Vec<(String, f64)>> = BTreeMap::new();
    for moved in &answer.bodies.moved {
        let value = moved.value(&answer.z);
        let (file, inside) = match moved.path.split_once('.') {
            Some(("curves", inside)) => ("curves/default.ron", inside),
            Some(("lifter", inside)) => {
                for name in lifters(problem, moved.who.as_deref()) {
                    let path = models.join(format!("lifters/{name}.ron"));
                    changes
                        .entry(path)
                        .or_default()
                        .push((inside.to_owned(), value));
                }
                continue;
            }
            _ => ("muscles/reference.ron", moved.path.as_str()),
        };
        changes
            .entry(models.join(file))
            .or_default()
            .push((inside.to_owned(), value));
    }
    let mut files = Vec::new();
    for (path, values) in changes {
        let mut text =
            std::fs::read_to_string(&path).map_err(|why| format!("{}: {why}", path.display()))?;
        for (inside, value) in values {
            let lost = || format!("{}: no number at {inside}", path.display());
            let stretch = written_at(&text, &inside).ok_or_else(lost)?;
            let new = in_its_unit(&text[stretch.clone()], value, problem.priors.digits)
                .ok_or_else(lost)?;
            text.replace_range(stretch, &new);
        }
        files.push((path, text));
    }
    Ok(files)
}

fn lifters<'a>(problem: &'a Problem, who: Option<&'a str>) -> impl Iterator<Item = &'a String> {
    let groups = problem.priors.lifters.iter();
    groups
        .filter(move |(name, _)| who.is_none_or(|who| who == *name))
        .flat_map(|(_, all)| all)
}
