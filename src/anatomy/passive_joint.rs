//! The passive torque of a joint's capsule, ligaments and skin near the ends of its range.

use crate::source::Source;
use crate::units::{Angle, Torque};
use serde::{Deserialize, Serialize};

/// Passive resistance of one degree of freedom.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PassiveJoint {
    /// Angle near the lower end of the range.
    pub low: Angle,
    /// Torque with which the joint pushes back there.
    pub low_torque: Torque,
    /// Angle near the upper end of the range.
    pub high: Angle,
    /// Torque with which the joint pushes back there.
    pub high_torque: Torque,
    /// Angle over which the torque falls to 1/e.
    pub width: Angle,
    /// Where the numbers come from.
    pub source: Source,
}

impl PassiveJoint {
    /// Passive torque at an angle, N·m, positive where it turns the angle up.
    ///
    /// ```text
    /// τ(q) = T_low·exp((q_low − q)/w) − T_high·exp((q − q_high)/w)
    /// ```
    /// | symbol           | meaning                                   | unit |
    /// | ---------------- | ----------------------------------------- | ---- |
    /// | `q`              | joint angle                               | rad  |
    /// | `T_low`, `T_high`| torque at the angles `q_low`, `q_high`    | N·m  |
    /// | `w`              | angle over which it falls to 1/e          | rad  |
    ///
    /// **Shape.** Near 0 in mid-range, growing exponentially to both ends; smooth everywhere.
    /// **Source.** The two exponentials of Anderson, Madigan & Nussbaum 2007. **Fails.** Never; the
    /// exponent is held at 5 so that an absurd pose stays finite.
    #[must_use]
    pub fn torque_nm(&self, angle_rad: f64) -> f64 {
        self.low_nm(angle_rad) - self.high_nm(angle_rad)
    }

    /// What the lower end pushes back with at an angle, N·m.
    #[must_use]
    pub fn low_nm(&self, angle_rad: f64) -> f64 {
        self.low_torque.as_nm() * self.grown(self.low.as_rad() - angle_rad)
    }

    /// What the upper end pushes back with at an angle, N·m.
    #[must_use]
    pub fn high_nm(&self, angle_rad: f64) -> f64 {
        self.high_torque.as_nm() * self.grown(angle_rad - self.high.as_rad())
    }

    fn grown(&self, beyond_rad: f64) -> f64 {
        (beyond_rad / self.width.as_rad().max(1.0e-3))
            .min(5.0)
            .exp()
    }
}
