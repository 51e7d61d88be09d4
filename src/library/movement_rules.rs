//! Rules for movements: names that lead somewhere, a path that moves, lengths and angles of a body.
//!
//! In: a movement whose types already fit. Out: complaints.

use super::complaint::{Complaint, Rules};
use super::muscle_rules::angle_bound;
use super::{leg_rules, technique_needs, technique_rules};
use crate::anatomy::{Dof, Joint};
use crate::bounds::bounds;
use crate::error::{BodyRule, BrokenRule, Doubt, PathRule};
use crate::movement::{
    ArmPlace, ArmRecord, CarrierRecord, HandPlace, Handling, Handover, LiftStart, Measure,
    Movement, PathRecord, Posture, SpotterRule, SweepRecord, SweptLimb, TechniqueValue, TurnRound,
    lift_name,
};

/// A movement as its file gives it.
pub(super) fn movement(movement: &Movement) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules_of(movement, &mut rules);
    rules.complaints
}

/// The same, collected.
pub(super) fn rules_of(movement: &Movement, rules: &mut Rules) {
    for (field, text) in [("title", &movement.title), ("axis", &movement.axis)] {
        if text.trim().is_empty() {
            rules.add(field, BrokenRule::Empty);
        }
    }
    technique_rules::all(movement, None, rules);
    technique_needs::rules_of(movement, rules);
    measured(movement, rules);
    handling(&movement.handling, rules);
    if let LiftStart::Lowered(time) = movement.protocol.start {
        rules.within("protocol.start", time.as_s(), &bounds().phase_time);
    }
    if let TurnRound::Pause(time) = movement.protocol.turn {
        rules.within("protocol.turn", time.as_s(), &bounds().phase_time);
    }
    match &movement.carrier {
        CarrierRecord::Lever { pad, cam, .. } => {
            rules.within("carrier.pad", pad.as_cm(), &bounds().lever_radius);
            rules.within("carrier.cam", cam.as_cm(), &bounds().lever_radius);
        }
        CarrierRecord::Bar
        | CarrierRecord::Dumbbell
        | CarrierRecord::Sled
        | CarrierRecord::Body => {}
    }
    match &movement.path {
        PathRecord::Sweep(sweep) => sweep_rules(movement, sweep, rules),
        PathRecord::Arm(arm) => arm_rules(movement, arm, rules),
        PathRecord::Stance(stance) => leg_rules::stance(stance, rules),
        PathRecord::LegPress(press) => leg_rules::leg_press(press, rules),
        PathRecord::Bridge(bridge) => leg_rules::bridge(bridge, rules),
    }
}

/// Names that can be compared, spotters and helpers in numbers that stand around a lifter.
fn handling(handling: &Handling, rules: &mut Rules) {
    if handling.called.is_empty() {
        rules.add("handling.called", BrokenRule::Empty);
    }
    for (field, names) in [
        ("called", &handling.called),
        ("logs_alike", &handling.logs_alike),
    ] {
        for (index, name) in names.iter().enumerate() {
            if lift_name(name).is_empty() {
                rules.add(format!("handling.{field}.{index}"), BrokenRule::Empty);
            }
        }
    }
    if let SpotterRule::OneOrTwo { two_from, .. } = handling.spotter {
        let bound = &bounds().second_spotter;
        rules.within("handling.spotter.two_from", two_from, bound);
    }
    if let Handover::Yes { helpers, .. } = handling.overload {
        let path = "handling.overload.helpers";
        rules.within(path, f64::from(helpers), &bounds().helpers);
    }
}

fn sweep_rules(movement: &Movement, sweep: &SweepRecord, rules: &mut Rules) {
    let (from_deg, to_deg) = (sweep.from.as_deg(), sweep.to.as_deg());
    rules.within("path.from", from_deg, angle_bound(sweep.joint));
    rules.within("path.to", to_deg, angle_bound(sweep.joint));
    if (from_deg - to_deg).abs() < 1.0 {
        let stands = PathRule::JointStands { from_deg, to_deg };
        rules.add("path.to", BrokenRule::Path(stands));
    }
    if let Some(height) = sweep.joint_height {
        rules.within("path.joint_height", height.as_m(), &bounds().joint_height);
    }
    for (dof, name) in &sweep.held {
        let path = format!("path.held.{}", dof.name());
        held_angle(movement, *dof, name, rules);
        if *dof == sweep.joint {
            rules.add(path, BrokenRule::Path(PathRule::MovesAndStands));
        }
    }
    if sweep.plane.is_some() && !sweep.joint.is_shoulder() {
        let joint = sweep.joint.joint().name();
        let other = PathRule::PlaneOfOtherJoint { joint };
        rules.add("path.plane", BrokenRule::Path(other));
    }
    limb(sweep, rules);
}

