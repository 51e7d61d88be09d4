//! The state that an address of the page stands for, read as the page reads it.
//!
//! In: what stands behind the `#` of an address. Out: [`PageState`]. What the page itself passes over is passed over here.

use super::page_state::{PageState, PageUnits};
use crate::error::Result;
use crate::library::{Library, Workbench};
use crate::movement::{Measure, trace};
use crate::narrative::shown_units::ShownUnits;
use crate::units::System;

/// The state of an address.
///
/// **Fails** where its lift or lifter is none, and where the lifter cannot take the lift's poses.
pub fn state_of(address: &str, library: &Library) -> Result<PageState> {
    let words: Vec<(String, String)> = address
        .trim_start_matches('#')
        .split('&')
        .map(|word| word.split_once('=').unwrap_or((word, "")))
        .map(|(key, value)| (decoded(key), decoded(value)))
        .collect();
    let given = |key: &str| {
        let found = words.iter().find(|(name, _)| name == key);
        found.map(|(_, value)| value.clone())
    };
    let number = |key: &str| {
        let value = given(key)?.trim().parse::<f64>().ok()?;
        value.is_finite().then_some(value)
    };
    let units = match given("units").as_deref() {
        Some("us") => PageUnits::Us,
        _ => PageUnits::Metric,
    };
    let sets = words.iter().filter(|(key, _)| key == "set");
    let mut state = PageState {
        lift: given("lift").unwrap_or_default(),
        lifter: given("lifter").unwrap_or_else(|| USUAL_LIFTER.to_owned()),
        band: given("band").into_iter().collect(),
        chain: given("chain").into_iter().collect(),
        set: sets.map(|(_, value)| value.clone()).collect(),
        units,
        ..PageState::default()
    };
    let unit = System::from(units).mass_unit().symbol;
    let load = number("load").map(|load| (load.clamp(0.0, MOST_LOAD) * 100.0).round() / 100.0);
    state.load = load
        .map(|load| format!("{load} {unit}"))
        .into_iter()
        .collect();
    state.check(library)?;
    if let Some(speed) = number("speed").filter(|speed| *speed != 0.0) {
        let model = Workbench::open(library, &state.lifter, &state.lift)?.model(&state.set)?;
        let unit = match trace(&model.movement, &model.lifter, FEWEST_POSES)?.measure {
            Measure::Force => "m/s",
            Measure::Torque => "deg/s",
        };
        state.speed = Some(format!("{speed} {unit}"));
    }
    Ok(state)
}

/// Who lifts where an address names nobody.
const USUAL_LIFTER: &str = "reference-man";
/// Where the page cuts a weight.
const MOST_LOAD: f64 = 3000.0;
/// Poses that tell what a lift is measured in.
const FEWEST_POSES: usize = 5;

/// A word of an address as it was meant: `+` for a blank, `%` with two digits for a byte.
pub fn decoded(word: &str) -> String {
    let bytes = word.as_bytes();
    let mut plain = Vec::with_capacity(bytes.len());
    let mut at = 0;
    while let Some(byte) = bytes.get(at) {
        let digits = bytes.get(at + 1..at + 3).filter(|_| *byte == b'%');
        let digits = digits.and_then(|digits| std::str::from_utf8(digits).ok());
        let coded = digits
            .filter(|digits| digits.bytes().all(|digit| digit.is_ascii_hexdigit()))
            .and_then(|digits| u8::from_str_radix(digits, 16).ok());
        plain.push(match (byte, coded) {
            (_, Some(coded)) => coded,
            (b'+', None) => b' ',
            (other, None) => *other,
        });
        at += if coded.is_some() { 3 } else { 1 };
    }
    String::from_utf8_lossy(&plain).into_owned()
}
