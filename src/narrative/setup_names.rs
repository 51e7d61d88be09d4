//! What a setup is called in a figure: "70 kg + 29 mm band", "60 kg + 2 × 10 mm chain".
//!
//! In: a setup. Out: a few words; counts are per side. Whole sentences are `in_words`.

use super::implements::anchor_in_words;
use super::quantities::QuantityWords;
use crate::movement::Carrier;
use crate::resistance::{
    Anchor, Assistance, BandPull, ChainHang, EccentricOnly, Hang, HungBand, HungChain, Item, Setup,
    Weight,
};
use crate::units::System;

/// Longest name of a setup that is used as it is.
const LONGEST_NAME: usize = 28;

/// Anchors up to this height straight below the load are the usual ones and not named, cm. A rack's foot
/// stands 0-15 cm high (common practice).
const USUAL_ANCHOR_CM: f64 = 15.0;

/// Anchors from this height on, straight above the load, are overhead, cm. Assumed: the top of a rack.
const OVERHEAD_ANCHOR_CM: f64 = 180.0;

/// A few words for labels: plain weight added up, then bands, chains and the rest; its own name if it
/// has a short one.
#[must_use]
pub fn short_name(setup: &Setup, carrier: &Carrier, units: System) -> String {
    if !setup.name.is_empty() && setup.name.chars().count() <= LONGEST_NAME {
        return setup.name.clone();
    }
    let has_body = setup.items.iter().any(is_body);
    let mut words: Vec<String> = has_body.then(|| "body".to_owned()).into_iter().collect();
    let mut held = setup.clone();
    held.items.retain(|item| !is_body(item));
    let plain = held.plain_mass(carrier);
    if plain.as_kg() > 0.0 {
        words.push(units.mass(plain));
    }
    words.extend(held.items.iter().filter_map(|item| short(item, units)));
    match (words.is_empty(), carrier) {
        (true, Carrier::Body) => "the body alone".to_owned(),
        (true, _) => "no load".to_owned(),
        (false, _) => words.join(" + "),
    }
}

/// The same without the setup's own name: "37 kg + doubled 14 mm band".
#[must_use]
pub(crate) fn hung_name(setup: &Setup, carrier: &Carrier, units: System) -> String {
    short_name(&Setup::new("", setup.items.clone()), carrier, units)
}

/// What the setup has besides plain weight, as the subject of a sentence: "a 29 mm band a side", "two
/// 10 mm chains a side"; nothing for plain weight.
#[must_use]
pub fn added_name(setup: &Setup, units: System) -> Option<String> {
    let mut a_side = Vec::new();
    let mut others = Vec::new();
    for item in &setup.items {
        match item {
            Item::Band(hung) => a_side.push(band(hung, units).numbered(hung.count)),
            Item::Chain(hung) => a_side.push(chain(hung).numbered(hung.count)),
            other => others.extend(short(other, units).map(|words| with_article(&words))),
        }
    }
    let mut words = a_side.join(" and ");
    if words.is_empty() && others.is_empty() {
        return None;
    }
    if !words.is_empty() {
        words += " a side";
        others.insert(0, words);
    }
    Some(others.join(" and "))
}

/// What hangs without the setup's own name: "37 kg and a doubled 14 mm band a side", "55 kg".
#[must_use]
pub(crate) fn hung_name_in_full(setup: &Setup, carrier: &Carrier, units: System) -> String {
    let is_plain = |item: &Item| matches!(item, Item::Weight(_) | Item::Sled(_));
    let plain = Setup::new(
        "",
        setup
            .items
            .iter()
            .filter(|item| is_plain(item))
            .cloned()
            .collect(),
    );
    match added_name(setup, units) {
        Some(added) if plain.items.is_empty() => added,
        Some(added) => format!("{} and {added}", short_name(&plain, carrier, units)),
        None => short_name(&plain, carrier, units),
    }
}

/// Whether [`added_name`] names several things, which decides the verb after it.
#[must_use]
pub(crate) fn added_is_plural(setup: &Setup) -> bool {
    let counts: Vec<u32> = setup
        .items
        .iter()
        .filter_map(|item| match item {
            Item::Weight(_) | Item::Sled(_) => None,
            Item::Band(hung) => Some(hung.count),
            Item::Chain(hung) => Some(hung.count),
            _ => Some(1),
        })
        .collect();
    counts.iter().sum::<u32>() > 1
}

