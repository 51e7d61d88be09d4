//! What a gym owns: bars, plates, collars, bands, chains, anchors, and what machines it has.
//!
//! In: the record that a gym file holds, and the bands and chains of the library. Out: a checked
//! [`Gym`], or every fault with the path of the value at fault. A gym of one plate or without a band is
//! no fault: the search then says what can be built of it.

use crate::error::{Error, Fault, Result};
use crate::resistance::{Anchor, Band, Chain, Leader, Stock};
use crate::source::Source;
use crate::units::{Length, Mass};
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};

/// More pieces of one kind than this are a slip of the pen. Assumed: no gym has them.
const MOST_OF_A_KIND: u32 = 10_000;

/// Most different kinds of plate, band or chain that are searched. Assumed: far beyond any gym.
const MOST_KINDS: usize = 60;

/// A gym file.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(rename = "Gym", deny_unknown_fields)]
pub struct GymFile {
    /// What a person calls it.
    pub title: String,
    /// Whether it is made up to show the tool.
    #[serde(default)]
    pub invented: bool,
    /// Its bars.
    #[serde(default)]
    pub bars: Vec<BarRecord>,
    /// Its plates.
    #[serde(default)]
    pub plates: Vec<PlateRecord>,
    /// Mass of one collar of the pair; left out where none is used.
    #[serde(default)]
    pub collars: Option<Mass>,
    /// Smallest step of the load that one cares to make; left out, every load counts.
    #[serde(default)]
    pub smallest_step: Option<Mass>,
    /// Dumb-bells that stand there in pairs: the mass of one.
    #[serde(default)]
    pub dumbbells: Vec<Mass>,
    /// The weight stack of its machines.
    #[serde(default)]
    pub stack: Option<StackRecord>,
    /// The empty sled of its leg press, with the friction of its rails.
    #[serde(default)]
    pub sled: Option<SledRecord>,
    /// Whether there is a belt for hanging plates from.
    #[serde(default)]
    pub belt: bool,
    /// Its bands.
    #[serde(default)]
    pub bands: Vec<BandRecord>,
    /// Its chains.
    #[serde(default)]
    pub chains: Vec<ChainRecord>,
    /// Where bands can be tied; left out, only the floor.
    #[serde(default = "floor")]
    pub anchors: BTreeMap<String, Anchor>,
    /// Where the list comes from.
    #[serde(default = "unnamed")]
    pub source: Source,
}

fn floor() -> BTreeMap<String, Anchor> {
    BTreeMap::from([("floor".to_owned(), Anchor::FLOOR)])
}

fn unnamed() -> Source {
    Source::Assumed("given by the user without a source".to_owned())
}

/// A bar of the gym.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(rename = "GymBar", deny_unknown_fields)]
pub struct BarRecord {
    /// What it is called: "men's bar".
    pub name: String,
    /// Its mass, empty.
    pub mass: Mass,
}

/// Equal plates of the gym.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(rename = "GymPlates", deny_unknown_fields)]
pub struct PlateRecord {
    /// Mass of one.
    pub mass: Mass,
    /// How many there are; an odd one is of no use on a bar.
    pub count: u32,
}

/// A weight stack: from its first plate in equal steps.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(rename = "GymStack", deny_unknown_fields)]
pub struct StackRecord {
    /// Mass of one step.
    pub step: Mass,
    /// The whole stack.
    pub most: Mass,
}

/// A sled on rails.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(rename = "GymSled", deny_unknown_fields)]
pub struct SledRecord {
    /// Mass of the empty sled.
    pub mass: Mass,
    /// Friction force over normal force.
    #[serde(default)]
    pub friction: f64,
}

/// Bands of one kind.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(rename = "GymBands", deny_unknown_fields)]
pub struct BandRecord {
    /// Name in the library, or any name with a band described here.
    pub name: String,
    /// How many there are; an odd one is of no use on a bar.
    pub count: u32,
    /// The band, if it is none of the library.
    #[serde(default)]
    pub band: Option<Band>,
}

/// Chains of one kind.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(rename = "GymChains", deny_unknown_fields)]
pub struct ChainRecord {
    /// Name in the library, or any name with a chain described here.
    pub name: String,
    /// How many there are; an odd one is of no use on a bar.
    pub count: u32,
    /// The chain, if it is none of the library.
    #[serde(default)]
    pub chain: Option<Chain>,
    /// Lengths of the leaders that it can hang from, besides hanging straight from the bar.
    #[serde(default)]
    pub leaders: Vec<Length>,
}

