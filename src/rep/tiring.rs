//! What a single repetition tires: strength that is used is spent.
//!
//! In: the constant of a lifter's [`Dynamics`]. Out: the share that is spent, over time.

use crate::anatomy::Dynamics;

/// Loss of strength in use.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tiring {
    rate_per_s: f64,
}

impl Tiring {
    /// From a lifter's constants.
    #[must_use]
    pub fn of(dynamics: &Dynamics) -> Self {
        Self {
            rate_per_s: dynamics.tiring_per_s.max(0.0),
        }
    }

    /// Rate at which strength is spent, 1/s.
    ///
    /// ```text
    /// φ̇ = F·a·(1 − φ)          φ(t) = 1 − (1 − φ₀)·exp(−F·a·t)
    /// ```
    /// | symbol | meaning                                         | unit | range |
    /// | ------ | ----------------------------------------------- | ---- | ----- |
    /// | `φ`    | share of the fresh strength that is spent        | –    | 0-1   |
    /// | `F`    | rate from active to fatigued                     | 1/s  | ≥ 0   |
    /// | `a`    | activation, of what is not spent                 | –    | 0-1   |
    ///
    /// **Shape.** Never less than before; 1 % a second of full effort, so a load that crawls for five seconds must be
    /// a twentieth lighter. **Source.** Flow from active to fatigued of Xia & Frey Law 2008 with the rate over all
    /// joints of Frey Law et al. 2012 (from memory). **Differs.** Recovery is left out: a tenth of the rate, of what is
    /// spent only. **Fails.** Never.
    #[must_use]
    #[inline]
    pub fn rate(&self, spent: f64, activation: f64) -> f64 {
        self.rate_per_s * activation * (1.0 - spent)
    }

    /// The share that is spent after a time at an activation: the equation above, integrated.
    #[must_use]
    pub fn after(&self, spent: f64, activation: f64, time_s: f64) -> f64 {
        1.0 - (1.0 - spent) * (-self.rate_per_s * activation * time_s).exp()
    }
}
