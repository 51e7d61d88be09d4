//! The plain loads that a gym can make: a bar with pairs of plates, a dumb-bell, a stack, a sled, a belt.
//!
//! In: a gym and how the movement takes its load. Out: [`Loadings`], every load with its best recipe, in
//! rising order, and the heaviest one below a limit in no time. The best recipe has the fewest plates on the
//! bar that the gym lists first; a later bar takes its turn where that saves plates that are not allowed.

use super::gym::{BarRecord, Gym};
use crate::error::{Error, Result};
use crate::movement::Carrier;
use crate::resistance::{Item, Sled, Weight};
use crate::units::{Mass, rounded};
use std::collections::BTreeMap;

/// Most plates a side that a bar takes. Assumed: a sleeve of 415 mm (rules of the sport) and plates of
/// about 40 mm.
pub const MOST_PLATES_A_SIDE: u32 = 10;

/// Heaviest load that is taken for real, kg, as on the command line.
const HEAVIEST_KG: f64 = 2000.0;

/// Masses are added up as whole numbers of this part of a kilogram: a pound is 4 535 923 700 of them, so
/// that plates in kilograms and in pounds add up exactly.
const UNITS_IN_KG: f64 = 1.0e10;

/// Loads that differ by less than this are one load, in the same units: 10 g.
const UNITS_IN_A_STEP: u64 = 100_000_000;

/// One load and how to make it.
#[derive(Debug, Clone, PartialEq)]
pub struct Loading {
    /// The whole load: both sides together, one hand for dumb-bells.
    pub mass: Mass,
    /// What it is made of.
    pub items: Vec<Item>,
    /// Plates a side.
    pub plates: u32,
    /// In words: "20 kg bar, 15 kg + 2.5 kg a side".
    pub words: String,
}

/// Every load, in rising order.
#[derive(Debug, Clone, PartialEq)]
pub struct Loadings {
    all: Vec<Loading>,
    /// For each number of plates a side, the loads that need no more, in rising order.
    within: Vec<Vec<u32>>,
    masses_kg: Vec<Vec<f64>>,
    /// Whether plates count as pieces to put on.
    pub has_plates: bool,
}

impl Loadings {
    /// Every load that a gym makes for a carrier.
    ///
    /// **Fails** if it has nothing that this carrier takes, naming what is missing.
    pub fn of(gym: &Gym, carrier: &Carrier) -> Result<Self> {
        let all = match carrier {
            Carrier::Bar => bar_loads(gym)?,
            Carrier::Dumbbell => dumbbell_loads(gym)?,
            Carrier::Lever { .. } => stack_loads(gym)?,
            Carrier::Sled { .. } => sled_loads(gym)?,
            Carrier::Body => belt_loads(gym),
        };
        Ok(Self::sorted(all))
    }

