//! Words for: why a repetition or a maximum cannot be simulated.

use super::Told;
use crate::error::{MaximumSearchFault, RepetitionFault, TimedPart};
use crate::narrative::quantities::QuantityWords;
use crate::units::{Mass, System};

/// The fault in words.
pub(super) fn told(fault: &RepetitionFault, units: System) -> Told {
    match fault {
        RepetitionFault::TooFewPoses {
            poses,
            directions,
            least,
        } => Told::new(format!(
            "{poses} poses and {directions} directions are too few for a repetition ({least} each at least)"
        )),
        RepetitionFault::Part { from, to, shortest } => Told::new(format!(
            "a lift from range {from} to {to} cannot be simulated"
        ))
        .hint(format!(
            "0 is the bottom and 1 the lockout; a part covers {shortest} at least: --from 0.5 --to 1"
        )),
        RepetitionFault::Time {
            part,
            time,
            longest,
        } => Told::new(format!(
            "a {} of {} s is outside what is possible (0 to {} s)",
            part_name(*part),
            time.as_s(),
            longest.as_s()
        )),
        RepetitionFault::TooFast {
            time,
            shortest,
            largest,
        } => Told::new(format!(
            "lowered in {} s the load would be faster than {} m/s, the most that is taken",
            time.as_s(),
            largest.as_m_s()
        ))
        .hint(format!(
            "--lowering \"{} s\" is the shortest for this way",
            (100.0 * shortest.as_s()).ceil() / 100.0
        )),
        RepetitionFault::Step { step, least, most } => Told::new(format!(
            "a step of {} ms is outside what is possible ({} to {} ms)",
            step.as_ms(),
            least.as_ms(),
            most.as_ms()
        )),
        RepetitionFault::Maximum(fault) => of_maximum(fault, units),
    }
}

fn part_name(part: TimedPart) -> &'static str {
    match part {
        TimedPart::Lowering => "lowering",
        TimedPart::Pause => "pause",
    }
}

fn of_maximum(fault: &MaximumSearchFault, units: System) -> Told {
    let mass = |mass: &Mass, decimals: usize| units.fine_mass(*mass, decimals);
    match fault {
        MaximumSearchFault::NoLoweringTime => {
            Told::new("a lowering of 0 s has no maximum").hint("3 s is the usual test")
        }
        MaximumSearchFault::LoadingStep { step, least, most } => Told::new(format!(
            "a loading step of {} is outside what is possible ({} to {})",
            mass(step, 3),
            units.mass_number(*least, 2),
            mass(most, 0)
        )),
        MaximumSearchFault::NothingLifted => Told::new("not even an empty bar is lifted")
            .hint("take something off the bar, or more help"),
        MaximumSearchFault::NoLimit { highest } => Told::new(format!(
            "this movement lifts {} and more: it has no maximum",
            mass(highest, 0)
        ))
        .hint("a limb that starts straight bears any load, and weight helps a lift that goes down; start lower in the range"),
        MaximumSearchFault::WeightHelps { sinks } => Told::new(format!(
            "the load of this lift ends {} below where it starts: its weight helps, so no weight is planned or picked for it",
            units.length(*sinks, 0)
        ))
        .hint("`curve` and `figure` draw it with what pulls it up, such as --item \"cable 20 kg, from rack-high\""),
        MaximumSearchFault::KnownOutside { load, most } => Told::new(format!(
            "--to-load {} is no load that anybody lifts",
            mass(load, 2)
        ))
        .hint(format!("up to {} is a maximum", mass(most, 0))),
        MaximumSearchFault::NoneToScaleTo { load } => Told::new(format!(
            "{} is no maximum to scale a lifter to",
            mass(load, 2)
        )),
        MaximumSearchFault::NoStrength { load, nearest } => Told::new(format!(
            "no strength of this lifter gives a maximum of {} (the nearest is {})",
            mass(load, 2),
            mass(nearest, 2)
        )),
    }
}
