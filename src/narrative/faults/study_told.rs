//! Words for: why a question has no answer.

use super::{Told, outcome_told, pick_told, quantity_told};
use crate::error::{
    ComparisonFault, Lacking, LiftFault, MaximumFault, SpacingFault, StudyFault, ValuesFault,
};
use crate::narrative::comparison::compared_in_words;
use crate::narrative::prose::{counted_noun, listed, of_count};
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::narrative::shown_units::ShownUnits;
use crate::units::{Angle, Mass, System};

/// The fault in words.
pub(super) fn told(fault: &StudyFault, units: System) -> Told {
    match fault {
        StudyFault::Lift(fault) => of_a_lift(fault, units),
        StudyFault::Values(fault) => of_values(fault),
        StudyFault::Comparison(fault) => of_a_comparison(fault),
        StudyFault::Maximum(fault) => of_a_maximum(fault, units),
        StudyFault::Pick(fault) => pick_told::told(fault, units),
        StudyFault::Outcome(fault) => outcome_told::told(fault, units),
    }
}

fn of_a_lift(fault: &LiftFault, units: System) -> Told {
    match fault {
        LiftFault::HardWithoutWeight { target } => Told::new(format!(
            "even without weight this setup asks for more than {:.0} % at its hardest place",
            100.0 * target
        ))
        .hint("use fewer or lighter bands and chains"),
        LiftFault::EasyWithAnyWeight { target, most } => Told::new(format!(
            "even {} ask for less than {:.0} % at the hardest place",
            units.mass(*most),
            100.0 * target
        )),
        LiftFault::NotHeld { range, movement } => Told::new(format!(
            "the load cannot be held at range {range:.2}: it pulls to the side, where {movement} has no strength"
        ))
        .hint("tie it below or above the load, or add plain weight: --load \"40 kg\""),
        LiftFault::TooWeak {
            range,
            joint,
            lacking,
        } => Told::new(format!(
            "this lifter cannot hold the limbs alone at range {range:.2}: {} lacks at the {joint}, and a load comes on top",
            lacking_in_words(*lacking, units)
        ))
        .hint("choose a stronger lifter, or a slower --speed if one is asked for"),
        LiftFault::HoldsNothing { range } => Told::new(format!(
            "this lifter holds no load at all at range {range:.2}, so nothing can be hung"
        ))
        .hint("choose a stronger lifter, or a slower --speed"),
        LiftFault::NothingToCompare => {
            Told::new("there is nothing on the bar to compare with plain weight")
                .hint("add --band loop-29mm:1 or --chain chain-10mm:1")
        }
        LiftFault::AsksForNothing => {
            Told::new("the setup asks for nothing: no plain weight is as hard")
        }
        place => of_a_place(place, units),
    }
}

/// "1.2 N·m on each side", "35 N".
fn lacking_in_words(lacking: Lacking, units: System) -> String {
    match lacking {
        Lacking::Force(force) => units.force(force),
        Lacking::Torque(torque) => {
            let unit = units.torque_unit();
            let shown = rounded(unit.of(torque.as_nm()), unit.decimals + 2);
            format!("{shown} {} on each side", unit.symbol)
        }
    }
}

fn of_a_place(fault: &LiftFault, units: System) -> Told {
    let deg = |angle: &Angle| rounded(angle.as_deg(), 1);
    match fault {
        LiftFault::PlaceIsAnAngle => {
            Told::new("this movement turns one joint: its places are angles")
                .hint("--at \"60 deg\", or a share of the range: --at 40%")
        }
        LiftFault::TravelOutside { asked, most } => Told::new(format!(
            "{} from the start is outside the range, which is {} long",
            units.short_length(*asked),
            units.short_length(*most)
        ))
        .hint("a place in between, or a share of the range: --at 40%"),
        LiftFault::AngleOutside { asked, least, most } => Told::new(format!(
            "{} deg is outside the range, which goes from {} to {} deg",
            deg(asked),
            deg(least),
            deg(most)
        ))
        .hint("an angle in between, or a share of the range: --at 40%"),
        _ => {
            Told::new("this movement moves a bar or sled: its places are distances from the start")
                .hint("--at \"10 cm\", or a share of the range: --at 40%")
        }
    }
}

fn of_values(fault: &ValuesFault) -> Told {
    match fault {
        ValuesFault::Count {
            text,
            path,
            count,
            least,
            most,
        } => Told::new(format!(
            "`{text}` gives {} to {path}, and {least} to {most} can be compared",
            counted_noun(*count, "value")
        ))
        .hint("for example -20%,0%,+20% or \"50 cm..80 cm:4\""),
        ValuesFault::Twice { text, value } => Told::new(format!("`{text}` names {value} twice")),
        ValuesFault::Empty => {
            Told::new("a value is empty").hint("separate values with one comma: -10%,0%,+10%")
        }
        ValuesFault::ChangeWithoutSign { text, number } => {
            Told::new(format!("`{text}` is a change without a sign"))
                .hint(format!("write +{number}% or -{number}%"))
        }
        ValuesFault::Spacing { text, why } => {
            Told::new(format!("`{text}` is no range: {}", spacing(why)))
                .hint("write FROM..TO:COUNT, such as \"50 cm..90 cm:5\" or -20%..+20%:5")
        }
    }
}

