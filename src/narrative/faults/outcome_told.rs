//! Words for: why a repetition does not end as it was meant to.

use super::Told;
use crate::error::{FailedEnd, OutcomeFault, StopPlace, StopPosition};
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &OutcomeFault, units: System) -> Told {
    let message = match &fault.end {
        FailedEnd::StuckAtStart => "the load is not lifted: it does not leave the start".to_owned(),
        FailedEnd::Stops(place) => format!(
            "the load is not lifted: it stops {}",
            place_in_words(place, units)
        ),
        FailedEnd::NotHeld(place) => format!(
            "the load is not lifted: it can be thrown to the end, {}, but not held there",
            place_in_words(place, units)
        ),
        FailedEnd::Rises => {
            "there is nothing to lower: what helps outweighs the load, which rises by itself"
                .to_owned()
        }
        FailedEnd::GetsAway(place) => format!(
            "the load is too heavy to be lowered in this time: it gets away {}",
            place_in_words(place, units)
        ),
    };
    Told::new(message).hint(match fault.maximum {
        _ if fault.end == FailedEnd::Rises => "put load on, or take help away".to_owned(),
        Some(maximum) => format!("the maximum with this setup is {}", units.mass(maximum)),
        None => "take load off, or help with a spotter or a band from above".to_owned(),
    })
}

fn place_in_words(place: &StopPlace, units: System) -> String {
    let (number, unit) = match place.at {
        StopPosition::Way(way) => units.travel_and_unit(way.as_cm()),
        StopPosition::Joint(angle) => (rounded(angle.as_deg(), 0), "deg"),
    };
    format!("{number} {unit} {}", place.away_from)
}
