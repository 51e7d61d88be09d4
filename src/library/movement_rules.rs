//! Rules for movements: technique inside its range, names that lead somewhere, a path that moves.
//!
//! In: a movement whose types already fit, and the lifter who is to do it. Out: complaints.

use super::complaint::{Complaint, Rules};
use super::leg_rules;
use super::nearest::did_you_mean;
use crate::anatomy::{Dof, Lifter};
use crate::movement::{
    ArmPlace, ArmRecord, CarrierRecord, HandPlace, Handling, Handover, Movement, PathRecord,
    SpotterRule, SweepRecord, Technique, TechniqueValue, lift_name,
};
use crate::units::rounded;

/// A movement as its file gives it.
pub(super) fn movement(movement: &Movement) -> Vec<Complaint> {
    let mut rules = Rules::default();
    for (field, text) in [("title", &movement.title), ("axis", &movement.axis)] {
        if text.trim().is_empty() {
            rules.add(Complaint::new(field, "is empty"));
        }
    }
    for (name, parameter) in &movement.technique {
        technique(&format!("technique.{name}"), parameter, None, &mut rules);
    }
    handling(&movement.handling, &mut rules);
    match &movement.carrier {
        CarrierRecord::Lever { pad, cam, .. } => {
            rules.within("carrier.pad", pad.as_cm(), 1.0, 150.0, "cm");
            rules.within("carrier.cam", cam.as_cm(), 1.0, 150.0, "cm");
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
        rules.add(Complaint::new("handling.called", "is empty"));
    }
    for (field, names) in [
        ("called", &handling.called),
        ("logs_alike", &handling.logs_alike),
    ] {
        for (index, name) in names.iter().enumerate() {
            if lift_name(name).is_empty() {
                rules.add(Complaint::new(
                    format!("handling.{field}.{index}"),
                    "is empty",
                ));
            }
        }
    }
    if let SpotterRule::OneOrTwo { two_from, .. } = handling.spotter {
        rules.within("handling.spotter.two_from", two_from, 0.5, 1.0, "");
    }
    if let Handover::Yes { helpers, .. } = handling.overload {
        rules.within(
            "handling.overload.helpers",
            f64::from(helpers),
            1.0,
            6.0,
            "",
        );
    }
}

/// Technique in the ranges of the movement, shares of the lifter's size included.
pub(super) fn technique_of(movement: &Movement, lifter: &Lifter) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let shoulders_m = lifter.build.biacromial_breadth.as_m();
    for (name, parameter) in &movement.technique {
        technique(
            &format!("technique.{name}"),
            parameter,
            Some(shoulders_m),
            &mut rules,
        );
    }
    rules.complaints
}

/// What a technique value is measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Measure {
    Metres,
    Radians,
    Shoulders,
    Plain,
}

impl Measure {
    /// A value of it in words.
    fn words(self, value: f64) -> String {
        match self {
            Self::Metres => format!("{} cm", rounded(value * 100.0, 1)),
            Self::Radians => format!("{} deg", rounded(value.to_degrees(), 1)),
            Self::Shoulders => format!("{} times the breadth of the shoulders", rounded(value, 3)),
            Self::Plain => rounded(value, 4),
        }
    }
}

/// The number of a technique value and what it is measured in; shares of the shoulders become
/// lengths where the lifter is known.
fn number(value: &TechniqueValue, shoulders_m: Option<f64>) -> Option<(f64, Measure)> {
    Some(match value {
        TechniqueValue::Length(length) => (length.as_m(), Measure::Metres),
        TechniqueValue::Angle(angle) => (angle.as_rad(), Measure::Radians),
        TechniqueValue::OfShoulders(share) => match shoulders_m {
            Some(shoulders_m) => (share * shoulders_m, Measure::Metres),
            None => (*share, Measure::Shoulders),
        },
        TechniqueValue::Number(number) => (*number, Measure::Plain),
        TechniqueValue::Choice { .. } | TechniqueValue::Free => return None,
    })
}

/// What kind of value a parameter takes: `least` and `most` must be of one kind with it.
fn is_one_kind(a: &TechniqueValue, b: &TechniqueValue) -> bool {
    use TechniqueValue::{Free, Length, OfShoulders};
    matches!(
        (a, b),
        (Free, _) | (Length(_) | OfShoulders(_), Length(_) | OfShoulders(_))
    ) || std::mem::discriminant(a) == std::mem::discriminant(b)
}

fn technique(path: &str, parameter: &Technique, shoulders_m: Option<f64>, rules: &mut Rules) {
    if let TechniqueValue::Choice { now, of } = &parameter.value
        && !of.contains(now)
    {
        let of: Vec<&str> = of.iter().map(String::as_str).collect();
        rules.add(
            Complaint::new(format!("{path}.value"), format!("cannot be `{now}`"))
                .hint(did_you_mean(now, &of)),
        );
    }
    let bounds = [("least", &parameter.least), ("most", &parameter.most)];
    for (side, bound) in bounds {
        if let Some(bound) = bound.as_ref().filter(|b| !is_one_kind(&parameter.value, b)) {
            rules.add(Complaint::new(
                format!("{path}.{side}"),
                format!(
                    "is {}, and the value is {}",
                    kind(bound),
                    kind(&parameter.value)
                ),
            ));
        }
    }
    let [least, most] =
        bounds.map(|(_, bound)| bound.as_ref().and_then(|b| number(b, shoulders_m)));
    if let (Some(least), Some(most)) = (least, most)
        && least.1 == most.1
        && least.0 >= most.0
    {
        rules.add(Complaint::new(
            format!("{path}.least"),
            format!(
                "is {}, not below `most`, {}",
                least.1.words(least.0),
                most.1.words(most.0)
            ),
        ));
    }
    let Some((value, measure)) = number(&parameter.value, shoulders_m) else {
        return;
    };
    let comparable = |bound: Option<(f64, Measure)>| bound.filter(|b| b.1 == measure).map(|b| b.0);
    let (least, most) = (comparable(least), comparable(most));
    let below = least.is_some_and(|least| value < least);
    let above = most.is_some_and(|most| value > most);
    if below || above || !value.is_finite() {
        let end = |bound: Option<f64>| bound.map_or("any".to_owned(), |b| measure.words(b));
        rules.add(
            Complaint::new(
                format!("{path}.value"),
                format!(
                    "is {}, outside what the model accepts ({} to {})",
                    measure.words(value),
                    end(least),
                    end(most)
                ),
            )
            .hint(parameter.meaning.clone()),
        );
    }
}

