//! Words for: broken rules of lifters, segment tables and muscles.

use super::known_told::did_you_mean;
use super::told::{TellFault, Told};
use crate::error::{BodyRule, Fault, JointTorque, MuscleRule};
use crate::narrative::muscle_names::head_name;
use crate::narrative::quantities::rounded;
use crate::units::System;

/// A rule of lifters and segment tables.
pub(super) fn body(rule: &BodyRule) -> Told {
    match rule {
        BodyRule::NoSuchGroup { muscles, known } => Told::new(format!(
            "is a group that no muscle of `{muscles}` belongs to"
        ))
        .hint(did_you_mean(known)),
        BodyRule::NoSource { group } => Told::new("has no source").hint(format!(
            "add \"{group}\": Assumed(\"reason\") to strength_sources"
        )),
        BodyRule::StraySource { known } => {
            Told::new("belongs to no factor in `strength`").hint(did_you_mean(known))
        }
        BodyRule::LacksSegments(segments) => Told::new(format!("lacks {}", segments.join(", "))),
        BodyRule::MassIndex(range) => Told::new(format!(
            "is {} kg for each square metre of height; {} to {} is accepted",
            rounded(range.value, 1),
            range.least,
            range.most
        ))
        .hint("look at the unit and the decimal point of mass and height"),
        BodyRule::Proportion {
            length_cm,
            usual_cm,
            ratio,
        } => Told::new(format!(
            "is {} cm; at that height it is about {} cm, and {} to {} times that is accepted",
            rounded(*length_cm, 1),
            rounded(*usual_cm, 1),
            ratio.least,
            ratio.most
        ))
        .hint("look at the unit: mm, cm"),
        BodyRule::MassProportion {
            mass_kg,
            usual_kg,
            ratio,
        } => Told::new(format!(
            "{}; {} to {} times that is accepted",
            segment_mass(*mass_kg, *usual_kg),
            ratio.least,
            ratio.most
        ))
        .hint("look at the unit and at the body's mass"),
        BodyRule::Stature {
            sum_cm,
            usual_cm,
            ratio,
        } => Told::new(format!(
            "{}; {} to {} times that is accepted",
            stature(*sum_cm, *usual_cm),
            ratio.least,
            ratio.most
        ))
        .hint("look whether the lengths belong to that height"),
        BodyRule::ShouldersBelowHips => Told::new("puts the shoulders below the hips"),
        BodyRule::NoTriangle { numbers } => Told::new(format!(
            "is no lower triangle over the {numbers} numbers named in `of`"
        ))
        .hint("the first row has one value, each next row one more; let `torquill fit` write it"),
        BodyRule::NoCovariance => Told::new(
            "is no covariance: a variance is not below 0, and a covariance not above the root of both variances",
        )
        .hint("let `torquill fit` write it"),
        BodyRule::VersionOutside { of, factor } => Told::new(format!(
            "makes {of} {}; {} to {} is accepted",
            rounded(factor.value, 2),
            factor.least,
            factor.most
        ))
        .hint("its numbers are logarithms beside the file's: 0 changes nothing, 0.1 is about 10 % more"),
        BodyRule::NoStrength => Told::new("is no strength that can stand there").hint(
            "strength_scale comes first, then strength.GROUP and lift_strength.LIFT; let `torquill fit` write it",
        ),
        BodyRule::NoVersion { numbers } => Told::new(format!(
            "does not have one value for each of the {numbers} numbers named in `of`"
        ))
        .hint("let `torquill fit` write it"),
        BodyRule::Sum(range) => Told::new(format!(
            "adds up to {} % of body mass, limbs twice; {} to {} % is accepted",
            rounded(range.value, 2),
            range.least,
            range.most
        )),
    }
}

/// A segment's mass beside the usual one.
pub(super) fn segment_mass(mass_kg: f64, usual_kg: f64) -> String {
    format!(
        "is {} kg; in a body of that mass it is about {} kg",
        rounded(mass_kg, 2),
        rounded(usual_kg, 2)
    )
}

/// A rule of muscles and joints.
pub(super) fn muscle(rule: &MuscleRule<Fault>, units: System, tell: TellFault) -> Told {
    match rule {
        MuscleRule::NoMuscle => Told::new("holds no muscle"),
        MuscleRule::LowNotBelowHigh => Told::new("is not below `high`"),
        MuscleRule::NoGroup => Told::new("is empty; name the strength group"),
        MuscleRule::CrossesNoJoint { joints } => {
            Told::new("crosses no joint").hint(format!("joints are: {}", joints.join(", ")))
        }
        MuscleRule::NoReference => Told::new(
            "is empty, so nothing says how long the fibres are",
        )
        .hint(
            "name one pose: reference: [(at: {elbow: \"60 deg\"}, fibre_length: 1.0, source: …)]",
        ),
        MuscleRule::ForeignJoint { crossed } => {
            Told::new("names a joint that the muscle has no moment arm at")
                .hint(format!("it crosses: {}", crossed.join(", ")))
        }
        MuscleRule::UnusableArm(fault) => unusable(fault, units, tell),
        MuscleRule::LongArm {
            arm_cm,
            angle_deg,
            most_cm,
        } => Told::new(format!(
            "makes an arm of {} cm at {} deg; no muscle reaches {most_cm} cm",
            rounded(*arm_cm, 1),
            rounded(*angle_deg, 0)
        ))
        .hint("look at the unit: mm, cm"),
        MuscleRule::Torn {
            muscle,
            movement,
            length,
        } => Told::new(format!(
            "makes fibres of {} optimal lengths in the {} on the way of the {}; {} to {} is accepted",
            rounded(length.value, 2),
            head_name(muscle),
            movement.to_lowercase(),
            length.least,
            length.most
        ))
        .hint("look at fibre length, moment arms and the length in the reference pose together"),
        MuscleRule::TooStrong(torque) => Told::new(format!(
            "makes {}; at most {} is accepted, three times the published mean",
            strong_joint(torque),
            rounded(torque.per_kg.most, 1)
        ))
        .hint("look at the units and decimal points of peak forces, moment arms and strength factors"),
        MuscleRule::AnglesFall {
            angle_deg,
            before_deg,
        } => Told::new(format!(
            "stands at {} deg behind one at {} deg; angles must rise",
            rounded(*angle_deg, 2),
            rounded(*before_deg, 2)
        )),
    }
}

fn unusable(fault: &Fault, units: System, tell: TellFault) -> Told {
    Told::new(format!("cannot be used: {}", tell(fault, units).message))
}

/// What the muscles of a joint make, and for each kilogram.
pub(super) fn strong_joint(torque: &JointTorque) -> String {
    format!(
        "the {} reach {} N·m in the {}, {} N·m for each kilogram of body mass",
        torque.joint,
        rounded(torque.torque_nm, 0),
        torque.movement.to_lowercase(),
        rounded(torque.per_kg.value, 1)
    )
}

/// What the segments on top of one another add up to.
pub(super) fn stature(sum_cm: f64, usual_cm: f64) -> String {
    format!(
        "adds up to {} cm with head, trunk, thigh, shank and ankle; at that height it is about {} cm",
        rounded(sum_cm, 0),
        rounded(usual_cm, 0)
    )
}
