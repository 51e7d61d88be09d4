//! A lifter's files as trees in which numbers are changed many times, and where a number stands in a text.
//!
//! In: a lifter's files, paths such as `muscles.soleus.optimal_fibre_length`, numbers in SI. Out: the lifter
//! that they make. For the maintenance program that fits the muscles (`tests/calibrate/`); no command
//! uses it.
#![allow(dead_code)]

use super::assemble::Root;
use super::outline::RecordOutline;
use super::records::LifterFiles;
use super::set_path::{in_si, is_course, quantity, resolve, tagged, tree_of};
use crate::anatomy::{Curves, Lifter, LifterRecord, MuscleTable};
use crate::error::{Error, Result, SettingFault};
use serde::Deserialize;
use serde_json::Value;
use std::ops::Range;

/// A lifter's files, ready to be changed.
#[derive(Debug, Clone)]
pub struct Adjustable {
    files: LifterFiles,
    trees: [Value; 3],
}

/// Where a number stands in the trees.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AdjustablePlace {
    tree: usize,
    pointer: String,
}

impl Adjustable {
    /// The files of a lifter as trees.
    #[must_use]
    pub fn of(files: &LifterFiles) -> Self {
        let trees = [
            tree_of(&files.record),
            tree_of(files.muscles()),
            tree_of(files.curves()),
        ];
        Self {
            files: files.clone(),
            trees,
        }
    }

    /// The place of a path: `lifter.…` in the lifter's file, `muscles.…` and `joints.…` in the muscle
    /// table, `curves.…` in the fibre curves.
    ///
    /// **Fails** if it leads nowhere or to something that is no number.
    pub fn place(&self, path: &str) -> Result<AdjustablePlace> {
        let (root, inside) = match Root::of(path)? {
            (Root::File, inside) => (0, inside),
            _ => match path.strip_prefix("curves.") {
                Some(inside) => (2, inside),
                None => (1, path),
            },
        };
        let mut pointer = resolve(&self.trees[root], inside, path)?;
        let mut at = self.trees[root].pointer(&pointer);
        while let Some((tag, content)) = at.and_then(tagged) {
            pointer = format!("{pointer}/{tag}");
            at = Some(content);
        }
        if let Some(Value::Object(map)) = at
            && is_course(map)
        {
            pointer.push_str("/scale");
        }
        let place = AdjustablePlace {
            tree: root,
            pointer,
        };
        match self.number(&place) {
            Some(_) => Ok(place),
            None => Err(Error::bad(SettingFault::NoNumber {
                path: path.to_owned(),
            })),
        }
    }

    /// The number at a place, SI.
    #[must_use]
    pub fn number(&self, place: &AdjustablePlace) -> Option<f64> {
        match self.trees[place.tree].pointer(&place.pointer)? {
            Value::Number(number) => number.as_f64(),
            Value::String(text) => quantity(text).map(|(_, si)| si),
            _ => None,
        }
    }

    /// The lifter with these numbers in SI.
    ///
    /// **Fails** if a type refuses one.
    pub fn build(&self, numbers: &[(&AdjustablePlace, f64)]) -> Result<Lifter> {
        let mut trees = self.trees.clone();
        for (place, number) in numbers {
            if let Some(slot) = trees[place.tree].pointer_mut(&place.pointer) {
                *slot = match slot {
                    Value::String(old) => match quantity(old) {
                        Some((dimension, _)) => in_si(dimension, *number),
                        None => continue,
                    },
                    _ => Value::from(*number),
                };
            }
        }
        let [record, muscles, curves] = &trees;
        let mut files = self.files.clone();
        files.record = record_of::<LifterRecord>(record)?;
        let body = files.muscle_body().clone();
        files.set_muscles(record_of::<MuscleTable>(muscles)?, body);
        files.set_curves(record_of::<Curves>(curves)?);
        files.build()
    }
}

fn record_of<'a, T: Deserialize<'a>>(tree: &'a Value) -> Result<T> {
    T::deserialize(tree).map_err(|why| {
        Error::bad(SettingFault::NoNumber {
            path: why.to_string(),
        })
    })
}

/// The stretch of a model file's text in which the value of a path stands, without quotation marks.
#[must_use]
pub fn written_at(text: &str, path: &str) -> Option<Range<usize>> {
    let outline = RecordOutline::of(text);
    let node = outline.find(path)?;
    let last = path.rsplit('.').next()?;
    let stretch = node.value.clone();
    // A path that leads nowhere ends at the deepest record on the way.
    let is_it = node
        .key
        .as_ref()
        .is_none_or(|key| outline.slice(key).trim_matches('"') == last);
    let is_quoted = outline.slice(&stretch).starts_with('"');
    let inside = if is_quoted {
        stretch.start + 1..stretch.end - 1
    } else {
        stretch
    };
    is_it.then_some(inside)
}
