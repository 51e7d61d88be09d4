//! Extra force after active lengthening: gained in lowering, lost with time.
//!
//! In: the constants of a lifter's [`Dynamics`], or nothing. Out: the share of force on top.

use crate::anatomy::Dynamics;

/// Gain and loss of the extra force.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Enhancement {
    gain: f64,
    time_s: f64,
}

impl Enhancement {
    /// From a lifter's constants.
    #[must_use]
    pub fn of(dynamics: &Dynamics) -> Self {
        Self {
            gain: dynamics.enhancement.clamp(0.0, 2.0),
            time_s: (dynamics.enhancement_half_life.as_s() / std::f64::consts::LN_2).max(0.01),
        }
    }

    /// Switched off: lowering leaves nothing behind.
    #[must_use]
    pub fn none() -> Self {
        Self {
            gain: 0.0,
            time_s: 1.0,
        }
    }

    /// Share of extra force after a time of lowering from `share`.
    ///
    /// ```text
    /// ε̇ = G·a·|ṡ| − ε/τ        ε(t) = ε₀·exp(−t/τ) + G·a·|ṡ|·τ·(1 − exp(−t/τ)),   τ = half-life/ln 2
    /// ```
    /// | symbol | meaning                                           | unit | range |
    /// | ------ | ------------------------------------------------- | ---- | ----- |
    /// | `ε`    | extra force as a share of what activation makes   | –    | ≥ 0   |
    /// | `G`    | gain per whole range of lengthening, fully active | –    | ≥ 0   |
    /// | `a`    | activation                                        | –    | 0-1   |
    /// | `ṡ`    | lowering speed                                    | 1/s  | any   |
    ///
    /// **Shape.** A faster and a more active stretch gain more; a pause and a slow lowering lose it.
    /// **Source.** Decay Wilson, Elliott & Wood 1991; that stretch gains on top of an isometric preload
    /// Walshe, Wilson & Ettema 1998. The leaky sum of both is ours. **Fails.** Never.
    #[must_use]
    pub fn after_lowering(&self, share: f64, activation: f64, speed: f64, time_s: f64) -> f64 {
        let kept = (-time_s / self.time_s).exp();
        share * kept + self.gain * activation * speed.abs() * self.time_s * (1.0 - kept)
    }

    /// Rate of change of the extra force in lowering, 1/s: the equation above before integration.
    #[must_use]
    #[inline]
    pub fn rate(&self, share: f64, activation: f64, speed: f64) -> f64 {
        self.gain * activation * speed.abs() - share / self.time_s
    }

    /// What is left of the extra force after a time without lengthening.
    #[must_use]
    #[inline]
    pub fn left(&self, share: f64, time_s: f64) -> f64 {
        share * (-time_s / self.time_s).exp()
    }
}
