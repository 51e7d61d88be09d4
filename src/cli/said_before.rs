//! What a file printed before is held against what its command prints now: another number is told, not passed over.
//!
//! In: two texts of JSON or CSV with how they were made. Out: the first place at which they differ.

use serde_json::Value;
use std::borrow::Cow;

/// Numbers that differ by less, as a share, are one: other machines round their last digits in other ways.
const ALIKE: f64 = 1.0e-9;

/// Where two texts differ first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OtherNumber {
    /// The row of a table, counted from its heads; none of JSON, whose lines name themselves.
    pub row: Option<usize>,
    /// What the file says.
    pub then: String,
    /// What the command prints.
    pub now: String,
}

/// The first place where the file says something else than its command; how either was made is not compared.
pub fn other_number(then: &str, now: &str) -> Option<OtherNumber> {
    let is_table = !then.trim_start().starts_with('{');
    let (then, now) = (without_making(then), without_making(now));
    let (mut before, mut after) = (then.lines(), now.lines());
    for row in 0.. {
        let (one, other) = match (before.next(), after.next()) {
            (None, None) => return None,
            (one, other) => (one.unwrap_or_default(), other.unwrap_or_default()),
        };
        if let Some((then, now)) = differing(one, other, is_table) {
            return Some(OtherNumber {
                row: is_table.then_some(row),
                then,
                now,
            });
        }
    }
    None
}

/// The text without the record of its making.
fn without_making(text: &str) -> Cow<'_, str> {
    let body = text.trim_start();
    if body.starts_with('#') {
        let rows: Vec<&str> = body
            .lines()
            .filter(|line| !line.starts_with("# "))
            .collect();
        return rows.join("\n").into();
    }
    match serde_json::from_str::<Value>(body) {
        Ok(Value::Object(mut object)) => {
            object.shift_remove("provenance");
            let pretty = serde_json::to_string_pretty(&object);
            pretty.map_or(Cow::Borrowed(text), Cow::Owned)
        }
        _ => Cow::Borrowed(text),
    }
}

/// The cells of two rows, or two lines of JSON, that are neither alike nor one number.
fn differing(one: &str, other: &str, is_table: bool) -> Option<(String, String)> {
    if one == other {
        return None;
    }
    if !is_table {
        let (key, value) = key_and_value(one);
        let (other_key, other_value) = key_and_value(other);
        let differs = key != other_key || !are_one(value, other_value);
        return differs.then(|| (one.trim().to_owned(), other.trim().to_owned()));
    }
    let (mut before, mut after) = (one.split(','), other.split(','));
    loop {
        match (before.next(), after.next()) {
            (None, None) => return None,
            (one, other) => {
                let (one, other) = (one.unwrap_or_default(), other.unwrap_or_default());
                if !are_one(one, other) {
                    return Some((one.to_owned(), other.to_owned()));
                }
            }
        }
    }
}

/// What stands before the last colon of a line of JSON, and the value behind it.
fn key_and_value(line: &str) -> (&str, &str) {
    let line = line.trim().trim_end_matches(',');
    line.rsplit_once(": ").unwrap_or(("", line))
}

/// Whether two texts are alike, or one number.
fn are_one(one: &str, other: &str) -> bool {
    if one == other {
        return true;
    }
    match (one.parse::<f64>(), other.parse::<f64>()) {
        (Ok(one), Ok(other)) => (one - other).abs() <= ALIKE * one.abs().max(other.abs()).max(1.0),
        _ => false,
    }
}
