//! The technique parameters that a movement's path and carrier read: which, of what kind, with which words.
//!
//! In: a movement. Out: [`Need`]s, and complaints about those that are missing, of another kind, or read by nothing.

use super::complaint::Rules;
use super::nearest;
use super::technique_rules::kind;
use crate::bounds::bounds;
use crate::error::{BrokenRule, Doubt, TechniqueKind, TechniqueRule};
use crate::movement::{
    ArmPlace, ArmRecord, BarPlace, CarrierRecord, Movement, PathRecord, Posture, TechniqueValue,
};

/// A technique parameter that a path or carrier reads.
struct Need<'a> {
    /// Its name.
    name: &'a str,
    /// Path of what reads it.
    asked_at: String,
    /// The kinds that it may have.
    kinds: &'static [TechniqueKind],
    /// The words of a choice that are understood.
    words: &'static [&'static str],
    /// Whether the path does without it.
    is_optional: bool,
}

const ANGLE: &[TechniqueKind] = &[TechniqueKind::Angle];
const LENGTH: &[TechniqueKind] = &[TechniqueKind::Length];
const LENGTH_OR_FREE: &[TechniqueKind] = &[TechniqueKind::Length, TechniqueKind::Free];
const BREADTH: &[TechniqueKind] = &[TechniqueKind::OfShoulders, TechniqueKind::Length];
const PLACE: &[TechniqueKind] = &[
    TechniqueKind::Length,
    TechniqueKind::OfShoulders,
    TechniqueKind::Free,
];
const WORD: &[TechniqueKind] = &[TechniqueKind::Word];

impl<'a> Need<'a> {
    fn of(name: &'a str, asked_at: impl Into<String>, kinds: &'static [TechniqueKind]) -> Self {
        Self {
            name,
            asked_at: asked_at.into(),
            kinds,
            words: &[],
            is_optional: false,
        }
    }

    /// The trunk's angle, which a path does without.
    fn leaning(asked_at: &str) -> Self {
        Self {
            is_optional: true,
            ..Self::of("torso_angle", asked_at, ANGLE)
        }
    }

    fn word(name: &'a str, asked_at: &str, words: &'static [&'static str]) -> Self {
        Self {
            words,
            ..Self::of(name, asked_at, WORD)
        }
    }
}

/// What a movement's path and carrier read.
fn needs(movement: &Movement) -> Vec<Need<'_>> {
    let mut needs = match &movement.path {
        PathRecord::Sweep(sweep) => {
            let held = sweep
                .held
                .iter()
                .map(|(dof, name)| Need::of(name, format!("path.held.{}", dof.name()), ANGLE));
            let plane = sweep
                .plane
                .iter()
                .map(|name| Need::of(name, "path.plane", ANGLE));
            let lean = sweep.leans().then(|| Need::leaning("path.body"));
            held.chain(plane).chain(lean).collect()
        }
        PathRecord::Arm(arm) => of_arm(arm),
        PathRecord::Stance(stance) => match stance.bar {
            BarPlace::OnBack { .. } => vec![
                Need::of("depth", "path.bar", ANGLE),
                Need::word("bar_position", "path.bar", &["high", "low"]),
                Need::of("knee_travel", "path.bar", LENGTH_OR_FREE),
            ],
            BarPlace::InHands { .. } => {
                vec![Need::word("stance", "path.bar", &["conventional", "sumo"])]
            }
        },
        PathRecord::LegPress(_) => vec![
            Need::of("sled_angle", "path", ANGLE),
            Need::of("foot_height", "path", LENGTH),
        ],
        PathRecord::Bridge(_) => vec![Need::of("knee_angle", "path", ANGLE)],
    };
    if movement.carrier == CarrierRecord::Sled {
        needs.push(Need::of("sled_angle", "carrier", ANGLE));
    }
    needs
}

fn of_arm(arm: &ArmRecord) -> Vec<Need<'_>> {
    let mut needs = vec![
        Need::of("grip_width", "path", BREADTH),
        Need::of(&arm.elbow.turned, "path.elbow.turned", ANGLE),
    ];
    if arm.posture != Posture::Lying {
        needs.push(Need::leaning("path.posture"));
    }
    for (path, place) in [
        ("path.shoulder_height", &arm.shoulder_height),
        ("path.start.forward", &arm.start.forward),
        ("path.start.up", &arm.start.up),
        ("path.end.forward", &arm.end.forward),
        ("path.end.up", &arm.end.up),
    ] {
        if let ArmPlace::Technique(name) = place {
            needs.push(Need::of(name, path, PLACE));
        }
    }
    needs
}

/// Complaints about parameters that are missing or of another kind than is read, and doubts about those that nothing
/// reads.
pub(super) fn rules_of(movement: &Movement, rules: &mut Rules) {
    let needs = needs(movement);
    let names: Vec<&str> = movement.technique.keys().map(String::as_str).collect();
    for (index, need) in needs.iter().enumerate() {
        let is_told = needs[..index].iter().any(|other| other.name == need.name);
        match movement.technique.get(need.name) {
            Some(found) => of_its_kind(need, &found.value, rules),
            None if need.is_optional || is_told => {}
            None => {
                let missing = TechniqueRule::Missing {
                    name: need.name.to_owned(),
                    kinds: need.kinds.to_vec(),
                    known: nearest::known(need.name, &names),
                };
                rules.add(need.asked_at.clone(), BrokenRule::Technique(missing));
            }
        }
    }
    let read: Vec<&str> = needs.iter().map(|need| need.name).collect();
    for name in names.iter().filter(|name| !read.contains(name)) {
        let known = nearest::known(name, &read);
        let unused = BrokenRule::Doubt(Doubt::UnusedTechnique { known });
        rules.add(format!("technique.{name}"), unused);
    }
}

/// A parameter of the kind that is read, its words among those that are understood.
fn of_its_kind(need: &Need<'_>, value: &TechniqueValue, rules: &mut Rules) {
    let path = format!("technique.{}.value", need.name);
    if !need.kinds.contains(&kind(value)) {
        let wrong = TechniqueRule::WrongKind {
            kinds: need.kinds.to_vec(),
            value: kind(value),
            words: need.words.iter().map(|word| (*word).to_owned()).collect(),
        };
        // Its range is of the kind that is read, and not what is wrong.
        let of_it = format!("technique.{}.", need.name);
        rules
            .complaints
            .retain(|told| !told.path.starts_with(&of_it));
        rules.add(path, BrokenRule::Technique(wrong));
        return;
    }
    match value {
        TechniqueValue::Choice { of, .. } => {
            for word in of
                .iter()
                .filter(|word| !need.words.contains(&word.as_str()))
            {
                let foreign = TechniqueRule::ForeignWord {
                    word: word.clone(),
                    known: nearest::known(word, need.words),
                };
                rules.add(path.clone(), BrokenRule::Technique(foreign));
            }
        }
        // What is outside the file's own range is told once.
        TechniqueValue::Angle(angle)
            if need.name == "depth" && rules.complaints.iter().all(|told| told.path != path) =>
        {
            rules.within(&path, angle.as_deg(), &bounds().thigh_depth);
        }
        _ => {}
    }
}
