//! Lifters for a set of parameters.

use super::problem::{Deviation, Problem, in_si};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use torquill::anatomy::Lifter;
use torquill::library::{Adjustable, AdjustablePlace, Library};

/// One value of a model file that the fit moves.
#[derive(Debug)]
pub struct Moved {
    /// `man`, `woman`, or both.
    pub who: Option<String>,
    /// The path without the sex.
    pub path: String,
    /// Value before the fit, SI.
    pub prior: f64,
    /// Parameters that move it: number, standard deviation (of the logarithm, or SI).
    shares: Vec<(usize, f64)>,
    amounts: Vec<(usize, f64)>,
    places: Vec<(usize, AdjustablePlace)>,
}

impl Moved {
    /// The name it has in the files of the calibration.
    pub fn name(&self) -> String {
        match &self.who {
            Some(who) => format!("{who}/{}", self.path),
            None => self.path.clone(),
        }
    }

    /// The value for parameters in standard deviations from their priors.
    ///
    /// ```text
    /// x = (x0 + sum of s_a z_a) exp(sum of s_b z_b)
    /// ```
    pub fn value(&self, z: &[f64]) -> f64 {
        let sum = |terms: &[(usize, f64)]| terms.iter().map(|(k, s)| s * z[*k]).sum::<f64>();
        (self.prior + sum(&self.amounts)) * sum(&self.shares).exp()
    }

    /// Its slopes by the parameters that move it.
    pub fn slopes(&self, z: &[f64]) -> Vec<(usize, f64)> {
        let value = self.value(z);
        let grown = self
            .shares
            .iter()
            .map(|(k, s)| s * z[*k])
            .sum::<f64>()
            .exp();
        let shares = self.shares.iter().map(|(k, s)| (*k, s * value));
        shares
            .chain(self.amounts.iter().map(|(k, s)| (*k, s * grown)))
            .collect()
    }
}

/// What the parameters move, and the lifters they make.
#[derive(Debug)]
pub struct Bodies {
    pub names: Vec<String>,
    pub moved: Vec<Moved>,
    files: [Adjustable; 2],
}

/// The sexes as the files of the calibration name them.
pub const WHO: [&str; 2] = ["man", "woman"];

impl Bodies {
    /// From the model files as they stand on the disk.
    pub fn of(problem: &Problem, root: &Path) -> Result<Self, String> {
        let library = Library::with_dir(root.join("models")).map_err(|why| why.to_string())?;
        let file = |who: &str| -> Result<Adjustable, String> {
            let lifters = problem.priors.lifters.get(who).ok_or("no lifters")?;
            let first = lifters.first().ok_or("no lifter")?;
            let files = library.lifter_files(first).map_err(|why| why.to_string())?;
            Ok(Adjustable::of(&files))
        };
        let files = [file(WHO[0])?, file(WHO[1])?];
        let mut moved: BTreeMap<&str, Moved> = BTreeMap::new();
        for (k, (name, prior)) in problem.priors.parameters.iter().enumerate() {
            for (key, text) in &prior.at {
                let value = in_si(text).ok_or(format!("{name}: {text} is no value"))?;
                if !moved.contains_key(key.as_str()) {
                    moved.insert(key, placed(key, value, &files)?);
                }
                let entry = moved.get_mut(key.as_str()).ok_or("just put in")?;
                if (entry.prior - value).abs() > 1e-12 * value.abs() {
                    return Err(format!("{name}: {key} has another prior elsewhere"));
                }
                match &prior.deviation {
                    Deviation::Share(share) => entry.shares.push((k, *share)),
                    Deviation::Amount(text) => {
                        let amount = in_si(text).ok_or(format!("{name}: {text} is no value"))?;
                        entry.amounts.push((k, amount));
                    }
                }
            }
        }
        Ok(Self {
            names: problem.priors.parameters.keys().cloned().collect(),
            moved: moved.into_values().collect(),
            files,
        })
    }

    /// Man and woman for parameters in standard deviations from their priors.
    pub fn lifters(&self, z: &[f64]) -> Result<[Lifter; 2], String> {
        let build = |index: usize| {
            let numbers: Vec<(&AdjustablePlace, f64)> = self
                .moved
                .iter()
                .flat_map(|moved| moved.places.iter().map(move |place| (moved, place)))
                .filter(|(_, (file, _))| *file == index)
                .map(|(moved, (_, place))| (place, moved.value(z)))
                .collect();
            self.files[index]
                .build(&numbers)
                .map_err(|why| format!("{why:#?}"))
        };
        Ok([build(0)?, build(1)?])
    }

    /// Names of the muscles that each parameter touches; `*` stands for all.
    pub fn touched(&self, lifter: &Lifter) -> Vec<BTreeSet<String>> {
        let mut touched = vec![BTreeSet::new(); self.names.len()];
        for moved in &self.moved {
            let parts: Vec<&str> = moved.path.split('.').collect();
            let muscles: Vec<String> = match parts.as_slice() {
                ["muscles", name, ..] => vec![(*name).to_owned()],
                ["lifter", "strength", group] => {
                    let in_group = lifter.muscles.iter().filter(|(_, m)| m.group == *group);
                    in_group.map(|(name, _)| name.clone()).collect()
                }
                _ => vec!["*".to_owned()],
            };
            for (k, _) in moved.shares.iter().chain(&moved.amounts) {
                touched[*k].extend(muscles.iter().cloned());
            }
        }
        touched
    }
}

fn placed(key: &str, prior: f64, files: &[Adjustable; 2]) -> Result<Moved, String> {
    let (who, path) = match key.split_once('/') {
        Some((who, path)) => (Some(who.to_owned()), path),
        None => (None, key),
    };
    let mut places = Vec::new();
    for (index, file) in files.iter().enumerate() {
        if who.as_ref().is_none_or(|who| who == WHO[index]) {
            let place = file.place(path).map_err(|why| format!("{key}: {why}"))?;
            places.push((index, place));
        }
    }
    if places.is_empty() {
        return Err(format!("{key}: no such person"));
    }
    Ok(Moved {
        who,
        path: path.to_owned(),
        prior,
        shares: Vec::new(),
        amounts: Vec::new(),
        places,
    })
}