/// A piece as it is called alone and among several: "29 mm band from above", "29 mm bands from above".
struct PieceName {
    one: String,
    many: String,
}

impl PieceName {
    /// "a 29 mm band", "two 29 mm bands", "three looped 10 mm chains".
    fn numbered(&self, count: u32) -> String {
        match count {
            1 => with_article(&self.one),
            2 => format!("two {}", self.many),
            3 => format!("three {}", self.many),
            4 => format!("four {}", self.many),
            _ => format!("{count} × {}", self.one),
        }
    }

    /// "29 mm band", "2 × 29 mm band".
    fn counted(&self, count: u32) -> String {
        if count == 1 {
            self.one.clone()
        } else {
            format!("{count} × {}", self.one)
        }
    }
}

/// "a 29 mm band", "an 8 mm chain", "a u-shaped".
pub(crate) fn with_article(words: &str) -> String {
    let vowel = words.starts_with(['8', 'a', 'e', 'i', 'o']);
    format!("{} {words}", if vowel { "an" } else { "a" })
}

fn is_body(item: &Item) -> bool {
    matches!(item, Item::Weight(Weight::BodyMass(_)))
}

fn short(item: &Item, units: System) -> Option<String> {
    Some(match item {
        Item::Weight(_) | Item::Sled(_) => return None,
        Item::Band(hung) => band(hung, units).counted(hung.count),
        Item::Chain(hung) => chain(hung).counted(hung.count),
        Item::Cable(cable) => format!("{} cable", units.mass(cable.stack())),
        Item::Cam(_) => "cam".to_owned(),
        Item::Lever(lever) => format!("{} lever", units.mass(lever.mass())),
        Item::EccentricOnly(EccentricOnly::Hung(mass)) => {
            format!("{} in lowering", units.mass(*mass))
        }
        Item::EccentricOnly(EccentricOnly::Pushed(force)) => {
            format!("{} in lowering", units.force(*force))
        }
        Item::Assistance(Assistance::Counterweight(mass)) => {
            format!("{} help", units.mass(*mass))
        }
        Item::Assistance(_) => "spotter".to_owned(),
    })
}

fn band(hung: &HungBand, units: System) -> PieceName {
    let name = hung.band.name();
    let size = name
        .strip_prefix("loop-")
        .and_then(|rest| rest.strip_suffix("mm"));
    let is_read = matches!(hung.band.pull(), BandPull::Readings(_));
    let (one, many) = match size {
        // A band by somebody's readings is not the one of the list, whatever it is called.
        Some(_) if is_read => (
            format!("band {name} (own readings)"),
            format!("bands {name} (own readings)"),
        ),
        Some(width_mm) => (
            format!("{width_mm} mm band"),
            format!("{width_mm} mm bands"),
        ),
        // The user's own name, which may say itself that it is a band.
        None if name.contains("band") => (name.to_owned(), name.replacen("band", "bands", 1)),
        None => (format!("band {name}"), format!("bands {name}")),
    };
    let how = match hung.hang {
        Hang::Doubled => "doubled ",
        Hang::Choked => "choked ",
        Hang::Auto | Hang::Single => "",
    };
    let from = tied(&hung.anchor, units);
    PieceName {
        one: format!("{how}{one}{from}"),
        many: format!("{how}{many}{from}"),
    }
}

/// Where a band is tied, if it is not the usual place near the floor: " from above".
fn tied(anchor: &Anchor, units: System) -> String {
    let height_cm = anchor.height().as_cm();
    if anchor.offset().as_m() != 0.0 {
        format!(" from {}", anchor_in_words(anchor, units))
    } else if height_cm <= USUAL_ANCHOR_CM {
        String::new()
    } else if height_cm >= OVERHEAD_ANCHOR_CM {
        " from above".to_owned()
    } else {
        format!(" from {}", units.tape(anchor.height()))
    }
}

fn chain(hung: &HungChain) -> PieceName {
    let name = hung.chain.name();
    let size = name
        .strip_prefix("chain-")
        .and_then(|rest| rest.strip_suffix("mm"));
    let one = size.map_or_else(|| name.to_owned(), |size| format!("{size} mm chain"));
    let how = match hung.hang {
        ChainHang::Straight => "",
        ChainHang::DoubleLooped => "looped ",
    };
    PieceName {
        many: format!("{how}{}", one.replacen("chain", "chains", 1)),
        one: format!("{how}{one}"),
    }
}
