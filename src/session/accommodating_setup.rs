//! A band or chain setup as a session needs it.
//!
//! In: what was picked of a gym, or named. Out: [`AccommodatingSetup`], plain data.

use crate::resistance::{Anchor, Item};
use crate::setups::{BandFailure, Loading};
use crate::units::{Length, Mass};
use std::collections::BTreeMap;

/// A band or chain setup as picked, with what it does.
#[derive(Debug, Clone, PartialEq)]
pub struct AccommodatingSetup {
    /// Bands and chains beside the plain load.
    pub hung: Vec<Item>,
    /// The gym's own names of its anchors, where the setup was picked of a gym.
    pub anchors: Option<BTreeMap<String, Anchor>>,
    /// Bar and plates alone.
    pub bar_and_plates: Loading,
    /// Load at the bottom, bands or chains included, as a mass.
    pub bottom: Mass,
    /// Load in the middle.
    pub middle: Mass,
    /// Load at the top.
    pub top: Mass,
    /// What is left when bands give way; nothing without bands.
    pub failure: Option<BandFailure>,
    /// Height of the gym's safety arms for this lift, where it has some that fit.
    pub arms: Option<Length>,
    /// Largest effort over the range: how hard its hardest point is for one repetition.
    pub max_effort: f64,
    /// How much it evens out effort over the range, %, if known.
    pub flattening_percent: Option<f64>,
    /// Plain weight with the same effort at its hardest point, where the gym can load it.
    pub plain: Option<Mass>,
}
