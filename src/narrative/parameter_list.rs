//! Values that can be set, as a list for people: grouped by what they are part of, narrow enough for a terminal.
//!
//! In: [`ListedValue`]s. Out: text of at most 80 columns, but for words that are longer.

use super::parameter_meanings::meaning;
use super::parameters::parameter_in_words;
use super::quantities::{rounded, with_minus};
use super::rank_words::origin;
use super::source_words::source_in_words;
use crate::library::SettableNow;
use crate::study::ListedValue;
use crate::units::{Force, Length, Mass, System, Torque};

/// Columns of a line.
const COLUMNS: usize = 80;

/// Values in a list that is told in full.
const FEW: usize = 12;

/// What a value means, as its file says it or in words of ours.
#[must_use]
pub fn meaning_of(listed: &ListedValue) -> String {
    let value = &listed.value;
    let own = value.meaning.clone().map(sentence);
    let known = own.or_else(|| meaning(&value.path));
    known.unwrap_or_else(|| sentence(parameter_in_words(&value.path)))
}

/// A phrase with its capital and its full stop.
fn sentence(phrase: String) -> String {
    let mut letters = phrase.chars();
    let first = letters.next().map(|first| first.to_uppercase().to_string());
    let end = if phrase.ends_with('.') { "" } else { "." };
    first.unwrap_or_default() + letters.as_str() + end
}

/// The values as a list: in full where they are few or that is wished for, else a line each.
#[must_use]
pub fn list_of_values(values: &[ListedValue], in_full: bool, units: System) -> String {
    if in_full || values.len() <= FEW {
        let blocks = values.iter().map(|value| block(value, units));
        return blocks.collect::<Vec<_>>().join("\n");
    }
    let mut text = format!("{:34} {:>13}  {}\n", "value", "now", "plausible; from");
    let mut group = String::new();
    for listed in values {
        let (record, name) = grouped(listed);
        if record != group {
            text += &format!("{record}\n");
            group = record;
        }
        text += &line(&name, listed, units);
    }
    text + "\nA path is the heading with what stands under it; --find WORD or --long says more of each.\n"
}

/// The record that a value stands in, and its name there.
fn grouped(listed: &ListedValue) -> (String, String) {
    let path = &listed.value.path;
    let shallow = ["lifter.", "technique.", "build."];
    let deep = if shallow.iter().any(|group| path.starts_with(group)) {
        1
    } else {
        2
    };
    let cut = path
        .match_indices('.')
        .nth(deep - 1)
        .map_or(0, |(index, _)| index);
    let before = listed
        .movement
        .as_ref()
        .map(|movement| format!("{movement}: "));
    (
        before.unwrap_or_default() + &path[..cut],
        path[cut..].to_owned(),
    )
}

/// A value in a line; what does not fit beside its name goes below.
fn line(name: &str, listed: &ListedValue, units: System) -> String {
    let now = now(listed, units);
    let plausible = usual(listed, units).or_else(|| accepted(listed, units));
    let behind = [plausible, Some(origin(&listed.value.from))];
    let behind = behind.into_iter().flatten().collect::<Vec<_>>().join("; ");
    let name = format!("  {name}");
    let (wide, long) = (name.chars().count() > 34, now.chars().count() > 13);
    let first = if wide {
        format!("{name}\n{:34}", "")
    } else {
        format!("{name:34}")
    };
    if long {
        format!("{first} {now}\n{:48}  {behind}\n", "")
    } else {
        format!("{first} {now:>13}  {behind}\n")
    }
}

/// A value in full: path, value, meaning, range, what is known of it and from where.
fn block(listed: &ListedValue, units: System) -> String {
    let value = &listed.value;
    let movement = listed
        .movement
        .as_ref()
        .map(|movement| format!(" ({movement})"));
    let head = format!(
        "{}{} = {}",
        value.path,
        movement.unwrap_or_default(),
        now(listed, units)
    );
    let mut lines = vec![meaning_of(listed)];
    lines.extend(plausible_in_words(listed, units).map(|range| format!("Plausible: {range}.")));
    lines.extend(known_to(listed, units));
    if value.path.starts_with("muscles.") {
        lines.push("As this lifter has it: --set takes it so, the file's own is scaled to size and strength.".to_owned());
    }
    let source = value.from.source.as_ref().map(source_in_words);
    let source = source.unwrap_or_else(|| "no source".to_owned());
    let source = sentence(source);
    lines.push(match &value.from.file {
        Some(file) => format!("{source} In {file}."),
        None => source,
    });
    let wrapped = lines.iter().map(|line| wrapped(line, "    "));
    format!("{head}\n{}", wrapped.collect::<String>())
}

