//! `PATH=VALUE`: one value of a model found by its path and set from a text.
//!
//! In: a record as a tree of values, a path such as `muscles.biceps_long.moment_arm.elbow`, a text
//! such as "34 cm", "+10%" or "sumo". Out: the tree with that value, still of its type, or a fault
//! that names the part of the path or the text that does not fit.

use super::nearest::known;
use super::setting::Setting;
use super::share_units::share_of;
use crate::error::{Error, PlaceOnPath, Result, SettingFault, SettingReason};
use crate::units::{
    Angle, Dimension, Length, QuantityFault, dimension_in_si, parse_number_and_unit,
};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

/// A record as a tree of values; quantities are texts in SI ("0.34 m"), choices are `{"Name": …}`.
pub(super) fn tree_of<T: Serialize>(record: &T) -> Value {
    serde_json::to_value(record).expect("records have text keys, so a tree can hold them")
}

/// Sets one value in a record; `inside` is the path within this record.
///
/// **Fails** on a path that leads nowhere and on a text that does not fit there.
pub(super) fn set<T: Serialize + DeserializeOwned>(
    record: &T,
    inside: &str,
    setting: &Setting,
) -> Result<T> {
    let mut tree = tree_of(record);
    let pointer = resolve(&tree, inside, &setting.path)?;
    setting.can_be_shown()?;
    setting.is_no_unclear_change()?;
    let choices = replacements(&tree, &pointer, setting)?;
    let mut refusal = None;
    for (at, value) in choices {
        let Some(slot) = tree.pointer_mut(&at) else {
            continue;
        };
        let before = std::mem::replace(slot, value);
        let changed = T::deserialize(&tree);
        if let Some(slot) = tree.pointer_mut(&at) {
            *slot = before;
        }
        match changed {
            Ok(record) => return Ok(record),
            Err(why) => refusal = refusal.or(Some(why.to_string())),
        }
    }
    Err(refused(setting, &refusal.unwrap_or_default()))
}

/// A refusal of the record's own types: known words stand in backticks in it.
fn refused(setting: &Setting, why: &str) -> Error {
    let words: Vec<&str> = why.split('`').skip(1).step_by(2).skip(1).collect();
    if why.starts_with("unknown variant") && !words.is_empty() {
        return not_a_word(setting, &words);
    }
    if why.starts_with("invalid") {
        let text = setting.text.clone();
        return setting.fault(SettingReason::DoesNotFit { text });
    }
    match QuantityFault::from_serde_message(why) {
        Some(fault) => setting.told(fault),
        None => setting.fault(SettingReason::Refused(why.to_owned())),
    }
}

/// A word that is none of the accepted ones.
fn not_a_word(setting: &Setting, words: &[&str]) -> Error {
    setting.fault(SettingReason::NoSuchWord {
        text: setting.text.clone(),
        known: known(&setting.text, words),
    })
}

/// The variant and its content, where a value is a choice with content.
pub(super) fn tagged(value: &Value) -> Option<(&str, &Value)> {
    let Value::Object(map) = value else {
        return None;
    };
    let (tag, content) = map.iter().next().filter(|_| map.len() == 1)?;
    tag.starts_with(char::is_uppercase)
        .then_some((tag.as_str(), content))
}

/// Whether a value is a technique parameter.
pub(super) fn is_technique(map: &Map<String, Value>) -> bool {
    map.contains_key("value") && map.contains_key("meaning")
}

/// Whether a value is a moment arm or another course with a factor.
pub(super) fn is_course(map: &Map<String, Value>) -> bool {
    map.contains_key("shape") && map.contains_key("scale")
}