/// A gym with everything looked up and checked.
#[derive(Debug, Clone, PartialEq)]
pub struct Gym {
    /// What a person calls it.
    pub title: String,
    /// Whether it is made up.
    pub invented: bool,
    /// Its bars.
    pub bars: Vec<BarRecord>,
    /// Its plates.
    pub plates: Vec<PlateRecord>,
    /// One collar of the pair.
    pub collars: Option<Mass>,
    /// Smallest step of the load.
    pub smallest_step: Option<Mass>,
    /// Dumb-bells in pairs.
    pub dumbbells: Vec<Mass>,
    /// Weight stack.
    pub stack: Option<StackRecord>,
    /// Sled on rails.
    pub sled: Option<SledRecord>,
    /// Whether there is a belt.
    pub belt: bool,
    /// Bands with how many there are.
    pub bands: Vec<(Band, u32)>,
    /// Chains with how many there are and on which leaders, the bare chain first.
    pub chains: Vec<(Vec<Chain>, u32)>,
    /// Anchors by name.
    pub anchors: BTreeMap<String, Anchor>,
}

/// What is wrong in a gym file, by the path of the value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GymFault {
    /// Path of the value: `bands.2.name`.
    pub path: String,
    /// What is wrong with it, reading on from the path.
    pub message: String,
    /// The next move; may be empty.
    pub hint: String,
}

fn fault(path: String, message: impl Into<String>, hint: impl Into<String>) -> GymFault {
    GymFault {
        path,
        message: message.into(),
        hint: hint.into(),
    }
}

impl GymFile {
    /// Everything that is wrong in the file, in its order.
    #[must_use]
    pub fn faults(&self, stock: &Stock) -> Vec<GymFault> {
        let mut faults = self.equipment_faults();
        faults.extend(self.plate_faults());
        let bands = self.bands.iter().enumerate().map(|(index, record)| {
            (
                index,
                record.name.as_str(),
                record.count,
                record.band.is_some(),
            )
        });
        faults.extend(piece_faults(
            "bands",
            bands,
            &stock.bands.keys().collect::<Vec<_>>(),
        ));
        let chains = self.chains.iter().enumerate().map(|(index, record)| {
            (
                index,
                record.name.as_str(),
                record.count,
                record.chain.is_some(),
            )
        });
        faults.extend(piece_faults(
            "chains",
            chains,
            &stock.chains.keys().collect::<Vec<_>>(),
        ));
        for (index, record) in self.chains.iter().enumerate() {
            for (place, leader) in record.leaders.iter().enumerate() {
                if !(0.0..=5.0).contains(&leader.as_m()) {
                    faults.push(fault(
                        format!("chains.{index}.leaders.{place}"),
                        format!("is {} m; a leader is 0 m to 5 m long", leader.as_m()),
                        "",
                    ));
                }
            }
        }
        if self.is_empty() {
            faults.push(fault(
                String::new(),
                "this gym owns nothing to load a lift with",
                "list at least a bar: bars: [(name: \"bar\", mass: \"20 kg\")]",
            ));
        }
        faults
    }

    fn is_empty(&self) -> bool {
        self.bars.is_empty()
            && self.plates.is_empty()
            && self.dumbbells.is_empty()
            && self.bands.is_empty()
            && self.chains.is_empty()
            && self.stack.is_none()
            && self.sled.is_none()
    }

    fn equipment_faults(&self) -> Vec<GymFault> {
        let mut faults = Vec::new();
        let mut named = BTreeSet::new();
        for (index, bar) in self.bars.iter().enumerate() {
            if !named.insert(&bar.name) {
                faults.push(twice(format!("bars.{index}.name"), &bar.name));
            }
            faults.extend(odd_mass(format!("bars.{index}.mass"), bar.mass, 1.0, 100.0));
        }
        for (index, mass) in self.dumbbells.iter().enumerate() {
            faults.extend(odd_mass(format!("dumbbells.{index}"), *mass, 0.1, 200.0));
        }
        if let Some(collar) = self.collars {
            faults.extend(odd_mass("collars".to_owned(), collar, 0.0, 10.0));
        }
        if let Some(step) = self.smallest_step {
            faults.extend(odd_mass("smallest_step".to_owned(), step, 0.01, 50.0));
        }
        if let Some(stack) = self.stack {
            faults.extend(odd_mass("stack.step".to_owned(), stack.step, 0.1, 50.0));
            let least = stack.step.as_kg();
            faults.extend(odd_mass("stack.most".to_owned(), stack.most, least, 500.0));
        }
        if let Some(sled) = self.sled {
            faults.extend(odd_mass("sled.mass".to_owned(), sled.mass, 1.0, 300.0));
            if !(0.0..=1.0).contains(&sled.friction) {
                let message = format!("is {}; it must lie between 0 and 1", sled.friction);
                faults.push(fault("sled.friction".to_owned(), message, ""));
            }
        }
        faults
    }