/// What the value is now.
fn now(listed: &ListedValue, units: System) -> String {
    match &listed.value.now {
        SettableNow::Number { si, unit } => shown(*si, unit, units),
        SettableNow::Word { now, .. } => now.clone(),
        SettableNow::Free { .. } => "free".to_owned(),
    }
}

/// What is accepted.
fn accepted(listed: &ListedValue, units: System) -> Option<String> {
    let value = &listed.value;
    let unit = match &value.now {
        SettableNow::Word { of, .. } => return Some(of.join(" or ")),
        SettableNow::Number { unit, .. } | SettableNow::Free { unit } => *unit,
    };
    let above = if value.least_is_inside { "" } else { "above " };
    Some(format!("{above}{}", ends(value.range?, unit, units)))
}

/// What one meets, where that is narrower than what is accepted.
fn usual(listed: &ListedValue, units: System) -> Option<String> {
    match &listed.value.now {
        SettableNow::Number { unit, .. } => Some(ends(listed.value.usual?, unit, units)),
        _ => None,
    }
}

/// What one meets, and what is accepted.
#[must_use]
pub fn plausible_in_words(listed: &ListedValue, units: System) -> Option<String> {
    let accepted = accepted(listed, units)?;
    Some(match usual(listed, units) {
        Some(usual) => format!("{usual} (accepted {accepted})"),
        None => accepted,
    })
}

/// Both ends of a range with their unit, the lower one in the unit of the upper one.
fn ends((least, most): (f64, f64), unit: &str, units: System) -> String {
    let (factor, unit) = shown_unit(most, unit, units);
    let [least, most] = [least, most].map(|end| with_minus(&digits(factor * end, 3)));
    format!("{least} to {most} {unit}").trim_end().to_owned()
}

/// What is known of a fitted value before and after the fit.
fn known_to(listed: &ListedValue, units: System) -> Option<String> {
    let fitted = listed.value.from.fitted?;
    let SettableNow::Number { unit, .. } = &listed.value.now else {
        return None;
    };
    let scale = listed.value.scaled_by;
    let both = |value: f64, deviation: f64| {
        let (number, _) = in_unit(scale * value, unit, units);
        format!(
            "{number} ± {}",
            shown((scale * deviation).abs(), unit, units)
        )
    };
    Some(format!(
        "Fitted: {}; before the fit {}.",
        both(fitted.value, fitted.deviation),
        both(fitted.prior, fitted.prior_deviation)
    ))
}

/// A value with its unit.
fn shown(si: f64, unit: &str, units: System) -> String {
    let (number, unit) = in_unit(si, unit, units);
    format!("{number} {unit}").trim_end().to_owned()
}

/// A number of SI in the unit in which people read it, four digits of it.
fn in_unit(si: f64, unit: &str, units: System) -> (String, &str) {
    let (factor, unit) = shown_unit(si, unit, units);
    (with_minus(&digits(factor * si, 4)), unit)
}

/// The unit in which people read a number of SI, and how much of it one of SI is.
#[must_use]
pub fn shown_unit(si: f64, unit: &str, units: System) -> (f64, &str) {
    let us = units == System::Us;
    match unit {
        "m" if us => (1.0 / Length::from_in(1.0).as_m(), "in"),
        "m" if si.abs() < 3.0 => (100.0, "cm"),
        "kg" if us => (1.0 / Mass::from_lb(1.0).as_kg(), "lb"),
        "N" if us => (1.0 / Force::from_lbf(1.0).as_n(), "lbf"),
        "N·m" if us => (1.0 / Torque::from_lbf_ft(1.0).as_nm(), "lbf·ft"),
        "rad" => (1.0_f64.to_degrees(), "deg"),
        "s" if si.abs() < 1.0 => (1000.0, "ms"),
        other => (1.0, other),
    }
}

/// So many digits that count, and all before the point.
fn digits(value: f64, count: i32) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0".to_owned();
    }
    let before = value.abs().log10().floor();
    let decimals = (f64::from(count - 1) - before).clamp(0.0, 8.0);
    rounded(value, decimals as usize)
}

/// A line broken into lines that fit, each behind an indent.
fn wrapped(text: &str, indent: &str) -> String {
    let mut lines = vec![String::new()];
    for word in text.split(' ') {
        let room = COLUMNS - indent.len();
        let last = lines.last().map_or(0, |line| line.chars().count());
        if last > 0 && last + 1 + word.chars().count() > room {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(word);
        }
    }
    lines
        .iter()
        .map(|line| format!("{indent}{line}\n"))
        .collect()
}
