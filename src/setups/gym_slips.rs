//! What is wrong in a gym file: each slip with the path of the value.
//!
//! In: the record of a gym file, the names that the library knows. Out: [`GymSlip`]s in the file's order. A gym without
//! a bar, a dumb-bell or a machine can load nothing; one without a band is no slip: the search then says what can be
//! built of it.

use super::gym_file::GymFile;
use crate::bounds::{Bound, bounds};
use crate::error::GymSlip;
use crate::grammar::Stock;
use crate::units::{Length, Mass};
use std::collections::BTreeSet;

/// Path of a value, such as `bands.2.name`, and what is wrong with it.
type Slip = (String, GymSlip);

/// Everything that is wrong in the file, in its order.
#[must_use]
pub fn slips(file: &GymFile, stock: &Stock) -> Vec<Slip> {
    // Of a list that is too long nothing else is looked at.
    let too_long: Vec<Slip> = kind_slips(file).collect();
    if !too_long.is_empty() {
        return too_long;
    }
    let mut slips = equipment_slips(file);
    slips.extend(plate_slips(file));
    let bands = file.bands.iter().map(|record| ListedPiece {
        name: &record.name,
        count: record.count,
        is_described: record.band.is_some(),
    });
    slips.extend(piece_slips("bands", bands, stock.bands.keys().collect()));
    let chains = file.chains.iter().map(|record| ListedPiece {
        name: &record.name,
        count: record.count,
        is_described: record.chain.is_some(),
    });
    slips.extend(piece_slips("chains", chains, stock.chains.keys().collect()));
    slips.extend(leader_slips(file));
    if is_empty(file) {
        slips.push((String::new(), GymSlip::OwnsNothing));
    }
    slips
}

fn is_empty(file: &GymFile) -> bool {
    file.bars.is_empty()
        && file.dumbbells.is_empty()
        && file.kettlebells.is_empty()
        && file.curl_bars.is_empty()
        && file.stack.is_none()
        && file.sled.is_none()
}

fn equipment_slips(file: &GymFile) -> Vec<Slip> {
    let bounds = bounds();
    let mut slips = Vec::new();
    for (list, bars) in [("bars", &file.bars), ("curl_bars", &file.curl_bars)] {
        let mut named = BTreeSet::new();
        for (index, bar) in bars.iter().enumerate() {
            slips.extend(no_name(format!("{list}.{index}.name"), &bar.name));
            if !named.insert(&bar.name) {
                let path = format!("{list}.{index}.name");
                slips.push((path, GymSlip::NameTwice(bar.name.clone())));
            }
            let path = format!("{list}.{index}.mass");
            slips.extend(odd_mass(path, bar.mass, &bounds.bar_mass));
        }
    }
    let unnamed = file.anchors.keys();
    slips.extend(unnamed.filter_map(|name| no_name("anchors".to_owned(), name)));
    let held = [
        ("dumbbells", &file.dumbbells),
        ("kettlebells", &file.kettlebells),
    ];
    for (list, masses) in held {
        for (index, mass) in masses.iter().enumerate() {
            let path = format!("{list}.{index}");
            slips.extend(odd_mass(path, *mass, &bounds.dumbbell_mass));
        }
    }
    let mut one = |path: &str, mass: Option<Mass>, bound: &Bound| {
        let odd = mass.and_then(|mass| odd_mass(path.to_owned(), mass, bound));
        slips.extend(odd);
    };
    one("collars", file.collars, &bounds.collar_mass);
    one("smallest_step", file.smallest_step, &bounds.smallest_step);
    if let Some(stack) = file.stack {
        one("stack.step", Some(stack.step), &bounds.stack_step);
        let (least, bound) = (stack.step, &bounds.stack_most);
        slips.extend(odd_from("stack.most".to_owned(), stack.most, least, bound));
    }
    if let Some(arms) = file.safety_arms {
        let [lowest_m, highest_m, step_m] =
            [arms.lowest, arms.highest, arms.step].map(Length::as_m);
        let stand =
            0.0 <= lowest_m && lowest_m <= highest_m && bounds.anchor_height.holds(highest_m);
        if !(stand && step_m > 0.0) {
            slips.push(("safety_arms".to_owned(), GymSlip::OddArms));
        }
    }
    if let Some(sled) = file.sled {
        let odd = odd_mass("sled.mass".to_owned(), sled.mass, &bounds.sled_mass);
        slips.extend(odd);
        if !bounds.rail_friction.holds(sled.friction) {
            let slip = GymSlip::OddFriction(sled.friction);
            slips.push(("sled.friction".to_owned(), slip));
        }
    }
    slips
}

