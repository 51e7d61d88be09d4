//! The mark of a name that no longer stands for what it stands for in the built-in files.
//!
//! In: titles. Out: the same with the mark, once.

/// Behind the title of a person or a gym of which a value was changed.
const CHANGED: &str = ", changed";
/// The same inside sentences, where a movement is named.
const CHANGED_LIFT: &str = " (changed)";

/// The title of a lifter or a gym of which something was changed.
pub fn changed(title: &str) -> String {
    marked(title, CHANGED)
}

/// The title of a movement of which something was changed.
pub fn changed_lift(title: &str) -> String {
    marked(title, CHANGED_LIFT)
}

fn marked(title: &str, mark: &str) -> String {
    format!("{}{mark}", title.trim_end_matches(mark))
}

/// Whether a title bears the mark.
#[must_use]
pub fn is_changed(title: &str) -> bool {
    title.ends_with(CHANGED) || title.ends_with(CHANGED_LIFT)
}
