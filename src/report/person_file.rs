//! The file of a fitted person: a lifter that extends a built-in one.
//!
//! In: a [`PersonFit`]. Out: the text of a model file.

use crate::anatomy::{Sex, Training};
use crate::narrative::fit_words::{FILE_SOURCE, SCATTER_REASON, file_head, file_reason};
use crate::study::PersonFit;
use std::fmt::Write as _;

/// Significant digits of strengths and covariances.
const DIGITS: usize = 5;

/// The text of the file.
#[must_use]
pub fn person_file(fit: &PersonFit) -> String {
    let mut text = String::new();
    write_file(&mut text, fit).expect("texts can be written to");
    text
}

fn write_file(out: &mut String, fit: &PersonFit) -> std::fmt::Result {
    let record = &fit.record;
    for line in file_head(fit) {
        writeln!(out, "// {line}")?;
    }
    writeln!(out, "(")?;
    writeln!(out, "    extends: {:?},", fit.asked.reference())?;
    writeln!(out, "    title: {:?},", record.title)?;
    writeln!(out, "    invented: false,")?;
    let sex = match record.sex {
        Sex::Woman => "Woman",
        Sex::Man => "Man",
    };
    let training = match record.training {
        Training::Novice => "Novice",
        Training::Intermediate => "Intermediate",
        Training::Advanced => "Advanced",
    };
    writeln!(out, "    sex: {sex},")?;
    writeln!(out, "    height: \"{} m\",", shown(record.height.as_m()))?;
    writeln!(
        out,
        "    body_mass: \"{} kg\",",
        shown(record.body_mass.as_kg())
    )?;
    writeln!(out, "    training: {training},")?;
    if let Some(months) = record.training_months {
        writeln!(out, "    training_months: {},", shown(months))?;
    }
    if let Some(age) = record.age_years {
        writeln!(out, "    age_years: {},", shown(age))?;
    }
    if !record.lengths.is_empty() {
        writeln!(out, "    lengths: {{")?;
        for (limb, length) in &record.lengths {
            writeln!(
                out,
                "        {}: \"{} m\",",
                limb.name(),
                shown(length.as_m())
            )?;
        }
        writeln!(out, "    }},")?;
    }
    writeln!(out, "    strength_scale: {},", shown(record.strength_scale))?;
    writeln!(out, "    strength: {{")?;
    for (group, factor) in &record.strength {
        writeln!(out, "        {group:?}: {},", shown(*factor))?;
    }
    writeln!(out, "    }},")?;
    let reason = file_reason(fit);
    writeln!(out, "    strength_sources: {{")?;
    for group in record.strength.keys() {
        writeln!(out, "        {group:?}: Fitted({reason:?}),")?;
    }
    writeln!(out, "    }},")?;
    writeln!(out, "    lift_strength: {{")?;
    for (lift, factor) in &record.lift_strength {
        writeln!(out, "        {lift:?}: {},", shown(*factor))?;
    }
    writeln!(out, "    }},")?;
    writeln!(out, "    scatter: Some((")?;
    writeln!(out, "        of: [")?;
    for factor in fit.factors.all() {
        writeln!(out, "            {:?},", factor.path())?;
    }
    writeln!(out, "        ],")?;
    writeln!(out, "        covariance: [")?;
    for row in 0..fit.factors.count() {
        let cells = (0..=row).map(|column| shown(fit.belief.covariance[(row, column)]));
        let cells: Vec<String> = cells.collect();
        writeln!(out, "            [{}],", cells.join(", "))?;
    }
    writeln!(out, "        ],")?;
    writeln!(out, "        versions: [")?;
    let mode = &fit.most_probable;
    for version in &fit.versions {
        let cells = version.iter().zip(mode.iter());
        let cells: Vec<String> = cells
            .map(|(value, mode)| ten_thousandths(value - mode))
            .collect();
        writeln!(out, "            [{}],", cells.join(", "))?;
    }
    writeln!(out, "        ],")?;
    writeln!(out, "        source: Fitted({SCATTER_REASON:?}),")?;
    writeln!(out, "    )),")?;
    writeln!(out, "    source: Assumed({FILE_SOURCE:?}),")?;
    writeln!(out, ")")
}

/// A logarithm to a tenth of a thousandth, a hundredth of a percent of strength.
fn ten_thousandths(value: f64) -> String {
    let text = format!("{value:.4}");
    if text == "-0.0000" {
        "0.0000".to_owned()
    } else {
        text
    }
}

/// A number to the digits that count, without an exponent.
fn shown(value: f64) -> String {
    if value.abs() < 1.0e-9 {
        return "0.0".to_owned();
    }
    let before = value.abs().log10().floor() as i32 + 1;
    let decimals = (DIGITS as i32 - before).max(1) as usize;
    let text = format!("{value:.decimals$}");
    let short = text.trim_end_matches('0');
    if short.ends_with('.') {
        format!("{short}0")
    } else {
        short.to_owned()
    }
}
