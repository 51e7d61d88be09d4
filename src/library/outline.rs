//! Where everything stands in the text of a model file.
//!
//! In: a RON text, sound or broken. Out: [`RecordOutline`], a tree of its fields, keys and list items with
//! their stretches of bytes, so that a rule that names `muscles.brachialis.pennation` can show the
//! line. It knows the grammar only; reading values is left to `read`.

use super::grammar_scan::{Step, TextNode, nodes_of};
use super::unprintable::{first_break, first_unprintable};
use crate::bounds::bounds;
use crate::error::Place;
use std::ops::Range;
use std::sync::{Arc, OnceLock};

/// The field that names what a file extends.
pub(super) const EXTENDS: &str = "extends";

/// Fields whose texts stand in one line of a figure or a table.
const SHORT: [&str; 4] = ["title", "axis", "away_from", "name"];

/// The tree of a text, parents before children.
#[derive(Debug, Clone)]
pub struct RecordOutline<'a> {
    text: &'a str,
    /// The text for places, which share one copy.
    shared: OnceLock<Arc<str>>,
    /// Every field, key and item, in the order of the text; the first is the whole.
    pub nodes: Vec<TextNode<'a>>,
    /// The next part of the same parent, of every node: a list of thousands is walked once, not once an item.
    next: Vec<Option<usize>>,
}

impl<'a> RecordOutline<'a> {
    /// The tree of a text; a broken text gives the part before the break.
    pub fn of(text: &'a str) -> Self {
        let nodes = nodes_of(text);
        Self {
            text,
            shared: OnceLock::new(),
            next: next_parts(&nodes),
            nodes,
        }
    }

