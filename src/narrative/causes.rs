//! Why a changed value changed a curve, in words.
//!
//! In: [`Cause`]s with figures. Out: sentences that name the largest parts, and which work against which.

use super::parameters::{parameter_in_words, shown_value};
use super::prose::capital;
use super::quantities::rounded;
use crate::study::{Cause, Family, Spot, Variant};

/// A change smaller than this is not told: a quarter of a per cent.
const TOLD: f64 = 0.0025;

/// Parts of a change that are told.
const MOST_TERMS: usize = 4;
/// Parts that are told where room is short.
const MOST_SHORT: usize = 2;

/// What one value of a family did and why, as one sentence with figures.
#[must_use]
pub fn why_it_changed(family: &Family, variant: &Variant) -> String {
    let causes: Vec<String> = variant.causes.iter().map(cause_in_words).collect();
    format!(
        "{} {}: {}.",
        capital(&parameter_in_words(&family.parameter.path)),
        shown_value(&variant.text),
        causes.join("; ")
    )
}

/// What happened at one place and why: "at the end −6 %: longer arms (+9 %), but shorter fibres (…)".
fn cause_in_words(cause: &Cause) -> String {
    let place = spot_in_words(cause.spot);
    let told = joined(cause, MOST_TERMS, true);
    if cause.capacity_log.abs() < TOLD {
        return match terms(cause).len() {
            0 | 1 => format!("{place} nothing changes"),
            _ => format!("{place} hardly anything changes: {told}"),
        };
    }
    let words = format!("{place} {}", change(cause.capacity_log));
    if told.is_empty() {
        words
    } else {
        format!("{words}: {told}")
    }
}

/// The same without figures behind the terms: "at the end −6 % (longer arms, but shorter fibres)".
#[must_use]
pub(crate) fn cause_in_short(cause: &Cause) -> String {
    let words = format!(
        "{} {}",
        spot_in_words(cause.spot),
        change(cause.capacity_log)
    );
    let told = joined(cause, MOST_SHORT, false);
    if told.is_empty() {
        words
    } else {
        format!("{words} ({told})")
    }
}

fn spot_in_words(spot: Spot) -> &'static str {
    match spot {
        Spot::Start => "at the start",
        Spot::Peak => "at the peak",
        Spot::Hardest => "at the hardest place",
        Spot::Middle => "in the middle",
        Spot::End => "at the end",
    }
}

/// A logarithm as a change in per cent: "+10 %".
fn change(log: f64) -> String {
    let percent = 100.0 * log.exp_m1();
    let decimals = if percent.abs() < 10.0 { 1 } else { 0 };
    let text = rounded(percent, decimals);
    let sign = if percent > 0.0 && text != "0" {
        "+"
    } else {
        ""
    };
    format!("{sign}{text} %").replace('-', "\u{2212}")
}

/// That another joint, or the same one in another plane, gives way first.
fn other_limit(cause: &Cause) -> String {
    let [was, is] = cause.joints;
    match (cause.is_same_limit, was == is) {
        (true, _) => String::new(),
        (false, true) => format!("the {is} gives way in another plane"),
        (false, false) => format!("the {is} gives way first instead of the {was}"),
    }
}

/// One part of a change.
struct Term {
    log: f64,
    name: String,
    figures: String,
}

/// The parts that matter, the largest first.
fn terms(cause: &Cause) -> Vec<Term> {
    if !cause.is_explained() {
        return Vec::new();
    }
    let either = |log: f64, up: &str, down: &str| Term {
        log,
        name: if log > 0.0 { up } else { down }.to_owned(),
        figures: change(log),
    };
    let mut terms = vec![
        either(cause.arm_log, "longer moment arms", "shorter moment arms"),
        force(cause),
        either(
            cause.lever_log,
            "a shorter lever of the load",
            "a longer lever of the load",
        ),
        either(
            cause.rest_log,
            "less taken by the body's own weight",
            "more taken by the body's own weight",
        ),
    ];
    terms.sort_by(|a, b| b.log.abs().total_cmp(&a.log.abs()));
    let least = TOLD.max(0.15 * terms[0].log.abs());
    terms.retain(|term| term.log.abs() >= least);
    terms
}

/// More or less force, with the fibre lengths behind it where their figures differ.
fn force(cause: &Cause) -> Term {
    let [was, is] = cause.fibre_norm.map(|norm| rounded(100.0 * norm, 0));
    let (log, amount) = (
        cause.force_log,
        if cause.force_log > 0.0 {
            "more"
        } else {
            "less"
        },
    );
    if was == is {
        return Term {
            log,
            name: format!("{amount} muscle force"),
            figures: change(log),
        };
    }
    let [before, after] = cause.fibre_norm;
    let fibres = if after > before { "longer" } else { "shorter" };
    Term {
        log,
        name: format!("{fibres} fibres with {amount} force"),
        figures: format!(
            "{}, {is} instead of {was} % of their optimal length",
            change(log)
        ),
    }
}

/// Terms joined by "and", or by "but" where they work against the one before.
fn joined(cause: &Cause, most: usize, with_figures: bool) -> String {
    let mut words = other_limit(cause);
    let mut last = 0.0;
    for term in terms(cause).into_iter().take(most) {
        if !words.is_empty() {
            words += if term.log * last < 0.0 {
                ", but "
            } else {
                " and "
            };
        }
        last = term.log;
        words += &term.name;
        if with_figures {
            words += &format!(" ({})", term.figures);
        }
    }
    words
}