fn spacing(why: &SpacingFault) -> String {
    match why {
        SpacingFault::CountUnreadable => "the count behind `:` is no whole number".to_owned(),
        SpacingFault::Count { count, most } => format!(
            "{} {} not 2 to {most}",
            counted_noun(*count, "value"),
            of_count(count, "is", "are")
        ),
        SpacingFault::EndUnreadable { text } => format!("`{text}` is no number with a unit"),
        SpacingFault::Units { from, to } => format!("its ends are in `{from}` and `{to}`"),
        SpacingFault::EndsAlike => "both ends are alike".to_owned(),
    }
}

fn of_a_comparison(fault: &ComparisonFault) -> Told {
    match fault {
        ComparisonFault::NotInLift {
            path,
            movement,
            joints,
            others,
        } => not_in_lift(path, movement, joints, others),
        ComparisonFault::VariedAgainstItself { path } => {
            Told::new(format!("`{path}` is varied against itself"))
                .hint("name two different parameters")
        }
        ComparisonFault::TooManyPoses {
            curves,
            samples,
            fitting,
        } => Told::new(format!(
            "{curves} curves of {samples} samples each are more than a gigabyte of memory"
        ))
        .hint(format!("up to --samples {fitting} fit with so many values")),
        ComparisonFault::TooDetailed { samples, most } => Told::new(format!(
            "{samples} samples with all of their muscles are more than a gigabyte of memory"
        ))
        .hint(format!("up to --samples {most} fit with --detail")),
        ComparisonFault::TooManyInvented {
            people,
            samples,
            fitting,
        } => Told::new(format!(
            "{people} people with {samples} samples each are more than half an hour of work"
        ))
        .hint(format!(
            "with so many people up to --samples {fitting}, or fewer people"
        )),
        ComparisonFault::SameValue { first, other, path } => {
            Told::new(format!("{first} and {other} are the same value of {path}"))
        }
        ComparisonFault::NoPair => {
            Told::new("the movement cannot be done with any pair of these values")
        }
        ComparisonFault::RankAmount {
            percent,
            least_percent,
            most_percent,
        } => Told::new(format!(
            "a change by {percent} % is outside {least_percent} to {most_percent} %"
        ))
        .hint("5 is the default"),
        ComparisonFault::NothingToRank { compared } => Told::new(format!(
            "the movement as it is has no {}",
            compared_in_words(*compared)
        )),
        ComparisonFault::NoFigureWithIt { compared } => Told::new(format!(
            "with it there is no {}",
            compared_in_words(*compared)
        )),
    }
}

fn not_in_lift(path: &str, movement: &str, joints: &[&str], others: &[String]) -> Told {
    let joints: Vec<String> = joints.iter().map(|joint| (*joint).to_owned()).collect();
    let moving = match joints.as_slice() {
        [only] => format!("the {only} moves there"),
        several => format!("{} move there", listed(several)),
    };
    let told = Told::new(format!(
        "`{path}` is not in this lift ({}): only {moving}, and no value of it changes anything",
        movement.to_lowercase()
    ));
    if others.is_empty() {
        told
    } else {
        told.hint(format!("it has a part in {}", listed(others)))
    }
}

fn of_a_maximum(fault: &MaximumFault, units: System) -> Told {
    match fault {
        MaximumFault::LoadUnreadable { fault } => {
            quantity_told::told(fault).hint("or a share of the maximum, such as --load 85%")
        }
        MaximumFault::ShareUnreadable { text } => {
            Told::new(format!("`{text}` is no share of a maximum"))
                .hint("shares run from 0% to 300%, such as 85%")
        }
        MaximumFault::LessThanBody { share, body_share } => Told::new(format!(
            "{} % of all that is lifted is less than the lifter's own body, which is {} %",
            rounded(100.0 * share, 0),
            rounded(100.0 * body_share, 0)
        ))
        .hint("a larger share, or help: --item \"counterweight 20 kg\""),
        MaximumFault::BodyNotLifted {
            lifter,
            counterweight,
        } => {
            let mass = finely(*counterweight, units);
            Told::new(format!(
                "{lifter} cannot lift the body's own weight in this movement: there is no maximum"
            ))
            .hint(format!(
                "with a counterweight of {mass} in all one repetition succeeds: --item \"counterweight {mass}\" in curve, rep and max"
            ))
            .hint("pick finds the help that a gym's stack gives: torquill pick MOVEMENT --gym NAME; plans are made from the first whole repetition on")
        }
        MaximumFault::GroupSize { count, most } => Told::new(format!(
            "a group of {} is outside what is possible (1 to {most})",
            counted_noun(*count, "lifter")
        )),
        MaximumFault::MorePartsThanPeople { parts, people } => Told::new(format!(
            "{people} {} not shared into {}: some would be of nobody",
            of_count(people, "person is", "people are"),
            counted_noun(*parts, "part")
        ))
        .hint("ask for more --people, or for fewer parts"),
        MaximumFault::GroupStopped => {
            Told::new("the group was stopped before anybody with a maximum was reckoned")
                .hint("fewer --people take less time, or a --part of them")
        }
        MaximumFault::NobodyInGroup => {
            Told::new("nobody in this group has a maximum with this setup")
        }
    }
}

/// A mass to a hundredth of its unit.
fn finely(mass: Mass, units: System) -> String {
    match units {
        System::Metric => format!("{} kg", rounded(mass.as_kg(), 2)),
        System::Us => format!("{} lb", rounded(mass.as_lb(), 2)),
    }
}
