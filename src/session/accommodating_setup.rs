//! A band or chain setup as a session needs it.
//!
//! In: what was picked of a gym, or named. Out: [`AccommodatingSetup`], plain data.

use super::strength::Strength;
use crate::resistance::{Anchor, Item};
use crate::setups::{BandFailure, Loading, Loadings};
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

impl AccommodatingSetup {
    /// The same bands or chains with fewer plates, so that the hardest place asks for no more than `effort`; as it is where
    /// that is no less, or nothing so light can be loaded.
    ///
    /// ```text
    /// plates' = plates − (as hard + body) · (1 − effort / effort of the whole)
    /// ```
    /// `as hard` is the plain load of the same effort. **Shape.** Linear in the effort; every load of the range falls by the
    /// plates that are gone. Assumes that the place that is hardest stays the hardest.
    #[must_use]
    pub fn eased_to(&self, effort: f64, strength: &Strength, loadings: &Loadings) -> Self {
        let whole = self.as_hard(strength) + strength.body;
        let off = whole * (1.0 - effort / self.max_effort);
        let wanted = self.bar_and_plates.total - off;
        let loaded = loadings.at_most_beside_pieces(wanted);
        let Some(bar_and_plates) = loaded.ok().filter(|_| off.as_kg() > 0.0) else {
            return self.clone();
        };
        let off = self.bar_and_plates.total - bar_and_plates.total;
        let less = |load: Mass| Mass::from_kg((load - off).as_kg().max(0.0));
        let plain = self.plain.map(less);
        Self {
            bar_and_plates,
            bottom: less(self.bottom),
            middle: less(self.middle),
            top: less(self.top),
            failure: self.failure.map(|failure| BandFailure {
                after_one: less(failure.after_one),
                after_all: less(failure.after_all),
                on_the_bar: less(failure.on_the_bar),
                ..failure
            }),
            max_effort: self.max_effort * (1.0 - off.as_kg() / whole.as_kg()),
            flattening_percent: None,
            plain: plain.and_then(|plain| loadings.at_most(plain).ok().map(|load| load.total)),
            ..self.clone()
        }
    }

    /// The plain load of the same effort at its hardest place, whether or not it can be loaded.
    #[must_use]
    pub fn as_hard(&self, strength: &Strength) -> Mass {
        self.plain
            .unwrap_or_else(|| strength.load_at(self.max_effort))
    }
}
