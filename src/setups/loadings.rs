//! Every plain load that a gym can make for a movement, in rising order, and how one is found among them.
//!
//! In: a gym and how the movement takes its load, or the usual bar and plates. Out: [`Loadings`]: the heaviest
//! load below a wish, the lightest above, the one with the fewest plates.

use super::gym::Gym;
use super::loading::{LoadUse, LoadedOn, Loading};
use super::makeable::{bar_loads, counterweights, loads_of};
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
    /// Loads without bands and chains.
    plain: LoadLevels,
    /// Loads beside bands or chains.
    beside: LoadLevels,
    /// Whether plates count as pieces to put on.
    pub has_plates: bool,
    /// Whether the load is a bar.
    pub is_bar: bool,
}

/// Loads by how many plates they need.
#[derive(Debug, Clone, PartialEq)]
struct LoadLevels {
    /// For each number of plates a side, the loads that need no more, in rising order.
    within: Vec<Vec<u32>>,
    masses_kg: Vec<Vec<f64>>,
}

impl LoadLevels {
    /// The loads that are not made for `other`.
    fn of(all: &[Loading], most: u32, other: LoadUse) -> Self {
        let within: Vec<Vec<u32>> = (0..=most)
            .map(|plates| {
                let fits = |loading: &Loading| loading.plates <= plates && loading.use_for != other;
                let numbered = (0..).zip(all);
                let fitting = numbered.filter(|(_, loading)| fits(loading));
                fitting.map(|(index, _)| index).collect()
            })
            .collect();
        let kg = |index: &u32| all[*index as usize].total.as_kg();
        let masses_kg = within
            .iter()
            .map(|list| list.iter().map(kg).collect())
            .collect();
        Self { within, masses_kg }
    }

    /// The place of a number of plates, or of the largest there is.
    fn level(&self, plates: u32) -> Option<usize> {
        Some((plates as usize).min(self.within.len().checked_sub(1)?))
    }

    /// All loads, whatever plates they need.
    fn whole(&self) -> (&[u32], &[f64]) {
        let last = self.within.last().zip(self.masses_kg.last());
        last.map_or((&[][..], &[][..]), |(list, masses)| {
            (&list[..], &masses[..])
        })
    }
}

impl Loadings {
    /// Every load that a gym makes for a carrier.
    ///
    /// **Fails** if it has nothing that this carrier takes, naming what is missing.
    pub fn of(gym: &Gym, carrier: &Carrier) -> Result<Self> {
        let is_bar = *carrier == Carrier::Bar;
        Ok(Self::sorted(loads_of(gym, carrier)?, is_bar))
    }

    /// The same, and for a lift of the body what the stack of a machine takes off it.
    ///
    /// **Fails** as [`Self::of`] does.
    pub fn with_help(gym: &Gym, carrier: &Carrier) -> Result<Self> {
        let mut all = loads_of(gym, carrier)?;
        if *carrier == Carrier::Body {
            all.extend(counterweights(gym));
        }
        Ok(Self::sorted(all, *carrier == Carrier::Bar))
    }

    /// Every load of the usual bar and plates.
    #[must_use]
    pub fn usual(units: System) -> Self {
        Self::sorted(bar_loads(&usual_gym(units)), true)
    }

    fn sorted(mut all: Vec<Loading>, is_bar: bool) -> Self {
        all.retain(|loading| bounds().load_mass.holds(loading.total.as_kg().abs()));
        all.sort_by(|a, b| {
            let by_mass = a.total.as_kg().total_cmp(&b.total.as_kg());
            by_mass.then(a.plates.cmp(&b.plates))
        });
        let most = all.iter().map(|loading| loading.plates).max().unwrap_or(0);
        Self {
            has_plates: most > 0,
            is_bar,
            plain: LoadLevels::of(&all, most, LoadUse::Pieces),
            beside: LoadLevels::of(&all, most, LoadUse::Plain),
            all,
        }
    }

    /// These loads, and beside them the plain ones of another bar that these leave out.
    #[must_use]
    pub fn and_another_bar(self, other: Self) -> Self {
        let plain = |loads: &[Loading]| -> Vec<f64> {
            let plain = loads.iter().filter(|load| load.use_for != LoadUse::Pieces);
            plain.map(|load| load.total.as_kg()).collect()
        };
        let known = plain(&self.all);
        let is_known = |kg: f64| {
            let near = known.partition_point(|known| *known < kg - SAME_KG);
            known.get(near).is_some_and(|known| *known <= kg + SAME_KG)
        };
        let fills = other
            .all
            .into_iter()
            .filter(|load| load.use_for != LoadUse::Pieces);
        let fills = fills.filter(|load| !is_known(load.total.as_kg()));
        let fills = fills.map(|load| Loading {
            use_for: LoadUse::Plain,
            ..load
        });
        let all = self.all.iter().cloned().chain(fills).collect();
        Self::sorted(all, self.is_bar)
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
        self.lightest_of(&self.plain)
    }