    /// The node of a path such as `muscles.brachialis.pennation`, or the deepest one on the way to it.
    pub fn find(&self, path: &str) -> Option<&TextNode<'a>> {
        let mut at = self.inside(0)?;
        for step in path.split('.').filter(|step| !step.is_empty()) {
            let Some(next) = self.children(at).find(|child| self.is_called(*child, step)) else {
                break;
            };
            at = self.inside(next).unwrap_or(next);
        }
        let mut node = self.nodes.get(at)?;
        while let (None, Some(parent)) = (&node.key, node.parent) {
            if !self.nodes[parent].newtype {
                break;
            }
            node = &self.nodes[parent];
        }
        Some(node)
    }

    /// The node of a path; none where the path leads nowhere.
    pub fn exact(&self, path: &str) -> Option<&TextNode<'a>> {
        let mut at = self.inside(0)?;
        for step in path.split('.').filter(|step| !step.is_empty()) {
            let next = self
                .children(at)
                .find(|child| self.is_called(*child, step))?;
            at = self.inside(next).unwrap_or(next);
        }
        self.nodes.get(at)
    }

    /// The node itself, or what stands in the brackets of its tag.
    fn inside(&self, mut at: usize) -> Option<usize> {
        while self.nodes.get(at)?.newtype {
            at = self.children(at).next()?;
        }
        Some(at)
    }

    /// The parts of a node, in the order of the text.
    pub fn children(&self, of: usize) -> impl Iterator<Item = usize> + '_ {
        // What stands first in a node comes next behind it.
        let first = self
            .nodes
            .get(of + 1)
            .filter(|node| node.parent == Some(of));
        std::iter::successors(first.map(|_| of + 1), |index| self.next[*index])
    }

    fn is_called(&self, index: usize, step: &str) -> bool {
        match self.nodes[index].step {
            Step::Root => false,
            Step::Name(name) => name == step,
            Step::Item(number) => step.parse() == Ok(number),
        }
    }

    /// The name of a field or key.
    pub fn name(&self, index: usize) -> Option<&'a str> {
        match self.nodes[index].step {
            Step::Name(name) => Some(name),
            Step::Root | Step::Item(_) => None,
        }
    }

    /// The deepest node around a byte.
    pub fn innermost(&self, byte: usize) -> Option<usize> {
        let around = |node: &TextNode<'_>| {
            let start = node.key.as_ref().map_or(node.value.start, |key| key.start);
            (start..node.value.end).contains(&byte)
        };
        self.nodes.iter().rposition(around)
    }

    /// The path of a node: `muscles.brachialis.moment_arm.elbow`; empty for the whole.
    pub fn path(&self, index: usize) -> String {
        let mut steps = Vec::new();
        let mut at = Some(index);
        while let Some(node) = at.map(|at| &self.nodes[at]) {
            let skipped = node.parent.is_some_and(|parent| self.nodes[parent].newtype);
            match node.step {
                Step::Name(name) => steps.push(name.to_owned()),
                Step::Item(number) if !skipped => steps.push(number.to_string()),
                Step::Root | Step::Item(_) => {}
            }
            at = node.parent;
        }
        steps.reverse();
        steps.join(".")
    }

    /// The text of a stretch.
    pub fn slice(&self, stretch: &Range<usize>) -> &'a str {
        &self.text[stretch.clone()]
    }

    /// The place of a stretch in the file.
    pub fn place(&self, file: &str, stretch: &Range<usize>) -> Place {
        let text = self.shared.get_or_init(|| self.text.into());
        Place::of(file, text.clone(), stretch.clone())
    }

    /// The second of two fields or keys of one name in one record or map.
    pub fn repeated(&self) -> Vec<usize> {
        let mut seen = std::collections::BTreeSet::new();
        (0..self.nodes.len())
            .filter(|index| match self.nodes[*index].step {
                Step::Name(name) => !seen.insert((self.nodes[*index].parent, name)),
                Step::Root | Step::Item(_) => false,
            })
            .collect()
    }

    /// Every text or key in which a character stands that cannot be shown, with the character's number; in a text of one
    /// line a line break cannot.
    pub fn unprintable(&self) -> Vec<(usize, u32)> {
        let in_stretch = |stretch: &Range<usize>| {
            let written = self.slice(stretch);
            let is_text = written.starts_with(['"', 'r', '\'']);
            is_text.then(|| first_unprintable(written)).flatten()
        };
        let nodes = self.nodes.iter().enumerate();
        nodes
            .filter_map(|(index, node)| {
                let in_key = node.key.as_ref().and_then(in_stretch);
                let is_short = matches!(node.step, Step::Name(name) if SHORT.contains(&name));
                let in_line = || {
                    let written = self.slice(&node.value);
                    let is_line = is_short && written.starts_with(['"', 'r']);
                    is_line.then(|| first_break(written)).flatten()
                };
                let code = in_key
                    .or_else(|| in_stretch(&node.value))
                    .or_else(in_line)?;
                Some((index, code))
            })
            .collect()
    }

    /// Every text or key that is longer than a text of its kind can be: its letters and the most.
    pub fn too_long(&self) -> Vec<(usize, usize, usize)> {
        let bounds = bounds();
        let over = |stretch: &Range<usize>, most: usize| {
            let written = self.slice(stretch);
            // Bytes are no fewer than letters, so most texts need no counting; the quotes are not counted.
            let is_text = written.starts_with(['"', 'r', '\'']) && written.len() > most;
            let letters = written.chars().count().saturating_sub(2);
            (is_text && letters > most).then_some((letters, most))
        };
        let (short, long) = (&bounds.short_text, &bounds.long_text);
        let nodes = self.nodes.iter().enumerate();
        nodes
            .filter_map(|(index, node)| {
                let is_short = matches!(node.step, Step::Name(name) if SHORT.contains(&name));
                let bound = if is_short { short } else { long };
                let key = node.key.as_ref();
                let in_key = key.and_then(|key| over(key, short.most_of_them()));
                let (letters, most) = in_key.or_else(|| over(&node.value, bound.most_of_them()))?;
                Some((index, letters, most))
            })
            .collect()
    }

    /// Bare numbers that are not finite: `NaN`, `inf`, `1e999`.
    pub fn not_finite(&self) -> Vec<usize> {
        let is_so = |node: &TextNode<'_>| {
            node.tag.is_none()
                && self.slice(&node.value).len() < 40
                && self
                    .slice(&node.value)
                    .parse::<f64>()
                    .is_ok_and(|number| !number.is_finite())
        };
        (0..self.nodes.len())
            .filter(|index| is_so(&self.nodes[*index]))
            .collect()
    }
}

/// The next part of the same parent, of every node.
fn next_parts(nodes: &[TextNode<'_>]) -> Vec<Option<usize>> {
    let mut next = vec![None; nodes.len()];
    let mut last = vec![None; nodes.len()];
    for (index, node) in nodes.iter().enumerate() {
        if let Some(parent) = node.parent
            && let Some(before) = last[parent].replace(index)
        {
            next[before] = Some(index);
        }
    }
    next
}
