//! How much more a lifter can lower than lift, as published.
//!
//! In: a 1RM, the published table. Out: the eccentric 1RM, when the simulated repetition does not give it, and
//! the bound on it when it does;
//! how much a lowering tires.

use super::published::{EccentricTable, PublishedRatio};
use crate::units::Mass;

impl EccentricTable {
    /// The ratio that is planned with.
    #[must_use]
    pub fn planning(&self) -> &PublishedRatio {
        let first = self.ratios.first();
        first.expect("a table without a row is refused when it is read")
    }

    /// The eccentric 1RM by the ratio that is planned with; `body` is the body mass that is part of the load.
    #[must_use]
    pub fn eccentric_one_rm(&self, one_rm: Mass, body: Mass) -> Mass {
        (one_rm + body) * self.planning().ratio - body
    }

    /// The most that any plan takes for what can be lowered: the highest ratio that was measured. A simulated
    /// lifter who is said to lower more is not believed.
    #[must_use]
    pub fn highest_one_rm(&self, one_rm: Mass, body: Mass) -> Mass {
        let ratios = self.ratios.iter().map(|row| row.ratio);
        (one_rm + body) * ratios.fold(1.0, f64::max) - body
    }

    /// How much a lowering tires against a lift, each with the same share of what the muscles can hold that
    /// way.
    ///
    /// ```text
    /// cost = (efficiency of lifting / efficiency of lowering) · (eccentric 1RM / 1RM) = 0.54
    /// ```
    /// **Shape.** One number. At the same share a lowering takes up 1.24 times the work of the lift, at 0.43
    /// of its energy for each joule. **Source.** Efficiencies: Ryschon et al. 1997 (abstract), 31P
    /// spectroscopy of the shin's muscles; ratio: [`EccentricTable::planning`]. **Differs.** The rates of the
    /// fatigue model are of holding still and are taken for lifting; that fatigue follows the energy spent is
    /// assumed. Used where spotters do the lifting only: in a set that is lifted, too little for the lifting
    /// and too much for the lowering cancel, as the published repetitions to failure show.
    #[must_use]
    pub fn lowering_cost(&self) -> f64 {
        let efficiency = &self.efficiency;
        efficiency.lifting_percent / efficiency.lowering_percent * self.planning().ratio
    }
}