    fn plate_faults(&self) -> Vec<GymFault> {
        let mut faults = Vec::new();
        let mut masses = BTreeSet::new();
        for (index, plate) in self.plates.iter().enumerate() {
            let path = |field: &str| format!("plates.{index}.{field}");
            faults.extend(odd_mass(path("mass"), plate.mass, 0.05, 200.0));
            if !masses.insert(plate.mass.as_kg().to_bits()) {
                let message = "is listed twice";
                faults.push(fault(
                    path("mass"),
                    message,
                    "add the counts up in one line",
                ));
            }
            faults.extend(odd_count(path("count"), plate.count));
        }
        for (name, many) in [
            ("plates", self.plates.len()),
            ("bands", self.bands.len()),
            ("chains", self.chains.len()),
            ("bars", self.bars.len()),
            ("dumbbells", self.dumbbells.len()),
            ("anchors", self.anchors.len()),
        ] {
            if many > MOST_KINDS {
                let message = format!("has {many} kinds; at most {MOST_KINDS} are searched");
                faults.push(fault(
                    name.to_owned(),
                    message,
                    "leave out what is never used",
                ));
            }
        }
        faults
    }

    /// The gym with its bands and chains looked up.
    ///
    /// **Fails** with every fault of [`GymFile::faults`].
    pub fn resolve(&self, stock: &Stock) -> Result<Gym> {
        let faults = self.faults(stock);
        if !faults.is_empty() {
            return Err(Error::bad_input(faults.into_iter().map(in_words).collect()));
        }
        let bands = self.bands.iter().filter_map(|record| {
            let band = record
                .band
                .as_ref()
                .or_else(|| stock.bands.get(&record.name));
            Some((band?.clone(), record.count))
        });
        let chains = self
            .chains
            .iter()
            .map(|record| Ok((hangings(record, stock)?, record.count)))
            .collect::<Result<Vec<_>>>()?;
        Ok(Gym {
            title: self.title.clone(),
            invented: self.invented,
            bars: self.bars.clone(),
            plates: self.plates.clone(),
            collars: self.collars,
            smallest_step: self.smallest_step,
            dumbbells: self.dumbbells.clone(),
            stack: self.stack,
            sled: self.sled,
            belt: self.belt,
            bands: bands.collect(),
            chains,
            anchors: self.anchors.clone(),
        })
    }
}

/// The chain bare, then on each of its leaders.
fn hangings(record: &ChainRecord, stock: &Stock) -> Result<Vec<Chain>> {
    let Some(chain) = record
        .chain
        .as_ref()
        .or_else(|| stock.chains.get(&record.name))
    else {
        return Ok(Vec::new());
    };
    let mut all = vec![chain.clone()];
    for length in record.leaders.iter().filter(|length| length.as_m() > 0.0) {
        let leader = Leader {
            length: *length,
            mass: chain.leader().mass,
        };
        all.push(chain.clone().with_leader(leader).map_err(Error::bad)?);
    }
    Ok(all)
}

fn in_words(fault: GymFault) -> Fault {
    let message = if fault.path.is_empty() {
        fault.message
    } else {
        format!("`{}` {}", fault.path, fault.message)
    };
    let said = Fault::new(message);
    if fault.hint.is_empty() {
        said
    } else {
        said.hint(fault.hint)
    }
}

fn twice(path: String, name: &str) -> GymFault {
    let message = format!("`{name}` is listed twice");
    fault(
        path,
        message,
        "give each its own name, or add the counts up in one line",
    )
}

fn odd_mass(path: String, mass: Mass, least_kg: f64, most_kg: f64) -> Option<GymFault> {
    let kg = mass.as_kg();
    (!(least_kg..=most_kg).contains(&kg)).then(|| {
        let kg = crate::units::rounded(kg, 3);
        let message = format!("is {kg} kg; it must lie between {least_kg} kg and {most_kg} kg");
        fault(path, message, "")
    })
}

fn odd_count(path: String, count: u32) -> Option<GymFault> {
    (count > MOST_OF_A_KIND).then(|| {
        let message =
            format!("is {count}; at most {MOST_OF_A_KIND} pieces of a kind are taken for real");
        fault(path, message, "")
    })
}

/// Faults of bands or chains: a name twice, a name that leads nowhere, an absurd count.
fn piece_faults<'a>(
    list: &str,
    records: impl Iterator<Item = (usize, &'a str, u32, bool)>,
    known: &[&String],
) -> Vec<GymFault> {
    let mut faults = Vec::new();
    let mut named = BTreeSet::new();
    for (index, name, count, is_described) in records {
        let path = |field: &str| format!("{list}.{index}.{field}");
        if !named.insert(name) {
            faults.push(twice(path("name"), name));
        } else if !is_described && !known.iter().any(|other| *other == name) {
            let message = format!("is `{name}`, and the library has nothing of that name");
            faults.push(fault(path("name"), message, nearest(name, known)));
        }
        faults.extend(odd_count(path("count"), count));
    }
    faults
}

/// The nearest known name as a hint, else all of them.
fn nearest(name: &str, known: &[&String]) -> String {
    let near = known
        .iter()
        .map(|other| (strsim::damerau_levenshtein(name, other), other.as_str()))
        .min()
        .filter(|(distance, _)| *distance <= 1 + name.len() / 3);
    match near {
        Some((_, other)) => format!("did you mean `{other}`?"),
        None => {
            let all: Vec<&str> = known.iter().map(|other| other.as_str()).collect();
            format!("known are {}; or describe it here", all.join(", "))
        }
    }
}
