//! Muscles as labels.
//!
//! In: a muscle or its heads taken together. Out: its name for a label.

use crate::study::MusclePart;

/// A muscle's name, or how many others are taken together.
#[must_use]
pub(crate) fn muscle_name(part: &MusclePart) -> String {
    match part.others {
        0 => part.name.clone(),
        many => format!("{many} others"),
    }
}

/// A muscle's name for a label: "biceps (2 heads)".
#[must_use]
pub(crate) fn muscle_label(part: &MusclePart) -> String {
    match part.heads {
        1 => muscle_name(part),
        many => format!("{} ({many} heads)", part.name),
    }
}

/// A muscle of the model in words: "biceps long head", "gluteus maximus".
#[must_use]
pub fn head_name(name: &str) -> String {
    /// Muscles whose parts are heads.
    const WITH_HEADS: [&str; 3] = ["biceps", "triceps", "gastrocnemius"];
    let words = name.replace('_', " ");
    let has_heads = WITH_HEADS.iter().any(|muscle| words.starts_with(muscle));
    if has_heads && words.contains(' ') && !words.ends_with("head") {
        words + " head"
    } else {
        words
    }
}
