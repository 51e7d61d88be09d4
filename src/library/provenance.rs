//! Where a number of a model comes from, found by its path.
//!
//! In: a path as `PATH=VALUE` takes it. Out: [`Provenance`]: the source of the record that holds the number, and
//! what the calibration made of it.

use super::assemble::{Root, Workbench};
use super::built_in;
use super::layered_text::LayeredText;
use super::posterior::{FittedValue, Posterior};
use super::read::read;
use super::records::Library;
use super::set_path::{is_technique, tagged, tree_of};
use crate::anatomy::{LifterRecord, Sex};
use crate::error::{Result, Shelf};
use crate::source::Source;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

/// Where a number comes from.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Provenance {
    /// The source of the record that holds it; `None` where nobody names one.
    pub source: Option<Source>,
    /// What the calibration found for it.
    pub fitted: Option<FittedValue>,
    /// The file in which it stands.
    pub file: Option<String>,
}

impl Library {
    /// What the calibration found for a path such as `muscles.soleus.optimal_fibre_length` or
    /// `lifter.strength.knee_extensors` of a lifter of this sex; `None` where it left the number alone.
    ///
    /// **Fails** if the shipped file is not sound.
    pub fn fitted(&self, sex: Sex, path: &str) -> Result<Option<FittedValue>> {
        let posterior = match self.posterior.get() {
            Some(posterior) => posterior,
            None => {
                let file = "calibration/posterior.ron";
                let found = match built_in::text(file) {
                    Some(text) => read(&format!("models/{file}"), text)?,
                    None => Posterior::default(),
                };
                self.posterior.get_or_init(|| found)
            }
        };
        let who = match sex {
            Sex::Man => "man",
            Sex::Woman => "woman",
        };
        let values = &posterior.values;
        let own = values.get(&format!("{who}/{path}"));
        Ok(own.or_else(|| values.get(path)).copied())
    }
}

impl Workbench {
    /// Where the number at a path comes from, in the files as they are read.
    ///
    /// The nearest source on the way down holds: `X_source` beside a field that is or is named after X, else
    /// the `source` of the record. **Fails** if the shipped posterior is not sound.
    pub fn provenance(&self, path: &str) -> Result<Provenance> {
        self.provenance_in(&self.sourced_trees(), path)
    }

    /// The records that sources are looked up in, as trees.
    pub(super) fn sourced_trees(&self) -> SourcedTrees {
        SourcedTrees {
            movement: SourcedTree::of(&self.movement),
            segments: SourcedTree::of(self.files.segments()),
            curves: SourcedTree::of(self.files.curves()),
            muscles: SourcedTree::of(self.files.muscles()),
        }
    }

    /// The same with the trees made once for many paths.
    pub(super) fn provenance_in(&self, trees: &SourcedTrees, path: &str) -> Result<Provenance> {
        let (root, inside) = Root::of(path)?;
        let files = &self.files;
        let stands = self.stands(root, inside);
        // What a file takes over has the source that it has there, whatever the file names for its own.
        let taken_over = stands.as_ref().and_then(|stands| stands.from.as_ref());
        let source = match (root, taken_over) {
            (Root::File, taken_over) => match inside.strip_prefix("strength.") {
                Some(group) => {
                    let known = &files.record.strength_sources;
                    known.get(group).or_else(|| known.get("*")).cloned()
                }
                None => match taken_over.and_then(|text| text.read().ok()) {
                    Some(record) => Some(of_the_lifter(&record, inside).clone()),
                    None => Some(of_the_lifter(&files.record, inside).clone()),
                },
            },
            (Root::Body, _) if own_length(&files.record, inside).is_some() => {
                Some(files.record.source.clone())
            }
            (_, taken_over) => {
                let (table, inside) = match (root, inside.split_once('.')) {
                    (Root::Body, Some(("segments" | "build", rest))) => {
                        (&trees.segments, renamed(rest))
                    }
                    (Root::Body, Some(("curves", rest))) => (&trees.curves, rest.to_owned()),
                    (Root::Body, _) => (&trees.muscles, inside.to_owned()),
                    _ => (&trees.movement, inside.to_owned()),
                };
                match taken_over {
                    Some(text) => sourced(&table.in_file(text), &inside),
                    None => sourced(&table.whole, &inside),
                }
            }
        };
        let source = source.filter(|_| stands.as_ref().is_none_or(|stands| stands.is_sourced));
        let sex = files.record.sex;
        let short = path.strip_suffix(".scale").unwrap_or(path);
        let is_shipped = stands.as_ref().is_none_or(|stands| stands.is_shipped);
        let fitted = match self.models.fitted(sex, path)? {
            Some(found) => Some(found),
            None => self.models.fitted(sex, short)?,
        };
        Ok(Provenance {
            source,
            fitted: fitted.filter(|_| is_shipped),
            file: stands.map(|stands| stands.file),
        })
    }

