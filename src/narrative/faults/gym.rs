//! Words for: what is wrong with a gym, a wish, or a search for setups.

use super::Told;
use crate::error::{GymFault, LoadingGear};
use crate::narrative::loads::exact_mass;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &GymFault, units: System) -> Told {
    match fault {
        GymFault::Lacks { gym, gear } => lacks(gym, *gear),
        GymFault::BelowLightest { asked, lightest } => Told::new(format!(
            "{} cannot be loaded: the lightest is {}",
            exact_mass(units, *asked, 2),
            exact_mass(units, *lightest, 2)
        ))
        .hint("use a lighter bar, dumb-bells or a machine"),
        GymFault::TooManyWays { most_hung, most } => Told::new(format!(
            "this gym can combine up to {most_hung} bands and chains a side in more than {} thousand million ways",
            most / 1_000_000_000
        ))
        .hint("allow fewer, --hung 3, or name what may be used, --only bands"),
        GymFault::NoLoad { asked } => {
            let asked = exact_mass(units, *asked, 12);
            Told::new(format!("{asked} is no load to lift"))
        }
        GymFault::BeyondAnyLift { asked, most } => Told::new(format!(
            "{} is more than any lift is planned for ({})",
            exact_mass(units, *asked, 12),
            exact_mass(units, *most, 0)
        )),
    }
}

fn lacks(gym: &str, gear: LoadingGear) -> Told {
    let (lacking, add) = match gear {
        LoadingGear::Bar => (
            "bar, and this movement takes one",
            "add one to the gym file: bars: [(name: \"bar\", mass: \"20 kg\")]",
        ),
        LoadingGear::Dumbbells => (
            "dumb-bells, and this movement takes them",
            "add them to the gym file: dumbbells: [\"5 kg\", \"7.5 kg\"]",
        ),
        LoadingGear::Stack => (
            "machine with a weight stack, and this movement takes one",
            "add it to the gym file: stack: (step: \"5 kg\", most: \"100 kg\")",
        ),
        LoadingGear::Sled => (
            "sled on rails, and this movement takes one",
            "add it to the gym file: sled: (mass: \"45 kg\")",
        ),
    };
    Told::new(format!("{gym} has no {lacking}")).hint(add)
}
