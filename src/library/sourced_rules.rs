//! Numbers that a file changes in what it extends without saying where they come from.
//!
//! In: a text laid over others. Out: one doubt that names their paths.

use super::complaint::{Complaint, complaint};
use super::layered_text::LayeredText;
use super::outline::RecordOutline;
use crate::error::{BrokenRule, Doubt, Shelf};
use crate::units::{Angle, Duration, Force, Length, Mass, Stress, Torque};

/// A doubt about changed numbers without a source; none about gear, which needs none.
pub(super) fn unsourced(shelf: Shelf, text: &LayeredText) -> Option<Complaint> {
    let is_gear = matches!(
        shelf,
        Shelf::Bands | Shelf::Chains | Shelf::Gyms | Shelf::Setups
    );
    if is_gear || text.layers() < 2 {
        return None;
    }
    let outline = RecordOutline::of(text.text());
    let mut paths: Vec<String> = Vec::new();
    for (index, node) in outline.nodes.iter().enumerate() {
        let is_own = text.file_at(node.value.start) == Some(0);
        if !is_own || !is_number(outline.slice(&node.value)) {
            continue;
        }
        let path = outline.path(index);
        if !text.is_sourced_by(0, &path) {
            let path = of_the_field(&path).to_owned();
            if !paths.contains(&path) {
                paths.push(path);
            }
        }
    }
    if paths.is_empty() {
        return None;
    }
    let others = paths.split_off(1);
    let first = paths.pop()?;
    Some(complaint(
        first,
        BrokenRule::Doubt(Doubt::Unsourced { others }),
    ))
}

/// A number, or a text that is a quantity.
fn is_number(written: &str) -> bool {
    let quoted = written
        .strip_prefix('"')
        .and_then(|rest| rest.strip_suffix('"'));
    match quoted {
        Some(text) => is_quantity(text),
        None => written.len() < 40 && written.parse::<f64>().is_ok(),
    }
}

/// Whether a text reads as a quantity of any kind.
fn is_quantity(text: &str) -> bool {
    Length::from_text(text).is_ok()
        || Angle::from_text(text).is_ok()
        || Mass::from_text(text).is_ok()
        || Force::from_text(text).is_ok()
        || Torque::from_text(text).is_ok()
        || Duration::from_text(text).is_ok()
        || Stress::from_text(text).is_ok()
}

/// The path of the field in which a list's item stands.
fn of_the_field(path: &str) -> &str {
    let mut field = path;
    while let Some((before, last)) = field.rsplit_once('.') {
        if last.parse::<usize>().is_err() {
            break;
        }
        field = before;
    }
    field
}
