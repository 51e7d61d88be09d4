//! How fast phosphocreatine, the muscle's quick store of energy, comes back in a rest.
//!
//! In: a length of rest. Out: the share of what was spent that is back, by published time constants.
//! It is context for a rest, beside the fatigue model; no load is computed from it.

use super::published::{PublishedRecovery, RecoveryTable, RecoveryTime};
use crate::units::Duration;

impl PublishedRecovery {
    /// Time constant `τ`, s: a half-time is `τ ln 2`.
    fn tau_s(&self) -> f64 {
        match self.time {
            RecoveryTime::Constant(time) => time.as_s(),
            RecoveryTime::Half(time) => time.as_s() / std::f64::consts::LN_2,
        }
    }

    /// The share of what was spent that is back after a rest.
    ///
    /// ```text
    /// share = 1 − e^(−t/τ)
    /// ```
    /// | symbol | meaning        | unit | range    |
    /// | ------ | -------------- | ---- | -------- |
    /// | `t`    | length of rest | s    | ≥ 0      |
    /// | `τ`    | time constant  | s    | 17 to 82 |
    ///
    /// **Shape.** Rises from 0 towards 1. **Source.** One exponential after light work: Forbes et al. 2009,
    /// Am. J. Physiol. Regul. 296:R161-R170. **Differs.** After hard work a fast and a slow part are seen;
    /// the two are not separated here. **Fails.** Never.
    fn share_back(&self, rest: Duration) -> f64 {
        -(-rest.as_s().max(0.0) / self.tau_s()).exp_m1()
    }
}

impl RecoveryTable {
    /// Lowest and highest share of spent phosphocreatine that published recoveries give for a rest.
    #[must_use]
    pub fn share_back_range(&self, rest: Duration) -> (f64, f64) {
        let recoveries = self.recoveries.iter();
        let shares = recoveries.map(|recovery| recovery.share_back(rest));
        (
            shares.clone().fold(1.0, f64::min),
            shares.fold(0.0, f64::max),
        )
    }
}
