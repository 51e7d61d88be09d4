//! Words for: broken rules of movements.

use super::known_told::did_you_mean;
use super::path_told::kind;
use super::told::{TellFault, Told};
use crate::error::{Fault, Known, PathRule, TechniqueKind, TechniqueNumber, TechniqueRule};
use crate::narrative::quantities::rounded;
use crate::units::System;

/// A rule of technique parameters in words.
pub(super) fn technique(rule: &TechniqueRule) -> Told {
    match rule {
        TechniqueRule::Missing { name, kinds, known } => missing(name, kinds, known),
        TechniqueRule::WrongKind {
            kinds,
            value,
            words,
        } => {
            let told = Told::new(format!(
                "must be {}; it is {}",
                any_kind(kinds),
                kind(*value)
            ));
            told.hint(written(kinds, words))
        }
        TechniqueRule::ForeignWord { word, known } => Told::new(format!(
            "offers `{word}`, which its path does not understand"
        ))
        .hint(did_you_mean(known)),
        TechniqueRule::NoSuchWord { word, known } => {
            Told::new(format!("cannot be `{word}`")).hint(did_you_mean(known))
        }
        TechniqueRule::OtherKind { bound, value } => Told::new(format!(
            "is {}, and the value is {}",
            kind(*bound),
            kind(*value)
        )),
        TechniqueRule::LeastNotBelowMost { least, most } => Told::new(format!(
            "is {}, not below `most`, {}",
            number(*least),
            number(*most)
        )),
        TechniqueRule::Outside {
            value,
            least,
            most,
            meaning,
        } => technique_outside(*value, *least, *most).hint(meaning.clone()),
    }
}

/// A parameter that its path needs: the nearest names, and how an entry is written.
fn missing(name: &str, kinds: &[TechniqueKind], known: &Known) -> Told {
    let told = Told::new(format!(
        "needs the technique parameter `{name}`, {}",
        any_kind(kinds)
    ));
    let entry = format!(
        "add to technique: \"{name}\": (value: {}, meaning: \"…\", source: …)",
        sample(kinds.first().copied().unwrap_or(TechniqueKind::Number), &[])
    );
    if known.near.is_empty() {
        told.hint(entry)
    } else {
        told.hint(did_you_mean(known))
    }
}

/// "a length or Free".
fn any_kind(kinds: &[TechniqueKind]) -> String {
    let kinds: Vec<&str> = kinds.iter().map(|one| kind(*one)).collect();
    kinds.join(" or ")
}

/// How values of these kinds are written.
fn written(kinds: &[TechniqueKind], words: &[String]) -> String {
    let samples: Vec<String> = kinds.iter().map(|kind| sample(*kind, words)).collect();
    format!("write {}", samples.join(" or "))
}

/// A value of a kind as a file writes it.
fn sample(kind: TechniqueKind, words: &[String]) -> String {
    match kind {
        TechniqueKind::Length => "Length(\"5 cm\")".to_owned(),
        TechniqueKind::Angle => "Angle(\"30 deg\")".to_owned(),
        TechniqueKind::OfShoulders => "OfShoulders(1.5)".to_owned(),
        TechniqueKind::Number => "Number(0.5)".to_owned(),
        TechniqueKind::Free => "Free".to_owned(),
        TechniqueKind::Word => {
            let quoted: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
            let now = quoted.first().map_or("\"…\"", String::as_str);
            format!("Choice(now: {now}, of: [{}])", quoted.join(", "))
        }
    }
}

/// A rule of paths in words.
pub(super) fn path(rule: &PathRule<Fault>, units: System, tell: TellFault) -> Told {
    match rule {
        PathRule::JointStands { from_deg, to_deg } => Told::new(format!(
            "is {} deg and `from` is {} deg: the joint does not move",
            rounded(*to_deg, 2),
            rounded(*from_deg, 2)
        )),
        PathRule::MovesAndStands => Told::new("is the joint that moves; it cannot stand too"),
        PathRule::PlaneOfOtherJoint { joint } => Told::new(format!(
            "turns the plane of the shoulder, and the joint is the {joint}"
        )),
        PathRule::JointWithoutLimb { joint } => {
            Told::new(format!("is the {joint}, and no single limb hangs from it"))
                .hint("a Sweep turns the elbow, the shoulder, the knee or the ankle")
        }
        PathRule::LimbOfOtherJoint { joint, limb } => {
            Told::new(format!("is not what the {joint} carries")).hint(format!("write {limb}"))
        }
        PathRule::TorqueOfSeveralJoints => Told::new("is `Torque`, and several joints move")
            .hint("write Force; a torque is that of a Sweep's one joint"),
        PathRule::Lockout { of_hand: false } => Told::new("cannot be `Lockout`"),
        PathRule::Lockout { of_hand: true } => Told::new("cannot be `Lockout`")
            .hint("`Lockout` can stand only for how far up the hand is"),
        PathRule::HandStands => Told::new("is the same place as `start`: the hand does not move"),
        PathRule::KeyPoses => {
            Told::new("needs at least two key poses in rising order of the range")
        }
        PathRule::SledStands => Told::new("is not below `start_knee`: the sled does not move away"),
        PathRule::CannotBeDone { lifter, fault } => cannot_be_done(lifter, fault, units, tell),
    }
}

fn technique_outside(
    value: TechniqueNumber,
    least: Option<TechniqueNumber>,
    most: Option<TechniqueNumber>,
) -> Told {
    let end = |end: Option<TechniqueNumber>| end.map_or("any".to_owned(), number);
    Told::new(format!(
        "is {}, outside what the model accepts ({} to {})",
        number(value),
        end(least),
        end(most)
    ))
}

fn cannot_be_done(lifter: &str, fault: &Fault, units: System, tell: TellFault) -> Told {
    let why = tell(fault, units);
    let message = format!("cannot be done by {lifter}: {}", why.message);
    why.hints.into_iter().fold(Told::new(message), Told::hint)
}

/// A technique value in words.
fn number(number: TechniqueNumber) -> String {
    match number {
        TechniqueNumber::Metres(metres) => format!("{} cm", rounded(metres * 100.0, 1)),
        TechniqueNumber::Radians(radians) => format!("{} deg", rounded(radians.to_degrees(), 1)),
        TechniqueNumber::Shoulders(times) => {
            format!("{} times the breadth of the shoulders", rounded(times, 3))
        }
        TechniqueNumber::Plain(number) => rounded(number, 4),
    }
}