/// The pointer (`/muscles/brachialis/pennation`) that a path leads to; names of choices are passed.
pub(super) fn resolve(tree: &Value, inside: &str, path: &str) -> Result<String> {
    let mut at = tree;
    let mut pointer = String::new();
    let before = path
        .strip_suffix(inside)
        .unwrap_or("")
        .trim_end_matches('.');
    let mut walked: Vec<&str> = Some(before).filter(|b| !b.is_empty()).into_iter().collect();
    for step in inside.split('.') {
        while let Some((tag, content)) = tagged(at).filter(|(tag, _)| *tag != step) {
            pointer = format!("{pointer}/{tag}");
            at = content;
        }
        let next = match at {
            Value::Object(map) => map.get(step),
            Value::Array(items) => step
                .parse::<usize>()
                .ok()
                .and_then(|index| items.get(index)),
            _ => None,
        };
        let Some(next) = next else {
            return Err(match line_instead(tree, &pointer, step, &walked) {
                Some(line) => lost_at(PlaceOnPath::Line(line), step, &walked, path),
                None => lost(at, step, &walked, path),
            });
        };
        pointer = format!("{pointer}/{}", step.replace('~', "~0").replace('/', "~1"));
        walked.push(step);
        at = next;
    }
    Ok(pointer)
}

/// A path that leads nowhere: which part, and what there is instead.
fn lost(at: &Value, step: &str, walked: &[&str], path: &str) -> Error {
    let at = match at {
        Value::Object(map) => {
            let keys: Vec<&str> = map.keys().map(String::as_str).collect();
            PlaceOnPath::Group(known(step, &keys))
        }
        Value::Array(items) => PlaceOnPath::List {
            last: items.len().saturating_sub(1),
        },
        _ => PlaceOnPath::Single,
    };
    lost_at(at, step, walked, path)
}

/// Where the arm at the shoulder is set of a muscle whose line across it was looked for among its moment arms.
fn line_instead(tree: &Value, arms: &str, step: &str, walked: &[&str]) -> Option<String> {
    let (_, muscle) = walked
        .split_last()
        .filter(|(last, _)| **last == "moment_arm")?;
    let pointer = arms.strip_suffix("/moment_arm")?;
    let line = tree.pointer(&format!("{pointer}/shoulder/scale"));
    line.filter(|_| step.starts_with("shoulder"))?;
    Some(format!("{}.shoulder.scale", muscle.join(".")))
}

fn lost_at(at: PlaceOnPath, step: &str, walked: &[&str], path: &str) -> Error {
    Error::bad(SettingFault::Lost {
        path: path.to_owned(),
        step: step.to_owned(),
        walked: walked.join("."),
        at,
    })
}

/// What to write where: several tries where a text may mean more than one choice.
fn replacements(tree: &Value, pointer: &str, setting: &Setting) -> Result<Vec<(String, Value)>> {
    let current = tree.pointer(pointer).unwrap_or(&Value::Null);
    let here = |value: Value| (pointer.to_owned(), value);
    match current {
        Value::Object(map) if is_technique(map) => {
            Ok(vec![(format!("{pointer}/value"), technique(map, setting)?)])
        }
        Value::Object(map) if is_course(map) => Ok(vec![here(course(map, setting)?)]),
        Value::Object(map) => match tagged(current) {
            Some((tag, content)) => {
                let same = share_or_scalar(tag, content, setting).map(|value| choice(tag, value));
                let others = other_choices(&setting.text);
                if plain_number(&setting.text).is_some() {
                    return Ok(vec![here(same?)]);
                }
                if others.is_empty() {
                    return Ok(vec![here(same?)]);
                }
                Ok(same.into_iter().chain(others).map(here).collect())
            }
            None => {
                let names = map.keys().cloned().collect();
                Err(setting.fault(SettingReason::IsGroup { names }))
            }
        },
        Value::String(word) if word.starts_with(char::is_uppercase) => {
            if relative(&setting.text).is_some() {
                return Err(setting.fault(SettingReason::IsWord { word: word.clone() }));
            }
            let word = Value::String(setting.text.clone());
            let others = other_choices(&setting.text);
            Ok(std::iter::once(word).chain(others).map(here).collect())
        }
        Value::Array(items) => Err(setting.fault(SettingReason::IsList {
            last: items.len().saturating_sub(1),
        })),
        Value::Null => Err(setting.fault(SettingReason::HasNoValue)),
        single => Ok(vec![here(scalar(single, setting)?)]),
    }
}

