//! What no row may be: wider than its scatter, or met whatever the model says.

use super::{Accepted, Row, papers, quotient};
use std::collections::BTreeSet;

/// No tolerance beyond twice the published scatter, a quarter where none is published.
#[test]
fn law_no_tolerance_is_wider_than_the_scatter_allows() {
    let mut wide = Vec::new();
    for paper in papers() {
        for row in paper.rows().filter(|row| row.kind().is_evidence()) {
            let (published, accepted) = (row.published(), row.accepted());
            let half = accepted.half_width(published);
            let is_interval = matches!(accepted, Accepted::Interval(..));
            let is_sound = match row.own_or_head("scatter") {
                "" | "none" => half <= 0.25 * published.abs() + 1.0e-9,
                "range" => is_interval,
                "order" => is_order(accepted, published),
                "rounding" => half <= 0.5 * published.abs() + 1.0e-9,
                number => half <= 2.0 * quotient(number).expect("a deviation") + 1.0e-9,
            };
            if !is_sound {
                wide.push(format!(
                    "{}, {}: {published} {}, scatter {:?}",
                    paper.name,
                    row.quantity(),
                    accepted.as_text(),
                    row.own_or_head("scatter")
                ));
            }
        }
    }
    assert!(wide.is_empty(), "{wide:#?}");
}

/// A direction: yes or no, or one side of a value that an empty result does not reach.
fn is_order(accepted: Accepted, published: f64) -> bool {
    match accepted {
        Accepted::Absolute(most) => most == 0.0,
        Accepted::Relative(_) => false,
        Accepted::Interval(low, high) => low > published || high < published,
    }
}

/// Whether a quantity compares two things.
fn compares(quantity: &str) -> bool {
    let is_yes_or_no = quantity.contains("(1 = yes)");
    !is_yes_or_no
        && [" over ", " less ", "correlation"]
            .iter()
            .any(|word| quantity.contains(word))
}

/// Lowest and highest accepted value.
fn ends(accepted: Accepted, published: f64) -> (f64, f64) {
    match accepted {
        Accepted::Interval(low, high) => (low, high),
        _ => {
            let half = accepted.half_width(published);
            (published - half, published + half)
        }
    }
}

/// What is wrong with what a row accepts, where it is about an effect.
fn fault_of_an_effect(row: &Row<'_>) -> Option<String> {
    const ROUNDING: f64 = 1.0e-9;
    let (published, accepted) = (row.published(), row.accepted());
    let (low, high) = ends(accepted, published);
    let null = match row.own_or_head("null") {
        "" => return Some("does not say what no effect would be".to_owned()),
        "none" => return None,
        "alike" => {
            let is_alike = (published - 1.0).abs() <= 0.05;
            return (!is_alike).then(|| "is not alike".to_owned());
        }
        number => quotient(number).expect("a number, alike or none"),
    };
    if (low..=high).contains(&null) {
        return Some(format!("accepts no effect, {null}"));
    }
    let nearest = (low - null).abs().min((high - null).abs());
    if row.own_or_head("scatter") == "order" {
        let most = 3.0 * published.abs();
        return if nearest < 0.01 - ROUNDING {
            Some("accepts less than 0.01 of an effect".to_owned())
        } else if null != 0.0 && !(0.0..=most).contains(&high) {
            Some("reaches further than three times".to_owned())
        } else if low < 0.0 && null != 0.0 {
            Some("accepts what is below nothing".to_owned())
        } else {
            None
        };
    }
    let left = match row.own_or_head("scatter") {
        "" | "none" => 0.5,
        _ => 0.1,
    };
    // Numbers are written to four figures: so is the half of an effect.
    let least = left * (published - null).abs() - 1.0e-3;
    (nearest < least).then(|| format!("comes nearer to no effect than {left} of the way"))
}

/// A row about an effect excludes that there is none.
#[test]
fn law_no_row_about_an_effect_accepts_that_there_is_none() {
    let mut faults = Vec::new();
    for paper in papers() {
        for row in paper.rows().filter(|row| row.kind().is_evidence()) {
            if compares(row.quantity())
                && let Some(fault) = fault_of_an_effect(&row)
            {
                faults.push(format!(
                    "{}, {}: {} {fault}",
                    paper.name,
                    row.quantity(),
                    row.accepted().as_text()
                ));
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

/// Absence is evidence only beside presence; geometry of gear, and the same answer twice, are none.
#[test]
fn law_no_row_counts_that_could_not_have_failed() {
    let mut faults = Vec::new();
    for paper in papers() {
        let mut people = BTreeSet::new();
        for row in paper.rows().filter(|row| row.kind().is_evidence()) {
            let is_exact = row.accepted() == Accepted::Absolute(0.0);
            let name = format!("{}, {}", paper.name, row.quantity());
            if is_exact && row.published() == 0.0 && row.text("needs").is_empty() {
                faults.push(format!("{name}: an absence that needs nothing"));
            }
            if row.own_or_head("about") == "mass" && row.own_or_head("on") == "chains" {
                faults.push(format!("{name}: the mass of a chain"));
            }
            let of_nobody = row
                .quantity()
                .replace("reference-woman", "")
                .replace("reference-man", "");
            if is_exact && !people.insert(of_nobody) {
                faults.push(format!("{name}: twice"));
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}
