//! How good a combination of bands and chains is.
//!
//! In: sums of the pieces, the loads, the wish. Out: for a combination, the bar load that makes its hardest
//! place exactly the wished effort, that load rounded down to what can be loaded, and the score. Evenness
//! and shares are judged at the exact load, so that setups are compared when they are equally hard; load
//! and nearness to a profile are judged as loaded. Finer plates then never make an answer worse. Effort is
//! linear in the forces here; where a pull leans from plumb that is its tangent, and the exact calculation
//! has the last word on the finalists.

use super::kernel::Kernel;
use super::limits::Gap;
use super::sums::{END, GOAL, START, Sums};
use super::wish::Goal;

/// A combination judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judged {
    /// Smaller is better.
    pub score: f64,
    /// Standard deviation of effort over its mean at the exact load.
    pub spread: f64,
    /// Place of its load in the list of loads.
    pub loading: u32,
    /// Plates, bands and chains a side.
    pub pieces: u32,
    /// Mean load over the range as loaded, kg.
    pub mean_kg: f64,
}

impl Kernel<'_> {
    /// Standard deviation over mean of effort, from the sums.
    pub(super) fn spread(&self, kg: f64, sums: &Sums) -> f64 {
        let mean = (kg * self.x + sums.effort) / self.samples;
        if mean <= 0.0 {
            return f64::INFINITY;
        }
        let square = (kg * kg * self.xx + 2.0 * kg * sums.cross + sums.square) / self.samples;
        (square - mean * mean).max(0.0).sqrt() / mean
    }

    /// Judges a combination whose room for plain load is `most_kg`.
    ///
    /// **Fails** with the limit that it misses most.
    pub(super) fn judge(&self, most_kg: f64, sums: &Sums, hung: u32) -> Result<Judged, Gap> {
        let plates = self.wish.most_pieces.saturating_sub(hung);
        let Some(mut index) = self.loadings.floor(most_kg, plates) else {
            return Err(self.too_heavy(most_kg, sums));
        };
        if let Goal::Profile(_) = self.wish.goal {
            index = self.nearest_to_profile(index, sums, plates);
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
    fn nearest_to_profile(&self, index: usize, sums: &Sums, plates: u32) -> usize {
        let vertex_kg = (self.xt - sums.cross) / self.xx;
        let Some(below) = self.loadings.floor(vertex_kg, plates) else {
            return self
                .loadings
                .lightest_within(plates)
                .unwrap_or(index)
                .min(index);
        };
        let above = self.loadings.above(below, plates).unwrap_or(below);
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
            Goal::Flattest => spread,
            Goal::MostLoad { .. } => -(kg + sums.goal_kg),
            Goal::Share { share, .. } => (self.share_at(exact_kg, sums, GOAL) - share).abs(),
            Goal::Profile(_) => {
                let off = self.tt - 2.0 * (kg * self.xt + sums.profile)
                    + kg * kg * self.xx
                    + 2.0 * kg * sums.cross
                    + sums.square;
                (off.max(0.0) / self.samples).sqrt()
            }
        }
    }

    /// The larger share of start and end.
    pub(super) fn share(&self, kg: f64, sums: &Sums) -> f64 {
        self.share_at(kg, sums, START)
            .max(self.share_at(kg, sums, END))
    }

    /// Share of the load that pieces add, or of the weight that they take away, whichever is larger.
    ///
    /// ```text
    /// share = max( A/(W + A), H/W )        A added, H taken away, W plain load with the body, all in kg
    /// ```
    /// **Shape.** 0 without pieces; A/(W + A) is what studies report for bands and chains. Pieces that
    /// pull against each other do not cancel. **Fails.** Infinite help on no weight is infinite.
    pub(super) fn share_at(&self, kg: f64, sums: &Sums, place: usize) -> f64 {
        let (added, taken) = (sums.added_kg[place], sums.taken_kg[place]);
        let weight = kg + self.body_kg;
        let of = |part: f64, whole: f64| if part > 0.0 { part / whole } else { 0.0 };
        of(added, weight + added).max(of(taken, weight))
    }
}

/// A score without its rounding errors, so that equal setups tie and the simpler one comes first.
#[must_use]
pub fn steady(score: f64) -> f64 {
    (score * 1.0e9).round() / 1.0e9 + 0.0
}
