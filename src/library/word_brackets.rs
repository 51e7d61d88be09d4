//! Words whose record stands in brackets of its own: `Sweep((joint: elbow, …))`, also where only one pair is written.
//!
//! In: the text of a model file. Out: the same with both pairs, each of its places where it stands in the file.

use super::layered_text::LayeredText;
use super::merging::brackets;
use super::outline::RecordOutline;
use crate::error::Shelf;

/// The words whose record has brackets of its own.
const fn words(shelf: Shelf) -> &'static [&'static str] {
    match shelf {
        Shelf::Movements => &["Arm", "Bridge", "LegPress", "Stance", "Sweep"],
        Shelf::Setups => &["Cable", "Cam", "Lever", "Pulley", "Sled"],
        _ => &[],
    }
}

/// The text with both pairs of brackets behind each such word.
pub(super) fn in_both_brackets(shelf: Shelf, text: LayeredText) -> LayeredText {
    let mut added: Vec<(usize, &str)> = Vec::new();
    if !words(shelf).is_empty() {
        let outline = RecordOutline::of(text.text());
        for (index, node) in outline.nodes.iter().enumerate() {
            let is_wanted = node.tag.is_some_and(|tag| words(shelf).contains(&tag));
            let mut fields = outline.children(index);
            let is_record = fields
                .next()
                .is_some_and(|first| outline.name(first).is_some());
            if is_wanted && is_record && outline.slice(&node.value).ends_with(')') {
                let (open, close) = brackets(&outline, index);
                added.extend([(open + 1, "("), (close, ")")]);
            }
        }
    }
    added.sort_unstable();
    let from_behind = added.into_iter().rev();
    from_behind.fold(text, |text, (at, bracket)| text.with(at..at, bracket))
}
