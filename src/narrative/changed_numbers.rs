//! Numbers of a change: with a sign, with the decimals that matter, from what to what.
//!
//! In: numbers in the unit that is shown. Out: "+12.3", "67 → 54".

use super::quantities::rounded;

/// A signed number with a true minus sign: "+12.3", "−4".
#[must_use]
pub(crate) fn signed(value: f64, decimals: usize) -> String {
    let text = rounded(value, decimals);
    match text.strip_prefix('-') {
        Some(size) => format!("\u{2212}{size}"),
        None if text == "0" => text,
        None => format!("+{text}"),
    }
}

/// Decimals with which a change has two digits that matter, three at most.
#[must_use]
pub(crate) fn decimals_of(change: f64) -> usize {
    if change == 0.0 {
        return 0;
    }
    (1.0 - change.abs().log10().floor()).clamp(0.0, 3.0) as usize
}

/// Two values with as many decimals as it takes to see them differ, as many in both: "67 → 54", "0.0 → 0.1"; `None`
/// if three more do not show it.
#[must_use]
pub(crate) fn from_to(values: [f64; 2], decimals: usize) -> Option<String> {
    (decimals..=decimals + 3).find_map(|decimals| {
        let [before, after] = values.map(|value| format!("{:.decimals$}", value + 0.0));
        (rounded(values[0], decimals) != rounded(values[1], decimals))
            .then(|| format!("{before} \u{2192} {after}").replace('-', "\u{2212}"))
    })
}
