//! The ladder of warm-up sets that leads up to the first working load.
//!
//! In: the working load and what the gym can load. Out: a few lighter sets with fewer and fewer
//! repetitions. Shares, repetitions and rests are common practice.

use super::strength::Strength;
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

/// The ladder up to a load of less than 85 % of 1RM: nothing near it needs a single (common practice).
pub const MODERATE_LADDER: &[(f64, u32, f64)] = &[
    (0.0, 10, 60.0),
    (0.50, 6, 60.0),
    (0.70, 4, 90.0),
    (0.85, 2, 120.0),
];

/// The ladder up to a load of less than 72 % of 1RM, where its last step is no great one: light work is its own warm-up
/// (common practice).
pub const SHORT_LADDER: &[(f64, u32, f64)] = &[(0.0, 10, 60.0), (0.60, 6, 60.0)];

/// The ladder up to work of at most [`LIGHT_KG`], whatever its share of the 1RM (common practice: one easy set is enough for a load
/// that is lighter than an empty bar).
pub const LIGHT_LADDER: &[(f64, u32, f64)] = &[(0.55, 8, 60.0)];

/// The most that is light work, body included where it is lifted, kg (assumed: an empty bar).
pub const LIGHT_KG: f64 = 20.0;

/// Shares of 1RM from which the longer ladders are climbed (assumed).
const LONGER_FROM: (f64, f64) = (0.72, 0.85);

/// Longest last step to light work, kg (assumed: two of the largest plates).
const LONGEST_STEP_KG: f64 = 50.0;

/// The steps that lead up to a share of 1RM, which is so many kg.
pub(super) fn steps(share: f64, whole_kg: f64) -> &'static [(f64, u32, f64)] {
    let last_step_kg = SHORT_LADDER
        .last()
        .map_or(0.0, |step| (1.0 - step.0) * whole_kg);
    if whole_kg <= LIGHT_KG {
        LIGHT_LADDER
    } else if share < LONGER_FROM.0 && last_step_kg < LONGEST_STEP_KG {
        SHORT_LADDER
    } else if share < LONGER_FROM.1 {
        MODERATE_LADDER
    } else {
        LADDER
    }
}

/// Two steps of the ladder closer than this share of the working load are one (assumed: a step that
/// small prepares for nothing).
pub(super) const CLOSEST_SHARE: f64 = 0.06;

/// A warm-up may be lighter than its step by this share of the working load, for fewer plates (assumed).
const SLACK_SHARE: f64 = 0.05;

/// A load a little below a target where that needs fewer plates, else the heaviest up to it.
///
/// **Fails** when nothing is as light.
pub(super) fn quick_load(loading: &Loadings, target_kg: f64, whole_kg: f64) -> Result<Loading> {
    let target = Mass::from_kg(target_kg);
    let least = Mass::from_kg((target_kg - SLACK_SHARE * whole_kg).max(0.0));
    match loading.simplest(least, target) {
        Some(load) => Ok(load),
        None => loading.at_most(target),
    }
}

/// The same beside bands or chains; nothing where nothing is as light.
pub(super) fn quick_load_beside_pieces(
    loading: &Loadings,
    target_kg: f64,
    whole_kg: f64,
) -> Option<Loading> {
    let target = Mass::from_kg(target_kg);
    let least = Mass::from_kg((target_kg - SLACK_SHARE * whole_kg).max(0.0));
    let simple = loading.simplest_beside_pieces(least, target);
    simple.or_else(|| loading.at_most_beside_pieces(target).ok())
}

/// The warm-up sets before `working`: the first with the empty bar (or the lightest load there is),
/// each clearly heavier than the one before and lighter than the working load; the lighter the work, the fewer. Steps
/// below the body mass that is part of the load become one, with the repetitions of the highest.
///
/// **Fails** when the gym's description makes no sense.
pub fn ladder(working: Mass, loading: &Loadings, strength: &Strength) -> Result<Vec<WarmUpSet>> {
    let mut sets: Vec<WarmUpSet> = Vec::new();
    let body = strength.body;
    let whole_kg = (working + body).as_kg();
    let closest_kg = CLOSEST_SHARE * whole_kg;
    for &(share, repetitions, rest_s) in steps(strength.share_of(working), whole_kg) {
        let step_kg = share * whole_kg - body.as_kg();
        if share > 0.0 && step_kg < loading.lightest().as_kg() {
            // The lightest load there is stands for this step.
            sets.clear();
        }
        let target_kg = step_kg.max(loading.lightest().as_kg());
        if target_kg > working.as_kg() - closest_kg {
            continue;
        }
        let load = quick_load(loading, target_kg, whole_kg)?;
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
