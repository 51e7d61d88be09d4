//! The ladder of warm-up sets that leads up to the first working load.
//!
//! In: the working load and what the gym can load. Out: a few lighter sets with fewer and fewer
//! repetitions. Shares, repetitions and rests are common practice.

use crate::error::Result;
use crate::setups::{Loading, Loadings};
use crate::units::{Duration, Mass};

/// One warm-up set.
#[derive(Debug, Clone, PartialEq)]
pub struct WarmUpSet {
    /// The load, as it can be set up.
    pub load: Loading,
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
/// each clearly heavier than the one before and lighter than the working load. `body` is the body mass
/// that is part of the load; steps below it become one, with the repetitions of the highest.
///
/// **Fails** when the gym's description makes no sense.
pub fn ladder(working: Mass, loading: &Loadings, body: Mass) -> Result<Vec<WarmUpSet>> {
    let mut sets: Vec<WarmUpSet> = Vec::new();
    let whole_kg = (working + body).as_kg();
    let closest_kg = CLOSEST_SHARE * whole_kg;
    for &(share, repetitions, rest_s) in LADDER {
        let step_kg = share * whole_kg - body.as_kg();
        if share > 0.0 && step_kg < loading.lightest().as_kg() {
            // The lightest load there is stands for this step.
            sets.clear();
        }
        let target_kg = step_kg.max(loading.lightest().as_kg());
        if target_kg > working.as_kg() - closest_kg {
            continue;
        }
        let target = Mass::from_kg(target_kg);
        let least = Mass::from_kg((target_kg - SLACK_SHARE * whole_kg).max(0.0));
        let load = match loading.simplest(least, target) {
            Some(load) => load,
            None => loading.at_most(target)?,
        };
        let is_clear = sets
            .last()
            .is_none_or(|set| load.total.as_kg() >= set.load.total.as_kg() + closest_kg);
        if is_clear {
            sets.push(WarmUpSet {
                load,
                repetitions,
                rest: Duration::from_s(rest_s),
            });
        }
    }
    Ok(sets)
}
