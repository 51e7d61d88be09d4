//! The plain loads that a gym can make: a bar with pairs of plates, a dumb-bell, a stack, a sled, a belt.
//!
//! In: a gym and how the movement takes its load. Out: every load with its best recipe: the fewest plates on the
//! bar that the gym lists first; a later bar takes its turn where that saves plates that are not allowed.

use super::gym::Gym;
use super::gym_file::{GymBar, GymStack};
use super::loading::{LoadUse, LoadedOn, Loading};
use super::plate_sums::{PlateSum, PlateSums, is_on_step, mass, same_load, units};
use crate::error::{Error, LoadingFault, LoadingGear, Result};
use crate::movement::Carrier;
use crate::resistance::Sled;
use crate::units::Mass;
use std::collections::{BTreeMap, BTreeSet};

/// Every load that a gym makes for a carrier.
///
/// **Fails** if it has nothing that this carrier takes, naming what is missing.
pub(super) fn loads_of(gym: &Gym, carrier: &Carrier) -> Result<Vec<Loading>> {
    let lacks = |gear: LoadingGear| {
        Error::no_answer(LoadingFault::Lacks {
            gym: gym.title.clone(),
            gear,
        })
    };
    match carrier {
        Carrier::Bar if gym.bars.is_empty() => Err(lacks(LoadingGear::Bar)),
        Carrier::Bar => Ok(bar_loads(gym)),
        Carrier::Dumbbell => match hand_loads(gym) {
            none if none.is_empty() => Err(lacks(LoadingGear::Dumbbells)),
            loads => Ok(loads),
        },
        Carrier::Lever { .. } => {
            let stack = gym.stack.ok_or_else(|| lacks(LoadingGear::Stack))?;
            Ok(stack_loads(stack))
        }
        Carrier::Sled { .. } => {
            let record = gym.sled.ok_or_else(|| lacks(LoadingGear::Sled))?;
            let sled = Sled::new(record.mass, record.friction).map_err(Error::bad)?;
            Ok(sled_loads(gym, sled))
        }
        Carrier::Body => Ok(belt_loads(gym)),
    }
}

/// Every load of the gym's bars; none without a bar.
pub(super) fn bar_loads(gym: &Gym) -> Vec<Loading> {
    let plates = PlateSums::of_pairs(&gym.plates);
    let mut known: BTreeMap<(u64, LoadUse), Vec<Loading>> = BTreeMap::new();
    for bar in &gym.bars {
        let collars = 2 * gym.collars.map_or(0, units);
        let empty = units(bar.mass) + collars;
        if collars > 0 {
            let bare = Loading {
                use_for: LoadUse::Plain,
                ..Loading::of_one_piece(bar.mass, on_bar(bar, None))
            };
            let key = (same_load(units(bar.mass)), LoadUse::Plain);
            known.entry(key).or_insert_with(|| vec![bare]);
        }
        let on_step = |sum: &&PlateSum| is_on_step(gym.smallest_step, 2 * sum.units);
        for sum in plates.sums.iter().filter(on_step) {
            let whole = empty + 2 * sum.units;
            let use_for = if collars > 0 && sum.plates == 0 {
                LoadUse::Pieces
            } else {
                LoadUse::Any
            };
            let same = known.entry((same_load(whole), use_for)).or_default();
            if same.iter().all(|other| sum.plates < other.plates) {
                same.push(Loading {
                    total: mass(whole),
                    on: on_bar(bar, gym.collars),
                    discs: plates.discs(sum),
                    plates: sum.plates,
                    use_for,
                });
            }
        }
    }
    known.into_values().flatten().collect()
}

fn on_bar(bar: &GymBar, collar: Option<Mass>) -> LoadedOn {
    LoadedOn::Bar {
        name: bar.name.clone(),
        mass: bar.mass,
        collar: collar.filter(|mass| mass.as_kg() > 0.0),
    }
}

/// Every load of one hand: dumb-bells, kettlebells, half a bar that both hands hold. Of one mass the first counts.
fn hand_loads(gym: &Gym) -> Vec<Loading> {
    let pieces = |list: &[Mass], on: LoadedOn| -> Vec<Loading> {
        let loading = |each: &Mass| Loading::of_one_piece(*each, on.clone());
        list.iter().map(loading).collect()
    };
    let on_curl_bars = Gym {
        bars: gym.curl_bars.clone(),
        ..gym.clone()
    };
    let halves = bar_loads(&on_curl_bars).into_iter().map(Loading::halved);
    let mut all = pieces(&gym.dumbbells, LoadedOn::Dumbbell);
    all.extend(pieces(&gym.kettlebells, LoadedOn::Kettlebell));
    all.extend(halves);
    let mut known = BTreeSet::new();
    all.retain(|loading| known.insert((same_load(units(loading.total)), loading.use_for)));
    all
}

fn stack_loads(stack: GymStack) -> Vec<Loading> {
    let steps = (stack.most.as_kg() / stack.step.as_kg() + 1.0e-9).floor() as u32;
    let loading = |step: u32| Loading::of_one_piece(stack.step * f64::from(step), LoadedOn::Stack);
    (1..=steps).map(loading).collect()
}

fn sled_loads(gym: &Gym, sled: Sled) -> Vec<Loading> {
    let plates = PlateSums::of_pairs(&gym.plates);
    let on_step = |sum: &&PlateSum| is_on_step(gym.smallest_step, 2 * sum.units);
    let loading = |sum: &PlateSum| Loading {
        total: sled.mass() + mass(2 * sum.units),
        on: LoadedOn::Sled(sled),
        discs: plates.discs(sum),
        plates: sum.plates,
        use_for: LoadUse::Any,
    };
    plates.sums.iter().filter(on_step).map(loading).collect()
}

/// The body with what the stack of a machine takes off it, every pin; none without a stack.
pub(super) fn counterweights(gym: &Gym) -> Vec<Loading> {
    let pins = gym.stack.map(stack_loads).unwrap_or_default();
    let helped = |pin: Loading| Loading {
        total: Mass::ZERO - pin.total,
        on: LoadedOn::Counterweight,
        use_for: LoadUse::Plain,
        ..pin
    };
    pins.into_iter().map(helped).collect()
}

/// Nothing, or plates on the belt: there an odd plate counts too, and hangs in the middle.
fn belt_loads(gym: &Gym) -> Vec<Loading> {
    let mut all = vec![Loading::of_one_piece(Mass::ZERO, LoadedOn::Body)];
    if !gym.belt {
        return all;
    }
    let plates = PlateSums::of_singles(&gym.plates);
    let on_step = |sum: &&PlateSum| sum.plates > 0 && is_on_step(gym.smallest_step, sum.units);
    all.extend(plates.sums.iter().filter(on_step).map(|sum| Loading {
        total: mass(sum.units),
        on: LoadedOn::Belt,
        discs: plates.discs(sum),
        plates: sum.plates,
        use_for: LoadUse::Any,
    }));
    all
}
