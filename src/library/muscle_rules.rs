//! Rules for muscles, passive joints and fibre curves.
//!
//! In: records whose types already fit. Out: complaints about what no muscle can have: values outside
//! sane ranges, arms longer than the limb is thick, a muscle whose length nothing fixes.

use super::complaint::{Complaint, Rules};
use crate::anatomy::{
    ActiveForceLength, ArmShape, Curves, Dof, Dynamics, MomentArm, Muscle, MuscleTable,
    PassiveJoint, Sarcomere, Tendon,
};
use std::collections::{BTreeMap, BTreeSet};
use std::f64::consts::PI;

/// Longest moment arm that a muscle of a human can have, cm; the gluteus maximus has about 8 cm at
/// the hip (assumed: more than twice that is a slip of the unit).
const LONGEST_ARM_CM: f64 = 20.0;

/// A table of muscles.
pub(super) fn muscle_table(table: &MuscleTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    if table.muscles.is_empty() {
        rules.add(Complaint::new("muscles", "holds no muscle"));
    }
    muscles(&table.muscles, &mut rules);
    joints(&table.joints, &mut rules);
    rules.complaints
}

/// Passive joints of a table or of a finished body.
pub(super) fn joints(all: &BTreeMap<Dof, PassiveJoint>, rules: &mut Rules) {
    for (dof, joint) in all {
        let at = |field: &str| format!("joints.{}.{field}", dof.name());
        rules.within(&at("low"), joint.low.as_deg(), -180.0, 200.0, "deg");
        rules.within(&at("high"), joint.high.as_deg(), -180.0, 200.0, "deg");
        rules.within(
            &at("low_torque"),
            joint.low_torque.as_nm(),
            0.0,
            500.0,
            "N·m",
        );
        rules.within(
            &at("high_torque"),
            joint.high_torque.as_nm(),
            0.0,
            500.0,
            "N·m",
        );
        rules.within(&at("width"), joint.width.as_deg(), 0.1, 90.0, "deg");
        if joint.low >= joint.high {
            rules.add(Complaint::new(at("low"), "is not below `high`"));
        }
    }
}

/// Muscles of a table or of a finished body.
pub(super) fn muscles(all: &BTreeMap<String, Muscle>, rules: &mut Rules) {
    for (name, muscle) in all {
        let path = format!("muscles.{name}");
        let at = |field: &str| format!("{path}.{field}");
        rules.positive(&at("peak_force"), muscle.peak_force.as_n(), 50_000.0, "N");
        let length_cm = muscle.optimal_fibre_length.as_cm();
        rules.positive(&at("optimal_fibre_length"), length_cm, 80.0, "cm");
        rules.within(
            &at("pennation"),
            muscle.pennation.as_deg(),
            0.0,
            60.0,
            "deg",
        );
        rules.positive(
            &at("max_velocity"),
            muscle.max_velocity,
            50.0,
            "lengths per second",
        );
        if muscle.group.trim().is_empty() {
            rules.add(Complaint::new(
                at("group"),
                "is empty; name the strength group",
            ));
        }
        tendon(&at("tendon"), &muscle.tendon, rules);
        if muscle.moment_arm.is_empty() {
            rules.add(
                Complaint::new(at("moment_arm"), "crosses no joint").hint(format!(
                    "joints are: {}",
                    Dof::ALL.map(Dof::name).join(", ")
                )),
            );
        }
        for (dof, arm) in &muscle.moment_arm {
            moment_arm(&at(&format!("moment_arm.{}", dof.name())), arm, rules);
        }
        references(&path, muscle, rules);
    }
}

