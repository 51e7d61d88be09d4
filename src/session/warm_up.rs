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

/// A warm-up may be lighter than its step by this share of the working load, for fewer plates (assumed).
const SLACK_SHARE: f64 = 0.05;

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
        let target = Mass::from_kg(target_kg);
        let least = Mass::from_kg(target_kg - SLACK_SHARE * working.as_kg());
        let load = match loading.simplest(least, target) {
            Some(load) => load,
            None => loading.at_most(target)?,
        };
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