    fn sorted(mut all: Vec<Loading>) -> Self {
        all.retain(|loading| loading.mass.as_kg() <= HEAVIEST_KG);
        all.sort_by(|a, b| {
            a.mass
                .as_kg()
                .total_cmp(&b.mass.as_kg())
                .then(a.plates.cmp(&b.plates))
        });
        let most = all.iter().map(|loading| loading.plates).max().unwrap_or(0);
        let within: Vec<Vec<u32>> = (0..=most)
            .map(|plates| {
                let fits = |index: &u32| all[*index as usize].plates <= plates;
                (0..all.len() as u32).filter(fits).collect()
            })
            .collect();
        let masses_kg = within
            .iter()
            .map(|list| list.iter().map(|i| all[*i as usize].mass.as_kg()).collect())
            .collect();
        Self {
            has_plates: most > 0,
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

    /// How many different loads there are.
    #[must_use]
    pub fn distinct(&self) -> usize {
        let pairs = self.all.windows(2);
        let steps = pairs.filter(|pair| pair[1].mass.as_kg() - pair[0].mass.as_kg() > 1.0e-6);
        steps.count() + usize::from(!self.all.is_empty())
    }

    /// The lightest load that needs at most `plates` a side.
    #[must_use]
    pub fn lightest(&self, plates: u32) -> Option<usize> {
        let level = (plates as usize).min(self.within.len().checked_sub(1)?);
        self.within[level].first().map(|index| *index as usize)
    }

    /// The heaviest load of at most `kg` that needs at most `plates` a side, by its place in [`Self::all`].
    #[must_use]
    pub fn floor(&self, kg: f64, plates: u32) -> Option<usize> {
        let level = (plates as usize).min(self.within.len().checked_sub(1)?);
        let masses = &self.masses_kg[level];
        // A rounding error must not cost a whole step.
        let above = masses.partition_point(|mass| *mass <= kg + 1.0e-9 * kg.abs());
        above
            .checked_sub(1)
            .map(|index| self.within[level][index] as usize)
    }

    /// The next heavier load that needs at most `plates` a side.
    #[must_use]
    pub fn above(&self, index: usize, plates: u32) -> Option<usize> {
        let level = (plates as usize).min(self.within.len().checked_sub(1)?);
        let list = &self.within[level];
        let next = list.partition_point(|other| *other as usize <= index);
        list.get(next).map(|other| *other as usize)
    }

    /// The next lighter load that needs at most `plates` a side.
    #[must_use]
    pub fn below(&self, index: usize, plates: u32) -> Option<usize> {
        let level = (plates as usize).min(self.within.len().checked_sub(1)?);
        let list = &self.within[level];
        let here = list.partition_point(|other| (*other as usize) < index);
        here.checked_sub(1).map(|place| list[place] as usize)
    }

    /// The lightest load.
    #[must_use]
    pub fn lightest_kg(&self) -> f64 {
        self.all
            .first()
            .map_or(f64::INFINITY, |loading| loading.mass.as_kg())
    }
}

/// Plates a side that make one sum, by kind.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Recipe {
    units: u64,
    counts: Vec<u32>,
    plates: u32,
}

fn units(mass: Mass) -> u64 {
    (mass.as_kg() * UNITS_IN_KG).round() as u64
}

/// Every sum of plates a side that the pairs allow, each with its best recipe: fewest plates, then the
/// largest plates.
///
/// Sums over counts, kind by kind from the heaviest: a table of reachable sums. A kind of `n` plates has
/// `⌊n/2⌋` pairs, so an odd plate is never used.
fn plate_sums(gym: &Gym) -> (Vec<Mass>, Vec<Recipe>) {
    let mut kinds: Vec<(Mass, u32)> = gym.plates.iter().map(|p| (p.mass, p.count / 2)).collect();
    kinds.sort_by(|a, b| b.0.as_kg().total_cmp(&a.0.as_kg()));
    let empty = Recipe {
        units: 0,
        counts: vec![0; kinds.len()],
        plates: 0,
    };
    let mut sums = BTreeMap::from([(0_u64, empty)]);
    for (kind, (mass, pairs)) in kinds.iter().enumerate() {
        let before: Vec<Recipe> = sums.values().cloned().collect();
        for recipe in before {
            let most = (*pairs).min(MOST_PLATES_A_SIDE - recipe.plates);
            for count in 1..=most {
                let mut more = recipe.clone();
                more.units += u64::from(count) * units(*mass);
                more.counts[kind] = count;
                more.plates += count;
                if 2.0 * more.units as f64 > HEAVIEST_KG * UNITS_IN_KG {
                    break;
                }
                keep_better(&mut sums, more);
            }
        }
    }
    (
        kinds.into_iter().map(|k| k.0).collect(),
        sums.into_values().collect(),
    )
}

fn keep_better(sums: &mut BTreeMap<u64, Recipe>, recipe: Recipe) {
    let key = (recipe.units + UNITS_IN_A_STEP / 2) / UNITS_IN_A_STEP;
    match sums.get_mut(&key) {
        Some(known) if is_better(&recipe, known) => *known = recipe,
        Some(_) => {}
        None => {
            sums.insert(key, recipe);
        }
    }
}

/// Fewer plates, then more of the heavier ones.
fn is_better(new: &Recipe, known: &Recipe) -> bool {
    (new.plates, &known.counts) < (known.plates, &new.counts)
}

fn bar_loads(gym: &Gym) -> Result<Vec<Loading>> {
    if gym.bars.is_empty() {
        return Err(Error::no_answer(format!(
            "{} has no bar, and this movement takes one",
            gym.title
        ))
        .hint("add one to the gym file: bars: [(name: \"bar\", mass: \"20 kg\")]"));
    }
    let (kinds, sums) = plate_sums(gym);
    let mut known: BTreeMap<u64, Vec<Loading>> = BTreeMap::new();
    for bar in &gym.bars {
        let empty = units(bar.mass) + 2 * gym.collars.map_or(0, units);
        for recipe in sums
            .iter()
            .filter(|recipe| is_on_step(gym, 2 * recipe.units))
        {
            let whole = empty + 2 * recipe.units;
            let same = known
                .entry((whole + UNITS_IN_A_STEP / 2) / UNITS_IN_A_STEP)
                .or_default();
            if same.iter().all(|other| recipe.plates < other.plates) {
                same.push(bar_loading(gym, bar, whole, recipe, &kinds));
            }
        }
    }
    Ok(known.into_values().flatten().collect())
}

/// Whether what stands on the bar is a whole number of the gym's smallest steps (to 0.1 g).
fn is_on_step(gym: &Gym, added: u64) -> bool {
    gym.smallest_step.is_none_or(|step| {
        let step = units(step).max(1);
        let rest = added % step;
        rest.min(step - rest) <= 1_000_000
    })
}

fn bar_loading(gym: &Gym, bar: &BarRecord, whole: u64, recipe: &Recipe, kinds: &[Mass]) -> Loading {
    let mut items = vec![Item::Weight(Weight::Bar(bar.mass))];
    if let Some(each) = gym.collars.filter(|mass| mass.as_kg() > 0.0) {
        items.push(Item::Weight(Weight::Collars { each }));
    }
    items.extend(plate_items(recipe, kinds));
    let collars = gym
        .collars
        .filter(|mass| mass.as_kg() > 0.0)
        .map_or(String::new(), |mass| {
            format!(", collars of {}", mass_in_words(mass))
        });
    Loading {
        mass: Mass::from_kg(whole as f64 / UNITS_IN_KG),
        items,
        plates: recipe.plates,
        words: format!(
            "{} ({}){collars}, {}",
            bar.name,
            mass_in_words(bar.mass),
            plates_in_words(recipe, kinds)
        ),
    }
}

fn plate_items<'a>(recipe: &'a Recipe, kinds: &'a [Mass]) -> impl Iterator<Item = Item> + 'a {
    let used = kinds
        .iter()
        .zip(&recipe.counts)
        .filter(|(_, count)| **count > 0);
    used.map(|(each, pairs)| {
        Item::Weight(Weight::Plates {
            each: *each,
            pairs: *pairs,
        })
    })
}

fn plates_in_words(recipe: &Recipe, kinds: &[Mass]) -> String {
    let words: Vec<String> = kinds
        .iter()
        .zip(&recipe.counts)
        .filter(|(_, count)| **count > 0)
        .map(|(mass, count)| match count {
            1 => mass_in_words(*mass),
            _ => format!("{count} × {}", mass_in_words(*mass)),
        })
        .collect();
    if words.is_empty() {
        "no plates".to_owned()
    } else {
        format!("{} a side", words.join(" + "))
    }
}

/// A mass in the unit in which it is a round figure: "20 kg", "45 lb".
#[must_use]
pub fn mass_in_words(mass: Mass) -> String {
    let is_round = |value: f64| (value * 100.0 - (value * 100.0).round()).abs() < 1.0e-6;
    if !is_round(mass.as_kg()) && is_round(mass.as_lb()) {
        format!("{} lb", rounded(mass.as_lb(), 2))
    } else {
        format!("{} kg", rounded(mass.as_kg(), 2))
    }
}

fn dumbbell_loads(gym: &Gym) -> Result<Vec<Loading>> {
    if gym.dumbbells.is_empty() {
        return Err(Error::no_answer(format!(
            "{} has no dumb-bells, and this movement takes them",
            gym.title
        ))
        .hint("add them to the gym file: dumbbells: [\"5 kg\", \"7.5 kg\"]"));
    }
    let loading = |mass: &Mass| Loading {
        mass: *mass,
        items: vec![Item::Weight(Weight::Dumbbell(*mass))],
        plates: 0,
        words: format!("dumb-bell of {} in each hand", mass_in_words(*mass)),
    };
    Ok(gym.dumbbells.iter().map(loading).collect())
}

fn stack_loads(gym: &Gym) -> Result<Vec<Loading>> {
    let stack = gym.stack.ok_or_else(|| {
        Error::no_answer(format!(
            "{} has no machine with a weight stack, and this movement takes one",
            gym.title
        ))
        .hint("add it to the gym file: stack: (step: \"5 kg\", most: \"100 kg\")")
    })?;
    let steps = (stack.most.as_kg() / stack.step.as_kg() + 1.0e-9).floor() as u32;
    let loading = |step: u32| {
        let mass = stack.step * f64::from(step);
        Loading {
            mass,
            items: vec![Item::Weight(Weight::Load(mass))],
            plates: 0,
            words: format!("stack at {}", mass_in_words(mass)),
        }
    };
    Ok((1..=steps).map(loading).collect())
}

fn sled_loads(gym: &Gym) -> Result<Vec<Loading>> {
    let record = gym.sled.ok_or_else(|| {
        Error::no_answer(format!(
            "{} has no sled on rails, and this movement takes one",
            gym.title
        ))
        .hint("add it to the gym file: sled: (mass: \"45 kg\")")
    })?;
    let sled = Sled::new(record.mass, record.friction).map_err(Error::bad)?;
    let (kinds, sums) = plate_sums(gym);
    let on_step = sums
        .iter()
        .filter(|recipe| is_on_step(gym, 2 * recipe.units));
    Ok(on_step
        .map(|recipe| {
            let mut items = vec![Item::Sled(sled)];
            items.extend(plate_items(recipe, &kinds));
            Loading {
                mass: Mass::from_kg(record.mass.as_kg() + 2.0 * recipe.units as f64 / UNITS_IN_KG),
                items,
                plates: recipe.plates,
                words: format!(
                    "sled ({}), {}",
                    mass_in_words(record.mass),
                    plates_in_words(recipe, &kinds)
                ),
            }
        })
        .collect())
}

/// Nothing, or plates on the belt: there an odd plate counts too, and hangs in the middle.
fn belt_loads(gym: &Gym) -> Vec<Loading> {
    let nothing = Loading {
        mass: Mass::ZERO,
        items: Vec::new(),
        plates: 0,
        words: "the body alone".to_owned(),
    };
    let mut all = vec![nothing];
    if !gym.belt {
        return all;
    }
    let mut singles = gym.clone();
    for plate in &mut singles.plates {
        plate.count = plate.count.saturating_mul(2);
    }
    let (kinds, sums) = plate_sums(&singles);
    let loaded = sums
        .iter()
        .filter(|recipe| recipe.plates > 0 && is_on_step(gym, recipe.units));
    all.extend(loaded.map(|recipe| {
        let mass = Mass::from_kg(recipe.units as f64 / UNITS_IN_KG);
        Loading {
            mass,
            items: vec![Item::Weight(Weight::Belt(mass))],
            plates: recipe.plates,
            words: format!(
                "belt with {}",
                plates_in_words(recipe, &kinds).trim_end_matches(" a side")
            ),
        }
    }));
    all
}