fn choice(tag: &str, content: Value) -> Value {
    let mut map = Map::new();
    map.insert(tag.to_owned(), content);
    Value::Object(map)
}

/// The choices that a text may mean where a place or a technique value stands.
fn other_choices(text: &str) -> Vec<Value> {
    let mut found = Vec::new();
    if let Ok(length) = Length::from_text(text) {
        found.extend(["Fixed", "Length"].map(|tag| choice(tag, tree_of(&length))));
    }
    if let Ok(angle) = Angle::from_text(text) {
        found.push(choice("Angle", tree_of(&angle)));
    }
    if let Some(share) = share_of("OfHeight").and_then(|share| share.read(text)) {
        found.push(choice("OfHeight", Value::from(share)));
    }
    if let Some(share) = share_of("OfShoulders").and_then(|share| share.read(text)) {
        found.push(choice("OfShoulders", Value::from(share)));
    }
    if let Some(number) = plain_number(text) {
        found.push(choice("Number", Value::from(number)));
    }
    if text.starts_with(char::is_uppercase) {
        found.push(Value::String(text.to_owned()));
    }
    found
}

/// A new single value behind a word; a share comes with its unit.
fn share_or_scalar(tag: &str, current: &Value, setting: &Setting) -> Result<Value> {
    let text = &setting.text;
    match share_of(tag).filter(|_| relative(text).is_none()) {
        None => scalar(current, setting),
        Some(share) => share.read(text).map(Value::from).ok_or_else(|| {
            setting.fault(SettingReason::ShareWithoutUnit {
                text: text.clone(),
                unit: share.name,
                now: current.to_string(),
            })
        }),
    }
}

/// A new single value in the place of an old one, of the same kind.
fn scalar(current: &Value, setting: &Setting) -> Result<Value> {
    let text = &setting.text;
    let factor = relative(text);
    match current {
        Value::Number(old) => match (factor, plain_number(text)) {
            (Some(factor), _) => Ok(Value::from(old.as_f64().unwrap_or(0.0) * factor)),
            (None, Some(number)) => Ok(Value::from(number)),
            (None, None) => Err(setting.fault(SettingReason::NoNumber {
                text: text.clone(),
                now: old.to_string(),
            })),
        },
        Value::String(old) => match (quantity(old), factor) {
            (Some((dimension, si)), Some(factor)) => Ok(in_si(dimension, si * factor)),
            (Some((dimension, _)), None) => match dimension.read(text) {
                Ok(si) => Ok(in_si(dimension, si)),
                Err(why) => Err(setting.told(why)),
            },
            (None, Some(_)) => Err(setting.fault(SettingReason::IsWord { word: old.clone() })),
            (None, None) => Ok(Value::String(text.clone())),
        },
        Value::Bool(old) => text.parse().map(Value::Bool).map_err(|_| {
            setting.fault(SettingReason::IsBoolean {
                now: *old,
                text: text.clone(),
            })
        }),
        _ => Err(setting.fault(SettingReason::IsGroup { names: Vec::new() })),
    }
}

