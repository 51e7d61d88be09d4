//! What the gym can really be loaded to, and the plates in words.
//!
//! In: a gym and how the movement takes its load, or the usual bar and plates. Out: a [`Loading`] that finds
//! the heaviest load below a wish, the lightest above, the one with the fewest plates; never heavier than
//! what was asked for. The sums of plates are made in [`crate::setups`].

use crate::error::{Error, Result};
use crate::movement::Carrier;
use crate::setups::{BarRecord, Gym, Loadings, PlateRecord};
use crate::units::{Mass, rounded};
use std::collections::BTreeMap;

/// A load that can be set up, and how.
#[derive(Debug, Clone, PartialEq)]
pub struct Loaded {
    /// The whole of it, bar and collars included; one hand's for dumb-bells.
    pub total: Mass,
    /// Plates on one side.
    pub plates: u32,
    /// How to set it up: "bar (20 kg), 25 kg + 10 kg a side".
    pub words: String,
}

/// Every load that a gym can make for a movement, in rising order.
#[derive(Debug, Clone, PartialEq)]
pub struct Loading {
    loads: Vec<Loaded>,
    with_bar: bool,
}

/// Slack for comparing sums of masses: they are exact to far less than a milligram.
const SAME_KG: f64 = 1e-6;

/// Heaviest load that is planned at all; far above any lift (assumed, as a guard).
const HEAVIEST_KG: f64 = 1500.0;

/// The usual plates of a weight room (common practice): mass of one, number of plates.
const METRIC_PLATES_KG: &[(f64, u32)] = &[
    (25.0, 8),
    (20.0, 4),
    (15.0, 2),
    (10.0, 4),
    (5.0, 2),
    (2.5, 2),
    (1.25, 2),
];
/// The same in pounds.
const US_PLATES_LB: &[(f64, u32)] = &[
    (45.0, 10),
    (35.0, 2),
    (25.0, 2),
    (10.0, 4),
    (5.0, 2),
    (2.5, 2),
];

impl Loading {
    /// Every load that a gym makes for a way of taking it.
    ///
    /// **Fails** if the gym has nothing that the movement takes.
    pub fn of(gym: &Gym, carrier: &Carrier) -> Result<Self> {
        let loads = Loadings::of(gym, carrier)?
            .all()
            .iter()
            .map(|load| Loaded {
                total: load.mass,
                plates: load.plates,
                words: load.words.clone(),
            })
            .collect();
        Ok(Self {
            loads,
            with_bar: *carrier == Carrier::Bar,
        })
    }

    /// A 20 kg bar with the usual plates of 25, 20, 15, 10, 5, 2.5 and 1.25 kg.
    ///
    /// **Fails.** Never: the gym has a bar.
    pub fn usual_metric() -> Result<Self> {
        Self::usual(Mass::from_kg(20.0), Mass::from_kg, METRIC_PLATES_KG)
    }

    /// A 45 lb bar with the usual plates of 45, 35, 25, 10, 5 and 2.5 lb.
    ///
    /// **Fails.** Never: the gym has a bar.
    pub fn usual_us() -> Result<Self> {
        Self::usual(Mass::from_lb(45.0), Mass::from_lb, US_PLATES_LB)
    }

    fn usual(bar: Mass, unit: fn(f64) -> Mass, plates: &[(f64, u32)]) -> Result<Self> {
        let plate = |&(mass, count): &(f64, u32)| PlateRecord {
            mass: unit(mass),
            count,
        };
        let gym = Gym {
            title: "the usual bar and plates".to_owned(),
            invented: false,
            bars: vec![BarRecord {
                name: "bar".to_owned(),
                mass: bar,
            }],
            plates: plates.iter().map(plate).collect(),
            collars: None,
            smallest_step: None,
            dumbbells: Vec::new(),
            stack: None,
            sled: None,
            belt: false,
            bands: Vec::new(),
            chains: Vec::new(),
            anchors: BTreeMap::new(),
        };
        Self::of(&gym, &Carrier::Bar)
    }

    /// Whether the load is a bar.
    #[must_use]
    pub fn is_bar(&self) -> bool {
        self.with_bar
    }

    /// The lightest load there is: the empty bar, the first pin, the smallest dumb-bell.
    #[must_use]
    pub fn lightest(&self) -> Mass {
        self.loads.first().map_or(Mass::ZERO, |load| load.total)
    }

    /// The heaviest load that does not exceed `target`.
    ///
    /// **Fails** when even the lightest is heavier, or when the target is no load at all.
    pub fn at_most(&self, target: Mass) -> Result<Loaded> {
        let target_kg = self.checked_target(target)?;
        let above = self
            .loads
            .partition_point(|load| load.total.as_kg() <= target_kg + SAME_KG);
        above
            .checked_sub(1)
            .map(|index| self.loads[index].clone())
            .ok_or_else(|| {
                Error::no_answer(format!(
                    "{} kg cannot be loaded: the lightest is {} kg",
                    rounded(target_kg, 2),
                    rounded(self.lightest().as_kg(), 2)
                ))
                .hint("use a lighter bar, dumb-bells or a machine")
            })
    }

    /// The lightest load from `target` up to `most`.
    #[must_use]
    pub fn at_least(&self, target: Mass, most: Mass) -> Option<Loaded> {
        let target_kg = self.checked_target(target).ok()?;
        let first = self
            .loads
            .partition_point(|load| load.total.as_kg() < target_kg - SAME_KG);
        self.loads
            .get(first)
            .filter(|load| load.total.as_kg() <= most.as_kg() + SAME_KG)
            .cloned()
    }

    /// A load between `least` and `most` that is quick to set up: the fewest plates, the heaviest of those.
    #[must_use]
    pub fn simplest(&self, least: Mass, most: Mass) -> Option<Loaded> {
        let inside = least.as_kg() - SAME_KG..=most.as_kg() + SAME_KG;
        self.loads
            .iter()
            .rev()
            .filter(|load| inside.contains(&load.total.as_kg()))
            .min_by_key(|load| load.plates)
            .cloned()
    }

    /// The load nearest to `target`, the lighter of two equally near, never above `most`.
    ///
    /// **Fails** as [`Loading::at_most`].
    pub fn nearest(&self, target: Mass, most: Mass) -> Result<Loaded> {
        let below = self.at_most(Mass::from_kg(target.as_kg().min(most.as_kg())))?;
        let gap_kg = |load: &Loaded| (load.total.as_kg() - target.as_kg()).abs();
        Ok(match self.at_least(target, most) {
            Some(above) if gap_kg(&above) < gap_kg(&below) - SAME_KG => above,
            _ => below,
        })
    }

    /// The body alone may be the load; elsewhere nothing is none.
    fn checked_target(&self, target: Mass) -> Result<f64> {
        let target_kg = target.as_kg();
        let is_load = target_kg > 0.0 || (target_kg == 0.0 && self.lightest() == Mass::ZERO);
        if !(target_kg.is_finite() && is_load) {
            return Err(Error::bad(format!("{target_kg} kg is no load to lift")));
        }
        if target_kg > HEAVIEST_KG {
            return Err(Error::bad(format!(
                "{target_kg} kg is more than any lift is planned for ({HEAVIEST_KG} kg)"
            )));
        }
        Ok(target_kg)
    }
}
