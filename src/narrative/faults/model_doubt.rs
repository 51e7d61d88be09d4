//! Words for: what is accepted of a model and yet unlikely.

use super::told::Told;
use crate::error::Doubt;
use crate::narrative::measured::unlikely;
use crate::narrative::quantities::rounded;

/// The doubt in words.
pub(super) fn told(doubt: &Doubt) -> Told {
    match doubt {
        Doubt::Unlikely(range) => Told::new(unlikely(range)),
        Doubt::LongArm {
            arm_cm,
            angle_deg,
            most_cm,
        } => Told::new(format!(
            "makes an arm of {} cm at {} deg; few muscles reach {most_cm} cm",
            rounded(*arm_cm, 1),
            rounded(*angle_deg, 0)
        )),
        Doubt::NoStrength => Told::new("names no group: each is as strong as the muscle table says")
            .hint("take after a built-in lifter: extends: \"reference-man\", or strength_like"),
        Doubt::Fibres { movement, length } => Told::new(format!(
            "makes fibres of {} optimal lengths on the way of the {}; living ones are known from {} to {}",
            rounded(length.value, 2),
            movement.to_lowercase(),
            length.least,
            length.most
        )),
        Doubt::MassIndex(range) => Told::new(format!(
            "is {} kg for each square metre of height; {} to {} is usual",
            rounded(range.value, 1),
            range.least,
            range.most
        )),
        Doubt::Misfit { percent } => Told::new(format!(
            "goes badly with the law of rubber: readings and law differ by {} % of the largest reading",
            rounded(*percent, 0)
        ))
        .hint("read length and pull once more"),
        Doubt::Proportion {
            length_cm,
            usual_cm,
            ratio,
        } => Told::new(format!(
            "is {} cm; at that height it is about {} cm, and {} to {} times that is usual",
            rounded(*length_cm, 1),
            rounded(*usual_cm, 1),
            ratio.least,
            ratio.most
        )),
    }
}