    /// The file in which a value stands.
    fn stands(&self, root: Root, inside: &str) -> Option<Stands> {
        let [record, segments, muscles, curves] = &self.files.texts;
        let like = self.strength_text(inside).filter(|_| root == Root::File);
        let record = like.as_ref().unwrap_or(record);
        let own = own_length(&self.files.record, inside).filter(|_| root == Root::Body);
        let (text, path): (&LayeredText, String) = match (root, inside.split_once('.')) {
            (Root::Body, _) if own.is_some() => (
                &self.files.texts[0],
                format!("lengths.{}", own.unwrap_or_default()),
            ),
            (Root::File, _) => (record, inside.to_owned()),
            (Root::Technique | Root::Movement, _) => (&self.movement_text, inside.to_owned()),
            (Root::Body, Some(("segments" | "build", rest))) => (segments, in_table(rest)),
            (Root::Body, Some(("curves", rest))) => (curves, rest.to_owned()),
            (Root::Body, _) => (muscles, inside.to_owned()),
        };
        let path = path.as_str();
        let group = path
            .strip_prefix("strength.")
            .filter(|_| root == Root::File);
        // A factor that the file leaves at 1 stands where its course does.
        let outward = std::iter::successors(Some(path), |path| Some(path.rsplit_once('.')?.0));
        let (path, (layer, file)) = outward
            .into_iter()
            .find_map(|path| Some((path, text.file_of(path)?)))?;
        let is_sourced = match group {
            _ if text.layers() == 1 => true,
            None => text.is_sourced_by(layer, path),
            Some(group) => {
                let source = text.file_of(&format!("strength_sources.{group}"));
                source.is_some_and(|(stands, _)| stands <= layer)
            }
        };
        let inside = file.strip_prefix("models/");
        Some(Stands {
            file: file.to_owned(),
            from: text.below(layer).cloned(),
            is_shipped: inside.is_some_and(|inside| built_in::text(inside).is_some()),
            is_sourced,
        })
    }

    /// The text of the lifter whose factor of a strength group holds, where it is not the lifter's own.
    fn strength_text(&self, inside: &str) -> Option<Arc<LayeredText>> {
        let is_own = self.files.texts[0].file_of(inside).is_some();
        let like = self.files.record.strength_like.as_ref();
        let like = like.filter(|_| inside.starts_with("strength.") && !is_own)?;
        self.models.layered(Shelf::Lifters, like).ok().map(Arc::new)
    }
}

/// The segment whose length a lifter's own file gives in the place of its table's.
fn own_length<'a>(record: &LifterRecord, inside: &'a str) -> Option<&'a str> {
    let segment = inside.strip_prefix("segments.")?.strip_suffix(".length")?;
    let mut own = record.lengths.keys();
    own.any(|name| name.name() == segment).then_some(segment)
}

/// The source of a lifter's own value; a factor of 1 on all strength has one of its own.
fn of_the_lifter<'a>(record: &'a LifterRecord, inside: &str) -> &'a Source {
    let is_one = inside == "strength_scale" && record.strength_scale == 1.0;
    let own = record.strength_scale_source.as_ref();
    own.filter(|_| is_one).unwrap_or(&record.source)
}

/// The records that sources are looked up in.
pub(super) struct SourcedTrees {
    movement: SourcedTree,
    segments: SourcedTree,
    curves: SourcedTree,
    muscles: SourcedTree,
}

