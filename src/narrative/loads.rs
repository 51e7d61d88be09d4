//! Plain loads in words: "bar (20 kg), 25 kg + 10 kg a side".
//!
//! In: a [`Loading`]. Out: what a person puts together for it. Pieces are told in the unit that is stamped on them,
//! sums in the units asked for.

use super::quantities::not_nothing;
use crate::error::PlainLoad;
use crate::setups::Loading;
use crate::units::{Mass, System};

/// A mass with at most `decimals` decimals: "102.25 kg", "225.42 lb".
#[must_use]
pub fn exact_mass(units: System, mass: Mass, decimals: usize) -> String {
    match units {
        System::Metric => format!("{} kg", not_nothing(mass.as_kg(), decimals)),
        System::Us => format!("{} lb", not_nothing(mass.as_lb(), decimals)),
    }
}

/// A piece's mass in the unit in which it is a round figure: "20 kg", "45 lb".
#[must_use]
pub fn stamped_mass(mass: Mass) -> String {
    let is_round = |value: f64| (value * 100.0 - (value * 100.0).round()).abs() < 1.0e-6;
    if !is_round(mass.as_kg()) && is_round(mass.as_lb()) {
        exact_mass(System::Us, mass, 2)
    } else {
        exact_mass(System::Metric, mass, 2)
    }
}

/// What is put together for a load: "bar (20 kg), 15 kg + 2.5 kg a side".
#[must_use]
pub fn loading_in_words(loading: &Loading) -> String {
    plain_load_in_words(&loading.into())
}

/// The same of a load without its gym.
pub(crate) fn plain_load_in_words(load: &PlainLoad) -> String {
    match load {
        PlainLoad::Bar {
            name,
            mass,
            collar,
            discs,
        } => with_discs(&named_bar(name, *mass), *collar, discs),
        PlainLoad::Dumbbell(mass) => format!("dumb-bell of {} in each hand", stamped_mass(*mass)),
        PlainLoad::Kettlebell(mass) => {
            format!("kettlebell of {} in each hand", stamped_mass(*mass))
        }
        PlainLoad::CurlBar {
            name,
            mass,
            collar,
            discs,
        } => {
            let bar = format!("{} in both hands", named_bar(name, *mass));
            with_discs(&bar, *collar, discs)
        }
        PlainLoad::Stack(mass) => format!("stack at {}", stamped_mass(*mass)),
        PlainLoad::Sled { mass, discs } => {
            format!("sled ({}), {}", stamped_mass(*mass), discs_a_side(discs))
        }
        PlainLoad::Belt { discs } => format!("belt with {}", discs_in_words(discs)),
        PlainLoad::Body => "the body alone".to_owned(),
        PlainLoad::Counterweight(mass) => {
            format!("the body with a counterweight of {}", stamped_mass(*mass))
        }
    }
}

/// "men's bar (20 kg)"; a name that tells the mass already needs it once: "bar 20 kg".
fn named_bar(name: &str, mass: Mass) -> String {
    let mass = stamped_mass(mass);
    if name.contains(&mass) {
        name.to_owned()
    } else {
        format!("{name} ({mass})")
    }
}

/// A bar with its collars and plates.
fn with_discs(bar: &str, collar: Option<Mass>, discs: &[(Mass, u32)]) -> String {
    let collars = collar.map_or(String::new(), |each| {
        format!(", collars of {}", stamped_mass(each))
    });
    format!("{bar}{collars}, {}", discs_a_side(discs))
}

fn discs_a_side(discs: &[(Mass, u32)]) -> String {
    if discs.is_empty() {
        "no plates".to_owned()
    } else {
        format!("{} a side", discs_in_words(discs))
    }
}

/// "2 × 20 kg + 5 kg"; empty without plates.
fn discs_in_words(discs: &[(Mass, u32)]) -> String {
    let words: Vec<String> = discs
        .iter()
        .map(|(each, count)| match count {
            1 => stamped_mass(*each),
            _ => format!("{count} × {}", stamped_mass(*each)),
        })
        .collect();
    words.join(" + ")
}
