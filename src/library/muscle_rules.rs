//! Rules for muscles and passive joints.
//!
//! In: records whose types already fit. Out: complaints about what no muscle can have: values outside
//! sane ranges, arms longer than the limb is thick, a muscle whose length nothing fixes.

use super::complaint::{Complaint, Rules};
use crate::anatomy::{
    ArmShape, Dof, MomentArm, Muscle, MuscleTable, PassiveJoint, ShoulderLine, Tendon,
};
use crate::bounds::bounds;
use crate::error::{BrokenRule, Fault, MuscleRule};
use std::collections::{BTreeMap, BTreeSet};
use std::f64::consts::PI;

/// A table of muscles.
pub(super) fn muscle_table(table: &MuscleTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    if table.muscles.is_empty() {
        rules.add("muscles", BrokenRule::Muscle(MuscleRule::NoMuscle));
    }
    muscles(&table.muscles, &mut rules);
    joints(&table.joints, &mut rules);
    rules.complaints
}

/// Passive joints of a table or of a finished body.
pub(super) fn joints(all: &BTreeMap<Dof, PassiveJoint>, rules: &mut Rules) {
    let bounds = bounds();
    for (dof, joint) in all {
        let at = |field: &str| format!("joints.{}.{field}", dof.name());
        for (field, value, bound) in [
            ("low", joint.low.as_deg(), &bounds.joint_end),
            ("high", joint.high.as_deg(), &bounds.joint_end),
            (
                "low_torque",
                joint.low_torque.as_nm(),
                &bounds.passive_torque,
            ),
            (
                "high_torque",
                joint.high_torque.as_nm(),
                &bounds.passive_torque,
            ),
            ("width", joint.width.as_deg(), &bounds.passive_width),
        ] {
            rules.within(&at(field), value, bound);
        }
        if joint.low >= joint.high {
            rules.add(at("low"), BrokenRule::Muscle(MuscleRule::LowNotBelowHigh));
        }
    }
}

/// Muscles of a table or of a finished body.
pub(super) fn muscles(all: &BTreeMap<String, Muscle>, rules: &mut Rules) {
    let bounds = bounds();
    for (name, muscle) in all {
        let path = format!("muscles.{name}");
        let at = |field: &str| format!("{path}.{field}");
        for (field, value, bound) in [
            ("peak_force", muscle.peak_force.as_n(), &bounds.peak_force),
            (
                "optimal_fibre_length",
                muscle.optimal_fibre_length.as_cm(),
                &bounds.fibre_length,
            ),
            ("pennation", muscle.pennation.as_deg(), &bounds.pennation),
            ("max_velocity", muscle.max_velocity, &bounds.fibre_speed),
        ] {
            rules.within(&at(field), value, bound);
        }
        if muscle.group.trim().is_empty() {
            rules.add(at("group"), BrokenRule::Muscle(MuscleRule::NoGroup));
        }
        tendon(&at("tendon"), &muscle.tendon, rules);
        if muscle.moment_arm.is_empty() && muscle.shoulder.is_none() {
            let joints = Dof::ALL.map(Dof::name).to_vec();
            let crosses_none = MuscleRule::CrossesNoJoint { joints };
            rules.add(at("moment_arm"), BrokenRule::Muscle(crosses_none));
        }
        for (dof, arm) in &muscle.moment_arm {
            moment_arm(&at(&format!("moment_arm.{}", dof.name())), arm, rules);
        }
        if let Some(line) = &muscle.shoulder {
            shoulder_line(&at("shoulder"), line, rules);
        }
        references(&path, muscle, rules);
    }
}

fn shoulder_line(path: &str, line: &ShoulderLine, rules: &mut Rules) {
    let bounds = bounds();
    for (end, place) in [("origin", line.origin), ("insertion", line.insertion)] {
        for (way, length) in [
            ("out", place.out),
            ("forward", place.forward),
            ("up", place.up),
        ] {
            rules.within(
                &format!("{path}.{end}.{way}"),
                length.as_cm(),
                &bounds.line_place,
            );
        }
    }
    rules.within(
        &format!("{path}.wrap"),
        line.wrap.as_cm(),
        &bounds.line_wrap,
    );
    rules.within(&format!("{path}.scale"), line.scale, &bounds.arm_scale);
}

