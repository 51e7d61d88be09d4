//! Why the heaviest weight is another one: capacity and demand, each at its own hardest place.
//!
//! In: a study before and after with their figures. Out: [`HeldChange`].

use super::compared::{Compared, Figures};
use super::question::Study;

/// A change of the heaviest weight, split into what the lifter can do and what a load asks for.
///
/// ```text
/// w = c(s*)/d(s*),   w₁/w₀ = (c₁/c₀)/(d₁/d₀)
/// ```
/// `w` the heaviest weight, kg (or how many times a load of one's own); `s*` the hardest place; `c` the capacity
/// there, `d` what the weight asks for there per kilogram (or the load as it is), both N or N·m.
/// **Source.** Definition of the model.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeldChange {
    /// The heaviest weight before and after, kg, or times the load.
    pub held: [f64; 2],
    /// The hardest place before and after.
    pub range: [f64; 2],
    /// Capacity at the hardest place, after over before.
    pub capacity_ratio: f64,
    /// What the load asks for at the hardest place, after over before.
    pub demand_ratio: f64,
}

impl HeldChange {
    /// The change between two studies; `None` where either has no hardest place.
    #[must_use]
    pub fn between(studies: [&Study; 2], figures: [&Figures; 2]) -> Option<Self> {
        let [before, after] = figures.map(|figures| {
            let range = figures.sticking?.point_range;
            figures.value(Compared::Held).map(|held| (held, range))
        });
        let ((held_before, range_before), (held_after, range_after)) = (before?, after?);
        let held_there = |study: &Study| study.setups.first().and_then(|setup| setup.held_there);
        let capacity_ratio = held_there(studies[1])? / held_there(studies[0])?;
        Some(Self {
            held: [held_before, held_after],
            range: [range_before, range_after],
            capacity_ratio,
            demand_ratio: capacity_ratio * held_before / held_after,
        })
    }

    /// After over before.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        self.held[1] / self.held[0]
    }
}
