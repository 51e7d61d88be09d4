//! How activation follows the lifter's effort: the nerves' drive rises, the muscles follow.
//!
//! In: the constants of a lifter's [`Dynamics`]. Out: rate of activation and the drive over time.

use crate::anatomy::Dynamics;

/// Rise and fall of activation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Activation {
    rise_s: f64,
    fall_s: f64,
    drive_s: f64,
}

/// No time constant is taken shorter than this: a muscle that answers at once would only shorten steps.
const SHORTEST_S: f64 = 0.005;

impl Activation {
    /// From a lifter's constants; a time constant below 5 ms counts as 5 ms.
    #[must_use]
    pub fn of(dynamics: &Dynamics) -> Self {
        Self {
            rise_s: dynamics.activation_rise.as_s().max(SHORTEST_S),
            fall_s: dynamics.activation_fall.as_s().max(SHORTEST_S),
            drive_s: dynamics.drive_rise.as_s().max(SHORTEST_S),
        }
    }

    /// Rate of change of activation under a drive, 1/s.
    ///
    /// ```text
    /// ȧ = (u − a)/(τ_rise·(0.5 + 1.5a))   u > a          ȧ = (u − a)·(0.5 + 1.5a)/τ_fall   u ≤ a
    /// ```
    /// | symbol             | meaning                  | unit | range |
    /// | ------------------ | ------------------------ | ---- | ----- |
    /// | `a`                | activation               | –    | 0-1   |
    /// | `u`                | drive of the nerves      | –    | 0-1   |
    /// | `τ_rise`, `τ_fall` | time constants           | s    | > 0   |
    ///
    /// **Shape.** Towards `u`, faster up than down; slower up the more is active.
    /// **Source.** Thelen 2003, J. Biomech. Eng. 125:70-77, after Winters 1995 (from memory).
    /// **Fails.** Never.
    #[must_use]
    #[inline]
    pub fn rate(&self, activation: f64, drive: f64) -> f64 {
        let factor = 0.5 + 1.5 * activation;
        if drive > activation {
            (drive - activation) / (self.rise_s * factor)
        } else {
            (drive - activation) * factor / self.fall_s
        }
    }

    /// Drive of the nerves a time after the lifter decides to give everything.
    ///
    /// ```text
    /// u(t) = 1 − (1 − u₀)·exp(−t/τ_drive)
    /// ```
    /// **Shape.** From `u₀` to 1. **Source.** First-order lag; its constant stands in the model.
    /// **Fails.** Never.
    #[must_use]
    #[inline]
    pub fn full_effort(&self, from: f64, time_s: f64) -> f64 {
        1.0 - (1.0 - from) * (-time_s / self.drive_s).exp()
    }
}
