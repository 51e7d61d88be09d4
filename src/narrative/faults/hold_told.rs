//! Words for: why a pose holds nothing, or has no capacity.

use super::Told;
use crate::error::{HoldFault, MovingAt, ProgrammeFault};
use crate::narrative::quantities::rounded;

/// The fault in words.
pub(super) fn told(fault: &HoldFault) -> Told {
    match fault {
        HoldFault::NoPoses => Told::new("a range without poses has no muscles"),
        HoldFault::NoPull { range } => {
            Told::new(format!("the load pulls nowhere at range {range:.2}"))
        }
        HoldFault::NoActivation {
            range,
            why,
            joint,
            moving: Some(speed),
        } => Told::new(format!(
            "no muscle activation keeps up with {} at range {range:.2} ({})",
            speed_in_words(*speed),
            in_a_word(why, *joint)
        ))
        .hint("take a slower --speed"),
        HoldFault::NoActivation {
            range,
            why,
            joint,
            moving: None,
        } => Told::new(format!(
            "no muscle activation keeps the pose at range {range:.2} ({})",
            in_a_word(why, *joint)
        ))
        .hint(
            "a limb, a muscle, a technique value or a place of the path may be outside what a body can do",
        ),
        HoldFault::NoTravel { range } => Told::new(format!(
            "the load does not travel at range {range:.2}, so it has no speed there"
        )),
        HoldFault::SpeedOutside {
            speed_m_s,
            most_m_s,
        } => Told::new(format!(
            "nobody moves a load at {speed_m_s} m/s: {most_m_s} m/s up or down is the most that is taken"
        ))
        .hint("--speed \"0.3 m/s\""),
        HoldFault::TurnOutside {
            speed_deg_s,
            most_deg_s,
        } => Told::new(format!(
            "nobody turns a joint at {} deg/s: {most_deg_s} deg/s either way is the most that is taken",
            rounded(*speed_deg_s, 0)
        ))
        .hint("--speed \"60 deg/s\""),
        HoldFault::SpeedOfLoadForJoint => {
            Told::new("this movement turns one joint: give its speed as an angle per second")
                .hint("--speed \"60 deg/s\"")
        }
        HoldFault::SpeedOfJointForLoad => {
            Told::new("this movement moves a bar or sled: give its speed as a length per second")
                .hint("--speed \"0.3 m/s\"")
        }
    }
}

fn speed_in_words(speed: MovingAt) -> String {
    match speed {
        MovingAt::Load(speed) => format!("{} m/s", rounded(speed.as_m_s(), 3)),
        MovingAt::Joint(speed) => format!("{} deg/s", rounded(speed.as_deg_s(), 2)),
    }
}

fn in_a_word(why: &ProgrammeFault, joint: Option<&str>) -> String {
    match (why, joint) {
        (ProgrammeFault::Infeasible, Some(joint)) => {
            format!("the limbs alone ask more of the {joint} than its muscles give there")
        }
        (ProgrammeFault::Infeasible, None) => {
            "the limbs alone ask more of several joints than their muscles give there".to_owned()
        }
        (ProgrammeFault::Unbounded, _) => "the load has no limit there".to_owned(),
        _ => "its programme does not come to an end".to_owned(),
    }
}
