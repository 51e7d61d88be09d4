//! The maxima of a group of invented lifters, as text, CSV and JSON.
//!
//! In: a [`Cohort`]. Out: what `torquill max --cohort` prints.

use super::options::Format;
use crate::error::{Error, Result};
use crate::report;
use crate::study::{Cohort, mean_and_deviation, quantile};
use crate::units::{Mass, System, rounded};
use serde_json::json;

/// The quantiles that are shown.
const SHOWN: [f64; 5] = [0.05, 0.25, 0.5, 0.75, 0.95];

/// The group in the wanted form.
///
/// **Fails** where nobody has a maximum.
pub fn printed(
    cohort: &Cohort,
    (movement, lifter): (&str, &str),
    seed: u64,
    format: Format,
    units: System,
) -> Result<String> {
    let maxima = cohort.maxima_kg();
    if maxima.is_empty() {
        return Err(Error::no_answer(
            "nobody in this group has a maximum with this setup",
        ));
    }
    match format {
        Format::Csv => csv(cohort),
        Format::Json => report::pretty(&as_json(cohort, (movement, lifter), seed)),
        Format::Table => Ok(text(cohort, (movement, lifter), seed, units)),
    }
}

fn text(cohort: &Cohort, (movement, lifter): (&str, &str), seed: u64, units: System) -> String {
    let (maxima, shares) = (cohort.maxima_kg(), cohort.shares_of_body());
    let mut text = format!(
        "{movement}: {} invented lifters around {lifter} (seed {seed}).\n",
        cohort.members.len()
    );
    if let Some((mean, deviation)) = mean_and_deviation(&maxima) {
        text += &format!(
            "Maximum {} on average, standard deviation {} ({} %).\n\n",
            units.mass(Mass::from_kg(mean)),
            units.mass(Mass::from_kg(deviation)),
            rounded(100.0 * deviation / mean.max(1e-9), 0)
        );
    }
    let rows = SHOWN
        .iter()
        .filter_map(|share| {
            Some(vec![
                rounded(100.0 * share, 0),
                units.mass(Mass::from_kg(quantile(&maxima, *share)?)),
                rounded(quantile(&shares, *share)?, 2),
            ])
        })
        .collect();
    text += &report::table(&["below which %", "maximum", "over body mass"], rows, 0);
    let without = cohort.members.len() - maxima.len();
    if without > 0 {
        text += &format!(
            "\n{without} of them have no maximum: they lift nothing, or their limbs do not fit the movement.\n"
        );
    }
    if !cohort.is_complete {
        text += "\nStopped before everyone was reckoned.\n";
    }
    text += "\nInvented: height, mass, proportions and strength scatter as assumed, not as measured in a group.\n";
    text
}

fn as_json(cohort: &Cohort, (movement, lifter): (&str, &str), seed: u64) -> serde_json::Value {
    let maxima = cohort.maxima_kg();
    let moments = mean_and_deviation(&maxima);
    json!({
        "summary": {
            "movement": movement, "around": lifter, "seed": seed,
            "lifters": cohort.members.len(), "with_maximum": maxima.len(),
            "is_complete": cohort.is_complete,
            "mean_kg": moments.map(|m| m.0), "standard_deviation_kg": moments.map(|m| m.1),
            "quantiles": SHOWN.iter().map(|share| json!({
                "share": share, "one_rm_kg": quantile(&maxima, *share),
                "over_body_mass": quantile(&cohort.shares_of_body(), *share),
            })).collect::<Vec<_>>(),
        },
        "lifters": cohort.members.iter().map(|member| json!({
            "number": member.number, "height_m": member.height_m,
            "body_mass_kg": member.body_mass.as_kg(), "strength": member.strength,
            "one_rm_kg": member.one_rm.map(Mass::as_kg),
        })).collect::<Vec<_>>(),
    })
}

fn csv(cohort: &Cohort) -> Result<String> {
    let header = [
        "number",
        "height_m",
        "body_mass_kg",
        "strength",
        "one_rm_kg",
    ];
    let rows = cohort.members.iter().map(|member| {
        vec![
            member.number.to_string(),
            member.height_m.to_string(),
            member.body_mass.as_kg().to_string(),
            member.strength.to_string(),
            member
                .one_rm
                .map_or_else(String::new, |m| m.as_kg().to_string()),
        ]
    });
    report::rows_to_csv(&header, rows)
}
