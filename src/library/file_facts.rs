//! What a sound model file holds, as facts that `torquill check` shows.
//!
//! In: checked records. Out: [`FileFacts`], one variant a kind of file.

use crate::anatomy::{Curves, LifterRecord, MuscleTable, Sarcomere, SegmentTable, groups};
use crate::grammar::SetupFile;
use crate::movement::Movement;
use crate::resistance::{Band, Chain, Hang};
use crate::setups::GymFile;
use crate::source::Source;
use crate::units::{Force, Length, Mass};

/// What a sound model file holds.
#[derive(Debug, Clone, PartialEq)]
pub enum FileFacts {
    /// A lifter.
    Lifter(LifterFacts),
    /// A segment table.
    Segments(SegmentFacts),
    /// A muscle table.
    Muscles(MuscleFacts),
    /// Fibre curves, and where the active, the passive and that over velocity come from.
    Curves([Source; 3]),
    /// A sarcomere.
    Sarcomere(SarcomereFacts),
    /// A movement.
    Movement(MovementFacts),
    /// A band.
    Band(BandFacts),
    /// A chain.
    Chain(ChainFacts),
    /// A setup.
    Setup(SetupFacts),
    /// A gym.
    Gym(GymFacts),
    /// A published table, and how many rows it has.
    Published(usize),
    /// The list of publications, and how many it has.
    Publications(usize),
    /// The table of bounds.
    Bounds,
    /// Priors, targets or answer of the calibration.
    Calibration,
}

