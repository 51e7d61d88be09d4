//! One plain load: how heavy it is and what a person puts together for it.
//!
//! In: bar, plates, dumb-bell, stack, sled or belt. Out: a [`Loading`], and its items for a setup.

use crate::error::PlainLoad;
use crate::resistance::{Assistance, Item, Sled, Weight};
use crate::units::Mass;

/// Plates from which a bar on the floor lies at its usual height: those of full size (common practice).
pub const FULL_SIZE_KG: f64 = 20.0;

/// One load and how to make it.
#[derive(Debug, Clone, PartialEq)]
pub struct Loading {
    /// The whole load: bar and collars included, both sides together; one hand's for dumb-bells.
    pub total: Mass,
    /// What is loaded.
    pub on: LoadedOn,
    /// Mass of a plate and how many of it, the heaviest first: a side of a bar or sled, all of a belt.
    pub discs: Vec<(Mass, u32)>,
    /// How many plates these are.
    pub plates: u32,
    /// What it is loaded for.
    pub use_for: LoadUse,
}

/// What a load is made for: an empty bar needs its collars only where bands or chains hang on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LoadUse {
    /// With or without bands and chains.
    Any,
    /// Without bands and chains: an empty bar without collars, a counterweight.
    Plain,
    /// With bands or chains: an empty bar with collars.
    Pieces,
}

/// What plates are put on, or what is a load by itself.
#[derive(Debug, Clone, PartialEq)]
pub enum LoadedOn {
    /// A bar of the gym.
    Bar {
        /// What it is called.
        name: String,
        /// Its mass, empty.
        mass: Mass,
        /// Mass of one collar of the pair, where some are used.
        collar: Option<Mass>,
    },
    /// A dumb-bell in each hand.
    Dumbbell,
    /// A kettlebell in each hand.
    Kettlebell,
    /// A bar that both hands hold; the load is that of one hand.
    CurlBar {
        /// What it is called.
        name: String,
        /// Its mass, empty.
        mass: Mass,
        /// Mass of one collar of the pair, where some are used.
        collar: Option<Mass>,
    },
    /// The weight stack of a machine.
    Stack,
    /// A sled on rails.
    Sled(Sled),
    /// A belt with plates.
    Belt,
    /// The body alone.
    Body,
    /// The body with a counterweight on a machine's stack: the load is what the stack takes away, below zero.
    Counterweight,
}

impl Loading {
    /// A load without plates.
    #[must_use]
    pub fn of_one_piece(total: Mass, on: LoadedOn) -> Self {
        Self {
            total,
            on,
            discs: Vec::new(),
            plates: 0,
            use_for: LoadUse::Any,
        }
    }

    /// Whether its heaviest plates are of full size, so that a bar on the floor lies at its usual height; 45 lb plates
    /// are too.
    #[must_use]
    pub fn has_full_size(&self) -> bool {
        let heaviest = self.discs.first().map_or(0.0, |disc| disc.0.as_kg());
        heaviest >= FULL_SIZE_KG
    }

    /// A bar's load as that of one hand of the two that hold it.
    #[must_use]
    pub fn halved(self) -> Self {
        let on = match self.on {
            LoadedOn::Bar { name, mass, collar } => LoadedOn::CurlBar { name, mass, collar },
            other => other,
        };
        Self {
            total: self.total * 0.5,
            on,
            ..self
        }
    }

    /// The load as items of a setup.
    #[must_use]
    pub fn items(&self) -> Vec<Item> {
        let discs = self.discs.iter().map(|(each, pairs)| {
            Item::Weight(Weight::Plates {
                each: *each,
                pairs: *pairs,
            })
        });
        match &self.on {
            LoadedOn::Bar { mass, collar, .. } => {
                let collars = collar.map(|each| Item::Weight(Weight::Collars { each }));
                let bar = Item::Weight(Weight::Bar(*mass));
                [bar].into_iter().chain(collars).chain(discs).collect()
            }
            LoadedOn::Sled(sled) => [Item::Sled(*sled)].into_iter().chain(discs).collect(),
            LoadedOn::Dumbbell | LoadedOn::Kettlebell | LoadedOn::CurlBar { .. } => {
                vec![Item::Weight(Weight::Dumbbell(self.total))]
            }
            LoadedOn::Stack => vec![Item::Weight(Weight::Load(self.total))],
            LoadedOn::Belt => vec![Item::Weight(Weight::Belt(self.total))],
            LoadedOn::Body => Vec::new(),
            LoadedOn::Counterweight => {
                let help = Mass::ZERO - self.total;
                vec![Item::Assistance(Assistance::Counterweight(help))]
            }
        }
    }
}

impl From<&Loading> for PlainLoad {
    fn from(loading: &Loading) -> Self {
        let discs = loading.discs.clone();
        match &loading.on {
            LoadedOn::Bar { name, mass, collar } => Self::Bar {
                name: name.clone(),
                mass: *mass,
                collar: *collar,
                discs,
            },
            LoadedOn::Dumbbell => Self::Dumbbell(loading.total),
            LoadedOn::Kettlebell => Self::Kettlebell(loading.total),
            LoadedOn::CurlBar { name, mass, collar } => Self::CurlBar {
                name: name.clone(),
                mass: *mass,
                collar: *collar,
                discs,
            },
            LoadedOn::Stack => Self::Stack(loading.total),
            LoadedOn::Sled(sled) => Self::Sled {
                mass: sled.mass(),
                discs,
            },
            LoadedOn::Belt => Self::Belt { discs },
            LoadedOn::Body => Self::Body,
            LoadedOn::Counterweight => Self::Counterweight(Mass::ZERO - loading.total),
        }
    }
}
