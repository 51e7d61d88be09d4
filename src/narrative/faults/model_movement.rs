//! Words for: broken rules of movements.

use super::known_told::did_you_mean;
use super::path_told::kind;
use super::told::{TellFault, Told};
use crate::error::{Fault, PathRule, TechniqueNumber, TechniqueRule};
use crate::narrative::quantities::rounded;
use crate::units::System;

/// A rule of technique parameters in words.
pub(super) fn technique(rule: &TechniqueRule) -> Told {
    match rule {
        TechniqueRule::Missing { name, known } => Told::new(format!(
            "needs the technique parameter `{name}`, which is missing"
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