/// A joint carries the limb beyond it; no other joint of the body turns a limb alone.
fn limb(sweep: &SweepRecord, rules: &mut Rules) {
    let carried = match sweep.joint.joint() {
        Joint::Elbow => SweptLimb::Forearm,
        Joint::Shoulder => SweptLimb::Arm,
        Joint::Knee => SweptLimb::Shank,
        Joint::Ankle => SweptLimb::Foot,
        Joint::Hip | Joint::LowerBack => {
            let none = PathRule::JointWithoutLimb {
                joint: sweep.joint.joint().name(),
            };
            rules.add("path.joint", BrokenRule::Path(none));
            return;
        }
    };
    if sweep.limb != carried {
        let other = PathRule::LimbOfOtherJoint {
            joint: sweep.joint.joint().name(),
            limb: carried.word(),
        };
        rules.add("path.limb", BrokenRule::Path(other));
    }
}

/// Torque is that of the one joint of a sweep; a way of several joints is no angle.
fn measured(movement: &Movement, rules: &mut Rules) {
    if movement.measure == Measure::Torque && !movement.moves_one_joint() {
        let several = BrokenRule::Path(PathRule::TorqueOfSeveralJoints);
        rules.add("measure", several);
    }
    let axis = movement.axis.to_lowercase();
    let is_an_angle = ["flexion", "extension", "abduction", "adduction", "rotation"]
        .iter()
        .any(|word| axis.contains(word));
    if is_an_angle && movement.measure == Measure::Force {
        rules.add("axis", BrokenRule::Doubt(Doubt::AngleOnTheWay));
    }
}

/// A joint that stands does so at an angle that it has; the hip's is told against the trunk and not asked.
fn held_angle(movement: &Movement, dof: Dof, name: &str, rules: &mut Rules) {
    let value = movement.technique.get(name).map(|found| &found.value);
    if let Some(TechniqueValue::Angle(angle)) = value
        && dof != Dof::Hip
    {
        let path = format!("technique.{name}.value");
        rules.within(&path, angle.as_deg(), angle_bound(dof));
    }
}

/// Shoulders stand above the floor.
fn shoulder_height(place: &ArmPlace, rules: &mut Rules) {
    let path = "path.shoulder_height";
    let bounds = bounds();
    match place {
        ArmPlace::Fixed(length) => rules.within(path, length.as_m(), &bounds.shoulder_height),
        ArmPlace::OfHeight(share) | ArmPlace::OverHips(share) => {
            rules.within(path, *share, &bounds.shoulder_height_share);
        }
        ArmPlace::Lockout => {
            let lockout = PathRule::Lockout { of_hand: false };
            rules.add(path, BrokenRule::Path(lockout));
        }
        ArmPlace::Technique(_) | ArmPlace::Chest | ArmPlace::Plumb => {}
    }
}

/// Bent over, the trunk rises from the hips: else the shoulders hang below them.
fn trunk_rises(movement: &Movement, arm: &ArmRecord, rules: &mut Rules) {
    let name = "torso_angle";
    let value = movement.technique.get(name).map(|found| &found.value);
    if let Some(TechniqueValue::Angle(angle)) = value
        && arm.posture == Posture::Bent
        && angle.as_deg() < 0.0
    {
        let below = BrokenRule::Body(BodyRule::ShouldersBelowHips);
        rules.add(format!("technique.{name}.value"), below);
    }
}

fn arm_rules(movement: &Movement, arm: &ArmRecord, rules: &mut Rules) {
    shoulder_height(&arm.shoulder_height, rules);
    trunk_rises(movement, arm, rules);
    for (end, hand) in [("start", &arm.start), ("end", &arm.end)] {
        let HandPlace { forward, up } = hand;
        let path = format!("path.{end}.forward");
        place(&path, forward, rules);
        place(&format!("path.{end}.up"), up, rules);
        if *forward == ArmPlace::Lockout {
            rules.add(path, BrokenRule::Path(PathRule::Lockout { of_hand: true }));
        }
    }
    if arm.start == arm.end {
        rules.add("path.end", BrokenRule::Path(PathRule::HandStands));
    }
    let elbow_deg = arm.lockout_elbow.as_deg();
    rules.within("path.lockout_elbow", elbow_deg, &bounds().lockout_elbow);
    let blades_deg = arm.blades_drawn_back.as_deg();
    rules.within(
        "path.blades_drawn_back",
        blades_deg,
        &bounds().blades_drawn_back,
    );
    rules.within("path.friction", arm.friction, &bounds().friction);
}

fn place(path: &str, place: &ArmPlace, rules: &mut Rules) {
    match place {
        ArmPlace::Fixed(length) => rules.within(path, length.as_m(), &bounds().hand_place),
        ArmPlace::OfHeight(share) | ArmPlace::OverHips(share) => {
            rules.within(path, *share, &bounds().hand_place_share);
        }
        ArmPlace::Technique(_) | ArmPlace::Chest | ArmPlace::Lockout | ArmPlace::Plumb => {}
    }
}
