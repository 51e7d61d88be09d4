//! What the page writes beside a dial: how far it goes, what is accepted, in which unit.
//!
//! In: a value that can be set, the ends of its dial. Out: words.

use super::parameter_list::plausible_in_words;
use super::quantities::{rounded, with_minus};
use crate::library::SettableNow;
use crate::study::ListedValue;
use crate::units::System;

/// How the value of a path is written on a dial: a factor says of what, a share of what; else its unit.
#[must_use]
pub fn unit_in_words<'a>(path: &str, unit: &'a str) -> &'a str {
    let is_factor = path.ends_with(".scale")
        || path == "lifter.strength_scale"
        || path.starts_with("lifter.strength.");
    if is_factor {
        return "\u{d7} usual";
    }
    match path.rsplit('.').next() {
        Some("max_velocity") if path.starts_with("muscles.") => "optimal lengths/s",
        Some("fibre_length") if path.contains(".reference.") => "optimal lengths",
        _ => unit,
    }
}

/// How far a dial goes and what the model accepts beyond that: "dial 0.5 to 1.5, accepted 0.05 to 20".
#[must_use]
pub fn dial_in_words(
    listed: &ListedValue,
    ends: Option<[f64; 2]>,
    units: System,
) -> Option<String> {
    let accepted = plausible_in_words(listed, units);
    let (Some([least, most]), SettableNow::Number { .. } | SettableNow::Free { .. }) =
        (ends, &listed.value.now)
    else {
        return accepted;
    };
    let [least, most] = [least, most].map(|end| with_minus(&rounded(end, 3)));
    let dial = format!("dial {least} to {most}");
    Some(match accepted {
        Some(accepted) => format!("{dial}, accepted {accepted}"),
        None => dial,
    })
}
