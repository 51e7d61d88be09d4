//! A setup as a RON file writes it, names of bands and chains included.
//!
//! In: the record read from the file, and what the names stand for. Out: a checked [`Setup`].

use super::named_pieces::Stock;
use super::piece_texts::{band_from_text, chain_from_text};
use crate::bounds::bounds;
use crate::error::{Error, Fault, GrammarFault, PieceTextFault, Result, What};
use crate::resistance::{
    Assistance, Band, Cable, Cam, Chain, ChainHang, EccentricOnly, Hang, HangingSide, HungBand,
    HungChain, Item, Leader, LeverMachine, Setup, Sled, Weight,
};
use crate::units::Length;
use serde::Deserialize;

/// A setup file: a name and its items.
///
/// ```
/// use std::collections::BTreeMap;
/// use torquill::grammar::{SetupFile, Stock};
/// let text = r#"Setup(
///     name: "bench with help",
///     items: [
///         Weight(Bar("20 kg")),
///         Weight(Plates(each: "20 kg", pairs: 2)),
///         Cable((stack: "10 kg", ratio: 2.0, lead: Pulley((height: "220 cm")))),
///         EccentricOnly(Hung("15 kg")),
///         Assistance(Spotter(force: "80 N")),
///     ],
/// )"#;
/// let file: SetupFile = ron::from_str(text).expect("a setup");
/// let (bands, chains, anchors) = (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
/// let setup = file.resolve(&Stock { bands: &bands, chains: &chains, anchors: &anchors })?;
/// assert_eq!(setup.items.len(), 5);
/// # Ok::<(), torquill::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(rename = "Setup", deny_unknown_fields)]
pub struct SetupFile {
    /// What the setup is called.
    #[serde(default)]
    pub name: String,
    /// Its items.
    pub items: Vec<ItemRecord>,
}

/// One item of a setup file.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(rename = "Item", deny_unknown_fields)]
pub enum ItemRecord {
    /// Plain weight: `Weight(Bar("20 kg"))`.
    Weight(Weight),
    /// A band of the library or the gym, as on the command line: `Band("loop-29mm:1@floor,doubled")`.
    Band(String),
    /// A band described here.
    OwnBand {
        /// The band.
        band: Band,
        /// How many a side.
        #[serde(default = "one")]
        count: u32,
        /// On which side.
        #[serde(default)]
        side: HangingSide,
        /// Where the other end is tied, as on the command line.
        #[serde(default = "floor")]
        anchor: String,
        /// Single, doubled, choked.
        #[serde(default)]
        hang: Hang,
    },
    /// A chain of the library or the gym, as on the command line: `Chain("chain-10mm:2,leader 40 cm")`.
    Chain(String),
    /// A chain described here.
    OwnChain {
        /// The chain.
        chain: Chain,
        /// How many a side.
        #[serde(default = "one")]
        count: u32,
        /// On which side.
        #[serde(default)]
        side: HangingSide,
        /// Straight or double-looped.
        #[serde(default)]
        hang: ChainHang,
        /// What it hangs from.
        #[serde(default)]
        leader: Leader,
        /// Height of the box under it.
        #[serde(default)]
        floor: Length,
    },
    /// A stack on a cable.
    Cable(Cable),
    /// The cam of a machine.
    Cam(Cam),
    /// Plates on a turning arm.
    Lever(LeverMachine),
    /// A sled on rails.
    Sled(Sled),
    /// Load of the lowering phase: `EccentricOnly(Hung("20 kg"))`.
    EccentricOnly(EccentricOnly),
    /// Help: `Assistance(Spotter(force: "150 N"))`.
    Assistance(Assistance),
}

fn one() -> u32 {
    1
}

fn floor() -> String {
    "floor".to_owned()
}

impl SetupFile {
    /// Looks names up and checks every item.
    ///
    /// **Fails** without an item, and with one fault for each that names something unknown or impossible, told by its
    /// place in the list.
    pub fn resolve(&self, stock: &Stock) -> Result<Setup> {
        if self.items.is_empty() {
            return Err(Error::bad(GrammarFault::<What>::NoItems));
        }
        let mut items = Vec::with_capacity(self.items.len());
        let mut faults: Vec<Fault> = Vec::new();
        for (index, record) in self.items.iter().enumerate() {
            match record.resolve(stock) {
                Ok(item) => items.push(item),
                Err(error) => {
                    let error = error.inside(|fault| GrammarFault::InItem { index, fault }.into());
                    faults.extend(error.faults().iter().cloned());
                }
            }
        }
        if faults.is_empty() {
            let setup = Setup::new(self.name.clone(), items);
            setup.accepted().map_err(Error::bad)
        } else {
            Err(Error::bad_input(faults))
        }
    }
}

impl ItemRecord {
    /// A band or a chain that is described here.
    fn own_piece(&self, stock: &Stock) -> Result<Item> {
        match self {
            Self::OwnBand {
                band,
                count,
                side,
                anchor,
                hang,
            } => Ok(Item::Band(HungBand {
                band: band.clone(),
                count: checked_count(*count)?,
                side: *side,
                anchor: stock.anchor(anchor)?,
                hang: *hang,
            })),
            Self::OwnChain {
                chain,
                count,
                side,
                hang,
                leader,
                floor,
            } => Ok(Item::Chain(HungChain {
                chain: if *leader == Leader::default() {
                    chain.clone()
                } else {
                    chain.clone().with_leader(*leader).map_err(Error::bad)?
                },
                count: checked_count(*count)?,
                side: *side,
                hang: *hang,
                floor: *floor,
            })),
            other => other.resolve(stock),
        }
    }

    /// The item, names looked up.
    ///
    /// **Fails** where it names something unknown or impossible.
    pub fn resolve(&self, stock: &Stock) -> Result<Item> {
        let item = match self {
            Self::Weight(weight) => Item::Weight(*weight),
            Self::Band(text) => Item::Band(band_from_text(text, stock)?),
            Self::Chain(text) => Item::Chain(chain_from_text(text, stock)?),
            Self::OwnBand { .. } | Self::OwnChain { .. } => self.own_piece(stock)?,
            Self::Cable(cable) => Item::Cable(*cable),
            Self::Cam(cam) => Item::Cam(cam.clone()),
            Self::Lever(lever) => Item::Lever(*lever),
            Self::Sled(sled) => Item::Sled(*sled),
            Self::EccentricOnly(extra) => Item::EccentricOnly(extra.checked().map_err(Error::bad)?),
            Self::Assistance(help) => Item::Assistance(help.checked().map_err(Error::bad)?),
        };
        item.accepted().map_err(Error::bad)
    }
}

fn checked_count(count: u32) -> Result<u32> {
    if bounds().pieces.holds(f64::from(count)) {
        return Ok(count);
    }
    Err(Error::bad(PieceTextFault::CountOutside {
        count,
        most: bounds().pieces.most_of_them() as u32,
    }))
}