fn plate_slips(file: &GymFile) -> Vec<Slip> {
    let mut slips = Vec::new();
    let mut masses = BTreeSet::new();
    for (index, plate) in file.plates.iter().enumerate() {
        let path = |field: &str| format!("plates.{index}.{field}");
        slips.extend(odd_mass(path("mass"), plate.mass, &bounds().plate_mass));
        if !masses.insert(plate.mass.as_kg().to_bits()) {
            slips.push((path("mass"), GymSlip::PlateTwice));
        }
        slips.extend(odd_count(path("count"), plate.count));
    }
    slips
}

/// Lists with more kinds than are searched.
fn kind_slips(file: &GymFile) -> impl Iterator<Item = Slip> {
    let lists = [
        ("plates", file.plates.len()),
        ("bands", file.bands.len()),
        ("chains", file.chains.len()),
        ("bars", file.bars.len()),
        ("dumbbells", file.dumbbells.len()),
        ("kettlebells", file.kettlebells.len()),
        ("curl_bars", file.curl_bars.len()),
        ("anchors", file.anchors.len()),
    ];
    let too_long = lists
        .into_iter()
        .filter(|(_, kinds)| !bounds().owned_kinds.holds(*kinds as f64));
    too_long.map(|(list, kinds)| {
        let most = bounds().owned_kinds.most_of_them();
        (list.to_owned(), GymSlip::TooManyKinds { kinds, most })
    })
}

fn leader_slips(file: &GymFile) -> Vec<Slip> {
    let mut slips = Vec::new();
    for (index, record) in file.chains.iter().enumerate() {
        for (place, length) in record.leaders.iter().enumerate() {
            let bound = &bounds().leader_length;
            if !bound.holds(length.as_m()) {
                let slip = GymSlip::OddLeader {
                    length: *length,
                    most: Length::from_m(bound.most()),
                };
                slips.push((format!("chains.{index}.leaders.{place}"), slip));
            }
        }
    }
    slips
}

fn odd_mass(path: String, mass: Mass, bound: &Bound) -> Option<Slip> {
    odd_from(path, mass, Mass::from_kg(bound.least()), bound)
}

/// A mass below `least` or above the upper end of its bounds.
fn odd_from(path: String, mass: Mass, least: Mass, bound: &Bound) -> Option<Slip> {
    let most = Mass::from_kg(bound.most());
    let is_odd = !(least..=most).contains(&mass);
    is_odd.then_some((path, GymSlip::OddMass { mass, least, most }))
}

fn odd_count(path: String, count: u32) -> Option<Slip> {
    let bound = &bounds().owned_pieces;
    let most = bound.most_of_them() as u32;
    let is_odd = !bound.holds(f64::from(count));
    is_odd.then_some((path, GymSlip::OddCount { count, most }))
}

/// A name that says nothing: what is hung or loaded is called by it.
fn no_name(path: String, name: &str) -> Option<Slip> {
    name.trim().is_empty().then_some((path, GymSlip::NoName))
}

/// A band or a chain as the file lists it.
struct ListedPiece<'a> {
    name: &'a str,
    count: u32,
    is_described: bool,
}

/// Slips of bands or chains: a name twice, a name that leads nowhere, an absurd count.
fn piece_slips<'a>(
    list: &str,
    pieces: impl Iterator<Item = ListedPiece<'a>>,
    known: Vec<&String>,
) -> Vec<Slip> {
    let mut slips = Vec::new();
    let mut named = BTreeSet::new();
    for (index, piece) in pieces.enumerate() {
        let path = |field: &str| format!("{list}.{index}.{field}");
        slips.extend(no_name(path("name"), piece.name).filter(|_| piece.is_described));
        if !named.insert(piece.name) {
            slips.push((path("name"), GymSlip::NameTwice(piece.name.to_owned())));
        } else if !piece.is_described && known.iter().all(|other| *other != piece.name) {
            slips.push((path("name"), unknown(piece.name, &known)));
        }
        slips.extend(odd_count(path("count"), piece.count));
    }
    slips
}

/// A name that the library does not know, with the nearest one that it does.
fn unknown(name: &str, known: &[&String]) -> GymSlip {
    let near = known
        .iter()
        .map(|other| (strsim::damerau_levenshtein(name, other), *other))
        .min()
        .filter(|(distance, _)| *distance <= 1 + name.len() / 3);
    GymSlip::UnknownPiece {
        name: name.to_owned(),
        near: near.map(|(_, other)| other.clone()),
        known: known.iter().map(|other| (*other).clone()).collect(),
    }
}