/// A record as a tree, and as the files have it that it extends.
struct SourcedTree {
    whole: Value,
    /// A record's tree from its text.
    read: fn(&LayeredText) -> Value,
    /// Those that were asked for, by the file's name.
    in_files: Mutex<BTreeMap<String, Arc<Value>>>,
}

impl SourcedTree {
    fn of<T: Serialize + DeserializeOwned>(record: &T) -> Self {
        Self {
            whole: tree_of(record),
            read: |text| {
                text.read::<T>()
                    .map_or(Value::Null, |record| tree_of(&record))
            },
            in_files: Mutex::default(),
        }
    }

    /// The record as a file has it that is extended.
    fn in_file(&self, text: &LayeredText) -> Arc<Value> {
        let mut known = self.in_files.lock().unwrap_or_else(PoisonError::into_inner);
        let tree = known
            .entry(text.file().to_owned())
            .or_insert_with(|| Arc::new((self.read)(text)));
        Arc::clone(tree)
    }
}

/// Where a value stands.
struct Stands {
    /// The file.
    file: String,
    /// The text as that file has it, where another one extends it.
    from: Option<Arc<LayeredText>>,
    /// Whether it is one of the program's own.
    is_shipped: bool,
    /// Whether that file, or one that extends it, names a source for it.
    is_sourced: bool,
}

/// The path of a body's measure in its segment table, as the table names it.
fn in_table(inside: &str) -> String {
    match inside.split_once('.') {
        Some((segment, "length")) => format!("rows.{segment}.length"),
        Some((segment, field)) => format!("rows.{segment}.{field}_percent"),
        None => {
            let field = match inside {
                "biacromial_breadth" => "biacromial",
                "shoulder_breadth" => "shoulder_joints",
                "chest_height" => "chest_above_shoulder",
                "hip_breadth" => "hip_joints",
                other => other,
            };
            format!("breadths.{field}")
        }
    }
}

/// The path of a body's measure in its segment table.
fn renamed(inside: &str) -> String {
    match inside.split_once('.') {
        Some((segment, field)) => format!("rows.{segment}.{field}"),
        None if inside.contains("ankle") => "breadths.foot_size".to_owned(),
        None => format!("breadths.{inside}"),
    }
}

/// The source that holds for a path inside a record.
fn sourced(tree: &Value, inside: &str) -> Option<Source> {
    let mut at = tree;
    let mut found = None;
    let mut beside: Vec<(String, Source)> = Vec::new();
    for step in inside.split('.') {
        while let Some((_, content)) = tagged(at) {
            at = content;
        }
        match at {
            Value::Object(map) => {
                found = own(map).or(found);
                let named = stems(map);
                let nearest = best(&named, step).or_else(|| best(&beside, step));
                found = nearest.or(found);
                beside.extend(named);
                at = map.get(step).unwrap_or(&Value::Null);
            }
            Value::Array(items) => {
                let index: usize = step.parse().ok()?;
                at = items.get(index).unwrap_or(&Value::Null);
            }
            _ => break,
        }
    }
    while let Some((_, content)) = tagged(at) {
        at = content;
    }
    match at {
        Value::Object(map) if is_technique(map) || map.contains_key("source") => own(map).or(found),
        _ => found,
    }
}

fn source_of(value: &Value) -> Option<Source> {
    serde_json::from_value(value.clone()).ok()
}

fn own(map: &Map<String, Value>) -> Option<Source> {
    map.get("source").and_then(source_of)
}

/// The sources of a record that name what they are of.
fn stems(map: &Map<String, Value>) -> Vec<(String, Source)> {
    map.iter()
        .filter_map(|(key, value)| {
            let stem = key.strip_suffix("_source")?;
            Some((stem.to_owned(), source_of(value)?))
        })
        .collect()
}

/// The source whose name a field ends with, else begins with.
fn best(named: &[(String, Source)], field: &str) -> Option<Source> {
    let ends = |stem: &str| field == stem || field.ends_with(&format!("_{stem}"));
    let begins = |stem: &str| field.starts_with(&format!("{stem}_"));
    let by = |fits: &dyn Fn(&str) -> bool| {
        let found = named.iter().filter(|(stem, _)| fits(stem));
        found.max_by_key(|(stem, _)| stem.len())
    };
    by(&ends).or_else(|| by(&begins)).map(|(_, s)| s.clone())
}
