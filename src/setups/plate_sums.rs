//! Sums of plates: every mass that pairs of plates can make on one side.
//!
//! In: plates with how many there are, the smallest step that one cares to make. Out: [`PlateSum`]s in rising
//! order, each with the fewest plates. Masses are added up as whole numbers, so that kilograms and pounds add up
//! exactly.

use super::gym_file::GymPlates;
use crate::bounds::bounds;
use crate::units::Mass;
use std::collections::BTreeMap;

/// Most plates a side that a bar takes. Assumed: a sleeve of 415 mm (rules of the sport) and plates of
/// about 40 mm.
pub const MOST_PLATES_A_SIDE: u32 = 10;

/// Masses are added up as whole numbers of this part of a kilogram: a pound is 4 535 923 700 of them, so
/// that plates in kilograms and in pounds add up exactly.
const UNITS_IN_KG: f64 = 1.0e10;

/// Loads that differ by less than this are one load, in the same units: 10 g.
const UNITS_IN_A_STEP: u64 = 100_000_000;

/// How far a sum may lie beside a whole number of steps, in the same units: 0.1 g.
const UNITS_BESIDE_A_STEP: u64 = 1_000_000;

/// A mass in whole units.
pub(super) fn units(mass: Mass) -> u64 {
    (mass.as_kg() * UNITS_IN_KG).round() as u64
}

/// A sum of units as a mass.
pub(super) fn mass(units: u64) -> Mass {
    Mass::from_kg(units as f64 / UNITS_IN_KG)
}

/// The same number for all sums that count as one load.
pub(super) fn same_load(units: u64) -> u64 {
    (units + UNITS_IN_A_STEP / 2) / UNITS_IN_A_STEP
}

/// Whether what is added is a whole number of the smallest steps that one cares to make.
pub(super) fn is_on_step(smallest_step: Option<Mass>, added: u64) -> bool {
    smallest_step.is_none_or(|step| {
        let step = units(step).max(1);
        let rest = added % step;
        rest.min(step - rest) <= UNITS_BESIDE_A_STEP
    })
}

/// Plates a side that make one sum.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct PlateSum {
    /// The sum in whole units.
    pub(super) units: u64,
    /// How many plates there are in it.
    pub(super) plates: u32,
    counts: Vec<u32>,
}

/// Every sum of plates a side.
pub(super) struct PlateSums {
    /// The sums in rising order.
    pub(super) sums: Vec<PlateSum>,
    kinds: Vec<Mass>,
}

impl PlateSums {
    /// Every sum of plates a side that the pairs allow, each with its best recipe: fewest plates, then the
    /// largest plates.
    ///
    /// Sums over counts, kind by kind from the heaviest: a table of reachable sums. A kind of `n` plates has
    /// `⌊n/2⌋` pairs, so an odd plate is never used.
    pub(super) fn of_pairs(plates: &[GymPlates]) -> Self {
        let pairs = plates.iter().map(|plate| (plate.mass, plate.count / 2));
        Self::of(pairs.collect())
    }

    /// The same of single plates.
    pub(super) fn of_singles(plates: &[GymPlates]) -> Self {
        let singles = plates.iter().map(|plate| (plate.mass, plate.count));
        Self::of(singles.collect())
    }

    fn of(mut kinds: Vec<(Mass, u32)>) -> Self {
        kinds.sort_by(|a, b| b.0.as_kg().total_cmp(&a.0.as_kg()));
        let empty = PlateSum {
            units: 0,
            counts: vec![0; kinds.len()],
            plates: 0,
        };
        let mut sums = BTreeMap::from([(0_u64, empty)]);
        for (kind, (mass, most)) in kinds.iter().enumerate() {
            let before: Vec<PlateSum> = sums.values().cloned().collect();
            for sum in before {
                add_kind(&mut sums, &sum, kind, (*mass, *most));
            }
        }
        Self {
            kinds: kinds.into_iter().map(|kind| kind.0).collect(),
            sums: sums.into_values().collect(),
        }
    }

    /// The plates of a sum: mass of one and how many, the heaviest first.
    pub(super) fn discs(&self, sum: &PlateSum) -> Vec<(Mass, u32)> {
        let all = self.kinds.iter().copied().zip(sum.counts.iter().copied());
        all.filter(|(_, count)| *count > 0).collect()
    }
}

/// Adds one plate of a kind to a sum, then two, as many as there are and a sleeve takes.
fn add_kind(
    sums: &mut BTreeMap<u64, PlateSum>,
    sum: &PlateSum,
    kind: usize,
    (mass, most): (Mass, u32),
) {
    let heaviest_kg = bounds().load_mass.most();
    for count in 1..=most.min(MOST_PLATES_A_SIDE - sum.plates) {
        let mut more = sum.clone();
        more.units += u64::from(count) * units(mass);
        more.counts[kind] = count;
        more.plates += count;
        if 2.0 * more.units as f64 > heaviest_kg * UNITS_IN_KG {
            break;
        }
        keep_better(sums, more);
    }
}

fn keep_better(sums: &mut BTreeMap<u64, PlateSum>, sum: PlateSum) {
    let key = same_load(sum.units);
    match sums.get_mut(&key) {
        Some(known) if is_better(&sum, known) => *known = sum,
        Some(_) => {}
        None => {
            sums.insert(key, sum);
        }
    }
}

/// Fewer plates, then more of the heavier ones.
fn is_better(new: &PlateSum, known: &PlateSum) -> bool {
    (new.plates, &known.counts) < (known.plates, &new.counts)
}
