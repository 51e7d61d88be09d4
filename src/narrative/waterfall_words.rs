//! The parts of one change in words: names of a waterfall's rows, and the words around it.
//!
//! In: a value of a [`Family`], the [`Cause`] at a place. Out: [`WaterfallTold`].

use super::account_words::{item_in_words, item_name, spot_in_words};
use super::changed_numbers::{decimals_of, signed};
use super::figure_words::FigureWords;
use super::parameters::{parameter_at, parameter_in_words, shown_value};
use super::prose::{capital, counted_noun, listed};
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::study::{Cause, CauseItem, Family, Variant};
use crate::units::System;

/// A waterfall's words and figures.
pub(crate) struct WaterfallTold {
    /// The words around it.
    pub words: FigureWords,
    /// What is drawn, and its unit.
    pub axis: (String, &'static str),
    /// Decimals of the figures.
    pub decimals: usize,
    /// Names of the parts and the parts, in the unit of the axis.
    pub parts: Vec<(String, f64)>,
    /// What their sum is called.
    pub whole: String,
}

/// Parts smaller than this share of the largest are not drawn alone (assumed).
const SMALL: f64 = 0.02;

/// The words and figures of a change, with at most so many parts of their own.
#[must_use]
pub(crate) fn waterfall_told(
    family: &Family,
    variant: &Variant,
    cause: &Cause,
    most: usize,
    units: System,
) -> WaterfallTold {
    let unit = units.load_unit(family.base.range.measure);
    let change = unit.of(cause.account.change());
    let decimals = decimals_of(change);
    let items = cause.items();
    let largest = items.first().map_or(0.0, |item| item.part.abs());
    let alone = items.iter().take(most);
    let alone: Vec<&CauseItem> = alone.filter(|i| i.part.abs() >= SMALL * largest).collect();
    let mut parts: Vec<(String, f64)> = alone
        .iter()
        .map(|item| (capital(&item_name(cause, item)), unit.of(item.part)))
        .collect();
    let rest = change - parts.iter().map(|(_, part)| part).sum::<f64>();
    let left = items.len() - alone.len();
    if left > 0 && rounded(rest, decimals) != "0" {
        parts.push((format!("All else ({})", counted_noun(left, "part")), rest));
    }
    let told = Change {
        // Number and unit stay on one line of a title.
        change: format!("{}\u{a0}{}", signed(change, decimals), unit.symbol),
        decimals,
        capacity: cause
            .account
            .capacity
            .map(|c| rounded(unit.of(c), decimals)),
        unit: unit.symbol,
    };
    WaterfallTold {
        words: words(family, variant, cause, &told, &parts, units),
        axis: ("Change of the capacity".to_owned(), unit.symbol),
        decimals,
        parts,
        whole: "Together".to_owned(),
    }
}

/// A change as it is told.
struct Change {
    change: String,
    decimals: usize,
    capacity: [String; 2],
    unit: &'static str,
}

fn words(
    family: &Family,
    variant: &Variant,
    cause: &Cause,
    told: &Change,
    parts: &[(String, f64)],
    units: System,
) -> FigureWords {
    let name = parameter_in_words(&family.parameter.path);
    let place = spot_in_words(cause, units);
    let items = cause.items();
    let first = items.first();
    let unit = units.load_unit(family.base.range.measure);
    let most = first.map_or_else(String::new, |item| {
        let part = signed(unit.of(item.part), told.decimals);
        format!(
            "; largest part: {}, {part}",
            item_name(cause, item).replace(": ", ", ")
        )
    });
    let figures = first.map_or_else(String::new, |item| {
        format!("{}. ", capital(&item_in_words(cause, item, unit, units)))
    });
    let drawn: Vec<String> = parts
        .iter()
        .map(|(name, part)| format!("{} {}", name, signed(*part, decimals_of(*part))))
        .collect();
    FigureWords {
        title: format!(
            "{}: {} {place}{most}",
            parameter_at(&family.parameter.path, &variant.text),
            told.change
        ),
        subtitle: format!(
            "{}: capacity of the {} {}, {} \u{2192} {} {}",
            family.base.lifter_title,
            family.base.movement_title.to_lowercase(),
            place,
            told.capacity[0],
            told.capacity[1],
            told.unit
        ),
        footnote: format!(
            "{figures}Parts by muscle and factor (Shapley's split, joints by their dual values); they add up to the \
             change."
        ),
        description: format!(
            "A waterfall of what {} of the {name} does to the capacity of the {} {place}: {} {}, together {}.",
            shown_value(&variant.text),
            family.base.movement_title.to_lowercase(),
            listed(&drawn),
            told.unit,
            told.change
        ),
        caption: String::new(),
    }
}
