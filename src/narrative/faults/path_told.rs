//! Words for: why a movement cannot be traced or posed.

use super::Told;
use crate::error::{
    ArmFault, BridgeFault, LegPressFault, LinksFault, Outside, PathFault, StanceFault,
    TechniqueFault, TechniqueKind, TechniqueRange,
};
use crate::narrative::prose::{counted_noun, of_count};
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::units::{Length, System};

/// The fault in words.
pub(super) fn told(fault: &PathFault, units: System) -> Told {
    match fault {
        PathFault::Samples { asked, least, most } => Told::new(format!(
            "{} {} outside what is possible ({least} to {most})",
            counted_noun(*asked, "sample"),
            of_count(asked, "is", "are")
        ))
        .hint("101 is the default"),
        PathFault::PoseNotFinite { range } => Told::new(format!(
            "the pose at range {range:.2} is not a finite one; a length or angle that was set is absurd"
        )),
        PathFault::Technique(fault) => of_technique(fault, units),
        PathFault::Arm(fault) => of_arm(fault, units),
        PathFault::Stance(fault) => of_stance(fault, units),
        PathFault::Bridge(fault) => of_bridge(fault, units),
        PathFault::LegPress(fault) => of_leg_press(fault, units),
    }
}

fn of_technique(fault: &TechniqueFault, units: System) -> Told {
    match fault {
        TechniqueFault::Missing {
            movement,
            technique,
            known,
        } => Told::new(format!(
            "{movement} has no technique parameter `{technique}`"
        ))
        .hint(format!("it has: {}", known.join(", "))),
        TechniqueFault::Kind {
            technique,
            expected,
        } => Told::new(format!("technique.{technique} must be {}", kind(*expected))),
        TechniqueFault::Word {
            technique,
            word,
            known,
        } => Told::new(format!("technique.{technique} cannot be `{word}`"))
            .hint(format!("it is one of: {}", known.join(", "))),
        TechniqueFault::Outside {
            technique,
            range,
            meaning,
        } => {
            let [value, least, most] = range_in(*range, units);
            Told::new(format!(
                "technique.{technique} = {value} is outside what the model accepts ({least} to {most})"
            ))
            .hint(meaning.clone())
        }
        TechniqueFault::NotFree { technique } => {
            Told::new(format!("technique.{technique} cannot be left free"))
        }
    }
}

pub(super) fn kind(expected: TechniqueKind) -> &'static str {
    match expected {
        TechniqueKind::Length => "a length such as \"60 cm\"",
        TechniqueKind::Angle => "an angle such as \"30 deg\"",
        TechniqueKind::OfShoulders => "a multiple of the breadth of the shoulders such as 1.5",
        TechniqueKind::Number => "a plain number",
        TechniqueKind::Word => "a word",
        TechniqueKind::Free => "left free",
    }
}

/// Value, least and most.
fn range_in(range: TechniqueRange, units: System) -> [String; 3] {
    fn told<T>(range: Outside<T>, told: impl FnMut(T) -> String) -> [String; 3] {
        [range.value, range.least, range.most].map(told)
    }
    match range {
        TechniqueRange::Length(range) => told(range, |length| units.short_length(length)),
        TechniqueRange::Angle(range) => {
            told(range, |angle| format!("{} deg", rounded(angle.as_deg(), 1)))
        }
        TechniqueRange::Number(range) => told(range, |number| number.to_string()),
    }
}

fn of_arm(fault: &ArmFault, units: System) -> Told {
    let long = |length: Length| units.length(length, 3);
    match *fault {
        ArmFault::LockoutOnlyUp => Told::new("`Lockout` can stand only for how far up the hand is"),
        ArmFault::HandTooFarOut { out, reach } => Told::new(format!(
            "the hand is {} out from the shoulder, and the straight arm reaches only {}",
            long(out),
            long(reach)
        ))
        .hint("narrow the grip: --set technique.grip_width=\"60 cm\""),
        ArmFault::CannotClose {
            upper_arm,
            to_grip,
            hand,
        } => {
            let folded = Length::from_m((upper_arm.as_m() - to_grip.as_m()).abs());
            Told::new(format!(
                "the arm cannot close the pose: upper arm {} and forearm to grip {} reach {} to {}, the hand is {} from the shoulder",
                long(upper_arm),
                long(to_grip),
                length_number_in(units, folded),
                long(upper_arm + to_grip),
                long(hand)
            ))
            .hint("change the grip width, the touch point or the limb that was set")
        }
    }
}

