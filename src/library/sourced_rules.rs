//! Numbers that a file changes in what it extends without saying where they come from.
//!
//! In: a text laid over others. Out: one doubt that names their paths.

use super::complaint::{Complaint, complaint};
use super::layered_text::LayeredText;
use super::outline::RecordOutline;
use crate::error::{BrokenRule, Doubt, Shelf};
use crate::units::{Angle, Duration, Force, Length, Mass, Stress, Torque};
use std::collections::{BTreeMap, BTreeSet};

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
    let mut records = SourcedRecords::of(text, &outline);
    let mut paths: Vec<String> = Vec::new();
    let mut seen = BTreeSet::new();
    for (index, node) in outline.nodes.iter().enumerate() {
        let is_own = text.file_at(node.value.start) == Some(0);
        if !is_own || !is_number(outline.slice(&node.value)) {
            continue;
        }
        if !records.holds(index) {
            let path = outline.path(index);
            let path = of_the_field(&path).to_owned();
            if seen.insert(path.clone()) {
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

/// Which records of a text the file itself gives a source: in them or around them, each looked at once.
struct SourcedRecords<'a> {
    text: &'a LayeredText,
    outline: &'a RecordOutline<'a>,
    known: BTreeMap<usize, bool>,
}

impl<'a> SourcedRecords<'a> {
    const fn of(text: &'a LayeredText, outline: &'a RecordOutline<'a>) -> Self {
        Self {
            text,
            outline,
            known: BTreeMap::new(),
        }
    }

    fn holds(&mut self, node: usize) -> bool {
        if let Some(known) = self.known.get(&node) {
            return *known;
        }
        let parent = self.outline.nodes[node].parent;
        let is_sourced = self.text.names_source(0, self.outline, node)
            || parent.is_some_and(|parent| self.holds(parent));
        self.known.insert(node, is_sourced);
        is_sourced
    }
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
