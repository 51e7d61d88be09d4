//! Rules for the paths of the legs: stance, leg press, bridge.
//!
//! In: a movement whose types already fit. Out: complaints about lengths, angles and shares that no
//! body or machine has.

use super::complaint::Rules;
use crate::bounds::bounds;
use crate::error::{BrokenRule, PathRule};
use crate::movement::{BackPlace, BarPlace, BridgeRecord, Feet, LegPressRecord, StanceRecord};

/// On both feet with a bar over the middle of the foot.
pub(super) fn stance(stance: &StanceRecord, rules: &mut Rules) {
    bar(&stance.bar, rules);
    key_poses("path.ankle_course", &stance.ankle_course, rules);
    let bounds = bounds();
    for (path, value, bound) in [
        (
            "path.end_ankle",
            stance.end_ankle.as_deg(),
            &bounds.end_ankle,
        ),
        ("path.end_knee", stance.end_knee.as_deg(), &bounds.end_knee),
        ("path.lumbar", stance.lumbar.as_deg(), &bounds.held_lumbar),
        (
            "path.end_lumbar",
            stance.end_lumbar.as_deg(),
            &bounds.held_lumbar,
        ),
        ("path.bar_over", stance.bar_over, &bounds.bar_over),
    ] {
        rules.within(path, value, bound);
    }
}

/// At least two places of the range, one after the other.
fn key_poses(path: &str, course: &[(f64, f64)], rules: &mut Rules) {
    let in_order = course.windows(2).all(|pair| pair[0].0 < pair[1].0);
    if course.len() < 2 || !in_order {
        rules.add(path, BrokenRule::Path(PathRule::KeyPoses));
    }
}

/// Where the bar is.
fn bar(bar: &BarPlace, rules: &mut Rules) {
    match bar {
        BarPlace::OnBack {
            high,
            low,
            ankle_per_knee,
            feet,
        } => {
            stand("feet", feet, rules);
            on_back("high", high, rules);
            on_back("low", low, rules);
            let path = "path.bar.ankle_per_knee";
            rules.within(path, *ankle_per_knee, &bounds().ankle_per_knee);
        }
        BarPlace::InHands { .. } => in_hands(bar, rules),
    }
}

/// Where feet stand.
fn stand(field: &str, feet: &Feet, rules: &mut Rules) {
    let at = |part: &str| format!("path.bar.{field}.{part}");
    let (between_cm, out_deg) = (feet.between.as_cm(), feet.turned_out.as_deg());
    rules.within(&at("between"), between_cm, &bounds().feet_between);
    rules.within(&at("turned_out"), out_deg, &bounds().feet_turned_out);
}

fn on_back(field: &str, place: &BackPlace, rules: &mut Rules) {
    let BackPlace { along, behind } = place;
    let at = |part: &str| format!("path.bar.{field}.{part}");
    rules.within(&at("along"), *along, &bounds().bar_along);
    rules.within(&at("behind"), *behind, &bounds().bar_behind);
}

fn in_hands(bar: &BarPlace, rules: &mut Rules) {
    let BarPlace::InHands {
        start_height,
        reach,
        start_arms,
        arms_course,
        conventional,
        sumo,
    } = bar
    else {
        return;
    };
    for (field, style) in [("conventional", conventional), ("sumo", sumo)] {
        stand(&format!("{field}.feet"), &style.feet, rules);
        let (path, ankle) = (format!("path.bar.{field}.start_ankle"), style.start_ankle);
        rules.within(&path, ankle.as_deg(), &bounds().start_ankle);
    }
    key_poses("path.bar.arms_course", arms_course, rules);
    let bounds = bounds();
    for (field, value, bound) in [
        (
            "start_height",
            start_height.as_cm(),
            &bounds.bar_start_height,
        ),
        ("reach", reach.as_cm(), &bounds.bar_reach),
        ("start_arms", start_arms.as_deg(), &bounds.start_arms),
    ] {
        rules.within(&format!("path.bar.{field}"), value, bound);
    }
}

/// Hips in a seat, feet on a sled.
pub(super) fn leg_press(press: &LegPressRecord, rules: &mut Rules) {
    let bounds = bounds();
    rules.within(
        "path.start_knee",
        press.start_knee.as_deg(),
        &bounds.start_knee,
    );
    rules.within("path.end_knee", press.end_knee.as_deg(), &bounds.end_knee);
    if press.end_knee >= press.start_knee {
        rules.add("path.end_knee", BrokenRule::Path(PathRule::SledStands));
    }
    for (path, value, bound) in [
        ("path.back", press.back.as_deg(), &bounds.press_back),
        ("path.lumbar", press.lumbar.as_deg(), &bounds.held_lumbar),
        (
            "path.seat_height",
            press.seat_height.as_cm(),
            &bounds.seat_height,
        ),
        ("path.friction", press.friction, &bounds.friction),
    ] {
        rules.within(path, value, bound);
    }
}

/// Shoulders on a bench, a bar on the hips.
pub(super) fn bridge(bridge: &BridgeRecord, rules: &mut Rules) {
    let bounds = bounds();
    for (field, value, bound) in [
        ("pivot", bridge.pivot, &bounds.bench_along),
        (
            "pivot_height",
            bridge.pivot_height.as_cm(),
            &bounds.bench_height,
        ),
        (
            "start_hip_height",
            bridge.start_hip_height.as_cm(),
            &bounds.hip_height,
        ),
        ("end_hip", bridge.end_hip.as_deg(), &bounds.end_hip),
        ("lumbar", bridge.lumbar.as_deg(), &bounds.held_lumbar),
        (
            "bar_above_hip",
            bridge.bar_above_hip.as_cm(),
            &bounds.bar_above_hip,
        ),
        ("bench_friction", bridge.bench_friction, &bounds.friction),
        ("floor_friction", bridge.floor_friction, &bounds.friction),
    ] {
        rules.within(&format!("path.{field}"), value, bound);
    }
}
