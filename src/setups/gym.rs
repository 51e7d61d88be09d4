//! What a gym owns: bars, plates, collars, bands, chains, anchors, and what machines it has.
//!
//! In: the record that a gym file holds, and the bands and chains of the library. Out: a checked
//! [`Gym`], or every fault that `gym_faults.rs` finds.

use super::gym_faults::in_words;
use crate::error::{Error, Result};
use crate::grammar::Stock;
use crate::resistance::{Anchor, Band, Chain, Leader};
use crate::source::Source;
use crate::units::{Length, Mass};
use serde::Deserialize;
use std::collections::BTreeMap;

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
#[derive(Debug, Clone, PartialEq, Default)]
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

impl GymFile {
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
