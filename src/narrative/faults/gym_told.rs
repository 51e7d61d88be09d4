//! Words for: what is wrong with a gym, a wish, or a search for setups.

use super::Told;
use crate::error::{
    GymFault, GymSlip, LoadingFault, LoadingGear, SearchFault, WishFault, WishSize,
};
use crate::narrative::gym_words::{part_example, part_name};
use crate::narrative::loads::exact_mass;
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::narrative::shared_phrases::range_place;
use crate::units::{Length, Mass, System};

/// The fault in words.
pub(super) fn told(fault: &GymFault, units: System) -> Told {
    match fault {
        GymFault::InFile { path, slip } => slip_at(path, slip, units),
        GymFault::NoPart { part, written } => {
            Told::new(format!("`{written}` tells no {}", part_name(*part)))
                .hint(format!("write {}", part_example(*part)))
        }
        GymFault::Wish(fault) => of_wish(fault),
        GymFault::Loading(fault) => of_loading(fault, units),
        GymFault::Search(fault) => of_search(fault),
    }
}

fn slip_at(path: &str, slip: &GymSlip, units: System) -> Told {
    let told = slip_told(slip, units);
    if path.is_empty() {
        return told;
    }
    Told {
        message: format!("`{path}` {}", told.message),
        ..told
    }
}

fn of_loading(fault: &LoadingFault, units: System) -> Told {
    match fault {
        LoadingFault::Lacks { gym, gear } => lacks(gym, *gear),
        LoadingFault::BelowLightest { asked, lightest } => Told::new(format!(
            "{} cannot be loaded: the lightest is {}",
            exact_mass(units, *asked, 2),
            exact_mass(units, *lightest, 2)
        ))
        .hint("use a lighter bar, dumb-bells or a machine"),
        LoadingFault::NoLoad { asked } => {
            let asked = exact_mass(units, *asked, 12);
            Told::new(format!("{asked} is no load to lift"))
        }
        LoadingFault::BeyondAnyLift { asked, most } => Told::new(format!(
            "{} is more than any lift is planned for ({})",
            exact_mass(units, *asked, 12),
            exact_mass(units, *most, 0)
        )),
    }
}

