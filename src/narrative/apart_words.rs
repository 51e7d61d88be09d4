//! Measurements that stand apart from all others, in words.
//!
//! In: a [`PersonFit`]. Out: sentences that ask of the measurement first, and say how far off the model itself is.

use super::prose::percent;
use crate::study::{DatumOutcome, PersonFit};
use std::collections::BTreeSet;

/// What stands apart from all other measurements, a sentence each.
#[must_use]
pub fn data_remarks(fit: &PersonFit) -> Vec<String> {
    let apart = fit.data.iter().filter(|datum| datum.is_apart());
    let mut told: Vec<String> = apart.map(|datum| stands_apart(datum, fit)).collect();
    let lifts = fit.data.iter().filter(|datum| datum.is_lift);
    let lifts: BTreeSet<&str> = lifts.map(|datum| datum.movement.as_str()).collect();
    if told.is_empty() && fit.data.len() > 1 {
        return vec!["All measurements fit each other.".to_owned()];
    }
    if !told.is_empty() && lifts.len() > 1 {
        told.push(format!(
            "If all of that is right, it may be the model and not the lifter: of one lift it tells another {} off, as published \
             ratios of lifts show; the interval counts that.",
            percent(fit.ratio_missed.exp_m1())
        ));
    }
    told
}

/// A measurement beside what is expected of it, and what to look at.
fn stands_apart(datum: &DatumOutcome, fit: &PersonFit) -> String {
    let ratio = datum.measured / datum.others.0;
    let side = if ratio > 1.0 { "above" } else { "below" };
    let from = if fit.data.len() > 1 {
        "this model makes of the others"
    } else {
        "people of that sex, size and training show"
    };
    format!(
        "`{}` is {} {side} what {from}, outside the interval that holds four in five: {}",
        datum.text,
        percent((ratio - 1.0).abs()),
        if datum.is_lift {
            "the same depth, range and technique? the right load and unit?"
        } else {
            "the same angle or height? the right unit?"
        }
    )
}
