//! Why a changed value changed a curve, in words.
//!
//! In: [`Cause`]s with their exact accounts. Out: sentences that name the largest parts, and what is left.

use super::account_words::{item_in_words, item_name, spot_before};
use super::changed_numbers::{decimals_of, signed};
use super::parameters::parameter_at;
use super::prose::{capital, listed};
use super::quantities::rounded;
use super::shown_units::{ShownUnit, ShownUnits};
use crate::study::{Cause, CauseItem, Family, ItemOf, Variant};
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
    let head = parameter_at(&family.parameter.path, &variant.text) + ":";
    let places = variant.causes.iter();
    let places = places.map(|cause| capital(&cause_in_words(cause, unit, units)) + ".");
    std::iter::once(head).chain(places).collect()
}

/// What happened at one place and why: "at the end −17 N·m (38 → 21): biceps long head: fibres …: −13 N·m".
#[must_use]
pub(crate) fn cause_in_words(cause: &Cause, unit: ShownUnit, units: System) -> String {
    let place = spot_before(cause, units);
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
    let in_unit = |part: f64| format!("{} {}", signed(part, decimals), unit.symbol);
    for item in &told {
        let words = item_in_words(cause, item, unit, units);
        parts.push(format!("{words}: {}", in_unit(unit.of(item.part))));
    }
    let else_part = change - told.iter().map(|item| unit.of(item.part)).sum::<f64>();
    let cancels = cancels_in_the_rest(cause, &told);
    if cancels || rounded(else_part, decimals) != "0" {
        let of = if cancels { OF_LARGER_PARTS } else { "" };
        parts.push(format!("all else {}{of}", in_unit(else_part)));
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
pub(crate) fn cause_in_short(cause: &Cause, unit: ShownUnit, units: System) -> String {
    cause_in_parts(cause, usize::MAX, unit, units)
}

/// The same with at most so many parts before the rest.
pub(crate) fn cause_in_parts(cause: &Cause, most: usize, unit: ShownUnit, units: System) -> String {
    let place = spot_before(cause, units);
    let mut told = told_items(cause);
    told.truncate(most);
    let Some(first) = told.first() else {
        return format!("{place} {}", unchanged(cause));
    };
    let change = unit.of(cause.account.change());
    let decimals = decimals_of(change).min(decimals_of(unit.of(first.part)) + 1);
    let part =
        |part: f64, name: &str| format!("{} {} by {name}", signed(part, decimals), unit.symbol);
    let mut parts: Vec<String> = told
        .iter()
        .map(|item| part(unit.of(item.part), &possessed(&item_name(cause, item))))
        .collect();
    // The rest is what makes the printed numbers add up.
    let printed = |value: f64| {
        let scale = 10_f64.powi(decimals as i32);
        (value * scale).round() / scale
    };
    let told: f64 = told.iter().map(|item| printed(unit.of(item.part))).sum();
    let rest = printed(change) - told;
    if rounded(rest, decimals) != "0" {
        parts.push(part(rest, "all else"));
    }
    format!(
        "{place} {} {} {}: {}",
        rounded(change.abs(), decimals),
        unit.symbol,
        if change < 0.0 { "less" } else { "more" },
        parts.join(", ")
    )
}

/// "deltoid anterior part: moment arm" inside a sentence: "deltoid anterior part's moment arm".
fn possessed(name: &str) -> String {
    match name.split_once(": ") {
        Some((owner, own)) if owner.ends_with('s') => format!("{owner}' {own}"),
        Some((owner, own)) => format!("{owner}'s {own}"),
        None => name.to_owned(),
    }
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

/// The one or two largest parts, up to two more that are nearly as large, and what it takes that nothing left is
/// larger than any of them; none where not even the largest is worth telling.
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
    let first = items.iter().copied().take(4).enumerate().take_while(worth);
    let mut told: Vec<CauseItem> = first.map(|(_, item)| item).collect();
    let sizes = told.iter().map(|item| item.part.abs());
    let mut smallest = sizes.fold(f64::INFINITY, f64::min);
    let left = &items[told.len()..];
    let mut rest: f64 = left.iter().map(|item| item.part).sum();
    if told.is_empty() {
        return told;
    }
    for item in cause.gathered(left) {
        if rest.abs() <= smallest.max(SEEN * size) {
            break;
        }
        rest -= item.part;
        smallest = smallest.min(item.part.abs());
        told.push(item);
    }
    told.sort_by(|a, b| b.part.abs().total_cmp(&a.part.abs()));
    told
}

/// What is said of a rest that is small only because larger parts in it cancel.
const OF_LARGER_PARTS: &str = ", in which larger parts cancel";
/// A part of the rest is larger from this many times the rest on (assumed).
const LARGER: f64 = 2.0;

/// Whether a part that is left is worth telling and larger than all that are left together.
fn cancels_in_the_rest(cause: &Cause, told: &[CauseItem]) -> bool {
    let size = cause.account.capacity[0].abs();
    let is_told = |item: &CauseItem| {
        told.iter().any(|other| match (other.of, item.of) {
            (ItemOf::Others(gathered, _), ItemOf::Muscle(_, factor)) => gathered == factor,
            (other, own) => other == own,
        })
    };
    let left: Vec<f64> = cause
        .items()
        .iter()
        .filter(|item| !is_told(item))
        .map(|item| item.part)
        .collect();
    let largest = left
        .iter()
        .fold(0.0, |most: f64, part| most.max(part.abs()));
    largest >= TOLD * size && largest >= LARGER * left.iter().sum::<f64>().abs()
}

/// Shares in the limit that all move by less are not told, unless another joint gives way first (assumed: about what
/// the muscles' numbers are known to).
const MOVES: f64 = 0.04;
/// A smaller share in the limit is not told beside others (assumed).
const NO_SHARE: f64 = 0.005;

/// How much of what more strength would add each joint has before and after, where that moves.
fn limit_in_words(cause: &Cause) -> Option<String> {
    let shares = cause.shares_in_the_limit();
    let moved = shares.iter();
    let first = |side: usize| {
        let all = moved.clone();
        all.max_by(|(_, a), (_, b)| a[side].total_cmp(&b[side]))
            .map(|(joint, _)| joint)
    };
    let shown = |share: &f64| rounded(100.0 * share, 0);
    let turns = first(0) != first(1)
        && moved
            .clone()
            .any(|(_, [before, after])| shown(before) != shown(after));
    let moves = |(_, [before, after]): &(_, [f64; 2])| (after - before).abs() >= MOVES;
    if !turns && !moved.clone().any(moves) {
        return None;
    }
    let seen = moved.filter(|(_, shares)| shares.iter().any(|share| *share >= NO_SHARE));
    let told: Vec<String> = seen
        .map(|(joint, shares)| {
            let [before, after] = shares.map(|share| rounded(100.0 * share, 0));
            format!("the {} has {before} \u{2192} {after} %", joint.name())
        })
        .collect();
    Some(format!("of what more strength would add {}", listed(&told)))
}
