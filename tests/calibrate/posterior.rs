//! `posterior.ron`: what was found, how sure it is, and what stays off.

use super::answer::{Answer, residual};
use super::body::Moved;
use super::problem::Problem;
use super::text::rounded;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use torquill::anatomy::Lifter;

/// Correlations smaller than this are not told.
const TOLD_CORRELATION: f64 = 0.3;
/// Targets farther off than this are told again, in standard deviations.
const OFF: f64 = 2.0;

/// Standard deviation of a moved value: after the fit, and before it.
fn deviations(moved: &Moved, answer: &Answer) -> (f64, f64) {
    let slopes = moved.slopes(&answer.z);
    let sum = |correlated: &dyn Fn(usize, usize) -> f64| {
        let terms = slopes
            .iter()
            .flat_map(|(a, x)| slopes.iter().map(move |(b, y)| (a, b, x * y)));
        terms
            .map(|(a, b, product)| product * correlated(*a, *b))
            .sum::<f64>()
            .max(0.0)
            .sqrt()
    };
    let after = sum(&|a, b| answer.covariance[(a, b)]);
    let before = moved
        .slopes(&vec![0.0; answer.z.len()])
        .iter()
        .map(|(_, slope)| slope * slope)
        .sum::<f64>()
        .sqrt();
    (after, before)
}

/// The file's place and text.
pub fn file(root: &Path, problem: &Problem, answer: &Answer) -> (PathBuf, String) {
    let path = root.join("models/calibration/posterior.ron");
    (
        path,
        text(problem, answer).expect("texts can be written to"),
    )
}

fn text(problem: &Problem, answer: &Answer) -> Result<String, std::fmt::Error> {
    let digits = problem.priors.digits;
    let number = |value: f64| rounded(value, digits);
    let mut out = String::new();
    let targets = || problem.targets.targets.iter().zip(&answer.fitted);
    let misfit: f64 = targets()
        .map(|((_, target), fit)| residual(target, *fit).powi(2))
        .sum();
    let shift: f64 = answer.z.iter().map(|z| z * z).sum();
    writeln!(
        out,
        "// Written by `cargo run --release --example calibrate`; see README.md. Values in SI."
    )?;
    writeln!(out, "(")?;
    writeln!(
        out,
        "    source: Assumed(\"computed: the most probable values for the priors and targets beside this file\"),"
    )?;
    writeln!(out, "    digits: {digits},")?;
    writeln!(
        out,
        "    // sums of squares: of targets in their deviations, of parameters in theirs"
    )?;
    writeln!(
        out,
        "    chi_square: (targets: {}, of_targets: {:.2}, parameters: {}, of_parameters: {:.2}),",
        answer.fitted.len(),
        misfit,
        answer.z.len(),
        shift
    )?;
    writeln!(
        out,
        "    // every parameter: shift and deviation after the fit, in deviations before it"
    )?;
    writeln!(out, "    parameters: {{")?;
    for (k, name) in answer.bodies.names.iter().enumerate() {
        let deviation = answer.covariance[(k, k)].sqrt();
        writeln!(
            out,
            "        \"{name}\": (shift: {:.5}, deviation: {deviation:.2}),",
            clean(answer.z[k], 5)
        )?;
    }
    writeln!(out, "    }},")?;
    writeln!(out, "    values: {{")?;
    for moved in &answer.bodies.moved {
        let (after, before) = deviations(moved, answer);
        writeln!(
            out,
            "        \"{}\": (value: {}, deviation: {}, prior: {}, prior_deviation: {}),",
            moved.name(),
            number(moved.value(&answer.z)),
            rounded(after, 2),
            number(moved.prior),
            rounded(before, 2),
        )?;
    }
    writeln!(out, "    }},")?;
    writeln!(out, "    correlations: [")?;
    let deviation = |k: usize| answer.covariance[(k, k)].sqrt();
    for a in 0..answer.z.len() {
        for b in a + 1..answer.z.len() {
            let r = answer.covariance[(a, b)] / (deviation(a) * deviation(b));
            if r.abs() > TOLD_CORRELATION {
                let names = &answer.bodies.names;
                writeln!(out, "        (\"{}\", \"{}\", {r:.2}),", names[a], names[b])?;
            }
        }
    }
    writeln!(out, "    ],")?;
    writeln!(
        out,
        "    // every target: published, fitted, and how far off in deviations"
    )?;
    writeln!(out, "    targets: {{")?;
    for ((name, target), fit) in targets() {
        let to = target
            .to
            .map_or(String::new(), |to| format!(", to: {}", number(to)));
        writeln!(
            out,
            "        \"{name}\": (published: {}{to}, deviation: {}, fit: {}, off: {:.2}),",
            number(target.value),
            number(target.deviation),
            number(*fit),
            clean(residual(target, *fit), 2),
        )?;
    }
    writeln!(out, "    }},")?;
    writeln!(
        out,
        "    // targets that stay off by more than two deviations"
    )?;
    writeln!(out, "    stay_off: [")?;
    for ((name, target), fit) in targets() {
        if residual(target, *fit).abs() > OFF {
            writeln!(out, "        \"{name}\",")?;
        }
    }
    writeln!(out, "    ],")?;
    tensions(&mut out, problem, &answer.lifters())?;
    errors(&mut out, problem, answer)?;
    writeln!(out, ")")?;
    Ok(out)
}

