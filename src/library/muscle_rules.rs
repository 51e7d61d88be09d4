//! Rules for muscles and passive joints.
//!
//! In: records whose types already fit. Out: complaints about what no muscle can have: values outside
//! sane ranges, arms longer than the limb is thick, a muscle whose length nothing fixes.

use super::complaint::{Complaint, Rules, complaint};
use super::group_rules;
use crate::anatomy::{
    ArmShape, Dof, Joint, MomentArm, Muscle, MuscleTable, PassiveJoint, ShoulderLine, ShoulderPose,
    Tendon,
};
use crate::bounds::{Bound, bounds};
use crate::error::{BrokenRule, Doubt, Fault, MuscleRule};
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
    group_rules::rules_of(table, &mut rules);
    rules.complaints
}

/// Passive joints of a table or of a finished body.
pub(super) fn joints(all: &BTreeMap<Dof, PassiveJoint>, rules: &mut Rules) {
    let bounds = bounds();
    for (dof, joint) in all {
        let at = |field: &str| format!("joints.{}.{field}", dof.name());
        for (field, value, bound) in [
            ("low", joint.low.as_deg(), angle_bound(*dof)),
            ("high", joint.high.as_deg(), angle_bound(*dof)),
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
    let over_blade = line.over_blade.map(|place| ("over_blade", place));
    let ends = [("origin", line.origin), ("insertion", line.insertion)];
    for (end, place) in ends.into_iter().chain(over_blade) {
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
    if let Some(broken) = long_line(line) {
        rules.add(format!("{path}.insertion"), broken);
    }
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
        for (dof, angle) in &reference.at {
            let path = format!("{at}.at.{}", dof.name());
            rules.within(&path, angle.as_deg(), angle_bound(*dof));
            if !crossed.is_empty() && !muscle.crosses(*dof) {
                let crossed = crossed.clone();
                let foreign = BrokenRule::Muscle(MuscleRule::ForeignJoint { crossed });
                rules.add(path, foreign);
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
    match arm.curve() {
        Ok(curve) => {
            let steps = (0..=36).chain(-18..0);
            let angles = steps.map(|step| f64::from(step) * PI / 36.0);
            let broken = long_arm(angles, &|angle_rad| curve.at(angle_rad) * 100.0);
            rules
                .complaints
                .extend(broken.map(|broken| complaint(format!("{path}.shape"), broken)));
        }
        Err(error) => {
            if let Some(fault) = error.faults().first() {
                let unusable = MuscleRule::UnusableArm(Box::new(fault.clone()));
                rules.add(format!("{path}.shape"), BrokenRule::Muscle(unusable));
            }
        }
    }
}

/// The first angle at which an arm is longer than any or than those that are measured; every joint stays inside
/// -90 to 180 deg, and beyond its published angles an arm is level.
fn long_arm(
    angles: impl Iterator<Item = f64>,
    arm_cm: &dyn Fn(f64) -> f64,
) -> Option<BrokenRule<Fault>> {
    let arms: Vec<(f64, f64)> = angles.map(|angle| (angle, arm_cm(angle))).collect();
    let bound = &bounds().moment_arm;
    let first = |is_odd: &dyn Fn(f64) -> bool| {
        let found = arms.iter().find(|(_, arm_cm)| is_odd(*arm_cm));
        found.map(|(angle_rad, arm_cm)| (*arm_cm, angle_rad.to_degrees()))
    };
    if let Some((arm_cm, angle_deg)) = first(&|arm_cm| !bound.holds(arm_cm)) {
        return Some(BrokenRule::Muscle(MuscleRule::LongArm {
            arm_cm,
            angle_deg,
            most_cm: bound.most(),
        }));
    }
    let (arm_cm, angle_deg) = first(&|arm_cm| bound.unlikely(arm_cm).is_some())?;
    Some(BrokenRule::Doubt(Doubt::LongArm {
        arm_cm,
        angle_deg,
        most_cm: bound.usual.map_or(bound.most(), |(_, most)| most),
    }))
}

/// The longest moment of a line across the shoulder over the planes of the joint.
fn long_line(line: &ShoulderLine) -> Option<BrokenRule<Fault>> {
    let path = line.path();
    let planes = [
        Dof::ShoulderFlexion,
        Dof::ShoulderAbduction,
        Dof::ShoulderHorizontal,
    ];
    let arm_cm = |angle_rad: f64| {
        let arms = planes.map(|dof| path.at(&ShoulderPose::in_plane(dof, angle_rad)));
        arms.iter()
            .map(|at| 100.0 * at.moment_m.norm())
            .fold(0.0, f64::max)
    };
    let angles = (0..=6).map(|step| f64::from(step) * PI / 6.0);
    long_arm(angles, &arm_cm)
}

/// What an angle of a joint may be.
pub(super) fn angle_bound(dof: Dof) -> &'static Bound {
    let bounds = bounds();
    match dof.joint() {
        Joint::Elbow => &bounds.angle_elbow,
        Joint::Shoulder => &bounds.angle_shoulder,
        Joint::LowerBack => &bounds.angle_lumbar,
        Joint::Hip => &bounds.angle_hip,
        Joint::Knee => &bounds.angle_knee,
        Joint::Ankle => &bounds.angle_ankle,
    }
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
