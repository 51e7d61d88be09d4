//! Rules for movements: names that lead somewhere, a path that moves, lengths and angles of a body.
//!
//! In: a movement whose types already fit. Out: complaints.

use super::complaint::{Complaint, Rules};
use super::technique_rules::known;
use super::{leg_rules, technique_rules};
use crate::bounds::bounds;
use crate::error::{BrokenRule, PathRule};
use crate::movement::{
    ArmPlace, ArmRecord, CarrierRecord, HandPlace, Handling, Handover, Movement, PathRecord,
    SpotterRule, SweepRecord, lift_name,
};

/// A movement as its file gives it.
pub(super) fn movement(movement: &Movement) -> Vec<Complaint> {
    let mut rules = Rules::default();
    for (field, text) in [("title", &movement.title), ("axis", &movement.axis)] {
        if text.trim().is_empty() {
            rules.add(field, BrokenRule::Empty);
        }
    }
    technique_rules::all(movement, None, &mut rules);
    handling(&movement.handling, &mut rules);
    match &movement.carrier {
        CarrierRecord::Lever { pad, cam, .. } => {
            rules.within("carrier.pad", pad.as_cm(), &bounds().lever_radius);
            rules.within("carrier.cam", cam.as_cm(), &bounds().lever_radius);
        }
        CarrierRecord::Sled => known(movement, "carrier", "sled_angle", &mut rules),
        CarrierRecord::Bar | CarrierRecord::Dumbbell | CarrierRecord::Body => {}
    }
    match &movement.path {
        PathRecord::Sweep(sweep) => sweep_rules(movement, sweep, &mut rules),
        PathRecord::Arm(arm) => arm_rules(movement, arm, &mut rules),
        PathRecord::Stance(stance) => leg_rules::stance(movement, stance, &mut rules),
        PathRecord::LegPress(press) => leg_rules::leg_press(movement, press, &mut rules),
        PathRecord::Bridge(bridge) => leg_rules::bridge(movement, bridge, &mut rules),
    }
    rules.complaints
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
    rules.within("path.from", from_deg, &bounds().sweep_angle);
    rules.within("path.to", to_deg, &bounds().sweep_angle);
    if (from_deg - to_deg).abs() < 1.0 {
        let stands = PathRule::JointStands { from_deg, to_deg };
        rules.add("path.to", BrokenRule::Path(stands));
    }
    if let Some(height) = sweep.joint_height {
        rules.within("path.joint_height", height.as_m(), &bounds().joint_height);
    }
    for (dof, name) in &sweep.held {
        let path = format!("path.held.{}", dof.name());
        known(movement, &path, name, rules);
        if *dof == sweep.joint {
            rules.add(path, BrokenRule::Path(PathRule::MovesAndStands));
        }
    }
    if let Some(name) = &sweep.plane {
        known(movement, "path.plane", name, rules);
        if !sweep.joint.is_shoulder() {
            let joint = sweep.joint.joint().name();
            let other = PathRule::PlaneOfOtherJoint { joint };
            rules.add("path.plane", BrokenRule::Path(other));
        }
    }
}

fn arm_rules(movement: &Movement, arm: &ArmRecord, rules: &mut Rules) {
    known(movement, "path", "grip_width", rules);
    known(movement, "path.elbow.turned", &arm.elbow.turned, rules);
    let height = &arm.shoulder_height;
    place(movement, "path.shoulder_height", height, rules);
    if *height == ArmPlace::Lockout {
        let lockout = PathRule::Lockout { of_hand: false };
        rules.add("path.shoulder_height", BrokenRule::Path(lockout));
    }
    for (end, hand) in [("start", &arm.start), ("end", &arm.end)] {
        let HandPlace { forward, up } = hand;
        let path = format!("path.{end}.forward");
        place(movement, &path, forward, rules);
        place(movement, &format!("path.{end}.up"), up, rules);
        if *forward == ArmPlace::Lockout {
            rules.add(path, BrokenRule::Path(PathRule::Lockout { of_hand: true }));
        }
    }
    if arm.start == arm.end {
        rules.add("path.end", BrokenRule::Path(PathRule::HandStands));
    }
    let elbow_deg = arm.lockout_elbow.as_deg();
    rules.within("path.lockout_elbow", elbow_deg, &bounds().lockout_elbow);
    rules.within("path.friction", arm.friction, &bounds().friction);
}

fn place(movement: &Movement, path: &str, place: &ArmPlace, rules: &mut Rules) {
    match place {
        ArmPlace::Fixed(length) => rules.within(path, length.as_m(), &bounds().hand_place),
        ArmPlace::OfHeight(share) | ArmPlace::OverHips(share) => {
            rules.within(path, *share, &bounds().hand_place_share);
        }
        ArmPlace::Technique(name) => known(movement, path, name, rules),
        ArmPlace::Chest | ArmPlace::Lockout | ArmPlace::Plumb => {}
    }
}
