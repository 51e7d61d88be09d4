//! Which plates make which load on one side of a bar, with the fewest plates.
//!
//! In: sizes of plates and their number, and the heaviest side that is wanted. Out: every sum one side
//! can be loaded to; the heaviest or lightest that fits, as plates of each size.

use super::loads::{PlatePairs, SAME_KG};
use crate::units::{Mass, System};

/// Which load of a range is wanted.
#[derive(Debug, Clone, Copy)]
pub(super) enum Pick {
    Heaviest,
    Lightest,
    FewestPlates,
}

/// Mass of one side with that many plates of each size.
pub(super) fn side_mass_kg(sizes: &[PlatePairs], counts: &[u32]) -> f64 {
    sizes
        .iter()
        .zip(counts)
        .map(|(plate, count)| plate.mass.as_kg() * f64::from(*count))
        .sum()
}

/// How far apart counting in whole grams can set two ways to one load (40 plates, half a gram each).
const APART_KG: f64 = 0.02;

/// Every sum that one side can be loaded to, with the fewest plates for each.
///
/// A bounded coin problem: masses are counted in a step that fits all plates of one unit exactly
/// (their greatest common divisor in grams or in hundredths of a pound), in grams when mixed.
pub(super) struct SideSums<'a> {
    sizes: &'a [PlatePairs],
    /// `chosen[i][s]`: how many of size `i` the fewest-plates way to `s` with sizes `i..` takes.
    chosen: Vec<Vec<u16>>,
    /// Fewest plates with all sizes for each sum; `None` if the sum cannot be made.
    fewest: Vec<Option<u16>>,
    units: Vec<usize>,
}

impl<'a> SideSums<'a> {
    /// All sums up to `limit_kg`.
    pub(super) fn new(sizes: &'a [PlatePairs], limit_kg: f64) -> Self {
        let (units, unit_kg) = whole_units(sizes);
        let length = ((limit_kg.max(0.0) + APART_KG) / unit_kg).floor() as usize + 2;
        let mut fewest = vec![None; length];
        fewest[0] = Some(0);
        let mut chosen = vec![Vec::new(); sizes.len()];
        for (index, plate) in sizes.iter().enumerate().rev() {
            (fewest, chosen[index]) = with_size(&fewest, units[index], plate.pairs);
        }
        Self {
            sizes,
            chosen,
            fewest,
            units,
        }
    }

    /// Plates of each size for the side that is wanted; the fewest if there are several ways to one load.
    pub(super) fn find(&self, pick: Pick, fits: &dyn Fn(f64) -> bool) -> Option<Vec<u32>> {
        match pick {
            Pick::Heaviest => self.first((0..self.fewest.len()).rev(), fits),
            Pick::Lightest => self.first(0..self.fewest.len(), fits),
            Pick::FewestPlates => (0..self.fewest.len())
                .rev()
                .filter_map(|sum| Some((self.fewest[sum]?, self.counts(sum))))
                .filter(|(_, counts)| fits(side_mass_kg(self.sizes, counts)))
                .min_by_key(|(plates, _)| *plates)
                .map(|(_, counts)| counts),
        }
    }

    /// The first sum in this order that fits.
    fn first(
        &self,
        order: impl Iterator<Item = usize>,
        fits: &dyn Fn(f64) -> bool,
    ) -> Option<Vec<u32>> {
        let mut best: Option<(f64, u16, Vec<u32>)> = None;
        for sum in order {
            let Some(plates) = self.fewest[sum] else {
                continue;
            };
            let counts = self.counts(sum);
            let side_kg = side_mass_kg(self.sizes, &counts);
            match &best {
                // Counting whole grams can set two ways to one load a few units apart.
                Some((best_kg, ..)) if (side_kg - best_kg).abs() > APART_KG => break,
                Some((best_kg, fewest, _))
                    if (side_kg - best_kg).abs() < SAME_KG && plates < *fewest =>
                {
                    best = Some((side_kg, plates, counts));
                }
                None if fits(side_kg) => best = Some((side_kg, plates, counts)),
                _ => {}
            }
        }
        best.map(|(_, _, counts)| counts)
    }

    fn counts(&self, sum: usize) -> Vec<u32> {
        let mut left = sum;
        self.chosen
            .iter()
            .zip(&self.units)
            .map(|(chosen, unit)| {
                let count = chosen[left];
                left -= usize::from(count) * unit;
                u32::from(count)
            })
            .collect()
    }
}

/// Masses as whole numbers of a common unit, and that unit in kg.
fn whole_units(sizes: &[PlatePairs]) -> (Vec<usize>, f64) {
    let all_us = !sizes.is_empty() && sizes.iter().all(|plate| plate.marked == System::Us);
    let small_kg = if all_us {
        Mass::from_lb(0.01).as_kg()
    } else {
        0.001
    };
    let raw: Vec<usize> = sizes
        .iter()
        .map(|plate| ((plate.mass.as_kg() / small_kg).round() as usize).max(1))
        .collect();
    let common = raw.iter().copied().fold(0, greatest_common_divisor).max(1);
    (
        raw.iter().map(|unit| unit / common).collect(),
        small_kg * common as f64,
    )
}

fn greatest_common_divisor(a: usize, b: usize) -> usize {
    if b == 0 {
        a
    } else {
        greatest_common_divisor(b, a % b)
    }
}

/// Adds one size of plate: the fewest plates for each sum and how many of this size that takes.
fn with_size(fewest: &[Option<u16>], unit: usize, pairs: u32) -> (Vec<Option<u16>>, Vec<u16>) {
    let mut better = fewest.to_vec();
    let mut chosen = vec![0; fewest.len()];
    for sum in 0..fewest.len() {
        let most = (sum / unit).min(pairs as usize).min(200);
        for count in 1..=most {
            let Some(rest) = fewest[sum - count * unit] else {
                continue;
            };
            let total = rest + count as u16;
            if better[sum].is_none_or(|old| total <= old) {
                better[sum] = Some(total);
                chosen[sum] = count as u16;
            }
        }
    }
    (better, chosen)
}