/// A technique parameter's new value: the kind of value stays.
fn technique(map: &Map<String, Value>, setting: &Setting) -> Result<Value> {
    let current = &map["value"];
    let text = setting.text.as_str();
    if let Some((tag, content)) = tagged(current) {
        return match (tag, content) {
            ("Choice", Value::Object(words)) => word(words, setting),
            ("OfShoulders", _) if Length::from_text(text).is_ok() => {
                let length = setting.length()?;
                Ok(choice("Length", tree_of(&length)))
            }
            _ if text.eq_ignore_ascii_case("free") => {
                Err(setting.fault(SettingReason::CannotBeFree))
            }
            ("Length", _) if other_share(text).is_some() => {
                Ok(other_share(text).unwrap_or_default())
            }
            _ => Ok(choice(tag, share_or_scalar(tag, content, setting)?)),
        };
    }
    if text.eq_ignore_ascii_case("free") {
        return Ok(current.clone());
    }
    if relative(text).is_some() {
        return Err(setting.fault(SettingReason::IsFree));
    }
    let pattern = [map.get("least"), map.get("most")];
    let pattern = pattern.into_iter().flatten().find_map(tagged);
    match pattern {
        Some((tag, content)) => Ok(choice(tag, scalar(content, setting)?)),
        None => other_choices(text)
            .into_iter()
            .find(|c| tagged(c).is_some_and(|t| t.0 != "Fixed"))
            .ok_or_else(|| {
                setting.fault(SettingReason::NoQuantity {
                    text: text.to_owned(),
                })
            }),
    }
}

/// A multiple of the breadth of the shoulders where a length stands.
fn other_share(text: &str) -> Option<Value> {
    let share = share_of("OfShoulders")?.read(text)?;
    Some(choice("OfShoulders", Value::from(share)))
}

/// One of the accepted words of a choice.
fn word(words: &Map<String, Value>, setting: &Setting) -> Result<Value> {
    let of = words.get("of").and_then(Value::as_array);
    let of: Vec<&str> = of.into_iter().flatten().filter_map(Value::as_str).collect();
    let wanted = setting.text.to_lowercase();
    let Some(found) = of.iter().find(|word| word.to_lowercase() == wanted) else {
        return Err(not_a_word(setting, &of));
    };
    let mut words = words.clone();
    words.insert("now".to_owned(), Value::String((*found).to_owned()));
    Ok(choice("Choice", Value::Object(words)))
}

/// A moment arm changed as a whole: by a percentage, or to one length at every angle.
fn course(map: &Map<String, Value>, setting: &Setting) -> Result<Value> {
    let mut map = map.clone();
    if relative(&setting.text).is_some() {
        let scale = scalar(&map["scale"], setting)?;
        map.insert("scale".to_owned(), scale);
        return Ok(Value::Object(map));
    }
    let is_constant = tagged(&map["shape"]).is_some_and(|(tag, _)| tag == "Constant");
    if !is_constant {
        return Err(setting.fault(SettingReason::IsCourse));
    }
    let length = setting.length()?;
    map.insert("shape".to_owned(), choice("Constant", tree_of(&length)));
    map.insert("scale".to_owned(), Value::from(1.0));
    Ok(Value::Object(map))
}

/// The factor of a change such as "+10%" or "−5 %".
pub(super) fn relative(text: &str) -> Option<f64> {
    let number = text.strip_suffix('%')?.trim_end().replace('\u{2212}', "-");
    if !number.starts_with(['+', '-']) {
        return None;
    }
    let percent: f64 = number.parse().ok()?;
    percent.is_finite().then_some(1.0 + percent / 100.0)
}

/// A finite number without a unit.
fn plain_number(text: &str) -> Option<f64> {
    let number: f64 = text.replace('\u{2212}', "-").parse().ok()?;
    number.is_finite().then_some(number)
}

/// The dimension and SI value of a quantity in a tree.
pub(super) fn quantity(text: &str) -> Option<(&'static Dimension, f64)> {
    let (number, unit, rest) = parse_number_and_unit(text)?;
    let dimension = dimension_in_si(unit)?;
    rest.is_empty().then_some((dimension, number))
}

/// A quantity as a tree holds it.
pub(super) fn in_si(dimension: &Dimension, si: f64) -> Value {
    Value::String(format!("{si} {}", dimension.units[0].names[0]))
}