/// The kind of a technique value in words.
pub(super) fn kind(value: &TechniqueValue) -> &'static str {
    match value {
        TechniqueValue::Length(_) => "a length such as \"60 cm\"",
        TechniqueValue::Angle(_) => "an angle such as \"30 deg\"",
        TechniqueValue::OfShoulders(_) => "a multiple of the breadth of the shoulders such as 1.5",
        TechniqueValue::Number(_) => "a plain number",
        TechniqueValue::Choice { .. } => "a word",
        TechniqueValue::Free => "left free",
    }
}

/// A complaint unless the technique parameter that a path names is there.
pub(super) fn known(movement: &Movement, path: &str, name: &str, rules: &mut Rules) {
    if !movement.technique.contains_key(name) {
        let names: Vec<&str> = movement.technique.keys().map(String::as_str).collect();
        rules.add(
            Complaint::new(
                path,
                format!("needs the technique parameter `{name}`, which is missing"),
            )
            .hint(did_you_mean(name, &names)),
        );
    }
}

fn sweep_rules(movement: &Movement, sweep: &SweepRecord, rules: &mut Rules) {
    let (from, to) = (sweep.from.as_deg(), sweep.to.as_deg());
    rules.within("path.from", from, -90.0, 200.0, "deg");
    rules.within("path.to", to, -90.0, 200.0, "deg");
    if (from - to).abs() < 1.0 {
        rules.add(Complaint::new(
            "path.to",
            format!(
                "is {} deg and `from` is {} deg: the joint does not move",
                rounded(to, 2),
                rounded(from, 2)
            ),
        ));
    }
    if let Some(height) = sweep.joint_height {
        rules.within("path.joint_height", height.as_m(), 0.0, 3.0, "m");
    }
    for (dof, name) in &sweep.held {
        let path = format!("path.held.{}", dof.name());
        known(movement, &path, name, rules);
        if *dof == sweep.joint {
            rules.add(Complaint::new(
                path,
                "is the joint that moves; it cannot stand too",
            ));
        }
    }
    if let Some(name) = &sweep.plane {
        known(movement, "path.plane", name, rules);
        if !sweep.joint.is_shoulder() {
            rules.add(Complaint::new(
                "path.plane",
                format!(
                    "turns the plane of the shoulder, and the joint is the {}",
                    sweep.joint.joint().name()
                ),
            ));
        }
    }
}

fn arm_rules(movement: &Movement, arm: &ArmRecord, rules: &mut Rules) {
    known(movement, "path", "grip_width", rules);
    for (field, dof) in [
        ("lateral_plane", arm.lateral_plane),
        ("forward_plane", arm.forward_plane),
    ] {
        if !dof.is_shoulder() {
            let planes = Dof::ALL.iter().filter(|dof| dof.is_shoulder());
            let planes: Vec<&str> = planes.map(|dof| dof.name()).collect();
            rules.add(
                Complaint::new(
                    format!("path.{field}"),
                    format!("is {}, which is no plane of the shoulder", dof.name()),
                )
                .hint(format!("planes of the shoulder: {}", planes.join(", "))),
            );
        }
    }
    place(
        movement,
        "path.shoulder_height",
        &arm.shoulder_height,
        rules,
    );
    if arm.shoulder_height == ArmPlace::Lockout {
        rules.add(Complaint::new(
            "path.shoulder_height",
            "cannot be `Lockout`",
        ));
    }
    for (end, hand) in [("start", &arm.start), ("end", &arm.end)] {
        let HandPlace { forward, up } = hand;
        place(movement, &format!("path.{end}.forward"), forward, rules);
        place(movement, &format!("path.{end}.up"), up, rules);
        if *forward == ArmPlace::Lockout {
            rules.add(
                Complaint::new(format!("path.{end}.forward"), "cannot be `Lockout`")
                    .hint("`Lockout` can stand only for how far up the hand is"),
            );
        }
    }
    if arm.start == arm.end {
        rules.add(Complaint::new(
            "path.end",
            "is the same place as `start`: the hand does not move",
        ));
    }
    rules.within(
        "path.lockout_elbow",
        arm.lockout_elbow.as_deg(),
        0.0,
        90.0,
        "deg",
    );
    rules.within("path.friction", arm.friction, 0.0, 2.0, "");
}

fn place(movement: &Movement, path: &str, place: &ArmPlace, rules: &mut Rules) {
    match place {
        ArmPlace::Fixed(length) => rules.within(path, length.as_m(), -3.0, 3.0, "m"),
        ArmPlace::OfHeight(share) | ArmPlace::OverHips(share) => {
            rules.within(path, *share, -1.5, 1.5, "of standing height");
        }
        ArmPlace::Technique(name) => known(movement, path, name, rules),
        ArmPlace::Chest | ArmPlace::Lockout | ArmPlace::Plumb => {}
    }
}
