//! Every value of a model that can be set: what it is now, what it may be, where it comes from.
//!
//! In: a [`Workbench`] and settings. Out: [`SettableValue`]s, by the paths that `PATH=VALUE` accepts.

use super::assemble::{Model, Workbench};
use super::body_rules::{lifter_rules, record_rules};
use super::complaint::{PlausibleRange, Rules};
use super::movement_rules::rules_of;
use super::numbers::{NumberAt, every_number, get, numeric_paths};
use super::provenance::{Provenance, SourcedTrees};
use super::technique_rules::number;
use crate::anatomy::MuscleTable;
use crate::error::{Result, TechniqueNumber};
use crate::movement::{Technique, TechniqueValue};
use std::collections::BTreeMap;

/// Which values are wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wanted {
    /// Those with a part in the movement.
    Moving,
    /// Those of every muscle and every joint.
    All,
    /// Those of the movement's own file.
    OfMovement,
}

/// Whether a path is one of a movement's file.
#[must_use]
pub fn is_of_movement(path: &str) -> bool {
    path.starts_with("technique.") || path.starts_with("movement.")
}

/// What a value is now.
#[derive(Debug, Clone, PartialEq)]
pub enum SettableNow {
    /// A number in SI, and its unit.
    Number {
        /// The number.
        si: f64,
        /// Its unit; empty for a plain number.
        unit: &'static str,
    },
    /// One of several words.
    Word {
        /// The word that holds.
        now: String,
        /// All accepted ones.
        of: Vec<String>,
    },
    /// Left to the model.
    Free {
        /// The unit of a value that is given to it; empty if none is known.
        unit: &'static str,
    },
}

/// One value that can be set.
#[derive(Debug, Clone, PartialEq)]
pub struct SettableValue {
    /// Its path.
    pub path: String,
    /// What it means, where its file says so.
    pub meaning: Option<String>,
    /// What it is now.
    pub now: SettableNow,
    /// Least and most that is accepted, in the unit of the value.
    pub range: Option<(f64, f64)>,
    /// Whether the least itself is accepted.
    pub least_is_inside: bool,
    /// Least and most of what one meets, in the unit of the value.
    pub usual: Option<(f64, f64)>,
    /// Where it comes from.
    pub from: Provenance,
    /// The value over the one that the calibration knows: how much a body of this size has of it.
    pub scaled_by: f64,
}

impl Workbench {
    /// Every value that can be set, as far as it is wanted.
    ///
    /// **Fails** with every setting that does not fit.
    pub fn settable(&self, sets: &[String], wanted: Wanted) -> Result<Vec<SettableValue>> {
        let (model, plain) = (self.model(sets)?, self.model(&[])?);
        let mut numbers = match wanted {
            Wanted::Moving => numeric_paths(&model),
            Wanted::All | Wanted::OfMovement => every_number(&model),
        };
        if wanted == Wanted::OfMovement {
            numbers.retain(|number| is_of_movement(&number.path));
        }
        let ranges = ranges(&model, self.files.muscles());
        let bench = self.with_file_settings(sets)?;
        let trees = bench.sourced_trees();
        let mut found = Vec::new();
        for number in numbers {
            let from = bench.provenance_in(&trees, &number.path)?;
            // Where nothing is set, the value is the one before.
            let before = match sets.is_empty() {
                true => number.value,
                false => get(&plain, &number.path).map_or(number.value, |plain| plain.value),
            };
            found.push(SettableValue {
                scaled_by: from.fitted.map_or(1.0, |fitted| before / fitted.value),
                ..settable_number(&model, number, from, &ranges)
            });
        }
        for (name, technique) in &model.movement.technique {
            found.extend(bench.word_or_free(&trees, name, technique)?);
        }
        Ok(found)
    }

    /// A technique parameter that is a word or left free.
    fn word_or_free(
        &self,
        trees: &SourcedTrees,
        name: &str,
        technique: &Technique,
    ) -> Result<Option<SettableValue>> {
        let ends = [&technique.least, &technique.most].map(Option::as_ref);
        let ends = ends.map(|end| end.and_then(|end| number(end, None)));
        let now = match &technique.value {
            TechniqueValue::Choice { now, of } => SettableNow::Word {
                now: now.clone(),
                of: of.clone(),
            },
            TechniqueValue::Free => SettableNow::Free {
                unit: match ends[0] {
                    Some(TechniqueNumber::Metres(_)) => "m",
                    Some(TechniqueNumber::Radians(_)) => "rad",
                    _ => "",
                },
            },
            _ => return Ok(None),
        };
        let path = format!("technique.{name}");
        Ok(Some(SettableValue {
            from: self.provenance_in(trees, &path)?,
            path,
            meaning: Some(technique.meaning.clone()),
            now,
            range: match ends {
                [Some(least), Some(most)] => Some((least.number(), most.number())),
                _ => None,
            },
            least_is_inside: true,
            usual: None,
            scaled_by: 1.0,
        }))
    }
}

/// A number with its range.
fn settable_number(
    model: &Model,
    found: NumberAt,
    from: Provenance,
    ranges: &BTreeMap<String, PlausibleRange>,
) -> SettableValue {
    let technique = found
        .path
        .strip_prefix("technique.")
        .and_then(|name| model.movement.technique.get(name));
    let range = ranges.get(&found.path);
    let in_si = |range: &PlausibleRange, (least, most): (f64, f64)| {
        (least * range.in_si, most * range.in_si)
    };
    SettableValue {
        meaning: technique.map(|technique| technique.meaning.clone()),
        range: match technique {
            Some(technique) => technique_range(model, technique),
            None => range.map(|range| in_si(range, range.ends)),
        },
        least_is_inside: technique.is_some() || range.is_none_or(|range| range.least_is_inside),
        usual: range.and_then(|range| Some(in_si(range, range.usual?))),
        path: found.path,
        now: SettableNow::Number {
            si: found.value,
            unit: found.unit,
        },
        from,
        scaled_by: 1.0,
    }
}

/// The range that a movement's file gives a technique parameter, in the unit of its value.
fn technique_range(model: &Model, technique: &Technique) -> Option<(f64, f64)> {
    let shoulders_m = model.lifter.build.biacromial_breadth.as_m();
    let per = match technique.value {
        TechniqueValue::OfShoulders(_) => shoulders_m,
        _ => 1.0,
    };
    let end = |end: &Option<TechniqueValue>| {
        let number = number(end.as_ref()?, Some(shoulders_m))?;
        Some(number.number() / per)
    };
    Some((end(&technique.least)?, end(&technique.most)?))
}

/// Every range that the rules ask for, by the path of its value.
fn ranges(model: &Model, muscles: &MuscleTable) -> BTreeMap<String, PlausibleRange> {
    let recorded = |rules: &dyn Fn(&mut Rules)| {
        let mut asked = Rules {
            asked: Some(BTreeMap::new()),
            ..Rules::default()
        };
        rules(&mut asked);
        asked.asked.unwrap_or_default()
    };
    let of_record = recorded(&|rules| record_rules(&model.record, Some(muscles), rules));
    let of_movement = recorded(&|rules| rules_of(&model.movement, rules));
    let mut found = recorded(&|rules| lifter_rules(&model.lifter, rules));
    let inside = |group: &'static str| {
        move |(path, range): (String, PlausibleRange)| (format!("{group}.{path}"), range)
    };
    found.extend(of_record.into_iter().map(inside("lifter")));
    found.extend(of_movement.into_iter().map(inside("movement")));
    found
}
