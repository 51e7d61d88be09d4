//! How fast phosphocreatine, the muscle's quick store of energy, comes back in a rest.
//!
//! In: a length of rest. Out: the share of what was spent that is back, by published time constants.
//! It is context for a rest, beside the fatigue model; no load is computed from it.

use crate::progress::origin::Origin;
use crate::units::Duration;

/// One published recovery.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Recovery {
    /// Muscle and people.
    pub muscle: &'static str,
    /// Time constant, s.
    pub tau_s: f64,
    /// Where it comes from.
    pub origin: Origin,
}

const SLADE: Origin = Origin::Read("slade_2006", "abstract, 11 people");
const CALF: Origin = Origin::Read(
    "calf_31p_women_girls",
    "manuscript abstract, 7 women and 6 girls",
);
const HARRIS: Origin = Origin::Recalled(
    "harris_1976",
    "half-time 21 s of the fast part; a slow part of 170 s follows",
);
const BOGDANIS: Origin = Origin::Recalled(
    "bogdanis_1995",
    "half-time 56.6 s after 30 s of all-out sprint cycling",
);

/// Published recoveries, fastest first.
pub const RECOVERIES: &[Recovery] = &[
    Recovery {
        muscle: "calf, women, gated",
        tau_s: 17.0,
        origin: CALF,
    },
    Recovery {
        muscle: "calf, women, sustained",
        tau_s: 19.0,
        origin: CALF,
    },
    Recovery {
        muscle: "vastus lateralis, fast part",
        tau_s: 21.0 / std::f64::consts::LN_2,
        origin: HARRIS,
    },
    Recovery {
        muscle: "dorsiflexors, after 30 s",
        tau_s: 36.2,
        origin: SLADE,
    },
    Recovery {
        muscle: "dorsiflexors, gated",
        tau_s: 41.8,
        origin: SLADE,
    },
    Recovery {
        muscle: "vastus lateralis, after a sprint",
        tau_s: 56.6 / std::f64::consts::LN_2,
        origin: BOGDANIS,
    },
];

impl Recovery {
    /// The time in which half of what was spent comes back: `τ ln 2`.
    #[must_use]
    pub fn half_time(&self) -> Duration {
        Duration::from_s(self.tau_s * std::f64::consts::LN_2)
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
    #[must_use]
    pub fn share_back(&self, rest: Duration) -> f64 {
        -(-rest.as_s().max(0.0) / self.tau_s).exp_m1()
    }
}

/// Lowest and highest share of spent phosphocreatine that published recoveries give for a rest.
#[must_use]
pub fn share_back_range(rest: Duration) -> (f64, f64) {
    let shares = || RECOVERIES.iter().map(|recovery| recovery.share_back(rest));
    (shares().fold(1.0, f64::min), shares().fold(0.0, f64::max))
}
