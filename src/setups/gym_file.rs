//! A gym as its file gives it: bars, plates, collars, bands, chains, anchors, machines.
//!
//! In: a gym file. Out: its record, not yet checked.

use crate::resistance::{Anchor, Band, Chain};
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
    pub bars: Vec<GymBar>,
    /// Its plates.
    #[serde(default)]
    pub plates: Vec<GymPlates>,
    /// Mass of one collar of the pair; left out where none is used.
    #[serde(default)]
    pub collars: Option<Mass>,
    /// Smallest step of the load that one cares to make; left out, every load counts.
    #[serde(default)]
    pub smallest_step: Option<Mass>,
    /// Dumb-bells that stand there in pairs: the mass of one.
    #[serde(default)]
    pub dumbbells: Vec<Mass>,
    /// Kettlebells that stand there in pairs: the mass of one.
    #[serde(default)]
    pub kettlebells: Vec<Mass>,
    /// Bars that both hands hold in curls and extensions: short or bent ones; half of the load is one hand's.
    #[serde(default)]
    pub curl_bars: Vec<GymBar>,
    /// The weight stack of its machines.
    #[serde(default)]
    pub stack: Option<GymStack>,
    /// The empty sled of its leg press, with the friction of its rails.
    #[serde(default)]
    pub sled: Option<GymSled>,
    /// Whether there is a belt for hanging plates from.
    #[serde(default)]
    pub belt: bool,
    /// The safety arms of its rack.
    #[serde(default)]
    pub safety_arms: Option<GymArms>,
    /// Its bands.
    #[serde(default)]
    pub bands: Vec<GymBands>,
    /// Its chains.
    #[serde(default)]
    pub chains: Vec<GymChains>,
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
#[serde(deny_unknown_fields)]
pub struct GymBar {
    /// What it is called: "men's bar".
    pub name: String,
    /// Its mass, empty.
    pub mass: Mass,
}

/// Equal plates of the gym.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GymPlates {
    /// Mass of one.
    pub mass: Mass,
    /// How many there are; an odd one is of no use on a bar.
    pub count: u32,
}

/// A weight stack: from its first plate in equal steps.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GymStack {
    /// Mass of one step.
    pub step: Mass,
    /// The whole stack.
    pub most: Mass,
}

/// A sled on rails.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GymSled {
    /// Mass of the empty sled.
    pub mass: Mass,
    /// Friction force over normal force.
    #[serde(default)]
    pub friction: f64,
}

/// Safety arms of a rack: their upper edge above the floor, in equal steps.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GymArms {
    /// The lowest hole.
    pub lowest: Length,
    /// The highest hole.
    pub highest: Length,
    /// From hole to hole.
    pub step: Length,
}

/// Bands of one kind.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GymBands {
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
#[serde(deny_unknown_fields)]
pub struct GymChains {
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