fn references(path: &str, muscle: &Muscle, rules: &mut Rules) {
    if muscle.reference.is_empty() {
        let none = BrokenRule::Muscle(MuscleRule::NoReference);
        rules.add(format!("{path}.reference"), none);
    }
    let crossed = Dof::ALL.into_iter().filter(|dof| muscle.crosses(*dof));
    let crossed: BTreeSet<&'static str> = crossed.map(Dof::name).collect();
    let crossed: Vec<&'static str> = crossed.into_iter().collect();
    for (index, reference) in muscle.reference.iter().enumerate() {
        let at = format!("{path}.reference.{index}");
        let length = reference.fibre_length;
        rules.within(
            &format!("{at}.fibre_length"),
            length,
            &bounds().reference_fibre_length,
        );
        for dof in reference.at.keys() {
            if !crossed.is_empty() && !muscle.crosses(*dof) {
                let crossed = crossed.clone();
                let foreign = BrokenRule::Muscle(MuscleRule::ForeignJoint { crossed });
                rules.add(format!("{at}.at.{}", dof.name()), foreign);
            }
        }
    }
}

fn tendon(path: &str, tendon: &Tendon, rules: &mut Rules) {
    if let Tendon::Compliant {
        slack_length,
        strain_at_peak,
        ..
    } = tendon
    {
        let slack_cm = slack_length.as_cm();
        rules.within(
            &format!("{path}.slack_length"),
            slack_cm,
            &bounds().tendon_slack,
        );
        let strain_path = format!("{path}.strain_at_peak");
        rules.within(&strain_path, *strain_at_peak, &bounds().tendon_strain);
    }
}

fn moment_arm(path: &str, arm: &MomentArm, rules: &mut Rules) {
    rules.within(&format!("{path}.scale"), arm.scale, &bounds().arm_scale);
    if points_fall(path, arm, rules) {
        return;
    }
    let broken = match arm.curve() {
        Ok(curve) => long_arm(&|angle_rad| curve.at(angle_rad) * 100.0),
        Err(error) => error
            .faults()
            .first()
            .map(|fault| MuscleRule::UnusableArm(Box::new(fault.clone()))),
    };
    if let Some(broken) = broken {
        rules.add(format!("{path}.shape"), BrokenRule::Muscle(broken));
    }
}

/// The first angle at which an arm is longer than any; every joint stays inside -90 to 180 deg, and beyond
/// its published angles an arm is level.
fn long_arm(arm_cm: &dyn Fn(f64) -> f64) -> Option<MuscleRule<Fault>> {
    let bound = &bounds().moment_arm;
    (0..=36)
        .chain(-18..0)
        .map(|step| f64::from(step) * PI / 36.0)
        .map(|angle_rad| (angle_rad, arm_cm(angle_rad)))
        .find(|(_, arm_cm)| !bound.holds(*arm_cm))
        .map(|(angle_rad, arm_cm)| MuscleRule::LongArm {
            arm_cm,
            angle_deg: angle_rad.to_degrees(),
            most_cm: bound.most(),
        })
}

/// Points whose angles do not rise, each told at its place; whether there are any.
fn points_fall(path: &str, arm: &MomentArm, rules: &mut Rules) -> bool {
    let ArmShape::Points(points) = &arm.shape else {
        return false;
    };
    let before = rules.complaints.len();
    for (index, pair) in points.windows(2).enumerate() {
        let (before_deg, angle_deg) = (pair[0].0.as_deg(), pair[1].0.as_deg());
        if angle_deg <= before_deg {
            let fall = MuscleRule::AnglesFall {
                angle_deg,
                before_deg,
            };
            let path = format!("{path}.shape.{}", index + 1);
            rules.add(path, BrokenRule::Muscle(fall));
        }
    }
    rules.complaints.len() > before
}