/// A shift that rounds to nothing has no sign.
fn clean(value: f64, decimals: i32) -> f64 {
    let nothing = 0.5 * 10_f64.powi(-decimals);
    if value.abs() < nothing { 0.0 } else { value }
}

/// Force times fibre length over a published volume, man: what the fibres would have to bear.
fn tensions(out: &mut String, problem: &Problem, lifters: &[Lifter; 2]) -> std::fmt::Result {
    writeln!(
        out,
        "    // force times fibre length over the published volume, man, N/cm2: 15 to 61 are published"
    )?;
    writeln!(out, "    specific_tension: {{")?;
    for (group, volume) in &problem.priors.volumes {
        let work_n_cm: f64 = volume
            .muscles
            .iter()
            .filter_map(|name| lifters[0].muscles.get(name))
            .map(|m| m.peak_force.as_n() * m.optimal_fibre_length.as_cm())
            .sum();
        writeln!(out, "        \"{group}\": {:.0},", work_n_cm / volume.cm3)?;
    }
    writeln!(out, "    }},")
}

/// What is left by kind of quantity: root mean square of the difference, as a share or as it is.
fn errors(out: &mut String, problem: &Problem, answer: &Answer) -> std::fmt::Result {
    let mut kinds: BTreeMap<&str, (f64, usize)> = BTreeMap::new();
    for (target, fit) in problem.targets.targets.values().zip(&answer.fitted) {
        let whole = target.value.abs().max(2.0 * target.deviation);
        let off = residual(target, *fit) * target.deviation / whole;
        let kind = kinds.entry(target.kind.as_str()).or_default();
        kind.0 += off * off;
        kind.1 += 1;
    }
    writeln!(
        out,
        "    // the model's own error: root mean square of what is left, as a share of the published value"
    )?;
    writeln!(out, "    // (of two deviations where that is more);")?;
    writeln!(
        out,
        "    // lifts: errors_of_lifts.ron, written from the table of evidence"
    )?;
    writeln!(out, "    model_error: {{")?;
    for (kind, (sum, count)) in kinds {
        writeln!(
            out,
            "        \"{kind}\": (share: {:.3}, targets: {count}),",
            (sum / count as f64).sqrt()
        )?;
    }
    writeln!(out, "    }},")
}

/// The answer in a few lines, for the one who runs it.
pub fn told(problem: &Problem, answer: &Answer) -> String {
    let misfit: f64 = (problem.targets.targets.values().zip(&answer.fitted))
        .map(|(target, fit)| residual(target, *fit).powi(2))
        .sum();
    let shift: f64 = answer.z.iter().map(|z| z * z).sum();
    let mut out = format!(
        "{} steps, {misfit:.2} of targets, {shift:.2} of parameters\n",
        answer.steps
    );
    for ((name, target), fit) in problem.targets.targets.iter().zip(&answer.fitted) {
        let off = residual(target, *fit);
        let mark = if off.abs() > OFF { " <<" } else { "" };
        out += &format!(
            "{off:7.2}  {:>8}  {:>8}  {name}{mark}\n",
            rounded(target.value, 3),
            rounded(*fit, 3)
        );
    }
    for (k, name) in answer.bodies.names.iter().enumerate() {
        out += &format!(
            "{:7.2} ± {:.2}  {name}\n",
            answer.z[k],
            answer.covariance[(k, k)].sqrt()
        );
    }
    out
}
