//! Numbers that the calibration writes say so: the source is "fitted", and what it calls a prior is the prior.

use crate::calling::call;
use std::collections::{BTreeMap, BTreeSet};
use torquill::anatomy::Sex;
use torquill::library::{FittedValue, Library};

/// Numbers behind "prior " in a text, cm as metres.
fn priors_told(source: &str) -> Vec<f64> {
    let stretches = source.split("prior ").skip(1);
    stretches
        .filter_map(|rest| {
            let end = rest
                .find(|letter: char| !(letter.is_ascii_digit() || "-.".contains(letter)))
                .unwrap_or(rest.len());
            let number: f64 = rest[..end].trim_end_matches('.').parse().ok()?;
            let is_cm = rest[end..].starts_with(" cm");
            Some(if is_cm { number / 100.0 } else { number })
        })
        .collect()
}

/// What stands in `posterior.ron` for a path.
fn of_the_calibration(library: &Library, sex: Sex, path: &str) -> FittedValue {
    let short = path.strip_suffix(".scale").unwrap_or(path);
    let found = [path, short].map(|path| library.fitted(sex, path).expect("a sound file"));
    let found = found.into_iter().flatten().next();
    found.unwrap_or_else(|| panic!("{path}: nothing in posterior.ron"))
}

#[test]
fn law_what_the_calibration_writes_is_told_as_fitted_with_its_prior() {
    let library = Library::built_in();
    let movements = library.movements();
    let mut seen: BTreeSet<String> = BTreeSet::new();
    for (lifter, sex) in [("reference-man", Sex::Man), ("reference-woman", Sex::Woman)] {
        // Of every source text the priors of the values that it stands for, as they stand in the table: what a body has of
        // them is scaled by its size and the strength of its groups.
        let mut by_text: BTreeMap<String, Vec<f64>> = BTreeMap::new();
        for movement in &movements {
            let asked = [
                "parameters",
                movement,
                "--lifter",
                lifter,
                "--format",
                "json",
            ];
            let told = call(&asked).done().json();
            for row in told["values"].as_array().expect("values") {
                let path = row["path"].as_str().expect("a path");
                let Some(fitted) = row["posterior_si"].as_f64() else {
                    continue;
                };
                let own = row["prior_si"].as_f64().expect("a prior beside it");
                let of_the_fit = of_the_calibration(&library, sex, path);
                let (one, other) = (fitted * of_the_fit.prior, own * of_the_fit.value);
                assert!(
                    (one - other).abs() <= 1e-9 * one.abs(),
                    "{path}: prior and fitted value are scaled alike: {row}"
                );
                let source = row["source"].as_str().expect("a source");
                assert!(
                    fitted.is_finite() && source.starts_with("fitted: "),
                    "{path}: {source}"
                );
                assert!(source.contains("prior"), "{path}: {source}");
                by_text
                    .entry(source.to_owned())
                    .or_default()
                    .push(of_the_fit.prior);
                seen.insert(path.to_owned());
            }
        }
        for (source, priors) in by_text {
            for told in priors_told(&source) {
                let near = |prior: &f64| (told - prior).abs() <= 0.01 * prior.abs();
                assert!(
                    priors.iter().any(near),
                    "{source}: the priors are {priors:?}"
                );
            }
        }
    }
    assert!(seen.len() > 100, "{} fitted values were seen", seen.len());
}

#[test]
fn law_a_prior_is_read_from_its_text() {
    assert_eq!(priors_told("a/F0, prior 0.25 as in Hill"), [0.25]);
    assert_eq!(
        priors_told("length, prior 9.8 cm; force, prior 450 N"),
        [0.098, 450.0]
    );
    assert!(priors_told("priors are places").is_empty());
}