/// The number of a length alone, for a range of which only the end carries the unit.
fn length_number_in(units: System, length: Length) -> String {
    match units {
        System::Metric => rounded(length.as_m(), 3),
        System::Us => rounded(length.as_in(), 1),
    }
}

fn of_stance(fault: &StanceFault, units: System) -> Told {
    let long = |length: Length| units.length(length, 3);
    match *fault {
        StanceFault::NoWayUp { start, end } => Told::new(format!(
            "the bar would start {} and end {} high: there is no way up",
            long(start),
            long(end)
        ))
        .hint("start lower, or check the limb lengths that were set"),
        StanceFault::BarNotOverFoot {
            hip_behind,
            hip_to_bar,
        } => Told::new(format!(
            "the trunk cannot bring the bar over the foot: the hip is {} behind it and the bar sits {} from the hip",
            long(hip_behind),
            long(hip_to_bar)
        ))
        .hint("less depth, or more knee travel: --set technique.knee_travel=\"5 cm\""),
        StanceFault::CannotClose {
            range,
            thigh,
            hip_to_bar,
            why,
        } => Told::new(format!(
            "the limbs cannot close the pose at range {}: thigh {}, hip to bar {}; {}",
            rounded(range, 2),
            long(thigh),
            long(hip_to_bar),
            of_links(why, units)
        ))
        .hint("change the depth, the stance or the limb that was set"),
    }
}

fn of_bridge(fault: &BridgeFault, units: System) -> Told {
    let long = |length: Length| units.length(length, 3);
    match *fault {
        BridgeFault::FeetOffTheFloor { knee, bench } => Told::new(format!(
            "with the knee at {} deg the feet do not reach the floor from a bench of {}",
            rounded(knee.as_rad().to_degrees(), 1),
            units.length(bench, 2)
        ))
        .hint("change the knee angle: --set technique.knee_angle=\"90 deg\""),
        BridgeFault::NoWayUp { start, end } => Told::new(format!(
            "the hips would start {} and end {} high: there is no way up",
            long(start),
            long(end)
        )),
        BridgeFault::HipsTooLow { below, from_bench } => Told::new(format!(
            "the hips cannot sink {} below the bench: they are {} from it",
            long(below),
            long(from_bench)
        ))
        .hint("raise `start_hip_height` in the movement's file"),
        BridgeFault::CannotClose { range, why } => Told::new(format!(
            "the leg cannot close the pose at range {}: {}",
            rounded(range, 2),
            of_links(why, units)
        ))
        .hint("change the knee angle or the limb that was set"),
    }
}

fn of_leg_press(fault: &LegPressFault, units: System) -> Told {
    let long = |length: Length| units.length(length, 3);
    match *fault {
        LegPressFault::FootTooHigh { above_hip, reach } => Told::new(format!(
            "the foot stands {} above the hip's line and the bent leg reaches only {}",
            long(above_hip),
            long(reach)
        ))
        .hint("set the foot lower: --set technique.foot_height=\"20 cm\""),
        LegPressFault::CannotClose {
            range,
            thigh,
            shank,
            why,
        } => Told::new(format!(
            "the leg cannot close the pose at range {}: thigh {}, shank {}; {}",
            rounded(range, 2),
            long(thigh),
            long(shank),
            of_links(why, units)
        ))
        .hint("change the foot height or the limb that was set"),
    }
}

/// Why two links of a body do not close; they are measured in metres.
fn of_links(fault: LinksFault, units: System) -> String {
    let away = |length_m: f64| match units {
        System::Metric => format!("{length_m:.3}"),
        System::Us => units.length(Length::from_m(length_m), 3),
    };
    match fault {
        LinksFault::TooFar { reach, needed } => format!(
            "the links reach {} and the target is {} away",
            away(reach),
            away(needed)
        ),
        LinksFault::TooNear { nearest, needed } => format!(
            "folded, the links come no nearer than {} and the target is {} away",
            away(nearest),
            away(needed)
        ),
        LinksFault::NoDirection => {
            "the target lies on the start, so the folded links have no direction".to_owned()
        }
        LinksFault::NotNumbers => "the links need positive lengths and finite places".to_owned(),
    }
}