    /// The heaviest load there is without bands and chains.
    #[must_use]
    pub fn heaviest(&self) -> Mass {
        let last = self.plain.whole().1.last();
        last.map_or(Mass::ZERO, |kg| Mass::from_kg(*kg))
    }

    fn lightest_of(&self, levels: &LoadLevels) -> Mass {
        let first = levels.whole().1.first();
        first.map_or(Mass::ZERO, |kg| Mass::from_kg(*kg))
    }

    /// The heaviest load without bands and chains that does not exceed `target`.
    ///
    /// **Fails** when even the lightest is heavier, or when the target is no load at all.
    pub fn at_most(&self, target: Mass) -> Result<Loading> {
        self.at_most_of(&self.plain, target)
    }

    /// The heaviest load beside bands or chains that does not exceed `target`.
    ///
    /// **Fails** as [`Self::at_most`] does.
    pub fn at_most_beside_pieces(&self, target: Mass) -> Result<Loading> {
        self.at_most_of(&self.beside, target)
    }

    fn at_most_of(&self, levels: &LoadLevels, target: Mass) -> Result<Loading> {
        let target_kg = self.checked_target_kg(target)?;
        let (list, masses) = levels.whole();
        let above = masses.partition_point(|kg| *kg <= target_kg + SAME_KG);
        let place = above.checked_sub(1).ok_or_else(|| {
            Error::no_answer(LoadingFault::BelowLightest {
                asked: target,
                lightest: self.lightest_of(levels),
            })
        })?;
        Ok(self.all[list[place] as usize].clone())
    }

    /// The lightest load from `target` up to `most`.
    #[must_use]
    pub fn at_least(&self, target: Mass, most: Mass) -> Option<Loading> {
        let target_kg = self.checked_target_kg(target).ok()?;
        let (list, masses) = self.plain.whole();
        let first = masses.partition_point(|kg| *kg < target_kg - SAME_KG);
        let found = &self.all[*list.get(first)? as usize];
        (found.total.as_kg() <= most.as_kg() + SAME_KG).then(|| found.clone())
    }

    /// A load between `least` and `most` that is quick to set up: the fewest plates, the heaviest of those.
    #[must_use]
    pub fn simplest(&self, least: Mass, most: Mass) -> Option<Loading> {
        self.simplest_of(&self.plain, least, most)
    }

    /// The same beside bands or chains.
    #[must_use]
    pub fn simplest_beside_pieces(&self, least: Mass, most: Mass) -> Option<Loading> {
        self.simplest_of(&self.beside, least, most)
    }

    fn simplest_of(&self, levels: &LoadLevels, least: Mass, most: Mass) -> Option<Loading> {
        let inside = least.as_kg() - SAME_KG..=most.as_kg() + SAME_KG;
        let loads = levels.whole().0.iter().rev();
        loads
            .map(|index| &self.all[*index as usize])
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

    /// The loads without pieces, or beside so many.
    const fn levels(&self, hung: u32) -> &LoadLevels {
        if hung == 0 { &self.plain } else { &self.beside }
    }

    /// The lightest load that needs at most `plates` a side beside so many pieces.
    #[must_use]
    pub fn lightest_within(&self, plates: u32, hung: u32) -> Option<usize> {
        let levels = self.levels(hung);
        let list = &levels.within[levels.level(plates)?];
        list.first().map(|index| *index as usize)
    }

    /// The heaviest load of at most `kg` that needs at most `plates` a side beside so many pieces, by its place in
    /// [`Self::all`].
    #[must_use]
    pub fn floor(&self, kg: f64, plates: u32, hung: u32) -> Option<usize> {
        let levels = self.levels(hung);
        let level = levels.level(plates)?;
        let masses = &levels.masses_kg[level];
        // A rounding error must not cost a whole step.
        let above = masses.partition_point(|mass| *mass <= kg + 1.0e-9 * kg.abs());
        let place = above.checked_sub(1)?;
        Some(levels.within[level][place] as usize)
    }

    /// The next heavier load that needs at most `plates` a side beside so many pieces.
    #[must_use]
    pub fn above(&self, index: usize, plates: u32, hung: u32) -> Option<usize> {
        let levels = self.levels(hung);
        let list = &levels.within[levels.level(plates)?];
        let next = list.partition_point(|other| *other as usize <= index);
        list.get(next).map(|other| *other as usize)
    }

    /// The lightest load beside so many pieces, by its place in [`Self::all`], and its mass in kg; infinite without any.
    #[must_use]
    pub fn lightest_beside(&self, hung: u32) -> (usize, f64) {
        let (list, masses) = self.levels(hung).whole();
        let first = list.first().zip(masses.first());
        first.map_or((0, f64::INFINITY), |(index, kg)| (*index as usize, *kg))
    }
}
