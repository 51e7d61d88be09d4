//! Spotters in words: where they stand, what they call, how a load comes back up.
//!
//! In: facts of a session. Out: text for tables and sheets.

use super::quantities::QuantityWords;
use crate::movement::{HelperPlace, SpotterPlace, WayBack};
use crate::session::lowering_remark::LostBar;
use crate::session::spotting::{SpotterCalls, SpottersStand, Spotting};
use crate::units::System;

/// A word that is called, and what it means.
pub type Call = (&'static str, &'static str);

const READY: Call = ("ready", "lifter: grip and position are set");

const HAND_OFF: Call = ("lift", "lifter: hand the bar off now, on three");

const LIFT_CALLS: [Call; 3] = [
    ("mine", "lifter: I have the whole weight, hands off"),
    ("help", "lifter: touch the bar, as little as it takes"),
    ("take", "anyone: spotters take the bar at once and rack it"),
];

const LOWERING_CALLS: [Call; 4] = [
    (
        "mine",
        "lifter: I have the whole weight, hands off; the lowering begins",
    ),
    (
        "up",
        "the one in charge, at the bottom: all bring it back together, the lifter only guides",
    ),
    (
        "take",
        "anyone, at any time: helpers take the load at once and put it down",
    ),
    ("last", "the one in charge: one more, then put it down"),
];

const ARMS_CALLS: [Call; 3] = [
    (
        "mine",
        "lifter: I have the whole weight, hands off; the lowering begins",
    ),
    (
        "down",
        "anyone, at any time: the bar goes down on the arms, the lifter comes out, nobody holds or lifts it",
    ),
    (
        "clear",
        "both helpers: plates are off, the same at both ends; the lifter may bring up what is left",
    ),
];

/// "2, one at each end of the bar".
#[must_use]
pub fn spotters(spotting: &Spotting, units: System) -> String {
    let why = spotting.too_heavy_for_one.map_or_else(String::new, |most| {
        format!(" (more than {} is not for one: assumed)", units.mass(most))
    });
    format!(
        "{}, {}{why}",
        spotting.spotters,
        spotters_place(spotting.stand)
    )
}

/// Where spotters stand.
#[must_use]
pub fn spotters_place(stand: SpottersStand) -> &'static str {
    match stand {
        SpottersStand::Alone(SpotterPlace::BehindHead) => "behind the head of the bench",
        SpottersStand::Alone(SpotterPlace::BehindTrunk) => "close behind the lifter's trunk",
        SpottersStand::AtBarEnds => "one at each end of the bar",
        SpottersStand::Helping(place) => helpers_place(place),
    }
}

fn helpers_place(place: HelperPlace) -> &'static str {
    match place {
        HelperPlace::BarEndsAndMiddle => "one at each end of the bar, one in the middle in charge",
        HelperPlace::SledSides => "one at each side of the sled, one of them in charge",
        HelperPlace::Beside => "beside the lifter",
        HelperPlace::Lever => "at the machine's lever",
        HelperPlace::Dumbbells => "one at each dumb-bell",
    }
}

/// The words that are called, in the order in which they are said.
#[must_use]
pub fn calls(spotting: &Spotting) -> Vec<Call> {
    let mut calls = vec![READY];
    match spotting.calls {
        SpotterCalls::Lift { hand_off } => {
            calls.extend(hand_off.then_some(HAND_OFF));
            calls.extend(LIFT_CALLS);
        }
        SpotterCalls::Lowering => calls.extend(LOWERING_CALLS),
        SpotterCalls::LoweringToArms => calls.extend(ARMS_CALLS),
    }
    calls
}

/// How more than 1RM comes back up.
#[must_use]
pub fn way_back(back: WayBack) -> &'static str {
    match back {
        WayBack::SpottersLift => "spotters lift it back",
        WayBack::OffArms => "down to the safety arms; plates come off before it goes back up",
        WayBack::HelpersPush => "helpers push the sled back",
        WayBack::HelpersLift => "helpers lift them back",
        WayBack::HelperMovesLever => "a helper brings the lever back",
        WayBack::StepUp => "step back up on a box",
        WayBack::OwnHands => "rise with the hands' help on a rack",
    }
}

/// What becomes of a bar whose lowering is lost, and what helpers do with it.
#[must_use]
pub(super) fn lost_bar(lost: LostBar, units: System) -> String {
    match lost {
        LostBar::Held { helpers, each } => format!(
            "Whoever loses a lowering gives nothing more: then {} falls to each of {helpers} helpers, until the bar stands on the arms.",
            units.mass(each)
        ),
        LostBar::OnArms {
            helpers,
            each,
            most,
            left,
        } => format!(
            "Nobody holds or lifts this bar: even if {helpers} held a lost lowering, {} would fall to each, more than the {} that one \
             is taken to hold (assumed). So a set is one lowering down to the safety arms: the lifter comes out, the 2 spotters take \
             plates off to {} or less, the lifter brings that up, and the plates go on again in the rest.",
            units.mass(each),
            units.mass(most),
            units.mass(left)
        ),
    }
}
