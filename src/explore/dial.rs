//! The values that the page can turn: what each is now, how far a dial goes, what it may be, where it comes from.
//!
//! In: a workbench. Out: [`Dials`] of technique, lifter, limbs, machine and every acting muscle.

use crate::error::Result;
use crate::library::{SettableNow, Wanted, Workbench};
use crate::narrative::dial_words::{dial_in_words, unit_in_words};
use crate::narrative::muscle_names::head_name;
use crate::narrative::parameter_list::{meaning_of, shown_unit};
use crate::narrative::parameters::parameter_in_words;
use crate::narrative::prose::capital;
use crate::narrative::rank_words::origin;
use crate::narrative::source_words::source_in_words;
use crate::study::ListedValue;
use crate::units::System;
use serde::Serialize;
use std::collections::BTreeMap;

/// The groups of dials, in the order of the page.
pub const DIAL_GROUPS: [&str; 6] = ["load", "technique", "machine", "muscle", "limbs", "lifter"];

/// Everything that can be turned.
#[derive(Debug, Serialize)]
pub(super) struct Dials {
    muscle_titles: BTreeMap<String, String>,
    dials: Vec<Dial>,
}

/// How far a dial goes.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct DialRange {
    pub(super) path: String,
    /// Its group by the name in [`DIAL_GROUPS`].
    pub(super) group: &'static str,
    /// Least and most of a number, in its unit.
    pub(super) ends: [f64; 2],
    pub(super) unit: String,
    /// The words of a choice.
    pub(super) words: Option<Vec<String>>,
}

impl Dials {
    /// How far each dial goes.
    pub(super) fn ranges(&self) -> Vec<DialRange> {
        self.dials.iter().map(Dial::range).collect()
    }
}

/// One value.
#[derive(Debug, Serialize)]
struct Dial {
    path: String,
    name: String,
    group: DialGroup,
    /// The muscle that it is of.
    muscle: Option<String>,
    meaning: String,
    kind: DialKind,
    /// How far the dial goes and what is accepted, in words.
    plausible: Option<String>,
    /// How the value is written, where that is another word than its unit: "× usual".
    told_unit: String,
    from: String,
    source: String,
}

impl Dial {
    fn range(&self) -> DialRange {
        let (ends, unit, words) = match &self.kind {
            DialKind::Number {
                least, most, unit, ..
            }
            | DialKind::Free {
                least, most, unit, ..
            } => ([*least, *most], unit.clone(), None),
            DialKind::Word { of, .. } => ([0.0; 2], String::new(), Some(of.clone())),
        };
        DialRange {
            path: self.path.clone(),
            group: self.group.name(),
            ends,
            unit,
            words,
        }
    }
}

impl DialGroup {
    /// Its name as `--only` takes it.
    fn name(self) -> &'static str {
        match self {
            Self::Technique => "technique",
            Self::Lifter => "lifter",
            Self::Limbs => "limbs",
            Self::Machine => "machine",
            Self::Muscle => "muscle",
        }
    }
}

/// What is told beside each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
enum DialGroup {
    Technique,
    Lifter,
    Limbs,
    Machine,
    Muscle,
}

/// What a dial turns.
#[derive(Debug, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum DialKind {
    /// A number, all in the unit that is shown.
    Number {
        now: f64,
        unit: String,
        per_si: f64,
        least: f64,
        most: f64,
        step: f64,
    },
    /// A number that the model finds itself unless it is given.
    Free {
        unit: String,
        per_si: f64,
        least: f64,
        most: f64,
        step: f64,
    },
    /// One of several words.
    Word { now: String, of: Vec<String> },
}

/// The dials of a lift and a lifter as they are.
///
/// **Fails** with what is wrong in files.
pub(super) fn dials(bench: &Workbench, units: System) -> Result<Dials> {
    let values = bench.settable(&[], Wanted::Moving)?.into_iter();
    let dials = values.filter_map(|value| {
        let (group, muscle) = group_of(&value.path)?;
        let listed = ListedValue {
            movement: None,
            value,
        };
        let value = &listed.value;
        let source = value.from.source.as_ref().map(source_in_words);
        let kind = kind_of(&listed, group, units)?;
        let ends = match &kind {
            DialKind::Number { least, most, .. } | DialKind::Free { least, most, .. } => {
                Some([*least, *most])
            }
            DialKind::Word { .. } => None,
        };
        let unit = match &kind {
            DialKind::Number { unit, .. } | DialKind::Free { unit, .. } => unit.as_str(),
            DialKind::Word { .. } => "",
        };
        Some(Dial {
            told_unit: unit_in_words(&value.path, unit).to_owned(),
            name: capital(&parameter_in_words(&value.path)),
            group,
            muscle,
            meaning: meaning_of(&listed),
            plausible: dial_in_words(&listed, ends, units),
            kind,
            from: origin(&value.from),
            source: source.unwrap_or_default(),
            path: value.path.clone(),
        })
    });
    let dials: Vec<Dial> = dials.collect();
    let names = dials.iter().filter_map(|dial| dial.muscle.clone());
    Ok(Dials {
        muscle_titles: names.map(|name| (name.clone(), head_name(&name))).collect(),
        dials,
    })
}

