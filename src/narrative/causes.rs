//! Why a changed value changed a curve, in words.
//!
//! In: [`Cause`]s with their exact accounts. Out: sentences that name the largest parts, and what is left.

use super::account_words::{decimals_of, item_in_words, item_name, signed, spot_in_words};
use super::parameters::{parameter_in_words, shown_value};
use super::prose::{capital, listed};
use super::quantities::rounded;
use super::shown_units::{ShownUnit, ShownUnits};
use crate::study::{Cause, CauseItem, Family, Variant};
use crate::units::System;

/// A change or a part smaller than this share of the capacity is not told: a quarter of a per cent.
const TOLD: f64 = 0.0025;
/// A change smaller than this share of the capacity is called none, whatever cancels out in it.
const SEEN: f64 = 0.0005;
/// A second part is told from this share of the first on (assumed).
const SECOND: f64 = 0.15;
/// A third and a fourth part are told from this share of the first on (assumed): "all else" hides nothing as large.
const MORE: f64 = 0.4;

/// What one value of a family did and why, as one text with figures.
#[must_use]
pub fn why_it_changed(family: &Family, variant: &Variant, units: System) -> String {
    why_lines(family, variant, units).join(" ")
}

/// The same with a line for the value and one for each place.
#[must_use]
pub fn why_lines(family: &Family, variant: &Variant, units: System) -> Vec<String> {
    let unit = units.load_unit(family.base.range.measure);
    let head = format!(
        "{} {}:",
        capital(&parameter_in_words(&family.parameter.path)),
        shown_value(&variant.text)
    );
    let places = variant.causes.iter();
    let places = places.map(|cause| capital(&cause_in_words(cause, unit, units)) + ".");
    std::iter::once(head).chain(places).collect()
}

/// What happened at one place and why: "at the end −17 N·m (38 → 21): biceps long head: fibres …: −13 of −17 N·m".
#[must_use]
pub(crate) fn cause_in_words(cause: &Cause, unit: ShownUnit, units: System) -> String {
    let place = spot_in_words(cause.spot);
    let told = told_items(cause);
    let Some(first) = told.first() else {
        return format!("{place} {}", unchanged(cause));
    };
    let change = unit.of(cause.account.change());
    let decimals = decimals_of(change).min(decimals_of(unit.of(first.part)) + 1);
    let capacity = cause
        .account
        .capacity
        .map(|c| rounded(unit.of(c), decimals));
    let whole = format!("{} {}", signed(change, decimals), unit.symbol);
    let mut parts: Vec<String> = Vec::new();
    for (place, item) in told.iter().enumerate() {
        let part = signed(unit.of(item.part), decimals);
        let of = if place == 0 {
            format!(" of {whole}")
        } else {
            String::new()
        };
        parts.push(format!("{}: {part}{of}", item_in_words(cause, item, units)));
    }
    let else_part = change - told.iter().map(|item| unit.of(item.part)).sum::<f64>();
    if rounded(else_part, decimals) != "0" {
        parts.push(format!("all else {}", signed(else_part, decimals)));
    }
    parts.extend(limit_in_words(cause));
    format!(
        "{place} {whole} ({} \u{2192} {}): {}",
        capacity[0],
        capacity[1],
        parts.join("; ")
    )
}

/// The same in few words: "at the end 17 N·m less: \u{2212}13 N·m by biceps long head: fibre length, \u{2212}4 N·m by all else".
#[must_use]
pub(crate) fn cause_in_short(cause: &Cause, unit: ShownUnit) -> String {
    let place = spot_in_words(cause.spot);
    let told = told_items(cause);
    let Some(first) = told.first() else {
        return format!("{place} {}", unchanged(cause));
    };
    let change = unit.of(cause.account.change());
    let decimals = decimals_of(change).min(decimals_of(unit.of(first.part)) + 1);
    let part =
        |part: f64, name: &str| format!("{} {} by {name}", signed(part, decimals), unit.symbol);
    let mut parts: Vec<String> = told
        .iter()
        .map(|item| part(unit.of(item.part), &item_name(cause, item)))
        .collect();
    let told: f64 = told.iter().map(|item| unit.of(item.part)).sum();
    if rounded(change - told, decimals) != "0" {
        parts.push(part(change - told, "all else"));
    }
    format!(
        "{place} {} {} {}: {}",
        rounded(change.abs(), decimals),
        unit.symbol,
        if change < 0.0 { "less" } else { "more" },
        parts.join(", ")
    )
}

/// That not even the largest part is worth telling, or that there is none.
fn unchanged(cause: &Cause) -> &'static str {
    /// A part that is rounding, share of the capacity.
    const ROUNDING: f64 = 1.0e-9;
    let least = ROUNDING * cause.account.capacity[0].abs();
    match cause.items().first() {
        Some(item) if item.part.abs() > least => "hardly anything changes",
        _ => "nothing changes",
    }
}

/// The one or two largest parts, and up to two more that are nearly as large; none where not even the largest is
/// worth telling.
#[must_use]
pub(crate) fn told_items(cause: &Cause) -> Vec<CauseItem> {
    let size = cause.account.capacity[0].abs();
    if cause.account.change().abs() < SEEN * size {
        return Vec::new();
    }
    let least = TOLD * size;
    let items = cause.items();
    let largest = items.first().map_or(0.0, |item| item.part.abs());
    let worth = |(place, item): &(usize, CauseItem)| {
        let share = if *place < 2 { SECOND } else { MORE };
        item.part.abs() >= least && item.part.abs() >= share * largest
    };
    let told = items.into_iter().take(4).enumerate().take_while(worth);
    told.map(|(_, item)| item).collect()
}

/// That other joints limit after than before, or the same ones in another order.
fn limit_in_words(cause: &Cause) -> Option<String> {
    if !cause.limit_changes() {
        return None;
    }
    let limiting = cause.limiting();
    let [before, after] = limiting.each_ref().map(|joints| {
        joints
            .iter()
            .map(|joint| joint.name().to_owned())
            .collect::<Vec<String>>()
    });
    let is_same = before.len() == after.len() && before.iter().all(|joint| after.contains(joint));
    if let (true, [was, ..], [is, ..]) = (is_same, before.as_slice(), after.as_slice()) {
        return Some(format!(
            "of the joints that limit together the {is} now limits most, before it was the {was}"
        ));
    }
    let counts = [before.len(), after.len()];
    let [before, after] = [before, after].map(|names| match names.as_slice() {
        [] => "nothing".to_owned(),
        [only] if counts != [1, 1] => format!("the {only} alone"),
        [only] => format!("the {only}"),
        [first, others @ ..] => format!("the {first} with the {}", listed(others)),
    });
    Some(format!("the limit moves from {before} to {after}"))
}
