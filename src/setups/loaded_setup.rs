//! A setup that a gym can build, as a coach loads it.
//!
//! In: the exact calculation. Out: plain data.

use super::band_failure::BandFailure;
use super::loading::Loading;
use super::setup_family::SetupFamily;
use crate::resistance::Setup;
use crate::units::Mass;

/// A setup that the gym can build, with its loads.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadedSetup {
    /// The setup as it is loaded.
    pub setup: Setup,
    /// The plain load: bar, collars, plates.
    pub loading: Loading,
    /// The plain load that would make the hardest place exactly the wished effort.
    pub exact_mass: Mass,
    /// Flattening against plain weight with that exact load, %: what setups are compared by.
    pub flattening_percent: f64,
    /// Load at start, middle and end of the range.
    pub loads: [Mass; 3],
    /// Lowest and highest load at the end when bands of one label differ as measured.
    pub end_range: [Mass; 2],
    /// Mean load over the range.
    pub mean_load: Mass,
    /// Share of bands and chains at start or end: of the load what they add, of the weight what they take.
    pub share: f64,
    /// The same share at the place that the wish names, as it is loaded.
    pub share_at_goal: f64,
    /// Plates, bands and chains a side.
    pub pieces: u32,
    /// Bands and chains a side.
    pub hung: u32,
    /// What kind of setup it is.
    pub family: SetupFamily,
    /// What is left when its bands give way; nothing without bands.
    pub failure: Option<BandFailure>,
    /// How many steps of load it falls short of the wished effort, because the gym has no load between.
    pub missing_steps: u32,
    /// What it is ranked by; smaller is better.
    pub score: f64,
}