fn references(path: &str, muscle: &Muscle, rules: &mut Rules) {
    if muscle.reference.is_empty() {
        rules.add(
            Complaint::new(
                format!("{path}.reference"),
                "is empty, so nothing says how long the fibres are",
            )
            .hint("name one pose: reference: [(at: {elbow: \"60 deg\"}, fibre_length: 1.0, source: …)]"),
        );
    }
    let crossed: BTreeSet<&str> = muscle.moment_arm.keys().map(|dof| dof.name()).collect();
    let crossed: Vec<&str> = crossed.into_iter().collect();
    for (index, reference) in muscle.reference.iter().enumerate() {
        let at = format!("{path}.reference.{index}");
        rules.within(
            &format!("{at}.fibre_length"),
            reference.fibre_length,
            0.3,
            1.8,
            "optimal lengths",
        );
        for dof in reference.at.keys() {
            if !crossed.is_empty() && !muscle.moment_arm.contains_key(dof) {
                rules.add(
                    Complaint::new(
                        format!("{at}.at.{}", dof.name()),
                        "names a joint that the muscle has no moment arm at",
                    )
                    .hint(format!("it crosses: {}", crossed.join(", "))),
                );
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
        rules.positive(
            &format!("{path}.slack_length"),
            slack_length.as_cm(),
            80.0,
            "cm",
        );
        rules.within(
            &format!("{path}.strain_at_peak"),
            *strain_at_peak,
            0.005,
            0.2,
            "",
        );
    }
}

fn moment_arm(path: &str, arm: &MomentArm, rules: &mut Rules) {
    rules.within(&format!("{path}.scale"), arm.scale, 0.05, 20.0, "");
    if points_fall(path, arm, rules) {
        return;
    }
    let curve = match arm.curve() {
        Ok(curve) => curve,
        Err(error) => {
            let why = error
                .faults()
                .first()
                .map_or("", |fault| fault.message.as_str());
            rules.add(Complaint::new(
                format!("{path}.shape"),
                format!("cannot be used: {why}"),
            ));
            return;
        }
    };
    // Every joint stays inside -90 to 180 deg; beyond its published angles an arm is level.
    let angles = (0..=36)
        .chain(-18..0)
        .map(|step| f64::from(step) * PI / 36.0);
    let arms = angles.map(|angle_rad| (angle_rad, curve.at(angle_rad) * 100.0));
    let too_long = |arm: &(f64, f64)| arm.1.is_nan() || arm.1.abs() > LONGEST_ARM_CM;
    if let Some((angle_rad, arm_cm)) = arms.into_iter().find(too_long) {
        rules.add(
            Complaint::new(
                format!("{path}.shape"),
                format!(
                    "makes an arm of {} cm at {} deg; no muscle reaches {LONGEST_ARM_CM} cm",
                    crate::units::rounded(arm_cm, 1),
                    crate::units::rounded(angle_rad.to_degrees(), 0)
                ),
            )
            .hint("look at the unit: mm, cm"),
        );
    }
}

/// Points whose angles do not rise, each told at its place; whether there are any.
fn points_fall(path: &str, arm: &MomentArm, rules: &mut Rules) -> bool {
    let ArmShape::Points(points) = &arm.shape else {
        return false;
    };
    let before = rules.complaints.len();
    for (index, pair) in points.windows(2).enumerate() {
        let (first, second) = (pair[0].0.as_deg(), pair[1].0.as_deg());
        if second <= first {
            rules.add(Complaint::new(
                format!("{path}.shape.{}", index + 1),
                format!(
                    "stands at {} deg behind one at {} deg; angles must rise",
                    crate::units::rounded(second, 2),
                    crate::units::rounded(first, 2)
                ),
            ));
        }
    }
    rules.complaints.len() > before
}

/// A set of fibre curves.
pub(super) fn curves(curves: &Curves) -> Vec<Complaint> {
    let mut rules = Rules::default();
    curve_rules("", curves, &mut rules);
    rules.complaints
}

/// Fibre curves whose paths begin with `before`.
pub(super) fn curve_rules(before: &str, curves: &Curves, rules: &mut Rules) {
    let at = |path: &str| format!("{before}{path}");
    match &curves.active {
        ActiveForceLength::Bells(_) => {}
        ActiveForceLength::Parabola { width } => {
            rules.within(&at("active.width"), *width, 0.1, 2.0, "optimal lengths");
        }
        ActiveForceLength::Gaussian { gamma } => {
            rules.within(&at("active.gamma"), *gamma, 0.05, 5.0, "");
        }
    }
    let values = (20..=200).map(|step| curves.active.at(f64::from(step) / 100.0));
    let peak = values.fold(0.0, |peak: f64, value| {
        if value.is_finite() {
            peak.max(value)
        } else {
            f64::NAN
        }
    });
    if !(0.95..=1.05).contains(&peak) {
        let peak = crate::units::rounded(peak, 3);
        rules.add(Complaint::new(
            at("active"),
            format!("reaches {peak} at its peak; a share of peak force is 1 there, within 5 %"),
        ));
    }
    rules.within(&at("passive.shape"), curves.passive.shape, 0.1, 20.0, "");
    rules.within(
        &at("passive.strain_at_peak"),
        curves.passive.strain_at_peak,
        0.05,
        3.0,
        "",
    );
    rules.within(
        &at("velocity.hill_a"),
        curves.velocity.hill_a,
        0.02,
        2.0,
        "",
    );
    rules.within(
        &at("velocity.eccentric_limit"),
        curves.velocity.eccentric_limit,
        1.0,
        3.0,
        "",
    );
    rules.within(
        &at("velocity.voluntary_share"),
        curves.velocity.voluntary_share,
        0.0,
        1.0,
        "",
    );
    rules.within(
        &at("velocity.eccentric_slope"),
        curves.velocity.eccentric_slope,
        1.0,
        20.0,
        "",
    );
    dynamics_rules(&at("dynamics."), &curves.dynamics, rules);
}

/// Constants of a repetition in time.
fn dynamics_rules(before: &str, dynamics: &Dynamics, rules: &mut Rules) {
    let at = |path: &str| format!("{before}{path}");
    for (path, time) in [
        ("activation_rise", dynamics.activation_rise),
        ("activation_fall", dynamics.activation_fall),
        ("drive_rise", dynamics.drive_rise),
    ] {
        rules.within(&at(path), time.as_s(), 0.005, 1.0, "s");
    }
    rules.within(&at("enhancement"), dynamics.enhancement, 0.0, 2.0, "");
    let half_life_s = dynamics.enhancement_half_life.as_s();
    rules.within(&at("enhancement_half_life"), half_life_s, 0.01, 60.0, "s");
    rules.within(
        &at("stop_deceleration"),
        dynamics.stop_deceleration,
        0.0,
        1.0,
        "",
    );
    rules.within(&at("stop_from"), dynamics.stop_from, 0.0, 1.0, "");
}

/// The filament lengths of a sarcomere.
pub(super) fn sarcomere(sarcomere: &Sarcomere) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules.positive("thin_um", sarcomere.thin_um, 5.0, "µm");
    rules.positive("thick_um", sarcomere.thick_um, 5.0, "µm");
    rules.positive("bare_zone_um", sarcomere.bare_zone_um, 1.0, "µm");
    rules.within("z_disc_um", sarcomere.z_disc_um, 0.0, 1.0, "µm");
    rules.positive("shortest_um", sarcomere.shortest_um, 5.0, "µm");
    rules.within("share_at_break", sarcomere.share_at_break, 0.0, 1.0, "");
    let corners = sarcomere.corners();
    if rules.complaints.is_empty() && corners.windows(2).any(|pair| pair[0].0 >= pair[1].0) {
        let lengths = corners
            .map(|corner| crate::units::rounded(corner.0, 3))
            .join(", ");
        rules.add(Complaint::new(
            "",
            format!("the corners of the diagram are not in rising order: {lengths} µm"),
        ));
    }
    rules.complaints
}
