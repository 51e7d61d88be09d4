//! How even a combination is, and how much of its load bands and chains make.
//!
//! In: sums of the pieces, the plain load. Out: spread of effort, shares of the load.

use super::combination::Combination;
use super::kernel::Kernel;
use super::sums::{END, GOAL, START, Sums};

impl Kernel<'_> {
    /// Standard deviation over mean of effort, from the sums.
    pub(super) fn spread(&self, kg: f64, sums: &Sums) -> f64 {
        let mean = (kg * self.x + sums.effort) / self.steps;
        if mean <= 0.0 {
            return f64::INFINITY;
        }
        let square = (kg * kg * self.xx + 2.0 * kg * sums.cross + sums.square) / self.steps;
        (square - mean * mean).max(0.0).sqrt() / mean
    }

    /// Spread of plain weight, with which flattening compares.
    pub(super) fn plain_spread(&self) -> f64 {
        self.spread(1.0, &Sums::default())
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

    /// Share of bands and chains in a combination with a plain load, at start or end, whichever is larger.
    pub(super) fn share_of(&self, combination: &Combination, loading: usize) -> f64 {
        self.share(
            self.loadings.all()[loading].total.as_kg(),
            &self.sums_of(combination),
        )
    }

    /// Share of bands and chains at the goal's place beside this much plain load.
    pub(super) fn share_at_goal(&self, combination: &Combination, plain_kg: f64) -> f64 {
        self.share_at(plain_kg, &self.sums_of(combination), GOAL)
    }
}
