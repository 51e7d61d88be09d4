//! Rules for the paths of the legs: stance, leg press, bridge.
//!
//! In: a movement whose types already fit. Out: complaints about lengths, angles and shares that no
//! body or machine has, and about technique parameters that a path needs.

use super::complaint::{Complaint, Rules};
use super::movement_rules::known;
use crate::movement::{BackPlace, BarPlace, BridgeRecord, LegPressRecord, Movement, StanceRecord};

/// On both feet with a bar over the middle of the foot.
pub(super) fn stance(movement: &Movement, stance: &StanceRecord, rules: &mut Rules) {
    match &stance.bar {
        BarPlace::OnBack {
            high,
            low,
            ankle_per_knee,
        } => {
            for name in ["depth", "bar_position", "knee_travel"] {
                known(movement, "path.bar", name, rules);
            }
            for (field, place) in [("high", high), ("low", low)] {
                let BackPlace { along, behind } = place;
                let at = |part: &str| format!("path.bar.{field}.{part}");
                rules.within(&at("along"), *along, 0.5, 1.3, "of the trunk");
                rules.within(&at("behind"), *behind, -0.3, 0.5, "of the trunk");
            }
            rules.within("path.bar.ankle_per_knee", *ankle_per_knee, 0.0, 0.8, "");
        }
        BarPlace::InHands {
            start_height,
            reach,
            start_ankle,
            start_arms,
            sumo,
        } => {
            known(movement, "path.bar", "stance", rules);
            rules.within(
                "path.bar.start_height",
                start_height.as_cm(),
                0.0,
                100.0,
                "cm",
            );
            rules.within("path.bar.reach", reach.as_cm(), -10.0, 20.0, "cm");
            rules.within(
                "path.bar.start_ankle",
                start_ankle.as_deg(),
                -30.0,
                50.0,
                "deg",
            );
            let arms = start_arms.as_deg();
            rules.within("path.bar.start_arms", arms, -10.0, 30.0, "deg");
            for (part, share) in [
                ("thigh", sumo.thigh),
                ("shank", sumo.shank),
                ("foot", sumo.foot),
            ] {
                let path = format!("path.bar.sumo.{part}");
                rules.within(&path, share, 0.3, 1.0, "of its length");
            }
        }
    }
    let in_order = stance.ankle_course.windows(2).all(|p| p[0].0 < p[1].0);
    if stance.ankle_course.len() < 2 || !in_order {
        rules.add(Complaint::new(
            "path.ankle_course",
            "needs at least two key poses in rising order of the range",
        ));
    }
    rules.within(
        "path.end_ankle",
        stance.end_ankle.as_deg(),
        -30.0,
        45.0,
        "deg",
    );
    rules.within("path.end_knee", stance.end_knee.as_deg(), 1.0, 90.0, "deg");
    rules.within("path.bar_over", stance.bar_over, 0.0, 1.0, "of the foot");
}

/// Hips in a seat, feet on a sled.
pub(super) fn leg_press(movement: &Movement, press: &LegPressRecord, rules: &mut Rules) {
    known(movement, "path", "sled_angle", rules);
    known(movement, "path", "foot_height", rules);
    rules.within(
        "path.start_knee",
        press.start_knee.as_deg(),
        10.0,
        140.0,
        "deg",
    );
    rules.within("path.end_knee", press.end_knee.as_deg(), 1.0, 90.0, "deg");
    if press.end_knee >= press.start_knee {
        rules.add(Complaint::new(
            "path.end_knee",
            "is not below `start_knee`: the sled does not move away",
        ));
    }
    rules.within("path.back", press.back.as_deg(), 60.0, 180.0, "deg");
    rules.within(
        "path.seat_height",
        press.seat_height.as_cm(),
        0.0,
        200.0,
        "cm",
    );
    rules.within("path.friction", press.friction, 0.0, 2.0, "");
}

/// Shoulders on a bench, a bar on the hips.
pub(super) fn bridge(movement: &Movement, bridge: &BridgeRecord, rules: &mut Rules) {
    known(movement, "path", "knee_angle", rules);
    rules.within("path.pivot", bridge.pivot, 0.3, 1.0, "of the trunk");
    let height_cm = bridge.pivot_height.as_cm();
    rules.within("path.pivot_height", height_cm, 10.0, 100.0, "cm");
    rules.within(
        "path.start_hip_height",
        bridge.start_hip_height.as_cm(),
        5.0,
        100.0,
        "cm",
    );
    rules.within("path.end_hip", bridge.end_hip.as_deg(), -20.0, 60.0, "deg");
    rules.within(
        "path.bar_above_hip",
        bridge.bar_above_hip.as_cm(),
        0.0,
        30.0,
        "cm",
    );
    rules.within("path.bench_friction", bridge.bench_friction, 0.0, 2.0, "");
    rules.within("path.floor_friction", bridge.floor_friction, 0.0, 2.0, "");
}
