//! Muscles as labels.
//!
//! In: a muscle or its heads taken together. Out: its name for a label.

use crate::study::MusclePart;

/// A muscle's name, or how many others are taken together.
#[must_use]
pub(crate) fn muscle_name(part: &MusclePart) -> String {
    match part.others {
        0 if part.heads == 1 => head_name(&part.name.replace(' ', "_")),
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

/// Muscles of several parts: what the model's name begins with, the muscle, what its parts are called.
const IN_PARTS: [(&str, &str, &str); 7] = [
    ("biceps_femoris_", "biceps femoris", "head"),
    ("biceps_", "biceps brachii", "head"),
    ("triceps_", "triceps brachii", "head"),
    ("gastrocnemius_", "gastrocnemius", "head"),
    ("pectoralis_", "pectoralis major", "part"),
    ("deltoid_", "deltoid", "part"),
    ("latissimus_", "latissimus dorsi", "part"),
];

/// A muscle of the model by the field's terms: "biceps brachii long head", "pectoralis major costal part".
///
/// **Source.** Terminologia Anatomica (from memory). A name of the user's own is told as it is written.
#[must_use]
pub fn head_name(name: &str) -> String {
    let known = IN_PARTS
        .iter()
        .find_map(|(begin, muscle, part)| Some((muscle, name.strip_prefix(begin)?, part)));
    match known {
        Some((muscle, "ribs", part)) => format!("{muscle} costal {part}"),
        Some((muscle, which, part)) if !which.contains('_') => format!("{muscle} {which} {part}"),
        _ => name.replace('_', " "),
    }
}