/// What a sound file of a lifter holds.
#[derive(Debug, Clone, PartialEq)]
pub struct LifterFacts {
    /// Title.
    pub title: String,
    /// Standing height.
    pub height: Length,
    /// Body mass.
    pub body_mass: Mass,
    /// Segment table, muscle table, curves.
    pub tables: [String; 3],
    /// Number of strength groups with a factor.
    pub strengths: usize,
    /// Lengths of the segments at this height.
    pub lengths: Vec<(&'static str, Length)>,
}

/// What a sound file of a segment table holds.
#[derive(Debug, Clone, PartialEq)]
pub struct SegmentFacts {
    /// Mean height of the sample.
    pub height: Length,
    /// Mean mass of the sample.
    pub mass: Mass,
    /// The segments and their lengths in the sample.
    pub segments: Vec<(&'static str, Length)>,
    /// Where masses and centres come from.
    pub source: Source,
    /// Where the lengths come from.
    pub length_source: Source,
}

/// What a sound file of a muscle table holds.
#[derive(Debug, Clone, PartialEq)]
pub struct MuscleFacts {
    /// The body it was made for.
    pub body: String,
    /// Number of muscles.
    pub muscles: usize,
    /// Strength groups.
    pub groups: Vec<String>,
}

/// What a sound file of a sarcomere holds.
#[derive(Debug, Clone, PartialEq)]
pub struct SarcomereFacts {
    /// The species.
    pub species: String,
    /// Optimal length, µm.
    pub optimum_um: f64,
    /// Where the lengths come from.
    pub source: Source,
}

/// What a sound file of a movement holds.
#[derive(Debug, Clone, PartialEq)]
pub struct MovementFacts {
    /// Title.
    pub title: String,
    /// Technique parameters.
    pub technique: Vec<String>,
    /// What the model leaves out, as the file says.
    pub limits: String,
}

/// What a sound file of a band holds.
#[derive(Debug, Clone, PartialEq)]
pub struct BandFacts {
    /// Name.
    pub name: String,
    /// Rest length.
    pub rest_length: Length,
    /// Pull at 1.5 and 2 times the rest length.
    pub pulls: [Force; 2],
    /// Where the law comes from.
    pub source: Source,
}

/// What a sound file of a chain holds.
#[derive(Debug, Clone, PartialEq)]
pub struct ChainFacts {
    /// Name.
    pub name: String,
    /// Length.
    pub length: Length,
    /// Mass.
    pub mass: Mass,
    /// Where they come from.
    pub source: Source,
}

/// What a sound file of a setup holds.
#[derive(Debug, Clone, PartialEq)]
pub struct SetupFacts {
    /// Name.
    pub name: String,
    /// Number of items.
    pub items: usize,
}

/// What a sound file of a gym holds.
#[derive(Debug, Clone, PartialEq)]
pub struct GymFacts {
    /// Title.
    pub title: String,
    /// Kinds of bar.
    pub bars: usize,
    /// Plates.
    pub plates: u32,
    /// Bands.
    pub bands: u32,
    /// Chains.
    pub chains: u32,
    /// Names of the anchors.
    pub anchors: Vec<String>,
}

pub(super) fn lifter(record: &LifterRecord, lengths: Vec<(&'static str, Length)>) -> FileFacts {
    FileFacts::Lifter(LifterFacts {
        title: record.title.clone(),
        height: record.height,
        body_mass: record.body_mass,
        tables: [
            record.segments.clone(),
            record.muscles.clone(),
            record.curves.clone(),
        ],
        strengths: record.strength.len(),
        lengths,
    })
}

pub(super) fn segments(table: &SegmentTable) -> FileFacts {
    FileFacts::Segments(SegmentFacts {
        height: table.sample_height,
        mass: table.sample_mass,
        segments: table
            .rows
            .iter()
            .map(|(name, row)| (name.name(), row.length))
            .collect(),
        source: table.source.clone(),
        length_source: table.length_source.clone(),
    })
}

pub(super) fn muscles(table: &MuscleTable) -> FileFacts {
    FileFacts::Muscles(MuscleFacts {
        body: table.body.clone(),
        muscles: table.muscles.len(),
        groups: groups(table),
    })
}

pub(super) fn curves(curves: &Curves) -> FileFacts {
    FileFacts::Curves([
        curves.active_source.clone(),
        curves.passive_source.clone(),
        curves.velocity_source.clone(),
    ])
}

pub(super) fn sarcomere(sarcomere: &Sarcomere) -> FileFacts {
    FileFacts::Sarcomere(SarcomereFacts {
        species: sarcomere.species.clone(),
        optimum_um: sarcomere.optimum_um(),
        source: sarcomere.source.clone(),
    })
}

pub(super) fn movement(movement: &Movement) -> FileFacts {
    FileFacts::Movement(MovementFacts {
        title: movement.title.clone(),
        technique: movement.technique.keys().cloned().collect(),
        limits: movement.limits.clone(),
    })
}

pub(super) fn band(band: &Band) -> FileFacts {
    let rest_m = band.rest_length().as_m();
    let pull = |stretch: f64| Force::from_n(band.force_n(stretch * rest_m, Hang::Single));
    FileFacts::Band(BandFacts {
        name: band.name().to_owned(),
        rest_length: band.rest_length(),
        pulls: [pull(1.5), pull(2.0)],
        source: band.source().clone(),
    })
}

pub(super) fn chain(chain: &Chain) -> FileFacts {
    FileFacts::Chain(ChainFacts {
        name: chain.name().to_owned(),
        length: chain.length(),
        mass: chain.mass(),
        source: chain.source().clone(),
    })
}

pub(super) fn setup(setup: &SetupFile) -> FileFacts {
    FileFacts::Setup(SetupFacts {
        name: setup.name.clone(),
        items: setup.items.len(),
    })
}

pub(super) fn gym(gym: &GymFile) -> FileFacts {
    FileFacts::Gym(GymFacts {
        title: gym.title.clone(),
        bars: gym.bars.len(),
        plates: gym.plates.iter().map(|plates| plates.count).sum(),
        bands: gym.bands.iter().map(|bands| bands.count).sum(),
        chains: gym.chains.iter().map(|chains| chains.count).sum(),
        anchors: gym.anchors.keys().cloned().collect(),
    })
}
