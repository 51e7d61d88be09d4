//! The ladder of warm-up sets that leads up to the first working load.
//!
//! In: the working load and what the gym can load. Out: a few lighter sets with fewer and fewer
//! repetitions. Shares, repetitions and rests are common practice.

use super::loads::{Loaded, Loading};
use crate::error::Result;
use crate::units::{Duration, Mass};

/// One warm-up set.
#[derive(Debug, Clone, PartialEq)]
pub struct WarmUpSet {
    /// The load, as it can be set up.
    pub load: Loaded,
    /// Repetitions, all of them easy.
    pub repetitions: u32,
    /// Rest after it.
    pub rest: Duration,
}

/// Share of the working load, repetitions and rest in seconds of each step (common practice).
pub const LADDER: &[(f64, u32, f64)] = &[
    (0.0, 10, 60.0),
    (0.40, 6, 60.0),
    (0.55, 5, 90.0),
    (0.70, 3, 120.0),
    (0.82, 2, 120.0),
    (0.92, 1, 180.0),
];

/// Two steps of the ladder closer than this share of the working load are one (assumed: a step that
/// small prepares for nothing).
const CLOSEST_SHARE: f64 = 0.06;

/// The warm-up sets before `working`: the first with the empty bar (or the lightest load there is),
/// each clearly heavier than the one before and lighter than the working load.
///
/// **Fails** when the gym's description makes no sense.
pub fn ladder(working: Mass, loading: &Loading) -> Result<Vec<WarmUpSet>> {
    let mut sets: Vec<WarmUpSet> = Vec::new();
    let closest_kg = CLOSEST_SHARE * working.as_kg();
    for &(share, repetitions, rest_s) in LADDER {
        let target_kg = (share * working.as_kg()).max(loading.lightest().as_kg());
        if target_kg > working.as_kg() - closest_kg {
            continue;
        }
        let load = loading.at_most(Mass::from_kg(target_kg))?;
        let last_kg = sets.last().map_or(0.0, |set| set.load.total.as_kg());
        if load.total.as_kg() >= last_kg + closest_kg {
            sets.push(WarmUpSet {
                load,
                repetitions,
                rest: Duration::from_s(rest_s),
            });
        }
    }
    Ok(sets)
}
