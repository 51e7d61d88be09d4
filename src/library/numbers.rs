//! The numbers of a model by their paths: which there are, and what they are now.
//!
//! In: a [`Model`]. Out: paths that `PATH=VALUE` accepts, with value and SI unit.

use super::assemble::{Model, Root};
use super::set_path::{is_course, is_technique, quantity, resolve, tagged, tree_of};
use super::share_units::{ShareUnit, share_of};
use crate::anatomy::Dof;
use crate::bounds::bounds;
use crate::error::{Error, Result, SettingFault};
use crate::movement::trace;
use serde_json::Value;
use std::collections::BTreeSet;

/// One number of a model.
#[derive(Debug, Clone, PartialEq)]
pub struct NumberAt {
    /// Its path, as `PATH=VALUE` takes it.
    pub path: String,
    /// Its value in SI.
    pub value: f64,
    /// Its SI unit, or what it is a share of; empty for a plain number.
    pub unit: &'static str,
}

/// Every number that can change what this movement shows, in the order lifter, body, technique, path.
///
/// Muscles and joints that the movement does not move are left out, and so are published courses
/// (their scale stands for them), the angles of reference poses and the bells of the active curve.
#[must_use]
pub fn numeric_paths(model: &Model) -> Vec<NumberAt> {
    let mut found = every_number(model);
    if let Some(moving) = moving(model) {
        let idle = idle_groups(model, &moving);
        found.retain(|number| !idle.iter().any(|group| is_in_group(&number.path, group)));
    }
    found
}

/// The same for every muscle and every joint.
pub(super) fn every_number(model: &Model) -> Vec<NumberAt> {
    let mut found = Vec::new();
    let record = tree_of(&model.record);
    for field in ["height", "body_mass", "strength_scale", "strength"] {
        walk(&record[field], &format!("lifter.{field}"), &mut found);
    }
    let body = tree_of(&model.lifter);
    for group in ["segments", "build", "muscles", "joints", "curves"] {
        walk(&body[group], group, &mut found);
    }
    let movement = tree_of(&model.movement);
    walk(&movement["technique"], "technique", &mut found);
    for field in ["carrier", "path"] {
        walk(&movement[field], &format!("movement.{field}"), &mut found);
    }
    found
}

/// The number at a path; a technique parameter gives its value, a moment arm its scale.
///
/// **Fails** if the path leads nowhere or to something that is no number.
pub fn get(model: &Model, path: &str) -> Result<NumberAt> {
    let (root, inside) = Root::of(path)?;
    let tree = match root {
        Root::File => tree_of(&model.record),
        Root::Body => tree_of(&model.lifter),
        Root::Technique | Root::Movement => tree_of(&model.movement),
    };
    let pointer = resolve(&tree, inside, path)?;
    let mut unit = None;
    let mut at = tree.pointer(&pointer).unwrap_or(&Value::Null);
    if let Value::Object(map) = at {
        at = if is_technique(map) {
            &map["value"]
        } else if is_course(map) {
            &map["scale"]
        } else {
            at
        };
    }
    while let Some((tag, content)) = tagged(at) {
        unit = share_of(tag);
        at = content;
    }
    let found = number(at, path).map(|found| in_share(found, unit));
    found.ok_or_else(|| {
        Error::bad(SettingFault::NoNumber {
            path: path.to_owned(),
        })
    })
}

/// A number that is a share, in its unit.
fn in_share(number: NumberAt, unit: Option<ShareUnit>) -> NumberAt {
    NumberAt {
        unit: unit.map_or(number.unit, |unit| unit.name),
        ..number
    }
}

/// A single value as a number.
fn number(value: &Value, path: &str) -> Option<NumberAt> {
    let (value, unit) = match value {
        Value::Number(number) => (number.as_f64()?, ""),
        Value::String(text) => {
            let (dimension, si) = quantity(text)?;
            (si, dimension.units[0].names[0])
        }
        _ => return None,
    };
    Some(NumberAt {
        path: path.to_owned(),
        value,
        unit,
    })
}

/// Fields that are no value of the model itself.
fn is_left_out(field: &str) -> bool {
    matches!(field, "source" | "at" | "active" | "least" | "most") || field.ends_with("_source")
}

fn walk(value: &Value, path: &str, found: &mut Vec<NumberAt>) {
    match value {
        Value::Object(map) if is_technique(map) => walk(&map["value"], path, found),
        Value::Object(map) if is_course(map) => {
            walk(&map["scale"], &format!("{path}.scale"), found);
        }
        Value::Object(map) => {
            if let Some((tag, content)) = tagged(value) {
                if tag != "Choice" {
                    let before = found.len();
                    walk(content, path, found);
                    if let (Some(unit), [number]) = (share_of(tag), &mut found[before..]) {
                        number.unit = unit.name;
                    }
                }
                return;
            }
            for (field, part) in map.iter().filter(|(field, _)| !is_left_out(field)) {
                walk(part, &format!("{path}.{field}"), found);
            }
        }
        Value::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                walk(item, &format!("{path}.{index}"), found);
            }
        }
        single => found.extend(number(single, path)),
    }
}

/// Whether a path is one that stands alone, or one below a group, which ends with a dot.
pub(super) fn is_in_group(path: &str, group: &str) -> bool {
    path == group || group.ends_with('.') && path.starts_with(group)
}

/// The joints that move; `None` if the path cannot be traced.
pub(super) fn moving(model: &Model) -> Option<BTreeSet<Dof>> {
    let range = trace(&model.movement, &model.lifter, bounds().samples.fewest()).ok()?;
    let coordinates = range.poses.iter().flat_map(|pose| &pose.coordinates);
    Some(coordinates.map(|c| c.dof).collect())
}

/// Paths of muscles, joints and strengths that have no part in a movement; groups end with a dot.
pub(super) fn idle_groups(model: &Model, moving: &BTreeSet<Dof>) -> Vec<String> {
    let muscles = model.lifter.muscles.iter();
    let idle = muscles.filter(|(_, muscle)| !moving.iter().any(|dof| muscle.crosses(*dof)));
    let joints = model
        .lifter
        .joints
        .keys()
        .filter(|dof| !moving.contains(dof));
    let acts = |group: &str| {
        let mut muscles = model.lifter.muscles.values();
        muscles.any(|m| m.group == group && moving.iter().any(|dof| m.crosses(*dof)))
    };
    let strengths = model.record.strength.keys().filter(|group| !acts(group));
    idle.map(|(name, _)| format!("muscles.{name}."))
        .chain(joints.map(|dof| format!("joints.{}.", dof.name())))
        .chain(strengths.map(|group| format!("lifter.strength.{group}")))
        .collect()
}
