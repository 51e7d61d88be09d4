//! Words for: the names that could have been meant.

use crate::error::Known;

/// A next move: the nearest names if there are any, else all of them.
pub(super) fn did_you_mean(known: &Known) -> String {
    match known.near.as_slice() {
        [] if known.all.is_empty() => "there are none".to_owned(),
        [] => format!("known: {}", known.all.join(", ")),
        [one] => format!("did you mean `{one}`?"),
        [first, second] => format!("did you mean `{first}` or `{second}`?"),
        many => format!("did you mean one of `{}`?", many.join("`, `")),
    }
}

/// Next moves for a word of a short list: the nearest ones if there are any, and in any case the list.
pub(super) fn one_of(known: &Known, what: &str) -> Vec<String> {
    let near = (!known.near.is_empty()).then(|| did_you_mean(known));
    near.into_iter()
        .chain([format!("known {what}: {}", known.all.join(", "))])
        .collect()
}
