//! A gym with everything looked up and checked.
//!
//! In: the record of a gym file, the bands and chains of the library. Out: a [`Gym`], or everything that is wrong
//! in the record.

use super::gym_file::{GymArms, GymBar, GymChains, GymFile, GymPlates, GymSled, GymStack};
use super::gym_slips::slips;
use crate::error::{Error, Fault, GymFault, Result};
use crate::grammar::Stock;
use crate::resistance::{Anchor, Band, Chain, Leader};
use crate::units::Mass;
use std::collections::BTreeMap;

/// A gym with everything looked up and checked.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Gym {
    /// What a person calls it.
    pub title: String,
    /// Whether it is made up.
    pub invented: bool,
    /// Its bars.
    pub bars: Vec<GymBar>,
    /// Its plates.
    pub plates: Vec<GymPlates>,
    /// One collar of the pair.
    pub collars: Option<Mass>,
    /// Smallest step of the load.
    pub smallest_step: Option<Mass>,
    /// Dumb-bells in pairs.
    pub dumbbells: Vec<Mass>,
    /// Kettlebells in pairs.
    pub kettlebells: Vec<Mass>,
    /// Bars that both hands hold in curls and extensions.
    pub curl_bars: Vec<GymBar>,
    /// Weight stack.
    pub stack: Option<GymStack>,
    /// Sled on rails.
    pub sled: Option<GymSled>,
    /// Whether there is a belt.
    pub belt: bool,
    /// Safety arms of the rack.
    pub safety_arms: Option<GymArms>,
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
    /// **Fails** with everything that [`slips`] finds.
    pub fn resolve(&self, stock: &Stock) -> Result<Gym> {
        let slips = slips(self, stock);
        if !slips.is_empty() {
            let faults = slips
                .into_iter()
                .map(|(path, slip)| Fault::new(GymFault::InFile { path, slip }));
            return Err(Error::bad_input(faults.collect()));
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
            kettlebells: self.kettlebells.clone(),
            curl_bars: self.curl_bars.clone(),
            stack: self.stack,
            sled: self.sled,
            belt: self.belt,
            safety_arms: self.safety_arms,
            bands: bands.collect(),
            chains,
            anchors: self.anchors.clone(),
        })
    }
}

impl Gym {
    /// The gym as a lift can use it: curl bars only where one bar may join the hands.
    #[must_use]
    pub fn for_hands(mut self, bar_joins_hands: bool) -> Self {
        if !bar_joins_hands {
            self.curl_bars.clear();
        }
        self
    }
}

/// The chain bare, then on each of its leaders.
fn hangings(record: &GymChains, stock: &Stock) -> Result<Vec<Chain>> {
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
