//! Words for: why a gym has no setup for a lift, with the nearest miss and what would make it fit.

use super::Told;
use crate::error::{NearestSetup, PickFault, Shortfall};
use crate::narrative::advice_words::advice_sentences;
use crate::narrative::hanging::pair_in_words;
use crate::narrative::loads::plain_load_in_words;
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::narrative::shared_phrases::range_place;
use crate::units::{Mass, System};

/// The fault in words.
pub(super) fn told(fault: &PickFault, units: System) -> Told {
    match fault {
        PickFault::NothingMet { gym } => {
            Told::new(format!("nothing that {gym} can build fits exactly"))
                .hint("widen the limits a little")
        }
        PickFault::NoneFits { gym, nearest } => none_fits(gym, nearest, units),
        PickFault::NotLifted {
            gym,
            effort,
            one_rm_effort,
        } => Told::new(format!(
            "the simulation lifts no setup of {gym} with an effort of {} % at the hardest place, not once",
            rounded(100.0 * effort, 1)
        ))
        .hint(format!(
            "take less --effort: the 1RM with plain weight asks for {} % there, and a set leaves repetitions in reserve",
            rounded(100.0 * one_rm_effort, 0)
        )),
        PickFault::PlainIsBetter {
            pieces,
            gym,
            movement,
            advice,
        } => {
            let mut told = Told::new(format!(
                "no {pieces} of {gym} load the {} more evenly than plain weight",
                movement.replace('-', " ")
            ));
            told.hints = advice_sentences(advice, units);
            told.hint(
                "--band or --chain hang a named piece all the same; --method straight plans plain weight",
            )
        }
    }
}

fn none_fits(gym: &str, nearest: &NearestSetup, units: System) -> Told {
    let plain = plain_load_in_words(&nearest.plain);
    let hung: Vec<String> = nearest
        .hung
        .iter()
        .map(|pair| pair_in_words(pair, units))
        .collect();
    let words = if hung.is_empty() {
        plain
    } else {
        format!("{plain} and {}", hung.join(" + "))
    };
    let effect = if nearest.misses_more {
        "would be a first step"
    } else {
        "would make it fit"
    };
    Told::new(format!(
        "no setup of {gym} fits; the nearest, {words}, {}",
        missed(&nearest.shortfall, units)
    ))
    .hint(remedy(&nearest.shortfall, effect, units))
    .hint(
        "bands and chains a side: --hung; pieces a side with plates: --pieces; which ones: --only",
    )
}

/// What is missed, as the end of a sentence about the setup.
fn missed(shortfall: &Shortfall, units: System) -> String {
    let percent = |share: &f64| format!("{} %", rounded(100.0 * share, 1));
    match shortfall {
        Shortfall::TooHard { effort, wished, .. } => format!(
            "asks for {} % of what the lifter has at its hardest place, more than {}",
            (100.0 * effort).ceil(),
            percent(wished)
        ),
        Shortfall::AllCarried { weight, carried } => format!(
            "leaves nothing to lift: {} of weight hang on bands that carry {}",
            units.mass(*weight),
            units.mass(*carried)
        ),
        Shortfall::LeftWhenBandsGo { left, most } => format!(
            "leaves {} when the bands go, more than {}",
            units.mass(*left),
            units.mass(*most)
        ),
        Shortfall::FeltAboveOneRm { felt, most } => format!(
            "is felt as {} where bands and chains add most, more than the 1RM of {}",
            units.mass(*felt),
            units.mass(*most)
        ),
        Shortfall::BothWays => "pulls up and down at once".to_owned(),
        Shortfall::LeastShare { has, needs } => format!(
            "has {} of it from bands and chains, less than {}",
            percent(has),
            percent(needs)
        ),
        Shortfall::MostShare { has, needs } => format!(
            "has {} of it from bands and chains, more than {}",
            percent(has),
            percent(needs)
        ),
        Shortfall::LeastLoad { at, has, needs } => format!(
            "loads {} at {}, less than {}",
            units.mass(*has),
            range_place(*at),
            units.mass(*needs)
        ),
        Shortfall::MostLoad { at, has, needs } => format!(
            "loads {} at {}, more than {}",
            units.mass(*has),
            range_place(*at),
            units.mass(*needs)
        ),
    }
}

/// What would mend it, in the command's words; `effect` says how far.
fn remedy(shortfall: &Shortfall, effect: &str, units: System) -> String {
    match shortfall {
        Shortfall::TooHard {
            effort,
            most,
            is_body,
            with_legs,
            ..
        } => {
            let needed = (100.0 * effort).ceil();
            let is_too_heavy = most.is_some() || needed > 100.0;
            if *is_body && *with_legs && is_too_heavy {
                format!(
                    "hands on a rail that carry a part of the body {effect}, or begin seated with plates on the knees"
                )
            } else if *is_body && is_too_heavy {
                format!(
                    "a gym with the stack of an assisting machine (stack: in the gym file) {effect}; until then lower yourself slowly after a step up, or row under a bar"
                )
            } else if most.is_some_and(|most| *effort > most) {
                format!(
                    "too heavy for a novice: a lighter bar, dumb-bells or a machine {effect}, or an exercise with a lighter load first"
                )
            } else if needed <= 100.0 {
                format!("--effort {needed}% or a lighter load {effect}")
            } else {
                format!(
                    "this lifter cannot hold it: a lighter load, more help, or a stronger lifter {effect}"
                )
            }
        }
        Shortfall::AllCarried { .. } => {
            format!("more plates, or a weaker band from above, {effect}")
        }
        Shortfall::LeftWhenBandsGo { .. } => {
            format!("safety arms in the gym file, less --effort, or no bands from above {effect}")
        }
        Shortfall::FeltAboveOneRm { .. } => {
            format!("narrower bands, lighter chains, or less --effort {effect}")
        }
        Shortfall::BothWays => format!("--both-ways {effect}"),
        Shortfall::LeastShare { has, .. } => format!(
            "--share {}%.. {effect}, or a wider band",
            (100.0 * has).floor()
        ),
        Shortfall::MostShare { has, .. } => format!(
            "--share ..{}% {effect}, or a narrower band",
            (100.0 * has).ceil()
        ),
        Shortfall::LeastLoad { at, has, .. } => format!(
            "--load-at \"{}={}..\" {effect}, or more --effort",
            place_word(*at),
            whole(*has, units, f64::floor)
        ),
        Shortfall::MostLoad { at, has, .. } => format!(
            "--load-at \"{}=..{}\" {effect}, or less --effort",
            place_word(*at),
            whole(*has, units, f64::ceil)
        ),
    }
}

/// A mass as a whole number of its unit.
fn whole(mass: Mass, units: System, round: fn(f64) -> f64) -> String {
    match units {
        System::Metric => format!("{} kg", round(mass.as_kg())),
        System::Us => format!("{} lb", round(mass.as_lb())),
    }
}

/// A place as the command line writes it.
fn place_word(at: f64) -> String {
    match at {
        0.0 => "start".to_owned(),
        0.5 => "middle".to_owned(),
        1.0 => "end".to_owned(),
        at => rounded(at, 3),
    }
}