/// Which values are turned on the page, and where they are told.
fn group_of(path: &str) -> Option<(DialGroup, Option<String>)> {
    let parts: Vec<&str> = path.split('.').collect();
    let alone = |group| Some((group, None));
    match parts.as_slice() {
        ["technique", _] => alone(DialGroup::Technique),
        ["lifter", "height" | "body_mass" | "strength_scale"] | ["lifter", "strength", _] => {
            alone(DialGroup::Lifter)
        }
        [
            "segments",
            "trunk" | "upper_arm" | "forearm" | "thigh" | "shank",
            "length",
        ] => alone(DialGroup::Limbs),
        ["movement", "carrier", ..] => alone(DialGroup::Machine),
        ["muscles", muscle, fields @ ..] => {
            let is_dial = matches!(
                fields,
                ["peak_force" | "optimal_fibre_length" | "pennation" | "max_velocity"]
                    | ["moment_arm", _, "scale"]
                    | ["shoulder", "scale"]
                    | ["tendon", "slack_length"]
                    | ["reference", "0", "fibre_length"]
            );
            is_dial.then(|| (DialGroup::Muscle, Some((*muscle).to_owned())))
        }
        _ => None,
    }
}

fn kind_of(listed: &ListedValue, group: DialGroup, units: System) -> Option<DialKind> {
    let value = &listed.value;
    Some(match &value.now {
        SettableNow::Word { now, of } => DialKind::Word {
            now: now.clone(),
            of: of.clone(),
        },
        SettableNow::Free { unit } => {
            let (least, most) = value.range?;
            let (factor, unit) = shown_unit(most, unit, units);
            let unit = unit.to_owned();
            let [least, most, step] = marked([factor * least, factor * most]);
            DialKind::Free {
                unit,
                per_si: factor,
                least,
                most,
                step,
            }
        }
        SettableNow::Number { si, unit } => {
            let (factor, unit) = shown_unit(*si, unit, units);
            let ends = reach(listed, *si, group).map(|end| factor * end);
            let [least, most, step] = marked(ends);
            DialKind::Number {
                now: factor * si,
                unit: unit.to_owned(),
                per_si: factor,
                least,
                most,
                step,
            }
        }
    })
}

/// How far a dial goes: what is accepted, and of values without a usual range what teaches something near them
/// (assumed: half to one and a half times a muscle's value, a fifth either way of a limb).
fn reach(listed: &ListedValue, now: f64, group: DialGroup) -> [f64; 2] {
    let value = &listed.value;
    let accepted = value.range.unwrap_or((f64::NEG_INFINITY, f64::INFINITY));
    let (low, high) = match group {
        DialGroup::Technique => return [accepted.0.max(-1.0e6), accepted.1.min(1.0e6)],
        DialGroup::Limbs => (0.8, 1.2),
        DialGroup::Lifter if value.path == "lifter.height" => (0.85, 1.15),
        DialGroup::Lifter | DialGroup::Muscle | DialGroup::Machine => (0.5, 1.5),
    };
    if now == 0.0 {
        let (least, most) = value.usual.unwrap_or(accepted);
        return [least.max(-1.0e6), most.min(1.0e6)];
    }
    let near = [low * now, high * now];
    [
        near[0].min(near[1]).max(accepted.0),
        near[0].max(near[1]).min(accepted.1),
    ]
}

/// Ends and step of a scale with some hundred round marks between them.
fn marked([least, most]: [f64; 2]) -> [f64; 3] {
    let rough = (most - least).abs().max(1.0e-9) / 100.0;
    let size = 10.0_f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0].map(|part| part * size);
    let step = step
        .into_iter()
        .find(|step| *step >= rough)
        .unwrap_or(10.0 * size);
    // A value just above an end that is not accepted itself.
    [
        (least / step).ceil() * step,
        (most / step).floor() * step,
        step,
    ]
}