fn of_search(fault: &SearchFault) -> Told {
    match fault {
        SearchFault::NothingCalled { word, gym, known } => Told::new(format!(
            "`{word}` is nothing that {gym} could use"
        ))
        .hint(format!("it has: {}", known.join(", "))),
        SearchFault::NoneOfKind { kind, gym } => Told::new(format!("{gym} has no {kind}"))
            .hint(format!("go without {kind}, or choose a --gym that has some")),
        SearchFault::TooManyHangings { hangings, most } => Told::new(format!(
            "this gym can hang its pieces in {hangings} ways, more than the {most} that can be searched"
        ))
        .hint("name what may be used, --only bands, or list fewer anchors"),
        SearchFault::TooManyWays { most_hung, most } => Told::new(format!(
            "this gym can combine up to {most_hung} bands and chains a side in more than {} thousand million ways",
            most / 1_000_000_000
        ))
        .hint("allow fewer, --hung 3, or name what may be used, --only bands"),
        SearchFault::Stopped => Told::new("the search was stopped before its end")
            .hint("fewer pieces make it shorter: --hung 3, or --only with what you want to use"),
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

fn of_wish(fault: &WishFault) -> Told {
    let percent = |share: f64| rounded(100.0 * share, 1);
    match fault {
        WishFault::Outside {
            size,
            value,
            least,
            most,
        } => {
            let told = Told::new(outside(*size, *value, *least, *most));
            match size {
                WishSize::HardestEffort | WishSize::ProfileEffort if *value > *most => told.hint(
                    "more than all that is held is lowered only: torquill plan --method overloaded-lowering",
                ),
                _ => told,
            }
        }
        WishFault::SharesCross { least, most } => Told::new(format!(
            "no share of bands and chains is above {} % and below {} %",
            percent(*least),
            percent(*most)
        )),
        WishFault::TooManyHung { asked, most } => Told::new(format!(
            "{asked} bands and chains a side are too many to search: {most} at most"
        )),
        WishFault::LimitTwice { place } => Told::new(format!(
            "the load at {} is limited twice",
            range_place(*place)
        ))
        .hint("write one --load-at a place, with both ends: \"start=40 kg..60 kg\""),
        WishFault::TooManyLimits { most } => {
            Told::new(format!("at most {most} limits of the load are kept"))
        }
        WishFault::ProfileFalls { place, before } => Told::new(format!(
            "the places of a profile must rise: {place} stands after {before}"
        )),
        WishFault::ShortProfile => Told::new("a profile of effort needs two points or more")
            .hint("write RANGE=EFFORT, such as \"0=60 %, 0.5=80 %, 1=90 %\""),
    }
}

fn outside(size: WishSize, value: f64, least: f64, most: f64) -> String {
    let percent = |value: f64| rounded(100.0 * value, 2);
    let what = match size {
        WishSize::HardestEffort => "the hardest effort",
        WishSize::Share => "a share of bands and chains",
        WishSize::ProfileEffort => "an effort of the profile",
        WishSize::Place => {
            return format!("a place of the range lies from 0 (start) to 1 (end), not at {value}");
        }
    };
    format!(
        "{what} of {} % is outside what can be asked for: {} % to {} %",
        percent(value),
        percent(least),
        percent(most)
    )
}

/// What is wrong with a value of a gym file, reading on from its path.
fn slip_told(slip: &GymSlip, units: System) -> Told {
    let mass = |mass: &Mass| exact_mass(units, *mass, 3);
    let far = |length: &Length| units.far_length(*length);
    match slip {
        GymSlip::NameTwice(name) => Told::new(format!("`{name}` is listed twice"))
            .hint("give each its own name, or add the counts up in one line"),
        GymSlip::PlateTwice => Told::new("is listed twice").hint("add the counts up in one line"),
        GymSlip::OddMass {
            mass: odd,
            least,
            most,
        } => Told::new(format!(
            "is {}; it must lie between {} and {}",
            mass(odd),
            mass(least),
            mass(most)
        )),
        GymSlip::NoName => {
            Told::new("has no name").hint("a set-up is told by the names of its pieces: \"men's bar\", \"rack foot\"")
        }
        GymSlip::OddArms => Told::new("are safety arms that no rack has")
            .hint("the lowest hole is below the highest, with a step between: (lowest: \"40 cm\", highest: \"120 cm\", step: \"5 cm\")"),
        GymSlip::OddFriction(odd) => Told::new(format!("is {odd}; it must lie between 0 and 1")),
        GymSlip::OddCount { count, most } => Told::new(format!(
            "is {count}; at most {most} pieces of a kind are taken for real"
        )),
        GymSlip::TooManyKinds { kinds, most } => {
            Told::new(format!("has {kinds} kinds; at most {most} are searched"))
                .hint("leave out what is never used")
        }
        GymSlip::OddLeader { length, most } => Told::new(format!(
            "is {}; a leader is {} to {} long",
            far(length),
            far(&Length::ZERO),
            far(most)
        )),
        GymSlip::UnknownPiece { name, near, known } => unknown_piece(name, near.as_deref(), known),
        GymSlip::OwnsNothing => Told::new("this gym owns nothing to load a lift with: no bar, no dumb-bells, no machine, so no lift can be planned in it")
            .hint("list at least a bar: bars: [(name: \"bar\", mass: \"20 kg\")]"),
    }
}

fn unknown_piece(name: &str, near: Option<&str>, known: &[String]) -> Told {
    let told = Told::new(format!(
        "is `{name}`, and the library has nothing of that name"
    ));
    match near {
        Some(near) => told.hint(format!("did you mean `{near}`?")),
        None => told.hint(format!(
            "known are {}; or describe it here",
            known.join(", ")
        ))
        .hint("one of your own, DIR/bands/NAME.ron or DIR/chains/NAME.ron, is found with --models DIR"),
    }
}
