//! Load as a share of 1RM from the velocity of the lift, by published equations.
//!
//! In: movement and mean velocity of a lift done as fast as possible, or a share of 1RM. Out: the
//! other of the two, and the mean velocity at 1RM for each lift where one was published.

use super::published_equations::{Velocity, VelocityEquation, VelocityEquations};
use crate::units::{Mass, Speed};

impl VelocityEquation {
    /// Load in percent of 1RM at a velocity.
    ///
    /// ```text
    /// load = a v² + b v + c
    /// ```
    /// | symbol      | meaning                      | unit     | range        |
    /// | ----------- | ---------------------------- | -------- | ------------ |
    /// | `load`      | load                         | % of 1RM | 30 to 100    |
    /// | `v`         | mean (propulsive) velocity   | m/s      | 0.1 to 1.6   |
    /// | `a`,`b`,`c` | printed coefficients         |         |              |
    ///
    /// **Shape.** Falls with `v` over the whole range. **Source.** [`VelocityEquation::source`].
    /// **Fails.** Never; a load outside 30 to 100 % is an extrapolation that the callers refuse.
    #[must_use]
    pub fn percent_at(&self, velocity_m_s: f64) -> f64 {
        (self.a * velocity_m_s + self.b) * velocity_m_s + self.c
    }

    /// Velocity in m/s at a load in percent of 1RM: the root of the same equation on its falling branch.
    ///
    /// `v = (−b − √(b² − 4 a (c − load))) / 2a`; `None` where the equation has no root.
    #[must_use]
    pub fn velocity_m_s_at(&self, percent: f64) -> Option<f64> {
        let under_root = self.b * self.b - 4.0 * self.a * (self.c - percent);
        let velocity_m_s = (-self.b - under_root.max(0.0).sqrt()) / (2.0 * self.a);
        (under_root >= 0.0 && velocity_m_s.is_finite() && velocity_m_s > 0.0)
            .then_some(velocity_m_s)
    }
}

impl VelocityEquations {
    /// The equation for a movement and kind of velocity.
    #[must_use]
    pub fn equation_for(&self, movement: &str, velocity: Velocity) -> Option<&VelocityEquation> {
        self.equations
            .iter()
            .find(|equation| equation.movement == movement && equation.velocity == velocity)
    }

    /// The equation for the mean velocity of a movement where there is one, else the propulsive one, which
    /// is faster by a few cm/s.
    #[must_use]
    pub fn usual_for(&self, movement: &str) -> Option<&VelocityEquation> {
        self.equation_for(movement, Velocity::Mean)
            .or_else(|| self.equation_for(movement, Velocity::MeanPropulsive))
    }
}

/// The 1RM that a load and the mean velocity of its fastest repetition stand for.
///
/// By the [`VelocityEquations::usual_for`] the movement; the propulsive one gives a slightly low 1RM.
///
/// `None` when no equation was published for the movement, or when the velocity stands for a load outside
/// those that the equation was made on.
#[must_use]
pub fn one_rm_from_velocity(
    equations: &VelocityEquations,
    movement: &str,
    load: Mass,
    velocity: Speed,
) -> Option<Mass> {
    let equation = equations.usual_for(movement)?;
    let percent = equation.percent_at(velocity.as_m_s());
    let (least, most) = equations.loads.percent;
    // A lift slower than the mean 1RM is still a 1RM: people differ by a few cm/s there.
    let percent = if percent > most && percent <= most + 2.0 * 4.0 {
        most
    } else {
        percent
    };
    (least..=most)
        .contains(&percent)
        .then(|| Mass::from_kg(load.as_kg() * 100.0 / percent))
}
