//! How good a combination of bands and chains is.
//!
//! In: sums of the pieces, the loads, the wish. Out: for a combination, the bar load that makes its hardest
//! place exactly the wished effort, that load rounded down to what can be loaded, and the score. Evenness
//! and shares are judged at the exact load, so that setups are compared when they are equally hard; load
//! and nearness to a profile are judged as loaded. Finer plates then never make an answer worse. Effort is
//! linear in the forces here; where a pull leans from plumb that is its tangent, and the exact calculation
//! has the last word on the finalists.

use super::judged::{Gap, Judged};
use super::kernel::Kernel;
use super::sums::{GOAL, Sums};
use super::wish::{Goal, STUDIED_SHARES};

impl Kernel<'_> {
    /// Judges a combination whose room for plain load is `most_kg`.
    ///
    /// **Fails** with the limit that it misses most.
    pub(super) fn judge(&self, most_kg: f64, sums: &Sums, hung: u32) -> Result<Judged, Gap> {
        let plates = self.wish.most_pieces.saturating_sub(hung);
        let Some(mut index) = self.loadings.floor(most_kg, plates, hung) else {
            return Err(self.too_heavy(most_kg, sums, hung));
        };
        if let Goal::Profile(_) = self.wish.goal {
            index = self.nearest_to_profile(index, sums, [plates, hung]);
        }
        let loading = &self.loadings.all()[index];
        let kg = loading.total.as_kg();
        let exact_kg = if most_kg.is_finite() { most_kg } else { kg };
        if let Some(gap) = self.gap(exact_kg, index, sums) {
            return Err(gap);
        }
        let spread = self.spread(exact_kg, sums);
        Ok(Judged {
            score: steady(self.score(exact_kg, kg, sums, spread)),
            spread,
            loading: index as u32,
            pieces: loading.plates + hung,
            mean_kg: kg + sums.mean_kg,
        })
    }

    /// The load, at most that of `index`, whose effort is nearest to the profile: the distance is a
    /// parabola of the load, so it lies next to the parabola's vertex.
    fn nearest_to_profile(&self, index: usize, sums: &Sums, [plates, hung]: [u32; 2]) -> usize {
        let vertex_kg = (self.xt - sums.cross) / self.xx;
        let Some(below) = self.loadings.floor(vertex_kg, plates, hung) else {
            return self
                .loadings
                .lightest_within(plates, hung)
                .unwrap_or(index)
                .min(index);
        };
        let above = self.loadings.above(below, plates, hung).unwrap_or(below);
        let kg = |index: usize| self.loadings.all()[index].total.as_kg();
        let nearer = if kg(above) - vertex_kg < vertex_kg - kg(below) {
            above
        } else {
            below
        };
        nearer.min(index)
    }

    fn score(&self, exact_kg: f64, kg: f64, sums: &Sums, spread: f64) -> f64 {
        match &self.wish.goal {
            Goal::Flattest => {
                spread + f64::from(missing_steps(exact_kg, kg, exact_kg + sums.mean_kg))
            }
            Goal::MostLoad { .. } => -(kg + sums.goal_kg),
            Goal::Share { share, .. } => (self.share_at(exact_kg, sums, GOAL) - share).abs(),
            Goal::Profile(_) => {
                let off = self.tt - 2.0 * (kg * self.xt + sums.profile)
                    + kg * kg * self.xx
                    + 2.0 * kg * sums.cross
                    + sums.square;
                (off.max(0.0) / self.steps).sqrt()
            }
        }
    }

    /// The best flattening by one pair that helps, or that only adds load, among those that fit and make at
    /// least the share that studies began with; among all that fit if none does.
    pub(super) fn best_of_one(&self, helps: bool) -> Option<f64> {
        let hangings = self.rack.hangings.iter().enumerate();
        let each: Vec<(f64, f64)> = hangings
            .filter(|(_, hanging)| hanging.helps == helps)
            .filter_map(|(index, _)| self.one(index).ok())
            .collect();
        let counts = each.iter().any(|(_, share)| *share >= STUDIED_SHARES[0]);
        each.into_iter()
            .filter(|(_, share)| !counts || *share >= STUDIED_SHARES[0])
            .map(|(flattening, _)| flattening)
            .max_by(f64::total_cmp)
    }

    /// Flattening by one hanging beside the load that it leaves room for, %, and its share.
    ///
    /// **Fails** with the limit that it misses.
    pub(super) fn one(&self, hanging: usize) -> Result<(f64, f64), Gap> {
        let sums = self
            .start
            .with(&self.pieces[hanging], self.product(&[], hanging));
        let left = self
            .room
            .iter()
            .zip(&self.takes[hanging])
            .map(|(room, takes)| room - takes);
        let judged = self.judge(left.fold(f64::INFINITY, f64::min), &sums, 1)?;
        let kg = self.loadings.all()[judged.loading as usize].total.as_kg();
        let flattening = 100.0 * (1.0 - judged.spread / self.plain_spread());
        Ok((flattening, self.share(kg, &sums)))
    }
}

/// Part of the load from which a setup stands behind those that are loaded as wished: about two repetitions (assumed).
const STEP_OF_LOAD: f64 = 0.05;

/// How many such parts the gym's loads fall short of the wished effort: whoever wants a hard set is not served by an
/// even one that is too light, so this counts before evenness.
///
/// ```text
/// steps = ⌊(W − w) / (0.05·mean load with W)⌋          W exact plain load, w what can be loaded
/// ```
#[must_use]
pub(super) fn missing_steps(exact_kg: f64, kg: f64, mean_kg: f64) -> u32 {
    if mean_kg <= 0.0 {
        return 0;
    }
    ((exact_kg - kg).max(0.0) / (STEP_OF_LOAD * mean_kg)).floor() as u32
}

/// A score without its rounding errors, so that equal setups tie and the simpler one comes first.
#[must_use]
pub fn steady(score: f64) -> f64 {
    (score * 1.0e9).round() / 1.0e9 + 0.0
}
