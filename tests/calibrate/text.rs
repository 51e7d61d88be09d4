//! The answer in the model files: values changed in place, every comment kept.

use super::answer::Answer;
use super::body::Bodies;
use super::problem::{Problem, in_si};
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

/// Every place of a model file that the fit moves: file, path inside it, value in SI.
fn places(
    root: &Path,
    problem: &Problem,
    bodies: &Bodies,
    z: &[f64],
) -> BTreeMap<PathBuf, Vec<(String, f64)>> {
    let models = root.join("models");
    let mut places: BTreeMap<PathBuf, Vec<(String, f64)>> = BTreeMap::new();
    for moved in &bodies.moved {
        let value = moved.value(z);
        let (file, inside) = match moved.path.split_once('.') {
            Some(("curves", inside)) => ("curves/default.ron", inside),
            Some(("lifter", inside)) => {
                for name in lifters(problem, moved.who.as_deref()) {
                    let path = models.join(format!("lifters/{name}.ron"));
                    places
                        .entry(path)
                        .or_default()
                        .push((inside.to_owned(), value));
                }
                continue;
            }
            _ => ("muscles/reference.ron", moved.path.as_str()),
        };
        places
            .entry(models.join(file))
            .or_default()
            .push((inside.to_owned(), value));
    }
    places
}

/// Every model file that the answer changes, with its new text.
pub fn changed_files(
    root: &Path,
    problem: &Problem,
    answer: &Answer,
) -> Result<Vec<(PathBuf, String)>, String> {
    let mut files = Vec::new();
    for (path, values) in places(root, problem, &answer.bodies, &answer.z) {
        let mut text = text_of(&path)?;
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

#[allow(dead_code)]
/// Every moved value: where it stands, what is written there (SI), what the parameters say.
pub fn texts_and_values(
    root: &Path,
    problem: &Problem,
    bodies: &Bodies,
    z: &[f64],
) -> Vec<(String, f64, f64)> {
    let mut all = Vec::new();
    for (path, values) in places(root, problem, bodies, z) {
        let text = text_of(&path).expect("model files can be read");
        for (inside, value) in values {
            let written = written_at(&text, &inside).and_then(|at| in_si(&text[at]));
            let place = format!("{}: {inside}", path.display());
            all.push((place, written.unwrap_or(f64::NAN), value));
        }
    }
    all
}

fn text_of(path: &Path) -> Result<String, String> {
    std::fs::read_to_string(path).map_err(|why| format!("{}: {why}", path.display()))
}

fn lifters<'a>(problem: &'a Problem, who: Option<&'a str>) -> impl Iterator<Item = &'a String> {
    let groups = problem.priors.lifters.iter();
    groups
        .filter(move |(name, _)| who.is_none_or(|who| who == *name))
        .flat_map(|(_, all)| all)
}
