//! Every plain load that a gym can make for a movement, in rising order, and how one is found among them.
//!
//! In: a gym and how the movement takes its load, or the usual bar and plates. Out: [`Loadings`]: the heaviest
//! load below a wish, the lightest above, the one with the fewest plates.

use super::gym::Gym;
use super::loading::{LoadedOn, Loading};
use super::makeable::{bar_loads, loads_of};
use super::usual_gym::usual_gym;
use crate::bounds::bounds;
use crate::error::{Error, LoadingFault, Result};
use crate::movement::Carrier;
use crate::units::{Mass, System};

/// Slack for comparing sums of masses: they are exact to far less than a milligram.
const SAME_KG: f64 = 1.0e-6;

/// Every load, in rising order.
#[derive(Debug, Clone, PartialEq)]
pub struct Loadings {
    all: Vec<Loading>,
    /// For each number of plates a side, the loads that need no more, in rising order.
    within: Vec<Vec<u32>>,
    masses_kg: Vec<Vec<f64>>,
    /// Whether plates count as pieces to put on.
    pub has_plates: bool,
    /// Whether the load is a bar.
    pub is_bar: bool,
}

impl Loadings {
    /// Every load that a gym makes for a carrier.
    ///
    /// **Fails** if it has nothing that this carrier takes, naming what is missing.
    pub fn of(gym: &Gym, carrier: &Carrier) -> Result<Self> {
        let is_bar = *carrier == Carrier::Bar;
        Ok(Self::sorted(loads_of(gym, carrier)?, is_bar))
    }

    /// Every load of the usual bar and plates.
    #[must_use]
    pub fn usual(units: System) -> Self {
        Self::sorted(bar_loads(&usual_gym(units)), true)
    }

    fn sorted(mut all: Vec<Loading>, is_bar: bool) -> Self {
        all.retain(|loading| bounds().load_mass.holds(loading.total.as_kg()));
        all.sort_by(|a, b| {
            let by_mass = a.total.as_kg().total_cmp(&b.total.as_kg());
            by_mass.then(a.plates.cmp(&b.plates))
        });
        let most = all.iter().map(|loading| loading.plates).max().unwrap_or(0);
        let within: Vec<Vec<u32>> = (0..=most)
            .map(|plates| {
                let fits = |index: &u32| all[*index as usize].plates <= plates;
                (0..all.len() as u32).filter(fits).collect()
            })
            .collect();
        let kg = |index: &u32| all[*index as usize].total.as_kg();
        let masses_kg = within
            .iter()
            .map(|list| list.iter().map(kg).collect())
            .collect();
        Self {
            has_plates: most > 0,
            is_bar,
            all,
            within,
            masses_kg,
        }
    }

    /// The loads in rising order.
    #[must_use]
    pub fn all(&self) -> &[Loading] {
        &self.all
    }

    /// Friction of the rails that the loads run on; 0 without a sled.
    #[must_use]
    pub fn rail_friction(&self) -> f64 {
        match self.all.first().map(|loading| &loading.on) {
            Some(LoadedOn::Sled(sled)) => sled.friction(),
            _ => 0.0,
        }
    }

    /// How many different loads there are.
    #[must_use]
    pub fn distinct(&self) -> usize {
        let pairs = self.all.windows(2);
        let steps = pairs.filter(|pair| pair[1].total.as_kg() - pair[0].total.as_kg() > SAME_KG);
        steps.count() + usize::from(!self.all.is_empty())
    }

    /// The lightest load there is: the empty bar, the first pin, the smallest dumb-bell.
    #[must_use]
    pub fn lightest(&self) -> Mass {
        self.all.first().map_or(Mass::ZERO, |loading| loading.total)
    }

    /// The heaviest load that does not exceed `target`.
    ///
    /// **Fails** when even the lightest is heavier, or when the target is no load at all.
    pub fn at_most(&self, target: Mass) -> Result<Loading> {
        let target_kg = self.checked_target_kg(target)?;
        let above = self
            .all
            .partition_point(|loading| loading.total.as_kg() <= target_kg + SAME_KG);
        let index = above.checked_sub(1).ok_or_else(|| {
            Error::no_answer(LoadingFault::BelowLightest {
                asked: target,
                lightest: self.lightest(),
            })
        })?;
        Ok(self.all[index].clone())
    }

    /// The lightest load from `target` up to `most`.
    #[must_use]
    pub fn at_least(&self, target: Mass, most: Mass) -> Option<Loading> {
        let target_kg = self.checked_target_kg(target).ok()?;
        let first = self
            .all
            .partition_point(|loading| loading.total.as_kg() < target_kg - SAME_KG);
        let found = self.all.get(first)?;
        (found.total.as_kg() <= most.as_kg() + SAME_KG).then(|| found.clone())
    }

    /// A load between `least` and `most` that is quick to set up: the fewest plates, the heaviest of those.
    #[must_use]
    pub fn simplest(&self, least: Mass, most: Mass) -> Option<Loading> {
        let inside = least.as_kg() - SAME_KG..=most.as_kg() + SAME_KG;
        let fitting = self.all.iter().rev();
        fitting
            .filter(|loading| inside.contains(&loading.total.as_kg()))
            .min_by_key(|loading| loading.plates)
            .cloned()
    }

    /// The body alone may be the load; elsewhere nothing is none.
    fn checked_target_kg(&self, target: Mass) -> Result<f64> {
        let target_kg = target.as_kg();
        let is_load = target_kg > 0.0 || (target_kg == 0.0 && self.lightest() == Mass::ZERO);
        if !(target_kg.is_finite() && is_load) {
            return Err(Error::bad(LoadingFault::NoLoad { asked: target }));
        }
        let most_kg = bounds().planned_load.most();
        if target_kg > most_kg {
            return Err(Error::bad(LoadingFault::BeyondAnyLift {
                asked: target,
                most: Mass::from_kg(most_kg),
            }));
        }
        Ok(target_kg)
    }

    /// The lightest load that needs at most `plates` a side.
    #[must_use]
    pub fn lightest_within(&self, plates: u32) -> Option<usize> {
        let level = self.level(plates)?;
        self.within[level].first().map(|index| *index as usize)
    }

    /// The heaviest load of at most `kg` that needs at most `plates` a side, by its place in [`Self::all`].
    #[must_use]
    pub fn floor(&self, kg: f64, plates: u32) -> Option<usize> {
        let level = self.level(plates)?;
        let masses = &self.masses_kg[level];
        // A rounding error must not cost a whole step.
        let above = masses.partition_point(|mass| *mass <= kg + 1.0e-9 * kg.abs());
        let place = above.checked_sub(1)?;
        Some(self.within[level][place] as usize)
    }

    /// The next heavier load that needs at most `plates` a side.
    #[must_use]
    pub fn above(&self, index: usize, plates: u32) -> Option<usize> {
        let list = &self.within[self.level(plates)?];
        let next = list.partition_point(|other| *other as usize <= index);
        list.get(next).map(|other| *other as usize)
    }

    fn level(&self, plates: u32) -> Option<usize> {
        Some((plates as usize).min(self.within.len().checked_sub(1)?))
    }

    /// The lightest load.
    #[must_use]
    pub fn lightest_kg(&self) -> f64 {
        let first = self.all.first();
        first.map_or(f64::INFINITY, |loading| loading.total.as_kg())
    }
}
