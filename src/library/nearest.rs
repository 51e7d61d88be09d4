//! The known names that a misspelt one is nearest to.
//!
//! In: what was written and the known names. Out: the nearest ones, as a fact beside all of them.

use crate::error::Known;

/// The known names within a distance of max(1, a third of the length), nearest first; those
/// much farther than the nearest are left out.
///
/// Distance is Damerau-Levenshtein on the lower-case names, where `-`, `_` and blank are one sign.
/// A name that begins with what was written, or the other way round, counts as near too.
#[must_use]
pub fn nearest<'a>(written: &str, known: &[&'a str]) -> Vec<&'a str> {
    let plain = |name: &str| name.to_lowercase().replace(['-', ' '], "_");
    let wanted = plain(written);
    let limit = (wanted.chars().count() / 3).max(1);
    let mut found: Vec<(usize, &str)> = known
        .iter()
        .filter_map(|name| {
            let candidate = plain(name);
            let distance = strsim::damerau_levenshtein(&candidate, &wanted);
            let begins = wanted.chars().count() >= 3
                && (candidate.starts_with(&wanted) || wanted.starts_with(&candidate));
            (distance <= limit || begins).then_some((distance, *name))
        })
        .collect();
    found.sort();
    let best = found.first().map_or(0, |(distance, _)| *distance);
    let close = found
        .into_iter()
        .filter(|(distance, _)| *distance <= best + 1);
    close.map(|(_, name)| name).take(3).collect()
}

/// What there is beside a wrong name.
pub(super) fn known(written: &str, names: &[&str]) -> Known {
    let owned = |names: Vec<&str>| names.into_iter().map(str::to_owned).collect();
    Known {
        near: owned(nearest(written, names)),
        all: owned(names.to_vec()),
    }
}
