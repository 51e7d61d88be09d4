//! "Did you mean": the known names that a misspelt one is nearest to.
//!
//! In: what was written and the known names. Out: the nearest ones, or a hint in words.

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

/// A hint: the nearest names if there are any, else all of them.
#[must_use]
pub fn did_you_mean(written: &str, known: &[&str]) -> String {
    let near = nearest(written, known);
    match near.as_slice() {
        [] if known.is_empty() => "there are none".to_owned(),
        [] => format!("known: {}", known.join(", ")),
        [one] => format!("did you mean `{one}`?"),
        [first, second] => format!("did you mean `{first}` or `{second}`?"),
        many => format!("did you mean one of `{}`?", many.join("`, `")),
    }
}

/// Hints for a word of a short list: the nearest ones if there are any, and in any case the list.
pub(super) fn one_of(written: &str, known: &[&str], what: &str) -> Vec<String> {
    let near = nearest(written, known);
    let near = (!near.is_empty()).then(|| did_you_mean(written, known));
    near.into_iter()
        .chain([format!("known {what}: {}", known.join(", "))])
        .collect()
}
